/* Strokes, arrows, marks: the small parts that every picture is made of.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <cairo.h>
#include "tb-label-space.h"
#include "tb-theme.h"

G_BEGIN_DECLS

void tb_draw_color (cairo_t *cr, TbColor color);
/* Adds a rectangle, or one with round corners, to the path. */
void tb_draw_rectangle (cairo_t *cr, const cairo_rectangle_t *box);
void tb_draw_rounded (cairo_t *cr, const cairo_rectangle_t *box, double radius);
/* Strokes one straight line. */
void tb_draw_line (cairo_t *cr, TbPoint a, TbPoint b);
/* Adds a circle to the path. */
void tb_draw_circle (cairo_t *cr, TbPoint centre, double radius);
/* Paints an image, stretched smoothly over a box; only what lies in `clip` is seen of it. */
void tb_draw_image (cairo_t *cr,
                    cairo_surface_t *image,
                    const cairo_rectangle_t *box,
                    const cairo_rectangle_t *clip);
/* Fills an arrow's head: its point is at `tip`, it comes from the direction of `from`. */
void tb_draw_arrow_head (cairo_t *cr, TbPoint tip, TbPoint from, double length);
/* The middle of the pixel: for crisp lines an odd number of pixels wide. */
double tb_draw_crisp (double position);

/* The two runs, told apart by more than colour. */
typedef struct TbRunStyle
{
  TbColor color;
  gboolean before; /* dashed line, open ring; otherwise solid line, filled ball */
  double width;    /* px of its line */
} TbRunStyle;

TbRunStyle tb_run_style (const TbTheme *theme, gboolean before);
/* Line width, caps and dashes of a run. */
void tb_draw_set_run (cairo_t *cr, const TbRunStyle *style);
/* The same for the part in the air: dotted and thin. */
void tb_draw_set_flight (cairo_t *cr, const TbRunStyle *style);
/* Where a run ends, or where its ball is: an open ring or a filled disc. */
void tb_draw_run_mark (cairo_t *cr, const TbTheme *theme, const TbRunStyle *style, const TbPoint *centre, double radius);

/* Many points, px. */
typedef GArray TbPolyline;
G_DEFINE_AUTOPTR_CLEANUP_FUNC (TbPolyline, g_array_unref)
TbPolyline *tb_polyline_new (void);
/* Adds a point. Points that change nothing anyone can see are left out when the line is drawn. */
void tb_polyline_add (TbPolyline *line, TbPoint point);
/* Adds the line to the path with as few vertices as do not show: none further than a twentieth of a pixel off. */
void tb_polyline_trace (const TbPolyline *line, cairo_t *cr);
/* Labels keep off the line. */
void tb_polyline_take (const TbPolyline *line, TbLabelSpace *space);

G_END_DECLS
