/* A lesson being taken: which step, what was guessed, what the throw showed. No widget in it, so that a
 * window for one learner and a screen for a whole room can show the same thing.
 *
 * Every step goes from SETTING_UP (it is thrown in another thread) to ASKING, by throw() to THROWING, and
 * when the throw is over to REVEALED. A step that has been revealed stays so: its guess cannot be changed any
 * more.
 *
 * Signals: "changed" when the step, its stage or the guess is another; "judged" when a guess has been judged,
 * once a step.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "tb-guess.h"
#include "tb-lesson.h"
#include "tb-session.h"

G_BEGIN_DECLS

typedef enum TbLessonStage
{
  TB_LESSON_SETTING_UP, /* nothing to be seen yet */
  TB_LESSON_FAILED,     /* the step cannot be set up, or does not show what it says: get_problem() */
  TB_LESSON_ASKING,     /* "before" is to be seen, and a guess can be made */
  TB_LESSON_THROWING,   /* "after" is on its way */
  TB_LESSON_REVEALED,   /* all is to be seen */
  TB_LESSON_OVER        /* past the last step */
} TbLessonStage;

typedef struct TbLessonResult
{
  gboolean revealed;        /* the rest is set only then */
  gboolean guessed;         /* FALSE: it was shown without a guess */
  double answer;            /* of what was asked, in the measure's unit */
  double off;               /* boards from the marker to the answer; NAN for a choice, or no guess */
  TbVerdictOfGuess verdict; /* of a guess */
} TbLessonResult;

/* Over all steps that were guessed at so far. */
typedef struct TbLessonScore
{
  guint guessed, right;
  double mean_off;   /* boards, of markers; NAN if there was none */
  guint best_streak; /* of right guesses */
} TbLessonScore;

#define TB_TYPE_LESSON_RUNNER (tb_lesson_runner_get_type ())
G_DECLARE_FINAL_TYPE (TbLessonRunner, tb_lesson_runner, TB, LESSON_RUNNER, GObject)

/* With a session of its own; no other is touched. */
TbLessonRunner *tb_lesson_runner_new (TbLibrary *library);
/* Its session: the step's study, and the time of its throw. Borrowed. */
TbSession *tb_lesson_runner_get_session (TbLessonRunner *self);

/* Begins a lesson at its first step, with no guess; also one that has been taken before. */
void tb_lesson_runner_begin (TbLessonRunner *self, TbLesson *lesson);
/* Borrowed; NULL before the first one. */
TbLesson *tb_lesson_runner_get_lesson (TbLessonRunner *self);
guint tb_lesson_runner_get_n_steps (TbLessonRunner *self);

/* The step counted from 0; n_steps when the lesson is over. */
guint tb_lesson_runner_get_position (TbLessonRunner *self);
/* Goes to a step, or to the end; a throw under way is over. */
void tb_lesson_runner_go (TbLessonRunner *self, guint position);
/* Borrowed; NULL when the lesson is over. */
const TbLessonStep *tb_lesson_runner_get_step (TbLessonRunner *self);
TbLessonStage tb_lesson_runner_get_stage (TbLessonRunner *self);
/* Why the step cannot be shown, a whole sentence; NULL otherwise. Borrowed. */
const char *tb_lesson_runner_get_problem (TbLessonRunner *self);
/* Borrowed; NULL while the step is set up, if it failed, and when the lesson is over. */
const TbLessonThrow *tb_lesson_runner_get_thrown (TbLessonRunner *self);

/* Whether the step is guessed at with a marker on the lane, rather than by a choice. */
gboolean tb_lesson_runner_asks_for_marker (TbLessonRunner *self);
/* How far down the lane the marker is put, m; NAN for a choice. */
double tb_lesson_runner_get_line (TbLessonRunner *self);
/* The marker's board, held to the lane and a tenth of a board; NAN where none was put. Only while ASKING can
 * it be set. */
double tb_lesson_runner_get_board (TbLessonRunner *self);
void tb_lesson_runner_set_board (TbLessonRunner *self, double board);
/* The choice, counted from 0; −1 for none. Likewise. */
int tb_lesson_runner_get_choice (TbLessonRunner *self);
void tb_lesson_runner_set_choice (TbLessonRunner *self, int choice);
gboolean tb_lesson_runner_has_guess (TbLessonRunner *self);

/* Lets the ball go, with or without a guess. Whoever shows the session lets its time run; the end of the
 * throw reveals. */
void tb_lesson_runner_throw (TbLessonRunner *self);
/* At once. */
void tb_lesson_runner_reveal (TbLessonRunner *self);

/* Of a step that has been revealed; NULL otherwise. Borrowed. */
TbStudy *tb_lesson_runner_get_study (TbLessonRunner *self, guint position);

/* Of any step. */
TbLessonResult tb_lesson_runner_get_result (TbLessonRunner *self, guint position);
/* The right choice of this step; −1 if it has none. Only once it is revealed. */
int tb_lesson_runner_get_right_choice (TbLessonRunner *self);
/* What the throw showed, translated; free it. NULL before it is revealed. */
char *tb_lesson_runner_explain (TbLessonRunner *self);
TbLessonScore tb_lesson_runner_get_score (TbLessonRunner *self);

G_END_DECLS
