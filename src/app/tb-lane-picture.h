/* The lane with both runs and both balls. Hovering reads a place; dragging moves the moment looked at.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "tb-lane-view.h"
#include "tb-picture.h"

G_BEGIN_DECLS

#define TB_TYPE_LANE_PICTURE (tb_lane_picture_get_type ())
G_DECLARE_FINAL_TYPE (TbLanePicture, tb_lane_picture, TB, LANE_PICTURE, TbPicture)

/* Signal "pointed": what the pointer is over is another. */

void tb_lane_picture_set_projection (TbLanePicture *self, TbLaneProjection projection);
TbLaneProjection tb_lane_picture_get_projection (TbLanePicture *self);
/* The place under the pointer (lane frame, m); FALSE where there is none. */
gboolean tb_lane_picture_get_pointed (TbLanePicture *self, double *x, double *y);
/* Where foul line and head pin stand in the picture, px from its left side. FALSE unless the lane lies on its
 * side. */
gboolean tb_lane_picture_get_ends (TbLanePicture *self, double *foul_line, double *head_pin);

G_END_DECLS
