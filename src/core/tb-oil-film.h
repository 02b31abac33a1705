/* How the film is read, for the parts of core that do it at every evaluation. Private to core.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <math.h>
#include "tb-oil.h"
#include "tb-spline.h"

/* Where a place falls in the grid: four padded rows from `row` on, four padded columns from `column` on in steps of
 * `towards`, and their weights. */
typedef struct GridPlace
{
  int row, column, towards;
  double along[4], across[4];
} GridPlace;

#define COLUMNS_PER_METRE (1 / TB_BOARD_WIDTH)
#define ROWS_PER_METRE (1 / TB_OIL_ROW_LENGTH)

static inline double
hold_between (double value, double low, double high)
{
  return value < low ? low : value > high ? high : value;
}

/* Columns count from the right edge, x grows to the right: column 0 has the largest x. Both halves of the lane are worked
 * out as the right one, and the columns taken from the other edge: the mirror image is exact to the bit. */
static inline void
grid_place (double x, double y, bool from_left, GridPlace *place)
{
  double column = hold_between ((TB_LANE_HALF_WIDTH - fabs (x)) * COLUMNS_PER_METRE, 0, TB_OIL_COLUMNS) - 0.5;
  double row = hold_between (y * ROWS_PER_METRE, 0, TB_OIL_ROWS) - 0.5;
  /* Both are over −1: a conversion is as good as floor() and much quicker. Where the sum rounds up, the weights of the next
   * cell at just under its beginning are the same. */
  int column_below = (int) (column + 1) - 1, row_below = (int) (row + 1) - 1;
  place->towards = from_left ? -1 : 1;
  place->column = column_below - 1 + TB_OIL_PAD;
  if (from_left)
    place->column = TB_OIL_COLUMNS + 2 * TB_OIL_PAD - 1 - place->column;
  place->row = row_below - 1 + TB_OIL_PAD;
  spline_weights (column - column_below, place->across);
  spline_weights (row - row_below, place->along);
}

/* from_left: x is taken as its mirror image's, columns from the left edge. */
static inline double
oil_film_at (const TbOil *oil, double x, double y, bool from_left)
{
  GridPlace place;
  grid_place (x, y, from_left, &place);
  double film = 0;
  for (int i = 0; i < 4; i++)
    {
      const double *cell = &oil->cell[place.row + i][place.column];
      film += place.along[i]
              * (place.across[0] * cell[0] + place.across[1] * cell[place.towards]
                 + place.across[2] * cell[2 * place.towards] + place.across[3] * cell[3 * place.towards]);
    }
  return film;
}
