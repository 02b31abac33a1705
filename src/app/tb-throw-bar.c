/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "tb-throw-bar.h"

#include <glib/gi18n-lib.h>

#include "tb-accessible.h"
#include "tb-children.h"
#include "tb-describe.h"
#include "tb-playback.h"
#include "tb-quantity.h"

/* What the drop-down offers, in its order. */
static const double rates[] = { 1.0, 0.5, 0.25, 0.1 };

/* Steps of the scrub slider's keys, s. */
#define TIME_STEP 0.02
#define TIME_PAGE 0.25
#define TIME_DIGITS 2

struct _TbThrowBar
{
  GtkWidget parent_instance;

  /* Template */
  GtkWidget *throw_button;
  GtkButton *pause_button;
  GtkDropDown *rate;
  GtkRange *scrub;
  GtkLabel *reading;

  TbSession *session;
  TbPlayback *playback;
};

G_DEFINE_FINAL_TYPE (TbThrowBar, tb_throw_bar, GTK_TYPE_WIDGET)

static void
show_time (TbThrowBar *self)
{
  double time = tb_session_get_time (self->session);
  const TbPath *path = tb_session_get_path (self->session, TB_SIDE_AFTER);
  g_autofree char *seconds = tb_number_with_unit (time, TIME_DIGITS, N_ ("s"));
  g_autofree char *distance = NULL;
  g_autofree char *text = NULL;
  TbSample sample;

  if (path != NULL && tb_path_at_time (path, time, &sample))
    distance = tb_describe_distance (sample.position.y, tb_session_get_units (self->session));
  text = distance != NULL ? g_strdup_printf ("%s · %s", seconds, distance) : g_strdup (seconds);
  gtk_label_set_text (self->reading, text);
  gtk_range_set_value (self->scrub, time);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->scrub), GTK_ACCESSIBLE_PROPERTY_VALUE_TEXT, text, -1);
}

static void
show_duration (TbThrowBar *self)
{
  double duration = tb_session_get_duration (self->session);

  gtk_adjustment_configure (gtk_range_get_adjustment (self->scrub), tb_session_get_time (self->session), 0,
                            duration, TIME_STEP, TIME_PAGE, 0);
  gtk_widget_set_sensitive (GTK_WIDGET (self->scrub), duration > 0);
  show_time (self);
}

static void
show_rate (TbThrowBar *self)
{
  guint nearest = 0;
  double rate = tb_session_get_rate (self->session);

  for (guint i = 0; i < G_N_ELEMENTS (rates); i++)
    if (fabs (rates[i] - rate) < fabs (rates[nearest] - rate))
      nearest = i;
  gtk_drop_down_set_selected (self->rate, nearest);
}

static void
show_playing (TbThrowBar *self)
{
  gboolean playing = tb_session_get_playing (self->session);
  const char *name = playing ? _ ("Pause") : _ ("Go on");

  gtk_button_set_icon_name (self->pause_button,
                            playing ? "media-playback-pause-symbolic" : "media-playback-start-symbolic");
  tb_accessible_set_name (GTK_WIDGET (self->pause_button), name);
  gtk_widget_set_tooltip_text (GTK_WIDGET (self->pause_button), name);
}

static gboolean
on_scrub (TbThrowBar *self, GtkScrollType scroll, double value)
{
  tb_session_set_playing (self->session, FALSE);
  tb_session_set_time (self->session, value);
  return GDK_EVENT_STOP;
}

/* Assistive technology moves the adjustment itself. */
static void
on_adjusted (TbThrowBar *self, GtkAdjustment *adjustment)
{
  tb_session_set_time (self->session, gtk_adjustment_get_value (adjustment));
}

static void
on_rate_selected (TbThrowBar *self)
{
  guint selected = gtk_drop_down_get_selected (self->rate);

  if (self->session != NULL && selected < G_N_ELEMENTS (rates))
    tb_session_set_rate (self->session, rates[selected]);
}

void
tb_throw_bar_set_session (TbThrowBar *self, TbSession *session)
{
  g_return_if_fail (self->session == NULL);

  self->session = g_object_ref (session);
  self->playback = tb_playback_new (GTK_WIDGET (self), session);
  tb_accessible_set_drop_down_name (self->rate, _ ("Speed of time"));
  show_rate (self);
  show_duration (self);
  show_playing (self);
  g_signal_connect_object (session, "changed", G_CALLBACK (show_duration), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (session, "notify::units", G_CALLBACK (show_time), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (session, "notify::time", G_CALLBACK (show_time), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (session, "notify::rate", G_CALLBACK (show_rate), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (session, "notify::playing", G_CALLBACK (show_playing), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (gtk_range_get_adjustment (self->scrub), "value-changed", G_CALLBACK (on_adjusted),
                           self, G_CONNECT_SWAPPED);
}

static gboolean
tb_throw_bar_grab_focus (GtkWidget *widget)
{
  return gtk_widget_grab_focus (TB_THROW_BAR (widget)->throw_button);
}

static void
tb_throw_bar_dispose (GObject *object)
{
  TbThrowBar *self = TB_THROW_BAR (object);

  g_clear_pointer (&self->playback, tb_playback_free);
  tb_unparent_children (GTK_WIDGET (self));
  g_clear_object (&self->session);
  G_OBJECT_CLASS (tb_throw_bar_parent_class)->dispose (object);
}

static void
tb_throw_bar_class_init (TbThrowBarClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = tb_throw_bar_dispose;
  widget_class->grab_focus = tb_throw_bar_grab_focus;
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/io/github/tenboard/Tenboard/ui/tb-throw-bar.ui");
  gtk_widget_class_bind_template_child (widget_class, TbThrowBar, throw_button);
  gtk_widget_class_bind_template_child (widget_class, TbThrowBar, pause_button);
  gtk_widget_class_bind_template_child (widget_class, TbThrowBar, rate);
  gtk_widget_class_bind_template_child (widget_class, TbThrowBar, scrub);
  gtk_widget_class_bind_template_child (widget_class, TbThrowBar, reading);
  gtk_widget_class_bind_template_callback (widget_class, on_rate_selected);
  gtk_widget_class_bind_template_callback (widget_class, on_scrub);
}

static void
tb_throw_bar_init (TbThrowBar *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}
