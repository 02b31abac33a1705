/* Friction, slip and heading of both runs along the lane. Hovering, dragging or the arrow keys move the ball,
 * here and in every other view.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "tb-picture.h"

G_BEGIN_DECLS

#define TB_TYPE_FORCE_GRAPH (tb_force_graph_get_type ())
G_DECLARE_FINAL_TYPE (TbForceGraph, tb_force_graph, TB, FORCE_GRAPH, TbPicture)

/* Says where foul line and head pin are to stand, px from the left side; FALSE: as suits the graph. */
typedef gboolean (*TbForceGraphEnds) (gpointer user_data, double *foul_line, double *head_pin);
/* It is asked whenever the graph is drawn. */
void tb_force_graph_set_ends (TbForceGraph *self, TbForceGraphEnds ends, gpointer user_data);
/* What both runs have where the reading line is, in words; free it. */
char *tb_force_graph_get_reading (TbForceGraph *self);

G_END_DECLS
