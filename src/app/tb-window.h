/* The window: one session and everything that shows it.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>
#include "tb-session.h"

G_BEGIN_DECLS

#define TB_TYPE_WINDOW (tb_window_get_type ())
G_DECLARE_FINAL_TYPE (TbWindow, tb_window, TB, WINDOW, GtkApplicationWindow)

/* settings are those of the schema; NULL takes the installed ones. */
TbWindow *tb_window_new (GtkApplication *application, TbLibrary *library);
/* Borrowed. */
TbSession *tb_window_get_session (TbWindow *self);

/* A bar that offers the tour, unless it has been taken or declined before. */
void tb_window_offer_tour (TbWindow *self);

/* Loads a study, or tells why not and leaves everything as it is. A lesson begins in the lessons' window. */
gboolean tb_window_load (TbWindow *self, GFile *file);
/* Whether another document can come in its place without anything being lost or hidden: nothing was done yet.
 */
gboolean tb_window_is_fresh (TbWindow *self);

/* Opens a window for each study that a program left unsaved when it ended, and says so in it. Answers how many. */
int tb_window_recover_all (GtkApplication *application, TbLibrary *library);

/* Writes where both balls are, as --path does: JSON if the name ends so, otherwise CSV. What goes wrong is told in the
 * window. */
void tb_window_save_path_to (TbWindow *self, const char *path);

G_END_DECLS
