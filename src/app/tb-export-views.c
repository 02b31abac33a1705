/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "tb-export-views.h"

#include "tb-ball-picture.h"
#include "tb-lane-picture.h"
#include "tb-loft-picture.h"

typedef struct View
{
  char *name;
  TbThrowView view;   /* of the throw; where there is no picture */
  TbPicture *picture; /* weak, and NULL once it has gone */
  gboolean other;     /* it is a picture's */
} View;

struct TbExportViews
{
  TbSession *session;
  GPtrArray *views; /* of View */
};

static void
view_free (gpointer data)
{
  View *view = data;

  g_clear_weak_pointer (&view->picture);
  g_free (view->name);
  g_free (view);
}

static const View *
get_view (const TbExportViews *self, guint view)
{
  return g_ptr_array_index (self->views, view);
}

static View *
add_view (TbExportViews *self, const char *name)
{
  View *view = g_new0 (View, 1);

  view->name = g_strdup (name);
  g_ptr_array_add (self->views, view);
  return view;
}

static void
add_throw_views (TbExportViews *self)
{
  /* Their own shape says which way the lane lies. */
  for (TbThrowView view = TB_THROW_PLAN; view < TB_N_THROW_VIEWS; view++)
    add_view (self, tb_throw_view_label (view))->view = view;
}

/* Where pictures are of the throw, its views stand for them. */
static gboolean
shows_throw (gpointer widget)
{
  return TB_IS_LANE_PICTURE (widget) || TB_IS_BALL_PICTURE (widget) || TB_IS_LOFT_PICTURE (widget);
}

static void
add_pictures (TbExportViews *self, GtkWidget *widget)
{
  if (TB_IS_PICTURE (widget) && !shows_throw (widget) && gtk_widget_get_mapped (widget)
      && tb_picture_get_session (TB_PICTURE (widget)) == self->session)
    {
      View *view = add_view (self, tb_picture_get_name (TB_PICTURE (widget)));

      view->other = TRUE;
      g_set_weak_pointer (&view->picture, TB_PICTURE (widget));
    }
  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL;
       child = gtk_widget_get_next_sibling (child))
    add_pictures (self, child);
}

static void
add_all_pictures (TbExportViews *self)
{
  GListModel *windows = gtk_window_get_toplevels ();

  for (guint i = 0; i < g_list_model_get_n_items (windows); i++)
    {
      g_autoptr (GtkWidget) window = g_list_model_get_item (windows, i);

      add_pictures (self, window);
    }
}

TbExportViews *
tb_export_views_new (TbSession *session, gboolean pictures)
{
  TbExportViews *self = g_new0 (TbExportViews, 1);

  self->session = g_object_ref (session);
  self->views = g_ptr_array_new_with_free_func (view_free);
  add_throw_views (self);
  if (pictures)
    add_all_pictures (self);
  return self;
}

void
tb_export_views_free (TbExportViews *self)
{
  g_ptr_array_unref (self->views);
  g_object_unref (self->session);
  g_free (self);
}

guint
tb_export_views_get_n (const TbExportViews *self)
{
  return self->views->len;
}

const char *
tb_export_views_get_name (const TbExportViews *self, guint view)
{
  return get_view (self, view)->name;
}

static TbThrowView
throw_view_of (TbPicture *picture)
{
  static const TbThrowView lanes[] = { TB_THROW_PLAN, TB_THROW_SIDEWAYS, TB_THROW_APPROACH };

  if (TB_IS_LANE_PICTURE (picture))
    return lanes[tb_lane_picture_get_projection (TB_LANE_PICTURE (picture))];
  if (TB_IS_LOFT_PICTURE (picture))
    return TB_THROW_LOFT;
  return tb_ball_picture_get_eye (TB_BALL_PICTURE (picture)) == TB_BALL_FROM_SIDE ? TB_THROW_BALL_SIDE
                                                                                  : TB_THROW_BALL;
}

static gboolean
shows (const View *view, TbPicture *picture)
{
  if (shows_throw (picture))
    return !view->other && view->view == throw_view_of (picture);
  return view->picture == picture;
}

guint
tb_export_views_find (const TbExportViews *self, TbPicture *picture)
{
  guint view = 0;

  while (view < self->views->len && !shows (get_view (self, view), picture))
    view++;
  return view;
}

gboolean
tb_export_views_stands (TbPicture *picture)
{
  return TB_IS_LANE_PICTURE (picture) && throw_view_of (picture) != TB_THROW_SIDEWAYS;
}

gboolean
tb_export_views_can_draw (const TbExportViews *self, guint view)
{
  const View *wanted;

  if (view >= self->views->len)
    return FALSE;
  wanted = get_view (self, view);
  if (wanted->other)
    return wanted->picture != NULL && tb_picture_get_session (wanted->picture) != NULL;
  return tb_session_get_run (self->session, TB_SIDE_AFTER)->status == TB_OK;
}

TbThrowScene
tb_export_views_scene (const TbExportViews *self, guint view, const TbExportLook *look)
{
  TbRun *before = tb_session_get_run (self->session, TB_SIDE_BEFORE);
  TbThrowScene scene = tb_throw_scene_new (before->status == TB_OK ? before : NULL,
                                           tb_session_get_run (self->session, TB_SIDE_AFTER));

  scene.theme = look->theme;
  scene.view = get_view (self, view)->view;
  scene.time = tb_session_get_time (self->session);
  scene.metric = tb_session_get_units (self->session) == TB_UNITS_METRIC;
  scene.caption = look->caption;
  scene.rate = look->rate;
  return scene;
}

void
tb_export_views_draw (const TbExportViews *self, guint view, cairo_t *cr, const TbExportLook *look)
{
  const View *wanted = get_view (self, view);

  if (wanted->other)
    tb_picture_draw (wanted->picture, cr, &(TbPictureForm){ look->width, look->height, &look->theme });
  else
    {
      TbThrowScene scene = tb_export_views_scene (self, view, look);

      tb_throw_view_draw (cr, look->width, look->height, &scene);
    }
}
