/* Opening, saving, and the question before changes are lost.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "tb-window-private.h"

#include <glib/gi18n-lib.h>

#include "tb-lesson.h"
#include "tb-study-document.h"

#define STUDY_SUFFIX ".tenboard"
#define STUDY_MIME_TYPE "application/x-tenboard-study+json"
/* Our own among the desktop's recent files. */
#define RECENT_GROUP "tenboard"
#define MAX_RECENT 8

static char *
path_of (TbWindow *self, GFile *file)
{
  char *path = g_file_get_path (file);

  if (path == NULL)
    {
      g_autofree char *name = g_file_get_parse_name (file);
      g_autofree char *sentence
          = g_strdup_printf (_ ("“%s” is not a file on this computer; copy it here first."), name);

      tb_window_tell (self, sentence);
    }
  return path;
}

static void
remember (GFile *file)
{
  g_autofree char *uri = g_file_get_uri (file);
  g_autofree char *program = g_strconcat (g_get_prgname (), " %u", NULL);
  char *groups[] = { (char *) RECENT_GROUP, NULL };
  GtkRecentData data = { .mime_type = (char *) STUDY_MIME_TYPE,
                         .app_name = (char *) g_get_application_name (),
                         .app_exec = program,
                         .groups = groups };

  gtk_recent_manager_add_full (gtk_recent_manager_get_default (), uri, &data);
}

/* Of a file that is no study. One with a mistake in it is still a lesson: its window tells the mistake. */
static gboolean
is_lesson (const char *path)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (TbLesson) lesson = tb_lesson_load (path, &error);

  return lesson != NULL || !g_error_matches (error, TB_STORE_ERROR, TB_STORE_ERROR_NOT_OURS);
}

gboolean
tb_window_load (TbWindow *self, GFile *file)
{
  g_autofree char *path = path_of (self, file);
  g_autoptr (GError) error = NULL;
  g_autoptr (TbStudy) study = NULL;

  if (path == NULL)
    return FALSE;
  study = tb_study_load (tb_session_get_library (self->session), path, &error);
  if (g_error_matches (error, TB_STORE_ERROR, TB_STORE_ERROR_NOT_OURS) && is_lesson (path))
    return tb_window_load_lesson (self, file);
  if (study == NULL)
    {
      tb_window_tell (self, error->message);
      return FALSE;
    }
  tb_window_tell (self, NULL);
  tb_session_open (self->session, study, file);
  remember (file);
  return TRUE;
}

static gboolean
save_to (TbWindow *self, GFile *file)
{
  g_autofree char *path = path_of (self, file);
  g_autoptr (GError) error = NULL;

  if (path == NULL)
    return FALSE;
  if (!tb_study_save (tb_session_get_study (self->session), path, &error))
    {
      tb_window_tell (self, error->message);
      return FALSE;
    }
  tb_window_tell (self, NULL);
  tb_session_mark_saved (self->session, file);
  remember (file);
  return TRUE;
}

/* Does what was waiting for the question. */
static void
go_on (TbWindow *self)
{
  void (*then) (TbWindow *) = self->then;

  self->then = NULL;
  if (then != NULL)
    then (self);
}

static void
forget_next (TbWindow *self)
{
  self->then = NULL;
  g_clear_object (&self->next_file);
  g_clear_pointer (&self->next_study, tb_study_unref);
}

static GtkFileChooserNative *
new_chooser (TbWindow *self, const char *title, GtkFileChooserAction action, const char *accept)
{
  GtkFileChooserNative *chooser
      = gtk_file_chooser_native_new (title, GTK_WINDOW (self), action, accept, NULL);
  g_autoptr (GtkFileFilter) studies = gtk_file_filter_new ();
  g_autoptr (GtkFileFilter) all = gtk_file_filter_new ();

  gtk_file_filter_set_name (studies, _ ("Studies"));
  gtk_file_filter_add_pattern (studies, "*" STUDY_SUFFIX);
  gtk_file_filter_add_pattern (studies, "*.json");
  gtk_file_filter_set_name (all, _ ("All files"));
  gtk_file_filter_add_pattern (all, "*");
  gtk_file_chooser_add_filter (GTK_FILE_CHOOSER (chooser), studies);
  gtk_file_chooser_add_filter (GTK_FILE_CHOOSER (chooser), all);
  gtk_native_dialog_set_modal (GTK_NATIVE_DIALOG (chooser), TRUE);
  g_set_object (&self->chooser, chooser);
  g_object_unref (chooser);
  return self->chooser;
}

static GFile *
take_chosen (TbWindow *self, int response)
{
  GFile *file = NULL;

  if (response == GTK_RESPONSE_ACCEPT)
    file = gtk_file_chooser_get_file (GTK_FILE_CHOOSER (self->chooser));
  g_clear_object (&self->chooser);
  return file;
}

/* A name for a study that has none yet: its title, without what a file name cannot hold. */
static char *
proposed_name (TbWindow *self)
{
  const char *title = tb_session_get_study (self->session)->title;
  g_autofree char *base = g_strdup (title[0] != '\0' ? title : _ ("Study"));

  g_strdelimit (base, "/\\:\n\t", '-');
  g_strstrip (base);
  return g_strconcat (base, STUDY_SUFFIX, NULL);
}

/* The suffix that a desktop knows the file by, if none was typed. */
static GFile *
with_suffix (GFile *file)
{
  g_autofree char *name = g_file_get_basename (file);
  g_autofree char *longer = NULL;
  g_autoptr (GFile) folder = g_file_get_parent (file);

  if (strchr (name, '.') != NULL || folder == NULL)
    return g_object_ref (file);
  longer = g_strconcat (name, STUDY_SUFFIX, NULL);
  return g_file_get_child (folder, longer);
}

static gboolean do_as_answered (gpointer data);

/* What follows may close this window; the key or click that answered has to be done with first. */
static void
answer_later (TbWindow *self, int response)
{
  self->answer = response;
  if (self->answer_idle == 0)
    self->answer_idle = g_idle_add (do_as_answered, self);
}

static void
on_save_as_response (TbWindow *self, int response)
{
  g_autoptr (GFile) chosen = take_chosen (self, response);
  g_autoptr (GFile) file = NULL;

  if (chosen == NULL)
    {
      forget_next (self);
      return;
    }
  file = with_suffix (chosen);
  answer_later (self, save_to (self, file) ? GTK_RESPONSE_NO : GTK_RESPONSE_CANCEL);
}

static void
ask_where_to_save (TbWindow *self)
{
  GtkFileChooserNative *chooser
      = new_chooser (self, _ ("Save the study"), GTK_FILE_CHOOSER_ACTION_SAVE, _ ("_Save"));
  GFile *file = tb_session_get_file (self->session);
  g_autofree char *name = proposed_name (self);

  if (file != NULL)
    gtk_file_chooser_set_file (GTK_FILE_CHOOSER (chooser), file, NULL);
  else
    gtk_file_chooser_set_current_name (GTK_FILE_CHOOSER (chooser), name);
  g_signal_connect_object (chooser, "response", G_CALLBACK (on_save_as_response), self, G_CONNECT_SWAPPED);
  gtk_native_dialog_show (GTK_NATIVE_DIALOG (chooser));
}

static void
save_then_go_on (TbWindow *self)
{
  GFile *file = tb_session_get_file (self->session);

  if (file == NULL)
    ask_where_to_save (self);
  else if (save_to (self, file))
    go_on (self);
  else
    forget_next (self);
}

static gboolean
do_as_answered (gpointer data)
{
  TbWindow *self = data;

  self->answer_idle = 0;
  if (self->answer == GTK_RESPONSE_YES)
    save_then_go_on (self);
  else if (self->answer == GTK_RESPONSE_NO)
    go_on (self);
  else
    forget_next (self);
  return G_SOURCE_REMOVE;
}

static void
on_question_response (TbWindow *self, int response, GtkWindow *dialog)
{
  gtk_window_destroy (dialog);
  answer_later (self, response);
}

void
tb_window_ask_then (TbWindow *self, void (*then) (TbWindow *self))
{
  GtkWidget *dialog, *discard;

  self->then = then;
  if (!tb_session_get_modified (self->session))
    {
      go_on (self);
      return;
    }
  dialog = gtk_message_dialog_new (GTK_WINDOW (self), GTK_DIALOG_MODAL | GTK_DIALOG_DESTROY_WITH_PARENT,
                                   GTK_MESSAGE_QUESTION, GTK_BUTTONS_NONE, "%s",
                                   _ ("Save the changes to this study?"));
  gtk_message_dialog_format_secondary_text (GTK_MESSAGE_DIALOG (dialog), "%s",
                                            _ ("Without saving they are lost."));
  discard = gtk_dialog_add_button (GTK_DIALOG (dialog), _ ("_Discard"), GTK_RESPONSE_NO);
  gtk_widget_add_css_class (discard, "destructive-action");
  gtk_dialog_add_button (GTK_DIALOG (dialog), _ ("_Cancel"), GTK_RESPONSE_CANCEL);
  gtk_dialog_add_button (GTK_DIALOG (dialog), _ ("_Save"), GTK_RESPONSE_YES);
  gtk_dialog_set_default_response (GTK_DIALOG (dialog), GTK_RESPONSE_YES);
  g_signal_connect_object (dialog, "response", G_CALLBACK (on_question_response), self, G_CONNECT_SWAPPED);
  gtk_window_present (GTK_WINDOW (dialog));
}

static void
load_next (TbWindow *self)
{
  g_autoptr (GFile) file = g_steal_pointer (&self->next_file);

  if (file != NULL)
    tb_window_load (self, file);
}

static void
on_open_response (TbWindow *self, int response)
{
  g_autoptr (GFile) file = take_chosen (self, response);

  if (file != NULL)
    tb_window_load (self, file);
}

static void
ask_what_to_open (TbWindow *self)
{
  GtkFileChooserNative *chooser
      = new_chooser (self, _ ("Open a study"), GTK_FILE_CHOOSER_ACTION_OPEN, _ ("_Open"));

  g_signal_connect_object (chooser, "response", G_CALLBACK (on_open_response), self, G_CONNECT_SWAPPED);
  gtk_native_dialog_show (GTK_NATIVE_DIALOG (chooser));
}

static void
start_new (TbWindow *self)
{
  tb_window_start_study (self);
}

static void
open_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  tb_window_ask_then (TB_WINDOW (widget), ask_what_to_open);
}

static void
open_uri_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  TbWindow *self = TB_WINDOW (widget);
  g_autoptr (GFile) file = g_file_new_for_uri (g_variant_get_string (parameter, NULL));

  g_set_object (&self->next_file, file);
  tb_window_ask_then (self, load_next);
}

static void
new_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  tb_window_ask_then (TB_WINDOW (widget), start_new);
}

static void
save_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  save_then_go_on (TB_WINDOW (widget));
}

static void
save_as_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  ask_where_to_save (TB_WINDOW (widget));
}

/* Recent studies, newest first. */

static int
compare_recent (gconstpointer a, gconstpointer b)
{
  GDateTime *from = gtk_recent_info_get_modified ((GtkRecentInfo *) a);
  GDateTime *to = gtk_recent_info_get_modified ((GtkRecentInfo *) b);

  return g_date_time_compare (to, from);
}

static void
append_recent (TbWindow *self, GtkRecentInfo *info)
{
  g_autoptr (GMenuItem) item = g_menu_item_new (gtk_recent_info_get_display_name (info), NULL);

  g_menu_item_set_action_and_target (item, "win.open-uri", "s", gtk_recent_info_get_uri (info));
  g_menu_append_item (self->recent_menu, item);
}

static void
update_recent (TbWindow *self)
{
  GList *items = gtk_recent_manager_get_items (gtk_recent_manager_get_default ());
  int count = 0;

  g_menu_remove_all (self->recent_menu);
  items = g_list_sort (items, compare_recent);
  for (GList *item = items; item != NULL && count < MAX_RECENT; item = item->next)
    if (gtk_recent_info_has_group (item->data, RECENT_GROUP) && gtk_recent_info_exists (item->data))
      {
        append_recent (self, item->data);
        count++;
      }
  /* Without an action it cannot be chosen. */
  if (count == 0)
    g_menu_append (self->recent_menu, _ ("What you open or save will stand here"), "win.no-recent");
  g_list_free_full (items, (GDestroyNotify) gtk_recent_info_unref);
}

void
tb_window_init_files (TbWindow *self)
{
  g_signal_connect_object (gtk_recent_manager_get_default (), "changed", G_CALLBACK (update_recent), self,
                           G_CONNECT_SWAPPED);
  update_recent (self);
}

void
tb_window_class_install_file_actions (GtkWidgetClass *widget_class)
{
  gtk_widget_class_install_action (widget_class, "win.open", NULL, open_action);
  gtk_widget_class_install_action (widget_class, "win.open-uri", "s", open_uri_action);
  gtk_widget_class_install_action (widget_class, "win.new", NULL, new_action);
  gtk_widget_class_install_action (widget_class, "win.save", NULL, save_action);
  gtk_widget_class_install_action (widget_class, "win.save-as", NULL, save_as_action);
}
