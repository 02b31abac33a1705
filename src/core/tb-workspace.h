/* The memory a run works in. Private to core.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "tb-ball-film.h"
#include "tb-shot.h"

struct TbWorkspace
{
  BallFilm ball;
  TbOil change; /* of the lane under one shot */
};

/* tb_motion_run(), noting in `change` what happens to the lane, and in `carried` (m³) what the ball takes with it. Both
 * may be NULL. */
TbStatus motion_run (const TbMotion *motion, TbWorkspace *workspace, TbPath *path, TbOil *change, double *carried);
