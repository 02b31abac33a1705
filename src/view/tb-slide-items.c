/* What a slide shows besides words: a list, votes, sliders, numbers, parts.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include "tb-draw.h"
#include "tb-slide-layout.h"

/* em unless said otherwise. */
#define PADDING 0.4
#define CORNER 0.25
#define BAR_HEIGHT 1.3
#define TRACK_HEIGHT 0.22
#define MARK_RADIUS 0.42
#define LINE 0.09
/* Room for a count behind the longest bar. */
#define COUNT_ROOM 2.6
#define DETAIL_GAP 0.3
/* A bar for so many votes is as long as there is room, until there are more. */
#define FEWEST_VOTES 5
/* Numbers are larger than ordinary type by this. */
#define NUMBER_SIZE 1.35
/* Shares of a row of numbers at which its columns end. */
#define BEFORE_END 0.58
#define AFTER_END 0.79
#define FILL_SHARE 0.22

static void
draw_text (TbCanvas *canvas, const char *text, TbPoint at, TbLabel label)
{
  label.text = text;
  label.x = at.x;
  label.y = at.y;
  if (label.color.alpha == 0)
    label.color = canvas->theme.text;
  if (text != NULL && text[0] != '\0')
    tb_canvas_label (canvas, &label);
}

static void
fill_box (TbCanvas *canvas, cairo_rectangle_t box, TbColor color)
{
  if (box.width <= 0)
    return;
  tb_draw_color (canvas->cr, color);
  tb_draw_rounded (canvas->cr, &box, MIN (CORNER * canvas->em, 0.5 * box.width));
  cairo_fill (canvas->cr);
}

static double
middle_of (const cairo_rectangle_t *row)
{
  return row->y + 0.5 * row->height;
}

/* The chosen one is on a plate and has a mark before it. */
static void
draw_list_item (TbCanvas *canvas, const cairo_rectangle_t *row, const TbSlideItem *item)
{
  double em = canvas->em, middle = middle_of (row);
  TbLabel label = { .down = TB_ALIGN_MIDDLE, .bold = item->chosen, .wrap = row->width - 2 * em };

  if (item->chosen)
    {
      fill_box (canvas, *row, tb_color_mix (canvas->theme.background, canvas->theme.after, FILL_SHARE));
      tb_draw_color (canvas->cr, canvas->theme.after);
      tb_draw_arrow_head (canvas->cr, (TbPoint){ row->x + 0.95 * em, middle }, (TbPoint){ row->x, middle },
                          0.55 * em);
    }
  draw_text (canvas, item->name, (TbPoint){ row->x + 1.3 * em, middle }, label);
}

static guint
most_votes (const TbSlide *slide)
{
  guint most = FEWEST_VOTES;

  for (guint i = 0; i < slide->n_items; i++)
    most = MAX (most, slide->items[i].count);
  return most;
}

/* The key that votes for it, its name, a bar, the count. */
static void
draw_vote (TbCanvas *canvas, const TbSlideLayout *layout, const TbSlide *slide, guint item)
{
  double em = canvas->em, name = tb_slide_layout_name_width (layout, TB_SLIDE_VOTES);
  cairo_rectangle_t row = tb_slide_layout_item (layout, item);
  double middle = middle_of (&row), room = row.width - name - COUNT_ROOM * em, high = BAR_HEIGHT * em;
  cairo_rectangle_t key = { row.x, middle - 0.65 * em, 1.3 * em, 1.3 * em };
  cairo_rectangle_t bar = { row.x + name, middle - 0.5 * high, 0, high };
  g_autofree char *digit = g_strdup_printf ("%u", item + 1);
  g_autofree char *count = g_strdup_printf ("%u", slide->items[item].count);

  bar.width = room * slide->items[item].count / most_votes (slide);
  fill_box (canvas, key, canvas->theme.text);
  draw_text (canvas, digit, (TbPoint){ key.x + 0.5 * key.width, middle },
             (TbLabel){ .across = TB_ALIGN_MIDDLE,
                        .down = TB_ALIGN_MIDDLE,
                        .bold = TRUE,
                        .color = canvas->theme.background });
  draw_text (canvas, slide->items[item].name, (TbPoint){ row.x + 1.8 * em, middle },
             (TbLabel){ .down = TB_ALIGN_MIDDLE, .wrap = name - 2.2 * em });
  fill_box (canvas, bar, canvas->theme.after);
  draw_text (canvas, count, (TbPoint){ bar.x + bar.width + 0.4 * em, middle },
             (TbLabel){ .down = TB_ALIGN_MIDDLE, .bold = TRUE, .size = NUMBER_SIZE * em });
}

/* "17.0 mph → 19.0 mph", its right end at a place; the width is returned. */
static void
draw_pair (TbCanvas *canvas, const TbSlideItem *item, TbPoint at)
{
  double em = canvas->em;
  TbLabel after = { .text = item->after,
                    .bold = TRUE,
                    .across = TB_ALIGN_END,
                    .down = TB_ALIGN_MIDDLE,
                    .color = canvas->theme.after };
  double x = at.x - tb_canvas_measure (canvas, &after).width - 0.4 * em;

  draw_text (canvas, item->after, at, after);
  tb_draw_color (canvas->cr, canvas->theme.text);
  cairo_set_line_width (canvas->cr, LINE * em);
  tb_draw_line (canvas->cr, (TbPoint){ x - 1.1 * em, at.y }, (TbPoint){ x - 0.3 * em, at.y });
  tb_draw_arrow_head (canvas->cr, (TbPoint){ x, at.y }, (TbPoint){ x - em, at.y }, 0.45 * em);
  draw_text (canvas, item->before, (TbPoint){ x - 1.5 * em, at.y },
             (TbLabel){ .across = TB_ALIGN_END, .down = TB_ALIGN_MIDDLE, .color = canvas->theme.before });
}

/* A slider's track with an open ring where it was and a disc where it is. */
static void
draw_track (TbCanvas *canvas, const cairo_rectangle_t *track, double from, double to)
{
  double em = canvas->em, y = middle_of (track), radius = MARK_RADIUS * em;
  TbRunStyle before = tb_run_style (&canvas->theme, TRUE), after = tb_run_style (&canvas->theme, FALSE);
  TbPoint old = { track->x + radius + CLAMP (from, 0, 1) * (track->width - 2 * radius), y };
  TbPoint new = { track->x + radius + CLAMP (to, 0, 1) * (track->width - 2 * radius), y };

  fill_box (canvas, *track, tb_color_mix (canvas->theme.background, canvas->theme.text, FILL_SHARE));
  tb_draw_color (canvas->cr, canvas->theme.after);
  cairo_set_line_width (canvas->cr, TRACK_HEIGHT * em);
  cairo_set_line_cap (canvas->cr, CAIRO_LINE_CAP_BUTT);
  tb_draw_line (canvas->cr, old, new);
  before.width = after.width = 2.2 * LINE * em;
  tb_draw_run_mark (canvas->cr, &canvas->theme, &before, &old, radius);
  tb_draw_run_mark (canvas->cr, &canvas->theme, &after, &new, radius);
}

static void
draw_change (TbCanvas *canvas, const cairo_rectangle_t *row, const TbSlideItem *item)
{
  double em = canvas->em, first = row->y + 0.85 * em;
  cairo_rectangle_t track = { row->x, row->y + 1.95 * em, row->width, TRACK_HEIGHT * em };

  draw_text (canvas, item->name, (TbPoint){ row->x, first }, (TbLabel){ .down = TB_ALIGN_MIDDLE });
  draw_pair (canvas, item, (TbPoint){ row->x + row->width, first });
  if (!isnan (item->from) && !isnan (item->to))
    draw_track (canvas, &track, item->from, item->to);
}

static void
draw_heads (TbCanvas *canvas, const TbSlideLayout *layout)
{
  const cairo_rectangle_t *box = &layout->heads;
  double middle = middle_of (box);
  TbLabel label = { .across = TB_ALIGN_END, .down = TB_ALIGN_MIDDLE, .color = canvas->theme.before };

  draw_text (canvas, _ ("before"), (TbPoint){ box->x + BEFORE_END * box->width, middle }, label);
  label.color = canvas->theme.after;
  label.bold = TRUE;
  draw_text (canvas, _ ("after"), (TbPoint){ box->x + AFTER_END * box->width, middle }, label);
  label.color = canvas->theme.quiet;
  label.bold = FALSE;
  /* Translators: head of a column with after − before. */
  draw_text (canvas, _ ("change"), (TbPoint){ box->x + box->width, middle }, label);
}

static void
draw_number (TbCanvas *canvas, const cairo_rectangle_t *row, const TbSlideItem *item)
{
  double middle = middle_of (row), size = NUMBER_SIZE * canvas->em;
  TbLabel label = { .across = TB_ALIGN_END, .down = TB_ALIGN_MIDDLE, .size = size };

  draw_text (canvas, item->name, (TbPoint){ row->x, middle },
             (TbLabel){ .down = TB_ALIGN_MIDDLE, .wrap = 0.4 * row->width });
  label.color = canvas->theme.before;
  draw_text (canvas, item->before, (TbPoint){ row->x + BEFORE_END * row->width, middle }, label);
  label.color = canvas->theme.text;
  draw_text (canvas, item->detail, (TbPoint){ row->x + row->width, middle }, label);
  label.color = canvas->theme.after;
  label.bold = TRUE;
  draw_text (canvas, item->after, (TbPoint){ row->x + AFTER_END * row->width, middle }, label);
  tb_draw_color (canvas->cr, canvas->theme.rule);
  cairo_set_line_width (canvas->cr, MAX (1, 0.04 * canvas->em));
  tb_draw_line (canvas->cr, (TbPoint){ row->x, row->y }, (TbPoint){ row->x + row->width, row->y });
}

/* Beside the longest bar, for the words of any. */
static double
detail_room (TbCanvas *canvas, const TbSlide *slide)
{
  double room = 0;

  for (guint i = 0; i < slide->n_items; i++)
    {
      TbLabel label = { .text = slide->items[i].detail, .bold = TRUE };

      room = MAX (room, tb_canvas_measure (canvas, &label).width);
    }
  return room + DETAIL_GAP * canvas->em;
}

/* The bars take all the room there is: where none points the other way, none is kept for one. */
typedef struct PartScale
{
  double nothing; /* px from the left */
  double px_per_unit;
} PartScale;

static PartScale
part_scale (TbCanvas *canvas, const TbSlide *slide, double left, double width)
{
  double low = 0, high = 0, detail = detail_room (canvas, slide), room;

  for (guint i = 0; i < slide->n_items; i++)
    {
      low = fmin (low, slide->items[i].to);
      high = fmax (high, slide->items[i].to);
    }
  room = MAX (width - (low < 0 ? detail : 0) - (high > 0 ? detail : 0), canvas->em);
  return (PartScale){ .px_per_unit = high > low ? room / (high - low) : 0,
                      .nothing
                      = left + (low < 0 ? detail : 0) + (high > low ? -low * room / (high - low) : 0) };
}

static void
draw_part (TbCanvas *canvas, const TbSlideLayout *layout, const TbSlide *slide, guint item)
{
  double em = canvas->em, name = tb_slide_layout_name_width (layout, TB_SLIDE_PARTS);
  cairo_rectangle_t row = tb_slide_layout_item (layout, item);
  PartScale scale = part_scale (canvas, slide, row.x + name, row.width - name);
  double value = slide->items[item].to, part = isfinite (value) ? value * scale.px_per_unit : 0;
  double middle = middle_of (&row);
  double end = scale.nothing + part, side = part < 0 ? -1 : 1;

  draw_text (canvas, slide->items[item].name, (TbPoint){ row.x, middle },
             (TbLabel){ .down = TB_ALIGN_MIDDLE, .wrap = name - em });
  fill_box (canvas,
            (cairo_rectangle_t){ MIN (scale.nothing, end), middle - 0.45 * em, fabs (part), 0.9 * em },
            canvas->theme.after);
  tb_draw_color (canvas->cr, canvas->theme.text);
  cairo_set_line_width (canvas->cr, LINE * em);
  tb_draw_line (canvas->cr, (TbPoint){ scale.nothing, row.y },
                (TbPoint){ scale.nothing, row.y + row.height });
  draw_text (
      canvas, slide->items[item].detail, (TbPoint){ end + side * DETAIL_GAP * em, middle },
      (TbLabel){ .across = part < 0 ? TB_ALIGN_END : TB_ALIGN_START, .down = TB_ALIGN_MIDDLE, .bold = TRUE });
}

static void
draw_item (TbCanvas *canvas, const TbSlideLayout *layout, const TbSlide *slide, guint item)
{
  cairo_rectangle_t row = tb_slide_layout_item (layout, item);

  switch (slide->kind)
    {
    case TB_SLIDE_LIST:
      draw_list_item (canvas, &row, &slide->items[item]);
      break;
    case TB_SLIDE_VOTES:
      draw_vote (canvas, layout, slide, item);
      break;
    case TB_SLIDE_CHANGES:
      draw_change (canvas, &row, &slide->items[item]);
      break;
    case TB_SLIDE_NUMBERS:
      draw_number (canvas, &row, &slide->items[item]);
      break;
    case TB_SLIDE_PARTS:
      draw_part (canvas, layout, slide, item);
      break;
    case TB_SLIDE_WORDS:
    default:
      break;
    }
}

void
tb_slide_items_draw (TbCanvas *canvas, const TbSlideLayout *layout, const TbSlide *slide)
{
  if (layout->heads.height > 0 && slide->n_items > 0)
    draw_heads (canvas, layout);
  for (guint i = 0; i < slide->n_items; i++)
    draw_item (canvas, layout, slide, i);
}
