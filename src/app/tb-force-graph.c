/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "tb-force-graph.h"

#include <glib/gi18n-lib.h>

#include "tb-describe.h"
#include "tb-quantity.h"
#include "tb-run-graph.h"

struct _TbForceGraph
{
  TbPicture parent_instance;

  TbForceGraphEnds ends; /* NULL: as suits the graph */
  gpointer ends_data;
};

G_DEFINE_FINAL_TYPE (TbForceGraph, tb_force_graph, TB_TYPE_PICTURE)

/* Steps of the arrow keys and of Page Up and Down along the lane, m. */
#define STEP (0.5 * TB_METRES_PER_FOOT)
#define PAGE (5 * TB_METRES_PER_FOOT)

static TbRunGraphScene
scene_of (TbForceGraph *self)
{
  TbSession *session = tb_picture_get_session (TB_PICTURE (self));
  TbRunGraphScene scene = tb_run_graph_scene_default ();

  scene.theme = tb_picture_get_theme (TB_PICTURE (self));
  scene.before = tb_session_get_path (session, TB_SIDE_BEFORE);
  scene.after = tb_session_get_path (session, TB_SIDE_AFTER);
  if (self->ends == NULL || !self->ends (self->ends_data, &scene.left, &scene.right))
    scene.left = scene.right = NAN;
  scene.metric = tb_session_get_units (session) == TB_UNITS_METRIC;
  return scene;
}

/* The reading line stands where the ball of "after" is, or of "before" if there is no other. NAN if there is
 * neither. */
static double
cursor_of (TbForceGraph *self, const TbRunGraphScene *scene)
{
  const TbPath *path = scene->after != NULL ? scene->after : scene->before;
  TbSample sample;

  if (path == NULL
      || !tb_path_at_time (path, tb_session_get_time (tb_picture_get_session (TB_PICTURE (self))), &sample))
    return NAN;
  return CLAMP (sample.position.y, 0, TB_HEAD_PIN_Y);
}

static void
tb_force_graph_draw_still (TbPicture *picture, cairo_t *cr, double width, double height)
{
  TbRunGraphScene scene = scene_of (TB_FORCE_GRAPH (picture));

  tb_run_graph_draw (cr, width, height, &scene);
}

static void
tb_force_graph_snapshot_moving (TbPicture *picture, GtkSnapshot *snapshot, double width, double height)
{
  TbForceGraph *self = TB_FORCE_GRAPH (picture);
  TbRunGraphScene scene = scene_of (self);
  double y = cursor_of (self, &scene);
  cairo_rectangle_t place;
  graphene_rect_t bounds;
  cairo_t *cr;

  if (isnan (y))
    return;
  tb_run_graph_cursor_extents (width, height, &scene, y, &place);
  graphene_rect_init (&bounds, (float) place.x, (float) place.y, (float) place.width, (float) place.height);
  graphene_rect_round_extents (&bounds, &bounds);
  cr = gtk_snapshot_append_cairo (snapshot, &bounds);
  tb_run_graph_draw_cursor (cr, width, height, &scene, y);
  cairo_destroy (cr);
}

static char *
side_reading (const TbPath *path, double y, gboolean metric)
{
  GString *text = g_string_new (NULL);

  for (int quantity = 0; quantity < TB_RUN_N_QUANTITIES; quantity++)
    {
      double value = tb_run_quantity_at (path, (TbRunQuantity) quantity, y, metric);
      g_autofree char *number = NULL;

      if (isnan (value))
        continue;
      number = tb_number_format (value, tb_run_quantity_digits ((TbRunQuantity) quantity));
      /* Translators: a quantity, its number, its unit: "slip 4.2 mph" */
      g_string_append (text, text->len > 0 ? _ (", ") : "");
      g_string_append_printf (text, _ ("%s %s %s"), tb_run_quantity_name ((TbRunQuantity) quantity), number,
                              tb_run_quantity_unit ((TbRunQuantity) quantity, metric));
    }
  return g_string_free (text, FALSE);
}

char *
tb_force_graph_get_reading (TbForceGraph *self)
{
  TbRunGraphScene scene = scene_of (self);
  double y = cursor_of (self, &scene);
  g_autofree char *where = NULL, *before = NULL, *after = NULL;

  if (isnan (y))
    return g_strdup ("");
  where = tb_describe_distance (y, tb_session_get_units (tb_picture_get_session (TB_PICTURE (self))));
  before = side_reading (scene.before, y, scene.metric);
  after = side_reading (scene.after, y, scene.metric);
  /* Translators: a distance, and what each run has there. */
  return g_strdup_printf (_ ("At %s. Before: %s. After: %s."), where, before, after);
}

static char *
tb_force_graph_describe (TbPicture *picture)
{
  return tb_force_graph_get_reading (TB_FORCE_GRAPH (picture));
}

/* Moves the ball to a distance down the lane. */
static void
seek (TbForceGraph *self, double y)
{
  TbSession *session = tb_picture_get_session (TB_PICTURE (self));
  TbRunGraphScene scene = scene_of (self);
  const TbPath *path = scene.after != NULL ? scene.after : scene.before;
  TbSample sample;

  if (path == NULL || !tb_path_at_distance (path, y, &sample))
    return;
  tb_session_set_time (session, sample.time);
}

static void
seek_at (TbForceGraph *self, double px)
{
  TbRunGraphScene scene = scene_of (self);
  double y;

  tb_run_graph_to_distance (gtk_widget_get_width (GTK_WIDGET (self)),
                            gtk_widget_get_height (GTK_WIDGET (self)), &scene, px, &y);
  seek (self, y);
}

/* A throw that is under way is not disturbed by a pointer that only passes. */
static void
on_motion (TbForceGraph *self, double px, double py)
{
  TbSession *session = tb_picture_get_session (TB_PICTURE (self));

  if (session != NULL && !tb_session_get_playing (session))
    seek_at (self, px);
}

static void
on_drag_begin (TbForceGraph *self, double px, double py)
{
  gtk_widget_grab_focus (GTK_WIDGET (self));
  tb_session_set_playing (tb_picture_get_session (TB_PICTURE (self)), FALSE);
  seek_at (self, px);
}

static gboolean
on_key (TbForceGraph *self, guint keyval)
{
  TbSession *session = tb_picture_get_session (TB_PICTURE (self));
  TbRunGraphScene scene = scene_of (self);
  double y = cursor_of (self, &scene);

  switch (keyval)
    {
    case GDK_KEY_Up:
    case GDK_KEY_Right:
      y += STEP;
      break;
    case GDK_KEY_Down:
    case GDK_KEY_Left:
      y -= STEP;
      break;
    case GDK_KEY_Page_Up:
      y += PAGE;
      break;
    case GDK_KEY_Page_Down:
      y -= PAGE;
      break;
    case GDK_KEY_Home:
      y = 0;
      break;
    case GDK_KEY_End:
      y = TB_HEAD_PIN_Y;
      break;
    default:
      return GDK_EVENT_PROPAGATE;
    }
  tb_session_set_playing (session, FALSE);
  if (!isnan (y))
    seek (self, y);
  return GDK_EVENT_STOP;
}

void
tb_force_graph_set_ends (TbForceGraph *self, TbForceGraphEnds ends, gpointer user_data)
{
  self->ends = ends;
  self->ends_data = user_data;
  tb_picture_invalidate (TB_PICTURE (self));
}

static void
tb_force_graph_class_init (TbForceGraphClass *klass)
{
  TbPictureClass *picture_class = TB_PICTURE_CLASS (klass);

  picture_class->draw_still = tb_force_graph_draw_still;
  picture_class->snapshot_moving = tb_force_graph_snapshot_moving;
  picture_class->describe = tb_force_graph_describe;
}

static void
tb_force_graph_init (TbForceGraph *self)
{
  GtkWidget *widget = GTK_WIDGET (self);
  GtkEventController *motion = gtk_event_controller_motion_new ();
  GtkEventController *keys = gtk_event_controller_key_new ();
  GtkGesture *drag = gtk_gesture_drag_new ();

  g_signal_connect_swapped (motion, "motion", G_CALLBACK (on_motion), self);
  g_signal_connect_swapped (keys, "key-pressed", G_CALLBACK (on_key), self);
  g_signal_connect_swapped (drag, "drag-begin", G_CALLBACK (on_drag_begin), self);
  gtk_widget_add_controller (widget, motion);
  gtk_widget_add_controller (widget, keys);
  gtk_widget_add_controller (widget, GTK_EVENT_CONTROLLER (drag));
  gtk_widget_set_focusable (widget, TRUE);
  tb_picture_set_name (TB_PICTURE (self), _ ("Friction, slip and heading along the lane"));
}
