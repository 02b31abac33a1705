/* The numbers by which people know a pattern, worked out from its film, however it was described.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "tb-pattern.h"

G_BEGIN_DECLS

/* Boards that count as outside (from either edge) and as the middle: the trade's usual zones. */
#define TB_OUTSIDE_FIRST 3
#define TB_OUTSIDE_LAST 7
#define TB_MIDDLE_FIRST 18
#define TB_MIDDLE_LAST 22
/* A film under this counts as the end of the pattern, units. */
#define TB_PATTERN_END_UNITS 1.0

typedef struct TbPatternFigures
{
  double length;      /* m: where the strips or the profile end; of a table where the film ends */
  double film_length; /* m, where the film comes down to TB_PATTERN_END_UNITS; 0 if it never exceeds that */
  double volume;      /* m³ */
  double volume_out, volume_back; /* m³; NAN but for strips */
  double ratio; /* oil on a board of the middle over one outside, both sides together; INFINITY for a dry
                   outside */
  double ratio_right, ratio_left; /* the same for either side */
  double fall_off_right,
      fall_off_left;       /* board counted from that side, where the oil on a board passes half way from
                            * outside to middle; NAN for a pattern that is all but flat */
  double breakpoint_board; /* length in feet − 31 (common practice) */
} TbPatternFigures;

TbPatternFigures tb_pattern_figures (const TbPattern *pattern);
/* The same of a film alone: a worn one, say. */
TbPatternFigures tb_oil_figures (const TbOil *oil);
/* Oil on one board over the whole lane, m³; column from 0, counted from the right edge. */
double tb_oil_board_volume (const TbOil *oil, int column);
/* Oil between two columns (included) and two distances (m, whole rows), m³. */
double tb_oil_volume_within (const TbOil *oil, int first_column, int last_column, double near, double far);

G_END_DECLS
