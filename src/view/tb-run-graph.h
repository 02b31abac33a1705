/* Friction, slip and heading along the lane, both runs over each other, with their phases; and a reading
 * line.
 *
 * The foul line is on the left, the pins on the right. Told where the picture of a lane beside it has them,
 * the graph stands exactly under that lane.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "tb-core.h"
#include "tb-theme.h"

typedef enum TbRunQuantity
{
  TB_RUN_FRICTION, /* force along the lane: N, or pounds of force */
  TB_RUN_SLIP,     /* speed of the contact over the lane: km/h, or mph */
  TB_RUN_HEADING,  /* degrees, positive towards higher boards */
  TB_RUN_N_QUANTITIES
} TbRunQuantity;

typedef struct TbRunGraphScene
{
  TbTheme theme;
  const TbPath *before; /* with samples; NULL where there is no run */
  const TbPath *after;
  double left, right; /* px, where foul line and head pin stand; NAN: as suits the picture */
  bool metric;
} TbRunGraphScene;

TbRunGraphScene tb_run_graph_scene_default (void);
/* All that stands still. Size in px. */
void tb_run_graph_draw (cairo_t *cr, double width, double height, const TbRunGraphScene *scene);
/* The reading line at a distance down the lane, m, with what both runs have there. */
void
tb_run_graph_draw_cursor (cairo_t *cr, double width, double height, const TbRunGraphScene *scene, double y);
/* The rectangle it needs, px. */
void tb_run_graph_cursor_extents (double width,
                                  double height,
                                  const TbRunGraphScene *scene,
                                  double y,
                                  cairo_rectangle_t *extents);
/* Distance down the lane at a place of the picture, m, held to the lane; false left and right of it. */
bool
tb_run_graph_to_distance (double width, double height, const TbRunGraphScene *scene, double px, double *y);

/* A quantity of a run at a distance, in the unit shown; NAN where the run has none. Unit and name translated.
 */
double tb_run_quantity_at (const TbPath *path, TbRunQuantity quantity, double y, bool metric);
const char *tb_run_quantity_name (TbRunQuantity quantity);
const char *tb_run_quantity_unit (TbRunQuantity quantity, bool metric);
int tb_run_quantity_digits (TbRunQuantity quantity);
