/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "tb-accessible.h"

#include <glib/gi18n-lib.h>

/* The name a widget was given. */
#define NAME_KEY "tb-accessible-name"

void
tb_accessible_set_name (GtkWidget *widget, const char *name)
{
  g_object_set_data_full (G_OBJECT (widget), NAME_KEY, g_strdup (name), g_free);
  tb_accessible_restore_name (widget);
}

gboolean
tb_accessible_has_name (GtkWidget *widget)
{
  return g_object_get_data (G_OBJECT (widget), NAME_KEY) != NULL;
}

void
tb_accessible_restore_name (GtkWidget *widget)
{
  const char *name = g_object_get_data (G_OBJECT (widget), NAME_KEY);

  gtk_accessible_update_property (GTK_ACCESSIBLE (widget), GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);
  /* The label of a mnemonic would be read after it. */
  gtk_accessible_reset_relation (GTK_ACCESSIBLE (widget), GTK_ACCESSIBLE_RELATION_LABELLED_BY);
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
