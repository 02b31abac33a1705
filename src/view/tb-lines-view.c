/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include "tb-canvas.h"
#include "tb-draw.h"
#include "tb-lane-layout.h"
#include "tb-lines-view.h"
#include "tb-room.h"

/* Handles, em, and how near a pointer must be. */
#define HANDLE 0.5
#define REACH 1.2
#define FAINT 0.55
/* Points of a faint line. */
#define POINTS 60

typedef struct View
{
  TbCanvas *canvas;
  const TbLinesScene *scene;
  double width, height;
} View;

static TbPoint
lane_point (const View *self, double x, double y)
{
  const TbLaneScene *lane = &self->scene->lane;
  TbPoint point;

  tb_lane_view_to_picture (self->width, self->height, lane, lane->mirrored ? -x : x, y, &point.x, &point.y);
  return point;
}

/* A line that finds the pocket is whole, one that does not is dotted. */
static void
set_family_line (const View *self, gboolean finds_pocket)
{
  double width = 0.45 * self->canvas->theme.line_width;
  const double dots[2] = { 0.5, 3.2 * width };

  tb_draw_color (self->canvas->cr, tb_color_with_alpha (self->canvas->theme.after, FAINT));
  cairo_set_line_width (self->canvas->cr, width);
  cairo_set_line_cap (self->canvas->cr, CAIRO_LINE_CAP_ROUND);
  cairo_set_dash (self->canvas->cr, dots, finds_pocket ? 0 : 2, 0);
}

static gboolean
finds_pocket (const TbRun *run)
{
  return run->status == TB_OK && isnan (run->path.measures.gutter_y)
         && tb_in_pocket (&run->setup->shot.assumed, run->path.measures.x_at_pins);
}

static void
draw_member (const View *self, const TbRun *run)
{
  g_autoptr (TbPolyline) line = tb_polyline_new ();

  for (int i = 0; i <= POINTS; i++)
    {
      TbSample sample;

      if (!tb_path_at_distance (&run->path, TB_HEAD_PIN_Y * i / POINTS, &sample))
        continue;
      if (fabs (sample.position.x) > TB_LANE_HALF_WIDTH)
        break;
      tb_polyline_add (line, lane_point (self, sample.position.x, sample.position.y));
    }
  cairo_save (self->canvas->cr);
  set_family_line (self, finds_pocket (run));
  tb_polyline_trace (line, self->canvas->cr);
  cairo_stroke (self->canvas->cr);
  cairo_restore (self->canvas->cr);
}

static void
draw_family (const View *self)
{
  const TbFamily *family = self->scene->family;

  for (guint i = 0; family && i < family->count; i++)
    if (family->runs[i]->status == TB_OK)
      draw_member (self, family->runs[i]);
}

static void
draw_handle (const View *self, TbPoint at)
{
  tb_draw_circle (self->canvas->cr, at, HANDLE * self->canvas->em);
  tb_draw_color (self->canvas->cr, self->canvas->theme.background);
  cairo_fill_preserve (self->canvas->cr);
  tb_draw_color (self->canvas->cr, self->canvas->theme.after);
  cairo_set_line_width (self->canvas->cr, 0.8 * self->canvas->theme.line_width);
  cairo_stroke (self->canvas->cr);
}

/* The launch line, on to the pins as if nothing hooked, and its two handles. */
static void
draw_launch (const View *self)
{
  static const double dash[] = { 4, 4 };
  const TbDelivery *delivery = self->scene->delivery;
  double end = TB_HEAD_PIN_Y, x = tb_delivery_launch_x (delivery, end);

  /* To the gutter's edge if it leaves the lane. */
  if (fabs (x) > TB_LANE_HALF_WIDTH)
    {
      double edge = x > 0 ? TB_LANE_HALF_WIDTH : -TB_LANE_HALF_WIDTH;

      end *= (edge - delivery->laydown) / (x - delivery->laydown);
      x = edge;
    }
  cairo_save (self->canvas->cr);
  cairo_set_dash (self->canvas->cr, dash, G_N_ELEMENTS (dash), 0);
  tb_draw_color (self->canvas->cr, tb_color_with_alpha (self->canvas->theme.text, 0.6));
  cairo_set_line_width (self->canvas->cr, 1);
  tb_draw_line (self->canvas->cr, lane_point (self, delivery->laydown, 0), lane_point (self, x, end));
  cairo_restore (self->canvas->cr);
  draw_handle (self, lane_point (self, delivery->laydown, 0));
  draw_handle (self, lane_point (self, delivery->aim, TB_ARROWS_Y));
}

static void
draw_spare (const View *self)
{
  const TbSpare *spare = self->scene->spare;
  TbMark pin = tb_lane_pins[spare->pin];
  double x = tb_x_from_board (spare->pin_board);
  TbPoint from = lane_point (self, tb_x_from_board (spare->laydown_board), 0),
          at = lane_point (self, x, pin.y);

  cairo_save (self->canvas->cr);
  tb_draw_color (self->canvas->cr, self->canvas->theme.text);
  cairo_set_line_width (self->canvas->cr, 0.7 * self->canvas->theme.line_width);
  tb_draw_line (self->canvas->cr, from, at);
  tb_draw_circle (self->canvas->cr, at, self->canvas->em);
  cairo_stroke (self->canvas->cr);
  cairo_restore (self->canvas->cr);
}

void
tb_lines_view_draw (cairo_t *cr, double width, double height, const TbLinesScene *scene)
{
  g_auto (TbCanvas) canvas = { 0 };
  View self = { &canvas, scene, width, height };

  tb_lane_view_draw (cr, width, height, &scene->lane);
  tb_canvas_init (&canvas, cr, width, height, &scene->lane.theme);
  if (!tb_canvas_has_room (&canvas))
    return;
  draw_family (&self);
  if (scene->spare)
    draw_spare (&self);
  if (scene->delivery)
    draw_launch (&self);
}

TbLineHandle
tb_lines_view_handle_at (double width, double height, const TbLinesScene *scene, const double at[2])
{
  View self = { NULL, scene, width, height };
  double reach = REACH * tb_canvas_text_size (width, height, &scene->lane.theme);
  TbPoint line, aim;

  if (!scene->delivery)
    return TB_LINE_NOWHERE;
  line = lane_point (&self, scene->delivery->laydown, 0);
  aim = lane_point (&self, scene->delivery->aim, TB_ARROWS_Y);
  if (hypot (aim.x - at[0], aim.y - at[1]) <= reach)
    return TB_LINE_AIM;
  return hypot (line.x - at[0], line.y - at[1]) <= reach ? TB_LINE_LAYDOWN : TB_LINE_NOWHERE;
}

double
tb_lines_view_board (double width, double height, const TbLinesScene *scene, const double at[2])
{
  View self = { NULL, scene, width, height };
  TbPoint a = lane_point (&self, tb_x_from_board (1), 0),
          b = lane_point (&self, tb_x_from_board (TB_LANE_BOARDS), 0);
  double dx = b.x - a.x, dy = b.y - a.y;

  return 1 + (TB_LANE_BOARDS - 1) * ((at[0] - a.x) * dx + (at[1] - a.y) * dy) / (dx * dx + dy * dy);
}
