/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"
#include "tb-progress-view.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "tb-canvas.h"
#include "tb-draw.h"
#include "tb-fill.h"

/* Places, em: margins, the strip of verdicts below the panel of distances, a mark's radius. */
#define LEFT 3.2
#define RIGHT 6.0
#define TOP 2.6
#define BOTTOM 1.2
#define STRIP 5.2
#define STRIP_LINE 2.6
#define MARK 0.42
#define RUN_LINE 1.1
/* The fewest guesses that the width is made for, so that the first do not stand far apart. */
#define LEAST_SHOWN 12
/* The scale of distances: at least so high, boards, and at most. */
#define LEAST_HIGH 6.0
#define MOST_HIGH 20.0
#define BAND_ALPHA 0.14
#define TITLE_RISE 1.4
/* Right ones in a row that are worth a line. */
#define A_RUN 2

typedef struct Chart
{
  TbCanvas canvas;
  const TbProgressScene *scene;
  guint first, count; /* of the guesses that are drawn */
  cairo_rectangle_t panel;
  double strip; /* px down */
  double high;  /* boards on top of the panel */
} Chart;

static double
x_of (const Chart *self, guint index)
{
  double places = MAX (self->count, LEAST_SHOWN);

  return self->panel.x + self->panel.width * (index - self->first + 0.5) / places;
}

static double
y_of (const Chart *self, double off)
{
  return self->panel.y + self->panel.height * (1 - MIN (off, self->high) / self->high);
}

static double
highest (const Chart *self)
{
  double high = LEAST_HIGH;

  for (guint i = self->first; i < self->first + self->count; i++)
    if (!isnan (self->scene->off[i]))
      high = MAX (high, ceil (self->scene->off[i]));
  return MIN (high, MOST_HIGH);
}

static void
label (Chart *self, const char *text, TbPoint at, TbAlign across)
{
  tb_canvas_label (&self->canvas, &(TbLabel){ .text = text,
                                              .x = at.x,
                                              .y = at.y,
                                              .across = across,
                                              .down = TB_ALIGN_MIDDLE,
                                              .color = self->canvas.theme.text });
}

/* The bands of "right" and "close", named at their right end. */
static void
draw_band (Chart *self, double low, double high, TbVerdictOfGuess verdict)
{
  double top = y_of (self, high), bottom = y_of (self, low);
  cairo_rectangle_t band = { self->panel.x, top, self->panel.width, bottom - top };
  double alpha = verdict == TB_GUESS_RIGHT ? 2 * BAND_ALPHA : BAND_ALPHA;

  tb_draw_rectangle (self->canvas.cr, &band);
  tb_draw_color (self->canvas.cr, tb_color_with_alpha (self->canvas.theme.after, alpha));
  cairo_fill (self->canvas.cr);
  label (self, tb_guess_verdict_text (verdict),
         (TbPoint){ self->panel.x + self->panel.width + self->canvas.em, 0.5 * (top + bottom) },
         TB_ALIGN_START);
}

static void
draw_axis (Chart *self)
{
  static const double ticks[] = { 0, 1, 3, 6, 10, 15, 20 };

  tb_draw_color (self->canvas.cr, self->canvas.theme.rule);
  cairo_set_line_width (self->canvas.cr, 1);
  for (gsize i = 0; i < G_N_ELEMENTS (ticks) && ticks[i] <= self->high; i++)
    {
      double y = tb_draw_crisp (y_of (self, ticks[i]));
      g_autofree char *text = tb_number_text (ticks[i], 0);

      tb_draw_color (self->canvas.cr, self->canvas.theme.rule);
      tb_draw_line (self->canvas.cr, (TbPoint){ self->panel.x, y },
                    (TbPoint){ self->panel.x + self->panel.width, y });
      label (self, text, (TbPoint){ self->panel.x - 0.5 * self->canvas.em, y }, TB_ALIGN_END);
    }
  label (self, _ ("Boards off, marker by marker"),
         (TbPoint){ self->panel.x, self->panel.y - TITLE_RISE * self->canvas.em }, TB_ALIGN_START);
}

/* Told apart by shape: a disc is right, a ring close, a cross neither. */
static void
draw_mark (Chart *self, TbPoint at, TbVerdictOfGuess verdict)
{
  cairo_t *cr = self->canvas.cr;
  double radius = MARK * self->canvas.em;

  cairo_set_line_width (cr, 0.6 * self->canvas.theme.line_width);
  tb_draw_color (cr, verdict == TB_GUESS_OFF ? self->canvas.theme.text : self->canvas.theme.after);
  cairo_new_path (cr);
  if (verdict == TB_GUESS_OFF)
    {
      tb_draw_line (cr, (TbPoint){ at.x - radius, at.y - radius }, (TbPoint){ at.x + radius, at.y + radius });
      tb_draw_line (cr, (TbPoint){ at.x - radius, at.y + radius }, (TbPoint){ at.x + radius, at.y - radius });
      return;
    }
  tb_draw_circle (cr, at, radius);
  if (verdict == TB_GUESS_RIGHT)
    cairo_fill (cr);
  else
    cairo_stroke (cr);
}

static void
draw_guesses (Chart *self)
{
  for (guint i = self->first; i < self->first + self->count; i++)
    {
      double off = self->scene->off[i];

      if (!isnan (off))
        draw_mark (self, (TbPoint){ x_of (self, i), y_of (self, off) }, self->scene->verdict[i]);
      draw_mark (self, (TbPoint){ x_of (self, i), self->strip }, self->scene->verdict[i]);
    }
}

static void
draw_run (Chart *self, guint from, guint length)
{
  double y = self->strip + RUN_LINE * self->canvas.em, margin = MARK * self->canvas.em;
  g_autofree char *text = tb_number_text (length, 0);
  double left = x_of (self, from) - margin, right = x_of (self, from + length - 1) + margin;

  tb_draw_color (self->canvas.cr, self->canvas.theme.after);
  cairo_set_line_width (self->canvas.cr, self->canvas.theme.line_width);
  tb_draw_line (self->canvas.cr, (TbPoint){ left, y }, (TbPoint){ right, y });
  label (self, text, (TbPoint){ 0.5 * (left + right), y + 0.9 * self->canvas.em }, TB_ALIGN_MIDDLE);
}

static void
draw_runs (Chart *self)
{
  guint end = self->first + self->count, length = 0;

  for (guint i = self->first; i <= end; i++)
    {
      if (i < end && self->scene->verdict[i] == TB_GUESS_RIGHT)
        {
          length++;
          continue;
        }
      if (length >= A_RUN)
        draw_run (self, i - length, length);
      length = 0;
    }
}

void
tb_progress_view_draw (cairo_t *cr, double width, double height, const TbProgressScene *scene)
{
  Chart self = { .scene = scene };
  double em;

  tb_canvas_init (&self.canvas, cr, width, height, &scene->theme);
  tb_canvas_fill_background (&self.canvas);
  em = self.canvas.em;
  self.count = MIN (scene->count, TB_PROGRESS_SHOWN);
  self.first = scene->count - self.count;
  self.high = highest (&self);
  self.panel = (cairo_rectangle_t){ LEFT * em, TOP * em, width - (LEFT + RIGHT) * em,
                                    height - (TOP + BOTTOM + STRIP) * em };
  self.strip = height - STRIP_LINE * em;
  if (tb_canvas_has_room (&self.canvas) && self.panel.width > 0 && self.panel.height > 0)
    {
      draw_band (&self, 0, TB_GUESS_RIGHT_BOARDS, TB_GUESS_RIGHT);
      draw_band (&self, TB_GUESS_RIGHT_BOARDS, TB_GUESS_CLOSE_BOARDS, TB_GUESS_CLOSE);
      draw_axis (&self);
      label (&self, _ ("Every guess; a line below is a streak"),
             (TbPoint){ self.panel.x, self.strip - TITLE_RISE * em }, TB_ALIGN_START);
      draw_guesses (&self);
      draw_runs (&self);
    }
  tb_canvas_clear (&self.canvas);
}
