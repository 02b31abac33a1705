/* What holds the keyboard for the marker of a guess, and tells assistive technology of it. The lesson's
 * picture draws it and takes the pointer.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>
#include "tb-lesson-runner.h"

G_BEGIN_DECLS

#define TB_TYPE_GUESS_GRIP (tb_guess_grip_get_type ())
G_DECLARE_FINAL_TYPE (TbGuessGrip, tb_guess_grip, TB, GUESS_GRIP, GtkWidget)

/* Boards that an arrow key moves the marker, and Page Up and Down. */
#define TB_GUESS_STEP 0.5
#define TB_GUESS_PAGE 5.0

GtkWidget *tb_guess_grip_new (void);
void tb_guess_grip_set_runner (TbGuessGrip *self, TbLessonRunner *runner);
/* The board of the marker, or where it waits before it has been put anywhere: the middle of the lane. */
double tb_guess_grip_get_board (TbGuessGrip *self);

G_END_DECLS
