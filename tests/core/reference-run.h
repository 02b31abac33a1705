/* A shot run by a general-purpose solver: GSL's explicit ones, or SUNDIALS CVODE (Adams).
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "reference-model.h"

typedef enum RefSolver
{
  REF_SOLVER_GSL_4_5, /* Runge-Kutta-Fehlberg, rkf45 */
  REF_SOLVER_GSL_8,   /* Prince-Dormand, rk8pd */
  REF_SOLVER_CVODE_ADAMS
} RefSolver;

typedef struct RefAnswer
{
  double state[REF_SIZE]; /* where it ends */
  double time;            /* s */
  double slip;            /* m/s, at the end */
  double heading;         /* rad, positive towards higher boards */
  double roll_y;          /* m, start of the last roll; NAN if it does not roll */
  int switches;
  int let_go; /* times a roll went back to sliding */
  long evaluations;
} RefAnswer;

/* A solver with its memory, to be used for many shots. */
typedef struct RefRunner RefRunner;
/* tolerance: relative and absolute. NULL if there is no memory. */
RefRunner *ref_runner_new (RefSolver solver, double tolerance);
void ref_runner_free (RefRunner *runner);
/* Runs a model from a state, both of which it changes, to end_y (m). false if the solver gives up. */
bool
ref_runner_run (RefRunner *runner, RefModel *model, double state[REF_SIZE], double end_y, RefAnswer *answer);
