/* The rings of the ball of "after", and of the same ball with the pin elsewhere.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>
#include "tb-session.h"

G_BEGIN_DECLS

#define TB_TYPE_FLARE_PAGE (tb_flare_page_get_type ())
G_DECLARE_FINAL_TYPE (TbFlarePage, tb_flare_page, TB, FLARE_PAGE, GtkWidget)

void tb_flare_page_set_session (TbFlarePage *self, TbSession *session);
/* For tests: what is said of the rings. */
const char *tb_flare_page_get_words (TbFlarePage *self);

G_END_DECLS
