/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "tb-layout-picture.h"

#include <glib/gi18n-lib.h>

#include "tb-drilling.h"

/* Dragging past the mark's own grid: layouts are told in degrees and eighths of an inch. */
#define DEGREE_STEP 1.0
#define INCH_STEP 0.125

struct _TbLayoutPicture
{
  TbPicture parent_instance;
  TbLayoutMark held;
  TbLayoutMark near;           /* under the pointer */
  gboolean turned;             /* the eye was moved by hand */
  double eye_over, eye_up;     /* m; where the eye is if it was */
  double start_over, start_up; /* where a turn began */
  TbPoint start;               /* px, where a drag began */
};

G_DEFINE_FINAL_TYPE (TbLayoutPicture, tb_layout_picture, TB_TYPE_PICTURE)

static TbSetup *
setup_of (TbLayoutPicture *self)
{
  return tb_session_get_setup (tb_picture_get_session (TB_PICTURE (self)), TB_SIDE_AFTER);
}

static TbLayoutScene
scene_of (TbLayoutPicture *self)
{
  TbSetup *setup = setup_of (self);
  TbLayoutScene scene = tb_layout_scene_for (&setup->shot.ball);

  scene.theme = tb_picture_get_theme (TB_PICTURE (self));
  scene.mirrored = setup->shot.delivery.hand == TB_HAND_LEFT;
  scene.held = self->held != TB_LAYOUT_NONE ? self->held : self->near;
  if (self->turned)
    {
      scene.eye_over = self->eye_over;
      scene.eye_up = self->eye_up;
    }
  return scene;
}

static void
tb_layout_picture_draw_still (TbPicture *picture, cairo_t *cr, double width, double height)
{
  TbLayoutScene scene = scene_of (TB_LAYOUT_PICTURE (picture));

  tb_layout_view_draw (cr, width, height, &scene);
}

static char *
tb_layout_picture_describe (TbPicture *picture)
{
  const TbBall *ball = &setup_of (TB_LAYOUT_PICTURE (picture))->shot.ball;
  g_autofree char *layout = tb_layout_text (ball);

  /* Translators: a layout such as "50° × 4 in × 40°", then inches over and up. */
  return g_strdup_printf (_ ("Layout %s; the PAP is %.3f in over and %.3f in up from the grip."), layout,
                          tb_in_from_metres (ball->pap_over), tb_in_from_metres (ball->pap_up));
}

static void
tb_layout_picture_time_changed (TbPicture *picture)
{
}

static double
rounded (double value, double step, double (*to_si) (double), double (*from_si) (double))
{
  return to_si (round (from_si (value) / step) * step);
}

static void
round_layout (TbBall *ball)
{
  ball->drilling_angle
      = rounded (ball->drilling_angle, DEGREE_STEP, tb_radians_from_deg, tb_deg_from_radians);
  ball->val_angle = rounded (ball->val_angle, DEGREE_STEP, tb_radians_from_deg, tb_deg_from_radians);
  ball->pin_to_pap = rounded (ball->pin_to_pap, INCH_STEP, tb_metres_from_in, tb_in_from_metres);
  ball->pap_over = rounded (ball->pap_over, INCH_STEP, tb_metres_from_in, tb_in_from_metres);
  ball->pap_up = rounded (ball->pap_up, INCH_STEP, tb_metres_from_in, tb_in_from_metres);
}

void
tb_layout_picture_move (TbLayoutPicture *self, TbLayoutMark mark, double x, double y)
{
  TbSetup *setup = setup_of (self);
  TbLayoutScene scene = scene_of (self);
  TbBall ball = setup->shot.ball;
  g_autoptr (TbSetup) moved = NULL;
  TbVec3 place;

  if (!tb_layout_view_place (gtk_widget_get_width (GTK_WIDGET (self)),
                             gtk_widget_get_height (GTK_WIDGET (self)), &scene, (TbPoint){ x, y }, &place))
    return;
  if (mark == TB_LAYOUT_PIN)
    tb_layout_move_pin (&ball, place);
  else if (mark == TB_LAYOUT_PAP)
    tb_layout_move_pap (&ball, place);
  else if (mark == TB_LAYOUT_MASS_BIAS)
    tb_layout_move_mass_bias (&ball, place);
  round_layout (&ball);
  moved = tb_setup_with_ball (setup, &ball, setup->ball_id, setup->ball_name);
  tb_session_set_after (tb_picture_get_session (TB_PICTURE (self)), moved);
}

static TbLayoutMark
mark_at (TbLayoutPicture *self, double x, double y)
{
  TbLayoutScene scene = scene_of (self);

  return tb_layout_view_mark_at (gtk_widget_get_width (GTK_WIDGET (self)),
                                 gtk_widget_get_height (GTK_WIDGET (self)), &scene, (TbPoint){ x, y });
}

static void
on_drag_begin (TbLayoutPicture *self, double x, double y)
{
  TbLayoutScene scene;

  if (tb_picture_get_session (TB_PICTURE (self)) == NULL)
    return;
  scene = scene_of (self);
  self->held = mark_at (self, x, y);
  self->start = (TbPoint){ x, y };
  self->start_over = scene.eye_over;
  self->start_up = scene.eye_up;
  /* What is dragged may not move the eye that it is seen with. */
  self->turned = TRUE;
  self->eye_over = scene.eye_over;
  self->eye_up = scene.eye_up;
  if (self->held != TB_LAYOUT_NONE)
    tb_session_begin_gesture (tb_picture_get_session (TB_PICTURE (self)));
  tb_picture_invalidate (TB_PICTURE (self));
}

/* The ball turns as if it were taken hold of: half its width is a quarter of the way round. */
static void
turn (TbLayoutPicture *self, double dx, double dy)
{
  TbSetup *setup = setup_of (self);
  double quarter = 0.25 * TB_PI * setup->shot.ball.diameter,
         half
         = 0.5 * MIN (gtk_widget_get_width (GTK_WIDGET (self)), gtk_widget_get_height (GTK_WIDGET (self)));
  double side = setup->shot.delivery.hand == TB_HAND_LEFT ? -1 : 1;

  self->eye_over = self->start_over - side * quarter * dx / MAX (half, 1);
  self->eye_up = CLAMP (self->start_up + quarter * dy / MAX (half, 1), -quarter, quarter);
  tb_picture_invalidate (TB_PICTURE (self));
}

static void
on_drag_update (TbLayoutPicture *self, double dx, double dy)
{
  if (tb_picture_get_session (TB_PICTURE (self)) == NULL)
    return;
  if (self->held != TB_LAYOUT_NONE)
    tb_layout_picture_move (self, self->held, self->start.x + dx, self->start.y + dy);
  else
    turn (self, dx, dy);
}

static void
on_drag_end (TbLayoutPicture *self, double dx, double dy)
{
  if (tb_picture_get_session (TB_PICTURE (self)) == NULL)
    return;
  if (self->held != TB_LAYOUT_NONE)
    tb_session_end_gesture (tb_picture_get_session (TB_PICTURE (self)));
  self->held = TB_LAYOUT_NONE;
  tb_picture_invalidate (TB_PICTURE (self));
}

static void
on_motion (TbLayoutPicture *self, double x, double y)
{
  TbLayoutMark near;

  if (tb_picture_get_session (TB_PICTURE (self)) == NULL || self->held != TB_LAYOUT_NONE)
    return;
  near = mark_at (self, x, y);
  if (near == self->near)
    return;
  self->near = near;
  gtk_widget_set_cursor_from_name (GTK_WIDGET (self), near != TB_LAYOUT_NONE ? "grab" : NULL);
  tb_picture_invalidate (TB_PICTURE (self));
}

void
tb_layout_picture_face (TbLayoutPicture *self)
{
  self->turned = FALSE;
  tb_picture_invalidate (TB_PICTURE (self));
}

static void
tb_layout_picture_class_init (TbLayoutPictureClass *klass)
{
  TB_PICTURE_CLASS (klass)->draw_still = tb_layout_picture_draw_still;
  TB_PICTURE_CLASS (klass)->describe = tb_layout_picture_describe;
  TB_PICTURE_CLASS (klass)->time_changed = tb_layout_picture_time_changed;
}

static void
tb_layout_picture_init (TbLayoutPicture *self)
{
  GtkGesture *drag = gtk_gesture_drag_new ();
  GtkEventController *motion = gtk_event_controller_motion_new ();

  g_signal_connect_swapped (drag, "drag-begin", G_CALLBACK (on_drag_begin), self);
  g_signal_connect_swapped (drag, "drag-update", G_CALLBACK (on_drag_update), self);
  g_signal_connect_swapped (drag, "drag-end", G_CALLBACK (on_drag_end), self);
  g_signal_connect_swapped (motion, "motion", G_CALLBACK (on_motion), self);
  gtk_widget_add_controller (GTK_WIDGET (self), GTK_EVENT_CONTROLLER (drag));
  gtk_widget_add_controller (GTK_WIDGET (self), motion);
  tb_picture_set_name (TB_PICTURE (self), _ ("Layout"));
}
