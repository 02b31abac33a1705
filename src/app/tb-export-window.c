/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "tb-export-window.h"

#include <glib/gi18n-lib.h>

#include "tb-accessible.h"
#include "tb-ball-picture.h"
#include "tb-clip.h"
#include "tb-export-job.h"
#include "tb-lane-picture.h"
#include "tb-loft-picture.h"
#include "tb-picture-menu.h"
#include "tb-save-dialog.h"
#include "tb-style.h"

/* How often the progress is shown anew, ms. */
#define PROGRESS_PERIOD 100

/* Sizes that are proposed, px: of what lies, and of what stands. */
#define LYING_WIDTH 1280
#define LYING_HEIGHT 800
#define STANDING_WIDTH 900
#define STANDING_HEIGHT 1200
/* The line round the preview, px. */
#define FRAME_WIDTH 1.0

/* A view that can be chosen. */
typedef struct View
{
  char *name;
  TbThrowView view;   /* of the throw; where there is no picture */
  TbPicture *picture; /* weak, and NULL once it has gone */
  gboolean other;     /* it is a picture's */
} View;

struct _TbExportWindow
{
  GtkWindow parent_instance;

  /* Template */
  GtkDrawingArea *preview;
  GtkDropDown *view;
  GtkDropDown *look;
  GtkDropDown *rate;
  GtkWidget *rate_box;
  GtkWidget *copy_button;
  GtkAdjustment *width_adjustment;
  GtkAdjustment *height_adjustment;
  GtkLabel *forms_label;
  GtkWidget *progress_box;
  GtkProgressBar *progress;
  GtkLabel *answer;

  TbExportKind kind;
  TbSession *session;
  GPtrArray *views;             /* of View */
  GtkFileChooserNative *dialog; /* open at the moment; else NULL */
  gboolean busy;
  GTask *clip;               /* being saved; else NULL */
  GCancellable *cancellable; /* its */
  guint progress_timeout;
};

G_DEFINE_FINAL_TYPE (TbExportWindow, tb_export_window, GTK_TYPE_WINDOW)

static const TbSaveForm picture_forms[] = {
  { "png", N_ ("Pictures (PNG)") },
  { "svg", N_ ("Drawings (SVG)") },
  { "pdf", N_ ("Pages (PDF)") },
  { NULL, NULL },
};
static const TbSaveForm clip_forms[] = { { "webp", N_ ("Clips (WebP)") }, { NULL, NULL } };

/* What is chosen. */

static void
view_free (gpointer data)
{
  View *view = data;

  g_clear_weak_pointer (&view->picture);
  g_free (view->name);
  g_free (view);
}

static const View *
chosen (TbExportWindow *self)
{
  guint view = gtk_drop_down_get_selected (self->view);

  return view < self->views->len ? g_ptr_array_index (self->views, view) : NULL;
}

static int
width_of (TbExportWindow *self)
{
  return (int) gtk_adjustment_get_value (self->width_adjustment);
}

static int
height_of (TbExportWindow *self)
{
  return (int) gtk_adjustment_get_value (self->height_adjustment);
}

static TbTheme
theme_of (TbExportWindow *self)
{
  static TbTheme (*const looks[]) (double) = { tb_theme_light, tb_theme_dark, tb_theme_contrast };
  guint look = gtk_drop_down_get_selected (self->look);

  return looks[look < G_N_ELEMENTS (looks) ? look : 0](
      tb_throw_view_text_scale (width_of (self), height_of (self)));
}

static double
rate_of (TbExportWindow *self)
{
  static const double rates[] = { 1, 0.5, 0.25 };
  guint rate = gtk_drop_down_get_selected (self->rate);

  return rates[rate < G_N_ELEMENTS (rates) ? rate : 0];
}

static gboolean
is_thrown (TbExportWindow *self)
{
  return tb_session_get_run (self->session, TB_SIDE_AFTER)->status == TB_OK;
}

/* Only while "after" was thrown. */
static TbThrowScene
scene_of (TbExportWindow *self, TbThrowView view)
{
  TbRun *before = tb_session_get_run (self->session, TB_SIDE_BEFORE);
  TbThrowScene scene = tb_throw_scene_new (before->status == TB_OK ? before : NULL,
                                           tb_session_get_run (self->session, TB_SIDE_AFTER));

  scene.theme = theme_of (self);
  scene.view = view;
  scene.time = tb_session_get_time (self->session);
  scene.metric = tb_session_get_units (self->session) == TB_UNITS_METRIC;
  scene.caption = self->kind == TB_EXPORT_CLIP;
  scene.rate = self->kind == TB_EXPORT_CLIP ? rate_of (self) : 1;
  return scene;
}

/* There is something to draw. */
static gboolean
can_draw (TbExportWindow *self)
{
  const View *view = chosen (self);

  if (view == NULL || width_of (self) < 1)
    return FALSE;
  if (view->other)
    return view->picture != NULL && tb_picture_get_session (view->picture) != NULL;
  return is_thrown (self);
}

static void
draw (cairo_t *cr, double width, double height, gpointer data)
{
  TbExportWindow *self = data;
  const View *view = chosen (self);

  if (view->other)
    {
      TbTheme theme = theme_of (self);

      tb_picture_draw (view->picture, cr, &(TbPictureForm){ width, height, &theme });
    }
  else
    {
      TbThrowScene scene = scene_of (self, view->view);

      tb_throw_view_draw (cr, width, height, &scene);
    }
}

/* Where the picture ends, for one whose ground is the window's. */
static void
draw_frame (TbExportWindow *self, cairo_t *cr, double scale)
{
  TbTheme theme = theme_of (self);

  cairo_reset_clip (cr);
  cairo_rectangle (cr, 0, 0, width_of (self), height_of (self));
  cairo_set_source_rgb (cr, theme.rule.red, theme.rule.green, theme.rule.blue);
  cairo_set_line_width (cr, 2 * FRAME_WIDTH / scale);
  cairo_stroke (cr);
}

static void
draw_preview (GtkDrawingArea *area, cairo_t *cr, int width, int height, gpointer data)
{
  TbExportWindow *self = data;
  double scale = MIN ((double) width / width_of (self), (double) height / height_of (self));

  if (!can_draw (self))
    return;
  cairo_translate (cr, 0.5 * (width - scale * width_of (self)), 0.5 * (height - scale * height_of (self)));
  cairo_scale (cr, scale, scale);
  cairo_rectangle (cr, 0, 0, width_of (self), height_of (self));
  cairo_clip (cr);
  draw (cr, width_of (self), height_of (self), self);
  draw_frame (self, cr, scale);
}

static void
update (TbExportWindow *self)
{
  gboolean ready = can_draw (self) && !self->busy;

  gtk_widget_action_set_enabled (GTK_WIDGET (self), "export.save", ready);
  gtk_widget_action_set_enabled (GTK_WIDGET (self), "export.copy", ready && self->kind == TB_EXPORT_PICTURE);
  gtk_widget_set_visible (self->progress_box, self->clip != NULL);
  gtk_widget_queue_draw (GTK_WIDGET (self->preview));
}

static void
tell (TbExportWindow *self, const char *sentence)
{
  gtk_label_set_text (self->answer, sentence);
}

/* Saving. */

static void
set_busy (TbExportWindow *self, gboolean busy)
{
  self->busy = busy;
  if (!busy)
    {
      g_clear_handle_id (&self->progress_timeout, g_source_remove);
      g_clear_object (&self->clip);
      g_clear_object (&self->cancellable);
    }
  update (self);
}

/* What became of it. */
static void
finish_saving (TbExportWindow *self, const char *path, const GError *error)
{
  g_autofree char *shown = g_filename_display_basename (path);
  g_autofree char *saved = g_strdup_printf (_ ("Saved as “%s”."), shown);

  set_busy (self, FALSE);
  if (g_error_matches (error, G_IO_ERROR, G_IO_ERROR_CANCELLED))
    tell (self, _ ("Cancelled; nothing was saved."));
  else
    tell (self, error != NULL ? error->message : saved);
}

/* Whoever waits for a job, and where it goes. A window that is closed does not wait: it calls off what it
 * can. */
typedef struct Waiting
{
  TbExportWindow *window; /* weak, and NULL once it has gone */
  char *path;
} Waiting;

static Waiting *
waiting_new (TbExportWindow *self, const char *path)
{
  Waiting *waiting = g_new0 (Waiting, 1);

  g_set_weak_pointer (&waiting->window, self);
  waiting->path = g_strdup (path);
  return waiting;
}

static void
waiting_free (Waiting *self)
{
  g_clear_weak_pointer (&self->window);
  g_free (self->path);
  g_free (self);
}

G_DEFINE_AUTOPTR_CLEANUP_FUNC (Waiting, waiting_free)

static void
on_picture_saved (GObject *source, GAsyncResult *result, gpointer data)
{
  g_autoptr (Waiting) waiting = data;
  g_autoptr (GError) error = NULL;

  tb_export_picture_finish (result, &error);
  if (waiting->window != NULL)
    finish_saving (waiting->window, waiting->path, error);
}

static void
on_clip_saved (GObject *source, GAsyncResult *result, gpointer data)
{
  g_autoptr (Waiting) waiting = data;
  g_autoptr (GError) error = NULL;

  tb_export_clip_finish (result, &error);
  if (waiting->window != NULL)
    finish_saving (waiting->window, waiting->path, error);
}

static gboolean
show_progress (gpointer data)
{
  TbExportWindow *self = data;

  gtk_progress_bar_set_fraction (self->progress, tb_export_clip_get_share (self->clip));
  return G_SOURCE_CONTINUE;
}

static void
save_picture (TbExportWindow *self, const char *path)
{
  TbPictureJob job
      = { .path = path, .width = width_of (self), .height = height_of (self), .draw = draw, .data = self };

  tb_export_picture_async (&job, on_picture_saved, waiting_new (self, path));
}

static void
save_clip (TbExportWindow *self, const char *path)
{
  TbThrowScene scene = scene_of (self, chosen (self)->view);
  TbClipJob job = { .path = path,
                    .width = width_of (self),
                    .height = height_of (self),
                    .fps = TB_CLIP_DEFAULT_FPS,
                    .scene = &scene };

  self->cancellable = g_cancellable_new ();
  self->clip = tb_export_clip_async (&job, self->cancellable, on_clip_saved, waiting_new (self, path));
  gtk_progress_bar_set_fraction (self->progress, 0);
  self->progress_timeout = g_timeout_add (PROGRESS_PERIOD, show_progress, self);
}

void
tb_export_window_save_to (TbExportWindow *self, const char *path)
{
  if (self->busy || !can_draw (self))
    return;
  tell (self, "");
  if (self->kind == TB_EXPORT_CLIP)
    save_clip (self, path);
  else
    save_picture (self, path);
  set_busy (self, TRUE);
}

gboolean
tb_export_window_is_busy (TbExportWindow *self)
{
  return self->busy;
}

void
tb_export_window_cancel (TbExportWindow *self)
{
  if (self->cancellable != NULL)
    g_cancellable_cancel (self->cancellable);
}

const char *
tb_export_window_get_answer (TbExportWindow *self)
{
  return gtk_label_get_text (self->answer);
}

/* Actions. */

static const TbSaveForm *
forms_of (TbExportWindow *self)
{
  return self->kind == TB_EXPORT_CLIP ? clip_forms : picture_forms;
}

static void
on_dialog_response (TbExportWindow *self, int response)
{
  g_autofree char *path = NULL;

  if (response == GTK_RESPONSE_ACCEPT)
    {
      path = tb_save_dialog_get_path (self->dialog, forms_of (self));
      if (path != NULL)
        tb_export_window_save_to (self, path);
      else
        tell (self, _ ("Pictures and clips can only be saved on this computer; choose a folder here."));
    }
  g_clear_object (&self->dialog);
}

/* The study's title, and what is shown. */
static char *
proposed_name (TbExportWindow *self)
{
  const char *title = tb_session_get_study (self->session)->title, *view = chosen (self)->name;

  /* Translators: a study's title and what the picture shows: the name of a file. */
  return title[0] != '\0' ? g_strdup_printf (_ ("%s – %s"), title, view) : g_strdup (view);
}

static void
save (GtkWidget *widget, const char *name, GVariant *parameter)
{
  TbExportWindow *self = TB_EXPORT_WINDOW (widget);
  const char *title = self->kind == TB_EXPORT_CLIP ? _ ("Save the clip") : _ ("Save the picture");
  g_autofree char *base = proposed_name (self);

  g_clear_object (&self->dialog);
  self->dialog = tb_save_dialog_new (GTK_WINDOW (self), title, base, forms_of (self));
  g_signal_connect_object (self->dialog, "response", G_CALLBACK (on_dialog_response), self,
                           G_CONNECT_SWAPPED);
  gtk_native_dialog_show (GTK_NATIVE_DIALOG (self->dialog));
}

static void
copy (GtkWidget *widget, const char *name, GVariant *parameter)
{
  TbExportWindow *self = TB_EXPORT_WINDOW (widget);

  tb_picture_copy_drawn (widget, &(TbDrawnCopy){ width_of (self), height_of (self), 1, draw, self });
  tell (self, _ ("Copied; it can be pasted elsewhere."));
}

static void
cancel (GtkWidget *widget, const char *name, GVariant *parameter)
{
  tb_export_window_cancel (TB_EXPORT_WINDOW (widget));
}

static void
close_window (GtkWidget *widget, const char *name, GVariant *parameter)
{
  gtk_window_close (GTK_WINDOW (widget));
}

/* The views. */

static View *
add_view (TbExportWindow *self, const char *name)
{
  View *view = g_new0 (View, 1);
  GListModel *names = gtk_drop_down_get_model (self->view);

  view->name = g_strdup (name);
  g_ptr_array_add (self->views, view);
  gtk_string_list_append (GTK_STRING_LIST (names), name);
  return view;
}

static void
add_throw_views (TbExportWindow *self)
{
  /* Their own shape says which way the lane lies. */
  for (TbThrowView view = TB_THROW_PLAN; view < TB_N_THROW_VIEWS; view++)
    add_view (self, tb_throw_view_label (view))->view = view;
}

static gboolean
shows_throw (GtkWidget *widget)
{
  return TB_IS_LANE_PICTURE (widget) || TB_IS_BALL_PICTURE (widget) || TB_IS_LOFT_PICTURE (widget);
}

static void
add_pictures (TbExportWindow *self, GtkWidget *widget)
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
add_all_pictures (TbExportWindow *self)
{
  GListModel *windows = gtk_window_get_toplevels ();

  for (guint i = 0; i < g_list_model_get_n_items (windows); i++)
    {
      g_autoptr (GtkWidget) window = g_list_model_get_item (windows, i);

      add_pictures (self, window);
    }
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

void
tb_export_window_set_size (TbExportWindow *self, int width, int height)
{
  gtk_adjustment_set_value (self->width_adjustment, width);
  gtk_adjustment_set_value (self->height_adjustment, height);
}

void
tb_export_window_choose (TbExportWindow *self, TbPicture *picture)
{
  gboolean other = !shows_throw (GTK_WIDGET (picture));
  gboolean stands = !other && TB_IS_LANE_PICTURE (picture) && throw_view_of (picture) != TB_THROW_SIDEWAYS;

  for (guint i = 0; i < self->views->len; i++)
    {
      const View *view = g_ptr_array_index (self->views, i);

      if (other ? view->picture == picture : !view->other && view->view == throw_view_of (picture))
        gtk_drop_down_set_selected (self->view, i);
    }
  tb_export_window_set_size (self, stands ? STANDING_WIDTH : LYING_WIDTH,
                             stands ? STANDING_HEIGHT : LYING_HEIGHT);
}

guint
tb_export_window_get_n_views (TbExportWindow *self)
{
  return self->views->len;
}

const char *
tb_export_window_get_view_name (TbExportWindow *self, guint view)
{
  return ((const View *) g_ptr_array_index (self->views, view))->name;
}

void
tb_export_window_set_view (TbExportWindow *self, guint view)
{
  gtk_drop_down_set_selected (self->view, view);
}

/* The window. */

static void
set_kind (TbExportWindow *self, TbExportKind kind)
{
  gboolean clip = kind == TB_EXPORT_CLIP;

  self->kind = kind;
  gtk_window_set_title (GTK_WINDOW (self), clip ? _ ("Save a clip") : _ ("Save a picture"));
  gtk_widget_set_visible (self->rate_box, clip);
  gtk_widget_set_visible (self->copy_button, !clip);
  gtk_label_set_text (self->forms_label,
                      clip ? _ ("Saved as an animated WebP, which web browsers and many messengers play.")
                           : _ ("Saved as PNG, SVG or PDF, as the file’s name ends."));
  if (clip)
    {
      gtk_adjustment_set_upper (self->width_adjustment, TB_CLIP_MAX_SIZE);
      gtk_adjustment_set_upper (self->height_adjustment, TB_CLIP_MAX_SIZE);
    }
}

static void
connect_all (TbExportWindow *self)
{
  GObject *changing[] = { G_OBJECT (self->width_adjustment), G_OBJECT (self->height_adjustment) };
  GtkDropDown *choices[] = { self->view, self->look, self->rate };

  for (gsize i = 0; i < G_N_ELEMENTS (changing); i++)
    g_signal_connect_object (changing[i], "value-changed", G_CALLBACK (update), self, G_CONNECT_SWAPPED);
  for (gsize i = 0; i < G_N_ELEMENTS (choices); i++)
    g_signal_connect_object (choices[i], "notify::selected", G_CALLBACK (update), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (self->session, "changed", G_CALLBACK (update), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (self->session, "notify::time", G_CALLBACK (update), self, G_CONNECT_SWAPPED);
}

TbExportWindow *
tb_export_window_new (GtkWindow *parent, TbSession *session, TbExportKind kind)
{
  TbExportWindow *self = g_object_new (TB_TYPE_EXPORT_WINDOW, "transient-for", parent, NULL);

  self->session = g_object_ref (session);
  tb_style_set_text_size (GTK_WIDGET (self), tb_style_get_text_size (GTK_WIDGET (parent)));
  set_kind (self, kind);
  add_throw_views (self);
  if (kind == TB_EXPORT_PICTURE)
    add_all_pictures (self);
  connect_all (self);
  update (self);
  return self;
}

static void
tb_export_window_dispose (GObject *object)
{
  TbExportWindow *self = TB_EXPORT_WINDOW (object);

  /* What is being typed is taken, while there is somebody to take it. */
  gtk_window_set_focus (GTK_WINDOW (object), NULL);
  tb_export_window_cancel (self);
  g_clear_handle_id (&self->progress_timeout, g_source_remove);
  g_clear_object (&self->clip);
  g_clear_object (&self->cancellable);
  g_clear_object (&self->dialog);
  if (self->preview != NULL)
    gtk_drawing_area_set_draw_func (self->preview, NULL, NULL, NULL);
  g_clear_object (&self->session);
  G_OBJECT_CLASS (tb_export_window_parent_class)->dispose (object);
}

static void
tb_export_window_finalize (GObject *object)
{
  g_ptr_array_unref (TB_EXPORT_WINDOW (object)->views);
  G_OBJECT_CLASS (tb_export_window_parent_class)->finalize (object);
}

static void
bind_template (GtkWidgetClass *widget_class)
{
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/io/github/tenboard/Tenboard/ui/tb-export-window.ui");
  gtk_widget_class_bind_template_child (widget_class, TbExportWindow, preview);
  gtk_widget_class_bind_template_child (widget_class, TbExportWindow, view);
  gtk_widget_class_bind_template_child (widget_class, TbExportWindow, look);
  gtk_widget_class_bind_template_child (widget_class, TbExportWindow, rate);
  gtk_widget_class_bind_template_child (widget_class, TbExportWindow, rate_box);
  gtk_widget_class_bind_template_child (widget_class, TbExportWindow, copy_button);
  gtk_widget_class_bind_template_child (widget_class, TbExportWindow, width_adjustment);
  gtk_widget_class_bind_template_child (widget_class, TbExportWindow, height_adjustment);
  gtk_widget_class_bind_template_child (widget_class, TbExportWindow, forms_label);
  gtk_widget_class_bind_template_child (widget_class, TbExportWindow, progress_box);
  gtk_widget_class_bind_template_child (widget_class, TbExportWindow, progress);
  gtk_widget_class_bind_template_child (widget_class, TbExportWindow, answer);
}

static void
tb_export_window_class_init (TbExportWindowClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = tb_export_window_dispose;
  G_OBJECT_CLASS (klass)->finalize = tb_export_window_finalize;
  bind_template (widget_class);
  gtk_widget_class_install_action (widget_class, "export.save", NULL, save);
  gtk_widget_class_install_action (widget_class, "export.copy", NULL, copy);
  gtk_widget_class_install_action (widget_class, "export.cancel", NULL, cancel);
  gtk_widget_class_install_action (widget_class, "export.close", NULL, close_window);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_Escape, 0, "export.close", NULL);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_w, GDK_CONTROL_MASK, "export.close", NULL);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_s, GDK_CONTROL_MASK, "export.save", NULL);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_c, GDK_CONTROL_MASK | GDK_SHIFT_MASK,
                                       "export.copy", NULL);
}

static void
tb_export_window_init (TbExportWindow *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  self->views = g_ptr_array_new_with_free_func (view_free);
  gtk_drop_down_set_model (self->view, G_LIST_MODEL (gtk_string_list_new (NULL)));
  g_object_unref (gtk_drop_down_get_model (self->view));
  gtk_drawing_area_set_draw_func (self->preview, draw_preview, self, NULL);
  tb_accessible_set_drop_down_name (self->view, _ ("Shows"));
  tb_accessible_set_drop_down_name (self->look, _ ("Colours"));
  tb_accessible_set_drop_down_name (self->rate, _ ("Time passes"));
}
