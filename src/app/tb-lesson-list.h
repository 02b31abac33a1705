/* All lessons, each with what it is about and how far the learner has got; who is learning; files that cannot
 * be used.
 *
 * Signal "chosen" with a TbLesson, borrowed. Buttons ask for the window's "lessons.open" and
 * "lessons.progress".
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>
#include "tb-learner.h"
#include "tb-lesson-shelf.h"

G_BEGIN_DECLS

#define TB_TYPE_LESSON_LIST (tb_lesson_list_get_type ())
G_DECLARE_FINAL_TYPE (TbLessonList, tb_lesson_list, TB, LESSON_LIST, GtkWidget)

/* Once. The library is where bowlers are chosen from. */
void tb_lesson_list_set_learner (TbLessonList *self, TbLearner *learner, TbLibrary *library);
/* Reads the user's folder again. */
void tb_lesson_list_reload (TbLessonList *self);
/* Borrowed, until the next reload. */
const TbLessonShelf *tb_lesson_list_get_shelf (TbLessonList *self);

G_END_DECLS
