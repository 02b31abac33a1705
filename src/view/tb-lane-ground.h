/* What stands still on a lane: wood, boards, gutters, arrows, dots, foul line, pit, pins, and the numbers around it.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "tb-lane-layout.h"

G_BEGIN_DECLS

/* A stretch of floor, m, lane frame. */
typedef struct TbLaneArea
{
  double left, right, near, far;
} TbLaneArea;

/* Adds the area to the path. */
void tb_lane_quad (cairo_t *cr, const TbLaneLayout *layout, TbLaneArea area);
/* Clips to lane and gutters. */
void tb_lane_clip (cairo_t *cr, const TbLaneLayout *layout);

void tb_lane_ground_draw (TbCanvas *canvas, const TbLaneLayout *layout, const TbLaneScene *scene);
/* Puts a label where the scale of feet has the number for a place on the left gutter's outer edge, px. */
void tb_lane_set_foot_place (TbLabel *label, const TbLaneLayout *layout, TbPoint at);
/* Board numbers, feet, and the note on scale. */
void tb_lane_scales_draw (TbCanvas *canvas, const TbLaneLayout *layout, const TbLaneScene *scene);
void tb_lane_pins_draw (TbCanvas *canvas, const TbLaneLayout *layout);
/* Radius of a pin in the plans, px. */
double tb_lane_pin_radius (const TbLaneLayout *layout);

G_END_DECLS
