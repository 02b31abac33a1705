/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "tb-hand-positions.h"

#include <math.h>

const TbHandPosition tb_hand_positions[] = {
  { N_ ("Behind the ball"), N_ ("Fingers stay behind: end over end, little side turn."), 15, 8 },
  { N_ ("Up the side"), N_ ("Fingers leave at the side, lifting: a middling hook."), 45, 12 },
  { N_ ("Around the side"), N_ ("The hand comes around: much side turn and tilt."), 75, 20 },
  { N_ ("Back-up"), N_ ("The hand turns outwards: the ball curves the other way."), -30, 10 },
  { NULL, NULL, 0, 0 },
};

/* Angles that a control shows alike are alike, rad: half a degree. */
#define SAME_ANGLE (0.5 * TB_PI / 180.0)

int
tb_hand_position_of (const TbDelivery *delivery)
{
  for (int i = 0; tb_hand_positions[i].label; i++)
    if (fabs (tb_radians_from_deg (tb_hand_positions[i].axis_rotation_deg) - delivery->axis_rotation)
            < SAME_ANGLE
        && fabs (tb_radians_from_deg (tb_hand_positions[i].axis_tilt_deg) - delivery->axis_tilt) < SAME_ANGLE)
      return i;
  return -1;
}

void
tb_hand_position_apply (const TbHandPosition *position, TbDelivery *delivery)
{
  delivery->axis_rotation = tb_radians_from_deg (position->axis_rotation_deg);
  delivery->axis_tilt = tb_radians_from_deg (position->axis_tilt_deg);
}
