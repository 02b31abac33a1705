/* Keeps labels from lying over each other, over a line, or outside the picture.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <cairo.h>
#include <glib.h>

G_BEGIN_DECLS

typedef struct TbPoint
{
  double x, y; /* px */
} TbPoint;

/* What is already taken. */
typedef struct TbLabelSpace
{
  cairo_rectangle_t bounds; /* labels stay inside */
  GArray *boxes;            /* of cairo_rectangle_t */
  GArray *segments;         /* of TbPoint, two a segment: lines that labels keep off */
} TbLabelSpace;

void tb_label_space_init (TbLabelSpace *self, const cairo_rectangle_t *bounds);
void tb_label_space_clear (TbLabelSpace *self);
void tb_label_space_take (TbLabelSpace *self, const cairo_rectangle_t *box);
void tb_label_space_take_segment (TbLabelSpace *self, TbPoint a, TbPoint b);
/* Whether a box lies inside the bounds and off every box; and the same off every segment as well. */
gboolean tb_label_space_is_free (const TbLabelSpace *self, const cairo_rectangle_t *box);
gboolean tb_label_space_is_clear (const TbLabelSpace *self, const cairo_rectangle_t *box);

gboolean tb_rectangle_meets_segment (const cairo_rectangle_t *box, TbPoint a, TbPoint b);
gboolean tb_rectangle_meets (const cairo_rectangle_t *a, const cairo_rectangle_t *b);
gboolean tb_rectangle_contains (const cairo_rectangle_t *outer, const cairo_rectangle_t *inner);
cairo_rectangle_t tb_rectangle_grown (const cairo_rectangle_t *box, double margin);

/* Moves boxes along one axis, as little as may be, so that they keep their order and their distance and stay between
 * two ends. centre: where each would like to be, in rising order; on return where it is. FALSE if they do not fit
 * between the ends, and nothing is moved. */
gboolean tb_spread (double *centre, const double *size, int count, const double ends[2], double gap);

G_END_DECLS
