/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "tb-lane-picture.h"

#include <glib/gi18n-lib.h>

#include "tb-describe.h"
#include "tb-lane-snapshot.h"
#include "tb-line-grip.h"
#include "tb-line-handles.h"

struct _TbLanePicture
{
  TbPicture parent_instance;

  TbLaneProjection projection;
  gboolean pointed;
  double pointed_x, pointed_y; /* m, lane frame */

  GtkWidget *grip[TB_N_LINE_HANDLES];
  TbLineHandle hovered, dragged; /* or none */
  double slip;                   /* m across, from the pointer to the middle of what it drags */
};

enum
{
  POINTED,
  N_SIGNALS
};
static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (TbLanePicture, tb_lane_picture, TB_TYPE_PICTURE)

/* Steps of the arrow keys and of Page Up and Down, s. */
#define TIME_STEP 0.02
#define TIME_PAGE 0.25
/* Width of the line under the pointer, and how strong it is. */
#define READING_LINE 1.0f
#define READING_ALPHA 0.45f

/* Lines of text that a picture has to be high for its legend not to take room from the lane. */
#define LINES_FOR_LEGEND 30

static TbLaneScene
scene_of (TbLanePicture *self)
{
  TbSession *session = tb_picture_get_session (TB_PICTURE (self));
  const TbShot *shot = &tb_session_get_setup (session, TB_SIDE_AFTER)->shot;
  TbLaneScene scene = tb_lane_scene_default ();
  double width, height;

  scene.theme = tb_picture_get_theme (TB_PICTURE (self));
  scene.projection = self->projection;
  scene.oil = shot->lane.oil;
  scene.oil_scale = shot->lane.pattern_scale;
  scene.before = tb_session_get_path (session, TB_SIDE_BEFORE);
  scene.after = tb_session_get_path (session, TB_SIDE_AFTER);
  scene.before_label = _ ("before");
  scene.after_label = _ ("after");
  scene.pocket_low = shot->assumed.pocket_low;
  scene.pocket_high = shot->assumed.pocket_high;
  scene.mirrored = shot->delivery.hand == TB_HAND_LEFT;
  tb_picture_get_size (TB_PICTURE (self), &width, &height);
  scene.show_legend = height >= LINES_FOR_LEGEND * scene.theme.text_size;
  return scene;
}

static void
tb_lane_picture_draw_ground (TbPicture *picture, cairo_t *cr, double width, double height)
{
  TbLaneScene scene = scene_of (TB_LANE_PICTURE (picture));

  tb_lane_view_draw_ground (cr, width, height, &scene);
}

static GBytes *
tb_lane_picture_ground_key (TbPicture *picture, double width, double height)
{
  TbLaneScene scene = scene_of (TB_LANE_PICTURE (picture));

  return tb_lane_view_ground_key (width, height, &scene);
}

static void
tb_lane_picture_draw_still (TbPicture *picture, cairo_t *cr, double width, double height)
{
  TbLaneScene scene = scene_of (TB_LANE_PICTURE (picture));

  tb_lane_view_draw_runs (cr, width, height, &scene);
}

static TbLineHandle
focused_handle (TbLanePicture *self)
{
  for (TbLineHandle which = 0; which < TB_N_LINE_HANDLES; which++)
    if (gtk_widget_is_focus (self->grip[which]))
      return which;
  return TB_LINE_HANDLE_NONE;
}

TbLineHandle
tb_lane_picture_get_raised (TbLanePicture *self)
{
  if (self->dragged != TB_LINE_HANDLE_NONE)
    return self->dragged;
  return self->hovered != TB_LINE_HANDLE_NONE ? self->hovered : focused_handle (self);
}

/* scene has to outlive it. */
static TbLineHandles
handles_of (TbLanePicture *self, const TbLaneScene *scene)
{
  const TbDelivery *delivery
      = &tb_session_get_setup (tb_picture_get_session (TB_PICTURE (self)), TB_SIDE_AFTER)->shot.delivery;
  double side = scene->mirrored ? -1 : 1;
  TbLineHandle raised = tb_lane_picture_get_raised (self);
  double width, height;

  tb_picture_get_size (TB_PICTURE (self), &width, &height);
  return (TbLineHandles){ .scene = scene,
                          .width = width,
                          .height = height,
                          .x = { side * delivery->laydown, side * delivery->aim },
                          .raised = raised,
                          .focused = raised != TB_LINE_HANDLE_NONE && raised == focused_handle (self) };
}

static void
append_handles (TbLanePicture *self, GtkSnapshot *snapshot, const TbLaneScene *scene)
{
  TbLineHandles handles = handles_of (self, scene);
  cairo_rectangle_t place;
  cairo_t *cr;

  tb_line_handles_extents (&handles, &place);
  cr = tb_snapshot_append_box (snapshot, &place);
  tb_line_handles_draw (cr, &handles);
  cairo_destroy (cr);
}

/* A thin line across the lane where the pointer reads it. */
static void
append_reading_line (TbLanePicture *self,
                     GtkSnapshot *snapshot,
                     const TbLaneScene *scene,
                     graphene_size_t size)
{
  const TbColor *text = &scene->theme.text;
  GdkRGBA color = { (float)text->red, (float)text->green, (float)text->blue, READING_ALPHA };
  double x0, y0, x1, y1;

  if (!self->pointed)
    return;
  tb_lane_view_to_picture (size.width, size.height, scene, -TB_LANE_HALF_WIDTH, self->pointed_y, &x0, &y0);
  tb_lane_view_to_picture (size.width, size.height, scene, TB_LANE_HALF_WIDTH, self->pointed_y, &x1, &y1);
  gtk_snapshot_append_color (snapshot, &color,
                             &GRAPHENE_RECT_INIT ((float)floor (MIN (x0, x1)), (float)floor (MIN (y0, y1)),
                                                  (float)MAX (fabs (x1 - x0), READING_LINE),
                                                  (float)MAX (fabs (y1 - y0), READING_LINE)));
}

static void
tb_lane_picture_snapshot_moving (TbPicture *picture, GtkSnapshot *snapshot, double width, double height)
{
  TbLanePicture *self = TB_LANE_PICTURE (picture);
  TbLaneScene scene = scene_of (self);
  graphene_size_t size = GRAPHENE_SIZE_INIT ((float)width, (float)height);

  append_reading_line (self, snapshot, &scene, size);
  tb_snapshot_append_ball (snapshot, picture, &scene, scene.before);
  tb_snapshot_append_ball (snapshot, picture, &scene, scene.after);
  /* On top: at release the ball lies where the laydown is. */
  append_handles (self, snapshot, &scene);
}

static char *
tb_lane_picture_describe (TbPicture *picture)
{
  TbSession *session = tb_picture_get_session (picture);
  TbUnits units = tb_session_get_units (session);

  return tb_describe_both (tb_session_get_run (session, TB_SIDE_BEFORE),
                           tb_session_get_run (session, TB_SIDE_AFTER), units);
}

static gboolean
place_at (TbLanePicture *self, double px, double py, double *x, double *y)
{
  TbLaneScene scene = scene_of (self);
  GtkWidget *widget = GTK_WIDGET (self);

  return tb_lane_view_to_lane (gtk_widget_get_width (widget), gtk_widget_get_height (widget), &scene, px, py,
                               x, y);
}

static void
hover (TbLanePicture *self, TbLineHandle which)
{
  const char *across = self->projection == TB_LANE_PLAN_SIDEWAYS ? "ns-resize" : "ew-resize";

  self->hovered = which;
  gtk_widget_set_cursor_from_name (GTK_WIDGET (self), which != TB_LINE_HANDLE_NONE ? across : NULL);
}

static TbLineHandle
handle_at (TbLanePicture *self, double px, double py)
{
  TbLaneScene scene = scene_of (self);
  TbLineHandles handles = handles_of (self, &scene);

  return tb_line_handles_at (&handles, px, py);
}

static void
point_at (TbLanePicture *self, double px, double py)
{
  if (tb_picture_get_session (TB_PICTURE (self)) == NULL)
    return;
  if (self->dragged == TB_LINE_HANDLE_NONE)
    hover (self, handle_at (self, px, py));
  self->pointed = place_at (self, px, py, &self->pointed_x, &self->pointed_y);
  gtk_widget_queue_draw (GTK_WIDGET (self));
  g_signal_emit (self, signals[POINTED], 0);
}

static void
point_nowhere (TbLanePicture *self)
{
  self->pointed = FALSE;
  hover (self, TB_LINE_HANDLE_NONE);
  gtk_widget_queue_draw (GTK_WIDGET (self));
  g_signal_emit (self, signals[POINTED], 0);
}

/* The moment at which the ball is as far down the lane as the pointer. */
static void
seek (TbLanePicture *self, double px, double py)
{
  TbSession *session = tb_picture_get_session (TB_PICTURE (self));
  const TbPath *path = tb_session_get_path (session, TB_SIDE_AFTER);
  TbSample sample;
  double x, y;

  if (path == NULL || !place_at (self, px, py, &x, &y) || !tb_path_at_distance (path, y, &sample))
    return;
  tb_session_set_playing (session, FALSE);
  tb_session_set_time (session, sample.time);
}

/* How far across the lane the pointer is, for the handle that is dragged, m. */
static double
across_at (TbLanePicture *self, double px, double py)
{
  TbLaneScene scene = scene_of (self);
  TbLineHandles handles = handles_of (self, &scene);

  return tb_line_handles_x_at (&handles, self->dragged, px, py);
}

static void
take_handle (TbLanePicture *self, double px, double py)
{
  TbLaneScene scene = scene_of (self);
  TbLineHandles handles = handles_of (self, &scene);

  gtk_widget_grab_focus (self->grip[self->dragged]);
  self->slip = handles.x[self->dragged] - across_at (self, px, py);
  tb_session_begin_gesture (tb_picture_get_session (TB_PICTURE (self)));
}

static void
drag_handle (TbLanePicture *self, double px, double py)
{
  TbLaneScene scene = scene_of (self);
  double x = across_at (self, px, py) + self->slip;

  tb_line_grip_put (TB_LINE_GRIP (self->grip[self->dragged]), tb_board_from_x (scene.mirrored ? -x : x));
}

void
tb_lane_picture_drag_begin (TbLanePicture *self, double x, double y)
{
  self->dragged = handle_at (self, x, y);
  if (self->dragged != TB_LINE_HANDLE_NONE)
    {
      take_handle (self, x, y);
      return;
    }
  gtk_widget_grab_focus (GTK_WIDGET (self));
  seek (self, x, y);
}

void
tb_lane_picture_drag_to (TbLanePicture *self, double x, double y)
{
  if (self->dragged != TB_LINE_HANDLE_NONE)
    drag_handle (self, x, y);
  else
    seek (self, x, y);
  point_at (self, x, y);
}

void
tb_lane_picture_drag_end (TbLanePicture *self)
{
  if (self->dragged == TB_LINE_HANDLE_NONE)
    return;
  self->dragged = TB_LINE_HANDLE_NONE;
  tb_session_end_gesture (tb_picture_get_session (TB_PICTURE (self)));
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

static void
on_drag_update (TbLanePicture *self, double dx, double dy, GtkGestureDrag *gesture)
{
  double x, y;

  gtk_gesture_drag_get_start_point (gesture, &x, &y);
  tb_lane_picture_drag_to (self, x + dx, y + dy);
}

static gboolean
on_key (TbLanePicture *self, guint keyval)
{
  TbSession *session = tb_picture_get_session (TB_PICTURE (self));
  double time = tb_session_get_time (session);

  switch (keyval)
    {
    case GDK_KEY_Up:
    case GDK_KEY_Right:
      time += TIME_STEP;
      break;
    case GDK_KEY_Down:
    case GDK_KEY_Left:
      time -= TIME_STEP;
      break;
    case GDK_KEY_Page_Up:
      time += TIME_PAGE;
      break;
    case GDK_KEY_Page_Down:
      time -= TIME_PAGE;
      break;
    case GDK_KEY_Home:
      time = 0;
      break;
    case GDK_KEY_End:
      time = tb_session_get_duration (session);
      break;
    default:
      return GDK_EVENT_PROPAGATE;
    }
  tb_session_set_playing (session, FALSE);
  tb_session_set_time (session, time);
  return GDK_EVENT_STOP;
}

void
tb_lane_picture_set_projection (TbLanePicture *self, TbLaneProjection projection)
{
  if (self->projection == projection)
    return;
  self->projection = projection;
  self->pointed = FALSE;
  self->hovered = TB_LINE_HANDLE_NONE;
  gtk_widget_set_cursor (GTK_WIDGET (self), NULL);
  gtk_widget_queue_allocate (GTK_WIDGET (self));
  tb_picture_invalidate (TB_PICTURE (self));
}

TbLaneProjection
tb_lane_picture_get_projection (TbLanePicture *self)
{
  return self->projection;
}

gboolean
tb_lane_picture_get_pointed (TbLanePicture *self, double *x, double *y)
{
  *x = self->pointed_x;
  *y = self->pointed_y;
  return self->pointed;
}

gboolean
tb_lane_picture_get_ends (TbLanePicture *self, double *foul_line, double *head_pin)
{
  double width = gtk_widget_get_width (GTK_WIDGET (self)), height = gtk_widget_get_height (GTK_WIDGET (self)),
         py;
  TbLaneScene scene;

  if (self->projection != TB_LANE_PLAN_SIDEWAYS || tb_picture_get_session (TB_PICTURE (self)) == NULL
      || width < 1)
    return FALSE;
  scene = scene_of (self);
  tb_lane_view_to_picture (width, height, &scene, 0, 0, foul_line, &py);
  tb_lane_view_to_picture (width, height, &scene, 0, TB_HEAD_PIN_Y, head_pin, &py);
  return TRUE;
}

gboolean
tb_lane_picture_is_on_handle (TbLanePicture *self)
{
  return self->dragged != TB_LINE_HANDLE_NONE || self->hovered != TB_LINE_HANDLE_NONE;
}

const char *
tb_lane_picture_get_line_words (TbLanePicture *self)
{
  TbLineHandle raised = tb_lane_picture_get_raised (self);

  return raised != TB_LINE_HANDLE_NONE ? tb_line_grip_get_words (TB_LINE_GRIP (self->grip[raised])) : NULL;
}

void
tb_lane_picture_get_handle (TbLanePicture *self, TbLineHandle which, double *px, double *py)
{
  TbLaneScene scene = scene_of (self);
  TbLineHandles handles = handles_of (self, &scene);

  tb_line_handles_place (&handles, which, px, py);
}

GtkWidget *
tb_lane_picture_get_grip (TbLanePicture *self, TbLineHandle which)
{
  return self->grip[which];
}

static void
tb_lane_picture_session_set (TbPicture *picture)
{
  TbSession *session = tb_picture_get_session (picture);

  for (TbLineHandle which = 0; which < TB_N_LINE_HANDLES; which++)
    tb_line_grip_set_session (TB_LINE_GRIP (TB_LANE_PICTURE (picture)->grip[which]), session);
  g_signal_connect_object (session, "changed", G_CALLBACK (gtk_widget_queue_allocate), picture,
                           G_CONNECT_SWAPPED);
}

/* The grips lie where the handles are drawn, for who asks where they are. */
static void
tb_lane_picture_size_allocate (GtkWidget *widget, int width, int height, int baseline)
{
  TbLanePicture *self = TB_LANE_PICTURE (widget);
  TbTheme theme = tb_picture_get_theme (TB_PICTURE (self));
  int side = (int)tb_line_handles_reach (&theme);

  for (TbLineHandle which = 0; which < TB_N_LINE_HANDLES; which++)
    {
      double x = 0, y = 0;

      if (tb_picture_get_session (TB_PICTURE (self)) != NULL)
        tb_lane_picture_get_handle (self, which, &x, &y);
      gtk_widget_measure (self->grip[which], GTK_ORIENTATION_HORIZONTAL, -1, NULL, NULL, NULL, NULL);
      gtk_widget_size_allocate (self->grip[which],
                                &(GtkAllocation){ (int)x - side / 2, (int)y - side / 2, side, side }, -1);
    }
}

static void
tb_lane_picture_dispose (GObject *object)
{
  for (TbLineHandle which = 0; which < TB_N_LINE_HANDLES; which++)
    g_clear_pointer (&TB_LANE_PICTURE (object)->grip[which], gtk_widget_unparent);
  G_OBJECT_CLASS (tb_lane_picture_parent_class)->dispose (object);
}

/* Who has the focus is drawn, and told in words. */
static void
on_grip_focus (TbLanePicture *self)
{
  gtk_widget_queue_draw (GTK_WIDGET (self));
  g_signal_emit (self, signals[POINTED], 0);
}

static void
add_grip (TbLanePicture *self, TbLineHandle which)
{
  GtkEventController *focus = gtk_event_controller_focus_new ();

  self->grip[which] = tb_line_grip_new (which);
  g_signal_connect_object (focus, "notify::is-focus", G_CALLBACK (on_grip_focus), self, G_CONNECT_SWAPPED);
  gtk_widget_add_controller (self->grip[which], focus);
  gtk_widget_set_parent (self->grip[which], GTK_WIDGET (self));
}

static void
tb_lane_picture_class_init (TbLanePictureClass *klass)
{
  TbPictureClass *picture_class = TB_PICTURE_CLASS (klass);

  picture_class->draw_ground = tb_lane_picture_draw_ground;
  picture_class->ground_key = tb_lane_picture_ground_key;
  picture_class->draw_still = tb_lane_picture_draw_still;
  picture_class->snapshot_moving = tb_lane_picture_snapshot_moving;
  picture_class->describe = tb_lane_picture_describe;
  picture_class->session_set = tb_lane_picture_session_set;
  G_OBJECT_CLASS (klass)->dispose = tb_lane_picture_dispose;
  GTK_WIDGET_CLASS (klass)->size_allocate = tb_lane_picture_size_allocate;
  signals[POINTED] = g_signal_new ("pointed", TB_TYPE_LANE_PICTURE, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                   G_TYPE_NONE, 0);
}

static void
tb_lane_picture_init (TbLanePicture *self)
{
  GtkWidget *widget = GTK_WIDGET (self);
  GtkEventController *motion = gtk_event_controller_motion_new ();
  GtkEventController *keys = gtk_event_controller_key_new ();
  GtkGesture *drag = gtk_gesture_drag_new ();

  self->hovered = self->dragged = TB_LINE_HANDLE_NONE;
  for (TbLineHandle which = 0; which < TB_N_LINE_HANDLES; which++)
    add_grip (self, which);
  g_signal_connect_swapped (motion, "enter", G_CALLBACK (point_at), self);
  g_signal_connect_swapped (motion, "motion", G_CALLBACK (point_at), self);
  g_signal_connect_swapped (motion, "leave", G_CALLBACK (point_nowhere), self);
  g_signal_connect_swapped (keys, "key-pressed", G_CALLBACK (on_key), self);
  g_signal_connect_swapped (drag, "drag-begin", G_CALLBACK (tb_lane_picture_drag_begin), self);
  g_signal_connect_swapped (drag, "drag-update", G_CALLBACK (on_drag_update), self);
  g_signal_connect_swapped (drag, "drag-end", G_CALLBACK (tb_lane_picture_drag_end), self);
  g_signal_connect_swapped (drag, "cancel", G_CALLBACK (tb_lane_picture_drag_end), self);
  gtk_widget_add_controller (widget, motion);
  gtk_widget_add_controller (widget, keys);
  gtk_widget_add_controller (widget, GTK_EVENT_CONTROLLER (drag));
  gtk_widget_set_focusable (widget, TRUE);
  tb_picture_set_name (TB_PICTURE (self), _ ("Lane"));
}
