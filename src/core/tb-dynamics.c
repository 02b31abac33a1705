/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "tb-dynamics.h"

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
    .moment = body->moment,
    .inverse_moment = { 1 / body->moment.x, 1 / body->moment.y, 1 / body->moment.z },
    .offset = body->offset,
    .gravity = { -g * slope * level, 0, -g * level },
    .equal_moments = body->moment.x == body->moment.y && body->moment.y == body->moment.z,
    .balanced = body->offset.x == 0 && body->offset.y == 0 && body->offset.z == 0,
    .bounce = assumed->restitution,
    .landing_time = options->no_landing_squeeze ? 0 : assumed->landing_time,
  };
  self->signed_slip = self->equal_moments && self->balanced;
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

/* moment · v with v in the bowler's frame; m the attitude. */
static inline TbVec3
apply_moment (const TbMat3 *m, TbVec3 moment, TbVec3 v)
{
  TbVec3 body = tb_mat3_apply_transposed (m, v);
  return tb_mat3_apply (m, tb_vec3 (moment.x * body.x, moment.y * body.y, moment.z * body.z));
}

TbVec3
dynamics_spin (const Dynamics *self, const Point *point)
{
  if (self->equal_moments)
    return tb_vec3_scale (point->momentum, self->inverse_moment.x);
  TbMat3 m = tb_quat_to_mat3 (point->attitude);
  return apply_moment (&m, self->inverse_moment, point->momentum);
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
coefficient_at (const Dynamics *self, TbVec3 position, double film_on_ball, double load, double *film_on_lane)
{
  const TbFriction *friction = self->motion->friction;
  if (friction->kind == TB_FRICTION_ZONES)
    {
      *film_on_lane = 0;
      return tb_friction_in_zone (friction, self->zone, position.y);
    }
  const TbContact contact = { position.x, position.y, film_on_ball, load };
  return tb_friction_at (friction, &contact, film_on_lane);
}

/* Unit vector along the slip, as it is meant inside a trial step. */
static inline TbVec3
slip_direction (const Dynamics *self, TbVec3 slip, double speed)
{
  if (speed < NO_SLIP)
    return self->slip_line;
  if (self->signed_slip && tb_vec3_dot (slip, self->slip_line) < 0)
    speed = -speed;
  return tb_vec3_scale (slip, 1 / speed);
}

/* Normal force of a sliding ball whose centre of mass is off its centre; see the top of the header. */
static double
uneven_normal (const Dynamics *self, const TbMat3 *m, const Point *p, const Rates *r, TbVec3 offset, TbVec3 per_newton,
               TbVec3 other_moment)
{
  TbVec3 gyroscopic = tb_vec3_cross (r->spin, p->momentum);
  TbVec3 a = apply_moment (m, self->inverse_moment, per_newton);
  TbVec3 b = apply_moment (m, self->inverse_moment, tb_vec3_sub (other_moment, gyroscopic));
  TbVec3 whirl = tb_vec3_cross (r->spin, tb_vec3_cross (r->spin, offset));
  double rise_a = a.x * offset.y - a.y * offset.x, rise_b = b.x * offset.y - b.y * offset.x;
  return self->mass * (rise_b + whirl.z - self->gravity.z) / (1 - self->mass * rise_a);
}

static void
slide_rates (Dynamics *self, const Point *p, double film_on_ball, Rates *r)
{
  TbMat3 m = { { { 1, 0, 0 }, { 0, 1, 0 }, { 0, 0, 1 } } };
  TbVec3 offset = { 0, 0, 0 };
  if (!self->equal_moments || !self->balanced)
    m = tb_quat_to_mat3 (p->attitude);
  r->spin = self->equal_moments ? tb_vec3_scale (p->momentum, self->inverse_moment.x)
                                : apply_moment (&m, self->inverse_moment, p->momentum);
  r->velocity = p->velocity;
  if (!self->balanced)
    {
      offset = tb_mat3_apply (&m, self->offset);
      r->velocity = tb_vec3_sub (p->velocity, tb_vec3_cross (r->spin, offset));
    }
  r->velocity.z = 0;
  r->slip = tb_vec3 (r->velocity.x - self->radius * r->spin.y, r->velocity.y + self->radius * r->spin.x, 0);
  double speed = sqrt (r->slip.x * r->slip.x + r->slip.y * r->slip.y);
  TbVec3 along = slip_direction (self, r->slip, speed);
  r->coefficient = coefficient_at (self, p->position, film_on_ball, 1, &r->film_on_lane);

  /* All moments but drag's grow with the normal force. */
  TbVec3 force = { -r->coefficient * along.x, -r->coefficient * along.y, 1 };
  TbVec3 lever = { -offset.x, -offset.y, -self->radius - offset.z };
  TbVec3 per_newton = tb_vec3_add (tb_vec3_cross (lever, force),
                                   resisting_moment (self, r->spin, speed, r->coefficient));
  TbVec3 drag = { 0, 0, 0 }, drag_moment = { 0, 0, 0 };
  if (self->drag > 0)
    {
      drag = drag_force (self, r->velocity);
      drag_moment = tb_vec3_cross (drag, offset);
    }
  double normal = self->balanced ? -self->mass * self->gravity.z
                                 : uneven_normal (self, &m, p, r, offset, per_newton, drag_moment);
  r->force = tb_vec3_scale (force, normal);
  r->acceleration = tb_vec3_add_scaled (self->gravity, 1 / self->mass, tb_vec3_add (r->force, drag));
  r->momentum = tb_vec3_add_scaled (drag_moment, normal, per_newton);
  r->rubbed = r->coefficient * normal * speed;
}

/* m as a matrix about the contact: I + m (r² 1 − r rᵀ), r the lever. */
static TbMat3
inertia_about (const TbMat3 *attitude, TbVec3 moment, double mass, TbVec3 lever)
{
  TbMat3 inertia = { 0 };
  const TbVec3 *row = attitude->row;
  double square = tb_vec3_dot (lever, lever);
  const double r[3] = { lever.x, lever.y, lever.z };
  for (int i = 0; i < 3; i++)
    {
      TbVec3 weighted = { moment.x * row[i].x, moment.y * row[i].y, moment.z * row[i].z };
      inertia.row[i] = tb_vec3_sub (tb_mat3_apply (attitude, weighted), tb_vec3_scale (lever, mass * r[i]));
    }
  inertia.row[0].x += mass * square;
  inertia.row[1].y += mass * square;
  inertia.row[2].z += mass * square;
  return inertia;
}

static void
roll_rates (Dynamics *self, const Point *p, double film_on_ball, Rates *r)
{
  TbMat3 m = tb_quat_to_mat3 (p->attitude);
  TbVec3 offset = tb_mat3_apply (&m, self->offset), spin = p->momentum;
  TbVec3 lever = { -offset.x, -offset.y, -self->radius - offset.z };
  r->spin = spin;
  r->velocity = tb_vec3 (self->radius * spin.y, -self->radius * spin.x, 0);
  r->slip = tb_vec3 (0, 0, 0);
  r->coefficient = coefficient_at (self, p->position, film_on_ball, 1, &r->film_on_lane);

  TbVec3 drag = drag_force (self, r->velocity);
  TbVec3 whirl = tb_vec3_cross (spin, tb_vec3_cross (spin, offset));
  TbVec3 known = tb_vec3_sub (tb_vec3_scale (tb_vec3_sub (whirl, self->gravity), self->mass), drag);
  TbVec3 resisting = tb_vec3_scale (resisting_moment (self, spin, 0, r->coefficient), -self->mass * self->gravity.z);
  TbVec3 momentum = apply_moment (&m, self->moment, spin);
  TbVec3 moment = tb_vec3_add (tb_vec3_cross (lever, known), tb_vec3_cross (drag, offset));
  moment = tb_vec3_sub (tb_vec3_add (moment, resisting), tb_vec3_cross (spin, momentum));
  TbMat3 inertia = inertia_about (&m, self->moment, self->mass, lever);
  r->momentum = tb_mat3_solve_spd (&inertia, moment);
  r->acceleration = tb_vec3_add (whirl, tb_vec3_cross (lever, r->momentum)); /* α × (−lever) */
  r->force = tb_vec3_add (known, tb_vec3_scale (tb_vec3_cross (lever, r->momentum), self->mass));
  r->rubbed = 0;
}

static void
flight_rates (Dynamics *self, const Point *p, Rates *r)
{
  TbVec3 offset = tb_quat_rotate (p->attitude, self->offset);
  r->spin = dynamics_spin (self, p);
  r->velocity = tb_vec3_sub (p->velocity, tb_vec3_cross (r->spin, offset));
  TbVec3 drag = drag_force (self, r->velocity);
  r->acceleration = tb_vec3_add_scaled (self->gravity, 1 / self->mass, drag);
  r->momentum = tb_vec3_cross (drag, offset);
  r->slip = tb_vec3 (r->velocity.x - self->radius * r->spin.y, r->velocity.y + self->radius * r->spin.x, 0);
  r->force = tb_vec3 (0, 0, 0);
  r->coefficient = r->film_on_lane = r->rubbed = 0;
}

void
dynamics_rates (Dynamics *self, TbPhase phase, const Point *point, double film_on_ball, Rates *rates)
{
  self->evaluations++;
  rates->film_on_ball = film_on_ball;
  switch (phase)
    {
    case TB_PHASE_SLIDE:
      slide_rates (self, point, film_on_ball, rates);
      break;
    case TB_PHASE_ROLL:
      roll_rates (self, point, film_on_ball, rates);
      break;
    default:
      flight_rates (self, point, rates);
    }
  rates->turned = tb_vec3_length (rates->spin);
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

static inline void
turn (Point *point, const Point *start, TbVec3 rotation)
{
  point->attitude = tb_quat_multiply (tb_quat_from_rotation (rotation), start->attitude);
}

static inline double
read_ball (const BallFilm *ball, const Point *point)
{
  return ball ? ball_film_read (ball, point->attitude, point->time) : 0;
}

/* (a + 2 b + 2 c + d) / 6 */
static inline TbVec3
simpson (TbVec3 a, TbVec3 b, TbVec3 c, TbVec3 d)
{
  return tb_vec3 ((a.x + 2 * (b.x + c.x) + d.x) / 6, (a.y + 2 * (b.y + c.y) + d.y) / 6,
                  (a.z + 2 * (b.z + c.z) + d.z) / 6);
}

void
dynamics_step (Dynamics *self,
               TbPhase phase,
               const Point *start,
               const Rates *rates,
               const BallFilm *ball,
               double h,
               Point *end)
{
  Rates k2, k3, k4;
  Point stage;
  /* Where neither the equations nor the ball's film ask for the attitude, it is needed at the end only. */
  bool attitude = ball || phase != TB_PHASE_SLIDE || !self->equal_moments || !self->balanced;
  TbVec3 o1 = rates->spin, o2, o3, o4, half;

  half = tb_vec3_scale (o1, 0.5 * h);
  point_add (start, 0.5 * h, rates, &stage);
  if (attitude)
    turn (&stage, start, half);
  double film_half = read_ball (ball, &stage);
  dynamics_rates (self, phase, &stage, film_half, &k2);
  o2 = rotation_rate (half, k2.spin);

  half = tb_vec3_scale (o2, 0.5 * h);
  point_add (start, 0.5 * h, &k2, &stage);
  if (attitude)
    turn (&stage, start, half);
  dynamics_rates (self, phase, &stage, film_half, &k3);
  o3 = rotation_rate (half, k3.spin);

  half = tb_vec3_scale (o3, h);
  point_add (start, h, &k3, &stage);
  if (attitude)
    turn (&stage, start, half);
  dynamics_rates (self, phase, &stage, read_ball (ball, &stage), &k4);
  o4 = rotation_rate (half, k4.spin);

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
  if (self->equal_moments)
    *spin = tb_vec3_scale (rates->momentum, self->inverse_moment.x);
  else
    {
      TbMat3 m = tb_quat_to_mat3 (point->attitude);
      *spin = apply_moment (&m, self->inverse_moment,
                            tb_vec3_sub (rates->momentum, tb_vec3_cross (rates->spin, point->momentum)));
    }
  *centre = rates->acceleration;
  if (!self->balanced)
    {
      TbVec3 offset = tb_quat_rotate (point->attitude, self->offset);
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
contact_mobility (const Dynamics *self, const TbMat3 *attitude, TbVec3 lever)
{
  TbMat3 mobility;
  const TbVec3 axes[3] = { { 1, 0, 0 }, { 0, 1, 0 }, { 0, 0, 1 } };
  for (int i = 0; i < 3; i++)
    {
      TbVec3 spin = apply_moment (attitude, self->inverse_moment, tb_vec3_cross (lever, axes[i]));
      mobility.row[i] = tb_vec3_add_scaled (tb_vec3_cross (spin, lever), 1 / self->mass, axes[i]);
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

void
dynamics_land (Dynamics *self, Point *point, double film_on_ball, bool *again)
{
  TbMat3 m = tb_quat_to_mat3 (point->attitude);
  TbVec3 offset = tb_mat3_apply (&m, self->offset);
  TbVec3 lever = { -offset.x, -offset.y, -self->radius - offset.z };
  TbVec3 spin = dynamics_spin (self, point);
  TbVec3 contact = tb_vec3_add (point->velocity, tb_vec3_cross (spin, lever));
  double fall = fmax (-contact.z, 0), rise = self->bounce * fall;
  *again = rise >= LEAST_BOUNCE;
  if (!*again)
    rise = 0;
  double load = self->landing_time > 0 ? 1 + fall / (-self->gravity.z * self->landing_time) : 1, film;
  double coefficient = coefficient_at (self, point->position, film_on_ball, load, &film);
  TbVec3 slip = { contact.x, contact.y, 0 };
  TbMat3 mobility = contact_mobility (self, &m, lever);
  TbVec3 impulse = landing_impulse (&mobility, slip, coefficient, fall, rise);
  TbVec3 change = tb_mat3_apply (&mobility, impulse);

  point->velocity = tb_vec3_add_scaled (point->velocity, 1 / self->mass, impulse);
  point->momentum = tb_vec3_add (point->momentum, tb_vec3_cross (lever, impulse));
  point->position.z = self->radius;
  point->rubbed -= impulse.x * (slip.x + 0.5 * change.x) + impulse.y * (slip.y + 0.5 * change.y);
}

void
dynamics_begin_roll (const Dynamics *self, Point *point)
{
  TbMat3 m = tb_quat_to_mat3 (point->attitude);
  TbVec3 offset = tb_mat3_apply (&m, self->offset);
  TbVec3 lever = { -offset.x, -offset.y, -self->radius - offset.z };
  /* Angular momentum about the contact: L − lever × m v. */
  TbVec3 about = tb_vec3_sub (point->momentum, tb_vec3_scale (tb_vec3_cross (lever, point->velocity), self->mass));
  TbMat3 inertia = inertia_about (&m, self->moment, self->mass, lever);
  point->momentum = tb_mat3_solve_spd (&inertia, about);
}

void
dynamics_end_roll (const Dynamics *self, Point *point)
{
  TbMat3 m = tb_quat_to_mat3 (point->attitude);
  TbVec3 offset = tb_mat3_apply (&m, self->offset), spin = point->momentum;
  TbVec3 lever = { -offset.x, -offset.y, -self->radius - offset.z };
  point->velocity = tb_vec3_cross (lever, spin); /* ω × (−lever) */
  point->momentum = apply_moment (&m, self->moment, spin);
}
