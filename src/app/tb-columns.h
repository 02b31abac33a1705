/* Three columns side by side: a start, a centre that takes what is left, and an end.
 *
 * Where the window is too narrow for three, start and end share one place and "page" says which of them is in
 * it.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

typedef enum TbColumnsPage
{
  TB_COLUMNS_START,
  TB_COLUMNS_END
} TbColumnsPage;

#define TB_TYPE_COLUMNS (tb_columns_get_type ())
G_DECLARE_FINAL_TYPE (TbColumns, tb_columns, TB, COLUMNS, GtkWidget)

/* Properties: "start", "center", "end" (widgets), "compact" (read only, notifies), "page" (TbColumnsPage). */

gboolean tb_columns_get_compact (TbColumns *self);
void tb_columns_set_page (TbColumns *self, TbColumnsPage page);
TbColumnsPage tb_columns_get_page (TbColumns *self);

G_END_DECLS
