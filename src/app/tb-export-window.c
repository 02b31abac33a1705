/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "tb-export-window.h"

#include <glib/gi18n-lib.h>

#include "tb-accessible.h"
#include "tb-clip.h"
#include "tb-export-saver.h"
#include "tb-export-views.h"
#include "tb-picture-menu.h"
#include "tb-save-dialog.h"
#include "tb-style.h"

/* Sizes that are proposed, px: of what lies, and of what stands. */
#define LYING_WIDTH 1280
#define LYING_HEIGHT 800
#define STANDING_WIDTH 900
#define STANDING_HEIGHT 1200
/* The line round the preview, px. */
#define FRAME_WIDTH 1.0

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
  TbExportViews *views;
  TbExportSaver *saver;
  GtkFileChooserNative *dialog; /* open at the moment; else NULL */
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

static guint
chosen (TbExportWindow *self)
{
  return gtk_drop_down_get_selected (self->view);
}

static TbExportLook
look_of (TbExportWindow *self)
{
  gboolean clip = self->kind == TB_EXPORT_CLIP;

  return (TbExportLook){ .theme = theme_of (self), .caption = clip, .rate = clip ? rate_of (self) : 1 };
}

/* There is something to draw. */
static gboolean
can_draw (TbExportWindow *self)
{
  return width_of (self) >= 1 && tb_export_views_can_draw (self->views, chosen (self));
}

static void
draw (cairo_t *cr, double width, double height, gpointer data)
{
  TbExportWindow *self = data;
  TbExportLook look = look_of (self);

  look.width = width;
  look.height = height;
  tb_export_views_draw (self->views, chosen (self), cr, &look);
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
  gboolean ready = can_draw (self) && !tb_export_saver_is_busy (self->saver);

  gtk_widget_action_set_enabled (GTK_WIDGET (self), "export.save", ready);
  gtk_widget_action_set_enabled (GTK_WIDGET (self), "export.copy", ready && self->kind == TB_EXPORT_PICTURE);
  gtk_widget_set_visible (self->progress_box, tb_export_saver_is_saving_clip (self->saver));
  gtk_widget_queue_draw (GTK_WIDGET (self->preview));
}

static void
tell (TbExportWindow *self, const char *sentence)
{
  gtk_label_set_text (self->answer, sentence);
}

/* Saving. */

static void
on_progress (TbExportWindow *self, double share)
{
  gtk_progress_bar_set_fraction (self->progress, share);
}

static void
on_finished (TbExportWindow *self, const char *sentence)
{
  update (self);
  tell (self, sentence);
}

static void
save_picture (TbExportWindow *self, const char *path)
{
  tb_export_saver_save_picture (
      self->saver,
      &(TbPictureJob){
          .path = path, .width = width_of (self), .height = height_of (self), .draw = draw, .data = self });
}

static void
save_clip (TbExportWindow *self, const char *path)
{
  TbExportLook look = look_of (self);
  TbThrowScene scene = tb_export_views_scene (self->views, chosen (self), &look);

  tb_export_saver_save_clip (self->saver, &(TbClipJob){ .path = path,
                                                        .width = width_of (self),
                                                        .height = height_of (self),
                                                        .fps = TB_CLIP_DEFAULT_FPS,
                                                        .scene = &scene });
}

void
tb_export_window_save_to (TbExportWindow *self, const char *path)
{
  if (tb_export_saver_is_busy (self->saver) || !can_draw (self))
    return;
  tell (self, "");
  if (self->kind == TB_EXPORT_CLIP)
    save_clip (self, path);
  else
    save_picture (self, path);
  update (self);
}

gboolean
tb_export_window_is_busy (TbExportWindow *self)
{
  return tb_export_saver_is_busy (self->saver);
}

void
tb_export_window_cancel (TbExportWindow *self)
{
  tb_export_saver_cancel (self->saver);
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
  const char *title = tb_session_get_study (self->session)->title,
             *view = tb_export_views_get_name (self->views, chosen (self));

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

/* What is chosen from outside. */

void
tb_export_window_set_size (TbExportWindow *self, int width, int height)
{
  gtk_adjustment_set_value (self->width_adjustment, width);
  gtk_adjustment_set_value (self->height_adjustment, height);
}

void
tb_export_window_choose (TbExportWindow *self, TbPicture *picture)
{
  guint view = tb_export_views_find (self->views, picture);
  gboolean stands = tb_export_views_stands (picture);

  if (view < tb_export_views_get_n (self->views))
    gtk_drop_down_set_selected (self->view, view);
  tb_export_window_set_size (self, stands ? STANDING_WIDTH : LYING_WIDTH,
                             stands ? STANDING_HEIGHT : LYING_HEIGHT);
}

guint
tb_export_window_get_n_views (TbExportWindow *self)
{
  return tb_export_views_get_n (self->views);
}

const char *
tb_export_window_get_view_name (TbExportWindow *self, guint view)
{
  return tb_export_views_get_name (self->views, view);
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
list_views (TbExportWindow *self)
{
  g_autoptr (GtkStringList) names = gtk_string_list_new (NULL);

  for (guint view = 0; view < tb_export_views_get_n (self->views); view++)
    gtk_string_list_append (names, tb_export_views_get_name (self->views, view));
  gtk_drop_down_set_model (self->view, G_LIST_MODEL (names));
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
  self->views = tb_export_views_new (session, kind == TB_EXPORT_PICTURE);
  list_views (self);
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
  g_clear_object (&self->saver);
  g_clear_object (&self->dialog);
  if (self->preview != NULL)
    gtk_drawing_area_set_draw_func (self->preview, NULL, NULL, NULL);
  g_clear_object (&self->session);
  G_OBJECT_CLASS (tb_export_window_parent_class)->dispose (object);
}

static void
tb_export_window_finalize (GObject *object)
{
  g_clear_pointer (&TB_EXPORT_WINDOW (object)->views, tb_export_views_free);
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
  self->saver = tb_export_saver_new ();
  g_signal_connect_object (self->saver, "progress", G_CALLBACK (on_progress), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (self->saver, "finished", G_CALLBACK (on_finished), self, G_CONNECT_SWAPPED);
  gtk_drawing_area_set_draw_func (self->preview, draw_preview, self, NULL);
  tb_accessible_set_drop_down_name (self->view, _ ("Shows"));
  tb_accessible_set_drop_down_name (self->look, _ ("Colours"));
  tb_accessible_set_drop_down_name (self->rate, _ ("Time passes"));
}
