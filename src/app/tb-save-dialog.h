/* Asking where something is to be saved.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* One form a file can have. */
typedef struct TbSaveForm
{
  const char *suffix; /* "png" */
  const char *name;   /* for people, untranslated */
} TbSaveForm;

/* A modal dialog that is not shown yet. forms ends with a NULL suffix; the first is proposed: `base` with its
 * suffix. base may be anything; what a file's name cannot hold is left out of it. */
GtkFileChooserNative *
tb_save_dialog_new (GtkWindow *parent, const char *title, const char *base, const TbSaveForm *forms);
/* The file on this computer that was chosen, with the first form's suffix if its name has none; NULL if there
 * is none, or it is not on this computer. The caller's. */
char *tb_save_dialog_get_path (GtkFileChooserNative *dialog, const TbSaveForm *forms);

G_END_DECLS
