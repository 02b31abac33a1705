/* One side of a comparison: a shot with the names of what it is made of. Immutable and counted.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "tb-pattern.h"
#include "tb-wear.h"

G_BEGIN_DECLS

typedef struct TbSetup
{
  gatomicrefcount ref_count;
  TbShot shot;         /* shot.lane.oil points into `pattern`, or into `worn` on a lane that has been played on */
  TbPattern *pattern;
  TbMix *mix;          /* who played on the lane; NULL for a common league */
  TbWorn *worn;        /* NULL on a fresh lane */
  char *bowler_id;     /* of the bowler the delivery came from, and what they are called; NULL if none */
  char *bowler_name;
  char *ball_id;       /* likewise */
  char *ball_name;
} TbSetup;

/* Takes copies of everything but the pattern, which it references. The shot is not checked here. A lane that has been
 * played on is worn here: up to some tenths of a second for one that is not known yet (tb-wear.h keeps a few). */
TbSetup *tb_setup_new (const TbShot *shot, TbPattern *pattern);
/* A setup that differs in its shot (and keeps the pattern and names). */
TbSetup *tb_setup_with_shot (const TbSetup *setup, const TbShot *shot);
/* A setup that differs in one field. NULL and *problem filled in if the value will not do. */
TbSetup *tb_setup_with_field (const TbSetup *setup, const TbField *field, double value, TbProblem *problem);
TbSetup *tb_setup_with_pattern (const TbSetup *setup, TbPattern *pattern);
/* Another mix of bowlers on the lane; NULL for a common league. */
TbSetup *tb_setup_with_mix (const TbSetup *setup, TbMix *mix);
/* What its worn lane follows from, with references of the caller's own; tb_wear_key_clear() gives them back. */
TbWearKey tb_setup_wear_key (const TbSetup *setup);
TbSetup *tb_setup_with_ball (const TbSetup *setup, const TbBall *ball, const char *id, const char *name);
TbSetup *tb_setup_with_bowler (const TbSetup *setup, const TbDelivery *delivery, const char *id, const char *name);
/* Same numbers, same pattern film, same names. */
gboolean tb_setup_equal (const TbSetup *a, const TbSetup *b);
TbSetup *tb_setup_ref (TbSetup *setup);
void tb_setup_unref (TbSetup *setup);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (TbSetup, tb_setup_unref)

/* A setup that has been thrown: the path with its samples. Immutable and counted. */
typedef struct TbRun
{
  gatomicrefcount ref_count;
  TbSetup *setup;
  TbStatus status; /* anything but TB_OK: the path is empty and `problem` says why */
  TbProblem problem;
  TbPath path;     /* owns its samples */
} TbRun;

/* Throws a setup. Never NULL. */
TbRun *tb_run_new (TbSetup *setup);
/* The same without gutters. */
TbRun *tb_run_new_edgeless (TbSetup *setup);
TbRun *tb_run_ref (TbRun *run);
void tb_run_unref (TbRun *run);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (TbRun, tb_run_unref)

G_END_DECLS
