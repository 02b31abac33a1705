/* A guess on a picture of the lane: the line that is asked about, the marker that is dragged along it, and
 * later where the ball did cross it. Drawn on top of the lane; pure functions, like the lane they lie on.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>
#include "tb-lane-view.h"

G_BEGIN_DECLS

typedef struct TbGuessScene
{
  const TbLaneScene *lane;
  double width, height; /* px of the whole picture */
  double y;             /* of the line, m down the lane */
  double guess;         /* board of the marker, as the scene's bowler counts */
  bool placed;          /* the marker has been put there; otherwise it only waits there */
  double answer;        /* board; NAN while it is not to be seen */
  bool focused;         /* the marker has the keyboard, and a ring says so */
} TbGuessScene;

void tb_guess_view_draw (cairo_t *cr, const TbGuessScene *scene);
/* The rectangle that takes, px. */
void tb_guess_view_extents (const TbGuessScene *scene, cairo_rectangle_t *extents);
/* Where the handle of the marker lies, px. */
void tb_guess_view_place (const TbGuessScene *scene, double *px, double *py);
/* The board of a pointer, as the scene's bowler counts; past the lane's edges too. */
double tb_guess_view_board_at (const TbGuessScene *scene, double px, double py);

G_END_DECLS
