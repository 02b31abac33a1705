/* One thing to try: what it is, what it does, what it costs; a press puts it in "after".
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>
#include "tb-next.h"

G_BEGIN_DECLS

#define TB_TYPE_OPTION_ROW (tb_option_row_get_type ())
G_DECLARE_FINAL_TYPE (TbOptionRow, tb_option_row, TB, OPTION_ROW, GtkWidget)

/* Signal "chosen": the button was pressed. */

GtkWidget *tb_option_row_new (TbNext *next, TbNextOption *option, gboolean metric);
/* Borrowed. */
TbNextOption *tb_option_row_get_option (TbOptionRow *self);

G_END_DECLS
