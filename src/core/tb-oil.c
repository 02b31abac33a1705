/* The film between the cells is a tensor product of uniform cubic B-splines with the cells as coefficients (C. de
 * Boor, A Practical Guide to Splines, 1978). They are never negative and sum to one, so the film is never negative
 * and its integral is the sum of the coefficients times the cell's area. At an edge the cells are reflected: what a
 * spline spreads over the edge comes back from its mirror image, and the sum stays exact.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "tb-oil.h"

#include <string.h>
#include "tb-oil-film.h"

void
tb_oil_clear (TbOil *oil)
{
  memset (oil, 0, sizeof *oil);
}

static void
sum_up (TbOil *oil)
{
  oil->sum = oil->least = 0;
  for (int row = 0; row < TB_OIL_ROWS; row++)
    {
      double of_row = 0;
      for (int column = 0; column < TB_OIL_COLUMNS; column++)
        {
          double film = tb_oil_cell (oil, row, column);
          of_row += film;
          oil->least = fmin (oil->least, film);
        }
      oil->sum += of_row;
    }
}

void
tb_oil_reflect (TbOil *oil)
{
  sum_up (oil);
  for (int r = TB_OIL_PAD; r < TB_OIL_ROWS + TB_OIL_PAD; r++)
    for (int i = 0; i < TB_OIL_PAD; i++)
      {
        oil->cell[r][TB_OIL_PAD - 1 - i] = oil->cell[r][TB_OIL_PAD + i];
        oil->cell[r][TB_OIL_PAD + TB_OIL_COLUMNS + i] = oil->cell[r][TB_OIL_PAD + TB_OIL_COLUMNS - 1 - i];
      }
  for (int i = 0; i < TB_OIL_PAD; i++)
    {
      memcpy (oil->cell[TB_OIL_PAD - 1 - i], oil->cell[TB_OIL_PAD + i], sizeof oil->cell[0]);
      memcpy (oil->cell[TB_OIL_PAD + TB_OIL_ROWS + i], oil->cell[TB_OIL_PAD + TB_OIL_ROWS - 1 - i],
              sizeof oil->cell[0]);
    }
}

double
tb_oil_film (const TbOil *oil, double x, double y)
{
  return oil_film_at (oil, x, y, signbit (x));
}

double
tb_oil_film_mirrored (const TbOil *oil, double x, double y)
{
  return oil_film_at (oil, x, y, !signbit (x));
}

double
tb_oil_volume (const TbOil *oil)
{
  return oil->sum * TB_OIL_CELL_AREA;
}

/* The thickest film across the lane at the centre of a row, read as the ball reads it. */
static double
thickest_across (const TbOil *oil, double y)
{
  double thickest = 0;
  for (int column = 0; column < TB_OIL_COLUMNS; column++)
    thickest = fmax (thickest, tb_oil_film (oil, TB_LANE_HALF_WIDTH - (column + 0.5) * TB_BOARD_WIDTH, y));
  return thickest;
}

/* Looks for the end of the film to this length, m. */
#define LENGTH_STEP (0.01 * TB_METRES_PER_FOOT)

double
tb_oil_length (const TbOil *oil, double threshold)
{
  int row = TB_OIL_ROWS - 1;
  while (row >= 0 && thickest_across (oil, (row + 0.5) * TB_OIL_ROW_LENGTH) <= threshold)
    row--;
  if (row < 0)
    return 0;
  double inside = (row + 0.5) * TB_OIL_ROW_LENGTH, outside = inside + TB_OIL_ROW_LENGTH;
  while (outside - inside > LENGTH_STEP)
    {
      double middle = 0.5 * (inside + outside);
      if (thickest_across (oil, middle) > threshold)
        inside = middle;
      else
        outside = middle;
    }
  return 0.5 * (inside + outside);
}

void
tb_oil_mirror (TbOil *oil)
{
  for (int row = 0; row < TB_OIL_ROWS; row++)
    for (int column = 0; column < TB_OIL_COLUMNS / 2; column++)
      {
        double swap = tb_oil_cell (oil, row, column);
        tb_oil_set_cell (oil, row, column, tb_oil_cell (oil, row, TB_OIL_COLUMNS - 1 - column));
        tb_oil_set_cell (oil, row, TB_OIL_COLUMNS - 1 - column, swap);
      }
  tb_oil_reflect (oil);
}

void
tb_oil_scale (TbOil *oil, double factor)
{
  for (int row = 0; row < TB_OIL_ROWS; row++)
    for (int column = 0; column < TB_OIL_COLUMNS; column++)
      tb_oil_set_cell (oil, row, column, factor * tb_oil_cell (oil, row, column));
  tb_oil_reflect (oil);
}

/* A padded index folded back to the cell whose mirror image it is. */
static inline int
fold (int index, int count)
{
  index -= TB_OIL_PAD;
  return index < 0 ? -1 - index : index >= count ? 2 * count - 1 - index : index;
}

void
tb_oil_add (TbOil *oil, double x, double y, double volume)
{
  GridPlace place;
  grid_place (x, y, signbit (x), &place);
  double film = volume / TB_OIL_CELL_AREA;
  for (int i = 0; i < 4; i++)
    for (int j = 0; j < 4; j++)
      {
        int row = fold (place.row + i, TB_OIL_ROWS), column = fold (place.column + j * place.towards, TB_OIL_COLUMNS);
        oil->cell[row + TB_OIL_PAD][column + TB_OIL_PAD] += film * place.along[i] * place.across[j];
      }
}

void
tb_oil_exchange (TbOil *change, const TbOil *film, const TbOilExchange *exchange)
{
  GridPlace place;
  bool left = signbit (exchange->x);
  grid_place (exchange->x, exchange->y, left != exchange->mirrored, &place);
  double take = exchange->take_area / TB_OIL_CELL_AREA, give = exchange->give / TB_OIL_CELL_AREA;
  for (int i = 0; i < 4; i++)
    for (int j = 0; j < 4; j++)
      {
        int row = fold (place.row + i, TB_OIL_ROWS) + TB_OIL_PAD;
        int column = fold (place.column + j * place.towards, TB_OIL_COLUMNS) + TB_OIL_PAD;
        change->cell[row][column] += place.along[i] * place.across[j] * (give - take * film->cell[row][column]);
      }
}

void
tb_oil_apply (TbOil *film, const TbOil *change)
{
  for (int row = 0; row < TB_OIL_ROWS; row++)
    for (int column = 0; column < TB_OIL_COLUMNS; column++)
      tb_oil_set_cell (film, row, column, tb_oil_cell (film, row, column) + tb_oil_cell (change, row, column));
  tb_oil_reflect (film);
}

TbStatus
tb_oil_check (const TbOil *oil)
{
  if (!isfinite (oil->sum))
    return TB_ERROR_NOT_FINITE;
  if (oil->least < 0)
    return TB_ERROR_OUT_OF_RANGE;
  return oil->sum > 0 ? TB_OK : TB_ERROR_EMPTY_PATTERN;
}

/* 0 to 1 with no kink in slope or curvature. */
static double
smooth_step (double t)
{
  t = hold_between (t, 0, 1);
  return t * t * t * (10 + t * (6 * t - 15));
}

static TbStatus
check_profile (const TbOilProfile *p)
{
  const double numbers[]
      = { p->length, p->fade, p->front, p->back, p->outside_share, p->outside_x, p->inside_x };
  for (size_t i = 0; i < sizeof numbers / sizeof numbers[0]; i++)
    if (!isfinite (numbers[i]))
      return TB_ERROR_NOT_FINITE;
  if (p->length <= 0 || p->length > TB_HEAD_PIN_Y || p->fade < 0 || p->fade > p->length || p->front <= 0
      || p->back <= 0 || p->outside_share < 0 || p->outside_share > 1 || p->outside_x < 0
      || p->inside_x < p->outside_x || p->inside_x > TB_LANE_HALF_WIDTH)
    return TB_ERROR_OUT_OF_RANGE;
  return TB_OK;
}

static double
profile_along (const TbOilProfile *p, double y)
{
  if (y >= p->length)
    return 0;
  double fade = p->fade > 0 ? smooth_step ((p->length - y) / p->fade) : 1;
  return p->front * pow (p->back / p->front, y / p->length) * fade;
}

static double
profile_across (const TbOilProfile *p, double from_edge)
{
  double width = p->inside_x - p->outside_x;
  double inside = width > 0 ? smooth_step ((from_edge - p->outside_x) / width) : from_edge >= p->inside_x;
  return p->outside_share + (1 - p->outside_share) * inside;
}

TbStatus
tb_oil_fill_profile (TbOil *oil, const TbOilProfile *profile)
{
  TbStatus status = check_profile (profile);
  if (status != TB_OK)
    return status;
  tb_oil_clear (oil);
  for (int row = 0; row < TB_OIL_ROWS; row++)
    {
      double along = profile_along (profile, (row + 0.5) * TB_OIL_ROW_LENGTH);
      for (int column = 0; column < TB_OIL_COLUMNS; column++)
        {
          int from_edge = column < TB_OIL_COLUMNS / 2 ? column : TB_OIL_COLUMNS - 1 - column;
          tb_oil_set_cell (oil, row, column, along * profile_across (profile, (from_edge + 0.5) * TB_BOARD_WIDTH));
        }
    }
  tb_oil_reflect (oil);
  return TB_OK;
}
