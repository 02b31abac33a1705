/* The ball, drawn as it turns: axis, PAP, pin, grip, track rings and the oil on them.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "tb-core.h"
#include "tb-theme.h"

typedef enum TbBallEye
{
  TB_BALL_FROM_BEHIND, /* the bowler's view */
  TB_BALL_FROM_SIDE    /* from the bowler's own side of the lane */
} TbBallEye;

typedef struct TbBallScene
{
  TbTheme theme;
  TbBallEye eye;
  const TbPath *path; /* with samples; NULL for none */
  double time;        /* s since release: rings up to here are drawn strong, later ones faint */
  const char *title;  /* translated; NULL for none */
  bool show_rings;
  bool metric; /* distance of the caption in m rather than ft */
} TbBallScene;

TbBallScene tb_ball_scene_default (void);
/* Size in px of the whole picture. A left-hander's ball is the mirror image. */
void tb_ball_view_draw (cairo_t *cr, double width, double height, const TbBallScene *scene);
