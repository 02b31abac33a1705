/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include <math.h>
#include "tb-contour.h"

/* Corners of a square, around it from its lower left. */
#define CORNERS 4
static const int corner_column[CORNERS] = { 0, 1, 1, 0 };
static const int corner_row[CORNERS] = { 0, 0, 1, 1 };

typedef struct Square
{
  int column, row;
  double above[CORNERS]; /* value less level */
} Square;

static gboolean
read_square (const TbContourGrid *grid, double level, Square *square)
{
  for (int i = 0; i < CORNERS; i++)
    {
      square->above[i]
          = grid->value (square->column + corner_column[i], square->row + corner_row[i], grid->data) - level;
      if (isnan (square->above[i]))
        return FALSE;
    }
  return TRUE;
}

/* Where the line crosses the edge from a corner to the next one. */
static TbPoint
crossing (const Square *square, int corner)
{
  int next = (corner + 1) % CORNERS;
  double share = square->above[corner] / (square->above[corner] - square->above[next]);

  return (TbPoint){ square->column + corner_column[corner]
                        + share * (corner_column[next] - corner_column[corner]),
                    square->row + corner_row[corner] + share * (corner_row[next] - corner_row[corner]) };
}

/* Edges on which the values rise over the level, and on which they fall under it, going around; up to two of
 * each. */
static int
find_crossings (const Square *square, int rising[2], int falling[2])
{
  int n_rising = 0, n_falling = 0;

  for (int i = 0; i < CORNERS; i++)
    {
      gboolean here = square->above[i] >= 0, next = square->above[(i + 1) % CORNERS] >= 0;

      if (!here && next)
        rising[n_rising++] = i;
      if (here && !next)
        falling[n_falling++] = i;
    }
  return n_rising;
}

static void
add_piece (GArray *pieces, TbPoint from, TbPoint to)
{
  g_array_append_val (pieces, from);
  g_array_append_val (pieces, to);
}

static void
trace_square (const Square *square, GArray *pieces)
{
  int rising[2], falling[2], count = find_crossings (square, rising, falling);
  double middle = square->above[0] + square->above[1] + square->above[2] + square->above[3];

  if (count == 0)
    return;
  if (count == 1)
    {
      add_piece (pieces, crossing (square, falling[0]), crossing (square, rising[0]));
      return;
    }
  /* A saddle: the middle decides which corners belong together. */
  for (int i = 0; i < 2; i++)
    {
      int wanted = middle >= 0 ? (falling[i] + 1) % CORNERS : (falling[i] + CORNERS - 1) % CORNERS;

      add_piece (pieces, crossing (square, falling[i]), crossing (square, wanted));
    }
}

void
tb_contour_trace (const TbContourGrid *grid, double level, GArray *pieces)
{
  for (int row = 0; row + 1 < grid->rows; row++)
    for (int column = 0; column + 1 < grid->columns; column++)
      {
        Square square = { .column = column, .row = row };

        if (read_square (grid, level, &square))
          trace_square (&square, pieces);
      }
}
