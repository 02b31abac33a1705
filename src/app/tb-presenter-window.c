/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "tb-presenter-window.h"

#include <glib/gi18n-lib.h>

#include "tb-accessible.h"
#include "tb-clinic-page.h"
#include "tb-clinic-remote.h"
#include "tb-style.h"

#define SECONDS_IN_MINUTE 60

struct _TbPresenterWindow
{
  GtkWindow parent_instance;

  /* Template */
  GtkLabel *place;
  GtkLabel *clock;
  GtkLabel *now;
  GtkLabel *answer;
  GtkLabel *notes;
  GtkLabel *next;
  GtkGrid *tally;
  GtkWidget *votes_title;
  GtkWidget *clear;

  TbClinic *clinic;
  const TbTalkStep *tallied; /* whose choices the tally has; borrowed */
  GtkLabel *counts[TB_TALK_MAX_CHOICES];
  gint64 began; /* µs, monotonic */
  guint timer;
};

enum
{
  ACTION,
  N_SIGNALS
};
static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (TbPresenterWindow, tb_presenter_window, GTK_TYPE_WINDOW)

/* Votes. */

static void
on_vote (GtkButton *button, gpointer clinic)
{
  guint choice = GPOINTER_TO_UINT (g_object_get_data (G_OBJECT (button), "choice"));
  int more = GPOINTER_TO_INT (g_object_get_data (G_OBJECT (button), "more"));

  tb_clinic_vote (clinic, choice, more);
}

static GtkWidget *
vote_button (TbPresenterWindow *self, guint choice, int more)
{
  GtkWidget *button = gtk_button_new_with_label (more > 0 ? "+" : "−");
  const char *text = self->tallied->choices->pdata[choice];
  g_autofree char *name = more > 0 ? g_strdup_printf (_ ("One vote more: %s"), text)
                                   : g_strdup_printf (_ ("One vote less: %s"), text);

  g_object_set_data (G_OBJECT (button), "choice", GUINT_TO_POINTER (choice));
  g_object_set_data (G_OBJECT (button), "more", GINT_TO_POINTER (more));
  g_signal_connect_object (button, "clicked", G_CALLBACK (on_vote), self->clinic, 0);
  tb_accessible_set_name (button, name);
  return button;
}

static void
add_choice (TbPresenterWindow *self, guint choice)
{
  g_autofree char *text
      = g_strdup_printf ("%u. %s", choice + 1, (char *) self->tallied->choices->pdata[choice]);
  GtkWidget *name = gtk_label_new (text), *count = gtk_label_new ("0");

  gtk_label_set_xalign (GTK_LABEL (name), 0);
  gtk_label_set_wrap (GTK_LABEL (name), TRUE);
  gtk_widget_set_hexpand (name, TRUE);
  gtk_label_set_width_chars (GTK_LABEL (count), 3);
  if ((int) choice == self->tallied->right)
    gtk_widget_add_css_class (name, "after");
  gtk_grid_attach (self->tally, name, 0, (int) choice, 1, 1);
  gtk_grid_attach (self->tally, vote_button (self, choice, -1), 1, (int) choice, 1, 1);
  gtk_grid_attach (self->tally, count, 2, (int) choice, 1, 1);
  gtk_grid_attach (self->tally, vote_button (self, choice, 1), 3, (int) choice, 1, 1);
  self->counts[choice] = GTK_LABEL (count);
}

static void
make_tally (TbPresenterWindow *self, const TbTalkStep *step)
{
  GtkWidget *child;

  if (step == self->tallied)
    return;
  while ((child = gtk_widget_get_first_child (GTK_WIDGET (self->tally))) != NULL)
    gtk_grid_remove (self->tally, child);
  self->tallied = step;
  for (guint i = 0; step != NULL && i < step->choices->len && i < TB_TALK_MAX_CHOICES; i++)
    add_choice (self, i);
}

static void
show_votes (TbPresenterWindow *self)
{
  const TbTalkStep *step = tb_clinic_get_step (self->clinic);

  make_tally (self, step);
  gtk_widget_set_visible (self->votes_title, step != NULL);
  gtk_widget_set_visible (self->clear, step != NULL);
  for (guint i = 0; step != NULL && i < step->choices->len && i < TB_TALK_MAX_CHOICES; i++)
    {
      g_autofree char *count = g_strdup_printf ("%u", tb_clinic_get_votes (self->clinic, i));

      gtk_label_set_text (self->counts[i], count);
    }
}

/* Words. */

static void
show_label (GtkLabel *label, const char *text)
{
  gtk_label_set_text (label, text != NULL ? text : "");
  gtk_widget_set_visible (GTK_WIDGET (label), text != NULL && text[0] != '\0');
}

static void
show_answer (TbPresenterWindow *self, const TbTalkStep *step)
{
  const char *answer = step != NULL ? tb_clinic_answer (step) : NULL;
  g_autofree char *text = NULL;

  if (answer != NULL)
    text = g_strdup_printf (_ ("The answer: %s"), answer);
  else if (step != NULL)
    text = g_strdup (_ ("The throws do not tell."));
  show_label (self->answer, text);
}

static void
show_next (TbPresenterWindow *self)
{
  const TbTalkStep *step = tb_clinic_get_next_step (self->clinic);
  g_autofree char *text = NULL;

  if (step == NULL)
    text = g_strdup (tb_clinic_get_slide (self->clinic) == TB_CLINIC_START ? _ ("Next: the talk begins.")
                                                                           : _ ("This is the last slide."));
  else
    text = g_strdup_printf (_ ("Next: %s"), tb_clinic_slide_name (tb_clinic_get_next_slide (self->clinic)));
  show_label (self->next, text);
}

static void
show_place (TbPresenterWindow *self)
{
  guint n = tb_clinic_get_n_slides (self->clinic);
  g_autofree char *text = n > 0
                              ? g_strdup_printf (_ ("%u of %u: %s"), tb_clinic_get_place (self->clinic) + 1,
                                                 n, tb_clinic_slide_name (tb_clinic_get_slide (self->clinic)))
                              : g_strdup (tb_clinic_slide_name (TB_CLINIC_START));
  g_autofree char *blank = g_strdup_printf (_ ("%s (the screen is blank)"), text);

  gtk_label_set_text (self->place, tb_clinic_is_blank (self->clinic) ? blank : text);
}

static void
show_clinic (TbPresenterWindow *self)
{
  g_autoptr (TbClinicPage) page = tb_clinic_page_new (self->clinic);
  g_autofree char *now = tb_clinic_page_sentences (page);
  const TbTalkStep *step = tb_clinic_get_step (self->clinic);

  show_place (self);
  show_label (self->now, now);
  show_answer (self, step);
  show_label (self->notes, step != NULL ? step->notes : NULL);
  show_next (self);
  show_votes (self);
}

/* The time of day, and how long the talk has been going on. */
static gboolean
show_clock (gpointer data)
{
  TbPresenterWindow *self = data;
  g_autoptr (GDateTime) now = g_date_time_new_now_local ();
  g_autofree char *time = g_date_time_format (now, "%H:%M");
  gint64 seconds = (g_get_monotonic_time () - self->began) / G_USEC_PER_SEC;
  /* Translators: time of day, then minutes and seconds since the talk began. */
  g_autofree char *text
      = g_strdup_printf (_ ("%s · %d:%02d since the start"), time, (int) (seconds / SECONDS_IN_MINUTE),
                         (int) (seconds % SECONDS_IN_MINUTE));

  gtk_label_set_text (self->clock, text);
  return G_SOURCE_CONTINUE;
}

const char *
tb_presenter_window_get_answer (TbPresenterWindow *self)
{
  return gtk_label_get_text (self->answer);
}

static void
on_key_action (GtkWidget *widget, TbClinicAction action)
{
  g_signal_emit (widget, signals[ACTION], 0, (guint) action);
}

static void
on_back (GtkWidget *widget)
{
  on_key_action (widget, TB_CLINIC_BACK);
}

static void
on_onward (GtkWidget *widget)
{
  on_key_action (widget, TB_CLINIC_ONWARD);
}

static void
on_freeze (GtkWidget *widget)
{
  on_key_action (widget, TB_CLINIC_FREEZE);
}

static void
on_blank (GtkWidget *widget)
{
  on_key_action (widget, TB_CLINIC_BLANK);
}

static void
on_clear (TbPresenterWindow *self)
{
  tb_clinic_clear_votes (self->clinic);
}

TbPresenterWindow *
tb_presenter_window_new (GtkWindow *parent, TbClinic *clinic)
{
  TbPresenterWindow *self = g_object_new (TB_TYPE_PRESENTER_WINDOW, "transient-for", parent, NULL);

  tb_style_set_text_size (GTK_WIDGET (self), tb_style_get_text_size (GTK_WIDGET (parent)));
  self->clinic = g_object_ref (clinic);
  g_signal_connect_object (clinic, "changed", G_CALLBACK (show_clinic), self, G_CONNECT_SWAPPED);
  show_clinic (self);
  show_clock (self);
  return self;
}

static void
tb_presenter_window_dispose (GObject *object)
{
  TbPresenterWindow *self = TB_PRESENTER_WINDOW (object);

  g_clear_handle_id (&self->timer, g_source_remove);
  g_clear_object (&self->clinic);
  G_OBJECT_CLASS (tb_presenter_window_parent_class)->dispose (object);
}

static void
tb_presenter_window_class_init (TbPresenterWindowClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = tb_presenter_window_dispose;
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/io/github/tenboard/Tenboard/ui/tb-presenter-window.ui");
  gtk_widget_class_bind_template_child (widget_class, TbPresenterWindow, place);
  gtk_widget_class_bind_template_child (widget_class, TbPresenterWindow, clock);
  gtk_widget_class_bind_template_child (widget_class, TbPresenterWindow, now);
  gtk_widget_class_bind_template_child (widget_class, TbPresenterWindow, answer);
  gtk_widget_class_bind_template_child (widget_class, TbPresenterWindow, notes);
  gtk_widget_class_bind_template_child (widget_class, TbPresenterWindow, next);
  gtk_widget_class_bind_template_child (widget_class, TbPresenterWindow, tally);
  gtk_widget_class_bind_template_child (widget_class, TbPresenterWindow, votes_title);
  gtk_widget_class_bind_template_child (widget_class, TbPresenterWindow, clear);
  gtk_widget_class_bind_template_callback (widget_class, on_back);
  gtk_widget_class_bind_template_callback (widget_class, on_onward);
  gtk_widget_class_bind_template_callback (widget_class, on_freeze);
  gtk_widget_class_bind_template_callback (widget_class, on_blank);
  gtk_widget_class_bind_template_callback (widget_class, on_clear);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_w, GDK_CONTROL_MASK, "window.close", NULL);
  signals[ACTION] = g_signal_new ("action", TB_TYPE_PRESENTER_WINDOW, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                  G_TYPE_NONE, 1, G_TYPE_UINT);
}

static void
tb_presenter_window_init (TbPresenterWindow *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  self->began = g_get_monotonic_time ();
  self->timer = g_timeout_add_seconds (1, show_clock, self);
  tb_clinic_remote_attach (GTK_WIDGET (self), on_key_action);
}
