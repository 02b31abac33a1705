/* The memory a run works in. Private to core.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "tb-run.h"

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
