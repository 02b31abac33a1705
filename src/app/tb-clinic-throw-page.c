/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "tb-clinic-throw-page.h"

#include <glib/gi18n-lib.h>

#include "tb-accessible.h"
#include "tb-clinic-page.h"
#include "tb-clinic-words.h"
#include "tb-describe.h"
#include "tb-quantity.h"
#include "tb-style.h"

/* Sizes of type, of the screen's height. */
#define SCALE_SIZE (1.0 / 48)
#define READING_SIZE (1.0 / 20)
#define STRIP_SIZE (1.0 / 25)
/* A frame that comes later than this counts as this, s. */
#define LONGEST_FRAME 0.25
#define TIME_DIGITS 2

/* A box, since Tab passes by a box that has the focus itself: there is nothing to be operated here. */
struct _TbClinicThrowPage
{
  GtkBox parent_instance;

  /* Template */
  GtkLabel *reading;
  GtkLabel *scale;
  TbStripPicture *before;
  TbStripPicture *after;
  TbStripPicture *both;

  TbClinic *clinic;
  guint tick;        /* 0: time stands still */
  gint64 last_time;  /* µs of the frame clock; 0 before the first frame */
  gboolean told_end; /* what is said of the throw is how it ended */
};

G_DEFINE_FINAL_TYPE (TbClinicThrowPage, tb_clinic_throw_page, GTK_TYPE_BOX)

static TbSession *
session_of (TbClinicThrowPage *self)
{
  return tb_clinic_get_session (self->clinic);
}

static gboolean
on_tick (GtkWidget *widget, GdkFrameClock *clock, gpointer user_data)
{
  TbClinicThrowPage *self = TB_CLINIC_THROW_PAGE (widget);
  gint64 now = gdk_frame_clock_get_frame_time (clock);
  double seconds = self->last_time == 0 ? 0 : (double) (now - self->last_time) / G_USEC_PER_SEC;

  self->last_time = now;
  tb_session_advance (session_of (self), MIN (seconds, LONGEST_FRAME));
  return G_SOURCE_CONTINUE;
}

static void
stop_ticking (TbClinicThrowPage *self)
{
  if (self->tick != 0)
    gtk_widget_remove_tick_callback (GTK_WIDGET (self), self->tick);
  self->tick = 0;
}

static gboolean
is_over (TbSession *session)
{
  return tb_session_get_duration (session) > 0
         && tb_session_get_time (session) >= tb_session_get_duration (session);
}

/* Nobody hears where a ball goes before it has gone there. */
static void
describe_throw (TbClinicThrowPage *self)
{
  TbSession *session = session_of (self);
  TbUnits units = tb_session_get_units (session);
  g_autofree char *before = tb_describe_run (tb_session_get_run (session, TB_SIDE_BEFORE), units);
  g_autofree char *after = tb_describe_run (tb_session_get_run (session, TB_SIDE_AFTER), units);
  g_autofree char *ends = g_strdup_printf (_ ("Before: %s After: %s"), before, after);
  g_autofree char *hint = tb_clinic_hint (self->clinic);

  self->told_end = is_over (session);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION,
                                  self->told_end ? ends : hint, -1);
}

static void
show_reading (TbClinicThrowPage *self)
{
  TbSession *session = session_of (self);
  g_autofree char *time = tb_number_with_unit (tb_session_get_time (session), TIME_DIGITS, N_ ("s"));
  const char *rate = tb_clinic_rate_words (tb_session_get_rate (session));
  double now = tb_session_get_time (session), end = tb_session_get_duration (session);
  const char *state = tb_session_get_playing (session) ? ""
                      : now <= 0                       ? _ ("ready")
                      : now < end                      ? _ ("frozen")
                                                       : "";
  g_autofree char *text = g_strjoin (" · ", time, rate[0] != '\0' ? rate : state,
                                     rate[0] != '\0' && state[0] != '\0' ? state : NULL, NULL);

  gtk_label_set_text (self->reading, g_str_has_suffix (text, " · ") ? time : text);
  /* Not with every frame. */
  if (self->told_end != is_over (session))
    describe_throw (self);
}

static void
on_playing_changed (TbClinicThrowPage *self)
{
  stop_ticking (self);
  if (tb_session_get_playing (session_of (self)))
    {
      self->last_time = 0;
      self->tick = gtk_widget_add_tick_callback (GTK_WIDGET (self), on_tick, NULL, NULL);
    }
  show_reading (self);
}

static void
show_strips (TbClinicThrowPage *self)
{
  gboolean overlaid = tb_clinic_is_overlaid (self->clinic);

  gtk_widget_set_visible (GTK_WIDGET (self->before), !overlaid);
  gtk_widget_set_visible (GTK_WIDGET (self->after), !overlaid);
  gtk_widget_set_visible (GTK_WIDGET (self->both), overlaid);
}

static void
show_clinic (TbClinicThrowPage *self)
{
  show_strips (self);
  show_reading (self);
  if (tb_clinic_get_slide (self->clinic) != TB_CLINIC_THROW)
    return;
  tb_accessible_set_name (GTK_WIDGET (self), tb_clinic_get_step (self->clinic)->question);
  describe_throw (self);
}

void
tb_clinic_throw_page_set_height (TbClinicThrowPage *self, int height)
{
  TbStripPicture *const strips[] = { self->before, self->after, self->both };

  tb_style_set_label_size (self->scale, SCALE_SIZE * height);
  tb_style_set_label_size (self->reading, READING_SIZE * height);
  for (gsize i = 0; i < G_N_ELEMENTS (strips); i++)
    tb_strip_picture_set_text_size (strips[i], STRIP_SIZE * height);
}

static void
bind_session (TbClinicThrowPage *self)
{
  TbSession *session = session_of (self);

  tb_picture_set_session (TB_PICTURE (self->before), session);
  tb_picture_set_session (TB_PICTURE (self->after), session);
  tb_picture_set_session (TB_PICTURE (self->both), session);
  g_signal_connect_object (session, "notify::time", G_CALLBACK (show_reading), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (session, "notify::rate", G_CALLBACK (show_reading), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (session, "notify::playing", G_CALLBACK (on_playing_changed), self,
                           G_CONNECT_SWAPPED);
  g_signal_connect_object (session, "notify::units", G_CALLBACK (show_clinic), self, G_CONNECT_SWAPPED);
}

void
tb_clinic_throw_page_set_clinic (TbClinicThrowPage *self, TbClinic *clinic)
{
  g_return_if_fail (self->clinic == NULL);

  self->clinic = g_object_ref (clinic);
  bind_session (self);
  g_signal_connect_object (clinic, "changed", G_CALLBACK (show_clinic), self, G_CONNECT_SWAPPED);
  show_clinic (self);
}

static void
tb_clinic_throw_page_dispose (GObject *object)
{
  TbClinicThrowPage *self = TB_CLINIC_THROW_PAGE (object);

  stop_ticking (self);
  g_clear_object (&self->clinic);
  G_OBJECT_CLASS (tb_clinic_throw_page_parent_class)->dispose (object);
}

static void
tb_clinic_throw_page_class_init (TbClinicThrowPageClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = tb_clinic_throw_page_dispose;
  g_type_ensure (TB_TYPE_STRIP_PICTURE);
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/io/github/tenboard/Tenboard/ui/tb-clinic-throw-page.ui");
  gtk_widget_class_bind_template_child (widget_class, TbClinicThrowPage, reading);
  gtk_widget_class_bind_template_child (widget_class, TbClinicThrowPage, scale);
  gtk_widget_class_bind_template_child (widget_class, TbClinicThrowPage, before);
  gtk_widget_class_bind_template_child (widget_class, TbClinicThrowPage, after);
  gtk_widget_class_bind_template_child (widget_class, TbClinicThrowPage, both);
}

static void
tb_clinic_throw_page_init (TbClinicThrowPage *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  tb_strip_picture_set_runs (self->before, TB_STRIP_BEFORE);
  tb_strip_picture_set_runs (self->after, TB_STRIP_AFTER);
  tb_strip_picture_set_runs (self->both, TB_STRIP_BOTH);
}
