/* How high, how far and how steeply the balls are released, written beside them.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include <glib/gi18n-lib.h>
#include "tb-loft-private.h"
#include "tb-unit-pair.h"

/* Distances, em. */
#define DIMENSION_GAP 0.7 /* from the ball to the measure of its height */
#define ARROW 0.5
#define RAY 3.2 /* from a ball along its launch */
#define RAY_ARC 2.2
#define HEIGHT_COLUMN 4.6 /* from one measure of height to the next */
/* A ball released lower than this, m, has no height worth a measure in the picture. */
#define HEIGHT_FROM (0.5 * TB_METRES_PER_INCH)
/* A launch that is less than this off the level, rad, is level to the eye. */
#define ANGLE_FROM tb_radians_from_deg (0.25)

char *
loft_length_text (const TbLoft *self, double metres, int digits)
{
  TbToldUnit told = tb_told_unit ("in", digits, self->scene->metric);

  return g_strdup_printf ("%.*f %s", told.digits, tb_in_from_metres (metres) * told.factor, told.unit);
}

/* The left edge of the balls at release, px. */
static double
leftmost (const TbLoft *self, const TbLoftRun *runs, int count)
{
  double left = INFINITY;

  for (int i = 0; i < count; i++)
    left = MIN (left, loft_point (self, runs[i].path->samples[0].position.y, 0).x
                          - loft_ball_radius (self, runs[i].path));
  return left;
}

/* A measure between two points, with ends across it and arrows where there is room for them. */
static void
draw_dimension (const TbLoft *self, TbPoint a, TbPoint b)
{
  cairo_t *cr = self->canvas->cr;
  double em = self->canvas->em, length = hypot (b.x - a.x, b.y - a.y);
  TbPoint across = length > 0 ? (TbPoint){ -(b.y - a.y) / length, (b.x - a.x) / length } : (TbPoint){ 0, 1 };

  cairo_set_line_width (cr, MAX (1, 0.35 * self->canvas->theme.line_width));
  tb_draw_line (cr, a, b);
  for (int i = 0; i < 2; i++)
    {
      TbPoint at = i == 0 ? a : b;

      tb_draw_line (cr, (TbPoint){ at.x - 0.3 * em * across.x, at.y - 0.3 * em * across.y },
                    (TbPoint){ at.x + 0.3 * em * across.x, at.y + 0.3 * em * across.y });
    }
  if (length > 2.5 * ARROW * em)
    {
      tb_draw_arrow_head (cr, a, b, ARROW * em);
      tb_draw_arrow_head (cr, b, a, ARROW * em);
    }
}

/* A fine dotted line that leads the eye to a measure. */
static void
draw_lead (const TbLoft *self, TbPoint a, TbPoint b)
{
  cairo_t *cr = self->canvas->cr;
  const double dots[2] = { 0.2 * self->canvas->em, 0.3 * self->canvas->em };

  cairo_set_line_width (cr, 1);
  cairo_set_dash (cr, dots, 2, 0);
  tb_draw_line (cr, a, b);
  cairo_set_dash (cr, NULL, 0, 0);
}

/* Beside the balls at release, which end at `left`, px: how high one of them is over the lane. */
static void
draw_height (const TbLoft *self, const TbLoftRun *run, double left)
{
  double em = self->canvas->em, y = run->path->samples[0].position.y;
  TbPoint low = loft_point (self, y, 0), high = loft_point (self, y, run->height);
  g_autofree char *text = loft_length_text (self, run->height, 1);
  TbLabel label = { .text = text, .across = TB_ALIGN_END, .down = TB_ALIGN_MIDDLE };

  if (run->height < HEIGHT_FROM)
    return;
  label.color = self->scene->measured ? run->style.color : self->canvas->theme.text;
  low.x = high.x = tb_draw_crisp (left - DIMENSION_GAP * em);
  label.x = low.x - 0.5 * em;
  label.y = 0.5 * (low.y + high.y);
  if (!tb_canvas_try_label (self->canvas, &label))
    return;
  tb_draw_color (self->canvas->cr, label.color);
  if (self->scene->measured)
    draw_lead (self, high, loft_point (self, y, run->height));
  draw_dimension (self, low, high);
}

/* From the foul line to where the hand lets go, in a row of its own above the balls. */
static void
draw_reach (const TbLoft *self, const TbLoftRun *run, double y)
{
  cairo_t *cr = self->canvas->cr;
  double em = self->canvas->em, reach = run->path->samples[0].position.y;
  TbPoint foul = loft_point (self, 0, 0), centre = loft_point (self, reach, run->path->samples[0].position.z);
  TbPoint from = { tb_draw_crisp (foul.x), y }, to = { tb_draw_crisp (centre.x), y };
  g_autofree char *length = loft_length_text (self, reach, 0);
  /* Translators: %s is a length such as "12 in". */
  g_autofree char *text = g_strdup_printf (_ ("%s past the line"), length);
  TbLabel label = { .text = text, .x = to.x + 0.6 * em, .y = y, .down = TB_ALIGN_MIDDLE };

  label.color = run->style.color;
  tb_draw_color (cr, run->style.color);
  draw_lead (self, from, (TbPoint){ from.x, foul.y });
  draw_lead (self, to, (TbPoint){ to.x, centre.y });
  draw_dimension (self, from, to);
  tb_canvas_try_label (self->canvas, &label);
}

/* A ray along the launch, the level, and the angle between them, as it is drawn. */
static void
draw_angle (const TbLoft *self, const TbLoftRun *run)
{
  cairo_t *cr = self->canvas->cr;
  const TbSample *release = &run->path->samples[0];
  double angle = atan2 (release->velocity.z, release->velocity.y);
  double drawn = atan2 (release->velocity.z * self->stretch, release->velocity.y), em = self->canvas->em;
  double length = loft_ball_radius (self, run->path) + RAY * em,
         arc = loft_ball_radius (self, run->path) + RAY_ARC * em;
  TbPoint at = loft_point (self, release->position.y, release->position.z);
  TbPoint tip = { at.x + length * cos (drawn), at.y - length * sin (drawn) };
  g_autofree char *text = g_strdup_printf (_ ("%.1f°"), tb_deg_from_radians (angle));
  TbLabel label = { .text = text, .down = TB_ALIGN_END, .plate = TRUE };

  if (fabs (angle) < ANGLE_FROM)
    return;
  label.color = run->style.color;
  label.x = tip.x + 0.3 * em;
  label.y = fmin (tip.y, at.y) - 0.3 * em;
  tb_draw_color (cr, run->style.color);
  cairo_set_line_width (cr, MAX (1, 0.35 * self->canvas->theme.line_width));
  tb_draw_line (cr, at, tip);
  tb_draw_arrow_head (cr, tip, at, ARROW * em);
  tb_draw_line (cr, at, (TbPoint){ at.x + length, at.y });
  (drawn > 0 ? cairo_arc_negative : cairo_arc) (cr, at.x, at.y, arc, 0, -drawn);
  cairo_stroke (cr);
  tb_canvas_try_label (self->canvas, &label);
}

void
loft_measure_runs (const TbLoft *self, const TbLoftRun *runs, int count)
{
  double left = leftmost (self, runs, count);

  for (int i = 0; i < count; i++)
    {
      double y = self->plot.y - (count - i - 0.5) * LOFT_ROW * self->canvas->em;

      draw_reach (self, &runs[i], tb_draw_crisp (y));
      draw_angle (self, &runs[i]);
      draw_height (self, &runs[i], left - i * HEIGHT_COLUMN * self->canvas->em);
    }
}

void
loft_draw_height (const TbLoft *self, const TbLoftRun *runs, int count)
{
  if (count > 0)
    draw_height (self, &runs[count - 1], leftmost (self, runs, count));
}
