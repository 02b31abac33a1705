/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "tb-playback.h"

/* A frame that comes later than this (a suspended machine, a dragged window) counts as this, s. */
#define LONGEST_FRAME 0.25

struct TbPlayback
{
  GtkWidget *widget;     /* borrowed */
  GtkSettings *settings; /* borrowed: as long as the display */
  TbSession *session;
  gulong playing_id, unmap_id, motion_id;
  guint tick;       /* 0: time stands still */
  gint64 last_time; /* µs of the frame clock; 0 before the first frame */
};

static gboolean
on_tick (GtkWidget *widget, GdkFrameClock *clock, gpointer user_data)
{
  TbPlayback *self = user_data;
  gint64 now = gdk_frame_clock_get_frame_time (clock);
  double seconds = self->last_time == 0 ? 0 : (now - self->last_time) / (double) G_USEC_PER_SEC;

  self->last_time = now;
  tb_session_advance (self->session, MIN (seconds, LONGEST_FRAME));
  return G_SOURCE_CONTINUE;
}

static void
stop_ticking (TbPlayback *self)
{
  if (self->tick != 0)
    gtk_widget_remove_tick_callback (self->widget, self->tick);
  self->tick = 0;
}

static gboolean
wants_animations (TbPlayback *self)
{
  gboolean enabled = TRUE;

  g_object_get (self->settings, "gtk-enable-animations", &enabled, NULL);
  return enabled && gtk_widget_get_mapped (self->widget);
}

static void
on_playing_changed (TbPlayback *self)
{
  gboolean playing = tb_session_get_playing (self->session);

  stop_ticking (self);
  if (playing && !wants_animations (self))
    {
      /* Nothing is to move: the throw is over at once. */
      tb_session_set_time (self->session, tb_session_get_duration (self->session));
      tb_session_set_playing (self->session, FALSE);
      return;
    }
  self->last_time = 0;
  if (playing)
    self->tick = gtk_widget_add_tick_callback (self->widget, on_tick, self, NULL);
}

static void
on_unmap (TbPlayback *self)
{
  tb_session_set_playing (self->session, FALSE);
}

TbPlayback *
tb_playback_new (GtkWidget *widget, TbSession *session)
{
  TbPlayback *self = g_new0 (TbPlayback, 1);

  self->widget = widget;
  self->settings = gtk_widget_get_settings (widget);
  self->session = g_object_ref (session);
  self->playing_id
      = g_signal_connect_swapped (session, "notify::playing", G_CALLBACK (on_playing_changed), self);
  self->unmap_id = g_signal_connect_swapped (widget, "unmap", G_CALLBACK (on_unmap), self);
  /* In the middle of a throw, too. */
  self->motion_id = g_signal_connect_swapped (self->settings, "notify::gtk-enable-animations",
                                              G_CALLBACK (on_playing_changed), self);
  return self;
}

void
tb_playback_free (TbPlayback *self)
{
  stop_ticking (self);
  g_clear_signal_handler (&self->playing_id, self->session);
  g_clear_signal_handler (&self->unmap_id, self->widget);
  g_clear_signal_handler (&self->motion_id, self->settings);
  g_object_unref (self->session);
  g_free (self);
}
