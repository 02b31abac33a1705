/* The throw along the bottom: start, pause, speed of time, and a slider over the whole of it.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>
#include "tb-session.h"

G_BEGIN_DECLS

#define TB_TYPE_THROW_BAR (tb_throw_bar_get_type ())
G_DECLARE_FINAL_TYPE (TbThrowBar, tb_throw_bar, TB, THROW_BAR, GtkWidget)

void tb_throw_bar_set_session (TbThrowBar *self, TbSession *session);

G_END_DECLS
