/* Windows for what was left unsaved when a program ended.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "tb-window-private.h"

#include <glib/gi18n-lib.h>

/* The window's own copy is written before the one left behind goes. */
static void
take_over (TbWindow *self, TbUnsaved *unsaved)
{
  tb_unsaved_open (unsaved, self->session);
  if (tb_autosave_flush (self->autosave))
    tb_unsaved_remove (unsaved);
  tb_window_tell (self, _ ("This study was not saved when Tenboard ended. Here it is again; save it to keep it."));
}

/* A program can end between saving a study and removing its copy. */
static gboolean
is_nothing_new (const TbUnsaved *unsaved)
{
  return unsaved->original != NULL && tb_study_equal (unsaved->study, unsaved->original);
}

int
tb_window_recover_all (GtkApplication *application, TbLibrary *library)
{
  g_autoptr (GPtrArray) found = tb_autosave_find (library);
  int count = 0;

  for (guint i = 0; i < found->len; i++)
    {
      TbUnsaved *unsaved = g_ptr_array_index (found, i);
      TbWindow *window;

      if (is_nothing_new (unsaved))
        {
          tb_unsaved_remove (unsaved);
          continue;
        }
      window = tb_window_new (application, library);
      take_over (window, unsaved);
      gtk_window_present (GTK_WINDOW (window));
      count++;
    }
  return count;
}
