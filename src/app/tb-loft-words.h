/* The loft lab in words: names, what the four runs say, what the pictures show.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "tb-loft-runs.h"
#include "tb-session.h"

G_BEGIN_DECLS

/* "Flat", "High arc"; translated, static. */
const char *tb_loft_style_name (TbLoftStyle style);
/* "fresh", "after 6 games"; free it. */
char *tb_loft_lane_name (TbLoftLane lane, double games);
/* What the arc does against the flat throw, on each lane, and what each landing costs; free it. */
char *tb_loft_runs_text (TbLoftRuns *runs, TbUnits units);

G_END_DECLS
