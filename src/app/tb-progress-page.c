/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "tb-progress-page.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "tb-children.h"
#include "tb-drawn-picture.h"
#include "tb-fill.h"
#include "tb-lesson-words.h"
#include "tb-progress-view.h"

struct _TbProgressPage
{
  GtkWidget parent_instance;

  /* Template */
  GtkLabel *name;
  GtkLabel *words;
  TbDrawnPicture *picture;
  GtkLabel *problem;

  TbLearner *learner;
  TbLibrary *library;
};

G_DEFINE_FINAL_TYPE (TbProgressPage, tb_progress_page, GTK_TYPE_WIDGET)

static void
tell (TbProgressPage *self, const char *sentence)
{
  gtk_label_set_text (self->problem, sentence != NULL ? sentence : "");
  gtk_widget_set_visible (GTK_WIDGET (self->problem), sentence != NULL);
}

static guint
count_of (TbProgressPage *self)
{
  const TbProgress *progress = self->learner != NULL ? tb_learner_get_progress (self->learner) : NULL;

  return progress != NULL ? progress->guesses->len : 0;
}

static void
draw (cairo_t *cr, double width, double height, const TbTheme *theme, gpointer page)
{
  TbProgressPage *self = page;
  guint count = count_of (self);
  g_autofree double *off = g_new (double, count + 1);
  g_autofree TbVerdictOfGuess *verdict = g_new (TbVerdictOfGuess, count + 1);
  TbProgressScene scene = { .theme = *theme, .off = off, .verdict = verdict, .count = count };

  for (guint i = 0; i < count; i++)
    {
      const TbProgressGuess *guess
          = &g_array_index (tb_learner_get_progress (self->learner)->guesses, TbProgressGuess, i);

      off[i] = guess->off;
      verdict[i] = guess->verdict;
    }
  tb_progress_view_draw (cr, width, height, &scene);
}

static char *
describe (TbProgressPage *self)
{
  const TbProgress *progress = tb_learner_get_progress (self->learner);
  TbLessonScore score = { .guessed = count_of (self), .mean_off = NAN };

  if (score.guessed == 0)
    return g_strdup (_ ("Nothing is kept yet: no guess was made."));
  for (guint i = 0; i < score.guessed; i++)
    score.right += g_array_index (progress->guesses, TbProgressGuess, i).verdict == TB_GUESS_RIGHT;
  score.mean_off = tb_progress_mean_off (progress);
  score.best_streak = tb_progress_best_streak (progress);
  return tb_lesson_words_score (&score);
}

static const char *
bowler_name (TbProgressPage *self)
{
  TbLibraryEntry *entry
      = tb_library_find (self->library, TB_DOCUMENT_BOWLER, tb_learner_get_bowler (self->learner), NULL);

  return entry != NULL ? tb_library_entry_get_name (entry) : _ ("A guest");
}

static void
show_learner (TbProgressPage *self)
{
  g_autofree char *words = describe (self);
  /* Translators: %s is what a bowler is called. */
  g_autofree char *name = tb_fill_with (_ ("Progress: %s"), bowler_name (self), NULL);

  gtk_label_set_text (self->name, name);
  gtk_label_set_text (self->words, words);
  tb_drawn_picture_refresh (self->picture, words);
  tell (self, tb_learner_get_problem (self->learner));
  gtk_widget_action_set_enabled (GTK_WIDGET (self), "progress.delete",
                                 count_of (self) > 0 || tb_learner_get_progress (self->learner) == NULL);
}

static void
on_answer (TbProgressPage *self, int response, GtkWindow *dialog)
{
  g_autoptr (GError) error = NULL;

  gtk_window_destroy (dialog);
  if (response == GTK_RESPONSE_ACCEPT && !tb_learner_forget (self->learner, &error))
    tell (self, error->message);
}

static void
ask_to_delete (GtkWidget *widget, const char *name, GVariant *parameter)
{
  TbProgressPage *self = TB_PROGRESS_PAGE (widget);
  GtkWidget *dialog = gtk_message_dialog_new (
      GTK_WINDOW (gtk_widget_get_root (widget)), GTK_DIALOG_MODAL | GTK_DIALOG_DESTROY_WITH_PARENT,
      GTK_MESSAGE_QUESTION, GTK_BUTTONS_NONE, _ ("Delete all guesses of “%s”?"), bowler_name (self));
  GtkWidget *delete;

  gtk_message_dialog_format_secondary_text (GTK_MESSAGE_DIALOG (dialog), "%s",
                                            _ ("They cannot be brought back."));
  gtk_dialog_add_button (GTK_DIALOG (dialog), _ ("_Cancel"), GTK_RESPONSE_CANCEL);
  delete = gtk_dialog_add_button (GTK_DIALOG (dialog), _ ("_Delete"), GTK_RESPONSE_ACCEPT);
  gtk_widget_add_css_class (delete, "destructive-action");
  gtk_dialog_set_default_response (GTK_DIALOG (dialog), GTK_RESPONSE_CANCEL);
  g_signal_connect_object (dialog, "response", G_CALLBACK (on_answer), self, G_CONNECT_SWAPPED);
  gtk_window_present (GTK_WINDOW (dialog));
}

void
tb_progress_page_set_learner (TbProgressPage *self, TbLearner *learner, TbLibrary *library)
{
  g_autoptr (TbSession) session = tb_session_new (library);

  g_return_if_fail (self->learner == NULL);
  self->learner = g_object_ref (learner);
  self->library = g_object_ref (library);
  /* Drawn pictures follow a session; this one has nothing to follow. */
  tb_picture_set_session (TB_PICTURE (self->picture), session);
  tb_drawn_picture_set_draw (self->picture, _ ("Guesses so far"), draw, self);
  g_signal_connect_object (learner, "changed", G_CALLBACK (show_learner), self, G_CONNECT_SWAPPED);
  show_learner (self);
}

const char *
tb_progress_page_get_words (TbProgressPage *self)
{
  return gtk_label_get_text (self->words);
}

static void
tb_progress_page_dispose (GObject *object)
{
  TbProgressPage *self = TB_PROGRESS_PAGE (object);

  if (self->picture != NULL)
    tb_drawn_picture_set_draw (self->picture, "", NULL, NULL);
  tb_unparent_children (GTK_WIDGET (self));
  self->picture = NULL;
  g_clear_object (&self->learner);
  g_clear_object (&self->library);
  G_OBJECT_CLASS (tb_progress_page_parent_class)->dispose (object);
}

static void
tb_progress_page_class_init (TbProgressPageClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = tb_progress_page_dispose;
  g_type_ensure (TB_TYPE_DRAWN_PICTURE);
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/io/github/tenboard/Tenboard/ui/tb-progress-page.ui");
  gtk_widget_class_bind_template_child (widget_class, TbProgressPage, name);
  gtk_widget_class_bind_template_child (widget_class, TbProgressPage, words);
  gtk_widget_class_bind_template_child (widget_class, TbProgressPage, picture);
  gtk_widget_class_bind_template_child (widget_class, TbProgressPage, problem);
  gtk_widget_class_install_action (widget_class, "progress.delete", NULL, ask_to_delete);
}

static void
tb_progress_page_init (TbProgressPage *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}
