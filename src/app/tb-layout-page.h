/* The layout of the ball of "after": drawn and in numbers, the grip, what drilling makes of the ball, and the
 * sheet for the pro shop.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>
#include "tb-session.h"

G_BEGIN_DECLS

#define TB_TYPE_LAYOUT_PAGE (tb_layout_page_get_type ())
G_DECLARE_FINAL_TYPE (TbLayoutPage, tb_layout_page, TB, LAYOUT_PAGE, GtkWidget)

void tb_layout_page_set_session (TbLayoutPage *self, TbSession *session);

G_END_DECLS
