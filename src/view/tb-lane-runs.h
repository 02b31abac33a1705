/* The runs on a picture of the lane: lines, marks, labels of their ends, strips of their phases.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "tb-draw.h"
#include "tb-lane-layout.h"

G_BEGIN_DECLS

/* One of the scene's runs, as it is drawn. */
typedef struct TbLaneRun
{
  const TbPath *path; /* NULL: there is no such run */
  const char *label;
  TbRunStyle style;
  double em;          /* px that the sizes of its marks are told in */
} TbLaneRun;

/* Before is drawn first, after on top of it. */
#define TB_LANE_RUNS 2
void tb_lane_runs_init (TbLaneRun runs[TB_LANE_RUNS],
                        const TbCanvas *canvas,
                        const TbLaneLayout *layout,
                        const TbLaneScene *scene);

gboolean tb_lane_run_in_gutter (const TbPath *path);
/* The lowest point of the ball at a sample, in the picture; in the plans held to the lane and its gutters. */
TbPoint tb_lane_run_point (const TbLaneLayout *layout, const TbPath *path, const TbSample *sample);
/* The place on the run at a distance down the lane. FALSE where it has none. */
gboolean tb_lane_run_point_at (const TbLaneLayout *layout, const TbPath *path, double y, TbPoint *point);

/* The mark of a run's end: a ring or a disc at the pins, a crossed ring in the gutter. */
void tb_lane_run_end_mark (TbCanvas *canvas, const TbLaneRun *run, TbPoint at, double radius);
/* The reading line, and how far down the lane it is. */
void tb_lane_reading_draw (TbCanvas *canvas, const TbLaneLayout *layout, const TbLaneScene *scene);
/* Lines and marks. The lines are taken in the canvas's label space. */
void tb_lane_runs_draw (TbCanvas *canvas, const TbLaneLayout *layout, const TbLaneRun runs[TB_LANE_RUNS]);
/* Breakpoints, and boards at the reading line. */
void tb_lane_runs_label (TbCanvas *canvas,
                         const TbLaneLayout *layout,
                         const TbLaneScene *scene,
                         const TbLaneRun runs[TB_LANE_RUNS]);
/* Where the runs have ended, and the pocket, in their band beyond the pins. */
void tb_lane_ends_draw (TbCanvas *canvas,
                        const TbLaneLayout *layout,
                        const TbLaneScene *scene,
                        const TbLaneRun runs[TB_LANE_RUNS]);
/* Only what the runs are called, in the same band. */
void tb_lane_ends_name (TbCanvas *canvas, const TbLaneLayout *layout, const TbLaneRun runs[TB_LANE_RUNS]);
/* Skid, hook and roll beside the lane. */
void tb_lane_phases_draw (TbCanvas *canvas,
                          const TbLaneLayout *layout,
                          const TbLaneScene *scene,
                          const TbLaneRun runs[TB_LANE_RUNS]);

G_END_DECLS
