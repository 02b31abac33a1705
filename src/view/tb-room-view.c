/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include "tb-room-view-private.h"

/* Distances, em. */
#define PAD 0.8
#define GAP 1.6 /* between two maps */
#define SWATCH 2.4
/* Two maps stand beside each other in a picture at least so wide for its height. */
#define BESIDE 0.95

TbRoomScene
tb_room_scene_default (void)
{
  return (TbRoomScene){ .theme = tb_theme_light (1), .show_legend = TRUE };
}

double
tb_room_share_at (const TbRoomAxis *axis, double miss)
{
  return (miss - axis->low) / (axis->high - axis->low);
}

gboolean
tb_room_is_board (const TbRoomAxis *axis)
{
  return g_str_equal (axis->field->unit, "board");
}

TbToldUnit
tb_room_unit (const TbRoomDrawing *self, const TbRoomAxis *axis)
{
  return tb_told_unit (axis->field->unit, axis->field->digits, self->scene->metric);
}

static const TbRoomPanel *
panel_of (const TbRoomScene *scene, int side)
{
  return side == 0 ? &scene->before : &scene->after;
}

/* A cell of the picture turned into what the map itself takes of it. */
static cairo_rectangle_t
plot_in (const TbCanvas *canvas, cairo_rectangle_t cell)
{
  double em = canvas->em;

  cell.x += (TB_ROOM_ROW + TB_ROOM_NUMBERS) * em;
  cell.width -= (TB_ROOM_ROW + TB_ROOM_NUMBERS + PAD) * em;
  cell.y += (TB_ROOM_ROW + 0.4) * em;
  cell.height -= (TB_ROOM_ROW + 0.4 + 2 * TB_ROOM_ROW + TB_ROOM_TICK) * em;
  return cell;
}

static void
lay_out_pair (TbRoomDrawing *self, const cairo_rectangle_t *room)
{
  double gap = GAP * self->canvas->em;
  gboolean beside = room->width > BESIDE * room->height;

  for (int side = 0; side < 2; side++)
    {
      cairo_rectangle_t cell = *room;

      if (beside)
        {
          cell.width = 0.5 * (room->width - gap);
          cell.x += side * (cell.width + gap);
        }
      else
        {
          cell.height = 0.5 * (room->height - gap);
          cell.y += side * (cell.height + gap);
        }
      self->plot[side] = plot_in (self->canvas, cell);
    }
}

static void
lay_out (TbRoomDrawing *self)
{
  const TbRoomScene *scene = self->scene;
  double em = self->canvas->em;
  cairo_rectangle_t room
      = { PAD * em, PAD * em, self->canvas->width - 2 * PAD * em, self->canvas->height - 2 * PAD * em };

  self->axis = scene->after.map ? scene->after.map->axis : scene->before.map->axis;
  if (scene->show_legend)
    {
      double height = (TB_ROOM_LEGEND_BAR + TB_ROOM_ROW + 0.3) * em;

      room.height -= height + 0.5 * em;
      self->legend = (cairo_rectangle_t){ room.x + TB_ROOM_NUMBERS * em, room.y + room.height + 0.5 * em,
                                          room.width - (TB_ROOM_NUMBERS + PAD) * em, height };
    }
  if (scene->before.map && scene->after.map)
    lay_out_pair (self, &room);
  else
    self->plot[scene->after.map ? 1 : 0] = plot_in (self->canvas, room);
}

static void
draw_heading (TbRoomDrawing *self, const cairo_rectangle_t *plot, const TbRoomPanel *panel, gboolean before)
{
  TbCanvas *canvas = self->canvas;
  double em = canvas->em, y = plot->y - 0.95 * em;
  TbRunStyle style = tb_run_style (&canvas->theme, before);
  TbLabel label
      = { .text = panel->label, .color = canvas->theme.text, .bold = TRUE, .down = TB_ALIGN_MIDDLE };

  cairo_save (canvas->cr);
  tb_draw_color (canvas->cr, style.color);
  tb_draw_set_run (canvas->cr, &style);
  tb_draw_line (canvas->cr, (TbPoint){ plot->x, y }, (TbPoint){ plot->x + SWATCH * em, y });
  cairo_restore (canvas->cr);
  label.x = plot->x + (SWATCH + 0.6) * em;
  label.y = y;
  tb_canvas_label (canvas, &label);
}

static void
draw_panel (TbRoomDrawing *self, int side)
{
  const TbRoomPanel *panel = panel_of (self->scene, side);
  const cairo_rectangle_t *plot = &self->plot[side];
  cairo_t *cr = self->canvas->cr;

  if (!panel->map || plot->width <= 0 || plot->height <= 0)
    return;
  tb_room_tint_draw (cr, plot, &self->canvas->theme, panel->map);
  tb_room_gutter_draw (cr, plot, &self->canvas->theme, panel->map);
  if (panel->label)
    draw_heading (self, plot, panel, side == 0);
  tb_room_draw_axes (self, plot, panel->map);
  tb_room_draw_lines (self, plot, panel->map, TB_ROOM_LINE_STROKE);
  tb_room_label_bars (self, plot, panel);
  tb_room_draw_lines (self, plot, panel->map, TB_ROOM_LINE_LABEL);
  tb_room_draw_plan (self, plot, panel, side == 0);
  tb_draw_color (cr, self->canvas->theme.quiet);
  cairo_set_line_width (cr, 1);
  cairo_rectangle (cr, floor (plot->x) + 0.5, floor (plot->y) + 0.5, floor (plot->width),
                   floor (plot->height));
  cairo_stroke (cr);
}

void
tb_room_view_draw (cairo_t *cr, double width, double height, const TbRoomScene *scene)
{
  g_auto (TbCanvas) canvas = { 0 };
  TbRoomDrawing self = { .canvas = &canvas, .scene = scene };

  tb_canvas_init (&canvas, cr, width, height, &scene->theme);
  tb_canvas_fill_background (&canvas);
  if (!tb_canvas_has_room (&canvas) || (!scene->before.map && !scene->after.map))
    return;
  lay_out (&self);
  for (int side = 0; side < 2; side++)
    draw_panel (&self, side);
  if (scene->show_legend)
    tb_room_draw_legend (&self);
}

gboolean
tb_room_view_to_miss (double width,
                      double height,
                      const TbRoomScene *scene,
                      const double at[2],
                      double miss[TB_ROOM_AXES],
                      gboolean *is_before)
{
  g_auto (TbCanvas) canvas = { 0 };
  TbRoomDrawing self = { .canvas = &canvas, .scene = scene };

  tb_canvas_init (&canvas, NULL, width, height, &scene->theme);
  if (!tb_canvas_has_room (&canvas) || (!scene->before.map && !scene->after.map))
    return FALSE;
  lay_out (&self);
  for (int side = 0; side < 2; side++)
    {
      const cairo_rectangle_t *plot = &self.plot[side];
      double across = (at[0] - plot->x) / plot->width, up = 1 - (at[1] - plot->y) / plot->height;

      if (!(plot->width > 0) || !(across >= 0 && across <= 1 && up >= 0 && up <= 1))
        continue;
      miss[0] = self.axis[0].low + across * (self.axis[0].high - self.axis[0].low);
      miss[1] = self.axis[1].low + up * (self.axis[1].high - self.axis[1].low);
      *is_before = side == 0;
      return TRUE;
    }
  return FALSE;
}
