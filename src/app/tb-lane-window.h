/* Lane play: room to miss, lines, the pattern, wear. Each a page about the session's "after" and "before".
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>
#include "tb-session.h"

G_BEGIN_DECLS

#define TB_TYPE_LANE_WINDOW (tb_lane_window_get_type ())
G_DECLARE_FINAL_TYPE (TbLaneWindow, tb_lane_window, TB, LANE_WINDOW, GtkWindow)

/* parent may be NULL. */
TbLaneWindow *tb_lane_window_new (GtkWindow *parent, TbSession *session);
/* "room", "lines", "pattern", "wear" */
void tb_lane_window_show_page (TbLaneWindow *self, const char *page);
/* Borrowed. */
GtkWidget *tb_lane_window_get_page (TbLaneWindow *self, const char *page);

G_END_DECLS
