/* The page to take home on paper and in a file.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>
#include "tb-handout.h"

G_BEGIN_DECLS

/* Letter where the locale says so. */
TbPaper tb_paper_usual (void);

/* The title, as a file may be called, without an end that tells its kind. */
char *tb_handout_file_name (const TbHandout *handout);
/* Writes a PDF; FALSE, and a whole sentence, if that cannot be. */
gboolean tb_handout_save (const TbHandout *handout, const char *path, GError **error);

typedef struct TbHandoutPrinting
{
  GtkWindow *window; /* whose page it is: it is not drawn any more once that has gone */
  GtkPrintOperationAction action;
  const char *filename; /* where to, for GTK_PRINT_OPERATION_ACTION_EXPORT; else NULL */
} TbHandoutPrinting;
/* FALSE, and the system's sentence, on an error. That the person thought better of it is none. */
gboolean tb_handout_print (const TbHandout *handout, const TbHandoutPrinting *printing, GError **error);

G_END_DECLS
