/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "tb-help-row.h"

#include <glib/gi18n-lib.h>

#include "tb-accessible.h"

#define SPACING 4

GtkWidget *
tb_help_label_new (const char *text, const char *style)
{
  GtkWidget *label = gtk_label_new (text);

  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_xalign (GTK_LABEL (label), 0);
  if (style != NULL)
    gtk_widget_add_css_class (label, style);
  return label;
}

void
tb_help_row_append (GtkWidget *row, GtkWidget *line)
{
  gtk_box_append (GTK_BOX (gtk_list_box_row_get_child (GTK_LIST_BOX_ROW (row))), line);
}

GtkWidget *
tb_help_row_new (const char *title, const char *text)
{
  GtkWidget *row = gtk_list_box_row_new ();
  /* Translators: a word of the glossary, and what it means; read aloud. */
  g_autofree char *spoken = g_strdup_printf (_ ("%s: %s"), title, text);

  gtk_list_box_row_set_child (GTK_LIST_BOX_ROW (row), gtk_box_new (GTK_ORIENTATION_VERTICAL, SPACING));
  tb_help_row_append (row, tb_help_label_new (title, "heading"));
  tb_help_row_append (row, tb_help_label_new (text, NULL));
  gtk_widget_add_css_class (row, "word");
  tb_accessible_set_name (row, spoken);
  return row;
}
