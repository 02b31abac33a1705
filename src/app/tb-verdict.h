/* Where both runs ended, in a few words each.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>
#include "tb-session.h"

G_BEGIN_DECLS

#define TB_TYPE_VERDICT (tb_verdict_get_type ())
G_DECLARE_FINAL_TYPE (TbVerdict, tb_verdict, TB, VERDICT, GtkWidget)

void tb_verdict_set_session (TbVerdict *self, TbSession *session);
/* What is said of a run. Borrowed. */
const char *tb_verdict_get_text (TbVerdict *self, TbSide side);

G_END_DECLS
