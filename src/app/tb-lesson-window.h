/* Lessons: the list of them, a lesson's steps, its end, and what is kept of a bowler. In a session of its
 * own: the study of the main window is left as it is.
 *
 * Signal "take" with a TbStudy, borrowed: it is to be opened in the main window.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>
#include "tb-learner.h"
#include "tb-lesson-page.h"

G_BEGIN_DECLS

#define TB_TYPE_LESSON_WINDOW (tb_lesson_window_get_type ())
G_DECLARE_FINAL_TYPE (TbLessonWindow, tb_lesson_window, TB, LESSON_WINDOW, GtkWindow)

/* parent may be NULL. Units, the speed of time and the bowler who learns are taken from the session; nothing
 * is given back to it. */
TbLessonWindow *tb_lesson_window_new (GtkWindow *parent, TbSession *session);
void tb_lesson_window_begin (TbLessonWindow *self, TbLesson *lesson);
/* Begins a lesson from a file, or tells why not. */
gboolean tb_lesson_window_load (TbLessonWindow *self, GFile *file);

/* All borrowed. */
TbLessonRunner *tb_lesson_window_get_runner (TbLessonWindow *self);
TbLearner *tb_lesson_window_get_learner (TbLessonWindow *self);
/* "list", "step", "end", "progress" */
GtkWidget *tb_lesson_window_get_page (TbLessonWindow *self, const char *page);
const char *tb_lesson_window_get_page_name (TbLessonWindow *self);

G_END_DECLS
