/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "tb-lesson-picture.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "tb-describe.h"
#include "tb-lane-snapshot.h"
#include "tb-guess-grip.h"
#include "tb-guess-view.h"
#include "tb-playback.h"

struct _TbLessonPicture
{
  TbPicture parent_instance;

  TbLaneProjection projection;
  TbLessonRunner *runner;
  TbPlayback *playback;
  GtkWidget *grip;
  double drag_x, drag_y; /* px where the drag began */
};

G_DEFINE_FINAL_TYPE (TbLessonPicture, tb_lesson_picture, TB_TYPE_PICTURE)

/* Lines of text that a picture has to be high for its legend not to take room from the lane. */
#define LINES_FOR_LEGEND 34
/* Side of what stands for the marker where somebody asks where it is, em. */
#define GRIP_SIDE 2.0

/* The runs that are to be seen at this stage. */
static void
set_runs (TbLessonPicture *self, TbLaneScene *scene)
{
  TbSession *session = tb_picture_get_session (TB_PICTURE (self));
  TbLessonStage stage = tb_lesson_runner_get_stage (self->runner);

  if (tb_lesson_runner_get_thrown (self->runner) == NULL)
    return;
  scene->before = tb_session_get_path (session, TB_SIDE_BEFORE);
  if (stage == TB_LESSON_REVEALED)
    scene->after = tb_session_get_path (session, TB_SIDE_AFTER);
}

static TbLaneScene
scene_of (TbLessonPicture *self)
{
  const TbShot *shot
      = &tb_session_get_setup (tb_picture_get_session (TB_PICTURE (self)), TB_SIDE_AFTER)->shot;
  TbLaneScene scene = tb_lane_scene_default ();
  double width, height;

  scene.theme = tb_picture_get_theme (TB_PICTURE (self));
  scene.projection = self->projection;
  scene.oil = shot->lane.oil;
  scene.oil_scale = shot->lane.pattern_scale;
  scene.before_label = _ ("before");
  scene.after_label = _ ("after");
  scene.pocket_low = shot->assumed.pocket_low;
  scene.pocket_high = shot->assumed.pocket_high;
  scene.mirrored = shot->delivery.hand == TB_HAND_LEFT;
  tb_picture_get_size (TB_PICTURE (self), &width, &height);
  scene.show_legend = height >= LINES_FOR_LEGEND * scene.theme.text_size;
  set_runs (self, &scene);
  return scene;
}

/* lane has to outlive it. */
static TbGuessScene
guess_of (TbLessonPicture *self, const TbLaneScene *lane)
{
  TbLessonResult result
      = tb_lesson_runner_get_result (self->runner, tb_lesson_runner_get_position (self->runner));
  double width, height;

  tb_picture_get_size (TB_PICTURE (self), &width, &height);
  return (TbGuessScene){ .lane = lane,
                         .width = width,
                         .height = height,
                         .y = tb_lesson_runner_get_line (self->runner),
                         .guess = tb_guess_grip_get_board (TB_GUESS_GRIP (self->grip)),
                         .placed = !isnan (tb_lesson_runner_get_board (self->runner)),
                         .answer = result.revealed ? result.answer : NAN,
                         .focused = gtk_widget_is_focus (self->grip) };
}

static gboolean
has_marker (TbLessonPicture *self)
{
  return self->runner != NULL && tb_lesson_runner_get_thrown (self->runner) != NULL
         && tb_lesson_runner_asks_for_marker (self->runner);
}

static void
tb_lesson_picture_draw_ground (TbPicture *picture, cairo_t *cr, double width, double height)
{
  TbLaneScene scene = scene_of (TB_LESSON_PICTURE (picture));

  tb_lane_view_draw_ground (cr, width, height, &scene);
}

static GBytes *
tb_lesson_picture_ground_key (TbPicture *picture, double width, double height)
{
  TbLaneScene scene = scene_of (TB_LESSON_PICTURE (picture));

  return tb_lane_view_ground_key (width, height, &scene);
}

static void
tb_lesson_picture_draw_still (TbPicture *picture, cairo_t *cr, double width, double height)
{
  TbLaneScene scene = scene_of (TB_LESSON_PICTURE (picture));

  tb_lane_view_draw_runs (cr, width, height, &scene);
}

/* Both balls go at once, though only the path of "before" is to be seen. */
static void
append_throw (TbLessonPicture *self, GtkSnapshot *snapshot, const TbLaneScene *scene)
{
  TbLaneScene both = *scene;

  both.after = tb_session_get_path (tb_picture_get_session (TB_PICTURE (self)), TB_SIDE_AFTER);
  tb_snapshot_append_ball (snapshot, TB_PICTURE (self), &both, both.before);
  tb_snapshot_append_ball (snapshot, TB_PICTURE (self), &both, both.after);
}

static void
append_guess (TbLessonPicture *self, GtkSnapshot *snapshot, const TbLaneScene *scene)
{
  TbGuessScene guess = guess_of (self, scene);
  cairo_rectangle_t place;
  cairo_t *cr;

  tb_guess_view_extents (&guess, &place);
  cr = tb_snapshot_append_box (snapshot, &place);
  tb_guess_view_draw (cr, &guess);
  cairo_destroy (cr);
}

static void
tb_lesson_picture_snapshot_moving (TbPicture *picture, GtkSnapshot *snapshot, double width, double height)
{
  TbLessonPicture *self = TB_LESSON_PICTURE (picture);
  TbLaneScene scene = scene_of (self);

  if (tb_lesson_runner_get_stage (self->runner) == TB_LESSON_THROWING)
    append_throw (self, snapshot, &scene);
  if (has_marker (self))
    append_guess (self, snapshot, &scene);
}

/* What is hidden from the eye is not told either. */
static char *
tb_lesson_picture_describe (TbPicture *picture)
{
  TbLessonPicture *self = TB_LESSON_PICTURE (picture);
  TbSession *session = tb_picture_get_session (picture);
  TbUnits units = tb_session_get_units (session);
  g_autofree char *before = NULL;
  g_autofree char *after = NULL;

  if (self->runner == NULL || tb_lesson_runner_get_thrown (self->runner) == NULL)
    return g_strdup ("");
  before = tb_describe_run (tb_session_get_run (session, TB_SIDE_BEFORE), units);
  if (tb_lesson_runner_get_stage (self->runner) != TB_LESSON_REVEALED)
    /* Translators: %s is a sentence or more about a run. */
    return g_strdup_printf (_ ("Before: %s The throw after is not shown yet."), before);
  after = tb_describe_run (tb_session_get_run (session, TB_SIDE_AFTER), units);
  /* Translators: each %s is a sentence or more about a run. */
  return g_strdup_printf (_ ("Before: %s After: %s"), before, after);
}

gboolean
tb_lesson_picture_get_marker (TbLessonPicture *self, double *px, double *py)
{
  TbLaneScene scene;
  TbGuessScene guess;

  if (!has_marker (self))
    return FALSE;
  scene = scene_of (self);
  guess = guess_of (self, &scene);
  tb_guess_view_place (&guess, px, py);
  return TRUE;
}

GtkWidget *
tb_lesson_picture_get_grip (TbLessonPicture *self)
{
  return self->grip;
}

/* Wherever the lane is touched: across it the place counts, along it the line is given. */
void
tb_lesson_picture_drag_to (TbLessonPicture *self, double x, double y)
{
  TbLaneScene scene;
  TbGuessScene guess;

  if (!has_marker (self))
    return;
  scene = scene_of (self);
  guess = guess_of (self, &scene);
  tb_lesson_runner_set_board (self->runner, tb_guess_view_board_at (&guess, x, y));
}

static void
on_drag_begin (TbLessonPicture *self, double x, double y)
{
  self->drag_x = x;
  self->drag_y = y;
  if (gtk_widget_is_sensitive (self->grip))
    gtk_widget_grab_focus (self->grip);
  tb_lesson_picture_drag_to (self, x, y);
}

static void
on_drag_update (TbLessonPicture *self, double dx, double dy)
{
  tb_lesson_picture_drag_to (self, self->drag_x + dx, self->drag_y + dy);
}

static void
show_runner (TbLessonPicture *self)
{
  gboolean asking = has_marker (self) && tb_lesson_runner_get_stage (self->runner) == TB_LESSON_ASKING;

  gtk_widget_set_cursor_from_name (
      GTK_WIDGET (self),
      !asking ? NULL : (self->projection == TB_LANE_PLAN_SIDEWAYS ? "ns-resize" : "ew-resize"));
  tb_picture_refresh (TB_PICTURE (self));
  gtk_widget_queue_allocate (GTK_WIDGET (self));
}

/* A dragged marker leaves the lane below it as it is. */
static void
on_runner_changed (TbLessonPicture *self)
{
  if (tb_lesson_runner_get_stage (self->runner) == TB_LESSON_ASKING
      && tb_lesson_runner_has_guess (self->runner))
    {
      gtk_widget_queue_allocate (GTK_WIDGET (self));
      gtk_widget_queue_draw (GTK_WIDGET (self));
      return;
    }
  show_runner (self);
}

void
tb_lesson_picture_set_runner (TbLessonPicture *self, TbLessonRunner *runner)
{
  TbSession *session = tb_lesson_runner_get_session (runner);

  g_return_if_fail (self->runner == NULL);
  self->runner = g_object_ref (runner);
  self->playback = tb_playback_new (GTK_WIDGET (self), session);
  tb_guess_grip_set_runner (TB_GUESS_GRIP (self->grip), runner);
  tb_picture_set_session (TB_PICTURE (self), session);
  g_signal_connect_object (runner, "changed", G_CALLBACK (on_runner_changed), self, G_CONNECT_SWAPPED);
  show_runner (self);
}

void
tb_lesson_picture_set_projection (TbLessonPicture *self, TbLaneProjection projection)
{
  if (self->projection == projection)
    return;
  self->projection = projection;
  if (self->runner != NULL)
    show_runner (self);
}

/* Where the marker is drawn, for who asks where it is. */
static void
tb_lesson_picture_size_allocate (GtkWidget *widget, int width, int height, int baseline)
{
  TbLessonPicture *self = TB_LESSON_PICTURE (widget);
  int side = (int) (GRIP_SIDE * tb_picture_get_theme (TB_PICTURE (self)).text_size);
  double x = 0, y = 0;

  tb_lesson_picture_get_marker (self, &x, &y);
  gtk_widget_measure (self->grip, GTK_ORIENTATION_HORIZONTAL, -1, NULL, NULL, NULL, NULL);
  gtk_widget_size_allocate (self->grip,
                            &(GtkAllocation){ (int) x - side / 2, (int) y - side / 2, side, side }, -1);
}

static void
tb_lesson_picture_dispose (GObject *object)
{
  TbLessonPicture *self = TB_LESSON_PICTURE (object);

  g_clear_pointer (&self->playback, tb_playback_free);
  g_clear_pointer (&self->grip, gtk_widget_unparent);
  g_clear_object (&self->runner);
  G_OBJECT_CLASS (tb_lesson_picture_parent_class)->dispose (object);
}

static void
tb_lesson_picture_class_init (TbLessonPictureClass *klass)
{
  TbPictureClass *picture_class = TB_PICTURE_CLASS (klass);

  picture_class->draw_ground = tb_lesson_picture_draw_ground;
  picture_class->ground_key = tb_lesson_picture_ground_key;
  picture_class->draw_still = tb_lesson_picture_draw_still;
  picture_class->snapshot_moving = tb_lesson_picture_snapshot_moving;
  picture_class->describe = tb_lesson_picture_describe;
  G_OBJECT_CLASS (klass)->dispose = tb_lesson_picture_dispose;
  GTK_WIDGET_CLASS (klass)->size_allocate = tb_lesson_picture_size_allocate;
}

static void
add_grip (TbLessonPicture *self)
{
  GtkEventController *focus = gtk_event_controller_focus_new ();

  self->grip = tb_guess_grip_new ();
  g_signal_connect_object (focus, "notify::is-focus", G_CALLBACK (gtk_widget_queue_draw), self,
                           G_CONNECT_SWAPPED);
  gtk_widget_add_controller (self->grip, focus);
  gtk_widget_set_parent (self->grip, GTK_WIDGET (self));
}

static void
tb_lesson_picture_init (TbLessonPicture *self)
{
  GtkGesture *drag = gtk_gesture_drag_new ();

  add_grip (self);
  g_signal_connect_swapped (drag, "drag-begin", G_CALLBACK (on_drag_begin), self);
  g_signal_connect_swapped (drag, "drag-update", G_CALLBACK (on_drag_update), self);
  gtk_widget_add_controller (GTK_WIDGET (self), GTK_EVENT_CONTROLLER (drag));
  tb_picture_set_name (TB_PICTURE (self), _ ("Lane"));
}
