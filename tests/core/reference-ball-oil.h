/* The oil that a ball carries, written a second time: a shot walked through in steps so small that each meets
 * one spot of the ball, where core takes long steps and looks at several spots in each.
 *
 * What is the model's own stays: cells of equal area, cubic B-splines for weights, a share taken up and a
 * share left in one passing, written a sixth of a turn later. Where the cells begin about the axis is not,
 * and is another place here.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "reference-run.h"

#define REF_BALL_ROWS 56
#define REF_BALL_COLUMNS 64

/* Where on the map a spot lies. */
typedef struct RefSpot
{
  int row[4], column[4];
  double across[4], around[4];
} RefSpot;

/* What one step exchanged, m³, until it is written. */
typedef struct RefPassing
{
  RefSpot spot;
  double turned, time;
  double up, down;
} RefPassing;

typedef struct RefBallOil
{
  double film[REF_BALL_ROWS][REF_BALL_COLUMNS]; /* m */
  double axis[3], first[3], second[3];          /* body axes */
  double cell_area, absorption, pick_up, lay_down, strip;
  double time, turned;
  RefPassing *waiting; /* owned */
  int written, passed, room;
} RefBallOil;

/* Film on the spot of the ball that touches the lane in an attitude (w, x, y, z), m. */
double ref_ball_oil_film (const RefBallOil *oil, const double attitude[4]);

/* Walks a motion on a film to its end in classical Runge–Kutta steps (s). */
void ref_ball_oil_walk (const TbMotion *motion, double step, RefAnswer *answer);
