/* Phases of contact, and how one goes over into the next.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "tb-run.h"

/* A slide that ends as it begins, before this much time has passed, holds the roll for a while, so that the two cannot
 * change places without end; s. No shot is known that comes to it: not one in 80,000 random ones, nor a roll that breaks
 * by the last bit of a coefficient. */
#define STILLBORN 1e-5
#define HELD 0.005

void
run_take_bearings (Run *run)
{
  Dynamics *dynamics = &run->dynamics;
  dynamics->zone = tb_friction_zone (run->motion->friction, run->point.position.x, run->point.position.y);
  if (run->phase != TB_PHASE_SLIDE)
    return;
  double speed = tb_length2 (run->rates.slip.x, run->rates.slip.y);
  if (speed > SLIP_OVER)
    dynamics->slip_line = tb_vec3 (run->rates.slip.x / speed, run->rates.slip.y / speed, 0);
}

static void
begin_phase (Run *run, TbPhase phase)
{
  run->phase = phase;
  if (phase == TB_PHASE_SLIDE)
    dynamics_settle (&run->dynamics, &run->point);
  run_take_bearings (run);
  run_look (run, &run->point, STEP_BEGINNING, &run->rates);
  run_look_ahead (run, run_spin_half_way (run, run->step), run->step);
  run_look (run, &run->point, STEP_BEGINNING, &run->rates);
  run_take_bearings (run);
  recorder_begin (&run->recorder, phase, &run->point, &run->rates);
}

/* The motion of a roll is that of its spin alone; whatever comes after needs the centre's as well. */
static void
leave_roll (Run *run)
{
  if (run->phase == TB_PHASE_ROLL)
    dynamics_end_roll (&run->dynamics, &run->point);
}

/* The ball slips again, first against the friction that rolling would have taken. */
static void
break_roll (Run *run)
{
  run->broken_at = run->point.time;
  run->dynamics.slip_line = tb_vec3_unit (tb_vec3 (-run->rates.force.x, -run->rates.force.y, 0), tb_vec3 (0, 1, 0));
  leave_roll (run);
  begin_phase (run, TB_PHASE_SLIDE);
}

static void
start_roll (Run *run)
{
  bool stillborn = run->point.time - run->broken_at < STILLBORN;
  run->held_until = stillborn ? run->point.time + HELD : run->held_until;
  dynamics_begin_roll (&run->dynamics, &run->point);
  begin_phase (run, TB_PHASE_ROLL);
  /* A roll that would break at once never was one. */
  if (run_breaks_now (run))
    break_roll (run);
}

static void
land (Run *run)
{
  Landing landing;
  run->dynamics.zone = tb_friction_zone (run->motion->friction, run->point.position.x, run->point.position.y);
  run->phase = TB_PHASE_SLIDE;
  run_look (run, &run->point, STEP_BEGINNING, &run->rates);
  run_look_ahead (run, run->rates.spin, LEAST_STEP);
  landing = dynamics_land (&run->dynamics, &run->point);
  /* A ball that its own imbalance lifts off later lands again, which is not the throw's landing. */
  if (run->lifts == 0)
    recorder_land (&run->recorder, &landing);
  if (landing.again)
    {
      begin_phase (run, TB_PHASE_FLIGHT);
      return;
    }
  dynamics_settle (&run->dynamics, &run->point);
  run_look (run, &run->point, STEP_BEGINNING, &run->rates);
  if (tb_length2 (run->rates.slip.x, run->rates.slip.y) <= SLIP_OVER)
    start_roll (run);
  else
    begin_phase (run, TB_PHASE_SLIDE);
}

void
run_begin (Run *run)
{
  TbVec3 offset = tb_quat_rotate (run->point.attitude, run->dynamics.offset);
  TbVec3 spin = dynamics_spin (&run->dynamics, &run->point);
  double rise = run->point.velocity.z - (spin.x * offset.y - spin.y * offset.x);
  bool above = run->point.position.z > run->dynamics.radius;
  if (above || rise > 0)
    begin_phase (run, TB_PHASE_FLIGHT);
  else
    land (run);
}

static void
lift_off (Run *run)
{
  run->lifts++;
  leave_roll (run);
  begin_phase (run, TB_PHASE_FLIGHT);
}

bool
run_handle (Run *run, Event event)
{
  if (event == EVENT_NONE)
    return true;
  if (event == EVENT_PINS || event == EVENT_GUTTER)
    return false;
  recorder_end (&run->recorder);
  if (event == EVENT_LANDING)
    land (run);
  else if (event == EVENT_SLIP_OVER)
    start_roll (run);
  else if (event == EVENT_BREAK)
    break_roll (run);
  else if (event == EVENT_LIFT)
    lift_off (run);
  else /* another zone */
    begin_phase (run, run->phase);
  return true;
}
