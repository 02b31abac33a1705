/* The lane play window, opened from the study's.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "tb-window-private.h"

#include "tb-lane-window.h"

static void
on_lane_play_gone (gpointer window, GObject *lane_play)
{
  TB_WINDOW (window)->lane_play = NULL;
}

static TbLaneWindow *
lane_play_of (TbWindow *self)
{
  if (self->lane_play == NULL)
    {
      self->lane_play = GTK_WINDOW (tb_lane_window_new (GTK_WINDOW (self), self->session));
      g_object_weak_ref (G_OBJECT (self->lane_play), on_lane_play_gone, self);
    }
  return TB_LANE_WINDOW (self->lane_play);
}

/* The parameter is the page's name. */
static void
open_lane_play (GtkWidget *widget, const char *name, GVariant *parameter)
{
  TbLaneWindow *lane_play = lane_play_of (TB_WINDOW (widget));

  tb_lane_window_show_page (lane_play, g_variant_get_string (parameter, NULL));
  gtk_window_present (GTK_WINDOW (lane_play));
}

void
tb_window_class_install_lane_actions (GtkWidgetClass *widget_class)
{
  gtk_widget_class_install_action (widget_class, "win.lane-play", "s", open_lane_play);
}

void
tb_window_close_lane_play (TbWindow *self)
{
  GtkWindow *lane_play = self->lane_play;

  if (lane_play == NULL)
    return;
  g_object_weak_unref (G_OBJECT (lane_play), on_lane_play_gone, self);
  self->lane_play = NULL;
  gtk_window_destroy (lane_play);
}
