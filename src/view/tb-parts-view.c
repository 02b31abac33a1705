/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"
#include "tb-parts-view.h"

#include <math.h>
#include <stdlib.h>
#include "tb-canvas.h"
#include "tb-draw.h"

/* Text stands among a page's own, which is larger than a picture's. */
#define TEXT 1.12
/* em */
#define LINE 1.75
#define BAR 0.8
#define GAP 0.5
/* The widest bar takes all the room if it is this many of the last digit shown or more: what is told as
 * nothing is no bar. */
#define LEAST_SPAN 5
/* Share of the width that names take at most. */
#define NAMES_SHARE 0.5

/* A picture that stands alone: so wide that it is at its usual size, em; and what it takes to be larger. */
#define WIDE 32
#define GROWS_FROM 1.2

typedef struct Layout
{
  double names;   /* px, their right end */
  double numbers; /* px, their width on either side */
  double zero;    /* px */
  double px_per_unit;
} Layout;

double
tb_parts_view_height (const TbTheme *theme, guint n_parts)
{
  return n_parts * LINE * TEXT * theme->text_size;
}

static char *
number_text (const TbPartsScene *scene, double value)
{
  g_autofree char *size = g_strdup_printf ("%.*f", scene->digits, fabs (value));
  /* As it is shown, with the locale's decimal mark. */
  const char *sign = strtod (size, NULL) == 0 ? "" : value < 0 ? "\xe2\x88\x92" : "+";

  return g_strconcat (sign, size, scene->unit, NULL);
}

static double
width_of (TbCanvas *canvas, const char *text)
{
  return tb_canvas_measure (canvas, &(TbLabel){ .text = text }).width;
}

/* Names on the left, bars in the middle, each number at the end of its bar. */
static void
layout_init (Layout *self, TbCanvas *canvas, const TbPartsScene *scene)
{
  double names = 0, low = 0, high = 0, room, least = LEAST_SPAN * pow (10, -scene->digits);

  self->numbers = 0;
  for (guint i = 0; i < scene->n_parts; i++)
    {
      g_autofree char *number = number_text (scene, scene->parts[i].value);

      names = fmax (names, width_of (canvas, scene->parts[i].name));
      self->numbers = fmax (self->numbers, width_of (canvas, number) + 2 * GAP * canvas->em);
      low = fmin (low, scene->parts[i].value - scene->parts[i].error);
      high = fmax (high, scene->parts[i].value + scene->parts[i].error);
    }
  self->names = fmin (names, NAMES_SHARE * canvas->width);
  room = canvas->width - self->names - GAP * canvas->em - (low < 0 ? self->numbers : 0)
         - (high > 0 ? self->numbers : 0);
  self->px_per_unit = fmax (room, canvas->em) / fmax (high - low, least);
  self->zero = self->names + GAP * canvas->em + (low < 0 ? self->numbers : 0) - low * self->px_per_unit;
}

/* A name too long for its column loses its end. */
static char *
fitting_name (TbCanvas *canvas, const char *name, double room)
{
  g_autofree char *fitting = g_strdup (name);

  for (glong length = g_utf8_strlen (name, -1) - 1; length > 0 && width_of (canvas, fitting) > room + 0.5;
       length--)
    {
      g_autofree char *beginning = g_utf8_substring (name, 0, length);

      g_free (fitting);
      fitting = g_strconcat (g_strchomp (beginning), "…", NULL);
    }
  return g_steal_pointer (&fitting);
}

static void
draw_name (TbCanvas *canvas, const Layout *layout, const char *name, double middle)
{
  g_autofree char *fitting = fitting_name (canvas, name, layout->names);

  tb_canvas_label (
      canvas,
      &(TbLabel){ .text = fitting, .y = middle, .down = TB_ALIGN_MIDDLE, .color = canvas->theme.text });
}

static void
draw_error (TbCanvas *canvas, const Layout *layout, const TbPart *part, double middle)
{
  double x = layout->zero + part->value * layout->px_per_unit, reach = part->error * layout->px_per_unit;

  if (reach < 1)
    return;
  tb_draw_color (canvas->cr, canvas->theme.text);
  cairo_set_line_width (canvas->cr, 1);
  tb_draw_line (canvas->cr, (TbPoint){ x - reach, middle }, (TbPoint){ x + reach, middle });
}

static void
draw_part (TbCanvas *canvas, const Layout *layout, const TbPartsScene *scene, guint index)
{
  const TbPart *part = &scene->parts[index];
  double middle = (index + 0.5) * LINE * canvas->em, length = part->value * layout->px_per_unit;
  double end = layout->zero + length, reach = part->error * layout->px_per_unit;
  gboolean left = part->value < 0;
  g_autofree char *number = number_text (scene, part->value);

  draw_name (canvas, layout, part->name, middle);
  tb_draw_color (canvas->cr, canvas->theme.after);
  tb_draw_rectangle (canvas->cr,
                     &(cairo_rectangle_t){ left ? end : layout->zero, middle - 0.5 * BAR * canvas->em,
                                           fabs (length), BAR * canvas->em });
  cairo_fill (canvas->cr);
  draw_error (canvas, layout, part, middle);
  tb_canvas_label (canvas, &(TbLabel){ .text = number,
                                       .x = end + (left ? -1 : 1) * (reach + 0.35 * canvas->em),
                                       .y = middle,
                                       .across = left ? TB_ALIGN_END : TB_ALIGN_START,
                                       .down = TB_ALIGN_MIDDLE,
                                       .color = canvas->theme.text });
}

/* How much larger than usual a few bars are in a picture that is larger than they need. */
static double
growth (double width, double height, const TbPartsScene *scene)
{
  double wide = width / (WIDE * TEXT * scene->theme.text_size);
  double high = height / tb_parts_view_height (&scene->theme, MAX (scene->n_parts, 1));
  double most = fmin (wide, high);

  return most > GROWS_FROM ? most : 1;
}

void
tb_parts_view_draw (cairo_t *cr, double width, double height, const TbPartsScene *scene)
{
  g_auto (TbCanvas) canvas;
  double grown = growth (width, height, scene),
         block = grown * tb_parts_view_height (&scene->theme, scene->n_parts);
  Layout layout;

  tb_canvas_init (&canvas, cr, width, height, &scene->theme);
  /* A few lines are no small picture. */
  canvas.em = TEXT * scene->theme.text_size * grown;
  tb_canvas_fill_background (&canvas);
  if (scene->n_parts == 0)
    return;
  cairo_save (cr);
  if (grown > 1)
    {
      cairo_translate (cr, canvas.em, 0.5 * (height - block));
      canvas.width -= 2 * canvas.em;
    }
  layout_init (&layout, &canvas, scene);
  tb_draw_color (cr, canvas.theme.rule);
  cairo_set_line_width (cr, 1);
  tb_draw_line (cr, (TbPoint){ tb_draw_crisp (layout.zero), 0 },
                (TbPoint){ tb_draw_crisp (layout.zero), grown > 1 ? block : height });
  for (guint i = 0; i < scene->n_parts; i++)
    draw_part (&canvas, &layout, scene, i);
  cairo_restore (cr);
}
