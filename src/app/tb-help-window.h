/* Help: how the ball moves, the trade's words, what is assumed, where the model stands against what is
 * published, and cautions; and a search over all of it.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define TB_TYPE_HELP_WINDOW (tb_help_window_get_type ())
G_DECLARE_FINAL_TYPE (TbHelpWindow, tb_help_window, TB, HELP_WINDOW, GtkWindow)

/* parent may be NULL. */
TbHelpWindow *tb_help_window_new (GtkWindow *parent);
/* "ball", "words", "assumed", "figures", "sources" or "cautions". */
void tb_help_window_show_page (TbHelpWindow *self, const char *page);
/* The page of words, at the word of this id if there is one. */
void tb_help_window_show_word (TbHelpWindow *self, const char *id);

G_END_DECLS
