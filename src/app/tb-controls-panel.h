/* The left column: every input of "after", by what it belongs to.
 *
 * The rows come from core's field tables. Which stand in plain sight is decided here; a field that is not
 * named here stands under "More" of its group by itself.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>
#include "tb-session.h"

G_BEGIN_DECLS

#define TB_TYPE_CONTROLS_PANEL (tb_controls_panel_get_type ())
G_DECLARE_FINAL_TYPE (TbControlsPanel, tb_controls_panel, TB, CONTROLS_PANEL, GtkWidget)

void tb_controls_panel_set_session (TbControlsPanel *self, TbSession *session);
/* The row of a field; NULL if it has none. Borrowed. */
GtkWidget *tb_controls_panel_get_row (TbControlsPanel *self, const char *field);

G_END_DECLS
