/* The ball of "after" as it is bought: its numbers, its surface, the limits, and the library it is kept in.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>
#include "tb-session.h"

G_BEGIN_DECLS

#define TB_TYPE_BALL_EDITOR (tb_ball_editor_get_type ())
G_DECLARE_FINAL_TYPE (TbBallEditor, tb_ball_editor, TB, BALL_EDITOR, GtkWidget)

void tb_ball_editor_set_session (TbBallEditor *self, TbSession *session);

/* An id for a name that no ball of the library has yet; free it. */
char *tb_ball_editor_new_id (TbLibrary *library, const char *name);

G_END_DECLS
