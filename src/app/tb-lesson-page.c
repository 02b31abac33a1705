/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "tb-lesson-page.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#include "tb-accessible.h"
#include "tb-children.h"
#include "tb-disclosure.h"
#include "tb-folding-label.h"
#include "tb-fill.h"
#include "tb-guess-grip.h"
#include "tb-lesson-words.h"
#include "tb-why.h"

struct _TbLessonPage
{
  GtkWidget parent_instance;

  /* Template */
  GtkScrolledWindow *scroller;
  GtkLabel *place;
  GtkLabel *name;
  GtkLabel *problem;
  GtkSpinner *spinner;
  GtkWidget *asking;
  GtkLabel *text;
  GtkLabel *before;
  GtkLabel *after;
  GtkWidget *question_box;
  GtkLabel *question;
  GtkWidget *choices;
  GtkWidget *marker_row;
  GtkSpinButton *board;
  GtkWidget *revealed;
  GtkLabel *verdict;
  GtkLabel *guess_words;
  GtkLabel *explanation;
  TbDisclosure *why;
  GtkLabel *why_words;
  GtkWidget *caution_box;
  GtkLabel *caution;
  TbLessonPicture *picture;
  GtkWidget *take;
  GtkWidget *show;
  GtkWidget *throw;
  GtkWidget *next;

  TbLessonRunner *runner;
  GPtrArray *choice_buttons; /* of GtkCheckButton, borrowed */
  GCancellable *cancellable; /* of the reasons that are being worked out; else NULL */
  gboolean showing;          /* widgets follow the runner, not the other way round */
  /* What was last shown. */
  const TbLessonStep *shown_step;
  TbLessonStage shown_stage;
};

G_DEFINE_FINAL_TYPE (TbLessonPage, tb_lesson_page, GTK_TYPE_WIDGET)

/* Space between paragraphs of reasons. */
#define BETWEEN_REASONS "\n\n"

static TbUnits
units_of (TbLessonPage *self)
{
  return tb_session_get_units (tb_lesson_runner_get_session (self->runner));
}

/* What is told of the step before its throw. */

static void
on_choice (TbLessonPage *self, GtkCheckButton *button)
{
  guint index;

  if (!self->showing && gtk_check_button_get_active (button)
      && g_ptr_array_find (self->choice_buttons, button, &index))
    tb_lesson_runner_set_choice (self->runner, (int) index);
}

static void
add_choice (TbLessonPage *self, const TbLessonChoice *choice)
{
  /* GTK 4.8 does not tell by itself that a grouped button is a radio button. */
  GtkWidget *button
      = g_object_new (GTK_TYPE_CHECK_BUTTON, "accessible-role", GTK_ACCESSIBLE_ROLE_RADIO, NULL);
  GtkWidget *label = gtk_label_new (tb_lesson_display (choice->text));

  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_check_button_set_child (GTK_CHECK_BUTTON (button), label);
  tb_accessible_set_name (button, tb_lesson_display (choice->text));

  if (self->choice_buttons->len > 0)
    gtk_check_button_set_group (GTK_CHECK_BUTTON (button), g_ptr_array_index (self->choice_buttons, 0));
  g_ptr_array_add (self->choice_buttons, button);
  g_signal_connect_object (button, "toggled", G_CALLBACK (on_choice), self, G_CONNECT_SWAPPED);
  gtk_box_append (GTK_BOX (self->choices), button);
}

static void
show_choices (TbLessonPage *self, const TbLessonStep *step)
{
  GtkWidget *child;

  g_ptr_array_set_size (self->choice_buttons, 0);
  while ((child = gtk_widget_get_first_child (self->choices)) != NULL)
    gtk_box_remove (GTK_BOX (self->choices), child);
  for (guint i = 0; i < step->choices->len; i++)
    add_choice (self, &g_array_index (step->choices, TbLessonChoice, i));
}

static void
show_place (TbLessonPage *self)
{
  g_autofree char *step = tb_number_text (tb_lesson_runner_get_position (self->runner) + 1, 0);
  g_autofree char *steps = tb_number_text (tb_lesson_runner_get_n_steps (self->runner), 0);
  g_autofree char *text = tb_fill_with (_ ("Step %1$s of %2$s"), step, steps, NULL);

  gtk_label_set_text (self->place, text);
}

static void
show_step (TbLessonPage *self, const TbLessonStep *step)
{
  show_place (self);
  show_choices (self, step);
  gtk_label_set_text (self->name, tb_lesson_display (step->name));
  gtk_label_set_text (self->text, tb_lesson_display (step->text));
  gtk_label_set_text (self->question, tb_lesson_display (step->question));
  gtk_label_set_text (self->caution, tb_lesson_display (step->caution));
  gtk_widget_set_visible (self->caution_box, step->caution != NULL);
  gtk_label_set_text (self->why_words, "");
  g_object_set (self->why, "expanded", FALSE, NULL);
  gtk_actionable_set_action_target (GTK_ACTIONABLE (self->take), "u",
                                    tb_lesson_runner_get_position (self->runner));
}

static void
show_set_up (TbLessonPage *self)
{
  const TbLessonThrow *thrown = tb_lesson_runner_get_thrown (self->runner);
  g_autofree char *before = thrown != NULL ? tb_lesson_words_before (thrown->study, units_of (self)) : NULL;
  g_autofree char *after = thrown != NULL ? tb_lesson_words_after (thrown->study, units_of (self)) : NULL;

  gtk_label_set_text (self->before, before != NULL ? before : "");
  gtk_label_set_text (self->after, after != NULL ? after : "");
}

/* What it showed. */

static TbWhyMeasure
split_of (const TbLessonStep *step)
{
  for (int split = 0; split < TB_WHY_N_SPLITS; split++)
    if (g_str_equal (tb_why_measure_name ((TbWhyMeasure) split), step->asked.measure->name))
      return (TbWhyMeasure) split;
  return TB_WHY_BOARD;
}

static void
on_why (GObject *source, GAsyncResult *result, gpointer user_data)
{
  g_autoptr (TbLessonPage) self = user_data;
  g_autoptr (TbWhy) why = tb_why_new_finish (result, NULL);
  g_auto (GStrv) sentences = NULL;
  g_autofree char *text = NULL;

  if (why == NULL || self->runner == NULL || tb_lesson_runner_get_step (self->runner) == NULL)
    return;
  g_clear_object (&self->cancellable);
  sentences = tb_why_sentences (why, split_of (tb_lesson_runner_get_step (self->runner)),
                                units_of (self) == TB_UNITS_METRIC);
  text = g_strjoinv (BETWEEN_REASONS, sentences);
  gtk_label_set_text (self->why_words, text);
}

static void
stop_why (TbLessonPage *self)
{
  if (self->cancellable != NULL)
    g_cancellable_cancel (self->cancellable);
  g_clear_object (&self->cancellable);
}

static void
start_why (TbLessonPage *self)
{
  const TbLessonThrow *thrown = tb_lesson_runner_get_thrown (self->runner);

  stop_why (self);
  self->cancellable = g_cancellable_new ();
  gtk_label_set_text (self->why_words, _ ("The reasons are being worked out…"));
  tb_why_new_async (thrown->study->side[TB_SIDE_BEFORE], thrown->study->side[TB_SIDE_AFTER], NULL,
                    self->cancellable, on_why, g_object_ref (self));
}

static void
show_result (TbLessonPage *self)
{
  guint position = tb_lesson_runner_get_position (self->runner);
  TbLessonResult result = tb_lesson_runner_get_result (self->runner, position);
  g_autofree char *words = tb_lesson_words_guess (self->runner),
                  *explanation = tb_lesson_runner_explain (self->runner);

  gtk_label_set_text (self->verdict, result.guessed ? tb_guess_verdict_text (result.verdict) : _ ("Shown"));
  gtk_label_set_text (self->guess_words, words);
  gtk_label_set_text (self->explanation, explanation);
  start_why (self);
}

/* What can be done. */

static void
show_guess (TbLessonPage *self)
{
  int choice = tb_lesson_runner_get_choice (self->runner);
  double board = tb_lesson_runner_get_board (self->runner);
  gboolean asking = tb_lesson_runner_get_stage (self->runner) == TB_LESSON_ASKING;

  self->showing = TRUE;
  for (guint i = 0; i < self->choice_buttons->len; i++)
    {
      gtk_check_button_set_active (g_ptr_array_index (self->choice_buttons, i), (int) i == choice);
      gtk_widget_set_sensitive (g_ptr_array_index (self->choice_buttons, i), asking);
    }
  gtk_spin_button_set_value (self->board, isnan (board) ? TB_MIDDLE_BOARD : board);
  self->showing = FALSE;
}

static void
show_actions (TbLessonPage *self, TbLessonStage stage)
{
  GtkWidget *widget = GTK_WIDGET (self);
  gboolean asking = stage == TB_LESSON_ASKING, guessed = tb_lesson_runner_has_guess (self->runner);
  gboolean shown = stage == TB_LESSON_REVEALED || stage == TB_LESSON_FAILED;
  gboolean last
      = tb_lesson_runner_get_position (self->runner) + 1 >= tb_lesson_runner_get_n_steps (self->runner);

  gtk_widget_action_set_enabled (widget, "step.throw", asking && guessed);
  gtk_widget_action_set_enabled (widget, "step.show", asking && !guessed);
  gtk_widget_action_set_enabled (widget, "step.next", shown);
  gtk_widget_action_set_enabled (widget, "step.previous", tb_lesson_runner_get_position (self->runner) > 0);
  gtk_widget_set_visible (self->throw, !shown);
  gtk_widget_set_visible (self->show, asking && !guessed);
  gtk_widget_set_visible (self->take, stage == TB_LESSON_REVEALED);
  gtk_widget_set_visible (self->next, shown);
  gtk_button_set_label (GTK_BUTTON (self->next), last ? _ ("_End of the lesson") : _ ("_Next step"));
  tb_accessible_set_name (self->next, last ? _ ("End of the lesson") : _ ("Next step"));
  if (stage == TB_LESSON_REVEALED)
    gtk_widget_add_css_class (self->next, "suggested-action");
  else
    gtk_widget_remove_css_class (self->next, "suggested-action");
}

static void
show_parts (TbLessonPage *self, TbLessonStage stage)
{
  gboolean setting_up = stage == TB_LESSON_SETTING_UP, revealed = stage == TB_LESSON_REVEALED;
  const char *problem = tb_lesson_runner_get_problem (self->runner);

  gtk_widget_set_visible (GTK_WIDGET (self->spinner), setting_up);
  gtk_spinner_set_spinning (self->spinner, setting_up);
  gtk_label_set_text (self->problem, problem != NULL ? problem : "");
  gtk_widget_set_visible (GTK_WIDGET (self->problem), problem != NULL);
  gtk_widget_set_visible (self->asking, stage == TB_LESSON_ASKING || stage == TB_LESSON_THROWING);
  gtk_widget_set_visible (self->question_box, !setting_up && stage != TB_LESSON_FAILED);
  gtk_widget_set_visible (self->choices, !revealed && self->choice_buttons->len > 0);
  gtk_widget_set_visible (self->marker_row, stage == TB_LESSON_ASKING && self->choice_buttons->len == 0);
  gtk_widget_set_visible (self->revealed, revealed);
}

/* The keyboard goes where the next thing is to be done. */
static void
move_focus (TbLessonPage *self, TbLessonStage stage)
{
  GtkWidget *target = NULL;

  if (stage == TB_LESSON_ASKING && self->choice_buttons->len > 0)
    target = g_ptr_array_index (self->choice_buttons, 0);
  else if (stage == TB_LESSON_ASKING)
    target = tb_lesson_picture_get_grip (self->picture);
  else if (stage == TB_LESSON_REVEALED || stage == TB_LESSON_FAILED)
    target = self->next;
  if (target != NULL && gtk_widget_get_mapped (GTK_WIDGET (self)))
    gtk_widget_grab_focus (target);
}

static void
show_runner (TbLessonPage *self)
{
  const TbLessonStep *step = tb_lesson_runner_get_step (self->runner);
  TbLessonStage stage = tb_lesson_runner_get_stage (self->runner);
  gboolean other = step != self->shown_step || stage != self->shown_stage;

  if (step == NULL)
    {
      self->shown_step = NULL;
      return;
    }
  if (step != self->shown_step)
    show_step (self, step);
  self->shown_step = step;
  self->shown_stage = stage;
  show_guess (self);
  show_actions (self, stage);
  if (!other)
    return;
  show_set_up (self);
  show_parts (self, stage);
  gtk_adjustment_set_value (gtk_scrolled_window_get_vadjustment (self->scroller), 0);
  if (stage == TB_LESSON_REVEALED)
    show_result (self);
  move_focus (self, stage);
}

static void
on_board (TbLessonPage *self)
{
  if (!self->showing && self->runner != NULL)
    tb_lesson_runner_set_board (self->runner, gtk_spin_button_get_value (self->board));
}

static void
throw_ball (GtkWidget *widget, const char *name, GVariant *parameter)
{
  tb_lesson_runner_throw (TB_LESSON_PAGE (widget)->runner);
}

static void
turn_page (GtkWidget *widget, const char *name, GVariant *parameter)
{
  TbLessonPage *self = TB_LESSON_PAGE (widget);
  guint position = tb_lesson_runner_get_position (self->runner);

  stop_why (self);
  tb_lesson_runner_go (self->runner, g_str_equal (name, "step.next") ? position + 1 : position - 1);
}

static gboolean
choose_by_key (GtkWidget *widget, GVariant *parameter, gpointer user_data)
{
  TbLessonPage *self = TB_LESSON_PAGE (widget);
  int choice = g_variant_get_int32 (parameter);

  if (choice >= (int) self->choice_buttons->len)
    return FALSE;
  tb_lesson_runner_set_choice (self->runner, choice);
  return TRUE;
}

void
tb_lesson_page_set_runner (TbLessonPage *self, TbLessonRunner *runner)
{
  g_return_if_fail (self->runner == NULL);

  self->runner = g_object_ref (runner);
  tb_lesson_picture_set_runner (self->picture, runner);
  g_signal_connect_object (runner, "changed", G_CALLBACK (show_runner), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (tb_lesson_runner_get_session (runner), "notify::units", G_CALLBACK (show_set_up),
                           self, G_CONNECT_SWAPPED);
  show_runner (self);
}

TbLessonPicture *
tb_lesson_page_get_picture (TbLessonPage *self)
{
  return self->picture;
}

GtkCheckButton *
tb_lesson_page_get_choice (TbLessonPage *self, guint index)
{
  return index < self->choice_buttons->len ? g_ptr_array_index (self->choice_buttons, index) : NULL;
}

const char *
tb_lesson_page_get_verdict (TbLessonPage *self)
{
  return gtk_label_get_text (self->verdict);
}

const char *
tb_lesson_page_get_explanation (TbLessonPage *self)
{
  return gtk_label_get_text (self->explanation);
}

static void
tb_lesson_page_dispose (GObject *object)
{
  TbLessonPage *self = TB_LESSON_PAGE (object);

  stop_why (self);
  tb_unparent_children (GTK_WIDGET (self));
  g_clear_pointer (&self->choice_buttons, g_ptr_array_unref);
  g_clear_object (&self->runner);
  G_OBJECT_CLASS (tb_lesson_page_parent_class)->dispose (object);
}

static void
bind_template (GtkWidgetClass *widget_class)
{
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/io/github/tenboard/Tenboard/ui/tb-lesson-page.ui");
  gtk_widget_class_bind_template_child (widget_class, TbLessonPage, scroller);
  gtk_widget_class_bind_template_child (widget_class, TbLessonPage, place);
  gtk_widget_class_bind_template_child (widget_class, TbLessonPage, name);
  gtk_widget_class_bind_template_child (widget_class, TbLessonPage, problem);
  gtk_widget_class_bind_template_child (widget_class, TbLessonPage, spinner);
  gtk_widget_class_bind_template_child (widget_class, TbLessonPage, asking);
  gtk_widget_class_bind_template_child (widget_class, TbLessonPage, text);
  gtk_widget_class_bind_template_child (widget_class, TbLessonPage, before);
  gtk_widget_class_bind_template_child (widget_class, TbLessonPage, after);
  gtk_widget_class_bind_template_child (widget_class, TbLessonPage, question_box);
  gtk_widget_class_bind_template_child (widget_class, TbLessonPage, question);
  gtk_widget_class_bind_template_child (widget_class, TbLessonPage, choices);
  gtk_widget_class_bind_template_child (widget_class, TbLessonPage, marker_row);
  gtk_widget_class_bind_template_child (widget_class, TbLessonPage, board);
  gtk_widget_class_bind_template_child (widget_class, TbLessonPage, revealed);
  gtk_widget_class_bind_template_child (widget_class, TbLessonPage, verdict);
  gtk_widget_class_bind_template_child (widget_class, TbLessonPage, guess_words);
  gtk_widget_class_bind_template_child (widget_class, TbLessonPage, explanation);
  gtk_widget_class_bind_template_child (widget_class, TbLessonPage, why);
  gtk_widget_class_bind_template_child (widget_class, TbLessonPage, why_words);
  gtk_widget_class_bind_template_child (widget_class, TbLessonPage, caution_box);
  gtk_widget_class_bind_template_child (widget_class, TbLessonPage, caution);
  gtk_widget_class_bind_template_child (widget_class, TbLessonPage, picture);
  gtk_widget_class_bind_template_child (widget_class, TbLessonPage, take);
  gtk_widget_class_bind_template_child (widget_class, TbLessonPage, show);
  gtk_widget_class_bind_template_child (widget_class, TbLessonPage, throw);
  gtk_widget_class_bind_template_child (widget_class, TbLessonPage, next);
  gtk_widget_class_bind_template_callback (widget_class, on_board);
}

static void
add_shortcuts (GtkWidgetClass *widget_class)
{
  for (int choice = 0; choice < TB_LESSON_MAX_CHOICES; choice++)
    {
      gtk_widget_class_add_binding (widget_class, GDK_KEY_1 + choice, 0, choose_by_key, "i", choice);
      gtk_widget_class_add_binding (widget_class, GDK_KEY_KP_1 + choice, 0, choose_by_key, "i", choice);
    }
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_t, GDK_CONTROL_MASK, "step.throw", NULL);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_Right, GDK_ALT_MASK, "step.next", NULL);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_Left, GDK_ALT_MASK, "step.previous", NULL);
}

static void
tb_lesson_page_class_init (TbLessonPageClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = tb_lesson_page_dispose;
  g_type_ensure (TB_TYPE_DISCLOSURE);
  g_type_ensure (TB_TYPE_FOLDING_LABEL);
  g_type_ensure (TB_TYPE_LESSON_PICTURE);
  bind_template (widget_class);
  gtk_widget_class_install_action (widget_class, "step.throw", NULL, throw_ball);
  gtk_widget_class_install_action (widget_class, "step.show", NULL, throw_ball);
  gtk_widget_class_install_action (widget_class, "step.next", NULL, turn_page);
  gtk_widget_class_install_action (widget_class, "step.previous", NULL, turn_page);
  add_shortcuts (widget_class);
}

static void
tb_lesson_page_init (TbLessonPage *self)
{
  self->choice_buttons = g_ptr_array_new ();
  gtk_widget_init_template (GTK_WIDGET (self));
  gtk_actionable_set_action_target (GTK_ACTIONABLE (self->take), "u", 0);
  gtk_actionable_set_action_name (GTK_ACTIONABLE (self->take), "lessons.take");
}
