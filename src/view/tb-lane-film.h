/* The oil film as a tint on the lane, and its legend.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "tb-lane-layout.h"

G_BEGIN_DECLS

/* The film, m, that the strongest tint stands for: the same for most patterns, so that their pictures can be compared. */
double tb_film_full_tint (const TbOil *oil, double scale);
/* How strong the tint is, 0 to 1: the square root, so that a thin film, which matters most, still shows. */
double tb_film_tint (double film, double full);
/* Wood under a film. */
TbColor tb_film_color (const TbTheme *theme, double tint);

void tb_lane_film_draw (TbCanvas *canvas, const TbLaneLayout *layout, const TbLaneScene *scene);
void tb_lane_film_legend (TbCanvas *canvas, const TbLaneLayout *layout, const TbLaneScene *scene);

G_END_DECLS
