/* Runs: a setup, thrown.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "tb-setup.h"

#include <string.h>

/* A path is drawn from far fewer samples than it may hold; what it does not use is given back. */
static void
path_trim (TbPath *path)
{
  if (path->count == 0)
    g_clear_pointer (&path->samples, g_free);
  else
    path->samples = g_renew (TbSample, path->samples, path->count);
  path->capacity = path->count;
}

static TbRun *
run_shot (TbSetup *setup, const TbShot *shot)
{
  TbRun *run = g_new0 (TbRun, 1);
  g_autofree TbSample *samples = g_new (TbSample, TB_PATH_CAPACITY);
  g_autofree TbWorkspace *workspace = g_malloc (tb_workspace_size ());

  g_atomic_ref_count_init (&run->ref_count);
  run->setup = tb_setup_ref (setup);
  run->path.samples = samples;
  run->path.capacity = TB_PATH_CAPACITY;
  run->status = tb_shot_run (shot, workspace, &run->path, &run->problem);
  run->path.samples = g_steal_pointer (&samples);
  path_trim (&run->path);
  return run;
}

TbRun *
tb_run_new (TbSetup *setup)
{
  return run_shot (setup, &setup->shot);
}

TbRun *
tb_run_new_edgeless (TbSetup *setup)
{
  TbShot shot = setup->shot;

  shot.options.edgeless = true;
  return run_shot (setup, &shot);
}

TbRun *
tb_run_ref (TbRun *run)
{
  g_atomic_ref_count_inc (&run->ref_count);
  return run;
}

void
tb_run_unref (TbRun *run)
{
  if (!g_atomic_ref_count_dec (&run->ref_count))
    return;
  tb_setup_unref (run->setup);
  g_free (run->path.samples);
  g_free (run);
}
