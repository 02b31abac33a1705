/* The lane as it is built: where the edges, arrows, dots and pins are.
 *
 * Frame: x to the right, y down the lane from the foul line, z up from the lane's surface; metres.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "tb-units.h"

/* Foul line to the centre of the head pin: 60 ft (USBC Equipment Specifications Manual). */
#define TB_HEAD_PIN_FT 60.0
#define TB_HEAD_PIN_Y (TB_HEAD_PIN_FT * TB_METRES_PER_FOOT)
/* Foul line to the pit: 62 ft 10 3/16 in (same). */
#define TB_PIT_FT (62.0 + (10.0 + 3.0 / 16.0) / 12.0)
#define TB_PIT_Y (TB_PIT_FT * TB_METRES_PER_FOOT)
/* Half the width of the lane; the gutters begin here. */
#define TB_LANE_HALF_WIDTH (0.5 * TB_LANE_WIDTH_IN * TB_METRES_PER_INCH)
/* The distance at which a bowler's aim is told: "the arrows". */
#define TB_ARROWS_FT 15.0
#define TB_ARROWS_Y (TB_ARROWS_FT * TB_METRES_PER_FOOT)

#define TB_N_ARROWS 7
#define TB_N_DOTS 10
#define TB_N_PINS 10

typedef struct TbMark
{
  double x; /* m from the middle, positive to the right */
  double y; /* m from the foul line */
} TbMark;

/* The seven arrows, right to left, boards 5, 10, … 35, in their V (12.5 ft at the sides to 15.75 ft in the
 * middle: typical, from memory). */
extern const TbMark tb_lane_arrows[TB_N_ARROWS];
/* The ten dots beyond the foul line, right to left, boards 3, 5, 8, 11, 14 and their mirror (7 ft: typical). */
extern const TbMark tb_lane_dots[TB_N_DOTS];
/* Centres of the ten pins; index 0 is the head pin, 9 the 10 pin. */
extern const TbMark tb_lane_pins[TB_N_PINS];

/* The pin's profile: height and radius, m (Equipment Specifications Manual, from memory). */
typedef struct TbPinProfile
{
  double height;
  double radius;
} TbPinProfile;
#define TB_N_PIN_PROFILE 15
extern const TbPinProfile tb_pin_profile[TB_N_PIN_PROFILE];
