/* The track: where the ball has touched the lane, on the ball.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "tb-ball-figure.h"

G_BEGIN_DECLS

/* All of the track as it lies at the figure's time; free it with g_array_unref(). */
GArray *tb_ball_rings_find (const TbBallFigure *figure);
/* Draws the part on the side that is hidden, or on the one that is seen. */
void tb_ball_rings_draw (const GArray *rings, TbCanvas *canvas, gboolean hidden);

G_END_DECLS
