/* Measures of both runs and what lies between them: before, after, difference.
 *
 * The first rows are the ones a bowler asks about; the rest of core's table stands in "More measures".
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>
#include "tb-session.h"

G_BEGIN_DECLS

#define TB_TYPE_COMPARE_TABLE (tb_compare_table_get_type ())
G_DECLARE_FINAL_TYPE (TbCompareTable, tb_compare_table, TB, COMPARE_TABLE, GtkWidget)

GtkWidget *tb_compare_table_new (TbSession *session);
void tb_compare_table_set_session (TbCompareTable *self, TbSession *session);

/* For tests: what is shown of a measure; NULL for an unknown name. Borrowed. */
const char *tb_compare_table_get_text (TbCompareTable *self, const char *measure, TbSide side);
const char *tb_compare_table_get_difference (TbCompareTable *self, const char *measure);

G_END_DECLS
