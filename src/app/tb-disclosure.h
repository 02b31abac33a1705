/* "More": a line that opens what is used less.
 *
 * (GtkExpander of GTK 4.8 warns when the Tab key passes it closed.)
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define TB_TYPE_DISCLOSURE (tb_disclosure_get_type ())
G_DECLARE_FINAL_TYPE (TbDisclosure, tb_disclosure, TB, DISCLOSURE, GtkWidget)

/* Properties: "label", "child", "expanded". */

/* label is shown, name is told to assistive technology; both translated. */
GtkWidget *tb_disclosure_new (const char *label, const char *name, GtkWidget *child);

G_END_DECLS
