/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "tb-clinic-window.h"

#include <glib/gi18n-lib.h>

#include "tb-accessible.h"
#include "tb-clinic-remote.h"
#include "tb-describe.h"
#include "tb-presenter-window.h"
#include "tb-projector.h"
#include "tb-quantity.h"
#include "tb-style.h"

/* How long the controls stay after the last sign of life, ms; and how long Escape waits for the second press.
 */
#define BAR_STAYS 4000
/* How near to the upper or lower edge the pointer calls them, of the height. */
#define EDGE 0.07
/* Sizes of type, of the height. */
#define HINT_SIZE (1.0 / 48)
#define READING_SIZE (1.0 / 20)
#define STRIP_SIZE (1.0 / 25)
/* A frame that comes later than this counts as this, s. */
#define LONGEST_FRAME 0.25
#define TIME_DIGITS 2

struct _TbClinicWindow
{
  GtkWindow parent_instance;

  /* Template */
  GtkStack *stack;
  TbSlidePicture *slide;
  GtkLabel *reading;
  GtkLabel *scale;
  GtkWidget *throw_page;
  TbStripPicture *before;
  TbStripPicture *after;
  TbStripPicture *both;
  GtkWidget *foot;
  GtkLabel *hint;
  GtkLabel *place;
  GtkRevealer *bar;
  GtkLabel *bar_words;
  GtkWidget *throw_controls;

  TbClinic *clinic;
  GtkWindow *presenter; /* NULL while there is none */
  TbProjector *projector;
  gboolean own_screen;       /* nothing but the slides is on it */
  gboolean presenter_chosen; /* the person opened or closed the notes */
  guint tick;                /* 0: time stands still */
  gint64 last_time;          /* µs of the frame clock; 0 before the first frame */
  guint bar_timer;
  gboolean leaving;  /* Escape was pressed once */
  gboolean told_end; /* what is said of the throw's slide is how it ended */
  guint size_idle;
  int height; /* that the sizes of type suit */
};

G_DEFINE_FINAL_TYPE (TbClinicWindow, tb_clinic_window, GTK_TYPE_WINDOW)

static TbSession *
session_of (TbClinicWindow *self)
{
  return tb_clinic_get_session (self->clinic);
}

/* What a screen reader reads, since it is what it stands on. */
static void
focus_shown (TbClinicWindow *self)
{
  gboolean throwing = tb_clinic_get_slide (self->clinic) == TB_CLINIC_THROW;

  gtk_widget_grab_focus (throwing ? self->throw_page : GTK_WIDGET (self->slide));
}

/* Controls. */

static void
hide_bar (TbClinicWindow *self)
{
  g_clear_handle_id (&self->bar_timer, g_source_remove);
  self->leaving = FALSE;
  gtk_revealer_set_reveal_child (self->bar, FALSE);
  focus_shown (self);
  gtk_widget_set_cursor_from_name (GTK_WIDGET (self), "none");
}

static gboolean
on_bar_timer (gpointer data)
{
  TbClinicWindow *self = data;

  self->bar_timer = 0;
  hide_bar (self);
  return G_SOURCE_REMOVE;
}

static void
show_bar (TbClinicWindow *self, const char *words)
{
  g_clear_handle_id (&self->bar_timer, g_source_remove);
  self->bar_timer = g_timeout_add (BAR_STAYS, on_bar_timer, self);
  gtk_label_set_text (self->bar_words, words);
  gtk_widget_set_visible (GTK_WIDGET (self->bar_words), words[0] != '\0');
  gtk_widget_set_cursor (GTK_WIDGET (self), NULL);
  gtk_revealer_set_reveal_child (self->bar, TRUE);
}

gboolean
tb_clinic_window_get_bar_shown (TbClinicWindow *self)
{
  return gtk_revealer_get_reveal_child (self->bar);
}

/* Once it says what the next press does; the next press leaves full screen. Nothing is lost either way. */
static void
escape (TbClinicWindow *self)
{
  gboolean full = gtk_window_is_fullscreen (GTK_WINDOW (self));

  if (full && self->leaving)
    {
      hide_bar (self);
      tb_projector_let_go (self->projector);
      gtk_window_unfullscreen (GTK_WINDOW (self));
      return;
    }
  show_bar (self, full ? _ ("Escape once more leaves full screen.")
                       : _ ("Ctrl+W closes the clinic; F11 is full screen."));
  self->leaving = full;
}

static void
on_motion (TbClinicWindow *self, double x, double y)
{
  double height = gtk_widget_get_height (GTK_WIDGET (self));

  if (tb_clinic_is_blank (self->clinic))
    return;
  if (y < EDGE * height || y > (1 - EDGE) * height
      || (tb_clinic_window_get_bar_shown (self) && !self->leaving))
    show_bar (self, "");
}

/* The presenter's window. */

static void
on_presenter_gone (gpointer data, GObject *presenter)
{
  TB_CLINIC_WINDOW (data)->presenter = NULL;
  TB_CLINIC_WINDOW (data)->presenter_chosen = TRUE;
}

static void
on_presenter_action (TbClinicWindow *self, guint action)
{
  /* Who goes through the notes' own controls needs none over the slides. */
  if (action != TB_CLINIC_SHOW_BAR)
    tb_clinic_window_act (self, (TbClinicAction) action);
}

static void
open_presenter (TbClinicWindow *self)
{
  GtkWindow *study = gtk_window_get_transient_for (GTK_WINDOW (self));

  if (self->presenter == NULL)
    {
      /* Beside the study, not over the slides: window managers put a window over the one it belongs to. */
      self->presenter
          = GTK_WINDOW (tb_presenter_window_new (study != NULL ? study : GTK_WINDOW (self), self->clinic));
      g_object_weak_ref (G_OBJECT (self->presenter), on_presenter_gone, self);
      g_signal_connect_object (self->presenter, "action", G_CALLBACK (on_presenter_action), self,
                               G_CONNECT_SWAPPED);
    }
  gtk_window_present (self->presenter);
}

static void
close_presenter (TbClinicWindow *self)
{
  GtkWindow *presenter = self->presenter;

  if (presenter == NULL)
    return;
  g_object_weak_unref (G_OBJECT (presenter), on_presenter_gone, self);
  self->presenter = NULL;
  gtk_window_destroy (presenter);
}

static void
toggle_presenter (TbClinicWindow *self)
{
  self->presenter_chosen = TRUE;
  if (self->presenter != NULL)
    close_presenter (self);
  else
    open_presenter (self);
}

/* The room has got a screen of its own, or has lost it: the notes come by themselves, and never lie over the
 * slides. */
static void
on_arrived (TbClinicWindow *self)
{
  gboolean own_screen = tb_projector_has_own_screen (self->projector);

  if (own_screen == self->own_screen)
    return;
  self->own_screen = own_screen;
  if (own_screen && !self->presenter_chosen)
    open_presenter (self);
  gtk_window_present (GTK_WINDOW (self));
}

static void
toggle_fullscreen (TbClinicWindow *self)
{
  tb_projector_let_go (self->projector);
  if (gtk_window_is_fullscreen (GTK_WINDOW (self)))
    gtk_window_unfullscreen (GTK_WINDOW (self));
  else
    gtk_window_fullscreen (GTK_WINDOW (self));
}

void
tb_clinic_window_act (TbClinicWindow *self, TbClinicAction action)
{
  if (action != TB_CLINIC_LEAVE)
    self->leaving = FALSE;
  switch (action)
    {
    case TB_CLINIC_LEAVE:
      escape (self);
      break;
    case TB_CLINIC_SHOW_BAR:
      show_bar (self, "");
      break;
    case TB_CLINIC_PRESENTER:
      toggle_presenter (self);
      break;
    case TB_CLINIC_FULLSCREEN:
      toggle_fullscreen (self);
      break;
    default:
      tb_clinic_do (self->clinic, action);
    }
}

/* Who uses the keys needs no controls: they go out of the way of what comes. */
static void
on_key_action (GtkWidget *widget, TbClinicAction action)
{
  TbClinicWindow *self = TB_CLINIC_WINDOW (widget);

  if (action < TB_CLINIC_SHOW_BAR && tb_clinic_window_get_bar_shown (self))
    hide_bar (self);
  tb_clinic_window_act (self, action);
}

static void
on_picked (TbClinicWindow *self, guint item)
{
  if (tb_clinic_get_slide (self->clinic) == TB_CLINIC_START)
    tb_clinic_choose (self->clinic, item);
  else if (tb_clinic_get_slide (self->clinic) == TB_CLINIC_VOTE)
    tb_clinic_do (self->clinic, (TbClinicAction) (TB_CLINIC_VOTE_FIRST + item));
}

/* The throw. */

static gboolean
on_tick (GtkWidget *widget, GdkFrameClock *clock, gpointer user_data)
{
  TbClinicWindow *self = TB_CLINIC_WINDOW (widget);
  gint64 now = gdk_frame_clock_get_frame_time (clock);
  double seconds = self->last_time == 0 ? 0 : (double) (now - self->last_time) / G_USEC_PER_SEC;

  self->last_time = now;
  tb_session_advance (session_of (self), MIN (seconds, LONGEST_FRAME));
  return G_SOURCE_CONTINUE;
}

static void
stop_ticking (TbClinicWindow *self)
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
describe_throw (TbClinicWindow *self)
{
  TbSession *session = session_of (self);
  TbUnits units = tb_session_get_units (session);
  g_autofree char *before = tb_describe_run (tb_session_get_run (session, TB_SIDE_BEFORE), units);
  g_autofree char *after = tb_describe_run (tb_session_get_run (session, TB_SIDE_AFTER), units);
  g_autofree char *ends = g_strdup_printf (_ ("Before: %s After: %s"), before, after);
  g_autofree char *hint = tb_clinic_hint (self->clinic);

  self->told_end = is_over (session);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->throw_page), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION,
                                  self->told_end ? ends : hint, -1);
}

static void
show_reading (TbClinicWindow *self)
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
on_playing_changed (TbClinicWindow *self)
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
show_still (TbClinicWindow *self)
{
  gboolean enabled = TRUE;

  g_object_get (gtk_widget_get_settings (GTK_WIDGET (self)), "gtk-enable-animations", &enabled, NULL);
  tb_clinic_set_still (self->clinic, !enabled);
}

static void
show_throw (TbClinicWindow *self)
{
  gboolean overlaid = tb_clinic_is_overlaid (self->clinic);

  gtk_widget_set_visible (GTK_WIDGET (self->before), !overlaid);
  gtk_widget_set_visible (GTK_WIDGET (self->after), !overlaid);
  gtk_widget_set_visible (GTK_WIDGET (self->both), overlaid);
  show_reading (self);
}

static void
show_place (TbClinicWindow *self)
{
  g_autofree char *text = NULL, *hint = tb_clinic_hint (self->clinic);
  guint n = tb_clinic_get_n_slides (self->clinic);

  if (n > 0)
    /* Translators: place of a slide, how many there are, what it is: "3 of 6: The throw". */
    text = g_strdup_printf (_ ("%u of %u: %s"), tb_clinic_get_place (self->clinic) + 1, n,
                            tb_clinic_slide_name (tb_clinic_get_slide (self->clinic)));
  gtk_label_set_text (self->place, text != NULL ? text : _ ("Clinic"));
  gtk_label_set_text (self->hint, hint);
}

static void
show_clinic (TbClinicWindow *self)
{
  gboolean throwing = tb_clinic_get_slide (self->clinic) == TB_CLINIC_THROW,
           blank = tb_clinic_is_blank (self->clinic);

  tb_slide_picture_set_page (self->slide, tb_clinic_page_new (self->clinic));
  show_place (self);
  show_throw (self);
  gtk_widget_set_visible (self->throw_controls, throwing);
  gtk_widget_set_visible (self->foot, !blank);
  if (blank)
    hide_bar (self);
  if (throwing)
    {
      tb_accessible_set_name (self->throw_page, tb_clinic_get_step (self->clinic)->question);
      describe_throw (self);
    }
  gtk_stack_set_visible_child_name (self->stack, blank ? "blank" : throwing ? "throw" : "slide");
  if (!tb_clinic_window_get_bar_shown (self))
    focus_shown (self);
}

/* Sizes of type follow the screen. */

static void
set_label_size (GtkLabel *label, double px)
{
  PangoAttrList *list = pango_attr_list_new ();

  pango_attr_list_insert (list, pango_attr_size_new_absolute ((int) (px * PANGO_SCALE)));
  gtk_label_set_attributes (label, list);
  pango_attr_list_unref (list);
}

static gboolean
update_sizes (gpointer data)
{
  TbClinicWindow *self = data;

  self->size_idle = 0;
  set_label_size (self->hint, HINT_SIZE * self->height);
  set_label_size (self->place, HINT_SIZE * self->height);
  set_label_size (self->scale, HINT_SIZE * self->height);
  set_label_size (self->reading, READING_SIZE * self->height);
  tb_strip_picture_set_text_size (self->before, STRIP_SIZE * self->height);
  tb_strip_picture_set_text_size (self->after, STRIP_SIZE * self->height);
  tb_strip_picture_set_text_size (self->both, STRIP_SIZE * self->height);
  tb_style_set_text_size (GTK_WIDGET (self), tb_style_suitable_text_size (
                                                 gtk_widget_get_width (GTK_WIDGET (self)), self->height));
  return G_SOURCE_REMOVE;
}

static void
tb_clinic_window_size_allocate (GtkWidget *widget, int width, int height, int baseline)
{
  TbClinicWindow *self = TB_CLINIC_WINDOW (widget);

  GTK_WIDGET_CLASS (tb_clinic_window_parent_class)->size_allocate (widget, width, height, baseline);
  /* Never inside a layout: the size of text changes the layout. */
  if (self->height != height && self->size_idle == 0)
    self->size_idle = g_idle_add (update_sizes, self);
  self->height = height;
}

TbSlidePicture *
tb_clinic_window_get_slide (TbClinicWindow *self)
{
  return self->slide;
}

TbStripPicture *
tb_clinic_window_get_strip (TbClinicWindow *self, TbStripRuns runs)
{
  TbStripPicture *const strips[] = { self->before, self->after, self->both };

  return strips[runs];
}

GtkWindow *
tb_clinic_window_get_presenter (TbClinicWindow *self)
{
  return self->presenter;
}

void
tb_clinic_window_present (TbClinicWindow *self)
{
  tb_projector_present (self->projector);
}

static void
bind_session (TbClinicWindow *self)
{
  TbSession *session = session_of (self);
  GtkSettings *settings = gtk_widget_get_settings (GTK_WIDGET (self));

  tb_picture_set_session (TB_PICTURE (self->before), session);
  tb_picture_set_session (TB_PICTURE (self->after), session);
  tb_picture_set_session (TB_PICTURE (self->both), session);
  g_signal_connect_object (session, "notify::time", G_CALLBACK (show_reading), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (session, "notify::rate", G_CALLBACK (show_reading), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (session, "notify::playing", G_CALLBACK (on_playing_changed), self,
                           G_CONNECT_SWAPPED);
  g_signal_connect_object (session, "notify::units", G_CALLBACK (show_clinic), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (settings, "notify::gtk-enable-animations", G_CALLBACK (show_still), self,
                           G_CONNECT_SWAPPED);
}

TbClinicWindow *
tb_clinic_window_new (GtkWindow *parent, TbClinic *clinic)
{
  TbClinicWindow *self
      = g_object_new (TB_TYPE_CLINIC_WINDOW, "transient-for", parent, "destroy-with-parent", TRUE, NULL);

  self->clinic = g_object_ref (clinic);
  self->projector = tb_projector_new (GTK_WINDOW (self), parent);
  g_signal_connect_object (self->projector, "arrived", G_CALLBACK (on_arrived), self, G_CONNECT_SWAPPED);
  bind_session (self);
  g_signal_connect_object (clinic, "changed", G_CALLBACK (show_clinic), self, G_CONNECT_SWAPPED);
  show_still (self);
  show_clinic (self);
  hide_bar (self);
  return self;
}

static void
tb_clinic_window_dispose (GObject *object)
{
  TbClinicWindow *self = TB_CLINIC_WINDOW (object);

  close_presenter (self);
  g_clear_object (&self->projector);
  stop_ticking (self);
  g_clear_handle_id (&self->bar_timer, g_source_remove);
  g_clear_handle_id (&self->size_idle, g_source_remove);
  if (self->clinic != NULL)
    tb_session_set_playing (session_of (self), FALSE);
  g_clear_object (&self->clinic);
  G_OBJECT_CLASS (tb_clinic_window_parent_class)->dispose (object);
}

/* Actions of the controls. */

static const struct
{
  const char *name;
  TbClinicAction action;
} actions[] = {
  { "clinic.back", TB_CLINIC_BACK },
  { "clinic.onward", TB_CLINIC_ONWARD },
  { "clinic.replay", TB_CLINIC_REPLAY },
  { "clinic.freeze", TB_CLINIC_FREEZE },
  { "clinic.frame-back", TB_CLINIC_FRAME_BACK },
  { "clinic.frame-on", TB_CLINIC_FRAME_ON },
  { "clinic.slower", TB_CLINIC_DOWN },
  { "clinic.faster", TB_CLINIC_UP },
  { "clinic.overlay", TB_CLINIC_OVERLAY },
  { "clinic.blank", TB_CLINIC_BLANK },
  { "clinic.presenter", TB_CLINIC_PRESENTER },
  { "clinic.fullscreen", TB_CLINIC_FULLSCREEN },
};

static void
act (GtkWidget *widget, const char *name, GVariant *parameter)
{
  TbClinicWindow *self = TB_CLINIC_WINDOW (widget);

  for (gsize i = 0; i < G_N_ELEMENTS (actions); i++)
    if (g_str_equal (name, actions[i].name))
      tb_clinic_window_act (self, actions[i].action);
  if (tb_clinic_window_get_bar_shown (self))
    show_bar (self, "");
}

static void
bind_template (GtkWidgetClass *widget_class)
{
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/io/github/tenboard/Tenboard/ui/tb-clinic-window.ui");
  gtk_widget_class_bind_template_child (widget_class, TbClinicWindow, stack);
  gtk_widget_class_bind_template_child (widget_class, TbClinicWindow, slide);
  gtk_widget_class_bind_template_child (widget_class, TbClinicWindow, reading);
  gtk_widget_class_bind_template_child (widget_class, TbClinicWindow, scale);
  gtk_widget_class_bind_template_child (widget_class, TbClinicWindow, before);
  gtk_widget_class_bind_template_child (widget_class, TbClinicWindow, throw_page);
  gtk_widget_class_bind_template_child (widget_class, TbClinicWindow, after);
  gtk_widget_class_bind_template_child (widget_class, TbClinicWindow, both);
  gtk_widget_class_bind_template_child (widget_class, TbClinicWindow, foot);
  gtk_widget_class_bind_template_child (widget_class, TbClinicWindow, hint);
  gtk_widget_class_bind_template_child (widget_class, TbClinicWindow, place);
  gtk_widget_class_bind_template_child (widget_class, TbClinicWindow, bar);
  gtk_widget_class_bind_template_child (widget_class, TbClinicWindow, bar_words);
  gtk_widget_class_bind_template_child (widget_class, TbClinicWindow, throw_controls);
  gtk_widget_class_bind_template_callback (widget_class, on_picked);
}

static void
tb_clinic_window_class_init (TbClinicWindowClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = tb_clinic_window_dispose;
  widget_class->size_allocate = tb_clinic_window_size_allocate;
  g_type_ensure (TB_TYPE_SLIDE_PICTURE);
  g_type_ensure (TB_TYPE_STRIP_PICTURE);
  bind_template (widget_class);
  for (gsize i = 0; i < G_N_ELEMENTS (actions); i++)
    gtk_widget_class_install_action (widget_class, actions[i].name, NULL, act);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_w, GDK_CONTROL_MASK, "window.close", NULL);
}

static void
tb_clinic_window_init (TbClinicWindow *self)
{
  GtkEventController *motion = gtk_event_controller_motion_new ();

  gtk_widget_init_template (GTK_WIDGET (self));
  tb_strip_picture_set_runs (self->before, TB_STRIP_BEFORE);
  tb_strip_picture_set_runs (self->after, TB_STRIP_AFTER);
  tb_strip_picture_set_runs (self->both, TB_STRIP_BOTH);
  tb_clinic_remote_attach (GTK_WIDGET (self), on_key_action);
  gtk_event_controller_set_propagation_phase (motion, GTK_PHASE_CAPTURE);
  g_signal_connect_swapped (motion, "motion", G_CALLBACK (on_motion), self);
  gtk_widget_add_controller (GTK_WIDGET (self), motion);
}
