/* The run: step after step, from the release to the pins. Its parts are told apart in tb-run.h.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "tb-workspace.h"

/* The oil that ball and lane exchange along a step, at the places on the ball that were looked at. The step's own speed and
 * spin are taken as its middle's. */
static void
exchange_oil (Run *run, const Trial *step)
{
  const Point *start = &run->point;
  BallFilm *ball = run->ball;
  int count = ball->looks;
  double each = step->h / count, width = run->motion->assumed.patch_width;
  TbVec3 from = run->rates.velocity, mean = tb_vec3_scale (tb_vec3_sub (step->point.position, start->position), 1 / step->h);
  TbVec3 spin = tb_vec3_scale (tb_vec3_add (run->rates.spin, step->rates.spin), 0.5);
  Passing passing = {
    .lane_area = width * each * sqrt (mean.x * mean.x + mean.y * mean.y),
    .ball_area = width * each * run->dynamics.radius * sqrt (spin.x * spin.x + spin.y * spin.y),
    .growth = ball->growth,
  };
  for (int i = 0; i < count; i++)
    {
      double s = (i + 0.5) / count, along = s * step->h;
      /* The parabola through both ends that starts as the ball does. */
      passing.x = start->position.x + along * ((1 - s) * from.x + s * mean.x);
      passing.y = start->position.y + along * ((1 - s) * from.y + s * mean.y);
      passing.time = start->time + along;
      passing.turned = start->turned + s * (step->point.turned - start->turned);
      passing.place = ball->ahead[i];
      passing.ball_film = ball->films[i];
      passing.lane_film = tb_friction_film (run->motion->friction, passing.x, passing.y);
      ball_film_pass (ball, &passing);
    }
}

/* Takes a step that stands: oil, place, what is known there, and the record of it. */
static void
finish_step (Run *run, Trial *step)
{
  bool again = run_looks_again (run);
  Rates begin = run->rates;
  if (run->ball && run->phase != TB_PHASE_FLIGHT)
    exchange_oil (run, step);
  run->point = step->point;
  run->rates = step->rates;
  run->dynamics.forced = false;
  TbVec3 gain = tb_vec3_sub (step->rates.spin, begin.spin);
  run_look_ahead (run, tb_vec3_add_scaled (step->rates.spin, 0.5 * run->step / step->h, gain), run->step);
  if (again)
    run_look (run, &run->point, STEP_BEGINNING, &run->rates);
  recorder_step (&run->recorder, run->phase, &run->point, &run->rates);
}

/* One step, or the end of a slip. false when the run is over. */
static bool
advance (Run *run)
{
  Trial step;
  Event event;
  for (double h = run_choose_length (run);; h *= 0.5)
    {
      step.h = h;
      if (run->ball && h != run->ball->look_length)
        run_look_ahead (run, run_spin_half_way (run, h), h);
      run_step_by (run, h, &step.point, run->phase == TB_PHASE_ROLL ? &step.middle : NULL);
      run_look_at_end (run, &step);
      event = run_first_event (run, &step);
      if (!run_overshot (run, &step.rates) || h <= LEAST_STEP)
        break;
    }
  if (event == EVENT_PINS)
    step.point.position.y = run->motion->end_y;
  if (event == EVENT_NONE && run_slip_is_over (run, &step))
    event = EVENT_SLIP_OVER;
  finish_step (run, &step);
  run_take_bearings (run);
  run->off_lane = event == EVENT_GUTTER;
  return run_handle (run, event);
}

static TbStatus
check_motion (const TbMotion *motion)
{
  const TbState *s = &motion->state;
  const TbBody *b = &motion->body;
  const double numbers[] = { s->position.x, s->position.y, s->position.z, s->velocity.x, s->velocity.y, s->velocity.z,
                             s->attitude.w, s->attitude.x, s->attitude.y, s->attitude.z, s->angular_momentum.x,
                             s->angular_momentum.y, s->angular_momentum.z, b->mass, b->radius, b->moment.x, b->moment.y,
                             b->moment.z, b->offset.x, b->offset.y, b->offset.z, motion->cross_slope, motion->end_y };
  for (size_t i = 0; i < sizeof numbers / sizeof numbers[0]; i++)
    if (!isfinite (numbers[i]))
      return TB_ERROR_NOT_FINITE;
  if (!(b->mass > 0 && b->radius > 0 && b->moment.x > 0 && b->moment.y > 0 && b->moment.z > 0))
    return TB_ERROR_OUT_OF_RANGE;
  if (motion->friction->kind == TB_FRICTION_ZONES)
    return tb_zones_check (motion->friction->zones);
  return motion->friction->oil ? TB_OK : TB_ERROR_NO_PATTERN;
}

static void
init_run (TbWorkspace *workspace, const TbMotion *motion, TbPath *path, TbOil *change)
{
  Run *run = &workspace->run;
  const TbState *state = &motion->state;
  run->motion = motion;
  run->lifts = 0;
  run->broken_at = run->held_until = -INFINITY;
  run->over = run->off_lane = false;
  bool oily = motion->friction->kind == TB_FRICTION_FILM && !motion->options.no_film_on_ball;
  double usual = oily ? TB_SHOT_OILY_STEP : TB_SHOT_STEP;
  run->step = motion->options.step > 0 ? motion->options.step : usual;
  run->time_limit = motion->time_limit > 0 ? motion->time_limit : TB_SHOT_TIME_LIMIT;
  dynamics_init (&run->dynamics, motion);
  run->ball = NULL;
  if (oily)
    {
      run->ball = &workspace->ball;
      ball_film_init (run->ball, motion->friction, &motion->assumed, &motion->body, change, run->step);
      run->dynamics.ball = run->ball;
    }
  run->point = (Point){ .time = state->time,
                        .position = state->position,
                        .velocity = state->velocity,
                        .momentum = state->angular_momentum,
                        .attitude = tb_quat_unit (state->attitude) };
  recorder_init (&run->recorder, path, &run->dynamics);
}

TbStatus
motion_begin (const TbMotion *motion, TbWorkspace *workspace, TbPath *path, TbOil *change)
{
  TbStatus status = check_motion (motion);
  if (status != TB_OK)
    return status;
  if (motion->state.position.y >= motion->end_y)
    return TB_ERROR_BEYOND_LANE;
  init_run (workspace, motion, path, change);
  run_begin (&workspace->run);
  return TB_OK;
}

bool
tb_motion_continue (TbWorkspace *workspace, double until)
{
  Run *run = &workspace->run;
  while (!run->over && run->point.time < until)
    run->over = !advance (run) || run->point.time >= run->time_limit;
  return run->over;
}

TbStatus
motion_end (TbWorkspace *workspace, double *carried)
{
  Run *run = &workspace->run;
  const TbMotion *motion = run->motion;
  bool at_pins = run->point.position.y >= motion->end_y;
  recorder_finish (&run->recorder, run->off_lane);
  if (run->ball)
    ball_film_finish (run->ball, run->point.time);
  if (run->ball && carried)
    *carried = run->ball->taken - run->ball->left;
  if (motion->time_limit > 0)
    return TB_OK;
  /* One that only bounces or hops there has been on the lane. */
  if (at_pins && isnan (run->recorder.path->measures.landing_y))
    return TB_ERROR_BEYOND_LANE;
  return at_pins || run->off_lane ? TB_OK : TB_ERROR_TOO_SLOW;
}

TbStatus
tb_motion_begin (const TbMotion *motion, TbWorkspace *workspace, TbPath *path)
{
  return motion_begin (motion, workspace, path, NULL);
}

TbStatus
tb_motion_end (TbWorkspace *workspace)
{
  return motion_end (workspace, NULL);
}

TbStatus
tb_motion_run (const TbMotion *motion, TbWorkspace *workspace, TbPath *path)
{
  TbStatus status = tb_motion_begin (motion, workspace, path);
  if (status != TB_OK)
    return status;
  tb_motion_continue (workspace, INFINITY);
  return tb_motion_end (workspace);
}

void
tb_workspace_copy (TbWorkspace *to, const TbWorkspace *from, TbPath *path)
{
  *to = *from;
  Run *run = &to->run;
  run->recorder.path = path;
  run->recorder.dynamics = &run->dynamics;
  if (!from->run.ball)
    return;
  run->ball = &to->ball;
  run->dynamics.ball = &to->ball;
  if (from->ball.change == &from->change)
    to->ball.change = &to->change;
}

TbForces
tb_motion_forces (const TbMotion *motion, const TbState *state, bool rolling)
{
  Dynamics dynamics;
  Rates rates;
  TbForces forces;
  TbPhase phase = rolling ? TB_PHASE_ROLL : TB_PHASE_SLIDE;
  Point point = { .time = state->time,
                  .position = state->position,
                  .velocity = state->velocity,
                  .momentum = state->angular_momentum,
                  .attitude = tb_quat_unit (state->attitude) };
  dynamics_init (&dynamics, motion);
  dynamics.zone = tb_friction_zone (motion->friction, point.position.x, point.position.y);
  if (rolling)
    dynamics_begin_roll (&dynamics, &point);
  dynamics_rates (&dynamics, phase, &point, STEP_BEGINNING, &rates);
  dynamics_accelerations (&dynamics, phase, &point, &rates, &forces.centre_acceleration, &forces.angular_acceleration);
  forces.slip = rates.slip;
  forces.normal = rates.force.z;
  forces.friction = tb_vec3 (rates.force.x, rates.force.y, 0);
  forces.coefficient = rates.coefficient;
  return forces;
}
