/* The release from the side: the first 15 ft or more, true heights stretched and said so, where the ball lands.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "tb-core.h"
#include "tb-theme.h"

typedef struct TbLoftScene
{
  TbTheme theme;
  const TbPath *before, *after; /* with samples; NULL where there is no run */
  double time;                  /* s since release, of the ball drawn; NAN for the release */
  const char *before_name, *after_name; /* translated */
  double shown_to_ft;           /* how far down the lane the picture goes, 15 or more */
  bool true_scale;              /* heights are never stretched */
  bool measured;                /* reach, height and angle of both throws are told in the picture */
  bool metric;                  /* m and cm rather than ft and in */
} TbLoftScene;

TbLoftScene tb_loft_scene_default (void);
void tb_loft_view_draw (cairo_t *cr, double width, double height, const TbLoftScene *scene);
