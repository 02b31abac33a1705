/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include "tb-room-view-private.h"

/* Ticks of an axis: about so many. */
#define TICKS 5

/* 1, 2 or 5 times a power of ten. */
static double
tick_step (double span)
{
  static const double steps[] = { 1, 2, 5, 10 };
  double power = pow (10, floor (log10 (span / TICKS)));

  for (guint i = 0; i < G_N_ELEMENTS (steps); i++)
    if (span / (steps[i] * power) <= TICKS + 0.5)
      return steps[i] * power;
  return 10 * power;
}

static char *
miss_text (double miss, double step)
{
  int digits = step < 0.1 ? 2 : step < 1 ? 1 : 0;

  if (fabs (miss) < 0.5 * pow (10, -digits))
    return g_strdup ("0");
  /* A true minus, as wide as a plus. */
  return miss > 0 ? g_strdup_printf ("+%.*f", digits, miss) : g_strdup_printf ("−%.*f", digits, -miss);
}

/* At a miss as it is told, with that much to the next tick. */
static void
draw_tick (TbRoomDrawing *self, const cairo_rectangle_t *plot, int axis, double told, double step)
{
  TbCanvas *canvas = self->canvas;
  double em = canvas->em;
  double share = tb_room_share_at (&self->axis[axis], told / tb_room_unit (self, &self->axis[axis]).factor);
  g_autofree char *text = miss_text (told, step);
  TbLabel label = { .text = text, .color = canvas->theme.quiet, .size = 0.92 * em };
  TbPoint foot, tip;

  if (axis == 0)
    {
      foot = (TbPoint){ tb_draw_crisp (plot->x + share * plot->width), plot->y + plot->height };
      tip = (TbPoint){ foot.x, foot.y + TB_ROOM_TICK * em };
      label.across = TB_ALIGN_MIDDLE;
    }
  else
    {
      foot = (TbPoint){ plot->x, tb_draw_crisp (plot->y + plot->height - share * plot->height) };
      tip = (TbPoint){ foot.x - TB_ROOM_TICK * em, foot.y };
      label.across = TB_ALIGN_END;
      label.down = TB_ALIGN_MIDDLE;
    }
  label.x = tip.x - (axis == 1 ? 0.2 * em : 0);
  label.y = tip.y;
  if (!tb_canvas_try_label (canvas, &label))
    return;
  tb_draw_color (canvas->cr, canvas->theme.quiet);
  cairo_set_line_width (canvas->cr, 1);
  tb_draw_line (canvas->cr, foot, tip);
}

/* What is missed, and what the plan is. */
static char *
axis_text (const TbRoomDrawing *self, const TbRoomMap *map, const TbRoomAxis *axis)
{
  const TbField *field = axis->field;
  double plan = tb_field_get (field, tb_shot_group_const (&map->setup->shot, field->group));
  TbToldUnit told = tb_room_unit (self, axis);

  if (axis->with)
    return g_strdup_printf (_ ("Whole line: boards off %.*f at the foul line"), field->digits, plan);
  /* Translators: what is missed, and the board that was planned. */
  if (tb_room_is_board (axis))
    return g_strdup_printf (_ ("%s: boards off %.*f"), _ (field->label), field->digits, plan);
  /* Translators: what is missed, the value that was planned, and its unit: "Speed: off 17.0 mph". */
  return g_strdup_printf (_ ("%s: off %.*f %s"), _ (field->label), told.digits, plan * told.factor, told.unit);
}

static void
draw_axis_title (TbRoomDrawing *self, const cairo_rectangle_t *plot, const TbRoomMap *map, int axis)
{
  TbCanvas *canvas = self->canvas;
  double em = canvas->em;
  g_autofree char *text = axis_text (self, map, &self->axis[axis]);
  TbLabel label = { .text = text, .color = canvas->theme.text, .size = 0.95 * em, .across = TB_ALIGN_MIDDLE };

  label.x = plot->x + 0.5 * plot->width;
  label.y = plot->y + plot->height + (TB_ROOM_TICK + TB_ROOM_ROW) * em;
  if (axis == 1)
    {
      label.upwards = TRUE;
      label.down = TB_ALIGN_MIDDLE;
      label.across = TB_ALIGN_START;
      label.x = plot->x - (TB_ROOM_NUMBERS + TB_ROOM_ROW) * em;
      label.y = plot->y + 0.5 * plot->height;
    }
  tb_canvas_label (canvas, &label);
}

void
tb_room_draw_axes (TbRoomDrawing *self, const cairo_rectangle_t *plot, const TbRoomMap *map)
{
  for (int axis = 0; axis < TB_ROOM_AXES; axis++)
    {
      const TbRoomAxis *a = &self->axis[axis];
      double factor = tb_room_unit (self, a).factor;
      double low = a->low * factor, high = a->high * factor, step = tick_step (high - low);

      draw_axis_title (self, plot, map, axis);
      for (double miss = ceil (low / step - 1e-9) * step; miss <= high + 1e-9 * step; miss += step)
        draw_tick (self, plot, axis, miss, step);
    }
}
