/* Names for assistive technology, where GTK would tell a class's name.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* name is translated. */
void tb_accessible_set_name (GtkWidget *widget, const char *name);
/* A drop-down and the button inside it that takes the focus. */
void tb_accessible_set_drop_down_name (GtkDropDown *drop_down, const char *name);
/* The bar's own button shows a cross and says nothing. */
void tb_accessible_name_message_bar (GtkInfoBar *bar);

G_END_DECLS
