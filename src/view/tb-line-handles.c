/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "tb-line-handles.h"

#include <math.h>

#include "tb-draw.h"

/* Radius of a handle at rest and of a raised one, of the focus ring, and of what takes the pointer, em. */
#define RESTING 0.36
#define RAISED 0.62
#define RING 0.92
#define REACH 1.0
#define RESTING_ALPHA 0.8
/* The launch line: dashes and gaps, em, width, px of a path, and strength. */
#define DASH 0.55
#define GAP 0.4
#define LINE_WIDTH 0.6
#define LINE_ALPHA 0.85
/* Edges of a handle, px of a path. */
#define EDGE_WIDTH 0.7
/* Past what is drawn, px: for antialiasing. */
#define MARGIN 2.0

double
tb_line_handle_y (TbLineHandle which)
{
  return which == TB_LINE_HANDLE_AIM ? TB_ARROWS_Y : 0.0;
}

static TbPoint
point_at (const TbLineHandles *self, double x, double y)
{
  TbPoint point;

  tb_lane_view_to_picture (self->width, self->height, self->scene, x, y, &point.x, &point.y);
  return point;
}

static TbPoint
place_of (const TbLineHandles *self, TbLineHandle which)
{
  return point_at (self, self->x[which], tb_line_handle_y (which));
}

void
tb_line_handles_place (const TbLineHandles *self, TbLineHandle which, double *px, double *py)
{
  TbPoint place = place_of (self, which);

  *px = place.x;
  *py = place.y;
}

double
tb_line_handles_reach (const TbTheme *theme)
{
  return 2 * REACH * theme->text_size;
}

TbLineHandle
tb_line_handles_at (const TbLineHandles *self, double px, double py)
{
  double nearest = 0.5 * tb_line_handles_reach (&self->scene->theme);
  TbLineHandle found = TB_LINE_HANDLE_NONE;

  for (TbLineHandle which = 0; which < TB_N_LINE_HANDLES; which++)
    {
      TbPoint place = place_of (self, which);
      double distance = hypot (px - place.x, py - place.y);

      if (distance > nearest)
        continue;
      nearest = distance;
      found = which;
    }
  return found;
}

/* Across the lane every projection is a straight line with an even scale: what counts is how far along it. */
double
tb_line_handles_x_at (const TbLineHandles *self, TbLineHandle which, double px, double py)
{
  TbPoint left = point_at (self, -TB_LANE_HALF_WIDTH, tb_line_handle_y (which));
  TbPoint right = point_at (self, TB_LANE_HALF_WIDTH, tb_line_handle_y (which));
  double across_x = right.x - left.x, across_y = right.y - left.y;
  double square = across_x * across_x + across_y * across_y;
  double share = square > 0 ? ((px - left.x) * across_x + (py - left.y) * across_y) / square : 0.5;

  return (2 * share - 1) * TB_LANE_HALF_WIDTH;
}

static void
draw_launch_line (cairo_t *cr, const TbLineHandles *self)
{
  const TbTheme *theme = &self->scene->theme;
  const double dashes[] = { DASH * theme->text_size, GAP * theme->text_size };

  cairo_save (cr);
  cairo_set_dash (cr, dashes, G_N_ELEMENTS (dashes), 0);
  cairo_set_line_width (cr, LINE_WIDTH * theme->line_width);
  tb_draw_color (cr, tb_color_with_alpha (theme->text, LINE_ALPHA));
  tb_draw_line (cr, place_of (self, TB_LINE_HANDLE_LAYDOWN), place_of (self, TB_LINE_HANDLE_AIM));
  cairo_restore (cr);
}

/* The laydown is a square that stands on its corner, the aim a disc: told apart by shape. */
static void
trace_handle (cairo_t *cr, TbLineHandle which, TbPoint centre, double radius)
{
  cairo_new_path (cr);
  if (which == TB_LINE_HANDLE_AIM)
    {
      tb_draw_circle (cr, centre, radius);
      return;
    }
  cairo_move_to (cr, centre.x, centre.y - radius);
  cairo_line_to (cr, centre.x + radius, centre.y);
  cairo_line_to (cr, centre.x, centre.y + radius);
  cairo_line_to (cr, centre.x - radius, centre.y);
  cairo_close_path (cr);
}

static void
draw_handle (cairo_t *cr, const TbLineHandles *self, TbLineHandle which)
{
  const TbTheme *theme = &self->scene->theme;
  gboolean raised = self->raised == which;
  TbPoint centre = place_of (self, which);

  trace_handle (cr, which, centre, (raised ? RAISED : RESTING) * theme->text_size);
  tb_draw_color (cr, tb_color_with_alpha (theme->background, raised ? 1.0 : RESTING_ALPHA));
  cairo_fill_preserve (cr);
  cairo_set_line_width (cr, EDGE_WIDTH * theme->line_width);
  tb_draw_color (cr, tb_color_with_alpha (theme->after, raised ? 1.0 : RESTING_ALPHA));
  cairo_stroke (cr);
  if (!raised || !self->focused)
    return;
  tb_draw_circle (cr, centre, RING * theme->text_size);
  cairo_stroke (cr);
}

void
tb_line_handles_draw (cairo_t *cr, const TbLineHandles *self)
{
  cairo_save (cr);
  if (self->raised != TB_LINE_HANDLE_NONE)
    draw_launch_line (cr, self);
  for (TbLineHandle which = 0; which < TB_N_LINE_HANDLES; which++)
    draw_handle (cr, self, which);
  cairo_restore (cr);
}

void
tb_line_handles_extents (const TbLineHandles *self, cairo_rectangle_t *extents)
{
  TbPoint a = place_of (self, TB_LINE_HANDLE_LAYDOWN), b = place_of (self, TB_LINE_HANDLE_AIM);
  double room = RING * self->scene->theme.text_size + self->scene->theme.line_width + MARGIN;

  extents->x = MIN (a.x, b.x) - room;
  extents->y = MIN (a.y, b.y) - room;
  extents->width = fabs (a.x - b.x) + 2 * room;
  extents->height = fabs (a.y - b.y) + 2 * room;
}
