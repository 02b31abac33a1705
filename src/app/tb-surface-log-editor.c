/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "tb-surface-log-editor.h"

#include <glib/gi18n-lib.h>

#include "tb-accessible.h"
#include "tb-spin.h"
#include "tb-surface-log-document.h"

struct _TbSurfaceLogEditor
{
  GtkWidget parent_instance;

  /* Template */
  GtkWidget *box, *add;
  GtkLabel *none; /* the ball is no ball of the library */
  GtkWidget *body;
  GtkListBox *list;
  GtkEntry *date;
  GtkDropDown *what;
  GtkSpinButton *amount;
  GtkLabel *unit;
  GtkEntry *note;
  GtkLabel *message;
  GtkLabel *summary;
  GtkWidget *take;

  TbSession *session;
  char *ball_id;          /* whose log is shown */
  TbBallSurface *surface; /* NULL where it cannot be read */
};

G_DEFINE_FINAL_TYPE (TbSurfaceLogEditor, tb_surface_log_editor, GTK_TYPE_WIDGET)

static TbSetup *
setup_of (TbSurfaceLogEditor *self)
{
  return tb_session_get_setup (self->session, TB_SIDE_AFTER);
}

static void
tell (TbSurfaceLogEditor *self, const char *sentence)
{
  gtk_label_set_text (self->message, sentence != NULL ? sentence : "");
  gtk_widget_set_visible (GTK_WIDGET (self->message), sentence != NULL);
}

static double
roughness_by_log (TbSurfaceLogEditor *self, gboolean *measured)
{
  return tb_surface_log_roughness (self->surface->log, self->surface->log->len, self->surface->roughness,
                                   measured);
}

static void
show_summary (TbSurfaceLogEditor *self)
{
  g_autofree char *surface = NULL, *text = NULL;
  gboolean measured;
  double roughness;

  gtk_widget_set_visible (self->take, self->surface->log->len > 0);
  if (self->surface->log->len == 0)
    {
      gtk_label_set_text (self->summary, _ ("Nothing is in the log yet."));
      return;
    }
  roughness = roughness_by_log (self, &measured);
  surface = tb_surface_text (roughness);
  text = g_strdup_printf (
      measured ? _ ("By the log: %s, Ra %.1f µin, measured; %.0f games since it was last resurfaced.")
               : _ ("By the log: about %s, Ra %.1f µin, estimated; %.0f games since it was last "
                    "resurfaced."),
      surface, tb_uin_from_metres (roughness), tb_surface_log_games (self->surface->log));
  gtk_label_set_text (self->summary, text);
}

static void show_log (TbSurfaceLogEditor *self);

static gboolean
save (TbSurfaceLogEditor *self)
{
  g_autoptr (GError) error = NULL;

  if (tb_ball_surface_save (self->surface, self->ball_id, &error))
    return TRUE;
  tell (self, error->message);
  return FALSE;
}

static void
on_remove (GtkButton *button, TbSurfaceLogEditor *self)
{
  guint index = GPOINTER_TO_UINT (g_object_get_data (G_OBJECT (button), "index"));
  TbSurfaceEntry *entry = g_ptr_array_steal_index (self->surface->log, index);

  tell (self, NULL);
  if (save (self))
    tb_surface_entry_free (entry);
  else
    g_ptr_array_insert (self->surface->log, (int)index, entry);
  show_log (self);
}

static GtkWidget *
new_row (TbSurfaceLogEditor *self, guint index)
{
  const TbSurfaceEntry *entry = self->surface->log->pdata[index];
  GtkWidget *row = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6);
  g_autofree char *text = tb_surface_entry_text (entry), *name = NULL;
  g_autofree char *whole
      = entry->note != NULL ? g_strdup_printf ("%s – %s", text, entry->note) : g_strdup (text);
  GtkWidget *label = gtk_label_new (whole), *remove = gtk_button_new_from_icon_name ("list-remove-symbolic");

  name = g_strdup_printf (_ ("Remove “%s”"), text);
  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_widget_set_hexpand (label, TRUE);
  gtk_widget_add_css_class (remove, "flat");
  gtk_widget_set_valign (remove, GTK_ALIGN_CENTER);
  gtk_widget_set_tooltip_text (remove, name);
  tb_accessible_set_name (remove, name);
  g_object_set_data (G_OBJECT (remove), "index", GUINT_TO_POINTER (index));
  g_signal_connect_object (remove, "clicked", G_CALLBACK (on_remove), self, 0);
  gtk_box_append (GTK_BOX (row), label);
  gtk_box_append (GTK_BOX (row), remove);
  return row;
}

static void
show_log (TbSurfaceLogEditor *self)
{
  GtkWidget *child;

  while ((child = gtk_widget_get_first_child (GTK_WIDGET (self->list))) != NULL)
    gtk_list_box_remove (self->list, child);
  for (guint i = self->surface->log->len; i > 0; i--)
    gtk_list_box_append (self->list, new_row (self, i - 1));
  gtk_widget_set_visible (GTK_WIDGET (self->list), self->surface->log->len > 0);
  show_summary (self);
}

static void
load (TbSurfaceLogEditor *self)
{
  g_autoptr (GError) error = NULL;

  g_clear_pointer (&self->surface, tb_ball_surface_free);
  tell (self, NULL);
  if (self->ball_id != NULL)
    self->surface = tb_ball_surface_load (self->ball_id, setup_of (self)->shot.ball.cover.roughness, &error);
  gtk_widget_set_visible (GTK_WIDGET (self->none), self->surface == NULL);
  gtk_widget_set_visible (self->body, self->surface != NULL);
  gtk_label_set_text (self->none, error != NULL
                                      ? error->message
                                      : _ ("A log belongs to a ball of the library: save this one first."));
  if (self->surface != NULL)
    show_log (self);
}

static void
show_session (TbSurfaceLogEditor *self)
{
  const char *id = setup_of (self)->ball_id;

  if (self->surface != NULL && g_strcmp0 (id, self->ball_id) == 0)
    return;
  g_free (self->ball_id);
  self->ball_id = g_strdup (id);
  load (self);
}

/* Another entry. */

static TbSurfaceWork
chosen_work (TbSurfaceLogEditor *self)
{
  return (TbSurfaceWork)MIN (gtk_drop_down_get_selected (self->what), TB_N_SURFACE_WORKS - 1);
}

static void
on_what_chosen (TbSurfaceLogEditor *self)
{
  const TbSurfaceWorkInfo *info = tb_surface_work_info (chosen_work (self));
  gboolean counted = info->unit != NULL;

  gtk_widget_set_visible (GTK_WIDGET (self->amount), counted);
  gtk_widget_set_visible (GTK_WIDGET (self->unit), counted);
  if (!counted)
    return;
  gtk_spin_button_set_range (self->amount, info->min, info->max);
  gtk_spin_button_set_digits (self->amount, info->max <= TB_BALL_MAX_ROUGHNESS_UIN ? 1 : 0);
  gtk_spin_button_set_increments (self->amount, info->max > 1000 ? 500 : 1, info->max > 1000 ? 1000 : 10);
  gtk_spin_button_set_value (self->amount, info->standard);
  gtk_label_set_text (self->unit, _ (info->unit));
}

static void
on_add (TbSurfaceLogEditor *self)
{
  const char *date = gtk_editable_get_text (GTK_EDITABLE (self->date));
  g_autofree char *note = tb_text_fitted (gtk_editable_get_text (GTK_EDITABLE (self->note)), TB_NOTES_MAX, FALSE);
  TbSurfaceWork what = chosen_work (self);
  const TbSurfaceWorkInfo *info = tb_surface_work_info (what);
  TbSurfaceEntry *entry;

  tell (self, NULL);
  if (!tb_surface_date_is_valid (date))
    {
      tell (self, _ ("The date should be a day such as 2026-11-25."));
      return;
    }
  entry = tb_surface_entry_new (
      date, what, info->unit != NULL ? info->to_si (gtk_spin_button_get_value (self->amount)) : 0,
      note[0] != '\0' ? note : NULL);
  tb_surface_log_add (self->surface->log, entry);
  if (save (self))
    gtk_editable_set_text (GTK_EDITABLE (self->note), "");
  else
    g_ptr_array_remove (self->surface->log, entry);
  show_log (self);
}

static void
on_take (TbSurfaceLogEditor *self)
{
  const TbField *field = tb_field_find (TB_GROUP_BALL, "roughness_uin");

  tb_session_set_field (self->session, field,
                        CLAMP (field->from_si (roughness_by_log (self, NULL)), field->min, field->max), NULL);
}

void
tb_surface_log_editor_set_session (TbSurfaceLogEditor *self, TbSession *session)
{
  g_return_if_fail (self->session == NULL);

  self->session = g_object_ref (session);
  g_signal_connect_object (session, "changed", G_CALLBACK (show_session), self, G_CONNECT_SWAPPED);
  show_session (self);
}

static void
tb_surface_log_editor_dispose (GObject *object)
{
  TbSurfaceLogEditor *self = TB_SURFACE_LOG_EDITOR (object);

  g_clear_pointer (&self->box, gtk_widget_unparent);
  g_clear_pointer (&self->surface, tb_ball_surface_free);
  g_clear_pointer (&self->ball_id, g_free);
  g_clear_object (&self->session);
  G_OBJECT_CLASS (tb_surface_log_editor_parent_class)->dispose (object);
}

static void
tb_surface_log_editor_class_init (TbSurfaceLogEditorClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = tb_surface_log_editor_dispose;
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/io/github/tenboard/Tenboard/ui/tb-surface-log-editor.ui");
  gtk_widget_class_bind_template_child (widget_class, TbSurfaceLogEditor, box);
  gtk_widget_class_bind_template_child (widget_class, TbSurfaceLogEditor, add);
  gtk_widget_class_bind_template_child (widget_class, TbSurfaceLogEditor, none);
  gtk_widget_class_bind_template_child (widget_class, TbSurfaceLogEditor, body);
  gtk_widget_class_bind_template_child (widget_class, TbSurfaceLogEditor, list);
  gtk_widget_class_bind_template_child (widget_class, TbSurfaceLogEditor, date);
  gtk_widget_class_bind_template_child (widget_class, TbSurfaceLogEditor, what);
  gtk_widget_class_bind_template_child (widget_class, TbSurfaceLogEditor, amount);
  gtk_widget_class_bind_template_child (widget_class, TbSurfaceLogEditor, unit);
  gtk_widget_class_bind_template_child (widget_class, TbSurfaceLogEditor, note);
  gtk_widget_class_bind_template_child (widget_class, TbSurfaceLogEditor, message);
  gtk_widget_class_bind_template_child (widget_class, TbSurfaceLogEditor, summary);
  gtk_widget_class_bind_template_child (widget_class, TbSurfaceLogEditor, take);
  gtk_widget_class_bind_template_callback (widget_class, on_what_chosen);
  gtk_widget_class_bind_template_callback (widget_class, on_add);
  gtk_widget_class_bind_template_callback (widget_class, on_take);
}

static void
tb_surface_log_editor_init (TbSurfaceLogEditor *self)
{
  g_autoptr (GtkStringList) works = gtk_string_list_new (NULL);
  g_autoptr (GDateTime) now = g_date_time_new_now_local ();
  g_autofree char *today = g_date_time_format (now, "%Y-%m-%d");

  gtk_widget_init_template (GTK_WIDGET (self));
  tb_accessible_set_name (self->add, _ ("Add to the log"));
  tb_spin_take_either_mark (self->amount);
  for (int i = 0; i < TB_N_SURFACE_WORKS; i++)
    gtk_string_list_append (works, _ (tb_surface_work_info ((TbSurfaceWork)i)->label));
  gtk_drop_down_set_model (self->what, G_LIST_MODEL (works));
  tb_accessible_set_drop_down_name (self->what, _ ("What was done"));
  gtk_editable_set_text (GTK_EDITABLE (self->date), today);
  on_what_chosen (self);
}
