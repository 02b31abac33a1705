/* The holes of the ball of "after", told as a hand is measured: spans, bridge, diameters, depths, pitches.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>
#include "tb-session.h"

G_BEGIN_DECLS

#define TB_TYPE_GRIP_EDITOR (tb_grip_editor_get_type ())
G_DECLARE_FINAL_TYPE (TbGripEditor, tb_grip_editor, TB, GRIP_EDITOR, GtkWidget)

void tb_grip_editor_set_session (TbGripEditor *self, TbSession *session);

G_END_DECLS
