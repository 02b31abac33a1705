/* The scenes that the tests of pictures share.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "synthetic.h"
#include "tb-page-view.h"

/* Everything that scenes point to. */
typedef struct Scenes
{
  TbOil house, lopsided;
  Synthetic *pocket, *faster, *gutter, *lofted;
  Synthetic *left_pocket, *left_faster; /* the same, of a left-hander */
} Scenes;

void scenes_init (Scenes *self);
void scenes_clear (Scenes *self);

/* Before: the pocket; after: faster. */
TbLaneScene scenes_lane (const Scenes *self, TbLaneProjection projection);
TbLaneScene scenes_left_lane (const Scenes *self, TbLaneProjection projection);
TbBallScene scenes_ball (const Scenes *self, TbBallEye eye, double time);
TbLoftScene scenes_loft (const Scenes *self);
TbPageScene scenes_page (const Scenes *self);
