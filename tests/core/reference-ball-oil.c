/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "reference-ball-oil.h"

#include <stdlib.h>
#include "reference-internal.h"

/* Where the columns begin, rad: anywhere will do. */
#define ORIGIN 1.234
/* The ball turns by this before what it took up is on it, rad. */
#define DELAY (TB_PI / 3.0)
/* A bounce lower than this, m/s, is none, as core has it. */
#define LEAST_BOUNCE 0.01
/* A step that runs over an event is cut to it so often; what is then left is over, m/s or m. */
#define CUTS 3
#define EVENT_OVER 1e-7
#define LEAST_STEP 1e-9
#define TIME_LIMIT 20.0

static double
dot (const double a[3], const double b[3])
{
  return a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
}

static void
find_spot (const RefBallOil *oil, const double attitude[4], RefSpot *spot)
{
  Matrix turn;
  double down[3], row, column, angle;

  ref_matrix (attitude, &turn);
  for (int i = 0; i < 3; i++)
    down[i] = -turn.at[2][i];
  angle = atan2 (dot (down, oil->second), dot (down, oil->first)) + ORIGIN;
  row = (dot (down, oil->axis) + 1.0) / 2.0 * REF_BALL_ROWS - 0.5;
  column = angle / (2.0 * TB_PI) * REF_BALL_COLUMNS;
  ref_spline_weights (row - floor (row), spot->across);
  ref_spline_weights (column - floor (column), spot->around);
  for (int i = 0; i < 4; i++)
    {
      int r = (int) floor (row) - 1 + i, c = (int) floor (column) - 1 + i;

      spot->row[i] = r < 0 ? -1 - r : r >= REF_BALL_ROWS ? 2 * REF_BALL_ROWS - 1 - r : r;
      spot->column[i] = (c % REF_BALL_COLUMNS + REF_BALL_COLUMNS) % REF_BALL_COLUMNS;
    }
}

static double
read_spot (const RefBallOil *oil, const RefSpot *spot)
{
  double sum = 0.0;

  for (int i = 0; i < 4; i++)
    for (int j = 0; j < 4; j++)
      sum += spot->across[i] * spot->around[j] * oil->film[spot->row[i]][spot->column[j]];
  return fmax (sum, 0.0);
}

double
ref_ball_oil_film (const RefBallOil *oil, const double attitude[4])
{
  RefSpot spot;

  find_spot (oil, attitude, &spot);
  return read_spot (oil, &spot);
}

/* Each cell gains by its weight, and loses in proportion to what it has. */
static void
write_passing (RefBallOil *oil, const RefPassing *p)
{
  double faded = exp (-oil->absorption * (oil->time - p->time)) / oil->cell_area;
  double now = read_spot (oil, &p->spot), share = now > 0.0 ? fmin (p->down * faded / now, 1.0) : 0.0;
  double change[4][4];

  for (int i = 0; i < 4; i++)
    for (int j = 0; j < 4; j++)
      change[i][j] = p->spot.across[i] * p->spot.around[j]
                     * (p->up * faded - share * oil->film[p->spot.row[i]][p->spot.column[j]]);
  for (int i = 0; i < 4; i++)
    for (int j = 0; j < 4; j++)
      oil->film[p->spot.row[i]][p->spot.column[j]] += change[i][j];
}

static void
soak (RefBallOil *oil, double h)
{
  double left = exp (-oil->absorption * h);

  for (int i = 0; i < REF_BALL_ROWS; i++)
    for (int j = 0; j < REF_BALL_COLUMNS; j++)
      oil->film[i][j] *= left;
}

/* A step of length h from one state to another, the ball on the lane. */
static void
pass (RefBallOil *oil,
      const RefModel *model,
      const double from[REF_SIZE],
      const double to[REF_SIZE],
      double h)
{
  double middle[REF_SIZE];
  RefPassing *p;
  Pose pose;

  for (int i = 0; i < REF_SIZE; i++)
    middle[i] = 0.5 * (from[i] + to[i]);
  if (oil->passed == oil->room)
    oil->waiting = realloc (oil->waiting, sizeof *p * (size_t) (oil->room = 2 * oil->room + 1024));
  p = &oil->waiting[oil->passed++];
  find_spot (oil, middle + REF_ATTITUDE, &p->spot);
  ref_pose (model, middle, &pose);
  p->turned = oil->turned;
  p->time = oil->time;
  p->up = oil->pick_up * ref_model_film (model, middle[0], middle[1]) * oil->strip * h
          * hypot (middle[REF_VELOCITY], middle[REF_VELOCITY + 1]);
  p->down = oil->lay_down * read_spot (oil, &p->spot) * oil->strip * h * model->radius
            * hypot (pose.spin[0], pose.spin[1]);
}

static void
init_oil (RefBallOil *oil, const TbMotion *motion)
{
  const TbBody *body = &motion->body;
  double any[3] = { fabs (body->pap.x) < 0.5, fabs (body->pap.x) >= 0.5, 0.0 }, length;

  memset (oil, 0, sizeof *oil);
  memcpy (oil->axis, (double[3]){ body->pap.x, body->pap.y, body->pap.z }, sizeof oil->axis);
  cross (oil->axis, any, oil->first);
  length = sqrt (dot (oil->first, oil->first));
  for (int i = 0; i < 3; i++)
    oil->first[i] /= length;
  cross (oil->axis, oil->first, oil->second);
  oil->cell_area = 4.0 * TB_PI * body->radius * body->radius / (REF_BALL_ROWS * REF_BALL_COLUMNS);
  oil->absorption = motion->friction->cover.absorption;
  oil->pick_up = motion->assumed.pick_up;
  oil->lay_down = motion->assumed.lay_down;
  oil->strip = motion->assumed.patch_width;
}

static void
runge_kutta (RefModel *model, const double from[REF_SIZE], double h, double to[REF_SIZE])
{
  static const double share[4] = { 0.5, 0.5, 1.0, 0.0 }, weight[4] = { 1.0, 2.0, 2.0, 1.0 };
  double stage[REF_SIZE], rate[REF_SIZE], length = 0.0;

  memcpy (stage, from, sizeof stage);
  memcpy (to, from, sizeof stage);
  for (int k = 0; k < 4; k++)
    {
      ref_model_derivative (model, stage, rate);
      for (int i = 0; i < REF_SIZE; i++)
        {
          to[i] += h / 6.0 * weight[k] * rate[i];
          stage[i] = from[i] + share[k] * h * rate[i];
        }
    }
  for (int i = 0; i < 4; i++)
    length += to[REF_ATTITUDE + i] * to[REF_ATTITUDE + i];
  for (int i = 0; i < 4; i++)
    to[REF_ATTITUDE + i] /= sqrt (length);
}

/* A step no longer than to the next event, or to the end of the lane. Its length is returned. */
static double
step_from (RefModel *model, const double from[REF_SIZE], double h, double end_y, double to[REF_SIZE])
{
  double before = ref_model_event (model, from);

  for (int i = 0; i <= CUTS; i++)
    {
      double after;

      runge_kutta (model, from, h, to);
      after = ref_model_event (model, to);
      if (before > EVENT_OVER && after < -EVENT_OVER)
        h = fmax (h * before / (before - after), LEAST_STEP);
      else if (to[1] > end_y)
        h *= (end_y - from[1]) / (to[1] - from[1]);
      else
        break;
    }
  return h;
}

static void
switch_if_due (RefModel *model, double state[REF_SIZE])
{
  double left = ref_model_event (model, state);

  if (model->mode == REF_FLIGHT ? left <= EVENT_OVER && state[REF_VELOCITY + 2] < 0.0
                                : left <= (model->mode == REF_SLIDE ? EVENT_OVER : 0.0))
    ref_model_switch (model, state);
}

void
ref_ball_oil_walk (const TbMotion *motion, double step, RefAnswer *answer)
{
  RefModel *model = calloc (1, sizeof *model);
  RefBallOil *oil = calloc (1, sizeof *oil);
  double state[REF_SIZE], next[REF_SIZE];

  init_oil (oil, motion);
  ref_model_init (model, motion, state);
  model->least_bounce = LEAST_BOUNCE;
  model->ball = oil;
  while (state[1] < motion->end_y - 1e-12 && oil->time < TIME_LIMIT)
    {
      bool on_lane = model->mode != REF_FLIGHT;
      const double *spin = next + REF_SPIN;
      double h;

      if (model->mode == REF_SLIDE)
        ref_model_note_slip (model, state);
      h = step_from (model, state, step, motion->end_y, next);
      if (on_lane)
        pass (oil, model, state, next, h);
      soak (oil, h);
      oil->time += h;
      oil->turned += h * sqrt (dot (spin, spin));
      while (oil->written < oil->passed && oil->turned - oil->waiting[oil->written].turned > DELAY)
        write_passing (oil, &oil->waiting[oil->written++]);
      memcpy (state, next, sizeof state);
      switch_if_due (model, state);
    }
  memset (answer, 0, sizeof *answer);
  memcpy (answer->state, state, sizeof state);
  answer->time = oil->time;
  answer->heading = atan2 (-state[REF_VELOCITY], state[REF_VELOCITY + 1]);
  free (oil->waiting);
  free (oil);
  free (model);
}
