/* A run in words: for people who do not see the pictures, and in a line for those who do.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "tb-session.h"

G_BEGIN_DECLS

/* A measure of a run as people read it, with its unit; "–" where the run has none. */
char *tb_describe_measure (const TbMeasureInfo *info, const TbMeasures *measures, TbUnits units);
/* The same without the unit; and the difference between two runs. */
char *tb_describe_measure_number (const TbMeasureInfo *info, const TbMeasures *measures, TbUnits units);
char *tb_describe_difference (const TbMeasureInfo *info,
                              const TbMeasures *before,
                              const TbMeasures *after,
                              TbUnits units);
/* Unit of a measure, translated. */
const char *tb_describe_measure_unit (const TbMeasureInfo *info, TbUnits units);

/* Where a run ended, in a few words: "in the pocket", "5.6 boards light", "right gutter at 43.0 ft". */
char *tb_describe_end (const TbRun *run, TbUnits units);
/* What a run did, in a sentence or three. */
char *tb_describe_run (const TbRun *run, TbUnits units);
/* Both runs and how they differ, in one paragraph that can be read out. */
char *tb_describe_both (const TbRun *before, const TbRun *after, TbUnits units);
/* What can be done about a run that cannot be thrown: core's sentence and the next step. */
char *tb_describe_problem (const TbRun *run);
/* Where the ball is at a time: phase, board, distance, speed. */
char *tb_describe_moment (const TbRun *run, double time, TbUnits units);
/* Feet or metres down the lane. */
char *tb_describe_distance (double y, TbUnits units);
/* What lies at a place of the lane (lane frame, m) for the ball of a run: board, distance, film, friction. */
char *tb_describe_place (const TbRun *run, double x, double y, TbUnits units);

G_END_DECLS
