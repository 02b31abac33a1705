/* What to try next: a wish, and what would meet it.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>
#include "tb-session.h"
#include "tb-wish.h"

G_BEGIN_DECLS

#define TB_TYPE_NEXT_PAGE (tb_next_page_get_type ())
G_DECLARE_FINAL_TYPE (TbNextPage, tb_next_page, TB, NEXT_PAGE, GtkWidget)

GtkWidget *tb_next_page_new (void);
void tb_next_page_set_session (TbNextPage *self, TbSession *session);
/* As if it had been chosen here. */
void tb_next_page_set_wish (TbNextPage *self, const TbWish *wish);
/* Whether every option of the wish is there; they are worked out beside the window. */
gboolean tb_next_page_is_settled (TbNextPage *self);

G_END_DECLS
