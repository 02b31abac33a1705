/* The oil that the ball carries: a map of its surface, and the exchange with the lane. Private to core.
 *
 * The map's cells have equal areas: rows of equal height along the axis on which the ball is released (the track runs
 * about it, so that the poles stay clear of the contact), columns of equal angle about it. Like the lane's film it is
 * read and written with the weights of a cubic B-spline, which is the smooth weight of the contact patch.
 *
 * In one passing the spot under the ball takes up a share of the lane's film and leaves a share of its own. What is
 * taken up is written once the contact has moved on by EXCHANGE_DELAY, so that a spot does not meet its own fresh oil
 * before it has come round; reading is then of a map that stands still, and the integrator keeps its order. Oil on the
 * surface soaks into the cover at the rate `absorption`; the map keeps film × exp(absorption × time), so that soaking
 * costs nothing.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "tb-assumed.h"
#include "tb-ball.h"
#include "tb-friction.h"
#include "tb-math.h"
#include "tb-oil.h"

#define BALL_FILM_ROWS 56
#define BALL_FILM_COLUMNS 64
#define BALL_FILM_PAD 2
/* Passings that wait to be written. */
#define BALL_FILM_QUEUE 512

/* A short piece of the way over lane and ball. */
typedef struct Passing
{
  double time;
  double x, y;        /* m, bowler's frame */
  TbVec3 contact;     /* unit vector on the ball, body axes */
  double lane_area;   /* m², of the strip of lane that is passed */
  double ball_area;   /* m², of the strip of ball */
  double lane_film;   /* m */
  double turned;      /* rad, of the ball since release */
} Passing;

typedef struct BallFilm
{
  double cell[BALL_FILM_ROWS + 2 * BALL_FILM_PAD][BALL_FILM_COLUMNS]; /* m, × exp (absorption time) */
  TbVec3 axis, first, second; /* the map's own axes, body axes */
  double cell_area;           /* m² */
  double absorption;          /* 1/s */
  double pick_up, lay_down;   /* shares */
  double on_surface;          /* m³, as of `time` */
  double absorbed;            /* m³ */
  double time;                /* s */
  bool wet;                   /* something has been written */
  Passing queue[BALL_FILM_QUEUE];
  int queue_start, queue_count;
  TbOil *change;              /* of the lane, where it is asked for; else NULL */
  const TbFriction *friction; /* whose film is read */
} BallFilm;

void ball_film_init (BallFilm *self, const TbFriction *friction, const TbAssumed *assumed, const TbBody *body, TbOil *change);
/* Film at the contact (m) for a ball of that attitude at that time (s). */
double ball_film_read (const BallFilm *self, TbQuat attitude, double time);
/* Queues a passing, and writes those that lie far enough behind. */
void ball_film_pass (BallFilm *self, const Passing *passing);
/* Writes what still waits. */
void ball_film_finish (BallFilm *self, double time);
