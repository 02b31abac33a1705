/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "reference-run.h"

#include <stdlib.h>
#include <string.h>
#include <gsl/gsl_errno.h>
#include <gsl/gsl_odeiv2.h>
#include <cvode/cvode.h>
#include <nvector/nvector_serial.h>
#include <sundials/sundials_context.h>
#include <sunnonlinsol/sunnonlinsol_fixedpoint.h>

/* First step, s, that the explicit solvers are offered. */
#define FIRST_STEP 1e-3
/* An event is found when it is this near, in its own unit (m, m/s or N). */
#define EVENT_NEAR 1e-12
#define MAX_SWITCHES 200
#define MAX_STEPS 2000000

/* What one mode ended with. */
typedef enum Ending
{
  ENDING_FAILED,
  ENDING_SWITCH,
  ENDING_LINE /* the end of the lane */
} Ending;

typedef struct Task
{
  RefModel *model;
  double end_y;
  double time;
  double *state;
} Task;

struct RefRunner
{
  Task task;
  RefSolver solver;
  /* GSL */
  gsl_odeiv2_step *step;
  gsl_odeiv2_control *control;
  gsl_odeiv2_evolve *evolve;
  /* SUNDIALS */
  SUNContext context;
  void *memory;
  N_Vector vector;
  SUNNonlinearSolver fixed_point;
};

static int
gsl_derivative (double t, const double state[], double derivative[], void *data)
{
  (void)t;
  ref_model_derivative (data, state, derivative);
  return GSL_SUCCESS;
}

/* Falls to 0 at the end of the mode or of the lane. */
static double
remaining (Task *task, const double state[REF_SIZE], bool line)
{
  return line ? task->end_y - state[1] : ref_model_event (task->model, state);
}

static double
remaining_rate (Task *task, const double state[REF_SIZE], bool line)
{
  const double small = 1e-7;
  double derivative[REF_SIZE], ahead[REF_SIZE];

  if (line)
    return -state[REF_VELOCITY + 1];
  ref_model_derivative (task->model, state, derivative);
  for (int i = 0; i < REF_SIZE; i++)
    ahead[i] = state[i] + small * derivative[i];
  return (remaining (task, ahead, false) - remaining (task, state, false)) / small;
}

/* The solver's own step, made as short as takes it to the event: Newton's method from the far end. */
static void
step_to_event (Task *task, gsl_odeiv2_step *step, const gsl_odeiv2_system *system, double length, bool line)
{
  double start[REF_SIZE], error[REF_SIZE], h = length, low = 0.0, high = length;

  memcpy (start, task->state, sizeof start);
  for (int i = 0; i < 60; i++)
    {
      double value, next;

      memcpy (task->state, start, sizeof start);
      gsl_odeiv2_step_reset (step);
      gsl_odeiv2_step_apply (step, task->time, h, task->state, error, NULL, NULL, system);
      value = remaining (task, task->state, line);
      if (fabs (value) <= EVENT_NEAR)
        break;
      *(value > 0.0 ? &low : &high) = h;
      next = h - value / remaining_rate (task, task->state, line);
      h = next > low && next < high ? next : 0.5 * (low + high);
    }
  task->time += h;
}

static Ending
gsl_mode (RefRunner *tools)
{
  Task *task = &tools->task;
  const gsl_odeiv2_system system = { gsl_derivative, NULL, REF_SIZE, task->model };
  double h = FIRST_STEP;

  gsl_odeiv2_evolve_reset (tools->evolve);
  gsl_odeiv2_step_reset (tools->step);
  for (int i = 0; i < MAX_STEPS; i++)
    {
      double before[REF_SIZE], from = task->time;
      bool line, event;

      memcpy (before, task->state, sizeof before);
      if (gsl_odeiv2_evolve_apply (tools->evolve, tools->control, tools->step, &system, &task->time, 1e3, &h,
                                   task->state)
          != GSL_SUCCESS)
        return ENDING_FAILED;
      line = remaining (task, task->state, true) <= 0.0;
      event = ref_model_event (task->model, task->state) <= 0.0;
      if (line || event)
        {
          double length = task->time - from;

          memcpy (task->state, before, sizeof before);
          task->time = from;
          step_to_event (task, tools->step, &system, length, !event);
          if (!event || remaining (task, task->state, true) >= 0.0)
            return event ? ENDING_SWITCH : ENDING_LINE;
          /* Both within one step, and the line first. */
          memcpy (task->state, before, sizeof before);
          task->time = from;
          step_to_event (task, tools->step, &system, length, true);
          return ENDING_LINE;
        }
      if (task->model->mode == REF_SLIDE)
        ref_model_note_slip (task->model, task->state);
    }
  return ENDING_FAILED;
}

static int
cvode_derivative (realtype t, N_Vector state, N_Vector derivative, void *data)
{
  Task *task = data;

  (void)t;
  ref_model_derivative (task->model, N_VGetArrayPointer (state), N_VGetArrayPointer (derivative));
  return 0;
}

static int
cvode_events (realtype t, N_Vector state, realtype *values, void *data)
{
  Task *task = data;

  (void)t;
  values[0] = ref_model_event (task->model, N_VGetArrayPointer (state));
  values[1] = remaining (task, N_VGetArrayPointer (state), true);
  return 0;
}

static Ending
cvode_mode (RefRunner *tools)
{
  Task *task = &tools->task;
  double *values = N_VGetArrayPointer (tools->vector);
  int falling[2] = { -1, -1 }, found[2];

  memcpy (values, task->state, REF_SIZE * sizeof (double));
  if (CVodeReInit (tools->memory, task->time, tools->vector) != CV_SUCCESS
      || CVodeSetRootDirection (tools->memory, falling) != CV_SUCCESS)
    return ENDING_FAILED;
  for (int i = 0; i < MAX_STEPS; i++)
    {
      int answer = CVode (tools->memory, task->time + 1e3, tools->vector, &task->time, CV_ONE_STEP);

      memcpy (task->state, values, REF_SIZE * sizeof (double));
      if (answer == CV_ROOT_RETURN && CVodeGetRootInfo (tools->memory, found) == CV_SUCCESS)
        return found[1] != 0 ? ENDING_LINE : ENDING_SWITCH;
      if (answer != CV_SUCCESS)
        return ENDING_FAILED;
      if (task->model->mode == REF_SLIDE)
        ref_model_note_slip (task->model, task->state);
    }
  return ENDING_FAILED;
}

static void
finish (const Task *task, RefAnswer *answer)
{
  double slip[2];

  memcpy (answer->state, task->state, sizeof answer->state);
  answer->time = task->time;
  ref_model_slip (task->model, task->state, slip);
  answer->slip = hypot (slip[0], slip[1]);
  answer->heading = atan2 (-task->state[REF_VELOCITY], task->state[REF_VELOCITY + 1]);
  answer->evaluations = task->model->evaluations;
  if (task->model->mode != REF_ROLL)
    answer->roll_y = NAN;
}

bool
ref_runner_run (RefRunner *runner, RefModel *model, double state[REF_SIZE], double end_y, RefAnswer *answer)
{
  Task *task = &runner->task;

  *task = (Task){ model, end_y, 0.0, state };
  memset (answer, 0, sizeof *answer);
  answer->roll_y = NAN;
  model->evaluations = 0;
  for (answer->switches = 0; answer->switches < MAX_SWITCHES; answer->switches++)
    {
      Ending ending = runner->solver == REF_SOLVER_CVODE_ADAMS ? cvode_mode (runner) : gsl_mode (runner);

      if (ending == ENDING_FAILED)
        return false;
      if (ending == ENDING_LINE)
        {
          finish (task, answer);
          return true;
        }
      answer->let_go += model->mode == REF_ROLL;
      ref_model_switch (model, state);
      if (model->mode == REF_ROLL)
        answer->roll_y = state[1];
    }
  return false;
}

static bool
prepare_gsl (RefRunner *runner, double tolerance)
{
  const gsl_odeiv2_step_type *type
      = runner->solver == REF_SOLVER_GSL_8 ? gsl_odeiv2_step_rk8pd : gsl_odeiv2_step_rkf45;

  runner->step = gsl_odeiv2_step_alloc (type, REF_SIZE);
  runner->control = gsl_odeiv2_control_y_new (tolerance, tolerance);
  runner->evolve = gsl_odeiv2_evolve_alloc (REF_SIZE);
  return runner->step != NULL && runner->control != NULL && runner->evolve != NULL;
}

static bool
prepare_cvode (RefRunner *runner, double tolerance)
{
  if (SUNContext_Create (NULL, &runner->context) != 0)
    return false;
  runner->vector = N_VNew_Serial (REF_SIZE, runner->context);
  N_VConst (0.0, runner->vector);
  runner->memory = CVodeCreate (CV_ADAMS, runner->context);
  runner->fixed_point = SUNNonlinSol_FixedPoint (runner->vector, 0, runner->context);
  return CVodeInit (runner->memory, cvode_derivative, 0.0, runner->vector) == CV_SUCCESS
         && CVodeSStolerances (runner->memory, tolerance, tolerance) == CV_SUCCESS
         && CVodeSetUserData (runner->memory, &runner->task) == CV_SUCCESS
         && CVodeSetNonlinearSolver (runner->memory, runner->fixed_point) == CV_SUCCESS
         && CVodeSetMaxNumSteps (runner->memory, MAX_STEPS) == CV_SUCCESS
         && CVodeRootInit (runner->memory, 2, cvode_events) == CV_SUCCESS;
}

RefRunner *
ref_runner_new (RefSolver solver, double tolerance)
{
  RefRunner *runner = calloc (1, sizeof *runner);
  bool ready;

  if (runner == NULL)
    return NULL;
  runner->solver = solver;
  ready = solver == REF_SOLVER_CVODE_ADAMS ? prepare_cvode (runner, tolerance)
                                           : prepare_gsl (runner, tolerance);
  if (ready)
    return runner;
  ref_runner_free (runner);
  return NULL;
}

void
ref_runner_free (RefRunner *runner)
{
  if (runner->evolve != NULL)
    gsl_odeiv2_evolve_free (runner->evolve);
  if (runner->control != NULL)
    gsl_odeiv2_control_free (runner->control);
  if (runner->step != NULL)
    gsl_odeiv2_step_free (runner->step);
  if (runner->memory != NULL)
    CVodeFree (&runner->memory);
  if (runner->fixed_point != NULL)
    SUNNonlinSolFree (runner->fixed_point);
  if (runner->vector != NULL)
    N_VDestroy (runner->vector);
  if (runner->context != NULL)
    SUNContext_Free (&runner->context);
  free (runner);
}
