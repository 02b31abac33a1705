/* A ball that stands still, seen from any side: what layouts and rings are drawn on.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "tb-canvas.h"
#include "tb-core.h"
#include "tb-draw.h"

G_BEGIN_DECLS

typedef struct TbGlobe
{
  TbPoint centre;         /* px */
  double radius;          /* px */
  TbVec3 right, up, near; /* unit vectors of the picture, in the frame in which places are given */
  gboolean mirrored;      /* left for right */
} TbGlobe;

/* Looks along −near; up is drawn as far up as it goes. Centre and radius are the caller's to set. */
void tb_globe_look (TbGlobe *self, TbVec3 near, TbVec3 up);
/* A place (a unit vector) in the picture. */
TbPoint tb_globe_point (const TbGlobe *self, TbVec3 place);
gboolean tb_globe_sees (const TbGlobe *self, TbVec3 place);
/* The place under a point of the picture; past the edge the nearest on it. FALSE if the globe has no size. */
gboolean tb_globe_place (const TbGlobe *self, TbPoint point, TbVec3 *place);

/* The lit sphere. */
void tb_globe_draw (const TbGlobe *self, TbCanvas *canvas);
/* Adds to cairo's path what can be seen (or what cannot) of the shorter great circle between two places, and
 * of the circle an angle (rad) from a pole. */
void tb_globe_add_arc (const TbGlobe *self, cairo_t *cr, TbVec3 from, TbVec3 to, gboolean seen);
void tb_globe_add_circle (const TbGlobe *self, cairo_t *cr, TbVec3 pole, double angle, gboolean seen);
/* Adds the part of a circle an angle from a pole that lies between two other places, the short way. */
void
tb_globe_add_angle (const TbGlobe *self, cairo_t *cr, TbVec3 pole, double angle, const TbVec3 between[2]);
/* The middle of that part. */
TbVec3 tb_globe_angle_middle (TbVec3 pole, double angle, const TbVec3 between[2]);

G_END_DECLS
