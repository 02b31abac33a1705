/* The same delivery on the same lane with every ball of the library: a fan of paths, a ladder of boards, a
 * table.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>
#include "tb-session.h"

G_BEGIN_DECLS

#define TB_TYPE_BAG_PAGE (tb_bag_page_get_type ())
G_DECLARE_FINAL_TYPE (TbBagPage, tb_bag_page, TB, BAG_PAGE, GtkWidget)

void tb_bag_page_set_session (TbBagPage *self, TbSession *session);
/* For tests. */
gboolean tb_bag_page_is_busy (TbBagPage *self);
const char *tb_bag_page_get_words (TbBagPage *self);
GtkColumnView *tb_bag_page_get_table (TbBagPage *self);

G_END_DECLS
