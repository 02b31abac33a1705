/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "tb-clinic-window.h"

#include <glib/gi18n-lib.h>

#include "tb-clinic-bar.h"
#include "tb-clinic-page.h"
#include "tb-clinic-remote.h"
#include "tb-clinic-throw-page.h"
#include "tb-clinic-words.h"
#include "tb-presenter-window.h"
#include "tb-projector.h"
#include "tb-slide-picture.h"
#include "tb-style.h"

/* How near to the upper or lower edge the pointer calls the controls, of the height. */
#define EDGE 0.07
/* Sizes of type, of the height. */
#define HINT_SIZE (1.0 / 48)

struct _TbClinicWindow
{
  GtkWindow parent_instance;

  /* Template */
  GtkStack *stack;
  TbSlidePicture *slide;
  TbClinicThrowPage *throw_page;
  GtkWidget *foot;
  GtkLabel *hint;
  GtkLabel *place;
  TbClinicBar *bar;

  TbClinic *clinic;
  GtkWindow *presenter; /* NULL while there is none */
  TbProjector *projector;
  gboolean own_screen;       /* nothing but the slides is on it */
  gboolean presenter_chosen; /* the person opened or closed the notes */
  gboolean leaving;          /* Escape was pressed once, and what it said is still to be read */
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

  gtk_widget_grab_focus (throwing ? GTK_WIDGET (self->throw_page) : GTK_WIDGET (self->slide));
}

/* Controls. */

static void
on_bar_hidden (TbClinicWindow *self)
{
  self->leaving = FALSE;
  focus_shown (self);
  gtk_widget_set_cursor_from_name (GTK_WIDGET (self), "none");
}

static void
show_bar (TbClinicWindow *self, const char *words)
{
  gtk_widget_set_cursor (GTK_WIDGET (self), NULL);
  tb_clinic_bar_show (self->bar, words);
}

/* Once it says what the next press does; the next press leaves full screen. Nothing is lost either way. */
static void
escape (TbClinicWindow *self)
{
  gboolean full = gtk_window_is_fullscreen (GTK_WINDOW (self));

  if (full && self->leaving)
    {
      tb_clinic_bar_hide (self->bar);
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
  if (y < EDGE * height || y > (1 - EDGE) * height || (tb_clinic_bar_is_shown (self->bar) && !self->leaving))
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

  if (action < TB_CLINIC_SHOW_BAR && tb_clinic_bar_is_shown (self->bar))
    tb_clinic_bar_hide (self->bar);
  tb_clinic_window_act (self, action);
}

/* Who presses one button may want another. */
static void
on_bar_action (TbClinicWindow *self, guint action)
{
  tb_clinic_window_act (self, (TbClinicAction) action);
  if (tb_clinic_bar_is_shown (self->bar))
    show_bar (self, "");
}

static void
on_picked (TbClinicWindow *self, guint item)
{
  if (tb_clinic_get_slide (self->clinic) == TB_CLINIC_START)
    tb_clinic_choose (self->clinic, item);
  else if (tb_clinic_get_slide (self->clinic) == TB_CLINIC_VOTE)
    tb_clinic_do (self->clinic, (TbClinicAction) (TB_CLINIC_VOTE_FIRST + item));
}

static void
show_still (TbClinicWindow *self)
{
  gboolean enabled = TRUE;

  g_object_get (gtk_widget_get_settings (GTK_WIDGET (self)), "gtk-enable-animations", &enabled, NULL);
  tb_clinic_set_still (self->clinic, !enabled);
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
  tb_clinic_bar_set_throwing (self->bar, throwing);
  gtk_widget_set_visible (self->foot, !blank);
  if (blank)
    tb_clinic_bar_hide (self->bar);
  gtk_stack_set_visible_child_name (self->stack, blank ? "blank" : throwing ? "throw" : "slide");
  if (!tb_clinic_bar_is_shown (self->bar))
    focus_shown (self);
}

/* Sizes of type follow the screen. */

static gboolean
update_sizes (gpointer data)
{
  TbClinicWindow *self = data;

  self->size_idle = 0;
  tb_style_set_label_size (self->hint, HINT_SIZE * self->height);
  tb_style_set_label_size (self->place, HINT_SIZE * self->height);
  tb_clinic_throw_page_set_height (self->throw_page, self->height);
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
follow (TbClinicWindow *self)
{
  GtkSettings *settings = gtk_widget_get_settings (GTK_WIDGET (self));

  g_signal_connect_object (self->clinic, "changed", G_CALLBACK (show_clinic), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (session_of (self), "notify::units", G_CALLBACK (show_clinic), self,
                           G_CONNECT_SWAPPED);
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
  tb_clinic_throw_page_set_clinic (self->throw_page, clinic);
  follow (self);
  show_still (self);
  show_clinic (self);
  tb_clinic_bar_hide (self->bar);
  return self;
}

static void
tb_clinic_window_dispose (GObject *object)
{
  TbClinicWindow *self = TB_CLINIC_WINDOW (object);

  close_presenter (self);
  g_clear_object (&self->projector);
  g_clear_handle_id (&self->size_idle, g_source_remove);
  if (self->clinic != NULL)
    tb_session_set_playing (session_of (self), FALSE);
  g_clear_object (&self->clinic);
  G_OBJECT_CLASS (tb_clinic_window_parent_class)->dispose (object);
}

static void
bind_template (GtkWidgetClass *widget_class)
{
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/io/github/tenboard/Tenboard/ui/tb-clinic-window.ui");
  gtk_widget_class_bind_template_child (widget_class, TbClinicWindow, stack);
  gtk_widget_class_bind_template_child (widget_class, TbClinicWindow, slide);
  gtk_widget_class_bind_template_child (widget_class, TbClinicWindow, throw_page);
  gtk_widget_class_bind_template_child (widget_class, TbClinicWindow, foot);
  gtk_widget_class_bind_template_child (widget_class, TbClinicWindow, hint);
  gtk_widget_class_bind_template_child (widget_class, TbClinicWindow, place);
  gtk_widget_class_bind_template_child (widget_class, TbClinicWindow, bar);
  gtk_widget_class_bind_template_callback (widget_class, on_bar_action);
  gtk_widget_class_bind_template_callback (widget_class, on_bar_hidden);
  gtk_widget_class_bind_template_callback (widget_class, on_picked);
}

static void
tb_clinic_window_class_init (TbClinicWindowClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = tb_clinic_window_dispose;
  widget_class->size_allocate = tb_clinic_window_size_allocate;
  g_type_ensure (TB_TYPE_SLIDE_PICTURE);
  g_type_ensure (TB_TYPE_CLINIC_THROW_PAGE);
  g_type_ensure (TB_TYPE_CLINIC_BAR);
  bind_template (widget_class);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_w, GDK_CONTROL_MASK, "window.close", NULL);
}

static void
tb_clinic_window_init (TbClinicWindow *self)
{
  GtkEventController *motion = gtk_event_controller_motion_new ();

  gtk_widget_init_template (GTK_WIDGET (self));
  tb_clinic_remote_attach (GTK_WIDGET (self), on_key_action);
  gtk_event_controller_set_propagation_phase (motion, GTK_PHASE_CAPTURE);
  g_signal_connect_swapped (motion, "motion", G_CALLBACK (on_motion), self);
  gtk_widget_add_controller (GTK_WIDGET (self), motion);
}
