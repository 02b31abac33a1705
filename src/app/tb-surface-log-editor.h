/* The log of surface work of the ball of "after".
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>
#include "tb-session.h"

G_BEGIN_DECLS

#define TB_TYPE_SURFACE_LOG_EDITOR (tb_surface_log_editor_get_type ())
G_DECLARE_FINAL_TYPE (TbSurfaceLogEditor, tb_surface_log_editor, TB, SURFACE_LOG_EDITOR, GtkWidget)

void tb_surface_log_editor_set_session (TbSurfaceLogEditor *self, TbSession *session);

G_END_DECLS
