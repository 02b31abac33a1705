/* The ball as it is bought and drilled (TbBall), and the rigid body that follows from it (TbBody).
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <stdbool.h>
#include "tb-cover.h"
#include "tb-math.h"
#include "tb-status.h"

/* Limits of the USBC Equipment Specifications Manual. */
#define TB_BALL_MAX_WEIGHT_LB 16.0
#define TB_BALL_MIN_DIAMETER_IN 8.5
#define TB_BALL_MAX_DIAMETER_IN 8.595
#define TB_BALL_MIN_RG_IN 2.46
#define TB_BALL_MAX_RG_IN 2.80
#define TB_BALL_MAX_DIFFERENTIAL_IN 0.060
#define TB_BALL_MAX_ROUGHNESS_UIN 65.0
#define TB_BALL_MAX_STATIC_OZ 3.0

typedef enum TbHoleKind
{
  TB_HOLE_FINGER,
  TB_HOLE_THUMB,
  TB_N_HOLE_KINDS
} TbHoleKind;

/* A gripping hole. Its mouth is `over` (towards the PAP) and `up` (away from the thumb) of the grip centre, along
 * the surface. A hole with no pitch points at the ball's centre; a pitch is the distance by which its line misses
 * the centre. Holes are taken to lie apart, as a pro shop drills them: where two meet, what they share is taken away twice,
 * and the ball is so much lighter there than it would be. */
typedef struct TbHole
{
  TbHoleKind kind;
  double over, up;        /* m along the surface */
  double diameter;        /* m */
  double depth;           /* m, from the surface along the hole's line */
  double pitch_over;      /* m, the line passes on the PAP's side of the centre */
  double pitch_up;        /* m, the line passes above the centre */
} TbHole;
#define TB_MAX_HOLES 5

typedef struct TbBall
{
  double mass;     /* kg, before drilling */
  double diameter; /* m */
  /* Radius of gyration about the pin axis, and what is added about the other two (symmetric core: the intermediate
   * differential is 0). */
  double rg;                        /* m */
  double differential;              /* m */
  double intermediate_differential; /* m */
  TbCover cover;
  /* Layout: angle at the pin between the lines to the PAP and to the mass bias, distance from pin to PAP along the
   * surface, angle at the PAP between the line to the pin and the vertical axis line (VAL). */
  double drilling_angle; /* rad */
  double pin_to_pap;     /* m */
  double val_angle;      /* rad */
  double pap_over;       /* m along the surface from the grip centre to the VAL */
  double pap_up;         /* m along the VAL, positive away from the thumb */
  double top_weight;     /* kg as the scale shows it before drilling; see tb-ball.c for the scale's arm */
  int n_holes;           /* 0: balanced as given */
  TbHole hole[TB_MAX_HOLES];
} TbBall;

/* What the scale says of a drilled ball: differences between the halves, kg. */
typedef struct TbStaticWeights
{
  double top;    /* grip side heavier than the far side */
  double side;   /* PAP side heavier */
  double finger; /* finger side heavier than the thumb side */
} TbStaticWeights;

/* A rigid sphere-shaped body in its own principal axes. */
typedef struct TbBody
{
  double mass;      /* kg */
  double radius;    /* m, of the sphere */
  TbVec3 moment;    /* kg m², about the centre of mass, along the body axes */
  TbVec3 offset;    /* m, centre of mass from the sphere's centre, body axes */
  /* Landmarks as unit vectors from the sphere's centre, body axes. */
  TbVec3 pap, pin, mass_bias, grip;
  TbVec3 up;        /* at the grip, along the surface away from the thumb */
  TbStaticWeights static_weights;
} TbBody;

TbBall tb_ball_default (void);
/* The body of a ball; checks the ball first. On an error the body is not touched. The frame is the bowler's: for a
 * left-hander all is mirrored. */
TbStatus tb_ball_body (const TbBall *ball, TbBody *body);
/* A plain sphere with equal moments, k = (RG/R)², PAP along `pap` of its own: for closed forms and tests. */
TbBody tb_body_sphere (double mass, double radius, double k);
/* Radii of gyration about the body axes, m. */
TbVec3 tb_body_rg (const TbBody *body);
