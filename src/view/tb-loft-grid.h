/* Two throws on two lanes, as four small lanes from above: where each lands, turns, rolls and ends.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "tb-core.h"
#include "tb-theme.h"

#define TB_LOFT_GRID_THROWS 2
#define TB_LOFT_GRID_LANES 2

/* One small lane. */
typedef struct TbLoftGridCell
{
  const TbPath *path; /* with samples; NULL where there is no run */
  const char *words;  /* translated: how it ended, or why there is no run */
} TbLoftGridCell;

typedef struct TbLoftGridScene
{
  TbTheme theme;
  TbLoftGridCell cell[TB_LOFT_GRID_THROWS][TB_LOFT_GRID_LANES];
  const char *throw_name[TB_LOFT_GRID_THROWS]; /* translated; the first is drawn as "before" is, the second as "after" */
  const char *lane_name[TB_LOFT_GRID_LANES];   /* translated */
  bool metric; /* distances in m rather than ft */
} TbLoftGridScene;

void tb_loft_grid_draw (cairo_t *cr, double width, double height, const TbLoftGridScene *scene);
