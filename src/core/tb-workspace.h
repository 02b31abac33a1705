/* The memory a run works in. Private to core.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "tb-ball-film.h"
#include "tb-dynamics.h"
#include "tb-recorder.h"
#include "tb-shot.h"

/* A run between two of its steps. */
typedef struct Run
{
  Dynamics dynamics;
  Recorder recorder;
  const TbMotion *motion;
  BallFilm *ball;    /* NULL if the ball carries none */
  TbPhase phase;
  Point point;
  Rates rates;
  double step;       /* s */
  double time_limit; /* s */
  int lifts;         /* off the lane, by its own imbalance */
  double broken_at;  /* s, when a roll last let go */
  double held_until; /* s, the roll does not break before */
  bool over, off_lane;
} Run;

struct TbWorkspace
{
  Run run;
  BallFilm ball;
  TbOil change; /* of the lane under one shot */
};

/* tb_motion_begin() and tb_motion_end(), noting in `change` what happens to the lane, and in `carried` (m³) what the ball
 * takes with it. Both may be NULL. */
TbStatus motion_begin (const TbMotion *motion, TbWorkspace *workspace, TbPath *path, TbOil *change);
TbStatus motion_end (TbWorkspace *workspace, double *carried);
