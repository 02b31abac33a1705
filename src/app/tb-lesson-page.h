/* One step of a lesson: what is said, what is asked, the lane, and after the throw what it showed.
 *
 * Actions: "step.throw", "step.show" (without a guess), "step.next", "step.previous". Keys: 1 to 6 choose,
 * Ctrl+T throws, Alt+Right and Alt+Left turn the page. A button asks for the window's "lessons.take" with the
 * step's position.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>
#include "tb-lesson-picture.h"

G_BEGIN_DECLS

#define TB_TYPE_LESSON_PAGE (tb_lesson_page_get_type ())
G_DECLARE_FINAL_TYPE (TbLessonPage, tb_lesson_page, TB, LESSON_PAGE, GtkWidget)

/* Once. */
void tb_lesson_page_set_runner (TbLessonPage *self, TbLessonRunner *runner);

/* For tests; borrowed. */
TbLessonPicture *tb_lesson_page_get_picture (TbLessonPage *self);
GtkCheckButton *tb_lesson_page_get_choice (TbLessonPage *self, guint index);
const char *tb_lesson_page_get_verdict (TbLessonPage *self);
const char *tb_lesson_page_get_explanation (TbLessonPage *self);

G_END_DECLS
