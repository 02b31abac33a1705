/* What a shot costs, and what general-purpose solvers cost on the same equations at the same error.
 *
 * Both solvers get the right-hand side of tests/core/reference-model.c, the loosest tolerance with which
 * every shot of the set is within a hundredth of a board at the pins, and the oil on the ball off, as this
 * program's own runs have it. The last two lines are ratios of times, ours over theirs.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include <stdlib.h>
#include <string.h>
#include <time.h>
#include <gsl/gsl_errno.h>
#include "reference-run.h"
#include "support.h"
#include "tb-batch.h"

#define SHOTS 12
/* Wanted at the pins, boards. */
#define BOARD_ERROR 0.01
/* Times are the least of so many rounds of at least so long, s. */
#define ROUNDS 7
#define ROUND_TIME 0.05
#define ROOM_SHOTS 2500
/* The tolerances tried, from the loosest on, differ by this. */
#define TOLERANCE_RATIO 1.2
/* What the solvers may leave out, as this program does: smaller bounces, and the first moment of a roll that
 * lets go, both m/s. */
#define LEAST_BOUNCE 0.01
#define FIRST_SLIP 1e-4

/* Steps that are tried, s: from this on, each shorter by this ratio. */
#define LONGEST_STEP 0.06
#define STEP_RATIO 1.02

typedef struct Case
{
  TbShot shot;
  TbFriction friction;
  TbMotion motion;
  RefModel *model;
  double start[REF_SIZE];
  RefMode start_mode;
  double start_along[2];
  double board; /* by the tight reference */
} Case;

typedef struct Bench
{
  Case cases[SHOTS];
  CheckRun *run;
  RefRunner *runner;
} Bench;

typedef void (*Work) (Bench *bench);

static double
now (clockid_t which)
{
  struct timespec time;

  clock_gettime (which, &time);
  return (double)time.tv_sec + 1e-9 * (double)time.tv_nsec;
}

/* Seconds that the work takes, the least of several rounds. */
static double
time_by (Bench *bench, Work work, clockid_t which)
{
  double best = INFINITY;

  for (int round = 0; round < ROUNDS; round++)
    {
      double start = now (which), passed;
      int times = 0;

      do
        {
          work (bench);
          times++;
          passed = now (which) - start;
        }
      while (passed < ROUND_TIME);
      best = fmin (best, passed / times);
    }
  return best;
}

/* Time of this thread's processor: what else runs on the machine hardly counts. */
static double
time_of (Bench *bench, Work work)
{
  return time_by (bench, work, CLOCK_THREAD_CPUTIME_ID);
}

static TbShot
case_shot (int i)
{
  TbShot shot = check_house_shot ();

  shot.options.no_film_on_ball = true;
  shot.options.edgeless = true;
  shot.delivery.speed = tb_metres_per_second_from_mph (15.5 + 0.3 * i);
  shot.delivery.rev_rate = tb_radians_per_second_from_rpm (200.0 + 25.0 * i);
  shot.delivery.aim = tb_x_from_board (15.0 + 0.25 * i);
  if (i % 2 == 1)
    shot.ball.intermediate_differential = tb_metres_from_in (0.015);
  if (i % 3 == 2)
    shot.ball.top_weight = tb_kilograms_from_oz (2.5);
  return shot;
}

static double
reference_board (Case *c, RefRunner *runner, long *evaluations)
{
  double state[REF_SIZE];
  RefAnswer answer;

  memcpy (state, c->start, sizeof state);
  c->model->mode = c->start_mode;
  memcpy (c->model->along, c->start_along, sizeof c->start_along);
  if (!ref_runner_run (runner, c->model, state, c->motion.end_y, &answer))
    return NAN;
  if (evaluations != NULL)
    *evaluations += answer.evaluations;
  return tb_board_from_x (answer.state[0]);
}

static void
prepare (Bench *bench)
{
  RefRunner *tight = ref_runner_new (REF_SOLVER_GSL_8, 1e-12);

  bench->run = check_run_new ();
  for (int i = 0; i < SHOTS; i++)
    {
      Case *c = &bench->cases[i];
      TbProblem problem;

      c->shot = case_shot (i);
      if (tb_shot_motion (&c->shot, &c->friction, &c->motion, &problem) != TB_OK)
        g_error ("%s", tb_status_sentence (problem.status));
      c->model = g_new0 (RefModel, 1);
      ref_model_init (c->model, &c->motion, c->start);
      c->start_mode = c->model->mode;
      memcpy (c->start_along, c->model->along, sizeof c->start_along);
      c->board = reference_board (c, tight, NULL);
      c->model->least_bounce = LEAST_BOUNCE;
      c->model->first_slip = FIRST_SLIP;
    }
  ref_runner_free (tight);
}

static void
run_ours (Bench *bench)
{
  for (int i = 0; i < SHOTS; i++)
    if (tb_motion_run (&bench->cases[i].motion, bench->run->workspace, &bench->run->path) != TB_OK)
      g_error ("a shot does not run");
}

static void
run_theirs (Bench *bench)
{
  for (int i = 0; i < SHOTS; i++)
    reference_board (&bench->cases[i], bench->runner, NULL);
}

static double
our_error (Bench *bench, long *evaluations)
{
  double worst = 0.0;

  *evaluations = 0;
  for (int i = 0; i < SHOTS; i++)
    {
      Case *c = &bench->cases[i];

      if (tb_motion_run (&c->motion, bench->run->workspace, &bench->run->path) != TB_OK)
        g_error ("a shot does not run");
      *evaluations += bench->run->path.evaluations;
      worst = fmax (worst, fabs (tb_board_from_x (bench->run->path.measures.x_at_pins) - c->board));
    }
  return worst;
}

static void
set_step (Bench *bench, double step)
{
  for (int i = 0; i < SHOTS; i++)
    bench->cases[i].motion.options.step = step;
}

/* The longest step that will do, as the solvers get their loosest tolerance, s. */
static double
longest_step (Bench *bench)
{
  for (double step = LONGEST_STEP; step > TB_SHOT_STEP; step /= STEP_RATIO)
    {
      long evaluations;

      set_step (bench, step);
      if (our_error (bench, &evaluations) <= BOARD_ERROR)
        return step;
    }
  set_step (bench, TB_SHOT_STEP);
  return TB_SHOT_STEP;
}

static double
their_error (Bench *bench, long *evaluations)
{
  double worst = 0.0;

  *evaluations = 0;
  for (int i = 0; i < SHOTS; i++)
    {
      double error
          = fabs (reference_board (&bench->cases[i], bench->runner, evaluations) - bench->cases[i].board);

      worst = error <= worst ? worst : error; /* a NaN is the worst */
    }
  return worst;
}

typedef struct Cost
{
  double time;        /* s a shot */
  double evaluations; /* a shot */
} Cost;

/* The loosest tolerance that will do, and what it costs. */
static Cost
cost_of_solver (Bench *bench, const char *name, RefSolver solver)
{
  for (double tolerance = 1e-2; tolerance > 1e-12; tolerance /= TOLERANCE_RATIO)
    {
      long evaluations;
      double error;
      Cost cost;

      bench->runner = ref_runner_new (solver, tolerance);
      error = their_error (bench, &evaluations);
      if (error <= BOARD_ERROR)
        {
          cost = (Cost){ time_of (bench, run_theirs) / SHOTS, (double)evaluations / SHOTS };
          g_print ("%-22s %8.1f µs a shot, %5.0f evaluations, tolerance %.1e, error %.4f board\n", name,
                   1e6 * cost.time, cost.evaluations, tolerance, error);
          ref_runner_free (bench->runner);
          return cost;
        }
      ref_runner_free (bench->runner);
    }
  g_error ("%s never comes within %g board", name, BOARD_ERROR);
}

#define STATES 64

/* Sums that keep the compiler from leaving work out. */
static double sink;

static void
evaluate_ours (Bench *bench)
{
  Case *c = &bench->cases[0];

  for (int i = 0; i < STATES; i++)
    {
      TbState state = c->motion.state;

      state.position = tb_vec3 (0.01 * i - 0.3, 0.25 * i, c->motion.body.radius);
      sink += tb_motion_forces (&c->motion, &state, false).normal;
    }
}

static void
evaluate_theirs (Bench *bench)
{
  Case *c = &bench->cases[0];
  double state[REF_SIZE], derivative[REF_SIZE];

  memcpy (state, c->start, sizeof state);
  c->model->mode = REF_SLIDE;
  for (int i = 0; i < STATES; i++)
    {
      state[0] = 0.01 * i - 0.3;
      state[1] = 0.25 * i;
      state[2] = c->model->radius;
      ref_model_derivative (c->model, state, derivative);
      sink += derivative[3];
    }
}

static void
run_default (Bench *bench)
{
  TbShot shot = check_house_shot ();

  if (tb_shot_run (&shot, bench->run->workspace, &bench->run->path, NULL) != TB_OK)
    g_error ("the default shot does not run");
}

static void
run_default_measures (Bench *bench)
{
  int capacity = bench->run->path.capacity;

  bench->run->path.capacity = 0;
  run_default (bench);
  bench->run->path.capacity = capacity;
}

static void
make_room_shot (TbShot *shot, guint index, gpointer user_data)
{
  *shot = check_house_shot ();
  shot->options.edgeless = true;
  shot->delivery.aim = tb_x_from_board (14.6 + 0.08 * (index % 50));
  shot->delivery.speed = tb_metres_per_second_from_mph (15.0 + 0.08 * (index / 50));
}

static TbBatchItem room_items[ROOM_SHOTS];

static void
run_room (Bench *bench)
{
  if (!tb_batch_run (ROOM_SHOTS, make_room_shot, NULL, room_items, 2, NULL))
    g_error ("the room map does not run");
}

static void
print_ours (const char *name, double time, long evaluations, double step, double error)
{
  g_print ("%-22s %8.1f µs a shot, %5.0f evaluations, step %.1e s, error %.4f board\n", name, 1e6 * time,
           (double)evaluations / SHOTS, step, error);
}

int
main (void)
{
  Bench *bench = g_new0 (Bench, 1);
  double ours, one, floor_time, error, step;
  long evaluations;
  Cost gsl, cvode;

  gsl_set_error_handler_off ();
  prepare (bench);
  bench->run->path.capacity = 0;
  error = our_error (bench, &evaluations);
  ours = time_of (bench, run_ours) / SHOTS;
  print_ours ("at the usual step", ours, evaluations, TB_SHOT_STEP, error);
  step = longest_step (bench);
  error = our_error (bench, &evaluations);
  ours = time_of (bench, run_ours) / SHOTS;
  print_ours ("this program", ours, evaluations, step, error);
  gsl = cost_of_solver (bench, "GSL rkf45", REF_SOLVER_GSL_4_5);
  cvode = cost_of_solver (bench, "SUNDIALS CVODE Adams", REF_SOLVER_CVODE_ADAMS);

  one = time_of (bench, evaluate_ours) / STATES;
  floor_time = one * (double)evaluations / SHOTS;
  g_print ("one evaluation: ours %.1f ns, the reference's %.1f ns\n", 1e9 * one,
           1e9 * time_of (bench, evaluate_theirs) / STATES);
  g_print ("floor: %.0f evaluations × %.1f ns = %.1f µs; the shot takes %.2f times that\n",
           (double)evaluations / SHOTS, 1e9 * one, 1e6 * floor_time, ours / floor_time);

  bench->run->path.capacity = TB_PATH_CAPACITY;
  g_print ("the default shot, all of the model: %.1f µs with its path,", 1e6 * time_of (bench, run_default));
  g_print (" %.1f µs measures only\n", 1e6 * time_of (bench, run_default_measures));
  g_print ("%d shots on two threads: %.1f ms; memory of a shot %.0f KiB\n", ROOM_SHOTS,
           1e3 * time_by (bench, run_room, CLOCK_MONOTONIC), (double)tb_workspace_size () / 1024.0);
  g_print ("ratio-to-gsl %.3f\n", ours / gsl.time);
  g_print ("ratio-to-cvode %.3f\n", ours / cvode.time);
  return error <= BOARD_ERROR && isfinite (sink) ? EXIT_SUCCESS : EXIT_FAILURE;
}
