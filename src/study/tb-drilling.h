/* From a hand's measurements to the holes of a ball, and what the drilled ball becomes.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>
#include "tb-core.h"

G_BEGIN_DECLS

typedef enum TbGripFinger
{
  TB_GRIP_MIDDLE, /* away from the PAP */
  TB_GRIP_RING,   /* on the PAP's side */
  TB_GRIP_N_FINGERS
} TbGripFinger;

/* One hole of the grip. Pitches as in TbHole. */
typedef struct TbGripHole
{
  double diameter;   /* m */
  double depth;      /* m */
  double pitch_over; /* m */
  double pitch_up;   /* m */
} TbGripHole;

/* Lengths are along the surface. The grip centre lies half the mean span above the thumb hole's edge. */
typedef struct TbGrip
{
  double span[TB_GRIP_N_FINGERS]; /* m, from the edge of the thumb hole to the edge of the finger hole */
  double bridge;                  /* m, between the edges of the two finger holes */
  TbGripHole finger[TB_GRIP_N_FINGERS];
  TbGripHole thumb;
  gboolean no_thumb; /* two-handed: no hole for the thumb; spans are measured all the same */
} TbGrip;

/* A grown hand's fingertip grip; typical, not anyone's. */
TbGrip tb_grip_default (void);
/* Puts the grip's holes on a ball in place of those it has. TB_ERROR_HOLES, with the ball untouched, if no
 * ball has room for them. */
TbStatus tb_grip_drill (const TbGrip *grip, TbBall *ball);
/* Reads spans and bridge back off the holes. FALSE if these are not two finger holes, with or without one for
 * a thumb. */
gboolean tb_grip_from_ball (const TbBall *ball, TbGrip *grip);

/* A ball as a workshop would measure it. */
typedef struct TbBallFigures
{
  double mass;                      /* kg */
  double rg;                        /* m, about the axis of least */
  double differential;              /* m, largest minus smallest */
  double intermediate_differential; /* m, largest minus middle */
  double offset;                    /* m, of the centre of mass from the centre of the sphere */
  double pin_to_low_axis;           /* rad, between the pin and the axis of least RG */
  double low_axis_to_pap;           /* m along the surface */
  TbStaticWeights static_weights;
} TbBallFigures;

/* Before (the same ball with no holes) and after. On an error neither is touched. */
TbStatus tb_drilling_figures (const TbBall *ball, TbBallFigures *before, TbBallFigures *after);

/* Places on the ball in the grip's own frame (x over, y up, z out at the grip), unit vectors; for pictures.
 */
typedef struct TbLayoutPlaces
{
  TbVec3 pap, pin, mass_bias;
  TbVec3 hole[TB_MAX_HOLES];
  int n_holes;
} TbLayoutPlaces;
TbStatus tb_layout_places (const TbBall *ball, TbLayoutPlaces *places);
/* The unit vector `over` and `up` (m along the surface) of the grip's centre. */
TbVec3 tb_layout_place (double radius, double over, double up);
/* The way back: over and up of a unit vector, m. */
void tb_layout_over_up (double radius, TbVec3 place, double *over, double *up);

/* Layout that puts the pin, or the mass bias, at a place (a unit vector in the grip's frame): a picture's
 * mark that was dragged there. Angles are held to 0 … π, distances to a quarter of the way round; what else
 * the layout has stays. With a new PAP all three numbers stay, and pin and mass bias go with it. */
void tb_layout_move_pin (TbBall *ball, TbVec3 place);
void tb_layout_move_mass_bias (TbBall *ball, TbVec3 place);
void tb_layout_move_pap (TbBall *ball, TbVec3 place);

G_END_DECLS
