/* What a lesson says of itself, in words: how a throw is set up, what was changed, how a guess went.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "tb-lesson-runner.h"
#include "tb-progress.h"

G_BEGIN_DECLS

/* All texts are translated; free them. */

/* How "before" is thrown: a line about the delivery, one about ball and lane. */
char *tb_lesson_words_before (const TbStudy *study, TbUnits units);
/* What "after" has that "before" has not: a line for each change. */
char *tb_lesson_words_after (const TbStudy *study, TbUnits units);
/* How the guess at the present step compares with the throw, in a sentence. NULL before it is revealed. */
char *tb_lesson_words_guess (TbLessonRunner *runner);
/* The whole lesson, a line each: how many right, how far off, the best streak. */
char *tb_lesson_words_score (const TbLessonScore *score);
/* What a bowler's last guesses at a lesson came to, in a few words. progress may be NULL. */
char *tb_lesson_words_progress (const TbProgress *progress, const TbLesson *lesson);

G_END_DECLS
