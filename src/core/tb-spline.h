/* The uniform cubic B-spline that the lane's film and the ball's are read and written with. Private to core.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* Weights of the four cells around a place; t in [0, 1) from the second cell's centre to the third's. */
static inline void
spline_weights (double t, double weight[4])
{
  double s = 1 - t, s2 = s * s, t2 = t * t;
  weight[0] = s2 * s * (1.0 / 6);
  weight[1] = 2.0 / 3 + t2 * (0.5 * t - 1);
  weight[2] = 2.0 / 3 + s2 * (0.5 * s - 1);
  weight[3] = t2 * t * (1.0 / 6);
}
