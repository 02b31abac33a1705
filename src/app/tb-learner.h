/* Who is learning, and what is kept of the guesses. No widget in it.
 *
 * Signal "changed": another bowler, or another guess.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "tb-lesson-runner.h"
#include "tb-progress.h"

G_BEGIN_DECLS

/* The id under which guesses are kept of somebody who is no bowler of the library. */
#define TB_LEARNER_GUEST "guest"

#define TB_TYPE_LEARNER (tb_learner_get_type ())
G_DECLARE_FINAL_TYPE (TbLearner, tb_learner, TB, LEARNER, GObject)

/* A guest. */
TbLearner *tb_learner_new (void);
/* Reads what is kept of a bowler. If it cannot be read, nothing more is kept of that bowler: get_problem().
 */
void tb_learner_set_bowler (TbLearner *self, const char *id);
const char *tb_learner_get_bowler (TbLearner *self);
/* Borrowed; NULL if it cannot be read. */
const TbProgress *tb_learner_get_progress (TbLearner *self);
/* Why nothing is kept, a whole sentence; NULL if all is well. Borrowed. */
const char *tb_learner_get_problem (TbLearner *self);

/* Keeps the guess at the runner's present step, which has been judged. */
void tb_learner_keep (TbLearner *self, TbLessonRunner *runner);
/* Deletes all that is kept of the bowler. The error is a whole sentence. */
gboolean tb_learner_forget (TbLearner *self, GError **error);

G_END_DECLS
