/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include <math.h>
#include "tb-draw.h"

/* Dashes and dots of a run's line, in line widths. */
#define DASH 3.4
#define DASH_GAP 2.0
#define DOT_GAP 2.2
#define FLIGHT_WIDTH 0.8
/* An arrow's head is so wide for its length. */
#define ARROW_SHAPE 0.38
/* The end of a bend may lie so far, px, from the line on which the bend began: a chord in its place is then off by a
 * quarter of that. */
#define BEND 0.2

void
tb_draw_color (cairo_t *cr, TbColor color)
{
  cairo_set_source_rgba (cr, color.red, color.green, color.blue, color.alpha);
}

void
tb_draw_rectangle (cairo_t *cr, const cairo_rectangle_t *box)
{
  cairo_rectangle (cr, box->x, box->y, box->width, box->height);
}

void
tb_draw_rounded (cairo_t *cr, const cairo_rectangle_t *box, double radius)
{
  double r = fmin (radius, 0.5 * fmin (box->width, box->height));
  double left = box->x + r, right = box->x + box->width - r, top = box->y + r, bottom = box->y + box->height - r;

  cairo_new_sub_path (cr);
  cairo_arc (cr, right, top, r, -0.5 * G_PI, 0);
  cairo_arc (cr, right, bottom, r, 0, 0.5 * G_PI);
  cairo_arc (cr, left, bottom, r, 0.5 * G_PI, G_PI);
  cairo_arc (cr, left, top, r, G_PI, 1.5 * G_PI);
  cairo_close_path (cr);
}

void
tb_draw_line (cairo_t *cr, TbPoint a, TbPoint b)
{
  cairo_move_to (cr, a.x, a.y);
  cairo_line_to (cr, b.x, b.y);
  cairo_stroke (cr);
}

void
tb_draw_circle (cairo_t *cr, TbPoint centre, double radius)
{
  /* Cairo would look for steps that are fine enough, and never come back. */
  if (!isfinite (radius))
    return;
  cairo_new_sub_path (cr);
  cairo_arc (cr, centre.x, centre.y, radius, 0, 2 * G_PI);
  cairo_close_path (cr);
}

void
tb_draw_image (cairo_t *cr,
               cairo_surface_t *image,
               const cairo_rectangle_t *box,
               const cairo_rectangle_t *clip)
{
  cairo_save (cr);
  tb_draw_rectangle (cr, clip);
  cairo_clip (cr);
  cairo_translate (cr, box->x, box->y);
  cairo_scale (cr, box->width / cairo_image_surface_get_width (image),
               box->height / cairo_image_surface_get_height (image));
  cairo_set_source_surface (cr, image, 0, 0);
  cairo_pattern_set_extend (cairo_get_source (cr), CAIRO_EXTEND_PAD);
  cairo_pattern_set_filter (cairo_get_source (cr), CAIRO_FILTER_BILINEAR);
  cairo_paint (cr);
  cairo_restore (cr);
}

void
tb_draw_arrow_head (cairo_t *cr, TbPoint tip, TbPoint from, double length)
{
  double dx = tip.x - from.x, dy = tip.y - from.y, distance = hypot (dx, dy);

  if (distance == 0)
    return;
  dx *= length / distance;
  dy *= length / distance;
  cairo_move_to (cr, tip.x, tip.y);
  cairo_line_to (cr, tip.x - dx - ARROW_SHAPE * dy, tip.y - dy + ARROW_SHAPE * dx);
  cairo_line_to (cr, tip.x - dx + ARROW_SHAPE * dy, tip.y - dy - ARROW_SHAPE * dx);
  cairo_close_path (cr);
  cairo_fill (cr);
}

double
tb_draw_crisp (double position)
{
  return floor (position) + 0.5;
}

TbRunStyle
tb_run_style (const TbTheme *theme, gboolean before)
{
  return (TbRunStyle){ before ? theme->before : theme->after, before, theme->line_width };
}

void
tb_draw_set_run (cairo_t *cr, const TbRunStyle *style)
{
  const double dashes[2] = { DASH * style->width, DASH_GAP * style->width };

  cairo_set_line_width (cr, style->width);
  cairo_set_line_join (cr, CAIRO_LINE_JOIN_ROUND);
  cairo_set_line_cap (cr, style->before ? CAIRO_LINE_CAP_BUTT : CAIRO_LINE_CAP_ROUND);
  cairo_set_dash (cr, dashes, style->before ? 2 : 0, 0);
}

void
tb_draw_set_flight (cairo_t *cr, const TbRunStyle *style)
{
  const double dots[2] = { 0, DOT_GAP * style->width };

  cairo_set_line_width (cr, FLIGHT_WIDTH * style->width);
  cairo_set_line_cap (cr, CAIRO_LINE_CAP_ROUND);
  cairo_set_dash (cr, dots, 2, 0);
}

void
tb_draw_run_mark (cairo_t *cr, const TbTheme *theme, const TbRunStyle *style, const TbPoint *centre, double radius)
{
  cairo_save (cr);
  cairo_set_dash (cr, NULL, 0, 0);
  tb_draw_circle (cr, *centre, radius);
  tb_draw_color (cr, style->before ? theme->background : style->color);
  cairo_fill_preserve (cr);
  tb_draw_color (cr, style->before ? style->color : theme->background);
  cairo_set_line_width (cr, style->before ? fmin (0.8 * style->width, 0.5 * radius) : 0.5 * style->width);
  cairo_stroke (cr);
  cairo_restore (cr);
}

TbPolyline *
tb_polyline_new (void)
{
  return g_array_new (FALSE, FALSE, sizeof (TbPoint));
}

void
tb_polyline_add (TbPolyline *line, TbPoint point)
{
  g_array_append_val (line, point);
}

/* The last of the points after `first` that one straight stroke can reach. */
static guint
reach (const TbPoint *point, guint first, guint count)
{
  double dx = 0, dy = 0;
  guint i;

  for (i = first + 1; i < count; i++)
    {
      double px = point[i].x - point[first].x, py = point[i].y - point[first].y;
      double length = hypot (dx, dy);

      if (length > 0 && (fabs (dx * py - dy * px) > BEND * length || dx * px + dy * py < 0))
        return i - 1;
      if (length == 0)
        {
          dx = px;
          dy = py;
        }
    }
  return count - 1;
}

void
tb_polyline_trace (const TbPolyline *line, cairo_t *cr)
{
  const TbPoint *point = (const TbPoint *) (gpointer) line->data;

  if (line->len == 0)
    return;
  cairo_move_to (cr, point[0].x, point[0].y);
  for (guint i = 0; i + 1 < line->len;)
    {
      guint next = reach (point, i, line->len);

      next = MAX (next, i + 1);
      cairo_line_to (cr, point[next].x, point[next].y);
      i = next;
    }
}

void
tb_polyline_take (const TbPolyline *line, TbLabelSpace *space)
{
  for (guint i = 1; i < line->len; i++)
    tb_label_space_take_segment (space, g_array_index (line, TbPoint, i - 1), g_array_index (line, TbPoint, i));
}
