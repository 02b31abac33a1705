/* One number of "after": its name, a slider, the number to type, and the way back to what "before" has.
 *
 * Everything about the number (range, step, unit) comes from its field.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>
#include "tb-session.h"

G_BEGIN_DECLS

#define TB_TYPE_FIELD_ROW (tb_field_row_get_type ())
G_DECLARE_FINAL_TYPE (TbFieldRow, tb_field_row, TB, FIELD_ROW, GtkWidget)

/* field is one of core's, of kind TB_FIELD_REAL. */
GtkWidget *tb_field_row_new (TbSession *session, const TbField *field);

/* For tests: the parts a person works with. Borrowed. */
GtkWidget *tb_field_row_get_scale (TbFieldRow *self);
GtkWidget *tb_field_row_get_entry (TbFieldRow *self);
/* What is wrong with what was typed; "" where nothing is. */
const char *tb_field_row_get_problem (TbFieldRow *self);

G_END_DECLS
