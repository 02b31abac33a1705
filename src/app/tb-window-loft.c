/* The loft lab's window, opened from the study's.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "tb-window-private.h"

#include "tb-loft-lab.h"

static void
on_loft_lab_gone (gpointer window, GObject *loft_lab)
{
  TB_WINDOW (window)->loft_lab = NULL;
}

static void
open_loft_lab (GtkWidget *widget, const char *name, GVariant *parameter)
{
  TbWindow *self = TB_WINDOW (widget);

  if (self->loft_lab == NULL)
    {
      self->loft_lab = GTK_WINDOW (tb_loft_lab_new (GTK_WINDOW (self), self->session));
      g_object_weak_ref (G_OBJECT (self->loft_lab), on_loft_lab_gone, self);
    }
  gtk_window_present (self->loft_lab);
}

void
tb_window_class_install_loft_actions (GtkWidgetClass *widget_class)
{
  gtk_widget_class_install_action (widget_class, "win.loft-lab", NULL, open_loft_lab);
}

void
tb_window_close_loft_lab (TbWindow *self)
{
  GtkWindow *loft_lab = self->loft_lab;

  if (loft_lab == NULL)
    return;
  g_object_weak_unref (G_OBJECT (loft_lab), on_loft_lab_gone, self);
  self->loft_lab = NULL;
  gtk_window_destroy (loft_lab);
}
