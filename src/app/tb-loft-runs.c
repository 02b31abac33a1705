/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "tb-loft-runs.h"

struct _TbLoftRuns
{
  GObject parent_instance;

  TbSetup *lane[TB_N_LOFT_LANES]; /* the worn one is NULL until it is known */
  TbLoftThrow loft[TB_N_LOFTS];
  double games;
  TbRun *run[TB_N_LOFTS][TB_N_LOFT_LANES];
  TbLoftCurve *curves;

  GCancellable *wearing; /* the lane is being played on; else NULL */
  GCancellable *curving; /* the curves are being worked out; else NULL */
  gboolean stopped;
};

enum
{
  CHANGED,
  N_SIGNALS
};
static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (TbLoftRuns, tb_loft_runs, G_TYPE_OBJECT)

static void
drop (GCancellable **job)
{
  if (*job != NULL)
    g_cancellable_cancel (*job);
  g_clear_object (job);
}

static void
throw_all (TbLoftRuns *self)
{
  for (int style = 0; style < TB_N_LOFTS; style++)
    for (int lane = 0; lane < TB_N_LOFT_LANES; lane++)
      {
        g_clear_pointer (&self->run[style][lane], tb_run_unref);
        if (self->lane[lane] != NULL)
          {
            g_autoptr (TbSetup) setup = tb_setup_with_loft (self->lane[lane], &self->loft[style]);

            self->run[style][lane] = tb_run_new (setup);
          }
      }
}

/* A job that was dropped has another, or none, in its place. */
static void
on_curves (GObject *source, GAsyncResult *result, gpointer user_data)
{
  g_autoptr (TbLoftRuns) self = user_data;
  g_autofree TbLoftCurve *curves = tb_loft_curves_new_finish (result, NULL);

  if (g_task_get_cancellable (G_TASK (result)) != self->curving)
    return;
  g_clear_object (&self->curving);
  if (curves == NULL)
    return;
  g_free (self->curves);
  self->curves = g_steal_pointer (&curves);
  g_signal_emit (self, signals[CHANGED], 0);
}

static void
begin_curves (TbLoftRuns *self)
{
  drop (&self->curving);
  if (self->stopped)
    return;
  self->curving = g_cancellable_new ();
  tb_loft_curves_new_async (self->lane, self->loft, self->curving, on_curves, g_object_ref (self));
}

static void
update (TbLoftRuns *self)
{
  if (self->lane[TB_LOFT_FRESH] == NULL)
    return;
  throw_all (self);
  begin_curves (self);
  g_signal_emit (self, signals[CHANGED], 0);
}

static void wear (TbLoftRuns *self);

static void
on_worn (GObject *source, GAsyncResult *result, gpointer user_data)
{
  g_autoptr (TbLoftRuns) self = user_data;
  g_autoptr (TbWorn) worn = tb_worn_new_finish (result, NULL);

  if (g_task_get_cancellable (G_TASK (result)) != self->wearing)
    return;
  g_clear_object (&self->wearing);
  /* It is remembered now. */
  if (worn != NULL)
    wear (self);
  update (self);
}

/* At once where the games are known, and after they have been played in a thread where not. */
static void
wear (TbLoftRuns *self)
{
  TbSetup *fresh = self->lane[TB_LOFT_FRESH];
  TbWearKey key = tb_setup_wear_key (fresh);

  drop (&self->wearing);
  g_clear_pointer (&self->lane[TB_LOFT_WORN], tb_setup_unref);
  if (tb_worn_is_at_hand (&key, self->games))
    {
      TbShot shot = fresh->shot;

      shot.lane.games_played = self->games;
      self->lane[TB_LOFT_WORN] = tb_setup_with_shot (fresh, &shot);
    }
  else if (!self->stopped)
    {
      self->wearing = g_cancellable_new ();
      tb_worn_new_async (&key, self->games, self->wearing, on_worn, g_object_ref (self));
    }
  tb_wear_key_clear (&key);
}

void
tb_loft_runs_set_setup (TbLoftRuns *self, TbSetup *setup)
{
  TbShot shot = setup->shot;

  shot.lane.games_played = 0;
  g_clear_pointer (&self->lane[TB_LOFT_FRESH], tb_setup_unref);
  self->lane[TB_LOFT_FRESH] = tb_setup_with_shot (setup, &shot);
  wear (self);
  update (self);
}

void
tb_loft_runs_set_throw (TbLoftRuns *self, TbLoftStyle style, const TbLoftThrow *loft)
{
  if (memcmp (&self->loft[style], loft, sizeof *loft) == 0)
    return;
  self->loft[style] = *loft;
  update (self);
}

TbLoftThrow
tb_loft_runs_get_throw (TbLoftRuns *self, TbLoftStyle style)
{
  return self->loft[style];
}

void
tb_loft_runs_set_games (TbLoftRuns *self, double games)
{
  if (self->games == games)
    return;
  self->games = games;
  if (self->lane[TB_LOFT_FRESH] == NULL)
    return;
  wear (self);
  update (self);
}

double
tb_loft_runs_get_games (TbLoftRuns *self)
{
  return self->games;
}

TbRun *
tb_loft_runs_get_run (TbLoftRuns *self, TbLoftStyle style, TbLoftLane lane)
{
  return self->run[style][lane];
}

const TbLoftCurve *
tb_loft_runs_get_curves (TbLoftRuns *self)
{
  return self->curves;
}

gboolean
tb_loft_runs_is_busy (TbLoftRuns *self)
{
  return self->wearing != NULL || self->curving != NULL;
}

void
tb_loft_runs_stop (TbLoftRuns *self)
{
  self->stopped = TRUE;
  drop (&self->wearing);
  drop (&self->curving);
}

TbLoftRuns *
tb_loft_runs_new (void)
{
  return g_object_new (TB_TYPE_LOFT_RUNS, NULL);
}

static void
tb_loft_runs_finalize (GObject *object)
{
  TbLoftRuns *self = TB_LOFT_RUNS (object);

  for (int lane = 0; lane < TB_N_LOFT_LANES; lane++)
    {
      g_clear_pointer (&self->lane[lane], tb_setup_unref);
      for (int style = 0; style < TB_N_LOFTS; style++)
        g_clear_pointer (&self->run[style][lane], tb_run_unref);
    }
  g_free (self->curves);
  G_OBJECT_CLASS (tb_loft_runs_parent_class)->finalize (object);
}

static void
tb_loft_runs_class_init (TbLoftRunsClass *klass)
{
  G_OBJECT_CLASS (klass)->finalize = tb_loft_runs_finalize;
  signals[CHANGED] = g_signal_new ("changed", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL, NULL,
                                   NULL, G_TYPE_NONE, 0);
}

static void
tb_loft_runs_init (TbLoftRuns *self)
{
  self->loft[TB_LOFT_FLAT] = tb_loft_preset_throw (tb_loft_preset_find ("flat"));
  self->loft[TB_LOFT_ARC] = tb_loft_preset_throw (tb_loft_preset_find ("arc"));
}
