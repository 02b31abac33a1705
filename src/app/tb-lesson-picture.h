/* The lane of a lesson: "before" from the start, "after" once it is revealed; the marker of the guess can be
 * dragged, or put down with a tap. The runner's throw runs by this widget's frame clock.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "tb-lane-view.h"
#include "tb-lesson-runner.h"
#include "tb-picture.h"

G_BEGIN_DECLS

#define TB_TYPE_LESSON_PICTURE (tb_lesson_picture_get_type ())
G_DECLARE_FINAL_TYPE (TbLessonPicture, tb_lesson_picture, TB, LESSON_PICTURE, TbPicture)

/* Once; the session is the runner's. */
void tb_lesson_picture_set_runner (TbLessonPicture *self, TbLessonRunner *runner);
void tb_lesson_picture_set_projection (TbLessonPicture *self, TbLaneProjection projection);
/* Where the marker's handle is, px; FALSE where there is none. */
gboolean tb_lesson_picture_get_marker (TbLessonPicture *self, double *px, double *py);
/* What takes the keyboard for it; borrowed. */
GtkWidget *tb_lesson_picture_get_grip (TbLessonPicture *self);
/* What the pointer's drag does, px of the picture. */
void tb_lesson_picture_drag_to (TbLessonPicture *self, double x, double y);

G_END_DECLS
