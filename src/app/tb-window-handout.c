/* The handout's window, opened from the study's.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "tb-window-private.h"

#include "tb-handout-window.h"

static void
on_handout_gone (gpointer window, GObject *handout)
{
  TB_WINDOW (window)->handout = NULL;
}

static void
open_handout (GtkWidget *widget, const char *name, GVariant *parameter)
{
  TbWindow *self = TB_WINDOW (widget);

  if (self->handout == NULL)
    {
      self->handout = GTK_WINDOW (tb_handout_window_new (GTK_WINDOW (self), self->session));
      g_object_weak_ref (G_OBJECT (self->handout), on_handout_gone, self);
    }
  gtk_window_present (self->handout);
}

void
tb_window_class_install_handout_actions (GtkWidgetClass *widget_class)
{
  gtk_widget_class_install_action (widget_class, "win.handout", NULL, open_handout);
}

void
tb_window_close_handout (TbWindow *self)
{
  GtkWindow *handout = self->handout;

  if (handout == NULL)
    return;
  g_object_weak_unref (G_OBJECT (handout), on_handout_gone, self);
  self->handout = NULL;
  gtk_window_destroy (handout);
}
