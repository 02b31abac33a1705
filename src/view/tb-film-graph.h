/* A graph of the oil film: across the boards at a distance, or along the lane on a board. Up to two films,
 * the earlier one dashed.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "tb-canvas.h"
#include "tb-core.h"

G_BEGIN_DECLS

typedef struct TbFilmGraph
{
  gboolean along;       /* along the lane on a board; else across the boards at a distance */
  double at;            /* x (m, lane frame) of that board, or y (m) of that distance */
  const TbOil *oil;     /* drawn solid */
  const TbOil *earlier; /* drawn dashed; NULL for none */
  double scale;         /* film × this */
  double full;          /* m, what the upward axis reaches */
  double cursor;        /* place on the sideways axis that the other graph is of: y or x, m; NAN for none */
  gboolean mirrored;    /* boards are counted from the left, and board 1 lies left */
} TbFilmGraph;

/* The plot inside of a box; the rest is for numbers and words. */
cairo_rectangle_t tb_film_graph_plot (const TbCanvas *canvas, const cairo_rectangle_t *box);
void tb_film_graph_draw (TbCanvas *canvas, const cairo_rectangle_t *box, const TbFilmGraph *graph);
/* The place on the sideways axis at a px, m: y, or x in the lane frame. Held to the axis. */
double tb_film_graph_place (const cairo_rectangle_t *plot, const TbFilmGraph *graph, double px);

G_END_DECLS
