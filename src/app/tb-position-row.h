/* Hand position of "after", in the trade's words.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>
#include "tb-session.h"

G_BEGIN_DECLS

#define TB_TYPE_POSITION_ROW (tb_position_row_get_type ())
G_DECLARE_FINAL_TYPE (TbPositionRow, tb_position_row, TB, POSITION_ROW, GtkWidget)

GtkWidget *tb_position_row_new (TbSession *session);

G_END_DECLS
