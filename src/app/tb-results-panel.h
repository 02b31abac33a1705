/* The right column: ball and release, and below them pages about the two runs.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>
#include "tb-ball-view.h"
#include "tb-session.h"

G_BEGIN_DECLS

#define TB_TYPE_RESULTS_PANEL (tb_results_panel_get_type ())
G_DECLARE_FINAL_TYPE (TbResultsPanel, tb_results_panel, TB, RESULTS_PANEL, GtkWidget)

void tb_results_panel_set_session (TbResultsPanel *self, TbSession *session);
void tb_results_panel_set_ball_eye (TbResultsPanel *self, TbBallEye eye);
/* Adds a page beside "Compare". label is translated. */
void tb_results_panel_add_page (TbResultsPanel *self, GtkWidget *page, const char *name, const char *label);
/* "compare", "why", "next", or the name of a page that was added. All borrowed. */
void tb_results_panel_show_page (TbResultsPanel *self, const char *name);
const char *tb_results_panel_get_page (TbResultsPanel *self);
/* The button that shows the page; NULL for an unknown name. */
GtkWidget *tb_results_panel_get_tab (TbResultsPanel *self, const char *name);
GtkWidget *tb_results_panel_get_stack (TbResultsPanel *self);

G_END_DECLS
