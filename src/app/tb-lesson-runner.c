/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "tb-lesson-runner.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "tb-task.h"

/* What has become of one step. */
typedef struct Step
{
  TbLessonThrow *thrown;
  char *problem;
  double board;
  int choice;
  gboolean throwing;
  TbLessonResult result;
} Step;

struct _TbLessonRunner
{
  GObject parent_instance;

  TbLibrary *library;
  TbSession *session;
  TbLesson *lesson;
  Step *steps;
  guint position;
  GCancellable *cancellable; /* of the step that is being set up; else NULL */
};

enum
{
  CHANGED,
  JUDGED,
  N_SIGNALS
};
static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (TbLessonRunner, tb_lesson_runner, G_TYPE_OBJECT)

/* Markers are put to a tenth of a board: finer than anyone can tell. */
#define TENTHS 10.0

static void
tell (TbLessonRunner *self)
{
  g_signal_emit (self, signals[CHANGED], 0);
}

TbSession *
tb_lesson_runner_get_session (TbLessonRunner *self)
{
  return self->session;
}

TbLesson *
tb_lesson_runner_get_lesson (TbLessonRunner *self)
{
  return self->lesson;
}

guint
tb_lesson_runner_get_n_steps (TbLessonRunner *self)
{
  return self->lesson != NULL ? self->lesson->steps->len : 0;
}

guint
tb_lesson_runner_get_position (TbLessonRunner *self)
{
  return self->position;
}

static gboolean
is_over (TbLessonRunner *self)
{
  return self->position >= tb_lesson_runner_get_n_steps (self);
}

static Step *
present (TbLessonRunner *self)
{
  return is_over (self) ? NULL : &self->steps[self->position];
}

const TbLessonStep *
tb_lesson_runner_get_step (TbLessonRunner *self)
{
  return is_over (self) ? NULL : g_ptr_array_index (self->lesson->steps, self->position);
}

static TbLessonStage
stage_of (const Step *step)
{
  if (step->problem != NULL)
    return TB_LESSON_FAILED;
  if (step->thrown == NULL)
    return TB_LESSON_SETTING_UP;
  if (step->result.revealed)
    return TB_LESSON_REVEALED;
  return step->throwing ? TB_LESSON_THROWING : TB_LESSON_ASKING;
}

TbLessonStage
tb_lesson_runner_get_stage (TbLessonRunner *self)
{
  Step *step = present (self);

  return step != NULL ? stage_of (step) : TB_LESSON_OVER;
}

const char *
tb_lesson_runner_get_problem (TbLessonRunner *self)
{
  Step *step = present (self);

  return step != NULL ? step->problem : NULL;
}

const TbLessonThrow *
tb_lesson_runner_get_thrown (TbLessonRunner *self)
{
  Step *step = present (self);

  return step != NULL ? step->thrown : NULL;
}

/* Setting up: in a thread, since a worn lane takes some tenths of a second. */

typedef struct Order
{
  TbLesson *lesson;
  guint position;
} Order;

static void
order_free (gpointer data)
{
  Order *order = data;

  tb_lesson_unref (order->lesson);
  g_free (order);
}

/* With a library of its own: the window's may be read anew meanwhile. */
static void
set_up (GTask *task, gpointer source, gpointer data, GCancellable *cancellable)
{
  const Order *order = data;
  const TbLessonStep *step = g_ptr_array_index (order->lesson->steps, order->position);
  g_autoptr (TbLibrary) library = tb_library_new ();
  g_autoptr (GError) error = NULL;
  g_autoptr (TbLessonThrow) thrown = tb_lesson_step_throw (step, library, &error);

  if (thrown != NULL && tb_lesson_check_throw (step, thrown, &error))
    g_task_return_pointer (task, g_steal_pointer (&thrown), (GDestroyNotify) tb_lesson_throw_free);
  else
    g_task_return_error (task, g_steal_pointer (&error));
}

/* The step's study, from the release on; or at its end once it is revealed. */
static void
show_step (TbLessonRunner *self)
{
  Step *step = present (self);

  if (step == NULL || step->thrown == NULL)
    return;
  tb_session_open (self->session, step->thrown->study, NULL);
  if (step->result.revealed)
    tb_session_set_time (self->session, tb_session_get_duration (self->session));
}

static void
on_set_up (GObject *source, GAsyncResult *result, gpointer user_data)
{
  TbLessonRunner *self = TB_LESSON_RUNNER (source);
  g_autoptr (GError) error = NULL;
  TbLessonThrow *thrown = g_task_propagate_pointer (G_TASK (result), &error);
  Step *step = present (self);

  if (g_error_matches (error, G_IO_ERROR, G_IO_ERROR_CANCELLED))
    return;
  g_clear_object (&self->cancellable);
  step->thrown = thrown;
  if (thrown == NULL)
    /* Translators: a lesson's file is wrong. The first %s is the name of a step, the second a clause about
     * it. */
    step->problem
        = g_strdup_printf (_ ("The step “%s” cannot be shown: %s."),
                           tb_lesson_display (tb_lesson_runner_get_step (self)->name), error->message);
  show_step (self);
  tell (self);
}

static void
stop_setting_up (TbLessonRunner *self)
{
  if (self->cancellable != NULL)
    g_cancellable_cancel (self->cancellable);
  g_clear_object (&self->cancellable);
}

static void
start_setting_up (TbLessonRunner *self)
{
  Order *order = g_new0 (Order, 1);
  g_autoptr (GTask) task = NULL;

  self->cancellable = g_cancellable_new ();
  task = g_task_new (self, self->cancellable, on_set_up, NULL);
  order->lesson = tb_lesson_ref (self->lesson);
  order->position = self->position;
  g_task_set_task_data (task, order, order_free);
  g_task_set_return_on_cancel (task, TRUE);
  tb_task_run (task, set_up);
}

static void
arrive (TbLessonRunner *self)
{
  Step *step = present (self);

  if (step != NULL && stage_of (step) == TB_LESSON_SETTING_UP)
    start_setting_up (self);
  show_step (self);
  tell (self);
}

void
tb_lesson_runner_go (TbLessonRunner *self, guint position)
{
  g_return_if_fail (TB_IS_LESSON_RUNNER (self));

  if (tb_lesson_runner_get_stage (self) == TB_LESSON_THROWING)
    tb_lesson_runner_reveal (self);
  stop_setting_up (self);
  self->position = MIN (position, tb_lesson_runner_get_n_steps (self));
  arrive (self);
}

static void
free_steps (TbLessonRunner *self)
{
  for (guint i = 0; i < tb_lesson_runner_get_n_steps (self); i++)
    {
      g_clear_pointer (&self->steps[i].thrown, tb_lesson_throw_free);
      g_free (self->steps[i].problem);
    }
  g_clear_pointer (&self->steps, g_free);
}

void
tb_lesson_runner_begin (TbLessonRunner *self, TbLesson *lesson)
{
  TbLesson *old = self->lesson;

  g_return_if_fail (TB_IS_LESSON_RUNNER (self) && lesson != NULL);

  stop_setting_up (self);
  free_steps (self);
  self->lesson = tb_lesson_ref (lesson);
  g_clear_pointer (&old, tb_lesson_unref);
  self->steps = g_new0 (Step, lesson->steps->len);
  for (guint i = 0; i < lesson->steps->len; i++)
    {
      self->steps[i].board = NAN;
      self->steps[i].choice = -1;
    }
  self->position = 0;
  arrive (self);
}

/* The guess. */

gboolean
tb_lesson_runner_asks_for_marker (TbLessonRunner *self)
{
  const TbLessonStep *step = tb_lesson_runner_get_step (self);

  return step != NULL && step->choices->len == 0;
}

double
tb_lesson_runner_get_line (TbLessonRunner *self)
{
  if (!tb_lesson_runner_asks_for_marker (self))
    return NAN;
  return tb_lesson_marker_line (&tb_lesson_runner_get_step (self)->asked);
}

double
tb_lesson_runner_get_board (TbLessonRunner *self)
{
  Step *step = present (self);

  return step != NULL ? step->board : NAN;
}

void
tb_lesson_runner_set_board (TbLessonRunner *self, double board)
{
  double held = CLAMP (round (board * TENTHS) / TENTHS, 1, TB_LANE_BOARDS);
  Step *step = present (self);

  if (tb_lesson_runner_get_stage (self) != TB_LESSON_ASKING || !tb_lesson_runner_asks_for_marker (self)
      || isnan (board) || held == step->board)
    return;
  step->board = held;
  tell (self);
}

int
tb_lesson_runner_get_choice (TbLessonRunner *self)
{
  Step *step = present (self);

  return step != NULL ? step->choice : -1;
}

void
tb_lesson_runner_set_choice (TbLessonRunner *self, int choice)
{
  Step *step = present (self);

  if (tb_lesson_runner_get_stage (self) != TB_LESSON_ASKING || choice < 0
      || choice >= (int) tb_lesson_runner_get_step (self)->choices->len || choice == step->choice)
    return;
  step->choice = choice;
  tell (self);
}

gboolean
tb_lesson_runner_has_guess (TbLessonRunner *self)
{
  Step *step = present (self);

  return step != NULL && (!isnan (step->board) || step->choice >= 0);
}

/* The throw. */

static void
judge (TbLessonRunner *self, Step *step)
{
  const TbLessonStep *asked = tb_lesson_runner_get_step (self);
  TbLessonResult *result = &step->result;

  *result = (TbLessonResult){ .revealed = TRUE,
                              .guessed = tb_lesson_runner_has_guess (self),
                              .answer = tb_lesson_number (step->thrown, &asked->asked),
                              .off = NAN,
                              .verdict = TB_GUESS_OFF };
  if (!isnan (step->board))
    {
      result->off = fabs (step->board - result->answer);
      result->verdict = tb_guess_judge_board (step->board, result->answer);
    }
  else if (step->choice >= 0)
    result->verdict = tb_guess_judge_choice (step->choice, tb_lesson_right_choice (asked, step->thrown));
}

void
tb_lesson_runner_reveal (TbLessonRunner *self)
{
  TbLessonStage stage = tb_lesson_runner_get_stage (self);
  Step *step = present (self);

  if (stage != TB_LESSON_ASKING && stage != TB_LESSON_THROWING)
    return;
  judge (self, step);
  step->throwing = FALSE;
  tb_session_set_playing (self->session, FALSE);
  tb_session_set_time (self->session, tb_session_get_duration (self->session));
  tell (self);
  if (step->result.guessed)
    g_signal_emit (self, signals[JUDGED], 0);
}

void
tb_lesson_runner_throw (TbLessonRunner *self)
{
  if (tb_lesson_runner_get_stage (self) != TB_LESSON_ASKING)
    return;
  present (self)->throwing = TRUE;
  tell (self);
  tb_session_throw (self->session);
}

static void
on_playing (TbLessonRunner *self)
{
  if (!tb_session_get_playing (self->session) && tb_lesson_runner_get_stage (self) == TB_LESSON_THROWING)
    tb_lesson_runner_reveal (self);
}

TbLessonResult
tb_lesson_runner_get_result (TbLessonRunner *self, guint position)
{
  TbLessonResult none = { 0 };

  return position < tb_lesson_runner_get_n_steps (self) ? self->steps[position].result : none;
}

TbStudy *
tb_lesson_runner_get_study (TbLessonRunner *self, guint position)
{
  if (!tb_lesson_runner_get_result (self, position).revealed)
    return NULL;
  return self->steps[position].thrown->study;
}

int
tb_lesson_runner_get_right_choice (TbLessonRunner *self)
{
  if (tb_lesson_runner_get_stage (self) != TB_LESSON_REVEALED)
    return -1;
  return tb_lesson_right_choice (tb_lesson_runner_get_step (self), present (self)->thrown);
}

char *
tb_lesson_runner_explain (TbLessonRunner *self)
{
  if (tb_lesson_runner_get_stage (self) != TB_LESSON_REVEALED)
    return NULL;
  return tb_lesson_explain (tb_lesson_runner_get_step (self), present (self)->thrown, NULL);
}

TbLessonScore
tb_lesson_runner_get_score (TbLessonRunner *self)
{
  guint count = tb_lesson_runner_get_n_steps (self), marked = 0;
  g_autofree TbVerdictOfGuess *verdicts = g_new (TbVerdictOfGuess, count + 1);
  TbLessonScore score = { .mean_off = NAN };
  double sum = 0;

  for (guint i = 0; i < count; i++)
    {
      const TbLessonResult *result = &self->steps[i].result;

      if (!result->revealed || !result->guessed)
        continue;
      verdicts[score.guessed++] = result->verdict;
      score.right += result->verdict == TB_GUESS_RIGHT;
      if (isnan (result->off))
        continue;
      sum += result->off;
      marked++;
    }
  if (marked > 0)
    score.mean_off = sum / marked;
  score.best_streak = tb_guess_best_streak (verdicts, score.guessed);
  return score;
}

static void
tb_lesson_runner_dispose (GObject *object)
{
  TbLessonRunner *self = TB_LESSON_RUNNER (object);

  stop_setting_up (self);
  free_steps (self);
  g_clear_pointer (&self->lesson, tb_lesson_unref);
  g_clear_object (&self->session);
  G_OBJECT_CLASS (tb_lesson_runner_parent_class)->dispose (object);
}

static void
tb_lesson_runner_class_init (TbLessonRunnerClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = tb_lesson_runner_dispose;
  signals[CHANGED] = g_signal_new ("changed", TB_TYPE_LESSON_RUNNER, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                   G_TYPE_NONE, 0);
  signals[JUDGED] = g_signal_new ("judged", TB_TYPE_LESSON_RUNNER, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                  G_TYPE_NONE, 0);
}

static void
tb_lesson_runner_init (TbLessonRunner *self)
{
}

TbLessonRunner *
tb_lesson_runner_new (TbLibrary *library)
{
  TbLessonRunner *self = g_object_new (TB_TYPE_LESSON_RUNNER, NULL);

  self->session = tb_session_new (library);
  g_signal_connect_object (self->session, "notify::playing", G_CALLBACK (on_playing), self,
                           G_CONNECT_SWAPPED);
  return self;
}
