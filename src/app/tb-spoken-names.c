/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "tb-spoken-names.h"

#include <glib/gi18n-lib.h>

#include "tb-accessible.h"

/* Marks a widget that has been looked at. */
#define MENDED_KEY "tb-spoken-names-mended"

/* A mnemonic's label names the button, and so does the button's own property, underscore and all: one of them
 * goes. */
static void
name_once (GtkWidget *button)
{
  g_autoptr (GList) labels = gtk_widget_list_mnemonic_labels (button);

  if (tb_accessible_has_name (button))
    tb_accessible_restore_name (button);
  else if (labels != NULL)
    gtk_accessible_reset_property (GTK_ACCESSIBLE (button), GTK_ACCESSIBLE_PROPERTY_LABEL);
}

static void
mend_button (GtkWidget *button)
{
  name_once (button);
  g_signal_connect (button, "notify::label", G_CALLBACK (name_once), NULL);
}

/* Its label does not name it, so that the property is all there is: without the underscore. */
static void
mend_check_button (GtkWidget *button)
{
  const char *label = gtk_check_button_get_label (GTK_CHECK_BUTTON (button));
  g_auto (GStrv) parts = label != NULL ? g_strsplit (label, "_", 2) : NULL;

  if (gtk_check_button_get_use_underline (GTK_CHECK_BUTTON (button)) && parts != NULL && parts[0] != NULL
      && parts[1] != NULL)
    {
      g_autofree char *name = g_strconcat (parts[0], parts[1], NULL);

      tb_accessible_set_name (button, name);
    }
}

/* What the button it belongs to says it is for; one of GTK's own, as in an entry, is just a menu. */
static void
mend_menu (GtkWidget *menu)
{
  const char *tip = gtk_widget_get_tooltip_text (gtk_widget_get_parent (menu));

  if (!tb_accessible_has_name (menu))
    tb_accessible_set_name (menu, tip != NULL && tip[0] != '\0' ? tip : _ ("Menu"));
}

/* What is asked is its name: a dialog of this kind has no title. */
static void
mend_question (GtkWidget *dialog)
{
  g_autofree char *text = NULL;

  g_object_get (dialog, "text", &text, NULL);
  tb_accessible_set_name (dialog, text);
}

/* Names all of a type below a widget. */
static void
name_all (GtkWidget *widget, GType type, const char *name)
{
  if (G_TYPE_CHECK_INSTANCE_TYPE (widget, type))
    tb_accessible_set_name (widget, name);
  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL;
       child = gtk_widget_get_next_sibling (child))
    name_all (child, type, name);
}

static void
mend_shortcuts (GtkWidget *window)
{
  gtk_window_set_title (GTK_WINDOW (window), _ ("Keyboard shortcuts"));
  name_all (window, GTK_TYPE_IMAGE, _ ("Search"));
  name_all (window, GTK_TYPE_SEARCH_ENTRY, _ ("Search"));
  name_all (gtk_window_get_titlebar (GTK_WINDOW (window)), GTK_TYPE_TOGGLE_BUTTON, _ ("Search"));
}

static void
mend_about (GtkWidget *window)
{
  const char *program = gtk_about_dialog_get_program_name (GTK_ABOUT_DIALOG (window));

  name_all (window, GTK_TYPE_IMAGE, program);
  name_all (window, GTK_TYPE_TEXT_VIEW, program);
}

typedef struct Mending
{
  GType (*type) (void);
  void (*mend) (GtkWidget *widget);
} Mending;

static const Mending mendings[] = {
  { gtk_button_get_type, mend_button },
  { gtk_check_button_get_type, mend_check_button },
  { gtk_popover_menu_get_type, mend_menu },
  { gtk_message_dialog_get_type, mend_question },
  { gtk_shortcuts_window_get_type, mend_shortcuts },
  { gtk_about_dialog_get_type, mend_about },
};

static void
mend (GtkWidget *widget)
{
  if (g_object_get_data (G_OBJECT (widget), MENDED_KEY) != NULL)
    return;
  g_object_set_data (G_OBJECT (widget), MENDED_KEY, widget);
  for (gsize i = 0; i < G_N_ELEMENTS (mendings); i++)
    if (G_TYPE_CHECK_INSTANCE_TYPE (widget, mendings[i].type ()))
      mendings[i].mend (widget);
}

static void
mend_all (GtkWidget *widget)
{
  mend (widget);
  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL;
       child = gtk_widget_get_next_sibling (child))
    mend_all (child);
}

/* A window's pages that are not shown yet are on the bus all the same. */
static gboolean
on_map (GSignalInvocationHint *hint, guint count, const GValue *values, gpointer user_data)
{
  GtkWidget *widget = g_value_get_object (&values[0]);

  if (GTK_IS_WINDOW (widget))
    mend_all (widget);
  else
    mend (widget);
  return TRUE;
}

void
tb_spoken_names_init (void)
{
  static gboolean listening = FALSE;

  if (listening)
    return;
  listening = TRUE;
  /* The signal belongs to the class, which must be there. */
  g_type_ensure (GTK_TYPE_WIDGET);
  g_type_class_ref (GTK_TYPE_WIDGET);
  g_signal_add_emission_hook (g_signal_lookup ("map", GTK_TYPE_WIDGET), 0, on_map, NULL, NULL);
}
