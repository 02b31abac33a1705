/* The lane with both runs and both balls. Hovering reads a place; dragging moves the moment looked at,
 * or a handle of the launch line of "after".
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "tb-lane-view.h"
#include "tb-line-handles.h"
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

/* The handle that is dragged, pointed at or focused; and what it stands at, in words, borrowed, or NULL. */
TbLineHandle tb_lane_picture_get_raised (TbLanePicture *self);
const char *tb_lane_picture_get_line_words (TbLanePicture *self);
/* Whether the pointer is on a handle, or drags it. */
gboolean tb_lane_picture_is_on_handle (TbLanePicture *self);
/* Where a handle is, px, and what holds the keyboard for it; borrowed. */
void tb_lane_picture_get_handle (TbLanePicture *self, TbLineHandle which, double *px, double *py);
GtkWidget *tb_lane_picture_get_grip (TbLanePicture *self, TbLineHandle which);
/* What the pointer's drag does, px of the picture. */
void tb_lane_picture_drag_begin (TbLanePicture *self, double x, double y);
void tb_lane_picture_drag_to (TbLanePicture *self, double x, double y);
void tb_lane_picture_drag_end (TbLanePicture *self);

G_END_DECLS
