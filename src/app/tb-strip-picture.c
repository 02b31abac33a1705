/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "tb-strip-picture.h"

#include <glib/gi18n-lib.h>

#include "tb-describe.h"
#include "tb-lane-snapshot.h"
#include "tb-style.h"

/* Lines of text that a strip has room for, alone on the screen and one of two: few, and so large. */
#define LINES 22.0
#define LINES_APART 14.0
/* A trail grows by so many stretches between foul line and pit. */
#define STRETCHES 64

struct _TbStripPicture
{
  TbPicture parent_instance;

  TbStripRuns runs;
  double text_size; /* px */
  gboolean over;    /* the still drawing shows where the throws went */
  /* What the balls have left behind, by stretch of lane; each is drawn once. */
  GskRenderNode *trail[TB_N_SIDES][STRETCHES];
};

G_DEFINE_FINAL_TYPE (TbStripPicture, tb_strip_picture, TB_TYPE_PICTURE)

static gboolean
shows (TbStripPicture *self, TbSide side)
{
  return self->runs == TB_STRIP_BOTH || (int) self->runs == (int) side;
}

/* The lane is that of the throw shown; of both, that of after. */
static TbLaneScene
scene_of (TbStripPicture *self)
{
  TbSession *session = tb_picture_get_session (TB_PICTURE (self));
  TbSide side = self->runs == TB_STRIP_BEFORE ? TB_SIDE_BEFORE : TB_SIDE_AFTER;
  const TbShot *shot = &tb_session_get_setup (session, side)->shot;
  TbLaneScene scene = tb_lane_scene_default ();

  scene.theme = tb_style_projector_theme (GTK_WIDGET (self), self->text_size / TB_THEME_TEXT_SIZE);
  scene.theme.lines = self->runs == TB_STRIP_BOTH ? LINES : LINES_APART;
  scene.projection = TB_LANE_PLAN_SIDEWAYS;
  scene.oil = shot->lane.oil;
  scene.oil_scale = shot->lane.pattern_scale;
  scene.before = shows (self, TB_SIDE_BEFORE) ? tb_session_get_path (session, TB_SIDE_BEFORE) : NULL;
  scene.after = shows (self, TB_SIDE_AFTER) ? tb_session_get_path (session, TB_SIDE_AFTER) : NULL;
  scene.before_label = _ ("before");
  scene.after_label = _ ("after");
  if (self->runs != TB_STRIP_BOTH)
    scene.other_label = self->runs == TB_STRIP_BEFORE ? scene.after_label : scene.before_label;
  scene.pocket_low = shot->assumed.pocket_low;
  scene.pocket_high = shot->assumed.pocket_high;
  scene.mirrored = shot->delivery.hand == TB_HAND_LEFT;
  scene.show_legend = false;
  scene.show_note = false;
  scene.show_phases = self->runs == TB_STRIP_BOTH;
  return scene;
}

/* A room is not shown where a ball goes before it has gone there. */
static gboolean
is_over (TbStripPicture *self)
{
  TbSession *session = tb_picture_get_session (TB_PICTURE (self));
  double end = 0;

  for (TbSide side = 0; side < TB_N_SIDES; side++)
    {
      const TbPath *path = shows (self, side) ? tb_session_get_path (session, side) : NULL;

      if (path != NULL)
        end = MAX (end, tb_path_duration (path));
    }
  return end > 0 && tb_session_get_time (session) >= end;
}

static void
drop_trails (TbStripPicture *self)
{
  for (TbSide side = 0; side < TB_N_SIDES; side++)
    for (guint i = 0; i < STRETCHES; i++)
      g_clear_pointer (&self->trail[side][i], gsk_render_node_unref);
}

static void
tb_strip_picture_draw_ground (TbPicture *picture, cairo_t *cr, double width, double height)
{
  TbLaneScene scene = scene_of (TB_STRIP_PICTURE (picture));

  tb_lane_view_draw_ground (cr, width, height, &scene);
}

static GBytes *
tb_strip_picture_ground_key (TbPicture *picture, double width, double height)
{
  TbLaneScene scene = scene_of (TB_STRIP_PICTURE (picture));

  return tb_lane_view_ground_key (width, height, &scene);
}

static void
tb_strip_picture_draw_still (TbPicture *picture, cairo_t *cr, double width, double height)
{
  TbStripPicture *self = TB_STRIP_PICTURE (picture);
  TbLaneScene scene = scene_of (self);

  drop_trails (self);
  self->over = is_over (self);
  (self->over ? tb_lane_view_draw_runs : tb_lane_view_draw_names) (cr, width, height, &scene);
}

gboolean
tb_strip_picture_get_ball (TbStripPicture *self, TbSide side, double *x, double *y)
{
  TbLaneScene scene = scene_of (self);
  const TbPath *path = side == TB_SIDE_BEFORE ? scene.before : scene.after;
  double width, height;
  cairo_rectangle_t place;

  if (path == NULL)
    return FALSE;
  tb_picture_get_size (TB_PICTURE (self), &width, &height);
  tb_lane_view_ball_extents (width, height, &scene, path,
                             tb_session_get_time (tb_picture_get_session (TB_PICTURE (self))), &place);
  *x = place.x + 0.5 * place.width;
  *y = place.y + 0.5 * place.height;
  return TRUE;
}

/* The lines of one side in a stretch of the picture, px. */
static GskRenderNode *
trail_node (TbStripPicture *self, const TbLaneScene *scene, TbSide side, graphene_rect_t bounds)
{
  TbLaneScene alone = *scene;
  GtkSnapshot *snapshot = gtk_snapshot_new ();
  cairo_t *cr = gtk_snapshot_append_cairo (snapshot, &bounds);
  double width, height;

  /* The layout needs both; the lines are of one. */
  *(side == TB_SIDE_BEFORE ? &alone.after : &alone.before) = NULL;
  tb_picture_get_size (TB_PICTURE (self), &width, &height);
  tb_lane_view_draw_lines (cr, width, height, &alone);
  cairo_destroy (cr);
  return gtk_snapshot_free_to_node (snapshot);
}

/* All stretches that the ball, at x, has left behind. */
static void
append_trail (TbStripPicture *self, GtkSnapshot *snapshot, const TbLaneScene *scene, TbSide side, double x)
{
  double width, height, step;

  tb_picture_get_size (TB_PICTURE (self), &width, &height);
  step = width / STRETCHES;
  for (guint i = 0; i < STRETCHES && (i + 1) * step <= x; i++)
    {
      float left = (float) floor (i * step), right = (float) floor ((i + 1) * step);

      if (self->trail[side][i] == NULL)
        self->trail[side][i]
            = trail_node (self, scene, side, GRAPHENE_RECT_INIT (left, 0, right - left, (float) height));
      if (self->trail[side][i] != NULL)
        gtk_snapshot_append_node (snapshot, self->trail[side][i]);
    }
}

static void
tb_strip_picture_snapshot_moving (TbPicture *picture, GtkSnapshot *snapshot, double width, double height)
{
  TbStripPicture *self = TB_STRIP_PICTURE (picture);
  TbLaneScene scene = scene_of (self);

  for (TbSide side = 0; side < TB_N_SIDES && !self->over; side++)
    {
      double x, y;

      if (tb_strip_picture_get_ball (self, side, &x, &y))
        append_trail (self, snapshot, &scene, side, x);
    }
  tb_snapshot_append_ball (snapshot, picture, &scene, scene.before);
  tb_snapshot_append_ball (snapshot, picture, &scene, scene.after);
  /* Those of another size are not for the screen. */
  if (tb_picture_has_other_form (picture))
    drop_trails (self);
}

static void
tb_strip_picture_time_changed (TbPicture *picture)
{
  TbStripPicture *self = TB_STRIP_PICTURE (picture);

  if (is_over (self) != self->over)
    tb_picture_invalidate (picture);
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

static char *
tb_strip_picture_describe (TbPicture *picture)
{
  TbStripPicture *self = TB_STRIP_PICTURE (picture);
  TbSession *session = tb_picture_get_session (picture);
  TbUnits units = tb_session_get_units (session);
  g_autofree char *before = tb_describe_run (tb_session_get_run (session, TB_SIDE_BEFORE), units);
  g_autofree char *after = tb_describe_run (tb_session_get_run (session, TB_SIDE_AFTER), units);

  if (self->runs != TB_STRIP_BOTH)
    return self->runs == TB_STRIP_BEFORE ? g_steal_pointer (&before) : g_steal_pointer (&after);
  /* Translators: each %s is a sentence or more about a run. */
  return g_strdup_printf (_ ("Before: %s After: %s"), before, after);
}

static void
show_name (TbStripPicture *self)
{
  const char *const names[] = { _ ("Lane, before"), _ ("Lane, after"), _ ("Lane, both throws") };

  tb_picture_set_name (TB_PICTURE (self), names[self->runs]);
}

void
tb_strip_picture_set_runs (TbStripPicture *self, TbStripRuns runs)
{
  self->runs = runs;
  show_name (self);
  tb_picture_invalidate (TB_PICTURE (self));
}

void
tb_strip_picture_set_text_size (TbStripPicture *self, double size)
{
  if (fabs (size - self->text_size) < 0.5)
    return;
  self->text_size = size;
  tb_picture_invalidate (TB_PICTURE (self));
}

static void
tb_strip_picture_dispose (GObject *object)
{
  drop_trails (TB_STRIP_PICTURE (object));
  G_OBJECT_CLASS (tb_strip_picture_parent_class)->dispose (object);
}

static void
tb_strip_picture_class_init (TbStripPictureClass *klass)
{
  TbPictureClass *picture_class = TB_PICTURE_CLASS (klass);

  picture_class->draw_ground = tb_strip_picture_draw_ground;
  picture_class->ground_key = tb_strip_picture_ground_key;
  picture_class->draw_still = tb_strip_picture_draw_still;
  picture_class->snapshot_moving = tb_strip_picture_snapshot_moving;
  picture_class->describe = tb_strip_picture_describe;
  picture_class->time_changed = tb_strip_picture_time_changed;
  G_OBJECT_CLASS (klass)->dispose = tb_strip_picture_dispose;
}

static void
tb_strip_picture_init (TbStripPicture *self)
{
  self->text_size = TB_THEME_TEXT_SIZE;
  show_name (self);
}
