/* A bowler, ball or pattern of the library, chosen for "after".
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>
#include "tb-session.h"

G_BEGIN_DECLS

#define TB_TYPE_LIBRARY_ROW (tb_library_row_get_type ())
G_DECLARE_FINAL_TYPE (TbLibraryRow, tb_library_row, TB, LIBRARY_ROW, GtkWidget)

/* label is translated. */
GtkWidget *tb_library_row_new (TbSession *session, TbDocumentKind kind, const char *label);

G_END_DECLS
