/* The equations of motion, and one step of them. Private to core.
 *
 * A ball is a rigid body whose surface is a sphere about its geometric centre; the centre of mass lies at `offset` d
 * from it. With R the radius, ω the spin, L the angular momentum about the centre of mass, r = −R ẑ − d the way from
 * the centre of mass to the contact, and F the contact force:
 *
 *   m v̇ = F + m g + drag        L̇ = r × F + (−d) × drag + pivot + rolling resistance
 *
 * Sliding, F = N (ẑ − μ û) with û along the slip u = (vx − R ωy, vy + R ωx) of the contact, and N from the demand that
 * the centre keeps its height: N (1 − m (A × d)z) = m ((B × d)z + (ω × (ω × d))z − gz) with ω̇ = N A + B. Rolling, the
 * centre moves with ω × R ẑ, and F is what that takes. In flight there is no F.
 *
 * The attitude is advanced on the rotation group: within a step it is exp(Θ) times the attitude at its start, and
 * Θ̇ = ω − Θ × ω / 2 + Θ × (Θ × ω) / 12 (H. Munthe-Kaas, "High order Runge–Kutta methods on manifolds", Appl. Numer.
 * Math. 29, 1999), everything by the classical Runge–Kutta scheme of order four.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "tb-ball-film.h"
#include "tb-shot.h"

/* What an evaluation needs and does not change. */
typedef struct Dynamics
{
  const TbMotion *motion;
  double mass, radius;
  /* The moments (kg m²) and their inverses, as the middle one all round and what the first and third body axes add:
   * the world's inertia is then 1 middle + e₁e₁ᵀ first + e₃e₃ᵀ third, and needs no matrix. */
  double middle, first, third;
  double inverse_middle, inverse_first, inverse_third;
  TbVec3 offset;                 /* m, body axes */
  TbVec3 gravity;                /* m/s², bowler's frame */
  bool equal_moments;            /* the attitude does not matter to the spin */
  bool one_axis;                 /* the second and third moment are equal, and the ball balanced: the first axis will do */
  bool balanced;                 /* the offset is nothing */
  bool signed_slip;              /* slip keeps its line: let it run through zero within a trial step */
  double drag;                   /* kg/m, force over speed squared */
  double rolling_resistance;     /* force over normal force */
  double pivot_arm;              /* m, moment over friction force when the ball only spins on its spot */
  double pivot_slip;             /* m, arm with which spinning is compared with slipping */
  double bounce;                 /* restitution */
  double landing_time;           /* s; 0 for a landing without squeeze */
  /* What changes from step to step. */
  int zone;                      /* of the friction map, at the start of the step */
  const BallFilm *ball;          /* whose spots come to the lane during the step; NULL for a dry ball */
  bool forced;                   /* the friction of the step is set: */
  TbVec3 forced_friction;        /* over coefficient times normal force, against the slip; no longer than 1 */
  TbVec3 slip_line;              /* unit vector of the slip at the start of the step */
  int evaluations;
} Dynamics;

/* Where the ball is. In a roll `momentum` holds the spin (rad/s) instead, and `velocity` is not used. */
typedef struct Point
{
  double time;
  TbVec3 position; /* m, centre of the sphere */
  TbVec3 velocity; /* m/s, centre of mass */
  TbVec3 momentum; /* kg m²/s */
  TbQuat attitude;
  double turned;   /* rad */
  double rubbed;   /* J */
} Point;

/* What happens there. */
typedef struct Rates
{
  TbVec3 velocity;     /* m/s, of the centre of the sphere */
  TbVec3 acceleration; /* m/s², of the centre of mass; unused in a roll */
  TbVec3 momentum;     /* N m; in a roll the angular acceleration, rad/s² */
  TbVec3 spin;         /* rad/s */
  double turned;       /* rad/s */
  double rubbed;       /* W */
  TbVec3 slip;         /* m/s */
  TbVec3 force;        /* N, of the lane on the ball */
  double coefficient;  /* of friction */
  double film_on_lane; /* m */
} Rates;

/* Body axes in the bowler's frame: the first and the third. */
typedef struct Axes
{
  TbVec3 first, third;
} Axes;

void dynamics_init (Dynamics *self, const TbMotion *motion);
/* Moments of a step. */
typedef enum StepMoment
{
  STEP_BEGINNING,
  STEP_MIDDLE,
  STEP_END
} StepMoment;

/* Rates at a point, which lies at that moment of the step that was looked ahead along. */
void dynamics_rates (Dynamics *self, TbPhase phase, const Point *point, StepMoment moment, Rates *rates);
/* One step of length h from a point whose rates are known. Half way along it the rates are about what is left in
 * `middle`, which may be NULL. */
void dynamics_step (Dynamics *self,
                    TbPhase phase,
                    const Point *start,
                    const Rates *rates,
                    double h,
                    Point *end,
                    Rates *middle);
/* Acceleration of the sphere's centre, m/s², and of the spin, rad/s². */
void dynamics_accelerations (const Dynamics *self,
                             TbPhase phase,
                             const Point *point,
                             const Rates *rates,
                             TbVec3 *centre,
                             TbVec3 *spin);
/* What a landing was like. */
typedef struct Landing
{
  double fall;   /* m/s, downwards, of the contact point before */
  double load;   /* over the ball's weight */
  double slowed; /* m/s along the lane, less than before */
  double loss;   /* J of motion */
  bool again;    /* the ball bounces */
} Landing;

/* The landing of a ball that falls onto the lane at `point`: velocity and momentum after. */
Landing dynamics_land (Dynamics *self, Point *point);
/* From sliding to rolling (what is left of the slip is taken out about the contact, whose angular momentum an impulse
 * there cannot change), and back. */
void dynamics_begin_roll (const Dynamics *self, Point *point);
void dynamics_end_roll (const Dynamics *self, Point *point);
/* Sliding: gives the centre of mass the vertical speed that keeps the sphere's centre at its height. */
void dynamics_settle (const Dynamics *self, Point *point);
/* Spin (rad/s) and slip (m/s) of a point that slides. */
void dynamics_slip (const Dynamics *self, const Point *point, TbVec3 *spin, TbVec3 *slip);
/* Spin of a point outside a roll. */
TbVec3 dynamics_spin (const Dynamics *self, const Point *point);
