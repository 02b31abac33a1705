/* Three columns side by side: a start, a centre that takes what is left, and an end.
 *
 * Where the window is too narrow for three, start and end share one place and "page" says which of them is in
 * it. Where it is too narrow for two, "page" says which of all three is seen.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

typedef enum TbColumnsPage
{
  TB_COLUMNS_START,
  TB_COLUMNS_END,
  TB_COLUMNS_CENTER /* beside the start, where there is room for two */
} TbColumnsPage;

#define TB_TYPE_COLUMNS (tb_columns_get_type ())
G_DECLARE_FINAL_TYPE (TbColumns, tb_columns, TB, COLUMNS, GtkWidget)

/* Properties: "start", "center", "end" (widgets), "compact", "single" (read only, notify), "page"
 * (TbColumnsPage). */

/* Whether there is room for two of the columns only; and for no more than one. */
gboolean tb_columns_get_compact (TbColumns *self);
gboolean tb_columns_get_single (TbColumns *self);
void tb_columns_set_page (TbColumns *self, TbColumnsPage page);
TbColumnsPage tb_columns_get_page (TbColumns *self);

G_END_DECLS
