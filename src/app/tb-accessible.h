/* Names for assistive technology, where GTK would tell a class's name.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* name is translated. It is all that is read: not also the label of a mnemonic. */
void tb_accessible_set_name (GtkWidget *widget, const char *name);
/* Whether tb_accessible_set_name() was called. */
gboolean tb_accessible_has_name (GtkWidget *widget);
/* The name that was given last, after GTK has put another in its place. */
void tb_accessible_restore_name (GtkWidget *widget);
/* A drop-down and the button inside it that takes the focus. */
void tb_accessible_set_drop_down_name (GtkDropDown *drop_down, const char *name);
/* The bar's own button shows a cross and says nothing. */
void tb_accessible_name_message_bar (GtkInfoBar *bar);

G_END_DECLS
