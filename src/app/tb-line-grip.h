/* What holds the keyboard for one handle of the launch line. The lane's picture draws it and takes the pointer.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>
#include "tb-line-handles.h"
#include "tb-session.h"

G_BEGIN_DECLS

#define TB_TYPE_LINE_GRIP (tb_line_grip_get_type ())
G_DECLARE_FINAL_TYPE (TbLineGrip, tb_line_grip, TB, LINE_GRIP, GtkWidget)

GtkWidget *tb_line_grip_new (TbLineHandle which);
void tb_line_grip_set_session (TbLineGrip *self, TbSession *session);
/* Moves it to a board of the bowler's, held to the lane; one step to undo with what follows quickly. */
void tb_line_grip_put (TbLineGrip *self, double board);
/* "Laid down at: board 24.0". Borrowed. */
const char *tb_line_grip_get_words (TbLineGrip *self);

G_END_DECLS
