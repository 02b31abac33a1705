/* Figures of a film.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "tb-pattern-figures.h"

#include <math.h>

/* A pattern whose middle carries less than this times the outside has no board where it falls off. */
#define FLAT_RATIO 1.25
/* Common practice: length in feet − 31 is the board at which to leave the oil. */
#define BREAKPOINT_RULE_FT 31.0

double
tb_oil_volume_within (const TbOil *oil, int first_column, int last_column, double near, double far)
{
  int first_row = CLAMP ((int)floor (near / TB_OIL_ROW_LENGTH + 0.5), 0, TB_OIL_ROWS);
  int end_row = CLAMP ((int)floor (far / TB_OIL_ROW_LENGTH + 0.5), 0, TB_OIL_ROWS);
  double sum = 0;

  for (int row = first_row; row < end_row; row++)
    for (int column = first_column; column <= last_column; column++)
      sum += tb_oil_cell (oil, row, column);
  return sum * TB_OIL_CELL_AREA;
}

double
tb_oil_board_volume (const TbOil *oil, int column)
{
  return tb_oil_volume_within (oil, column, column, 0, TB_OIL_ROWS * TB_OIL_ROW_LENGTH);
}

/* The column of a board counted from a side. */
static int
column_of (int board, gboolean from_left)
{
  return from_left ? TB_OIL_COLUMNS - board : board - 1;
}

static double
mean_of_boards (const double volume[TB_OIL_COLUMNS], int first, int last, gboolean from_left)
{
  double sum = 0;

  for (int board = first; board <= last; board++)
    sum += volume[column_of (board, from_left)];
  return sum / (last - first + 1);
}

static double
ratio (double middle, double outside)
{
  return outside > 0 ? middle / outside : (double)INFINITY;
}

/* The board, from a side, where the oil on a board first passes half way up to the middle. */
static double
fall_off (const double volume[TB_OIL_COLUMNS], gboolean from_left)
{
  double outside = mean_of_boards (volume, TB_OUTSIDE_FIRST, TB_OUTSIDE_LAST, from_left);
  double middle = mean_of_boards (volume, TB_MIDDLE_FIRST, TB_MIDDLE_LAST, FALSE);
  double half = 0.5 * (outside + middle);

  if (!(middle > FLAT_RATIO * outside))
    return (double)NAN;
  for (int board = TB_OUTSIDE_FIRST; board < TB_MIDDLE_LAST; board++)
    {
      double here = volume[column_of (board, from_left)], next = volume[column_of (board + 1, from_left)];

      if (here < half && next >= half)
        return board + (half - here) / (next - here);
    }
  return (double)NAN;
}

TbPatternFigures
tb_oil_figures (const TbOil *oil)
{
  double volume[TB_OIL_COLUMNS];
  double right, left, middle;
  TbPatternFigures figures
      = { .volume = tb_oil_volume (oil), .volume_out = (double)NAN, .volume_back = (double)NAN };

  for (int column = 0; column < TB_OIL_COLUMNS; column++)
    volume[column] = tb_oil_board_volume (oil, column);
  middle = mean_of_boards (volume, TB_MIDDLE_FIRST, TB_MIDDLE_LAST, FALSE);
  right = mean_of_boards (volume, TB_OUTSIDE_FIRST, TB_OUTSIDE_LAST, FALSE);
  left = mean_of_boards (volume, TB_OUTSIDE_FIRST, TB_OUTSIDE_LAST, TRUE);
  figures.ratio = ratio (middle, 0.5 * (right + left));
  figures.ratio_right = ratio (middle, right);
  figures.ratio_left = ratio (middle, left);
  figures.fall_off_right = fall_off (volume, FALSE);
  figures.fall_off_left = fall_off (volume, TRUE);
  figures.film_length = tb_oil_length (oil, tb_film_from_units (TB_PATTERN_END_UNITS));
  figures.length = figures.film_length;
  figures.breakpoint_board = tb_ft_from_metres (figures.length) - BREAKPOINT_RULE_FT;
  return figures;
}

TbPatternFigures
tb_pattern_figures (const TbPattern *pattern)
{
  TbPatternFigures figures = tb_oil_figures (&pattern->oil);

  if (pattern->kind == TB_PATTERN_PROFILE)
    figures.length = pattern->profile.length;
  if (pattern->kind == TB_PATTERN_STRIPS)
    {
      figures.length = tb_strips_length (pattern->strips, pattern->n_strips);
      figures.volume_out = tb_strips_volume_of_way (pattern->strips, pattern->n_strips, TB_STRIP_OUT);
      figures.volume_back = tb_strips_volume_of_way (pattern->strips, pattern->n_strips, TB_STRIP_BACK);
    }
  figures.breakpoint_board = tb_ft_from_metres (figures.length) - BREAKPOINT_RULE_FT;
  return figures;
}
