/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include "tb-room-view-private.h"

/* Strokes at a bar's ends, em. */
#define BAR_END 0.45

static char *
bar_text (const TbRoomDrawing *self, const TbRoomAxis *axis, const TbRoomWidth *width)
{
  TbToldUnit told = tb_room_unit (self, axis);
  gboolean open = width->low_is_end || width->high_is_end;
  double size = width->high - width->low;

  if (tb_room_is_board (axis))
    return g_strdup_printf (open ? _ ("≥ %.1f boards") : _ ("%.1f boards"), size);
  /* Translators: a width with its unit, such as "0.7 mph"; the first form: at least as much. */
  return g_strdup_printf (open ? _ ("≥ %.2g %s") : _ ("%.2g %s"), size * told.factor, told.unit);
}

/* At the bar's far end if that is free, else at the near one. */
static void
label_bar (TbRoomDrawing *self, const cairo_rectangle_t *plot, int axis, const TbRoomWidth *width)
{
  g_autofree char *text = bar_text (self, &self->axis[axis], width);
  const double ends[2] = { width->high, width->low };
  double em = self->canvas->em;

  for (int i = 0; i < 2; i++)
    {
      double sign = i == 0 ? 1 : -1;
      TbLabel label = { .text = text, .color = self->canvas->theme.text, .bold = TRUE, .plate = TRUE };

      label.x = plot->x + plot->width * tb_room_share_at (&self->axis[0], axis == 0 ? ends[i] : 0);
      label.y = plot->y + plot->height * (1 - tb_room_share_at (&self->axis[1], axis == 1 ? ends[i] : 0));
      label.across = axis == 1 ? TB_ALIGN_MIDDLE : i == 0 ? TB_ALIGN_START : TB_ALIGN_END;
      label.down = axis == 0 ? TB_ALIGN_MIDDLE : i == 0 ? TB_ALIGN_END : TB_ALIGN_START;
      label.x += axis == 0 ? sign * 1.5 * em : 0;
      label.y -= axis == 1 ? sign * 1.2 * em : 0;
      if (tb_canvas_try_label (self->canvas, &label))
        return;
    }
}

/* The bars' numbers, and room for the bars: before the lines' numbers, which then keep off them. */
void
tb_room_label_bars (TbRoomDrawing *self, const cairo_rectangle_t *plot, const TbRoomPanel *panel)
{
  double em = self->canvas->em;
  TbPoint plan = { plot->x + plot->width * tb_room_share_at (&self->axis[0], 0),
                   plot->y + plot->height * (1 - tb_room_share_at (&self->axis[1], 0)) };

  for (int axis = 0; axis < TB_ROOM_AXES; axis++)
    {
      const TbRoomWidth *width = panel->width[axis];
      double low = width ? tb_room_share_at (&self->axis[axis], width->low) : 0;
      double high = width ? tb_room_share_at (&self->axis[axis], width->high) : 0;
      cairo_rectangle_t box = { plan.x - em, plan.y - em, 2 * em, 2 * em };

      if (axis == 0 && width)
        box = (cairo_rectangle_t){ plot->x + low * plot->width - em, box.y,
                                   (high - low) * plot->width + 2 * em, 2 * em };
      if (axis == 1 && width)
        box = (cairo_rectangle_t){ box.x, plot->y + (1 - high) * plot->height - em, 2 * em,
                                   (high - low) * plot->height + 2 * em };
      tb_label_space_take (&self->canvas->labels, &box);
    }
  for (int axis = 0; axis < TB_ROOM_AXES; axis++)
    if (panel->width[axis] && panel->width[axis]->in_pocket)
      label_bar (self, plot, axis, panel->width[axis]);
}

static void
stroke_bar (TbCanvas *canvas, TbPoint a, TbPoint b, gboolean upwards)
{
  double end = BAR_END * canvas->em;

  cairo_move_to (canvas->cr, a.x, a.y);
  cairo_line_to (canvas->cr, b.x, b.y);
  for (int i = 0; i < 2; i++)
    {
      TbPoint tip = i == 0 ? a : b;

      cairo_move_to (canvas->cr, tip.x - (upwards ? end : 0), tip.y - (upwards ? 0 : end));
      cairo_line_to (canvas->cr, tip.x + (upwards ? end : 0), tip.y + (upwards ? 0 : end));
    }
}

/* Twice: the wider stroke in the ground's colour parts the bar from the tint. */
static void
draw_bar (TbRoomDrawing *self,
          const cairo_rectangle_t *plot,
          int axis,
          const TbRoomWidth *width,
          const TbRunStyle *style)
{
  TbCanvas *canvas = self->canvas;
  double low = tb_room_share_at (&self->axis[axis], width->low),
         high = tb_room_share_at (&self->axis[axis], width->high);
  double middle[TB_ROOM_AXES]
      = { tb_room_share_at (&self->axis[0], 0), tb_room_share_at (&self->axis[1], 0) };
  TbPoint a, b;

  a = axis == 0 ? (TbPoint){ low, middle[1] } : (TbPoint){ middle[0], low };
  b = axis == 0 ? (TbPoint){ high, middle[1] } : (TbPoint){ middle[0], high };
  a = (TbPoint){ plot->x + a.x * plot->width, plot->y + plot->height * (1 - a.y) };
  b = (TbPoint){ plot->x + b.x * plot->width, plot->y + plot->height * (1 - b.y) };
  for (int pass = 0; pass < 2; pass++)
    {
      tb_draw_color (canvas->cr, pass == 0 ? canvas->theme.background : style->color);
      cairo_set_line_width (canvas->cr, style->width * (pass == 0 ? 2 : 1));
      stroke_bar (canvas, a, b, axis == 1);
      cairo_stroke (canvas->cr);
    }
}

void
tb_room_draw_plan (TbRoomDrawing *self,
                   const cairo_rectangle_t *plot,
                   const TbRoomPanel *panel,
                   gboolean before)
{
  TbRunStyle style = tb_run_style (&self->canvas->theme, before);
  TbPoint plan = { plot->x + plot->width * tb_room_share_at (&self->axis[0], 0),
                   plot->y + plot->height * (1 - tb_room_share_at (&self->axis[1], 0)) };

  for (int axis = 0; axis < TB_ROOM_AXES; axis++)
    if (panel->width[axis] && panel->width[axis]->in_pocket)
      draw_bar (self, plot, axis, panel->width[axis], &style);
  tb_draw_run_mark (self->canvas->cr, &self->canvas->theme, &style, &plan, 0.42 * self->canvas->em);
}
