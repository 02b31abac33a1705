/* What a button of a crowded bar says: words while there is room, and a picture when there is not. It never
 * asks for more than the picture needs, so that a bar of them fits on a small screen.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* Properties: "icon-name"; "label", with an underscore before its mnemonic; "always-icon", whether the
 * picture stands beside the words too; "folded". The button it lies in carries the name for assistive
 * technology and a tooltip. */
#define TB_TYPE_FOLDING_LABEL (tb_folding_label_get_type ())
G_DECLARE_FINAL_TYPE (TbFoldingLabel, tb_folding_label, TB, FOLDING_LABEL, GtkWidget)

/* Folded, only the picture is seen. */
void tb_folding_label_set_folded (TbFoldingLabel *self, gboolean folded);
gboolean tb_folding_label_get_folded (TbFoldingLabel *self);
/* How much wider it is with its words, px. */
int tb_folding_label_get_extra (TbFoldingLabel *self);

G_END_DECLS
