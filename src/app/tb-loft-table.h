/* The numbers of two throws on two lanes, side by side.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>
#include "tb-loft-runs.h"
#include "tb-session.h"

G_BEGIN_DECLS

#define TB_TYPE_LOFT_TABLE (tb_loft_table_get_type ())
G_DECLARE_FINAL_TYPE (TbLoftTable, tb_loft_table, TB, LOFT_TABLE, GtkWidget)

void tb_loft_table_show (TbLoftTable *self, TbLoftRuns *runs, TbUnits units);
/* For tests: what stands in a cell of a measure; NULL for one that is not in the table. Borrowed. */
const char *
tb_loft_table_get_cell (TbLoftTable *self, const char *measure, TbLoftStyle style, TbLoftLane lane);

G_END_DECLS
