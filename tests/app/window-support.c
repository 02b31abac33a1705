/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window-support.h"

#include <string.h>

#include "tb-controls-panel.h"
#include "tb-task.h"

/* At the end, s; what was told to stop needs a moment. */
#define LAST_WORK 20

TbApplication *application;

void
start_tests (int *argc, char ***argv)
{
  g_setenv ("XDG_DATA_HOME", scratch_folder (), TRUE);
  g_setenv ("GTK_A11Y", "test", TRUE);
  gtk_test_init (argc, argv, NULL);
  g_object_set (gtk_settings_get_default (), "gtk-font-name", "DejaVu Sans 10", "gtk-cursor-blink", FALSE,
                NULL);
  set_animations (FALSE);
}

void
set_animations (gboolean enabled)
{
  g_object_set (gtk_settings_get_default (), "gtk-enable-animations", enabled, NULL);
}

void
start_application (void)
{
  g_autoptr (GError) error = NULL;

  application = tb_application_new ();
  g_application_set_flags (G_APPLICATION (application), G_APPLICATION_NON_UNIQUE);
  g_application_register (G_APPLICATION (application), NULL, &error);
  g_assert_no_error (error);
}

int
run_tests (void)
{
  int status = g_test_run ();

  g_clear_object (&application);
  g_assert_true (tb_task_wait_for_all (LAST_WORK));
  return status;
}

void
show_window (gpointer window)
{
  gtk_window_present (GTK_WINDOW (window));
  gtk_test_widget_wait_for_draw (GTK_WIDGET (window));
}

TbWindow *
new_window (void)
{
  TbWindow *window = tb_window_new (GTK_APPLICATION (application), tb_application_get_library (application));

  show_window (window);
  return window;
}

void
close_for_good (gpointer window)
{
  g_object_add_weak_pointer (G_OBJECT (window), &window);
  gtk_window_destroy (GTK_WINDOW (window));
  WAIT_UNTIL (window == NULL);
}

void
choose_action (TbWindow *window, const char *action, const char *parameter)
{
  GVariant *target = parameter != NULL ? g_variant_new_string (parameter) : NULL;

  g_assert_true (gtk_widget_activate_action_variant (GTK_WIDGET (window), action, target));
}

gpointer
find_window (GType type)
{
  g_autoptr (GList) windows = gtk_window_list_toplevels ();

  for (GList *l = windows; l != NULL; l = l->next)
    if (G_TYPE_CHECK_INSTANCE_TYPE (l->data, type))
      return l->data;
  return NULL;
}

GtkWidget *
find (gpointer widget, GType type)
{
  GtkWidget *found = G_TYPE_CHECK_INSTANCE_TYPE (widget, type) ? widget : NULL;

  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL && found == NULL;
       child = gtk_widget_get_next_sibling (child))
    found = find (child, type);
  return found;
}

GtkWidget *
find_with (gpointer widget, WidgetTest is_it)
{
  GtkWidget *found = is_it (widget) ? widget : NULL;

  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL && found == NULL;
       child = gtk_widget_get_next_sibling (child))
    found = find_with (child, is_it);
  return found;
}

GtkStack *
find_stack (GtkWidget *widget)
{
  if (GTK_IS_STACK (widget) && gtk_widget_get_first_child (widget) != gtk_widget_get_last_child (widget))
    return GTK_STACK (widget);
  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL;
       child = gtk_widget_get_next_sibling (child))
    {
      gboolean inside = GTK_IS_POPOVER (child) || GTK_IS_DROP_DOWN (child) || GTK_IS_MENU_BUTTON (child);
      GtkStack *found = inside ? NULL : find_stack (child);

      if (found != NULL)
        return found;
    }
  return NULL;
}

gboolean
says (gpointer widget, const char *words)
{
  gboolean said = GTK_IS_LABEL (widget) && gtk_widget_get_mapped (widget)
                  && strstr (gtk_label_get_text (GTK_LABEL (widget)), words) != NULL;

  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL && !said;
       child = gtk_widget_get_next_sibling (child))
    said = says (child, words);
  return said;
}

void
click (gpointer widget, const char *label)
{
  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL;
       child = gtk_widget_get_next_sibling (child))
    {
      if (GTK_IS_BUTTON (child) && g_strcmp0 (gtk_button_get_label (GTK_BUTTON (child)), label) == 0)
        g_signal_emit_by_name (child, "clicked");
      click (child, label);
    }
}

gboolean
press_key (GtkWidget *widget, guint keyval)
{
  g_autoptr (GListModel) controllers = gtk_widget_observe_controllers (widget);
  gboolean handled = FALSE;

  for (guint i = 0; i < g_list_model_get_n_items (controllers) && !handled; i++)
    {
      g_autoptr (GtkEventController) controller = g_list_model_get_item (controllers, i);

      if (GTK_IS_EVENT_CONTROLLER_KEY (controller))
        g_signal_emit_by_name (controller, "key-pressed", keyval, 0, 0, &handled);
    }
  return handled;
}

void
enter_text (GtkWidget *entry, const char *text)
{
  gtk_editable_set_text (GTK_EDITABLE (entry), text);
  if (GTK_IS_SPIN_BUTTON (entry))
    gtk_spin_button_update (GTK_SPIN_BUTTON (entry));
  else
    g_signal_emit_by_name (entry, "activate");
}

static gboolean
on_rested (gpointer rested)
{
  *(gboolean *) rested = TRUE;
  return G_SOURCE_REMOVE;
}

void
rest (guint ms)
{
  gboolean rested = FALSE;

  g_timeout_add (ms, on_rested, &rested);
  while (!rested)
    g_main_context_iteration (NULL, TRUE);
}

TbFieldRow *
row_of (TbWindow *window, const char *field)
{
  TbControlsPanel *controls = TB_CONTROLS_PANEL (find (window, TB_TYPE_CONTROLS_PANEL));

  return TB_FIELD_ROW (tb_controls_panel_get_row (controls, field));
}

static const TbField *
speed (void)
{
  return tb_field_find (TB_GROUP_DELIVERY, "speed_mph");
}

double
speed_after (TbSession *session)
{
  return tb_session_get_field (session, TB_SIDE_AFTER, speed ());
}

void
set_speed (TbSession *session, double mph)
{
  g_assert_true (tb_session_set_field (session, speed (), mph, NULL));
}
