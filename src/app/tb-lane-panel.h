/* The middle of the window: the lane, a line that reads it, and the ways of seeing it.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>
#include "tb-lane-picture.h"

G_BEGIN_DECLS

#define TB_TYPE_LANE_PANEL (tb_lane_panel_get_type ())
G_DECLARE_FINAL_TYPE (TbLanePanel, tb_lane_panel, TB, LANE_PANEL, GtkWidget)

void tb_lane_panel_set_session (TbLanePanel *self, TbSession *session);
void tb_lane_panel_set_projection (TbLanePanel *self, TbLaneProjection projection);
TbLanePicture *tb_lane_panel_get_picture (TbLanePanel *self);
/* What the line reads. Borrowed. */
const char *tb_lane_panel_get_reading (TbLanePanel *self);
/* Whether friction, slip and heading are shown under the lane. */
void tb_lane_panel_set_graph_shown (TbLanePanel *self, gboolean shown);
gboolean tb_lane_panel_get_graph_shown (TbLanePanel *self);

G_END_DECLS
