/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "tb-accessible.h"

#include <glib/gi18n-lib.h>

void
tb_accessible_set_name (GtkWidget *widget, const char *name)
{
  gtk_accessible_update_property (GTK_ACCESSIBLE (widget), GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);
}

void
tb_accessible_set_drop_down_name (GtkDropDown *drop_down, const char *name)
{
  GtkWidget *button = gtk_widget_get_first_child (GTK_WIDGET (drop_down));

  tb_accessible_set_name (GTK_WIDGET (drop_down), name);
  if (button != NULL)
    tb_accessible_set_name (button, name);
}

static void
name_close_buttons (GtkWidget *widget)
{
  if (GTK_IS_BUTTON (widget))
    tb_accessible_set_name (widget, _ ("Close the message"));
  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL;
       child = gtk_widget_get_next_sibling (child))
    name_close_buttons (child);
}

void
tb_accessible_name_message_bar (GtkInfoBar *bar)
{
  name_close_buttons (GTK_WIDGET (bar));
}
