/* The pattern editor's files: tables of the film, in and out, and the user's own library.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "tb-pattern-editor-private.h"

#include <glib/gi18n-lib.h>

#include "tb-accessible.h"
#include "tb-film-csv.h"

static void
tell (TbPatternEditor *self, const char *sentence)
{
  gtk_label_set_text (self->told, sentence);
  gtk_widget_set_visible (GTK_WIDGET (self->told), sentence[0] != '\0');
}

static GtkWindow *
window_of (TbPatternEditor *self)
{
  return GTK_WINDOW (gtk_widget_get_root (GTK_WIDGET (self)));
}

static void
import_file (TbPatternEditor *self, const char *path)
{
  g_autoptr (GError) error = NULL;
  TbPattern *pattern = tb_pattern_import (path, &error);

  if (pattern == NULL)
    {
      tell (self, error->message);
      return;
    }
  self->selected = -1;
  tb_pattern_editor_take (self, pattern, NULL);
  tell (self, _ ("Imported."));
}

static void
export_file (TbPatternEditor *self, const char *path)
{
  g_autoptr (GError) error = NULL;

  if (tb_film_csv_save (&tb_pattern_editor_get_pattern (self)->oil, path, &error))
    tell (self, _ ("Exported."));
  else
    tell (self, error->message);
}

static void
on_response (TbPatternEditor *self, int response, GtkNativeDialog *dialog)
{
  gboolean save = gtk_file_chooser_get_action (GTK_FILE_CHOOSER (dialog)) == GTK_FILE_CHOOSER_ACTION_SAVE;
  g_autoptr (GFile) file
      = response == GTK_RESPONSE_ACCEPT ? gtk_file_chooser_get_file (GTK_FILE_CHOOSER (dialog)) : NULL;
  g_autofree char *path = file ? g_file_get_path (file) : NULL;

  if (path && save)
    export_file (self, path);
  else if (path)
    import_file (self, path);
  g_clear_object (&self->chooser);
}

static void
choose (TbPatternEditor *self, GtkFileChooserAction action, const char *title)
{
  GtkFileFilter *filter = gtk_file_filter_new ();

  g_clear_object (&self->chooser);
  self->chooser = gtk_file_chooser_native_new (title, window_of (self), action, NULL, NULL);
  gtk_file_filter_set_name (filter, _ ("Tables (CSV)"));
  gtk_file_filter_add_suffix (filter, "csv");
  gtk_file_chooser_add_filter (GTK_FILE_CHOOSER (self->chooser), filter);
  g_object_unref (filter);
  if (action == GTK_FILE_CHOOSER_ACTION_SAVE)
    gtk_file_chooser_set_current_name (GTK_FILE_CHOOSER (self->chooser), _ ("Pattern.csv"));
  g_signal_connect_swapped (self->chooser, "response", G_CALLBACK (on_response), self);
  gtk_native_dialog_show (GTK_NATIVE_DIALOG (self->chooser));
}

static void
on_import (TbPatternEditor *self)
{
  choose (self, GTK_FILE_CHOOSER_ACTION_OPEN, _ ("Import a film"));
}

static void
on_export (TbPatternEditor *self)
{
  choose (self, GTK_FILE_CHOOSER_ACTION_SAVE, _ ("Export the film"));
}

/* Letters, digits and single hyphens of a name, as an id is made of; "pattern" where nothing is left. */
static char *
id_from_name (const char *name)
{
  g_autofree char *ascii = g_str_to_ascii (name, "C");
  GString *id = g_string_new (NULL);

  for (const char *p = ascii; *p && id->len < TB_ID_MAX; p++)
    {
      if (g_ascii_isalnum (*p))
        g_string_append_c (id, g_ascii_tolower (*p));
      else if (id->len > 0 && id->str[id->len - 1] != '-')
        g_string_append_c (id, '-');
    }
  while (id->len > 0 && id->str[id->len - 1] == '-')
    g_string_truncate (id, id->len - 1);
  if (id->len == 0)
    g_string_append (id, "pattern");
  return g_string_free (id, FALSE);
}

/* An id of the user's own, so that what is built in stays. */
static char *
free_id (TbLibrary *library, const char *name)
{
  g_autofree char *wanted = id_from_name (name);

  for (guint i = 1;; i++)
    {
      char *id = i == 1 ? g_strdup (wanted) : g_strdup_printf ("%.*s-%u", TB_ID_MAX - 8, wanted, i);
      TbLibraryEntry *entry = tb_library_find (library, TB_DOCUMENT_PATTERN, id, NULL);

      if (entry == NULL || !tb_library_entry_is_builtin (entry))
        return id;
      g_free (id);
    }
}

/* Under its name, in the list of patterns from now on; one of the user's of the same name is replaced. */
static void
on_keep (TbPatternEditor *self)
{
  TbLibrary *library = tb_session_get_library (tb_lane_page_get_session (TB_LANE_PAGE (self)));
  g_autofree char *name
      = g_strstrip (tb_text_fitted (gtk_editable_get_text (GTK_EDITABLE (self->name)), TB_NAME_MAX, TRUE));
  g_autofree char *id = free_id (library, name);
  g_autoptr (TbPattern) named = NULL;
  g_autoptr (GError) error = NULL;

  if (name[0] == '\0')
    {
      tell (self, _ ("A pattern needs a name to be kept under."));
      return;
    }
  named = tb_pattern_renamed (tb_pattern_editor_get_pattern (self), id, name);
  if (!tb_library_save_pattern (library, named, &error))
    {
      tell (self, error->message);
      return;
    }
  tb_pattern_editor_take (self, tb_pattern_ref (named), NULL);
  tell (self, _ ("Kept among your patterns."));
}

void
tb_pattern_editor_add_files (TbPatternEditor *self, GtkBox *box)
{
  GtkWidget *tables = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 4),
            *keep = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 4);

  tb_lane_page_add_title (box, _ ("Keep it"));
  self->name = GTK_ENTRY (gtk_entry_new ());
  gtk_widget_set_hexpand (GTK_WIDGET (self->name), TRUE);
  gtk_editable_set_width_chars (GTK_EDITABLE (self->name), 12);
  tb_accessible_set_name (GTK_WIDGET (self->name), _ ("Name of the pattern"));
  gtk_widget_add_css_class (keep, "list-row");
  gtk_widget_add_css_class (tables, "list-row");
  gtk_box_append (GTK_BOX (keep), GTK_WIDGET (self->name));
  g_signal_connect_swapped (
      tb_lane_page_add_button (GTK_BOX (keep), _ ("_Keep"), _ ("Among your patterns, under this name")),
      "clicked", G_CALLBACK (on_keep), self);
  g_signal_connect_swapped (tb_lane_page_add_button (GTK_BOX (tables), _ ("_Import…"),
                                                     _ ("A film from a table: feet and 39 boards, in units")),
                            "clicked", G_CALLBACK (on_import), self);
  g_signal_connect_swapped (
      tb_lane_page_add_button (GTK_BOX (tables), _ ("E_xport…"), _ ("The film as a table for a spreadsheet")),
      "clicked", G_CALLBACK (on_export), self);
  gtk_box_append (box, keep);
  gtk_box_append (box, tables);
  self->told = tb_lane_page_add_note (box, "");
  gtk_widget_set_visible (GTK_WIDGET (self->told), FALSE);
}
