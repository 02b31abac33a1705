/* A film by itself: the lane lying on its side as a tinted strip, with feet and boards, for where several are
 * compared.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "tb-canvas.h"
#include "tb-core.h"

G_BEGIN_DECLS

typedef struct TbFilmLane
{
  const TbOil *oil;
  double scale;              /* film × this */
  double full;               /* m, film of the strongest tint */
  double cursor_x, cursor_y; /* m, lane frame: thin lines here; NAN for none */
  gboolean mirrored;         /* boards are counted from the left */
  gboolean show_feet;
} TbFilmLane;

/* The lane inside of a box, foul line left and head pin right, the right edge at the bottom; the rest is for
 * numbers. */
cairo_rectangle_t
tb_film_lane_plot (const TbCanvas *canvas, const cairo_rectangle_t *box, gboolean show_feet);
void tb_film_lane_draw (TbCanvas *canvas, const cairo_rectangle_t *box, const TbFilmLane *lane);

G_END_DECLS
