/* Type on the page.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"
#include "tb-handout-private.h"

#include <math.h>
#include <string.h>
#include "tb-draw.h"

/* Between lines, of the type's size. */
#define LEADING 0.12
/* Below a paragraph, of the type's size. */
#define PARAGRAPH 0.28
/* Heads: room above the rule's text and below the rule, pt. */
#define HEAD_BELOW 4.0
#define RULE_WIDTH 0.6
#define HEAD_RULE_WIDTH 1.1

TextStyle
sheet_body (const Sheet *sheet)
{
  return (TextStyle){ HANDOUT_BODY, sheet->canvas.theme.text, FALSE };
}

TextStyle
sheet_quiet (const Sheet *sheet)
{
  return (TextStyle){ HANDOUT_BODY, sheet->canvas.theme.quiet, FALSE };
}

static TbLabel
label_of (const Column *column, const char *text, const TextStyle *style)
{
  return (TbLabel){ .text = text,
                    .x = column->x,
                    .y = column->y,
                    .color = style->color,
                    .size = style->size,
                    .bold = style->bold,
                    .wrap = column->width,
                    .leading = LEADING * style->size };
}

static void
put (Column *column, const TbLabel *label)
{
  Sheet *sheet = column->sheet;
  double height = tb_canvas_measure (&sheet->canvas, label).height;

  if (sheet->draws)
    tb_canvas_label (&sheet->canvas, label);
  column->y += height + PARAGRAPH * label->size;
}

void
column_text (Column *column, const char *text, TextStyle style)
{
  TbLabel label = label_of (column, text, &style);

  if (text && text[0])
    put (column, &label);
}

void
column_led_text (Column *column, const char *lead, const char *text, TextStyle style)
{
  g_autofree char *both = g_strconcat (lead, "  ", text, NULL);
  TbLabel label = label_of (column, both, &style);

  label.bold_bytes = (guint) strlen (lead);
  put (column, &label);
}

static double
height_of (const Column *column, const char *text, const TextStyle *style)
{
  TbLabel label = label_of (column, text, style);

  return tb_canvas_measure (&column->sheet->canvas, &label).height;
}

/* The longest beginning that stays under a height. */
static char *
shortened (const Column *column, const char *text, const TextStyle *style, double height)
{
  glong low = 0, high = g_utf8_strlen (text, -1);
  char *best = g_strdup ("…");

  while (low < high)
    {
      glong middle = (low + high + 1) / 2;
      g_autofree char *beginning = g_utf8_substring (text, 0, middle);
      char *tried = g_strconcat (g_strchomp (beginning), "…", NULL);

      if (height_of (column, tried, style) <= height)
        {
          g_free (best);
          best = tried;
          low = middle;
        }
      else
        {
          g_free (tried);
          high = middle - 1;
        }
    }
  return best;
}

char *
column_fitting (const Column *column, const char *text, TextStyle style, guint lines)
{
  g_autoptr (GString) sample = g_string_new ("X");
  double most;

  for (guint i = 1; i < lines; i++)
    g_string_append (sample, "\nX");
  /* Letters of another script may be higher by a little. */
  most = height_of (column, sample->str, &style) * 1.05;
  if (height_of (column, text, &style) > most)
    return shortened (column, text, &style, most);
  return g_strdup (text);
}

void
column_short_text (Column *column, const char *text, TextStyle style, guint lines)
{
  g_autofree char *fitting = NULL;

  if (!text || !text[0] || lines == 0)
    return;
  fitting = column_fitting (column, text, style, lines);
  column_text (column, fitting, style);
}

void
column_gap (Column *column, double pt)
{
  column->y += pt;
}

void
column_indent (Column *column, double pt)
{
  column->x += pt;
  column->width -= pt;
}

static void
draw_rule (Sheet *sheet, TbPoint from, double width, double thickness)
{
  cairo_set_line_width (sheet->canvas.cr, thickness);
  tb_draw_line (sheet->canvas.cr, from, (TbPoint){ from.x + width, from.y });
}

void
sheet_rule (Sheet *sheet, double x, double y, double width)
{
  if (!sheet->draws)
    return;
  tb_draw_color (sheet->canvas.cr, sheet->canvas.theme.rule);
  draw_rule (sheet, (TbPoint){ x, y }, width, RULE_WIDTH);
}

double
sheet_line (Sheet *sheet, const TbLabel *label)
{
  if (sheet->draws)
    tb_canvas_label (&sheet->canvas, label);
  return tb_canvas_measure (&sheet->canvas, label).width;
}

void
column_head (Column *column, const char *text)
{
  Sheet *sheet = column->sheet;

  column_text (column, text, (TextStyle){ HANDOUT_HEAD, sheet->canvas.theme.after, TRUE });
  column->y -= PARAGRAPH * HANDOUT_HEAD - 1.5;
  if (sheet->draws)
    {
      tb_draw_color (sheet->canvas.cr, sheet->canvas.theme.after);
      draw_rule (sheet, (TbPoint){ column->x, column->y }, column->width, HEAD_RULE_WIDTH);
    }
  column->y += HEAD_BELOW;
}
