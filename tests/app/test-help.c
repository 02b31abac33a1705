/* Help: every assumed constant is told, with where it comes from; no page is empty; a closed window goes away.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include <gtk/gtk.h>

#include "tb-core.h"
#include "tb-help-window.h"

/* Every label's text below a widget, in one string. */
static void
gather (GtkWidget *widget, GString *text)
{
  if (GTK_IS_LABEL (widget))
    g_string_append_printf (text, "%s\n", gtk_label_get_text (GTK_LABEL (widget)));
  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL;
       child = gtk_widget_get_next_sibling (child))
    gather (child, text);
}

static GtkWidget *
find_stack (GtkWidget *widget)
{
  if (GTK_IS_STACK (widget))
    return gtk_stack_get_visible_child (GTK_STACK (widget));
  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL;
       child = gtk_widget_get_next_sibling (child))
    {
      GtkWidget *found = find_stack (child);

      if (found != NULL)
        return found;
    }
  return NULL;
}

static void
test_constants (void)
{
  TbHelpWindow *window = tb_help_window_new (NULL);
  g_autoptr (GString) text = g_string_new (NULL);

  gtk_window_present (GTK_WINDOW (window));
  gtk_test_widget_wait_for_draw (GTK_WIDGET (window));
  gather (GTK_WIDGET (window), text);
  for (const TbAssumedInfo *info = tb_assumed_table; info->name != NULL; info++)
    {
      g_assert_nonnull (strstr (text->str, info->label));
      g_assert_nonnull (strstr (text->str, info->source));
      g_assert_nonnull (strstr (text->str, info->consequence));
    }
  g_assert_nonnull (strstr (text->str, "not measured"));
  gtk_window_destroy (GTK_WINDOW (window));
}

static void
test_pages (void)
{
  static const char *const pages[] = { "ball", "assumed", "figures", "sources", "cautions" };
  TbHelpWindow *window = tb_help_window_new (NULL);

  gtk_window_present (GTK_WINDOW (window));
  gtk_test_widget_wait_for_draw (GTK_WIDGET (window));
  for (gsize i = 0; i < G_N_ELEMENTS (pages); i++)
    {
      g_autoptr (GString) text = g_string_new (NULL);

      tb_help_window_show_page (window, pages[i]);
      gather (find_stack (GTK_WIDGET (window)), text);
      g_assert_cmpuint (text->len, >, 200);
      g_assert_null (strstr (text->str, "\n\n"));
      g_assert_null (strstr (text->str, "#"));
    }
  g_object_add_weak_pointer (G_OBJECT (window), (gpointer *) &window);
  gtk_window_destroy (GTK_WINDOW (window));
  while (window != NULL)
    g_main_context_iteration (NULL, TRUE);
}

int
main (int argc, char **argv)
{
  g_setenv ("GTK_A11Y", "test", TRUE);
  gtk_test_init (&argc, &argv, NULL);
  g_test_add_func ("/help/constants", test_constants);
  g_test_add_func ("/help/pages", test_pages);
  return g_test_run ();
}
