/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "tb-learner.h"

struct _TbLearner
{
  GObject parent_instance;

  char *bowler;
  TbProgress *progress;
  char *problem;
};

enum
{
  CHANGED,
  N_SIGNALS
};
static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (TbLearner, tb_learner, G_TYPE_OBJECT)

static void
set_problem (TbLearner *self, const GError *error)
{
  g_clear_pointer (&self->problem, g_free);
  if (error != NULL)
    self->problem = g_strdup (error->message);
}

static void
read_progress (TbLearner *self)
{
  g_autoptr (GError) error = NULL;

  g_clear_pointer (&self->progress, tb_progress_free);
  self->progress = tb_progress_load (self->bowler, &error);
  set_problem (self, error);
  g_signal_emit (self, signals[CHANGED], 0);
}

void
tb_learner_set_bowler (TbLearner *self, const char *id)
{
  if (g_strcmp0 (self->bowler, id) == 0)
    return;
  g_free (self->bowler);
  self->bowler = g_strdup (id);
  read_progress (self);
}

const char *
tb_learner_get_bowler (TbLearner *self)
{
  return self->bowler;
}

const TbProgress *
tb_learner_get_progress (TbLearner *self)
{
  return self->progress;
}

const char *
tb_learner_get_problem (TbLearner *self)
{
  return self->problem;
}

void
tb_learner_keep (TbLearner *self, TbLessonRunner *runner)
{
  guint position = tb_lesson_runner_get_position (runner);
  TbLessonResult result = tb_lesson_runner_get_result (runner, position);
  TbProgressGuess guess = { .lesson = tb_lesson_runner_get_lesson (runner)->id,
                            .step = position + 1,
                            .off = result.off,
                            .verdict = result.verdict };
  g_autoptr (GError) error = NULL;

  if (self->progress == NULL || !result.guessed)
    return;
  tb_progress_add (self->progress, &guess);
  tb_progress_save (self->progress, &error);
  set_problem (self, error);
  g_signal_emit (self, signals[CHANGED], 0);
}

gboolean
tb_learner_forget (TbLearner *self, GError **error)
{
  gboolean deleted = tb_progress_delete (self->bowler, error);

  if (deleted)
    read_progress (self);
  return deleted;
}

static void
tb_learner_finalize (GObject *object)
{
  TbLearner *self = TB_LEARNER (object);

  g_clear_pointer (&self->progress, tb_progress_free);
  g_free (self->bowler);
  g_free (self->problem);
  G_OBJECT_CLASS (tb_learner_parent_class)->finalize (object);
}

static void
tb_learner_class_init (TbLearnerClass *klass)
{
  G_OBJECT_CLASS (klass)->finalize = tb_learner_finalize;
  signals[CHANGED]
      = g_signal_new ("changed", TB_TYPE_LEARNER, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
}

static void
tb_learner_init (TbLearner *self)
{
  tb_learner_set_bowler (self, TB_LEARNER_GUEST);
}

TbLearner *
tb_learner_new (void)
{
  return g_object_new (TB_TYPE_LEARNER, NULL);
}
