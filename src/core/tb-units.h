/* Conversions between core's SI units and the units a bowler uses.
 *
 * Core computes in metres, seconds, kilograms and radians without exception. This header is the only
 * place where any other unit is turned into one of those or back. Every function takes and returns a
 * plain number; the unit is in the name.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#define TB_PI 3.14159265358979323846

/* Metres in an inch (international inch, 1959, exact). */
#define TB_METRES_PER_INCH 0.0254
/* Metres in a foot (exact). */
#define TB_METRES_PER_FOOT 0.3048
/* Metres a second in a mile an hour (exact). */
#define TB_METRES_PER_SECOND_PER_MPH 0.44704
/* Kilograms in a pound (avoirdupois, 1959, exact). */
#define TB_KILOGRAMS_PER_POUND 0.45359237
#define TB_OUNCES_PER_POUND 16.0
/* Standard gravity, m/s² (CGPM 1901, exact). */
#define TB_STANDARD_GRAVITY 9.80665

/* Width of the lane between the gutters: 41 1/2 in (USBC Equipment Specifications Manual). */
#define TB_LANE_WIDTH_IN 41.5
/* Boards across the lane (common practice; the width of one follows). */
#define TB_LANE_BOARDS 39
#define TB_BOARD_WIDTH (TB_LANE_WIDTH_IN * TB_METRES_PER_INCH / TB_LANE_BOARDS)
/* The board in the middle of the lane: x = 0 is its centre. */
#define TB_MIDDLE_BOARD 20.0

/* Film thickness of one unit of oil: 0.0167 mL on a square foot (trade's unit, from memory). */
#define TB_MILLILITRES_PER_UNIT_FOOT2 0.0167
#define TB_METRES_PER_OIL_UNIT \
  (TB_MILLILITRES_PER_UNIT_FOOT2 * 1e-6 / (TB_METRES_PER_FOOT * TB_METRES_PER_FOOT))

static inline double tb_same (double value) { return value; }

static inline double tb_metres_from_in (double in) { return in * TB_METRES_PER_INCH; }
static inline double tb_in_from_metres (double m) { return m / TB_METRES_PER_INCH; }
static inline double tb_metres_from_ft (double ft) { return ft * TB_METRES_PER_FOOT; }
static inline double tb_ft_from_metres (double m) { return m / TB_METRES_PER_FOOT; }
static inline double tb_metres_from_uin (double uin) { return uin * (TB_METRES_PER_INCH * 1e-6); }
static inline double tb_uin_from_metres (double m) { return m / (TB_METRES_PER_INCH * 1e-6); }
static inline double tb_metres_from_um (double um) { return um * 1e-6; }
static inline double tb_um_from_metres (double m) { return m / 1e-6; }
static inline double tb_metres_per_second_from_mph (double mph) { return mph * TB_METRES_PER_SECOND_PER_MPH; }
static inline double tb_mph_from_metres_per_second (double v) { return v / TB_METRES_PER_SECOND_PER_MPH; }
static inline double tb_km_per_hour_from_metres_per_second (double v) { return v * 3.6; }
static inline double tb_radians_per_second_from_rpm (double rpm) { return rpm * (TB_PI / 30.0); }
static inline double tb_rpm_from_radians_per_second (double w) { return w / (TB_PI / 30.0); }
static inline double tb_radians_from_deg (double deg) { return deg * (TB_PI / 180.0); }
static inline double tb_deg_from_radians (double rad) { return rad / (TB_PI / 180.0); }
static inline double tb_kilograms_from_lb (double lb) { return lb * TB_KILOGRAMS_PER_POUND; }
static inline double tb_lb_from_kilograms (double kg) { return kg / TB_KILOGRAMS_PER_POUND; }
static inline double tb_kilograms_from_oz (double oz) { return oz * (TB_KILOGRAMS_PER_POUND / TB_OUNCES_PER_POUND); }
static inline double tb_oz_from_kilograms (double kg) { return kg / (TB_KILOGRAMS_PER_POUND / TB_OUNCES_PER_POUND); }
static inline double tb_film_from_units (double units) { return units * TB_METRES_PER_OIL_UNIT; }
static inline double tb_units_from_film (double film) { return film / TB_METRES_PER_OIL_UNIT; }
static inline double tb_ml_from_cubic_metres (double volume) { return volume / 1e-6; }
static inline double tb_cubic_metres_from_ml (double ml) { return ml * 1e-6; }
/* Revolutions from an angle turned through, and back. */
static inline double tb_revolutions_from_radians (double rad) { return rad / (2.0 * TB_PI); }

/* Boards, counted from the bowler's own side, against x in the bowler's frame (m from the middle of the
 * lane, positive towards the bowler's own side). Board n is its centre: the edges are 0.5 and 39.5. */
static inline double tb_x_from_board (double board) { return (TB_MIDDLE_BOARD - board) * TB_BOARD_WIDTH; }
static inline double tb_board_from_x (double x) { return TB_MIDDLE_BOARD - x / TB_BOARD_WIDTH; }
/* A width, with its sign: positive towards higher boards. */
static inline double tb_boards_from_width (double width) { return -width / TB_BOARD_WIDTH; }
