/* One choice of "after" (hand, cover): its name and a drop-down.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>
#include "tb-session.h"

G_BEGIN_DECLS

#define TB_TYPE_CHOICE_ROW (tb_choice_row_get_type ())
G_DECLARE_FINAL_TYPE (TbChoiceRow, tb_choice_row, TB, CHOICE_ROW, GtkWidget)

/* field is one of core's, of kind TB_FIELD_CHOICE. */
GtkWidget *tb_choice_row_new (TbSession *session, const TbField *field);

G_END_DECLS
