/* How long a step may be, and the end of a slip.
 *
 * Steps are of equal length where nothing asks for less. Where the slip of a ball keeps its line (equal moments, balanced)
 * its end is an event like any other. Else the direction of a dying slip turns ever faster, and the end is walked up to in
 * steps that each leave a fixed share of the slip. A small slip that neither dies nor grows decisively, as when a flaring
 * ball asks for just more friction than there is, turns with the force that drives it: there the friction of a step is the
 * one that solves the step implicitly (J. J. Moreau's sweeping process, in the form of M. Jean, "The non-smooth contact
 * dynamics method", Comput. Methods Appl. Mech. Eng. 177, 1999): with w the slip the step would end with if there were none,
 * it is along w, and as large as it may be or as stops the slip.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "tb-run.h"

/* A dying slip: below this many steps to go it is walked up to, and each such step goes this share of the way. */
#define SLIP_NEAR 1.5
#define SLIP_STRIDE 0.8
/* A slip dies decisively if it is over within this many times what friction alone would take. */
#define SLIP_DECISIVE 2.5
/* A slip turns at its own scale, the time in which friction alone would end it; steps are no longer than this many. */
#define SLIP_TURN 1.5
/* A slip is large if neither friction nor what drives it ends or turns it within this many steps. */
#define LARGE_STEPS 5
/* A forced friction shorter than this has stopped the slip. */
#define STOPPED (1 - 1e-9)
/* A slip is small if friction alone could end it within so many seconds; such is the step then. */
#define SLIP_SMALL 0.004
/* First step of a ball that lifts off, as a share of a full one. */
#define LIFT_SHARE 0.125
/* A step of a roll is at most so many seconds. */
#define ROLL_STEP 0.02

/* What becomes of the slip if it goes on as now. */
typedef struct SlipOutlook
{
  double speed;              /* m/s */
  double change_x, change_y; /* m/s² */
  double brake;              /* m/s², what friction takes from it */
  double left;               /* s until it is over; INFINITY if it is not dying */
  double scale;              /* s in which friction alone would end it */
} SlipOutlook;

static SlipOutlook
slip_outlook (const Run *run)
{
  TbVec3 centre, spin;
  const Rates *rates = &run->rates;
  const Dynamics *dynamics = &run->dynamics;
  dynamics_accelerations (dynamics, TB_PHASE_SLIDE, &run->point, rates, &centre, &spin);
  SlipOutlook outlook = { .speed = tb_length2 (rates->slip.x, rates->slip.y),
                          .change_x = centre.x - dynamics->radius * spin.y,
                          .change_y = centre.y + dynamics->radius * spin.x };
  double mobility = 1 / dynamics->mass + dynamics->radius * dynamics->radius * dynamics->inverse_middle;
  outlook.brake = rates->coefficient * rates->force.z * mobility;
  outlook.scale = outlook.speed / outlook.brake;
  double rate = outlook.speed > SLIP_OVER
                    ? (outlook.change_x * rates->slip.x + outlook.change_y * rates->slip.y) / outlook.speed
                    : 0;
  outlook.left = rate < 0 ? outlook.speed / -rate : INFINITY;
  return outlook;
}

/* So large that neither friction nor what drives the slip (about as much again at the most) can end or turn it within a few
 * steps of length h. */
static bool
slip_is_large (const Run *run, double h)
{
  const Rates *rates = &run->rates;
  double mobility = 1 / run->dynamics.mass + run->dynamics.radius * run->dynamics.radius * run->dynamics.inverse_middle;
  double reach = LARGE_STEPS * h * rates->coefficient * rates->force.z * mobility;
  return rates->slip.x * rates->slip.x + rates->slip.y * rates->slip.y > reach * reach;
}

/* Sets the friction of a step of length h that begins with a small slip. */
static void
force_friction (Run *run, const SlipOutlook *outlook, double h)
{
  Dynamics *dynamics = &run->dynamics;
  const Rates *rates = &run->rates;
  /* The change of the slip without friction is what it is now, less what friction does to it now. */
  double now_x = -rates->force.x / rates->force.z / rates->coefficient;
  double now_y = -rates->force.y / rates->force.z / rates->coefficient;
  double w_x = rates->slip.x + h * (outlook->change_x + outlook->brake * now_x);
  double w_y = rates->slip.y + h * (outlook->change_y + outlook->brake * now_y);
  double scale = 1 / fmax (tb_length2 (w_x, w_y), h * outlook->brake);
  dynamics->forced = true;
  dynamics->forced_friction = tb_vec3 (w_x * scale, w_y * scale, 0);
  run_look (run, &run->point, STEP_BEGINNING, &run->rates);
}

/* A steady fall lands at the end of it, so that the landing is found in a try or two. */
static double
flight_length (const Run *run, double h)
{
  double height = fmax (run->point.position.z - run->dynamics.radius, 0);
  double g = fmax (-run->rates.acceleration.z, -0.5 * run->dynamics.gravity.z);
  double rise = run->rates.velocity.z, fall = sqrt (rise * rise + 2 * g * height);
  double aim = (rise + fall) / g * (1 + AIM_BEYOND);
  /* A ball that its own imbalance has thrown off the lane begins with neither height nor rise. */
  return fmin (h, run->dynamics.balanced ? fmax (aim, LEAST_STEP) : fmax (aim, LIFT_SHARE * run->step));
}

/* Of a slip that does not keep its line. */
static double
slide_length (Run *run, double h)
{
  if (slip_is_large (run, h))
    return h;
  SlipOutlook outlook = slip_outlook (run);
  if (outlook.left < SLIP_DECISIVE * outlook.scale)
    {
      if (outlook.left < SLIP_NEAR * h)
        h = fmin (h, SLIP_STRIDE * outlook.left);
      return fmin (h, SLIP_TURN * outlook.scale);
    }
  if (outlook.scale > SLIP_SMALL || !(outlook.brake > 0))
    return fmin (h, SLIP_TURN * outlook.scale);
  h = fmin (h, SLIP_SMALL);
  force_friction (run, &outlook, h);
  return h;
}

double
run_choose_length (Run *run)
{
  double h = fmin (run->step, fmax (run->time_limit - run->point.time, LEAST_STEP));
  if (run->phase == TB_PHASE_FLIGHT)
    return flight_length (run, h);
  double to_pins = (run->motion->end_y - run->point.position.y) / run->rates.velocity.y * (1 + AIM_BEYOND);
  if (to_pins > 0 && to_pins < h)
    h = fmax (to_pins, LEAST_STEP);
  if (run->dynamics.signed_slip)
    return h;
  return run->phase == TB_PHASE_ROLL ? fmin (h, ROLL_STEP) : slide_length (run, h);
}

bool
run_overshot (const Run *run, const Rates *rates)
{
  if (run->phase != TB_PHASE_SLIDE || run->dynamics.signed_slip || run->dynamics.forced)
    return false;
  return tb_length2 (run->rates.slip.x, run->rates.slip.y) > SLIP_OVER && tb_vec3_dot (rates->slip, run->dynamics.slip_line) <= 0;
}

bool
run_slip_is_over (const Run *run, const Trial *step)
{
  if (run->phase != TB_PHASE_SLIDE || run->dynamics.signed_slip)
    return false;
  if (run->dynamics.forced)
    return tb_vec3_dot (run->dynamics.forced_friction, run->dynamics.forced_friction) < STOPPED * STOPPED;
  return tb_length2 (step->rates.slip.x, step->rates.slip.y) <= SLIP_OVER;
}
