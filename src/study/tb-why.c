/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "tb-why.h"

#include <math.h>
#include <string.h>
#include "tb-task.h"
#include "tb-why-private.h"

const char *
tb_why_measure_name (TbWhyMeasure measure)
{
  static const char *const names[TB_WHY_N_MEASURES]
      = { "board_at_pins",        "angle_at_pins_deg", "breakpoint_ft", "dry_time_s",
          "side_share",           "oil_exit_ft",       "hook_start_ft", "roll_start_ft",
          "launch_board_at_pins", "turn_deg",          "flare_in" };

  return names[measure];
}

static TbWhy *
why_alloc (TbSetup *before, TbSetup *after)
{
  TbWhy *why = g_new0 (TbWhy, 1);

  g_atomic_ref_count_init (&why->ref_count);
  why->setup[TB_SIDE_BEFORE] = tb_setup_ref (before);
  why->setup[TB_SIDE_AFTER] = tb_setup_ref (after);
  for (int m = 0; m < TB_WHY_N_MEASURES; m++)
    why->difference[m] = NAN;
  return why;
}

/* What a throw says of itself: unlike a mixture, a ball that never turns back has no breakpoint here. */
static void
throw_side (TbWhy *why, TbSide side)
{
  TbSetup *setup = why->setup[side];
  TbRun *run = why->run[side] = tb_run_new_edgeless (setup);

  why->throws++;
  why->gutter_ft[side] = NAN;
  if (run->status != TB_OK)
    {
      why->status = run->status;
      return;
    }
  why->gutter_ft[side] = tb_ft_from_metres (run->path.measures.gutter_y);
  why_measure (&setup->shot, &run->path.measures, why->value[side]);
  why->value[side][TB_WHY_BREAKPOINT] = tb_ft_from_metres (run->path.measures.breakpoint_y);
}

TbWhy *
tb_why_new (TbSetup *before, TbSetup *after, const TbWhyOptions *options, GCancellable *cancellable)
{
  g_autoptr (TbWhy) why = why_alloc (before, after);
  double stretch_ft = options && options->stretch_ft > 0 ? options->stretch_ft : TB_WHY_STRETCH_FT;

  for (int side = 0; side < TB_N_SIDES; side++)
    throw_side (why, side);
  if (why->status != TB_OK)
    return g_steal_pointer (&why);
  for (int m = 0; m < TB_WHY_N_MEASURES; m++)
    why->difference[m] = why->value[TB_SIDE_AFTER][m] - why->value[TB_SIDE_BEFORE][m];
  why_split_by_stretch (why, stretch_ft);
  if (!why_split_by_input (why, options ? options->threads : 0, cancellable))
    return NULL;
  return g_steal_pointer (&why);
}

TbWhy *
tb_why_ref (TbWhy *why)
{
  g_atomic_ref_count_inc (&why->ref_count);
  return why;
}

void
tb_why_unref (TbWhy *why)
{
  if (!g_atomic_ref_count_dec (&why->ref_count))
    return;
  for (int side = 0; side < TB_N_SIDES; side++)
    {
      tb_setup_unref (why->setup[side]);
      g_clear_pointer (&why->run[side], tb_run_unref);
    }
  g_free (why);
}

/* What a thread is given. */
typedef struct Job
{
  TbSetup *before, *after;
  TbWhyOptions options;
} Job;

static void
job_free (gpointer data)
{
  Job *job = data;

  tb_setup_unref (job->before);
  tb_setup_unref (job->after);
  g_free (job);
}

static void
work (GTask *task, gpointer source, gpointer data, GCancellable *cancellable)
{
  const Job *job = data;

  tb_task_answer (task, tb_why_new (job->before, job->after, &job->options, cancellable),
                  (GDestroyNotify) tb_why_unref);
}

void
tb_why_new_async (TbSetup *before,
                  TbSetup *after,
                  const TbWhyOptions *options,
                  GCancellable *cancellable,
                  GAsyncReadyCallback callback,
                  gpointer user_data)
{
  g_autoptr (GTask) task = g_task_new (NULL, cancellable, callback, user_data);
  Job *job = g_new0 (Job, 1);

  job->before = tb_setup_ref (before);
  job->after = tb_setup_ref (after);
  if (options)
    job->options = *options;
  g_task_set_task_data (task, job, job_free);
  tb_task_run (task, work);
}

TbWhy *
tb_why_new_finish (GAsyncResult *result, GError **error)
{
  return g_task_propagate_pointer (G_TASK (result), error);
}
