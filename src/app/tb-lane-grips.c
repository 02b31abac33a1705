/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "tb-lane-grips.h"

#include "tb-line-grip.h"

static void
add_grip (TbLaneGrips *self, TbLineHandle which, void (*focus_changed) (gpointer picture))
{
  GtkEventController *focus = gtk_event_controller_focus_new ();

  self->grip[which] = tb_line_grip_new (which);
  g_signal_connect_object (focus, "notify::is-focus", G_CALLBACK (focus_changed), self->picture,
                           G_CONNECT_SWAPPED);
  gtk_widget_add_controller (self->grip[which], focus);
  gtk_widget_set_parent (self->grip[which], GTK_WIDGET (self->picture));
}

void
tb_lane_grips_init (TbLaneGrips *self, TbPicture *picture, void (*focus_changed) (gpointer picture))
{
  *self = (TbLaneGrips){ .picture = picture, .hovered = TB_LINE_HANDLE_NONE, .dragged = TB_LINE_HANDLE_NONE };
  for (TbLineHandle which = 0; which < TB_N_LINE_HANDLES; which++)
    add_grip (self, which, focus_changed);
}

void
tb_lane_grips_clear (TbLaneGrips *self)
{
  for (TbLineHandle which = 0; which < TB_N_LINE_HANDLES; which++)
    g_clear_pointer (&self->grip[which], gtk_widget_unparent);
}

static TbLineHandle
focused_handle (const TbLaneGrips *self)
{
  for (TbLineHandle which = 0; which < TB_N_LINE_HANDLES; which++)
    if (gtk_widget_is_focus (self->grip[which]))
      return which;
  return TB_LINE_HANDLE_NONE;
}

TbLineHandle
tb_lane_grips_get_raised (const TbLaneGrips *self)
{
  if (self->dragged != TB_LINE_HANDLE_NONE)
    return self->dragged;
  return self->hovered != TB_LINE_HANDLE_NONE ? self->hovered : focused_handle (self);
}

TbLineHandles
tb_lane_grips_see (const TbLaneGrips *self, const TbLaneScene *scene)
{
  TbSession *session = tb_picture_get_session (self->picture);
  const TbDelivery *delivery = &tb_session_get_setup (session, TB_SIDE_AFTER)->shot.delivery;
  double side = scene->mirrored ? -1 : 1, width, height;
  TbLineHandle raised = tb_lane_grips_get_raised (self);

  tb_picture_get_size (self->picture, &width, &height);
  return (TbLineHandles){ .scene = scene,
                          .width = width,
                          .height = height,
                          .x = { side * delivery->laydown, side * delivery->aim },
                          .raised = raised,
                          .focused = raised != TB_LINE_HANDLE_NONE && raised == focused_handle (self) };
}

void
tb_lane_grips_allocate (TbLaneGrips *self, const TbLaneScene *scene)
{
  int side = (int) tb_line_handles_reach (&scene->theme);
  TbLineHandles handles = tb_lane_grips_see (self, scene);

  for (TbLineHandle which = 0; which < TB_N_LINE_HANDLES; which++)
    {
      double x, y;

      tb_line_handles_place (&handles, which, &x, &y);
      gtk_widget_measure (self->grip[which], GTK_ORIENTATION_HORIZONTAL, -1, NULL, NULL, NULL, NULL);
      gtk_widget_size_allocate (self->grip[which],
                                &(GtkAllocation){ (int) x - side / 2, (int) y - side / 2, side, side }, -1);
    }
}

gboolean
tb_lane_grips_take (TbLaneGrips *self, const TbLaneScene *scene, double px, double py)
{
  TbLineHandles handles = tb_lane_grips_see (self, scene);

  self->dragged = tb_line_handles_at (&handles, px, py);
  if (self->dragged == TB_LINE_HANDLE_NONE)
    return FALSE;
  gtk_widget_grab_focus (self->grip[self->dragged]);
  self->slip = handles.x[self->dragged] - tb_line_handles_x_at (&handles, self->dragged, px, py);
  tb_session_begin_gesture (tb_picture_get_session (self->picture));
  return TRUE;
}

void
tb_lane_grips_drag (TbLaneGrips *self, const TbLaneScene *scene, double px, double py)
{
  TbLineHandles handles = tb_lane_grips_see (self, scene);
  double x = tb_line_handles_x_at (&handles, self->dragged, px, py) + self->slip;

  tb_line_grip_put (TB_LINE_GRIP (self->grip[self->dragged]), tb_board_from_x (scene->mirrored ? -x : x));
}

gboolean
tb_lane_grips_let_go (TbLaneGrips *self)
{
  if (self->dragged == TB_LINE_HANDLE_NONE)
    return FALSE;
  self->dragged = TB_LINE_HANDLE_NONE;
  tb_session_end_gesture (tb_picture_get_session (self->picture));
  return TRUE;
}
