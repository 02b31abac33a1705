/* What can be done in the window, but for files.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "tb-window-private.h"

#include <glib/gi18n-lib.h>

#include "tb-ball-picture.h"
#include "tb-describe.h"
#include "tb-style.h"

static void
throw_balls (GtkWidget *widget, const char *name, GVariant *parameter)
{
  TbWindow *self = TB_WINDOW (widget);

  /* A throw is there to be seen. */
  if (tb_columns_get_single (self->columns))
    gtk_widget_activate_action (widget, "win.page", "s", "lane");
  tb_session_throw (self->session);
}

static void
pause_or_resume (GtkWidget *widget, const char *name, GVariant *parameter)
{
  TbSession *session = TB_WINDOW (widget)->session;

  if (tb_session_get_playing (session))
    tb_session_set_playing (session, FALSE);
  else
    tb_session_resume (session);
}

static void
keep_as_before (GtkWidget *widget, const char *name, GVariant *parameter)
{
  tb_session_keep_as_before (TB_WINDOW (widget)->session);
}

static void
swap (GtkWidget *widget, const char *name, GVariant *parameter)
{
  tb_session_swap (TB_WINDOW (widget)->session);
}

static void
put_back (GtkWidget *widget, const char *name, GVariant *parameter)
{
  tb_session_put_back (TB_WINDOW (widget)->session);
}

static void
undo (GtkWidget *widget, const char *name, GVariant *parameter)
{
  tb_session_undo (TB_WINDOW (widget)->session);
}

static void
redo (GtkWidget *widget, const char *name, GVariant *parameter)
{
  tb_session_redo (TB_WINDOW (widget)->session);
}

static void
edit_title (GtkWidget *widget, const char *name, GVariant *parameter)
{
  tb_title_button_popup (TB_WINDOW (widget)->title);
}

/* Read out by a screen reader as it appears, and there to be pasted into a message. */
static void
say (GtkWidget *widget, const char *name, GVariant *parameter)
{
  TbWindow *self = TB_WINDOW (widget);
  g_autofree char *words = tb_describe_both (tb_session_get_run (self->session, TB_SIDE_BEFORE),
                                             tb_session_get_run (self->session, TB_SIDE_AFTER),
                                             tb_session_get_units (self->session));

  tb_window_say (self, words);
  gdk_clipboard_set_text (gtk_widget_get_clipboard (widget), words);
}

static void
toggle_fullscreen (GtkWidget *widget, const char *name, GVariant *parameter)
{
  GtkWindow *window = GTK_WINDOW (widget);

  if (gtk_window_is_fullscreen (window))
    gtk_window_unfullscreen (window);
  else
    gtk_window_fullscreen (window);
}

void
tb_window_update_actions (TbWindow *self)
{
  GtkWidget *widget = GTK_WIDGET (self);
  TbStudy *study = tb_session_get_study (self->session);
  gboolean differ = !tb_setup_equal (study->side[TB_SIDE_BEFORE], study->side[TB_SIDE_AFTER]);
  gboolean flies = tb_session_get_duration (self->session) > 0;

  gtk_widget_action_set_enabled (widget, "win.keep-as-before", differ);
  gtk_widget_action_set_enabled (widget, "win.swap", differ);
  gtk_widget_action_set_enabled (widget, "win.put-back", differ);
  gtk_widget_action_set_enabled (widget, "win.undo", tb_session_can_undo (self->session));
  gtk_widget_action_set_enabled (widget, "win.redo", tb_session_can_redo (self->session));
  gtk_widget_action_set_enabled (widget, "win.throw", flies);
  gtk_widget_action_set_enabled (widget, "win.pause", flies);
}

/* Choices that are kept as settings; g_settings_create_action() gives each its action. */

static void
apply_lane_view (TbWindow *self)
{
  static const char *const names[] = { "plan", "sideways", "approach" };
  g_autofree char *view = g_settings_get_string (self->settings, "lane-view");

  for (guint i = 0; i < G_N_ELEMENTS (names); i++)
    if (g_str_equal (view, names[i]))
      tb_lane_panel_set_projection (self->lane, (TbLaneProjection) i);
}

static void
apply_ball_view (TbWindow *self)
{
  g_autofree char *view = g_settings_get_string (self->settings, "ball-view");

  tb_results_panel_set_ball_eye (self->results,
                                 g_str_equal (view, "side") ? TB_BALL_FROM_SIDE : TB_BALL_FROM_BEHIND);
}

static void
apply_color_scheme (TbWindow *self)
{
  tb_style_set_color_scheme ((TbColorScheme) g_settings_get_enum (self->settings, "color-scheme"));
}

static void
apply_look (TbWindow *self)
{
  tb_style_set_high_contrast (g_settings_get_boolean (self->settings, "high-contrast"));
  tb_style_set_run_colors ((TbRunColors) g_settings_get_enum (self->settings, "run-colors"));
  tb_style_set_reduced_motion (g_settings_get_boolean (self->settings, "reduced-motion"));
}

static void
add_setting (TbWindow *self, const char *key, void (*apply) (TbWindow *self))
{
  g_autoptr (GAction) action = g_settings_create_action (self->settings, key);

  g_action_map_add_action (G_ACTION_MAP (self), action);
  if (apply != NULL)
    {
      g_autofree char *signal = g_strconcat ("changed::", key, NULL);

      g_signal_connect_object (self->settings, signal, G_CALLBACK (apply), self, G_CONNECT_SWAPPED);
      apply (self);
    }
}

/* Which of the columns is seen in a narrow window. */
static void
on_page (GSimpleAction *action, GVariant *state, gpointer user_data)
{
  TbWindow *self = user_data;
  const char *name = g_variant_get_string (state, NULL);
  TbColumnsPage page = TB_COLUMNS_START;

  if (g_str_equal (name, "results"))
    page = TB_COLUMNS_END;
  else if (g_str_equal (name, "lane"))
    page = TB_COLUMNS_CENTER;
  g_simple_action_set_state (action, state);
  tb_columns_set_page (self->columns, page);
}

static void
add_page_action (TbWindow *self)
{
  g_autoptr (GSimpleAction) action
      = g_simple_action_new_stateful ("page", G_VARIANT_TYPE_STRING, g_variant_new_string ("controls"));

  g_signal_connect (action, "change-state", G_CALLBACK (on_page), self);
  g_action_map_add_action (G_ACTION_MAP (self), G_ACTION (action));
}

void
tb_window_init_actions (TbWindow *self)
{
  add_setting (self, "units", NULL);
  add_setting (self, "text-size", NULL);
  add_setting (self, "color-scheme", apply_color_scheme);
  add_setting (self, "high-contrast", apply_look);
  add_setting (self, "run-colors", apply_look);
  add_setting (self, "reduced-motion", apply_look);
  add_setting (self, "lane-view", apply_lane_view);
  add_setting (self, "ball-view", apply_ball_view);
  add_page_action (self);
  g_signal_connect_object (self->session, "changed", G_CALLBACK (tb_window_update_actions), self,
                           G_CONNECT_SWAPPED);
  g_signal_connect_object (self->session, "notify::can-undo", G_CALLBACK (tb_window_update_actions), self,
                           G_CONNECT_SWAPPED);
  g_signal_connect_object (self->session, "notify::can-redo", G_CALLBACK (tb_window_update_actions), self,
                           G_CONNECT_SWAPPED);
  tb_window_update_actions (self);
}

/* What tells others of the actions over D-Bus may outlast the window by a moment, and would tell of a change in the name
 * of a window that is gone. */
void
tb_window_remove_actions (TbWindow *self)
{
  g_auto (GStrv) names = g_action_group_list_actions (G_ACTION_GROUP (self));

  for (guint i = 0; names[i] != NULL; i++)
    g_action_map_remove_action (G_ACTION_MAP (self), names[i]);
}

void
tb_window_class_install_actions (GtkWidgetClass *widget_class)
{
  gtk_widget_class_install_action (widget_class, "win.throw", NULL, throw_balls);
  gtk_widget_class_install_action (widget_class, "win.pause", NULL, pause_or_resume);
  gtk_widget_class_install_action (widget_class, "win.keep-as-before", NULL, keep_as_before);
  gtk_widget_class_install_action (widget_class, "win.swap", NULL, swap);
  gtk_widget_class_install_action (widget_class, "win.put-back", NULL, put_back);
  gtk_widget_class_install_action (widget_class, "win.undo", NULL, undo);
  gtk_widget_class_install_action (widget_class, "win.redo", NULL, redo);
  gtk_widget_class_install_action (widget_class, "win.edit-title", NULL, edit_title);
  gtk_widget_class_install_action (widget_class, "win.say", NULL, say);
  gtk_widget_class_install_action (widget_class, "win.fullscreen", NULL, toggle_fullscreen);
}
