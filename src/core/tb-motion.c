/* The run: phase after phase, step after step, with every switch located as an event.
 *
 * Steps are of equal length; one in which something happens is tried again at a shorter length until the thing
 * happens at its very end, so that the result moves smoothly with every input. Where the slip of a ball keeps its line
 * (equal moments, balanced) its end is found like that too. Else the direction of a dying slip turns ever faster, and
 * the end is walked up to in steps that each leave a fixed share of the slip. A small slip that neither dies nor grows
 * decisively, as when a flaring ball asks for just more friction than there is, turns with the force that drives it: there
 * the friction of a step is the one that solves the step implicitly (J. J. Moreau's sweeping process, in the form of M.
 * Jean, "The non-smooth contact dynamics method", Comput. Methods Appl. Mech. Eng. 177, 1999): with w the slip the step
 * would end with if there were none, it is along w, and as large as it may be or as stops the slip.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "tb-workspace.h"

/* A dying slip: below this many steps to go it is walked up to; each such step goes this share of the way; and it is
 * over at this speed, m/s. */
#define SLIP_NEAR 1.5
#define SLIP_STRIDE 0.8
#define SLIP_OVER 3e-5
/* A slip dies decisively if it is over within this many times what friction alone would take. */
#define SLIP_DECISIVE 2.5
/* A slip turns at its own scale, the time in which friction alone would end it; steps are no longer than this many. */
#define SLIP_TURN 1.5
#define LARGE_STEPS 5
/* A forced friction shorter than this has stopped the slip. */
#define STOPPED (1 - 1e-9)
/* A slip is small if friction alone could end it within so many seconds; such is the step then. */
#define SLIP_SMALL 0.004
/* First step of a ball that lifts off, as a share of a full one; and how often one may lift off before the lane is taken to
 * hold it. */
#define LIFT_SHARE 0.125
#define MOST_LIFTS 32
/* The static limit may be passed by this share before a roll breaks: rounding is not slipping. */
#define STATIC_MARGIN 1e-9
/* A step that is to end at a landing or at the pins goes beyond by this share, so that the event is in it. */
#define AIM_BEYOND 1e-5
/* A step of a roll is at most so many seconds, and a peak of what rolling takes is looked for where the reserve falls to
 * this share of that at the step's start. */
#define ROLL_STEP 0.02
#define PEAK_NEAR 0.5
/* A slide that ends as it begins, before this much time has passed, holds the roll for a while, so that the two cannot
 * change places without end; s. No shot is known that comes to it: not one in 80,000 random ones, nor a roll that breaks
 * by the last bit of a coefficient. */
#define STILLBORN 1e-5
#define HELD 0.005
/* Tries to place an event, and the share of the step it is placed to. */
#define PLACE_TRIES 60
#define PLACE_PRECISION 1e-13
/* The reserve of a roll is placed to this, N. */
#define RESERVE_PRECISION 1e-7
/* A step is never shorter than this, s: what is left of a phase is then over. */
#define LEAST_STEP 1e-12

typedef enum Event
{
  EVENT_NONE,
  EVENT_PINS,
  EVENT_GUTTER,
  EVENT_LANDING,
  EVENT_ZONE,
  EVENT_SLIP_OVER, /* slip keeps its line: it has run through zero */
  EVENT_BREAK,     /* a roll asks for more friction than there is */
  EVENT_LIFT,      /* the lane would have to pull */
} Event;

static void
look (Run *run, const Point *point, StepMoment moment, Rates *rates)
{
  dynamics_rates (&run->dynamics, run->phase, point, moment, rates);
}

/* Looks ahead along the way over the ball of a step of length h that turns with a spin. */
static void
look_ahead (Run *run, TbVec3 spin, double h)
{
  if (run->ball && run->phase != TB_PHASE_FLIGHT)
    ball_film_look (run->ball, run->point.attitude, spin, run->point.time, h);
}

/* The spin half way along a step of length h from here, as far as can be told. */
static TbVec3
spin_half_way (const Run *run, double h)
{
  TbVec3 centre, change;
  dynamics_accelerations (&run->dynamics, run->phase, &run->point, &run->rates, &centre, &change);
  return tb_vec3_add_scaled (run->rates.spin, 0.5 * h, change);
}

static void
step_by (Run *run, double h, Point *end, Rates *middle)
{
  dynamics_step (&run->dynamics, run->phase, &run->point, &run->rates, h, end, middle);
}

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

/* A step at whose end something is to happen, by length, and how far it is off. */
typedef struct Trial
{
  double h, distance;
  Point point;
  Rates rates, middle;
} Trial;

/* Rates that will be asked for again, with the oil of the step that follows, are not worked out twice: what events need of
 * them is. */
static bool
looks_again (const Run *run)
{
  return run->dynamics.forced || (run->ball && run->ball->wet);
}

static void
look_at_end (Run *run, Trial *step)
{
  if (looks_again (run) && run->phase == TB_PHASE_SLIDE && run->dynamics.balanced)
    dynamics_slip (&run->dynamics, &step->point, &step->rates.spin, &step->rates.slip);
  else
    look (run, &step->point, STEP_END, &step->rates);
}

static bool
needs_rates (Event event)
{
  return event == EVENT_SLIP_OVER || event == EVENT_BREAK || event == EVENT_LIFT;
}

static void
try_step (Run *run, Event event, Trial *trial)
{
  step_by (run, trial->h, &trial->point, NULL);
  if (needs_rates (event))
    look (run, &trial->point, STEP_END, &trial->rates);
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

/* The first thing that happens within a step; the step is cut short to it. */
static Event
first_event (Run *run, Trial *step)
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
      look_at_end (run, step);
      first = *event;
    }
  return first;
}

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

/* The zone and the slip's line that trial steps from here go by. */
static void
take_bearings (Run *run)
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
  take_bearings (run);
  look (run, &run->point, STEP_BEGINNING, &run->rates);
  look_ahead (run, spin_half_way (run, run->step), run->step);
  look (run, &run->point, STEP_BEGINNING, &run->rates);
  take_bearings (run);
  recorder_begin (&run->recorder, phase, &run->point, &run->rates);
}

/* What becomes of the slip if it goes on as now. */
typedef struct SlipOutlook
{
  double speed;                  /* m/s */
  double change_x, change_y;     /* m/s² */
  double brake;                  /* m/s², what friction takes from it */
  double left;                   /* s until it is over; INFINITY if it is not dying */
  double scale;                  /* s in which friction alone would end it */
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
  look (run, &run->point, STEP_BEGINNING, &run->rates);
}

/* Length of the next step, s. */
static double
choose_step (Run *run)
{
  double h = fmin (run->step, fmax (run->time_limit - run->point.time, LEAST_STEP));
  if (run->phase == TB_PHASE_FLIGHT)
    {
      /* A steady fall lands here; aim for it, and the landing is found in a try or two. */
      double height = fmax (run->point.position.z - run->dynamics.radius, 0);
      double g = fmax (-run->rates.acceleration.z, -0.5 * run->dynamics.gravity.z);
      double rise = run->rates.velocity.z, fall = sqrt (rise * rise + 2 * g * height);
      double aim = (rise + fall) / g * (1 + AIM_BEYOND);
      /* A ball that its own imbalance has thrown off the lane begins with neither height nor rise. */
      return fmin (h, run->dynamics.balanced ? fmax (aim, LEAST_STEP) : fmax (aim, LIFT_SHARE * run->step));
    }
  double to_pins = (run->motion->end_y - run->point.position.y) / run->rates.velocity.y * (1 + AIM_BEYOND);
  if (to_pins > 0 && to_pins < h)
    h = fmax (to_pins, LEAST_STEP);
  if (run->dynamics.signed_slip)
    return h;
  if (run->phase == TB_PHASE_ROLL)
    return fmin (h, ROLL_STEP);
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

/* A slip that turned round within a step was dying faster than its start told: the step was too long. */
static bool
overshot (const Run *run, const Rates *rates)
{
  if (run->phase != TB_PHASE_SLIDE || run->dynamics.signed_slip || run->dynamics.forced)
    return false;
  return tb_length2 (run->rates.slip.x, run->rates.slip.y) > SLIP_OVER && tb_vec3_dot (rates->slip, run->dynamics.slip_line) <= 0;
}

/* Whether the slip of a ball that does not keep its line has come to its end with a step. */
static bool
slip_is_over (const Run *run, const Trial *step)
{
  if (run->phase != TB_PHASE_SLIDE || run->dynamics.signed_slip)
    return false;
  if (run->dynamics.forced)
    return tb_vec3_dot (run->dynamics.forced_friction, run->dynamics.forced_friction) < STOPPED * STOPPED;
  return tb_length2 (step->rates.slip.x, step->rates.slip.y) <= SLIP_OVER;
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
  if (can_happen (run, EVENT_BREAK) && static_reserve (&run->rates) < 0)
    break_roll (run);
}

static void
land (Run *run)
{
  Landing landing;
  run->dynamics.zone = tb_friction_zone (run->motion->friction, run->point.position.x, run->point.position.y);
  run->phase = TB_PHASE_SLIDE;
  look (run, &run->point, STEP_BEGINNING, &run->rates);
  look_ahead (run, run->rates.spin, LEAST_STEP);
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
  look (run, &run->point, STEP_BEGINNING, &run->rates);
  if (tb_length2 (run->rates.slip.x, run->rates.slip.y) <= SLIP_OVER)
    start_roll (run);
  else
    begin_phase (run, TB_PHASE_SLIDE);
}

/* The run goes on after an event; false when it is over. */
static bool
handle (Run *run, Event event)
{
  switch (event)
    {
    case EVENT_PINS:
    case EVENT_GUTTER:
      return false;
    case EVENT_LANDING:
      recorder_end (&run->recorder);
      land (run);
      return true;
    case EVENT_SLIP_OVER:
      recorder_end (&run->recorder);
      start_roll (run);
      return true;
    case EVENT_BREAK:
      recorder_end (&run->recorder);
      break_roll (run);
      return true;
    case EVENT_LIFT:
      recorder_end (&run->recorder);
      run->lifts++;
      leave_roll (run);
      begin_phase (run, TB_PHASE_FLIGHT);
      return true;
    case EVENT_ZONE:
      recorder_end (&run->recorder);
      begin_phase (run, run->phase);
      return true;
    default:
      return true;
    }
}

/* Takes a step that stands: oil, place, what is known there, and the record of it. */
static void
finish_step (Run *run, Trial *step)
{
  bool again = looks_again (run);
  Rates begin = run->rates;
  if (run->ball && run->phase != TB_PHASE_FLIGHT)
    exchange_oil (run, step);
  run->point = step->point;
  run->rates = step->rates;
  run->dynamics.forced = false;
  TbVec3 gain = tb_vec3_sub (step->rates.spin, begin.spin);
  look_ahead (run, tb_vec3_add_scaled (step->rates.spin, 0.5 * run->step / step->h, gain), run->step);
  if (again)
    look (run, &run->point, STEP_BEGINNING, &run->rates);
  recorder_step (&run->recorder, run->phase, &run->point, &run->rates);
}

/* One step, or the end of a slip. false when the run is over. */
static bool
advance (Run *run)
{
  Trial step;
  Event event;
  for (double h = choose_step (run);; h *= 0.5)
    {
      step.h = h;
      if (run->ball && h != run->ball->look_length)
        look_ahead (run, spin_half_way (run, h), h);
      step_by (run, h, &step.point, run->phase == TB_PHASE_ROLL ? &step.middle : NULL);
      look_at_end (run, &step);
      event = first_event (run, &step);
      if (!overshot (run, &step.rates) || h <= LEAST_STEP)
        break;
    }
  if (event == EVENT_PINS)
    step.point.position.y = run->motion->end_y;
  if (event == EVENT_NONE && slip_is_over (run, &step))
    event = EVENT_SLIP_OVER;
  finish_step (run, &step);
  take_bearings (run);
  run->off_lane = event == EVENT_GUTTER;
  return handle (run, event);
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

/* In the air, coming down, or on the lane already? */
static void
begin (Run *run)
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

TbStatus
motion_begin (const TbMotion *motion, TbWorkspace *workspace, TbPath *path, TbOil *change)
{
  TbStatus status = check_motion (motion);
  if (status != TB_OK)
    return status;
  if (motion->state.position.y >= motion->end_y)
    return TB_ERROR_BEYOND_LANE;
  init_run (workspace, motion, path, change);
  begin (&workspace->run);
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
  if (at_pins && run->phase == TB_PHASE_FLIGHT)
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
