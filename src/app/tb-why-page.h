/* Why the two runs differ: sentences, and the difference as bars by input and by stretch of lane.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>
#include "tb-session.h"

G_BEGIN_DECLS

#define TB_TYPE_WHY_PAGE (tb_why_page_get_type ())
G_DECLARE_FINAL_TYPE (TbWhyPage, tb_why_page, TB, WHY_PAGE, GtkWidget)

GtkWidget *tb_why_page_new (void);
void tb_why_page_set_session (TbWhyPage *self, TbSession *session);
/* Whether what is shown belongs to the session as it is; it is worked out beside the window. */
gboolean tb_why_page_is_settled (TbWhyPage *self);

G_END_DECLS
