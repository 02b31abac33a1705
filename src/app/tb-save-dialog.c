/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "tb-save-dialog.h"

#include <glib/gi18n-lib.h>
#include <string.h>

static void
add_form (GtkFileChooser *chooser, const TbSaveForm *form)
{
  g_autoptr (GtkFileFilter) filter = gtk_file_filter_new ();

  gtk_file_filter_set_name (filter, _ (form->name));
  gtk_file_filter_add_suffix (filter, form->suffix);
  gtk_file_chooser_add_filter (chooser, filter);
}

GtkFileChooserNative *
tb_save_dialog_new (GtkWindow *parent, const char *title, const char *base, const TbSaveForm *forms)
{
  GtkFileChooserNative *dialog
      = gtk_file_chooser_native_new (title, parent, GTK_FILE_CHOOSER_ACTION_SAVE, _ ("_Save"), NULL);
  g_autofree char *clean = g_strstrip (g_strdelimit (g_strdup (base), "/\\:\n\t", '-'));
  g_autofree char *name = g_strdup_printf ("%s.%s", clean, forms[0].suffix);

  for (const TbSaveForm *form = forms; form->suffix != NULL; form++)
    add_form (GTK_FILE_CHOOSER (dialog), form);
  gtk_file_chooser_set_current_name (GTK_FILE_CHOOSER (dialog), name);
  gtk_native_dialog_set_modal (GTK_NATIVE_DIALOG (dialog), TRUE);
  return dialog;
}

char *
tb_save_dialog_get_path (GtkFileChooserNative *dialog, const TbSaveForm *forms)
{
  g_autoptr (GFile) file = gtk_file_chooser_get_file (GTK_FILE_CHOOSER (dialog));
  g_autofree char *path = file != NULL ? g_file_get_path (file) : NULL;
  g_autofree char *name = path != NULL ? g_path_get_basename (path) : NULL;

  if (name == NULL || strchr (name, '.') != NULL)
    return g_steal_pointer (&path);
  return g_strdup_printf ("%s.%s", path, forms[0].suffix);
}
