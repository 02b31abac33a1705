/* The oil film on the lane: a grid of thicknesses, read smoothly.
 *
 * The grid is one column a board, one row for half a foot, and always counts from the right edge. The
 * stored numbers are the coefficients of a uniform cubic B-spline in both directions, reflected at the
 * edges of the lane and at the foul line: the film that is read is twice continuously differentiable,
 * never negative, and its integral over the lane is the sum of the cells times their area, to rounding.
 * Past the side edges the film at the edge goes on (an edgeless shot reads it there).
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <stdbool.h>
#include "tb-lane-geometry.h"
#include "tb-status.h"

#define TB_OIL_COLUMNS TB_LANE_BOARDS
#define TB_OIL_ROWS_PER_FOOT 2
/* Rows up to 63 ft, so that the last lies past the pit. */
#define TB_OIL_ROWS (63 * TB_OIL_ROWS_PER_FOOT)
#define TB_OIL_ROW_LENGTH (TB_METRES_PER_FOOT / TB_OIL_ROWS_PER_FOOT)
#define TB_OIL_CELL_AREA (TB_BOARD_WIDTH * TB_OIL_ROW_LENGTH)
/* Reflected cells kept on every side, so that reading needs no branch. */
#define TB_OIL_PAD 2
#define TB_OIL_STRIDE (TB_OIL_COLUMNS + 2 * TB_OIL_PAD + 1)

typedef struct TbOil
{
  /* Film, m, with its reflected border. Use the functions below to read and write a cell. */
  double cell[TB_OIL_ROWS + 2 * TB_OIL_PAD][TB_OIL_STRIDE];
  /* Sum of the cells and the least of them, as of the last tb_oil_reflect(): every shot asks whether they will do. */
  double sum, least;
} TbOil;

void tb_oil_clear (TbOil *oil);

/* Film of one cell, m. row counts half feet from the foul line, column boards from the right edge; both
 * from 0. */
static inline double
tb_oil_cell (const TbOil *oil, int row, int column)
{
  return oil->cell[row + TB_OIL_PAD][column + TB_OIL_PAD];
}
static inline void
tb_oil_set_cell (TbOil *oil, int row, int column, double film)
{
  oil->cell[row + TB_OIL_PAD][column + TB_OIL_PAD] = film;
}
/* Makes the reflected border agree with the cells. Call it after the last tb_oil_set_cell() and before
 * reading. */
void tb_oil_reflect (TbOil *oil);

/* The film at a place, m. x, y in the lane frame, m; y may lie before the foul line or past the pit. */
double tb_oil_film (const TbOil *oil, double x, double y);
/* What a left-hander at −x would read, with the very operations a right-hander's reading of the mirrored film takes: the
 * mirror image is exact to the bit. */
double tb_oil_film_mirrored (const TbOil *oil, double x, double y);
/* All of the oil, m³. */
double tb_oil_volume (const TbOil *oil);
/* Distance from the foul line to where the film, the thickest across the lane, last exceeds the threshold
 * (m), in m; 0 for a film that never does. */
double tb_oil_length (const TbOil *oil, double threshold);
/* The same film, left for right. */
void tb_oil_mirror (TbOil *oil);
/* Multiplies the film. */
void tb_oil_scale (TbOil *oil, double factor);
/* Adds a volume (m³, negative takes away) around a place, spread with the weights the film is read with.
 * The border is not updated: call tb_oil_reflect() after the last. Conserves the volume to rounding. */
void tb_oil_add (TbOil *oil, double x, double y, double volume);

/* What a passing ball does to the film under it. */
typedef struct TbOilExchange
{
  bool mirrored;    /* x is a left-hander's */
  double x, y;      /* m */
  double take_area; /* m², the strip of lane times the share of the film that goes with the ball */
  double give;      /* m³, what the ball leaves */
} TbOilExchange;
/* Adds to `change` (a grid of differences, at first all zero) what an exchange does to `film`. Each cell gives in
 * proportion to the oil it has, so that none falls below nothing. Call tb_oil_apply() when the ball is gone. */
void tb_oil_exchange (TbOil *change, const TbOil *film, const TbOilExchange *exchange);
/* film + change, border included. */
void tb_oil_apply (TbOil *film, const TbOil *change);
/* TB_OK, TB_ERROR_NOT_FINITE, TB_ERROR_OUT_OF_RANGE (a cell below nothing) or TB_ERROR_EMPTY_PATTERN. */
TbStatus tb_oil_check (const TbOil *oil);

/* A house-style pattern by its numbers; all smooth, the same on both sides. */
typedef struct TbOilProfile
{
  double length;        /* m, where the film has come down to nothing */
  double fade;          /* m, the last stretch in which it does */
  double front;         /* film at the foul line in the middle, m */
  double back;          /* what the film along the lane would be at `length` without the fade, m */
  double outside_share; /* film outside over film in the middle, 0 to 1 */
  double outside_x;     /* m from the lane's edge: outside of this the film is the outside film */
  double inside_x;      /* m from the lane's edge: inside of this it is the middle film */
} TbOilProfile;

/* Fills the grid with a profile: front · (back/front)^(y/length) along, smooth steps at the end and across.
 * TB_OK, TB_ERROR_NOT_FINITE or TB_ERROR_OUT_OF_RANGE; on an error the grid is not touched. */
TbStatus tb_oil_fill_profile (TbOil *oil, const TbOilProfile *profile);
