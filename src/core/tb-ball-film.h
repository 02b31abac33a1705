/* The oil that the ball carries: a map of its surface, and the exchange with the lane. Private to core.
 *
 * The map's cells have equal areas: rows of equal height along the axis on which the ball is released (the track runs
 * about it, so that the poles stay clear of the contact), columns of equal angle about it. Like the lane's film it is
 * read and written with the weights of a cubic B-spline, which is the smooth weight of the contact patch.
 *
 * In one passing the spot under the ball takes up a share of the lane's film and leaves a share of its own. What is
 * taken up is written once the ball has turned on by EXCHANGE_DELAY, so that a spot does not meet its own fresh oil
 * before it has come round; reading is then of a map that stands still. The contact runs over the rings of earlier turns
 * in a few milliseconds, so a step looks ahead along its way over the ball at some places. Oil on
 * the surface soaks into the cover at the rate `absorption`; the map keeps film × exp(absorption × time), so that
 * soaking costs nothing.
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
/* Columns past the last that repeat the first, so that four in a row can be read anywhere. */
#define BALL_FILM_WRAP 3
/* Passings that wait to be written. */
#define BALL_FILM_QUEUE 512

/* Places a step looks at. */
#define BALL_FILM_LOOKS 6

/* Where a contact falls in the map: rows and columns, and their weights. */
typedef struct MapPlace
{
  int row, column;
  double across[4], around[4];
} MapPlace;

/* A short piece of the way over lane and ball. */
typedef struct Passing
{
  double time;
  double x, y;        /* m, bowler's frame */
  double lane_area;   /* m², of the strip of lane that is passed */
  double ball_area;   /* m², of the strip of ball */
  double lane_film;   /* m */
  double ball_film;   /* m, as it came to the lane */
  double turned;      /* rad, of the ball since release */
  double growth;      /* exp (absorption × time) */
  MapPlace place;     /* on the ball */
} Passing;

typedef struct BallFilm
{
  double cell[BALL_FILM_ROWS + 2 * BALL_FILM_PAD][BALL_FILM_COLUMNS + BALL_FILM_WRAP]; /* m, × exp (absorption time) */
  TbVec3 axis, first, second; /* the map's own axes, body axes */
  double cell_area;           /* m² */
  double absorption;          /* 1/s */
  double pick_up, lay_down;   /* shares */
  double held;                /* m³ × exp (absorption × time), on the surface */
  double taken, left;         /* m³, from the lane and on it, in all */
  double on_surface;          /* m³, once it is finished */
  bool wet;                   /* something has been written */
  MapPlace ahead[BALL_FILM_LOOKS]; /* what the last look saw */
  double films[BALL_FILM_LOOKS];   /* m */
  /* Their weights at the beginning, the middle and the end of the step. */
  double weights[3][BALL_FILM_LOOKS];
  int looks;
  double full_step;           /* s */
  double look_length;         /* s, of the step it was for */
  double growth;              /* exp (absorption × time) half way along it */
  Passing queue[BALL_FILM_QUEUE];
  int queue_start, queue_count;
  TbOil *change;              /* of the lane, where it is asked for; else NULL */
  const TbFriction *friction; /* whose film is read */
} BallFilm;

/* full_step (s) is the length of step that is looked along at BALL_FILM_LOOKS places. */
void ball_film_init (BallFilm *self, const TbFriction *friction, const TbAssumed *assumed, const TbBody *body, TbOil *change,
                     double full_step);
/* Looks along the way over the ball during a step of length h (s) that begins with an attitude and a spin (rad/s,
 * bowler's frame) at a time (s), and leaves what it sees in `films`. */
void ball_film_look (BallFilm *self, TbQuat attitude, TbVec3 spin, double time, double h);
/* Queues a passing, and writes those that lie far enough behind. */
void ball_film_pass (BallFilm *self, const Passing *passing);
/* Writes what still waits. */
void ball_film_finish (BallFilm *self, double time);
