/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "tb-clinic-remote.h"

typedef struct Remote
{
  TbClinicRemoteFunc func;
} Remote;

/* What a key types without modifiers. */
static guint
plain_key (GtkWidget *widget, GtkEventController *controller, guint keycode)
{
  int group = (int) gtk_event_controller_key_get_group (GTK_EVENT_CONTROLLER_KEY (controller));
  guint keyval = 0;

  gdk_display_translate_key (gtk_widget_get_display (widget), keycode, 0, group, &keyval, NULL, NULL, NULL);
  return keyval;
}

/* A button that the keyboard has gone to is pressed by the keyboard. */
static gboolean
is_for_focus (GtkWindow *window, guint keyval)
{
  GtkWidget *focus = gtk_window_get_focus (window);

  return (keyval == GDK_KEY_space || keyval == GDK_KEY_Return || keyval == GDK_KEY_KP_Enter)
         && GTK_IS_BUTTON (focus) && gtk_window_get_focus_visible (window);
}

static gboolean
on_key (GtkWidget *window, guint keyval, guint keycode, GdkModifierType state, GtkEventController *controller)
{
  const Remote *remote = g_object_get_data (G_OBJECT (controller), "remote");
  TbClinicAction action;

  if (keyval == GDK_KEY_Tab || keyval == GDK_KEY_ISO_Left_Tab)
    {
      remote->func (window, TB_CLINIC_SHOW_BAR);
      return GDK_EVENT_PROPAGATE;
    }
  if (is_for_focus (GTK_WINDOW (window), keyval))
    return GDK_EVENT_PROPAGATE;
  action = tb_clinic_action_for_key (keyval, plain_key (window, controller, keycode), state);
  if (action == TB_CLINIC_NOTHING)
    return GDK_EVENT_PROPAGATE;
  remote->func (window, action);
  return GDK_EVENT_STOP;
}

void
tb_clinic_remote_attach (GtkWidget *window, TbClinicRemoteFunc func)
{
  GtkEventController *keys = gtk_event_controller_key_new ();
  Remote *remote = g_new (Remote, 1);

  remote->func = func;
  gtk_event_controller_set_propagation_phase (keys, GTK_PHASE_CAPTURE);
  g_object_set_data_full (G_OBJECT (keys), "remote", remote, g_free);
  g_signal_connect_swapped (keys, "key-pressed", G_CALLBACK (on_key), window);
  gtk_widget_add_controller (window, keys);
}
