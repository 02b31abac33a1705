/* The ball counter: a window of its own beside the study's, about the ball of its "after".
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>
#include "tb-session.h"

G_BEGIN_DECLS

#define TB_TYPE_COUNTER_WINDOW (tb_counter_window_get_type ())
G_DECLARE_FINAL_TYPE (TbCounterWindow, tb_counter_window, TB, COUNTER_WINDOW, GtkWindow)

/* Goes away with its parent. */
TbCounterWindow *tb_counter_window_new (GtkWindow *parent, TbSession *session);
/* "ball", "layout", "surface", "flare", "bag" or "reading". */
void tb_counter_window_show_page (TbCounterWindow *self, const char *page);
/* A page, for tests. Borrowed. */
GtkWidget *tb_counter_window_get_page (TbCounterWindow *self, const char *page);

G_END_DECLS
