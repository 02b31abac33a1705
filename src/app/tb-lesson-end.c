/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "tb-lesson-end.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "tb-accessible.h"
#include "tb-children.h"
#include "tb-fill.h"
#include "tb-lesson-words.h"

struct _TbLessonEnd
{
  GtkWidget parent_instance;

  /* Template */
  GtkLabel *name;
  GtkLabel *words;
  GtkGrid *steps;
  GtkWidget *list;

  TbLessonRunner *runner;
};

G_DEFINE_FINAL_TYPE (TbLessonEnd, tb_lesson_end, GTK_TYPE_WIDGET)

/* A mark stands before the word, so that the column is read at a glance. */
static char *
result_words (const TbLessonResult *result)
{
  static const char *const marks[] = { [TB_GUESS_RIGHT] = "●", [TB_GUESS_CLOSE] = "◐", [TB_GUESS_OFF] = "○" };
  g_autofree char *off = tb_number_text (result->off, 1);

  if (!result->revealed)
    return g_strdup (_ ("– not shown"));
  if (!result->guessed)
    return g_strdup (_ ("– no guess"));
  if (isnan (result->off))
    return g_strdup_printf ("%s %s", marks[result->verdict], tb_guess_verdict_text (result->verdict));
  /* Translators: a mark, "Right" or "Close" …, how many boards. */
  return tb_fill_with (_ ("%1$s %2$s, %3$s boards off"), marks[result->verdict],
                       tb_guess_verdict_text (result->verdict), off, NULL);
}

static GtkWidget *
new_label (const char *text)
{
  GtkWidget *label = gtk_label_new (text);

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  return label;
}

static GtkWidget *
new_take_button (const char *step, guint position)
{
  GtkWidget *button = gtk_button_new_with_label (_ ("Take this to the trainer"));
  /* Translators: %s is the name of a step. */
  g_autofree char *name = tb_fill_with (_ ("Take “%s” to the trainer"), step, NULL);

  tb_accessible_set_name (button, name);
  gtk_actionable_set_action_target (GTK_ACTIONABLE (button), "u", position);
  gtk_actionable_set_action_name (GTK_ACTIONABLE (button), "lessons.take");
  gtk_widget_set_valign (button, GTK_ALIGN_CENTER);
  return button;
}

static void
add_step (TbLessonEnd *self, guint position)
{
  const TbLessonStep *step = g_ptr_array_index (tb_lesson_runner_get_lesson (self->runner)->steps, position);
  TbLessonResult result = tb_lesson_runner_get_result (self->runner, position);
  g_autofree char *words = result_words (&result);
  const char *name = tb_lesson_display (step->name);

  gtk_grid_attach (self->steps, new_label (name), 0, (int) position, 1, 1);
  gtk_grid_attach (self->steps, new_label (words), 1, (int) position, 1, 1);
  if (result.revealed)
    gtk_grid_attach (self->steps, new_take_button (name, position), 2, (int) position, 1, 1);
}

static void
show_runner (TbLessonEnd *self)
{
  TbLessonScore score;
  g_autofree char *words = NULL;
  GtkWidget *child;

  if (tb_lesson_runner_get_stage (self->runner) != TB_LESSON_OVER
      || tb_lesson_runner_get_lesson (self->runner) == NULL)
    return;
  score = tb_lesson_runner_get_score (self->runner);
  words = tb_lesson_words_score (&score);
  gtk_label_set_text (self->name, tb_lesson_display (tb_lesson_runner_get_lesson (self->runner)->name));
  gtk_label_set_text (self->words, words);
  while ((child = gtk_widget_get_first_child (GTK_WIDGET (self->steps))) != NULL)
    gtk_grid_remove (self->steps, child);
  for (guint i = 0; i < tb_lesson_runner_get_n_steps (self->runner); i++)
    add_step (self, i);
}

void
tb_lesson_end_set_runner (TbLessonEnd *self, TbLessonRunner *runner)
{
  g_return_if_fail (self->runner == NULL);

  self->runner = g_object_ref (runner);
  g_signal_connect_object (runner, "changed", G_CALLBACK (show_runner), self, G_CONNECT_SWAPPED);
}

const char *
tb_lesson_end_get_words (TbLessonEnd *self)
{
  return gtk_label_get_text (self->words);
}

static gboolean
tb_lesson_end_grab_focus (GtkWidget *widget)
{
  return gtk_widget_grab_focus (TB_LESSON_END (widget)->list);
}

static void
tb_lesson_end_dispose (GObject *object)
{
  TbLessonEnd *self = TB_LESSON_END (object);

  tb_unparent_children (GTK_WIDGET (self));
  g_clear_object (&self->runner);
  G_OBJECT_CLASS (tb_lesson_end_parent_class)->dispose (object);
}

static void
tb_lesson_end_class_init (TbLessonEndClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = tb_lesson_end_dispose;
  widget_class->grab_focus = tb_lesson_end_grab_focus;
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/io/github/tenboard/Tenboard/ui/tb-lesson-end.ui");
  gtk_widget_class_bind_template_child (widget_class, TbLessonEnd, name);
  gtk_widget_class_bind_template_child (widget_class, TbLessonEnd, words);
  gtk_widget_class_bind_template_child (widget_class, TbLessonEnd, steps);
  gtk_widget_class_bind_template_child (widget_class, TbLessonEnd, list);
}

static void
tb_lesson_end_init (TbLessonEnd *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}
