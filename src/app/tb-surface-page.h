/* What each surface does to the ball of "after": curves against grit, in words too; and what becomes of a
 * surface: games, touch-ups, the log.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>
#include "tb-session.h"

G_BEGIN_DECLS

#define TB_TYPE_SURFACE_PAGE (tb_surface_page_get_type ())
G_DECLARE_FINAL_TYPE (TbSurfacePage, tb_surface_page, TB, SURFACE_PAGE, GtkWidget)

void tb_surface_page_set_session (TbSurfacePage *self, TbSession *session);
/* For tests: whether curves are still to come; what is said of them. */
gboolean tb_surface_page_is_busy (TbSurfacePage *self);
const char *tb_surface_page_get_words (TbSurfacePage *self);

G_END_DECLS
