/* The two runs of a study that changes: what was thrown already is not thrown again.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "tb-study.h"

G_BEGIN_DECLS

/* Makes them the runs of the study's sides; NULL where there was none yet. A setup that one of them is of
 * takes its run with it, to whichever side. */
void tb_study_runs_follow (TbRun *runs[TB_N_SIDES], const TbStudy *study);
void tb_study_runs_clear (TbRun *runs[TB_N_SIDES]);

G_END_DECLS
