/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "tb-dynamics.h"

#include "tb-oil-film.h"

/* A sphere spinning on its own Hertz spot is held back by (3π/16) a times the friction force, a the spot's radius (K. L.
 * Johnson, Contact Mechanics, 1985). While it slips as well the moment falls as aω/(aω + (15π/16)|u|) (form after V. F.
 * Zhuravlev, "The model of dry friction in the problem of the rolling of rigid bodies", J. Appl. Math. Mech. 62, 1998;
 * from memory). The same spot's spinning lowers the friction of slipping only while |u| is below about aω, a hundredth
 * of a metre a second, and that is left out. */
#define PIVOT_FACTOR (3 * TB_PI / 16)
#define PIVOT_SLIP_FACTOR (15 * TB_PI / 16)
/* Spin (rad/s) under which pivot friction and rolling resistance fade out, so that they end without a jolt. */
#define FADE_SPIN 0.1
/* Slip (m/s) that is none. */
#define NO_SLIP 1e-9
/* A ball that would rise slower than this stays down, m/s. The friction of what is left out is the same: landing after
 * landing rubs as long as the weight would have. */
#define LEAST_BOUNCE 0.01

void
dynamics_init (Dynamics *self, const TbMotion *motion)
{
  const TbBody *body = &motion->body;
  const TbOptions *options = &motion->options;
  const TbAssumed *assumed = &motion->assumed;
  double g = options->gravity > 0 ? options->gravity : TB_STANDARD_GRAVITY;
  double slope = options->no_cross_tilt ? 0 : motion->cross_slope, level = 1 / sqrt (1 + slope * slope);
  *self = (Dynamics){
    .motion = motion,
    .mass = body->mass,
    .radius = body->radius,
    .middle = body->moment.y,
    .first = body->moment.x - body->moment.y,
    .third = body->moment.z - body->moment.y,
    .inverse_middle = 1 / body->moment.y,
    .inverse_first = 1 / body->moment.x - 1 / body->moment.y,
    .inverse_third = 1 / body->moment.z - 1 / body->moment.y,
    .offset = body->offset,
    .gravity = { -g * slope * level, 0, -g * level },
    .equal_moments = body->moment.x == body->moment.y && body->moment.y == body->moment.z,
    .balanced = body->offset.x == 0 && body->offset.y == 0 && body->offset.z == 0,
    .bounce = assumed->restitution,
    .landing_time = options->no_landing_squeeze ? 0 : assumed->landing_time,
  };
  self->signed_slip = self->equal_moments && self->balanced;
  self->one_axis = body->moment.y == body->moment.z && self->balanced;
  if (!options->no_air_drag)
    self->drag = 0.5 * assumed->air_density * assumed->drag_coefficient * TB_PI * body->radius * body->radius;
  if (!options->no_rolling_resistance)
    self->rolling_resistance = assumed->rolling_resistance;
  if (!options->no_pivot_friction)
    {
      self->pivot_arm = PIVOT_FACTOR * assumed->contact_radius;
      self->pivot_slip = assumed->contact_radius;
    }
}

static inline Axes
axes_of (TbQuat q)
{
  TbMat3 m = tb_quat_to_mat3 (q);
  return (Axes){ { m.row[0].x, m.row[1].x, m.row[2].x }, { m.row[0].z, m.row[1].z, m.row[2].z } };
}

/* A body vector in the bowler's frame. */
static inline TbVec3
to_lane (const Axes *axes, TbVec3 v)
{
  TbVec3 second = tb_vec3_cross (axes->third, axes->first);
  TbVec3 sum = tb_vec3_add_scaled (tb_vec3_scale (axes->first, v.x), v.y, second);
  return tb_vec3_add_scaled (sum, v.z, axes->third);
}

/* The inertia, or its inverse, times v. */
static inline TbVec3
apply (double middle, double first, double third, const Axes *axes, TbVec3 v)
{
  TbVec3 result = tb_vec3_add_scaled (tb_vec3_scale (v, middle), first * tb_vec3_dot (axes->first, v), axes->first);
  return third == 0 ? result : tb_vec3_add_scaled (result, third * tb_vec3_dot (axes->third, v), axes->third);
}

static inline TbVec3
spin_of (const Dynamics *self, const Axes *axes, TbVec3 momentum)
{
  return apply (self->inverse_middle, self->inverse_first, self->inverse_third, axes, momentum);
}

static inline TbVec3
momentum_of (const Dynamics *self, const Axes *axes, TbVec3 spin)
{
  return apply (self->middle, self->first, self->third, axes, spin);
}

TbVec3
dynamics_spin (const Dynamics *self, const Point *point)
{
  Axes axes = axes_of (point->attitude);
  return spin_of (self, &axes, point->momentum);
}

void
dynamics_slip (const Dynamics *self, const Point *point, TbVec3 *spin, TbVec3 *slip)
{
  Axes axes = axes_of (point->attitude);
  *spin = spin_of (self, &axes, point->momentum);
  TbVec3 velocity = tb_vec3_sub (point->velocity, tb_vec3_cross (*spin, to_lane (&axes, self->offset)));
  *slip = tb_vec3 (velocity.x - self->radius * spin->y, velocity.y + self->radius * spin->x, 0);
}

static inline TbVec3
drag_force (const Dynamics *self, TbVec3 velocity)
{
  return tb_vec3_scale (velocity, -self->drag * tb_vec3_length (velocity));
}

/* Moment per newton of normal force that rolling resistance and pivoting take, N m/N. */
static inline TbVec3
resisting_moment (const Dynamics *self, TbVec3 spin, double slip, double coefficient)
{
  TbVec3 moment = { 0, 0, 0 };
  if (self->rolling_resistance > 0)
    {
      double level = sqrt (spin.x * spin.x + spin.y * spin.y + FADE_SPIN * FADE_SPIN);
      double scale = -self->rolling_resistance * self->radius / level;
      moment.x = scale * spin.x;
      moment.y = scale * spin.y;
    }
  if (self->pivot_arm > 0)
    {
      double upright = sqrt (spin.z * spin.z + FADE_SPIN * FADE_SPIN);
      moment.z = -coefficient * self->pivot_arm * self->pivot_slip * spin.z
                 / (self->pivot_slip * upright + PIVOT_SLIP_FACTOR * slip);
    }
  return moment;
}

static inline double
coefficient_at (const Dynamics *self, TbVec3 position, StepMoment moment, double load, double *film_on_lane)
{
  const TbFriction *friction = self->motion->friction;
  if (friction->kind == TB_FRICTION_ZONES)
    {
      *film_on_lane = 0;
      return tb_friction_in_zone (friction, self->zone, position.y);
    }
  const BallFilm *ball = self->ball;
  if (ball && ball->wet)
    {
      const TbContact contact = { position.x, position.y, 0, load };
      const TbBallSpots spots = { ball->looks, ball->films, ball->weights[moment] };
      return tb_friction_mean (friction, &contact, &spots, film_on_lane);
    }
  /* The same for a dry ball, without the calls. */
  bool from_left = signbit (position.x) != 0;
  *film_on_lane = friction->oil_scale
                  * oil_film_at (friction->oil, position.x, position.y, from_left != friction->mirrored);
  return tb_cover_friction (&friction->cover, &friction->law, *film_on_lane, load);
}

/* Unit vector along the slip, as it is meant inside a trial step. */
static inline TbVec3
slip_direction (const Dynamics *self, TbVec3 slip, double speed)
{
  if (self->forced)
    return self->forced_friction;
  if (speed < NO_SLIP)
    return self->slip_line;
  if (self->signed_slip && tb_vec3_dot (slip, self->slip_line) < 0)
    speed = -speed;
  return tb_vec3_scale (slip, 1 / speed);
}

/* Normal force of a sliding ball whose centre of mass is off its centre; see the top of the header. */
static double
uneven_normal (const Dynamics *self, const Axes *axes, TbVec3 momentum, const Rates *r, TbVec3 offset, TbVec3 per_newton,
               TbVec3 other_moment)
{
  TbVec3 gyroscopic = tb_vec3_cross (r->spin, momentum);
  TbVec3 a = spin_of (self, axes, per_newton);
  TbVec3 b = spin_of (self, axes, tb_vec3_sub (other_moment, gyroscopic));
  TbVec3 whirl = tb_vec3_cross (r->spin, tb_vec3_cross (r->spin, offset));
  double rise_a = a.x * offset.y - a.y * offset.x, rise_b = b.x * offset.y - b.y * offset.x;
  return self->mass * (rise_b + whirl.z - self->gravity.z) / (1 - self->mass * rise_a);
}

static inline void
slide_rates (const Dynamics *self, const Point *p, const Axes *axes, StepMoment moment, Rates *r)
{
  TbVec3 offset = { 0, 0, 0 };
  r->spin = spin_of (self, axes, p->momentum);
  r->velocity = p->velocity;
  if (!self->balanced)
    {
      offset = to_lane (axes, self->offset);
      r->velocity = tb_vec3_sub (p->velocity, tb_vec3_cross (r->spin, offset));
    }
  r->velocity.z = 0;
  r->slip = tb_vec3 (r->velocity.x - self->radius * r->spin.y, r->velocity.y + self->radius * r->spin.x, 0);
  double speed = sqrt (r->slip.x * r->slip.x + r->slip.y * r->slip.y);
  TbVec3 along = slip_direction (self, r->slip, speed);
  r->coefficient = coefficient_at (self, p->position, moment, 1, &r->film_on_lane);

  /* All moments but drag's grow with the normal force. */
  TbVec3 force = { -r->coefficient * along.x, -r->coefficient * along.y, 1 };
  TbVec3 lever = { -offset.x, -offset.y, -self->radius - offset.z };
  TbVec3 per_newton
      = tb_vec3_add (tb_vec3_cross (lever, force), resisting_moment (self, r->spin, speed, r->coefficient));
  TbVec3 drag = drag_force (self, r->velocity), drag_moment = tb_vec3_cross (drag, offset);
  double normal = self->balanced
                      ? -self->mass * self->gravity.z
                      : fmax (uneven_normal (self, axes, p->momentum, r, offset, per_newton, drag_moment), 0);
  r->force = tb_vec3_scale (force, normal);
  r->acceleration = tb_vec3_add_scaled (self->gravity, 1 / self->mass, tb_vec3_add (r->force, drag));
  r->momentum = tb_vec3_add_scaled (drag_moment, normal, per_newton);
  r->rubbed = r->coefficient * normal * (along.x * r->slip.x + along.y * r->slip.y);
}

/* The inertia about the contact: I + m (r² 1 − r rᵀ), r the lever. */
static TbMat3
inertia_about (const Dynamics *self, const Axes *axes, TbVec3 lever)
{
  double all_round = self->middle + self->mass * tb_vec3_dot (lever, lever);
  const double first[3] = { self->first * axes->first.x, self->first * axes->first.y, self->first * axes->first.z };
  const double third[3] = { self->third * axes->third.x, self->third * axes->third.y, self->third * axes->third.z };
  const double point[3] = { -self->mass * lever.x, -self->mass * lever.y, -self->mass * lever.z };
  TbMat3 inertia;
  for (int i = 0; i < 3; i++)
    inertia.row[i] = tb_vec3 (first[i] * axes->first.x + third[i] * axes->third.x + point[i] * lever.x,
                              first[i] * axes->first.y + third[i] * axes->third.y + point[i] * lever.y,
                              first[i] * axes->first.z + third[i] * axes->third.z + point[i] * lever.z);
  inertia.row[0].x += all_round;
  inertia.row[1].y += all_round;
  inertia.row[2].z += all_round;
  return inertia;
}

static void
roll_rates (const Dynamics *self, const Point *p, const Axes *axes, StepMoment moment, Rates *r)
{
  TbVec3 offset = { 0, 0, 0 }, whirl = { 0, 0, 0 }, spin = p->momentum;
  if (!self->balanced)
    {
      offset = to_lane (axes, self->offset);
      whirl = tb_vec3_cross (spin, tb_vec3_cross (spin, offset));
    }
  TbVec3 lever = { -offset.x, -offset.y, -self->radius - offset.z };
  r->spin = spin;
  r->velocity = tb_vec3 (self->radius * spin.y, -self->radius * spin.x, 0);
  r->slip = tb_vec3 (0, 0, 0);
  r->coefficient = coefficient_at (self, p->position, moment, 1, &r->film_on_lane);

  TbVec3 drag = drag_force (self, r->velocity);
  TbVec3 known = tb_vec3_sub (tb_vec3_scale (tb_vec3_sub (whirl, self->gravity), self->mass), drag);
  TbVec3 resisting = tb_vec3_scale (resisting_moment (self, spin, 0, r->coefficient), -self->mass * self->gravity.z);
  TbVec3 momentum = momentum_of (self, axes, spin);
  TbVec3 about = tb_vec3_add (tb_vec3_cross (lever, known), tb_vec3_cross (drag, offset));
  about = tb_vec3_sub (tb_vec3_add (about, resisting), tb_vec3_cross (spin, momentum));
  TbMat3 inertia = inertia_about (self, axes, lever);
  r->momentum = tb_mat3_solve_spd (&inertia, about);
  r->acceleration = tb_vec3_add (whirl, tb_vec3_cross (lever, r->momentum)); /* α × (−lever) */
  r->force = tb_vec3_add (known, tb_vec3_scale (tb_vec3_cross (lever, r->momentum), self->mass));
  r->rubbed = 0;
}

static void
flight_rates (const Dynamics *self, const Point *p, const Axes *axes, Rates *r)
{
  TbVec3 offset = to_lane (axes, self->offset);
  r->spin = spin_of (self, axes, p->momentum);
  r->velocity = tb_vec3_sub (p->velocity, tb_vec3_cross (r->spin, offset));
  TbVec3 drag = drag_force (self, r->velocity);
  r->acceleration = tb_vec3_add_scaled (self->gravity, 1 / self->mass, drag);
  r->momentum = tb_vec3_cross (drag, offset);
  r->slip = tb_vec3 (r->velocity.x - self->radius * r->spin.y, r->velocity.y + self->radius * r->spin.x, 0);
  r->force = tb_vec3 (0, 0, 0);
  r->coefficient = r->film_on_lane = r->rubbed = 0;
}

static inline void
rates_at (Dynamics *self, TbPhase phase, const Point *point, const Axes *axes, StepMoment moment, Rates *rates)
{
  self->evaluations++;
  if (phase == TB_PHASE_SLIDE)
    slide_rates (self, point, axes, moment, rates);
  else if (phase == TB_PHASE_ROLL)
    roll_rates (self, point, axes, moment, rates);
  else
    flight_rates (self, point, axes, rates);
  rates->turned = tb_vec3_length (rates->spin);
}

void
dynamics_rates (Dynamics *self, TbPhase phase, const Point *point, StepMoment moment, Rates *rates)
{
  Axes axes = axes_of (point->attitude);
  rates_at (self, phase, point, &axes, moment, rates);
}

/* Θ̇ for a rotation Θ since the start of the step. */
static inline TbVec3
rotation_rate (TbVec3 rotation, TbVec3 spin)
{
  TbVec3 once = tb_vec3_cross (rotation, spin), twice = tb_vec3_cross (rotation, once);
  return tb_vec3_add_scaled (tb_vec3_add_scaled (spin, -0.5, once), 1.0 / 12, twice);
}

/* start + h · rates, the attitude left to the caller. */
static inline void
point_add (const Point *start, double h, const Rates *rates, Point *end)
{
  end->time = start->time + h;
  end->position = tb_vec3_add_scaled (start->position, h, rates->velocity);
  end->velocity = tb_vec3_add_scaled (start->velocity, h, rates->acceleration);
  end->momentum = tb_vec3_add_scaled (start->momentum, h, rates->momentum);
}

/* The axes turned by a rotation (Rodrigues); sin θ/θ and (1 − cos θ)/θ² as series to the eighteenth power of θ, exact
 * to rounding up to two radians, and by libm beyond. */
#define SERIES_ANGLE 2.0
#define SERIES_TERMS 9

/* Ratios of one coefficient to the one before it: multiplied, for a division takes as long as the rest of a term. */
static const double sine_series[SERIES_TERMS + 1]
    = { 1, 1. / 6, 1. / 20, 1. / 42, 1. / 72, 1. / 110, 1. / 156, 1. / 210, 1. / 272, 1. / 342 };
static const double cosine_series[SERIES_TERMS + 1]
    = { 1. / 2, 1. / 12, 1. / 30, 1. / 56, 1. / 90, 1. / 132, 1. / 182, 1. / 240, 1. / 306, 1. / 380 };

/* c₀ (1 − c₁ s (1 − c₂ s (…))) */
static inline double
series (double s, const double ratio[SERIES_TERMS + 1])
{
  double sum = 1;
  for (int i = SERIES_TERMS; i > 0; i--)
    sum = 1 - ratio[i] * s * sum;
  return ratio[0] * sum;
}

static inline Axes
turn_axes (const Dynamics *self, const Axes *axes, TbVec3 rotation)
{
  double s = tb_vec3_dot (rotation, rotation), a, b;
  if (s < SERIES_ANGLE * SERIES_ANGLE)
    {
      a = series (s, sine_series);
      b = series (s, cosine_series);
    }
  else
    {
      double angle = sqrt (s);
      a = sin (angle) / angle;
      b = (1 - cos (angle)) / s;
    }
  Axes turned = *axes;
  TbVec3 once = tb_vec3_cross (rotation, axes->first), twice = tb_vec3_cross (rotation, once);
  turned.first = tb_vec3_add_scaled (tb_vec3_add_scaled (axes->first, a, once), b, twice);
  if (self->one_axis)
    return turned;
  once = tb_vec3_cross (rotation, axes->third);
  twice = tb_vec3_cross (rotation, once);
  turned.third = tb_vec3_add_scaled (tb_vec3_add_scaled (axes->third, a, once), b, twice);
  return turned;
}

/* (a + 2 b + 2 c + d) / 6 */
static inline TbVec3
simpson (TbVec3 a, TbVec3 b, TbVec3 c, TbVec3 d)
{
  const double sixth = 1.0 / 6;
  return tb_vec3 ((a.x + 2 * (b.x + c.x) + d.x) * sixth, (a.y + 2 * (b.y + c.y) + d.y) * sixth,
                  (a.z + 2 * (b.z + c.z) + d.z) * sixth);
}

void
dynamics_step (Dynamics *self,
               TbPhase phase,
               const Point *start,
               const Rates *rates,
               double h,
               Point *end,
               Rates *middle)
{
  Rates k2, k3, k4;
  Point stage;
  Axes axes = axes_of (start->attitude), turned;
  TbVec3 o1 = rates->spin, o2, o3, o4, rotation;

  rotation = tb_vec3_scale (o1, 0.5 * h);
  point_add (start, 0.5 * h, rates, &stage);
  turned = turn_axes (self, &axes, rotation);
  rates_at (self, phase, &stage, &turned, STEP_MIDDLE, &k2);
  o2 = rotation_rate (rotation, k2.spin);

  rotation = tb_vec3_scale (o2, 0.5 * h);
  point_add (start, 0.5 * h, &k2, &stage);
  turned = turn_axes (self, &axes, rotation);
  rates_at (self, phase, &stage, &turned, STEP_MIDDLE, &k3);
  o3 = rotation_rate (rotation, k3.spin);
  if (middle)
    *middle = k3;

  rotation = tb_vec3_scale (o3, h);
  point_add (start, h, &k3, &stage);
  turned = turn_axes (self, &axes, rotation);
  rates_at (self, phase, &stage, &turned, STEP_END, &k4);
  o4 = rotation_rate (rotation, k4.spin);

  end->time = start->time + h;
  end->position = tb_vec3_add_scaled (start->position, h, simpson (rates->velocity, k2.velocity, k3.velocity, k4.velocity));
  end->velocity = tb_vec3_add_scaled (start->velocity, h,
                                      simpson (rates->acceleration, k2.acceleration, k3.acceleration, k4.acceleration));
  end->momentum = tb_vec3_add_scaled (start->momentum, h, simpson (rates->momentum, k2.momentum, k3.momentum, k4.momentum));
  end->turned = start->turned + h * (rates->turned + 2 * (k2.turned + k3.turned) + k4.turned) / 6;
  end->rubbed = start->rubbed + h * (rates->rubbed + 2 * (k2.rubbed + k3.rubbed) + k4.rubbed) / 6;
  end->attitude = tb_quat_unit (
      tb_quat_multiply (tb_quat_from_rotation (tb_vec3_scale (simpson (o1, o2, o3, o4), h)), start->attitude));
  if (phase != TB_PHASE_FLIGHT)
    {
      end->position.z = self->radius;
      if (phase == TB_PHASE_SLIDE)
        dynamics_settle (self, end);
    }
}

void
dynamics_accelerations (const Dynamics *self,
                        TbPhase phase,
                        const Point *point,
                        const Rates *rates,
                        TbVec3 *centre,
                        TbVec3 *spin)
{
  if (phase == TB_PHASE_ROLL)
    {
      *spin = rates->momentum;
      *centre = tb_vec3 (self->radius * spin->y, -self->radius * spin->x, 0);
      return;
    }
  Axes axes = axes_of (point->attitude);
  *spin = spin_of (self, &axes, tb_vec3_sub (rates->momentum, tb_vec3_cross (rates->spin, point->momentum)));
  *centre = rates->acceleration;
  if (!self->balanced)
    {
      TbVec3 offset = to_lane (&axes, self->offset);
      TbVec3 whirl = tb_vec3_cross (rates->spin, tb_vec3_cross (rates->spin, offset));
      *centre = tb_vec3_sub (*centre, tb_vec3_add (tb_vec3_cross (*spin, offset), whirl));
    }
  if (phase == TB_PHASE_SLIDE)
    centre->z = 0;
}

void
dynamics_settle (const Dynamics *self, Point *point)
{
  if (self->balanced)
    {
      point->velocity.z = 0;
      return;
    }
  TbVec3 offset = tb_quat_rotate (point->attitude, self->offset), spin = dynamics_spin (self, point);
  point->velocity.z = spin.x * offset.y - spin.y * offset.x;
}

/* What an impulse at the contact does to the contact's own velocity, (m/s)/(N s): 1/m + the turning it causes. */
static TbMat3
contact_mobility (const Dynamics *self, const Axes *axes, TbVec3 lever)
{
  TbMat3 mobility;
  const TbVec3 unit[3] = { { 1, 0, 0 }, { 0, 1, 0 }, { 0, 0, 1 } };
  for (int i = 0; i < 3; i++)
    {
      TbVec3 spin = spin_of (self, axes, tb_vec3_cross (lever, unit[i]));
      mobility.row[i] = tb_vec3_add_scaled (tb_vec3_cross (spin, lever), 1 / self->mass, unit[i]);
    }
  return mobility;
}

/* The impulse of a landing: friction along the slip up to what stops it. `fall` is the speed of the fall, `rise` of the
 * rebound; m/s. */
static TbVec3
landing_impulse (const TbMat3 *mobility, TbVec3 slip, double coefficient, double fall, double rise)
{
  double speed = tb_vec3_length (slip);
  TbVec3 along = tb_vec3_unit (slip, tb_vec3 (0, 0, 0));
  TbVec3 pushing = { -coefficient * along.x, -coefficient * along.y, 1 };
  TbVec3 answer = tb_mat3_apply (mobility, pushing);
  double size = (fall + rise) / answer.z;
  if (speed + size * tb_vec3_dot (answer, along) > 0)
    return tb_vec3_scale (pushing, size);
  return tb_mat3_solve_spd (mobility, tb_vec3 (-slip.x, -slip.y, fall + rise));
}

Landing
dynamics_land (Dynamics *self, Point *point)
{
  Axes axes = axes_of (point->attitude);
  TbVec3 offset = to_lane (&axes, self->offset), spin = spin_of (self, &axes, point->momentum);
  TbVec3 lever = { -offset.x, -offset.y, -self->radius - offset.z };
  TbVec3 contact = tb_vec3_add (point->velocity, tb_vec3_cross (spin, lever));
  double fall = fmax (-contact.z, 0), rise = self->bounce * fall;
  Landing landing = { .fall = fall, .again = rise >= LEAST_BOUNCE };
  if (!landing.again)
    rise = 0;
  landing.load = self->landing_time > 0 ? 1 + fall / (-self->gravity.z * self->landing_time) : 1;
  double film, coefficient = coefficient_at (self, point->position, STEP_BEGINNING, landing.load, &film);
  TbVec3 slip = { contact.x, contact.y, 0 };
  TbMat3 mobility = contact_mobility (self, &axes, lever);
  TbVec3 impulse = landing_impulse (&mobility, slip, coefficient, fall, rise);
  TbVec3 change = tb_mat3_apply (&mobility, impulse);
  double speed = tb_length2 (point->velocity.x, point->velocity.y);

  point->velocity = tb_vec3_add_scaled (point->velocity, 1 / self->mass, impulse);
  point->momentum = tb_vec3_add (point->momentum, tb_vec3_cross (lever, impulse));
  point->position.z = self->radius;
  point->rubbed -= impulse.x * (slip.x + 0.5 * change.x) + impulse.y * (slip.y + 0.5 * change.y);
  /* The work of an impulse is itself times the mean of the contact's velocity before and after. */
  landing.loss = -tb_vec3_dot (impulse, tb_vec3_add_scaled (contact, 0.5, change));
  landing.slowed = speed - tb_length2 (point->velocity.x, point->velocity.y);
  return landing;
}

void
dynamics_begin_roll (const Dynamics *self, Point *point)
{
  Axes axes = axes_of (point->attitude);
  TbVec3 offset = to_lane (&axes, self->offset);
  TbVec3 lever = { -offset.x, -offset.y, -self->radius - offset.z };
  /* Angular momentum about the contact: L − lever × m v. */
  TbVec3 about = tb_vec3_sub (point->momentum, tb_vec3_scale (tb_vec3_cross (lever, point->velocity), self->mass));
  TbMat3 inertia = inertia_about (self, &axes, lever);
  point->momentum = tb_mat3_solve_spd (&inertia, about);
}

void
dynamics_end_roll (const Dynamics *self, Point *point)
{
  Axes axes = axes_of (point->attitude);
  TbVec3 offset = to_lane (&axes, self->offset), spin = point->momentum;
  TbVec3 lever = { -offset.x, -offset.y, -self->radius - offset.z };
  point->velocity = tb_vec3_cross (lever, spin); /* ω × (−lever) */
  point->momentum = momentum_of (self, &axes, spin);
}
