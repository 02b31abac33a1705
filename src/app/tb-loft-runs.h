/* Two throws on two lanes: the four runs, and how the hook goes with the reach. What takes long is worked out beside the
 * window.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gio/gio.h>
#include "tb-loft-trial.h"

G_BEGIN_DECLS

#define TB_TYPE_LOFT_RUNS (tb_loft_runs_get_type ())
G_DECLARE_FINAL_TYPE (TbLoftRuns, tb_loft_runs, TB, LOFT_RUNS, GObject)

/* Signal "changed": a run, or the curves, are others. */
TbLoftRuns *tb_loft_runs_new (void);
/* Whose shot, with which ball, on which pattern: its loft and games do not count. */
void tb_loft_runs_set_setup (TbLoftRuns *self, TbSetup *setup);
void tb_loft_runs_set_throw (TbLoftRuns *self, TbLoftStyle style, const TbLoftThrow *loft);
TbLoftThrow tb_loft_runs_get_throw (TbLoftRuns *self, TbLoftStyle style);
/* Games played on the worn lane. */
void tb_loft_runs_set_games (TbLoftRuns *self, double games);
double tb_loft_runs_get_games (TbLoftRuns *self);

/* Borrowed; NULL where the lane is still being played on, or there is no setup yet. */
TbRun *tb_loft_runs_get_run (TbLoftRuns *self, TbLoftStyle style, TbLoftLane lane);
/* TB_N_LOFTS of them, borrowed; NULL until they are there. They may be of the throws before the present ones. */
const TbLoftCurve *tb_loft_runs_get_curves (TbLoftRuns *self);
gboolean tb_loft_runs_is_busy (TbLoftRuns *self);
/* Drops what is under way, for good. */
void tb_loft_runs_stop (TbLoftRuns *self);

G_END_DECLS
