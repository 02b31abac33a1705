/* Lane, ball and loft on one page.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "tb-ball-view.h"
#include "tb-lane-view.h"
#include "tb-loft-view.h"

typedef struct TbPageScene
{
  TbTheme theme;     /* of the page; the scenes are drawn with it too, whatever theirs say */
  TbLaneScene lane;
  TbBallScene ball;  /* left out where its path is NULL */
  TbLoftScene loft;  /* left out where it has neither run */
  const char *title; /* translated; NULL for none */
  double time;       /* s since release, of the balls on the lane; NAN for none */
} TbPageScene;

TbPageScene tb_page_scene_default (void);
/* Lane on the left and the others in a column beside it; in a picture that is higher than wide, below it. */
void tb_page_view_draw (cairo_t *cr, double width, double height, const TbPageScene *scene);
