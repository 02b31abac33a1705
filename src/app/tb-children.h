/* The end of a widget that has children of its own.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* Takes all of a widget's children from it, as GTK wants of a widget that goes. */
static inline void
tb_unparent_children (GtkWidget *widget)
{
  GtkWidget *child;

  while ((child = gtk_widget_get_first_child (widget)) != NULL)
    gtk_widget_unparent (child);
}

G_END_DECLS
