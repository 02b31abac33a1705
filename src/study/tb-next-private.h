/* Between the parts of Next.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "tb-next.h"

G_BEGIN_DECLS

/* One thing to be solved: a knob, or a ball. */
typedef struct NextTask
{
  const TbKnob *knob;
  const TbNextBall *ball; /* TB_KNOB_OTHER_BALL */
} NextTask;

/* Somebody who throws for a wish. */
typedef struct NextSolver
{
  const TbNext *next;
  TbThrower *thrower;
  GCancellable *cancellable;
  const TbKnob *knob; /* a slide */
  TbShot base;        /* the throw it starts from: the ball may be another already */
  /* The best place so far. */
  double closest_at, closest_by, closest_aim; /* knob, distance from the wish, m */
  double warm_aim; /* m, where the last re-aim ended: the next is not far from it; NAN if there was none */
  /* Of the last place that was thrown. */
  TbShot shot;
  TbMeasures measures;
} NextSolver;

/* Throws `shot`, re-aimed if the wish asks for it, and says what came of the wish, in its unit. NAN if the
 * real ball would not get to the pins, or has no pocket line. */
double next_throw (NextSolver *self);
/* Whether the wish is for as much as can be had. */
gboolean next_wants_most (const NextSolver *self);
/* How far from the wish a value is: less is better. */
double next_distance (const NextSolver *self, double value);
/* Turns `knob` from where it stands in `base`, leaves the best there is in `shot` and `measures`, and the
 * curve in the option. What came of the wish is returned; NAN if there is nothing. */
double next_turn (NextSolver *self, TbNextOption *option);

/* Throws `base` with the knob somewhere, keeps the place if it is the closest yet, and says what came of the wish. NAN as for
 * next_throw(), or if cancelled. `data` is the solver. */
double next_value_at (double at, gpointer data);
/* Lets the next re-aim begin where one place of the curve ended, so that it stays on that pocket line. */
void next_warm_up (NextSolver *self, const TbNextPoint *point);
/* Where the curve of an option, once it is drawn, meets the wish with the smallest change; NAN if it does not. */
double next_meet (NextSolver *self, const TbNextOption *option);

/* Whether a knob has something to offer for this wish and throw. */
gboolean next_task_makes_sense (const TbNext *next, const NextTask *task);
/* Solves it. NULL if it is of no use, or if cancelled. */
TbNextOption *
next_task_solve (const TbNext *next, const NextTask *task, TbThrower *thrower, GCancellable *cancellable);

G_END_DECLS
