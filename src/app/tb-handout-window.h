/* The page that a bowler takes home: a look at it, what stands on it, printing and saving.
 *
 * The facts are worked out beside the main thread whenever the study changes; until they are there the page
 * shows the last ones, and can be neither printed nor saved.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>
#include "tb-session.h"

G_BEGIN_DECLS

#define TB_TYPE_HANDOUT_WINDOW (tb_handout_window_get_type ())
G_DECLARE_FINAL_TYPE (TbHandoutWindow, tb_handout_window, TB, HANDOUT_WINDOW, GtkWindow)

/* parent may be NULL. */
TbHandoutWindow *tb_handout_window_new (GtkWindow *parent, TbSession *session);

/* For tests: whether the page shows the study as it is. */
gboolean tb_handout_window_is_settled (TbHandoutWindow *self);
/* Writes the page as a PDF; FALSE after a sentence in the window. */
gboolean tb_handout_window_save (TbHandoutWindow *self, const char *path);
/* Prints it as the action says; filename is where to, for GTK_PRINT_OPERATION_ACTION_EXPORT, else NULL. */
void tb_handout_window_print (TbHandoutWindow *self, GtkPrintOperationAction action, const char *filename);

G_END_DECLS
