/* A run between two of its steps, and the parts of one step. Private to core.
 *
 * A run is phases of contact (in the air, sliding, rolling) joined by events, and a phase is steps. tb-motion.c takes step
 * after step; tb-run-length.c says how long the next may be and whether a slip has ended with it; tb-run-events.c finds what
 * happens first within it; and tb-run-contact.c goes over into the next phase.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "tb-ball-film.h"
#include "tb-dynamics.h"
#include "tb-recorder.h"
#include "tb-shot.h"

/* A slip is over at this speed, m/s. */
#define SLIP_OVER 3e-5
/* A step that is to end at a landing or at the pins goes beyond by this share, so that the event is in it. */
#define AIM_BEYOND 1e-5
/* A step is never shorter than this, s: what is left of a phase is then over. */
#define LEAST_STEP 1e-12

typedef struct Run
{
  Dynamics dynamics;
  Recorder recorder;
  const TbMotion *motion;
  BallFilm *ball;    /* NULL if the ball carries none */
  TbPhase phase;
  Point point;
  Rates rates;
  double step;       /* s */
  double time_limit; /* s */
  int lifts;         /* off the lane, by its own imbalance */
  double broken_at;  /* s, when a roll last let go */
  double held_until; /* s, the roll does not break before */
  bool over, off_lane;
} Run;

/* What may happen within a step. */
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

/* A step, by its length (s); what the ball is like at its end; and how far off the event is that the step was tried for. */
typedef struct Trial
{
  double h, distance;
  Point point;
  Rates rates, middle;
} Trial;

/* The rates at a point of the present phase. */
static inline void
run_look (Run *run, const Point *point, StepMoment moment, Rates *rates)
{
  dynamics_rates (&run->dynamics, run->phase, point, moment, rates);
}

/* Looks ahead along the way over the ball of a step of length h (s) that turns with a spin (rad/s). */
static inline void
run_look_ahead (Run *run, TbVec3 spin, double h)
{
  if (run->ball && run->phase != TB_PHASE_FLIGHT)
    ball_film_look (run->ball, run->point.attitude, spin, run->point.time, h);
}

/* The spin (rad/s) half way along a step of length h (s) from here, as far as can be told. */
static inline TbVec3
run_spin_half_way (const Run *run, double h)
{
  TbVec3 centre, change;
  dynamics_accelerations (&run->dynamics, run->phase, &run->point, &run->rates, &centre, &change);
  return tb_vec3_add_scaled (run->rates.spin, 0.5 * h, change);
}

/* A step of length h (s) from here; `middle` may be NULL. */
static inline void
run_step_by (Run *run, double h, Point *end, Rates *middle)
{
  dynamics_step (&run->dynamics, run->phase, &run->point, &run->rates, h, end, middle);
}

/* Rates that will be asked for again, with the oil of the step that follows, are not worked out twice: what events need of
 * them is. */
static inline bool
run_looks_again (const Run *run)
{
  return run->dynamics.forced || (run->ball && run->ball->wet);
}

/* The rates at the end of a step, as far as events need them. */
static inline void
run_look_at_end (Run *run, Trial *step)
{
  if (run_looks_again (run) && run->phase == TB_PHASE_SLIDE && run->dynamics.balanced)
    dynamics_slip (&run->dynamics, &step->point, &step->rates.spin, &step->rates.slip);
  else
    run_look (run, &step->point, STEP_END, &step->rates);
}

/* Length of the next step, s. Sets its friction where that is solved implicitly. */
double run_choose_length (Run *run);
/* A slip that turned round within a step was dying faster than its start told: the step was too long. */
bool run_overshot (const Run *run, const Rates *end);
/* Whether the slip of a ball that does not keep its line has come to its end with a step. */
bool run_slip_is_over (const Run *run, const Trial *step);

/* The first thing that happens within a step; the step is cut short to it. */
Event run_first_event (Run *run, Trial *step);
/* A roll asks for more friction than there is, here and now, and may break. */
bool run_breaks_now (const Run *run);

/* The zone and the slip's line that trial steps from here go by. */
void run_take_bearings (Run *run);
/* In the air, coming down, or on the lane already? */
void run_begin (Run *run);
/* The run goes on after an event; false when it is over. */
bool run_handle (Run *run, Event event);
