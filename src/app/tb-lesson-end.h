/* The end of a lesson: how it went, step by step.
 *
 * Buttons ask for the window's "lessons.take" with a step's position, "lessons.again" and "lessons.list".
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>
#include "tb-lesson-runner.h"

G_BEGIN_DECLS

#define TB_TYPE_LESSON_END (tb_lesson_end_get_type ())
G_DECLARE_FINAL_TYPE (TbLessonEnd, tb_lesson_end, TB, LESSON_END, GtkWidget)

/* Once. */
void tb_lesson_end_set_runner (TbLessonEnd *self, TbLessonRunner *runner);
/* What it says of the whole lesson; for tests. Borrowed. */
const char *tb_lesson_end_get_words (TbLessonEnd *self);

G_END_DECLS
