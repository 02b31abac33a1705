/* Events: a step in which something happens is tried again at a shorter length until the thing happens at its very end, so
 * that the result moves smoothly with every input.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "tb-run.h"

/* How often a ball may lift off before the lane is taken to hold it. */
#define MOST_LIFTS 32
/* The static limit may be passed by this share before a roll breaks: rounding is not slipping. */
#define STATIC_MARGIN 1e-9
/* A peak of what rolling takes is looked for where the reserve falls to this share of that at the step's start. */
#define PEAK_NEAR 0.5
/* Tries to place an event, and the share of the step it is placed to. */
#define PLACE_TRIES 60
#define PLACE_PRECISION 1e-13
/* The reserve of a roll is placed to this, N. */
#define RESERVE_PRECISION 1e-7

/* Friction there could be less the friction that rolling takes, N. */
static double
static_reserve (const Rates *rates)
{
  return rates->coefficient * rates->force.z * (1 + STATIC_MARGIN) - tb_length2 (rates->force.x, rates->force.y);
}

/* How far an event is off, positive before it. The rates belong to the point. */
static double
event_distance (const Run *run, Event event, const Point *point, const Rates *rates)
{
  switch (event)
    {
    case EVENT_PINS:
      return run->motion->end_y - point->position.y;
    case EVENT_GUTTER:
      return TB_LANE_HALF_WIDTH - fabs (point->position.x);
    case EVENT_LANDING:
      return point->position.z - run->dynamics.radius;
    case EVENT_ZONE:
      return tb_friction_zone (run->motion->friction, point->position.x, point->position.y) == run->dynamics.zone ? 1 : -1;
    case EVENT_SLIP_OVER:
      return tb_vec3_dot (rates->slip, run->dynamics.slip_line);
    case EVENT_BREAK:
      return static_reserve (rates);
    case EVENT_LIFT:
      return rates->force.z;
    default:
      return 1;
    }
}

static bool
needs_rates (Event event)
{
  return event == EVENT_SLIP_OVER || event == EVENT_BREAK || event == EVENT_LIFT;
}

static void
try_step (Run *run, Event event, Trial *trial)
{
  run_step_by (run, trial->h, &trial->point, NULL);
  if (needs_rates (event))
    run_look (run, &trial->point, STEP_END, &trial->rates);
  trial->distance = event_distance (run, event, &trial->point, &trial->rates);
}

/* Finds the step at whose end the event happens, by bracketing and the Illinois rule (M. Dowell and P. Jarratt, "A
 * modified regula falsi method", BIT 11, 1971). `found` comes in as a step that goes too far, and leaves as the one where
 * it has just happened. */
static void
place_event (Run *run, Event event, Trial *found)
{
  double low = 0, whole = found->h, at_high = found->distance;
  double at_low = event_distance (run, event, &run->point, &run->rates);
  double near = event == EVENT_BREAK ? RESERVE_PRECISION : PLACE_PRECISION;
  int side = 0;
  for (int i = 0; i < PLACE_TRIES && found->h - low > PLACE_PRECISION * whole; i++)
    {
      Trial trial;
      /* A bounce begins on the lane; its landing was aimed for, and lies just before the end. */
      if (event == EVENT_LANDING && i == 0 && !(at_low > 0))
        trial.h = found->h * (1 - 4 * AIM_BEYOND);
      else if (event == EVENT_ZONE || !(at_low > 0))
        trial.h = 0.5 * (low + found->h);
      else
        trial.h = (low * at_high - found->h * at_low) / (at_high - at_low);
      try_step (run, event, &trial);
      bool before = trial.distance > 0;
      if (fabs (trial.distance) < near || !before)
        *found = trial;
      if (fabs (trial.distance) < near)
        return;
      if (before)
        {
          low = trial.h;
          at_low = trial.distance;
          at_high *= side > 0 ? 0.5 : 1;
        }
      else
        {
          at_high = trial.distance;
          at_low *= side < 0 ? 0.5 : 1;
        }
      side = before ? 1 : -1;
    }
}

static bool
can_happen (const Run *run, Event event)
{
  const Dynamics *dynamics = &run->dynamics;
  switch (event)
    {
    case EVENT_GUTTER:
      return !run->motion->options.edgeless;
    case EVENT_ZONE:
      return run->motion->friction->kind == TB_FRICTION_ZONES;
    case EVENT_SLIP_OVER:
      return dynamics->signed_slip;
    case EVENT_LIFT:
      return !dynamics->balanced && run->lifts < MOST_LIFTS;
    case EVENT_BREAK:
      return run->point.time >= run->held_until;
    default:
      return true;
    }
}

/* What rolling takes swings twice a turn as the core comes round, and may peak inside a step. A parabola through its
 * beginning, middle and end tells where; if the roll breaks there, the step is cut to it. */
static void
look_for_peak (Run *run, Trial *step)
{
  double start = static_reserve (&run->rates), middle = static_reserve (&step->middle), end = static_reserve (&step->rates);
  double bend = 2 * (start - 2 * middle + end), slope = 4 * middle - 3 * start - end;
  if (end <= 0 || !(bend > 0) || slope >= 0 || -slope >= 2 * bend || start - slope * slope / (4 * bend) > PEAK_NEAR * start)
    return;
  Trial peak = { .h = step->h * -slope / (2 * bend) };
  try_step (run, EVENT_BREAK, &peak);
  if (peak.distance <= 0)
    *step = peak;
}

Event
run_first_event (Run *run, Trial *step)
{
  static const Event in_flight[] = { EVENT_PINS, EVENT_GUTTER, EVENT_LANDING, EVENT_NONE };
  static const Event sliding[] = { EVENT_PINS, EVENT_GUTTER, EVENT_ZONE, EVENT_SLIP_OVER, EVENT_LIFT, EVENT_NONE };
  static const Event rolling[] = { EVENT_PINS, EVENT_GUTTER, EVENT_ZONE, EVENT_BREAK, EVENT_LIFT, EVENT_NONE };
  static const Event *const of_phase[TB_N_PHASES] = { in_flight, sliding, rolling };
  Event first = EVENT_NONE;
  if (run->phase == TB_PHASE_ROLL && can_happen (run, EVENT_BREAK) && !run->dynamics.signed_slip)
    look_for_peak (run, step);
  for (const Event *event = of_phase[run->phase]; *event != EVENT_NONE; event++)
    {
      if (!can_happen (run, *event))
        continue;
      step->distance = event_distance (run, *event, &step->point, &step->rates);
      if (step->distance > 0)
        continue;
      place_event (run, *event, step);
      run_look_at_end (run, step);
      first = *event;
    }
  return first;
}

bool
run_breaks_now (const Run *run)
{
  return can_happen (run, EVENT_BREAK) && static_reserve (&run->rates) < 0;
}
