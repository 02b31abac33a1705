/* Lines of equal value on a grid (marching squares).
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "tb-label-space.h"

G_BEGIN_DECLS

typedef struct TbContourGrid
{
  int columns, rows;
  /* NAN where there is none: no line runs there. */
  double (*value) (int column, int row, gconstpointer data);
  gconstpointer data;
} TbContourGrid;

/* Adds the pieces of the line at a level: TbPoint, two a piece, in columns and rows. A piece has the higher
 * values on its left. */
void tb_contour_trace (const TbContourGrid *grid, double level, GArray *pieces);

G_END_DECLS
