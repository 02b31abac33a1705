/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "tb-lane-geometry.h"

/* Boards here count from the right edge, as x does. */
#define BOARD(n) ((TB_MIDDLE_BOARD - (n)) * TB_BOARD_WIDTH)
#define FEET(n) ((n) * TB_METRES_PER_FOOT)
#define INCHES(n) ((n) * TB_METRES_PER_INCH)

/* The V: 12.5 ft at the outside arrows to 15.75 ft at the middle one, evenly. */
#define ARROW_OUTSIDE_FT 12.5
#define ARROW_MIDDLE_FT 15.75
#define ARROW_FT(steps_in) (ARROW_OUTSIDE_FT + (ARROW_MIDDLE_FT - ARROW_OUTSIDE_FT) * (steps_in) / 3.0)

const TbMark tb_lane_arrows[TB_N_ARROWS] = {
  { BOARD (5), FEET (ARROW_FT (0)) },  { BOARD (10), FEET (ARROW_FT (1)) }, { BOARD (15), FEET (ARROW_FT (2)) },
  { BOARD (20), FEET (ARROW_FT (3)) }, { BOARD (25), FEET (ARROW_FT (2)) }, { BOARD (30), FEET (ARROW_FT (1)) },
  { BOARD (35), FEET (ARROW_FT (0)) },
};

#define DOT_FT 7.0
const TbMark tb_lane_dots[TB_N_DOTS] = {
  { BOARD (3), FEET (DOT_FT) },  { BOARD (5), FEET (DOT_FT) },  { BOARD (8), FEET (DOT_FT) },
  { BOARD (11), FEET (DOT_FT) }, { BOARD (14), FEET (DOT_FT) }, { BOARD (26), FEET (DOT_FT) },
  { BOARD (29), FEET (DOT_FT) }, { BOARD (32), FEET (DOT_FT) }, { BOARD (35), FEET (DOT_FT) },
  { BOARD (37), FEET (DOT_FT) },
};

/* Twelve inches between centres; rows 12 sin 60° = 10.392 in apart (USBC Equipment Specifications Manual). */
#define PIN_X(halves) INCHES (6.0 * (halves))
#define PIN_Y(row) (TB_HEAD_PIN_Y + INCHES (10.392304845413264 * (row)))
const TbMark tb_lane_pins[TB_N_PINS] = {
  { PIN_X (0), PIN_Y (0) },  { PIN_X (-1), PIN_Y (1) }, { PIN_X (1), PIN_Y (1) },  { PIN_X (-2), PIN_Y (2) },
  { PIN_X (0), PIN_Y (2) },  { PIN_X (2), PIN_Y (2) },  { PIN_X (-3), PIN_Y (3) }, { PIN_X (-1), PIN_Y (3) },
  { PIN_X (1), PIN_Y (3) },  { PIN_X (3), PIN_Y (3) },
};

#define PROFILE(height_in, diameter_in) { INCHES (height_in), INCHES (0.5 * (diameter_in)) }
const TbPinProfile tb_pin_profile[TB_N_PIN_PROFILE] = {
  PROFILE (0, 2.031),      PROFILE (0.75, 2.828),  PROFILE (2.25, 3.906),   PROFILE (3.375, 4.510),
  PROFILE (4.5, 4.766),    PROFILE (5.875, 4.563), PROFILE (7.25, 3.703),   PROFILE (8.625, 2.472),
  PROFILE (9.375, 1.965),  PROFILE (10, 1.797),    PROFILE (10.875, 1.870), PROFILE (11.75, 2.094),
  PROFILE (12.625, 2.406), PROFILE (13.5, 2.547),  PROFILE (15, 0),
};
