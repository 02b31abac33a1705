/* A line and its family: the lane from above with the planned run, faint runs of misses to either side,
 * handles where the ball is laid down and what it is aimed at, and the feet behind the foul line.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "tb-lane-view.h"
#include "tb-lines.h"

G_BEGIN_DECLS

typedef struct TbLinesScene
{
  TbLaneScene lane;           /* with the planned run as `after` */
  const TbFamily *family;     /* NULL for none */
  const TbDelivery *delivery; /* whose handles are shown; NULL for none */
  const TbSpare *spare;       /* a line at a pin; NULL for none */
} TbLinesScene;

void tb_lines_view_draw (cairo_t *cr, double width, double height, const TbLinesScene *scene);

typedef enum TbLineHandle
{
  TB_LINE_NOWHERE,
  TB_LINE_LAYDOWN,
  TB_LINE_AIM
} TbLineHandle;

TbLineHandle
tb_lines_view_handle_at (double width, double height, const TbLinesScene *scene, const double at[2]);
/* The bowler's board under a place of the picture. */
double tb_lines_view_board (double width, double height, const TbLinesScene *scene, const double at[2]);

G_END_DECLS
