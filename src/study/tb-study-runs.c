/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "tb-study-runs.h"

/* A run of the setup that is there already; NULL if there is none. */
static TbRun *
find_run (TbRun *const runs[TB_N_SIDES], const TbSetup *setup)
{
  for (int side = 0; side < TB_N_SIDES; side++)
    if (runs[side] != NULL && runs[side]->setup == setup)
      return tb_run_ref (runs[side]);
  return NULL;
}

void
tb_study_runs_follow (TbRun *runs[TB_N_SIDES], const TbStudy *study)
{
  TbRun *old[TB_N_SIDES] = { runs[TB_SIDE_BEFORE], runs[TB_SIDE_AFTER] };

  for (int side = 0; side < TB_N_SIDES; side++)
    {
      runs[side] = find_run (old, study->side[side]);
      if (runs[side] == NULL)
        runs[side] = tb_run_new (study->side[side]);
    }
  tb_study_runs_clear (old);
}

void
tb_study_runs_clear (TbRun *runs[TB_N_SIDES])
{
  for (int side = 0; side < TB_N_SIDES; side++)
    g_clear_pointer (&runs[side], tb_run_unref);
}
