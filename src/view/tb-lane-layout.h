/* Where everything on a picture of the lane goes, and the way from the lane to the picture.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "tb-canvas.h"
#include "tb-lane-view.h"

G_BEGIN_DECLS

/* Width of a gutter, m: what is left of the usual 60 in between the lanes' dividers (typical). Only the perspective
 * draws it so wide. */
#define TB_GUTTER_WIDTH (0.5 * (60.0 - TB_LANE_WIDTH_IN) * TB_METRES_PER_INCH)
/* The eye that sees the perspective: of a grown person who stands at the far end of a 15 ft approach, m. */
#define TB_EYE_BEHIND (15.0 * TB_METRES_PER_FOOT)
#define TB_EYE_HEIGHT (65.0 * TB_METRES_PER_INCH)
/* How much of the approach before the foul line the perspective shows, and how high the pit is drawn, m. */
#define TB_APPROACH_SHOWN 0.45
#define TB_PIT_HEIGHT 0.62
/* Where the perspective lays the strip of phases beside the gutter, m from the middle of the lane, and its width. */
#define TB_PHASES_NEAR (TB_LANE_HALF_WIDTH + TB_GUTTER_WIDTH + 0.05)
#define TB_PHASES_WIDTH 0.07

/* Height of the legend's bar, em; its numbers stand below it. */
#define TB_LEGEND_BAR 0.8

/* Strips of phases beside the lane in the plans, em: of before, the space between, of after, and how far from the
 * first one's near side the names begin. */
#define TB_STRIP_BEFORE 0.42
#define TB_STRIP_SPACE 0.40
#define TB_STRIP_AFTER 0.80
#define TB_STRIP_NAMES 2.0

typedef struct TbLaneLayout
{
  TbLaneProjection projection;
  double em;
  double mark_em;            /* px that marks on the lane are told in: em, or less on a small lane */
  /* Foul line to pit, between the gutters; the box around it in the perspective. */
  cairo_rectangle_t lane;
  /* Sizes as they are drawn, m of the lane frame: true ones in the perspective, as many as it takes to make something
   * of them in the plans. */
  double gutter_width;
  double approach_depth;
  double pit_depth;          /* of the edge that stands for the pit */
  /* Bands for what surrounds the lane; of no size where there is no room. */
  cairo_rectangle_t ends;    /* labels of the runs' ends and the pocket */
  cairo_rectangle_t feet;    /* numbers along the lane */
  cairo_rectangle_t boards;  /* numbers across it */
  cairo_rectangle_t phases;  /* strips and their names */
  cairo_rectangle_t note;    /* what is not to scale */
  cairo_rectangle_t legend;  /* of the film */
  /* The perspective: px of 1 m at a distance of 1 m, and the point straight ahead of the eye. */
  double focal;
  TbPoint ahead;
} TbLaneLayout;

void tb_lane_layout_init (TbLaneLayout *self, TbCanvas *canvas, const TbLaneScene *scene);
/* A place over the lane, m, in the lane frame. In the plans z does not show. */
TbPoint tb_lane_layout_point (const TbLaneLayout *self, double x, double y, double z);
/* The way back, to the floor. FALSE outside the lane; x and y are then not set. */
gboolean tb_lane_layout_floor (const TbLaneLayout *self, TbPoint point, double *x, double *y);
/* px of a metre across the lane, at a distance y down the lane; and of a metre along it, in the plans. */
double tb_lane_layout_scale (const TbLaneLayout *self, double y);
double tb_lane_layout_along (const TbLaneLayout *self);
/* Metres across, and along, that make a length in px in the plans. */
double tb_lane_layout_across_from_px (const TbLaneLayout *self, double px);
double tb_lane_layout_along_from_px (const TbLaneLayout *self, double px);
/* How many times wider than along the across-lane scale is drawn; 1 in the perspective. */
double tb_lane_layout_stretch (const TbLaneLayout *self);
/* What the picture says of its own scale; free it. */
char *tb_lane_layout_note (TbLaneProjection projection, double stretch);

/* Bowler's frame and lane frame differ in the sign of x for a left-hander. */
double tb_lane_x (bool mirrored, double x);
/* The board at an x of the lane frame, as the scene's bowler counts it. */
double tb_scene_board (const TbLaneScene *scene, double x);

G_END_DECLS
