/* The sphere itself: its shading, and what is drawn on it.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "tb-ball-view.h"
#include "tb-canvas.h"

G_BEGIN_DECLS

/* A place on the sphere as it is seen: to the right, up, and towards the eye; a unit vector. */
typedef struct TbSeen
{
  double right, up, near;
} TbSeen;

typedef struct TbBallFigure
{
  const TbBallScene *scene;
  TbPoint centre; /* px */
  double radius;  /* px */
  TbSample now;   /* at the scene's time */
  TbMat3 attitude;
} TbBallFigure;

/* FALSE if the scene has no path to draw. Centre and radius are the caller's to set. */
gboolean tb_ball_figure_init (TbBallFigure *self, const TbBallScene *scene);
/* A direction of the bowler's frame, or of the ball's own axes, as it is seen. */
TbSeen tb_ball_figure_see (const TbBallFigure *self, TbVec3 direction);
TbSeen tb_ball_figure_see_on_ball (const TbBallFigure *self, TbVec3 on_ball);
/* Rad between the points of a round line, so that it looks round at this size. */
double tb_ball_figure_step (const TbBallFigure *self);
TbPoint tb_ball_figure_point (const TbBallFigure *self, TbSeen seen, double distance);

/* Sphere and its grid, rings, marks. */
void tb_ball_figure_draw (const TbBallFigure *self, TbCanvas *canvas);
/* The spin axis as an arrow; returns its tip, px. */
TbPoint tb_ball_figure_draw_axis (const TbBallFigure *self, TbCanvas *canvas);
/* Whether some part of the track carries oil that a picture shows. */
gboolean tb_ball_figure_has_oil (const TbPath *path);

/* The marks, also for the key: on the ball, or on the background. */
void tb_ball_mark_pap (cairo_t *cr, TbPoint at, double size);
void tb_ball_mark_pin (cairo_t *cr, TbPoint at, double size);
void tb_ball_mark_hole (cairo_t *cr, TbPoint at, double size);

G_END_DECLS
