/* The clinic, opened from the study's window. Closed and opened again it goes on where it was, as long as the
 * study is the same.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "tb-window-private.h"

#include "tb-clinic-window.h"

static void
on_clinic_gone (gpointer window, GObject *clinic_window)
{
  TB_WINDOW (window)->clinic_window = NULL;
}

/* The talk about the study as it is now. */
static TbClinic *
clinic_of (TbWindow *self)
{
  TbStudy *study = tb_session_get_study (self->session);
  TbSetup *from;
  TbWish wish;

  if (self->clinic_study != study)
    {
      g_clear_object (&self->clinic);
      g_clear_pointer (&self->clinic_study, tb_study_unref);
      self->clinic_study = tb_study_ref (study);
    }
  if (self->clinic == NULL)
    {
      self->clinic = tb_clinic_new (tb_session_get_library (self->session), study,
                                    tb_session_get_units (self->session));
      g_object_bind_property (self->session, "units", tb_clinic_get_session (self->clinic), "units",
                              G_BINDING_SYNC_CREATE);
    }
  from = tb_session_get_wish (self->session, &wish);
  if (from != NULL)
    tb_clinic_set_wish (self->clinic, &wish, from);
  return self->clinic;
}

static void
open_clinic (GtkWidget *widget, const char *name, GVariant *parameter)
{
  TbWindow *self = TB_WINDOW (widget);

  if (self->clinic_window == NULL)
    {
      tb_session_set_playing (self->session, FALSE);
      self->clinic_window = GTK_WINDOW (tb_clinic_window_new (GTK_WINDOW (self), clinic_of (self)));
      g_object_weak_ref (G_OBJECT (self->clinic_window), on_clinic_gone, self);
    }
  tb_clinic_window_present (TB_CLINIC_WINDOW (self->clinic_window));
}

void
tb_window_class_install_clinic_actions (GtkWidgetClass *widget_class)
{
  gtk_widget_class_install_action (widget_class, "win.clinic", NULL, open_clinic);
}

void
tb_window_close_clinic (TbWindow *self)
{
  GtkWindow *clinic_window = self->clinic_window;

  self->clinic_window = NULL;
  if (clinic_window != NULL)
    {
      g_object_weak_unref (G_OBJECT (clinic_window), on_clinic_gone, self);
      gtk_window_destroy (clinic_window);
    }
  g_clear_object (&self->clinic);
  g_clear_pointer (&self->clinic_study, tb_study_unref);
}
