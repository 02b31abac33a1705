/* The ball counter's window, opened from the study's.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "tb-window-private.h"

#include "tb-counter-window.h"

static void
on_counter_gone (gpointer window, GObject *counter)
{
  TB_WINDOW (window)->counter = NULL;
}

static TbCounterWindow *
counter_of (TbWindow *self)
{
  if (self->counter == NULL)
    {
      self->counter = GTK_WINDOW (tb_counter_window_new (GTK_WINDOW (self), self->session));
      g_object_weak_ref (G_OBJECT (self->counter), on_counter_gone, self);
    }
  return TB_COUNTER_WINDOW (self->counter);
}

/* The parameter is the page's name. */
static void
open_counter (GtkWidget *widget, const char *name, GVariant *parameter)
{
  TbCounterWindow *counter = counter_of (TB_WINDOW (widget));

  tb_counter_window_show_page (counter, g_variant_get_string (parameter, NULL));
  gtk_window_present (GTK_WINDOW (counter));
}

void
tb_window_class_install_counter_actions (GtkWidgetClass *widget_class)
{
  gtk_widget_class_install_action (widget_class, "win.ball-counter", "s", open_counter);
}

void
tb_window_close_counter (TbWindow *self)
{
  GtkWindow *counter = self->counter;

  if (counter == NULL)
    return;
  g_object_weak_unref (G_OBJECT (counter), on_counter_gone, self);
  self->counter = NULL;
  gtk_window_destroy (counter);
}
