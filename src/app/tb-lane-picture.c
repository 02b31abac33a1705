/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "tb-lane-picture.h"

#include <glib/gi18n-lib.h>

#include "tb-describe.h"
#include "tb-lane-grips.h"
#include "tb-lane-snapshot.h"
#include "tb-line-grip.h"

struct _TbLanePicture
{
  TbPicture parent_instance;

  TbLaneProjection projection;
  gboolean pointed;
  double pointed_x, pointed_y; /* m, lane frame */

  TbLaneGrips grips;
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

TbLineHandle
tb_lane_picture_get_raised (TbLanePicture *self)
{
  return tb_lane_grips_get_raised (&self->grips);
}

static void
append_handles (TbLanePicture *self, GtkSnapshot *snapshot, const TbLaneScene *scene)
{
  TbLineHandles handles = tb_lane_grips_see (&self->grips, scene);
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

  self->grips.hovered = which;
  gtk_widget_set_cursor_from_name (GTK_WIDGET (self), which != TB_LINE_HANDLE_NONE ? across : NULL);
}

static TbLineHandle
handle_at (TbLanePicture *self, double px, double py)
{
  TbLaneScene scene = scene_of (self);
  TbLineHandles handles = tb_lane_grips_see (&self->grips, &scene);

  return tb_line_handles_at (&handles, px, py);
}

static void
point_at (TbLanePicture *self, double px, double py)
{
  if (tb_picture_get_session (TB_PICTURE (self)) == NULL)
    return;
  if (self->grips.dragged == TB_LINE_HANDLE_NONE)
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

void
tb_lane_picture_drag_begin (TbLanePicture *self, double x, double y)
{
  TbLaneScene scene = scene_of (self);

  if (tb_lane_grips_take (&self->grips, &scene, x, y))
    return;
  gtk_widget_grab_focus (GTK_WIDGET (self));
  seek (self, x, y);
}

void
tb_lane_picture_drag_to (TbLanePicture *self, double x, double y)
{
  TbLaneScene scene = scene_of (self);

  if (self->grips.dragged != TB_LINE_HANDLE_NONE)
    tb_lane_grips_drag (&self->grips, &scene, x, y);
  else
    seek (self, x, y);
  point_at (self, x, y);
}

void
tb_lane_picture_drag_end (TbLanePicture *self)
{
  if (tb_lane_grips_let_go (&self->grips))
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
  self->grips.hovered = TB_LINE_HANDLE_NONE;
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
  return self->grips.dragged != TB_LINE_HANDLE_NONE || self->grips.hovered != TB_LINE_HANDLE_NONE;
}

const char *
tb_lane_picture_get_line_words (TbLanePicture *self)
{
  TbLineHandle raised = tb_lane_picture_get_raised (self);

  return raised != TB_LINE_HANDLE_NONE ? tb_line_grip_get_words (TB_LINE_GRIP (self->grips.grip[raised])) : NULL;
}

void
tb_lane_picture_get_handle (TbLanePicture *self, TbLineHandle which, double *px, double *py)
{
  TbLaneScene scene = scene_of (self);
  TbLineHandles handles = tb_lane_grips_see (&self->grips, &scene);

  tb_line_handles_place (&handles, which, px, py);
}

GtkWidget *
tb_lane_picture_get_grip (TbLanePicture *self, TbLineHandle which)
{
  return self->grips.grip[which];
}

static void
tb_lane_picture_session_set (TbPicture *picture)
{
  TbSession *session = tb_picture_get_session (picture);

  for (TbLineHandle which = 0; which < TB_N_LINE_HANDLES; which++)
    tb_line_grip_set_session (TB_LINE_GRIP (TB_LANE_PICTURE (picture)->grips.grip[which]), session);
  g_signal_connect_object (session, "changed", G_CALLBACK (gtk_widget_queue_allocate), picture,
                           G_CONNECT_SWAPPED);
}

static void
tb_lane_picture_size_allocate (GtkWidget *widget, int width, int height, int baseline)
{
  TbLanePicture *self = TB_LANE_PICTURE (widget);
  TbLaneScene scene;

  if (tb_picture_get_session (TB_PICTURE (self)) == NULL)
    return;
  scene = scene_of (self);
  tb_lane_grips_allocate (&self->grips, &scene);
}

static void
tb_lane_picture_dispose (GObject *object)
{
  tb_lane_grips_clear (&TB_LANE_PICTURE (object)->grips);
  G_OBJECT_CLASS (tb_lane_picture_parent_class)->dispose (object);
}

/* Who has the focus is drawn, and told in words. */
static void
on_grip_focus (gpointer self)
{
  gtk_widget_queue_draw (GTK_WIDGET (self));
  g_signal_emit (self, signals[POINTED], 0);
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

  tb_lane_grips_init (&self->grips, TB_PICTURE (self), on_grip_focus);
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
