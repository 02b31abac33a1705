/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "reference-model.h"

#include <string.h>

/* What the tests want; a benchmark may ask for less. */
#define LEAST_BOUNCE 1e-5
#define FIRST_SLIP 1e-6
/* Spin under which rolling resistance and pivoting fade out, rad/s, as core has it. */
#define FADE_SPIN 0.1
/* Slip that is over, m/s. */
#define LAST_SLIP 1e-9

/* A rotation; rows. */
typedef struct Matrix
{
  double at[3][3];
} Matrix;

/* What a state means, worked out once. */
typedef struct Pose
{
  Matrix turn;       /* body to lane */
  double offset[3];  /* lane frame */
  double arm[3];     /* contact point from the centre of mass */
  double spin[3];
  double spin_body[3];
} Pose;

static void
cross (const double a[3], const double b[3], double c[3])
{
  c[0] = a[1] * b[2] - a[2] * b[1];
  c[1] = a[2] * b[0] - a[0] * b[2];
  c[2] = a[0] * b[1] - a[1] * b[0];
}

static void
to_lane (const Matrix *m, const double v[3], double out[3])
{
  for (int i = 0; i < 3; i++)
    out[i] = m->at[i][0] * v[0] + m->at[i][1] * v[1] + m->at[i][2] * v[2];
}

static void
to_body (const Matrix *m, const double v[3], double out[3])
{
  for (int i = 0; i < 3; i++)
    out[i] = m->at[0][i] * v[0] + m->at[1][i] * v[1] + m->at[2][i] * v[2];
}

static void
matrix_of (const double q[4], Matrix *m)
{
  double s = 2.0 / (q[0] * q[0] + q[1] * q[1] + q[2] * q[2] + q[3] * q[3]);
  double w = q[0], x = q[1], y = q[2], z = q[3];

  m->at[0][0] = 1 - s * (y * y + z * z);
  m->at[0][1] = s * (x * y - w * z);
  m->at[0][2] = s * (x * z + w * y);
  m->at[1][0] = s * (x * y + w * z);
  m->at[1][1] = 1 - s * (x * x + z * z);
  m->at[1][2] = s * (y * z - w * x);
  m->at[2][0] = s * (x * z - w * y);
  m->at[2][1] = s * (y * z + w * x);
  m->at[2][2] = 1 - s * (x * x + y * y);
}

static void
pose_of (const RefModel *model, const double state[REF_SIZE], Pose *pose)
{
  matrix_of (state + REF_ATTITUDE, &pose->turn);
  to_lane (&pose->turn, model->offset, pose->offset);
  memcpy (pose->spin_body, state + REF_SPIN, sizeof pose->spin_body);
  to_lane (&pose->turn, pose->spin_body, pose->spin);
  pose->arm[0] = -pose->offset[0];
  pose->arm[1] = -pose->offset[1];
  pose->arm[2] = -pose->offset[2] - model->radius;
}

/* Angular acceleration (lane frame) by a moment about the centre of mass. */
static void
angular_response (const RefModel *model, const Pose *pose, const double moment[3], double out[3])
{
  double body[3];

  to_body (&pose->turn, moment, body);
  for (int i = 0; i < 3; i++)
    body[i] /= model->moment[i];
  to_lane (&pose->turn, body, out);
}

/* Acceleration of the contact point by a force on it. */
static void
contact_response (const RefModel *model, const Pose *pose, const double force[3], double out[3])
{
  double moment[3], angular[3];

  cross (pose->arm, force, moment);
  angular_response (model, pose, moment, angular);
  cross (angular, pose->arm, out);
  for (int i = 0; i < 3; i++)
    out[i] += force[i] / model->mass;
}

static void
weights_of (double f, double w[4])
{
  double g = 1.0 - f;

  w[0] = g * g * g / 6.0;
  w[1] = (4.0 - 3.0 * f * f * (2.0 - f)) / 6.0;
  w[2] = (4.0 - 3.0 * g * g * (2.0 - g)) / 6.0;
  w[3] = f * f * f / 6.0;
}

/* Cell in front of a place, and the weights of it, the one before and the two after; the place is held to the grid. */
static int
split (double place, int count, double w[4])
{
  double t = fmin (fmax (place, 0.0), count) - 0.5;
  double cell = fmin (floor (t), count - 1);

  weights_of (t - cell, w);
  return (int)cell;
}

static double
film_at (const RefModel *model, double x, double y)
{
  double across[4], along[4], sum = 0.0;
  int column = split ((TB_LANE_HALF_WIDTH - (model->mirrored ? -x : x)) / TB_BOARD_WIDTH, TB_OIL_COLUMNS, across);
  int row = split (y / TB_OIL_ROW_LENGTH, TB_OIL_ROWS, along);

  for (int i = 0; i < 4; i++)
    {
      const double *cell = &model->film[row - 1 + i + REF_PAD][column - 1 + REF_PAD];

      sum += along[i] * (across[0] * cell[0] + across[1] * cell[1] + across[2] * cell[2] + across[3] * cell[3]);
    }
  return sum * model->oil_scale;
}

double
ref_model_coefficient (const RefModel *model, double x, double y, double load)
{
  double film, share, dry = model->dry_friction;

  if (model->film_scale == 0.0)
    return model->uniform;
  film = film_at (model, x, y);
  if (load != 1.0)
    {
      film /= sqrt (load);
      dry /= cbrt (load);
    }
  share = 1.0 + film / (model->roughness * model->film_scale);
  return model->film_friction + (dry - model->film_friction) / (share * share);
}

void
ref_model_slip (const RefModel *model, const double state[REF_SIZE], double slip[2])
{
  double spin[3];
  Matrix turn;

  matrix_of (state + REF_ATTITUDE, &turn);
  to_lane (&turn, state + REF_SPIN, spin);
  slip[0] = state[REF_VELOCITY] - model->radius * spin[1];
  slip[1] = state[REF_VELOCITY + 1] + model->radius * spin[0];
}

void
ref_model_note_slip (RefModel *model, const double state[REF_SIZE])
{
  double slip[2], size;

  ref_model_slip (model, state, slip);
  size = hypot (slip[0], slip[1]);
  if (size > 0.0)
    {
      model->along[0] = slip[0] / size;
      model->along[1] = slip[1] / size;
    }
}

/* Moment per newton of normal force: rolling resistance against the level spin, and friction against pivoting on the
 * spot, 3π/16 of its radius when the ball spins in place (K. L. Johnson, "Contact Mechanics", 1985), less when it slips. */
static void
resisting_moment (const RefModel *model, const double spin[3], double slip, double mu, double moment[3])
{
  double level = sqrt (spin[0] * spin[0] + spin[1] * spin[1] + FADE_SPIN * FADE_SPIN);
  double upright = sqrt (spin[2] * spin[2] + FADE_SPIN * FADE_SPIN);

  moment[0] = -model->rolling_resistance * model->radius * spin[0] / level;
  moment[1] = -model->rolling_resistance * model->radius * spin[1] / level;
  moment[2] = 0.0;
  if (model->spot > 0.0)
    moment[2] = -3.0 * TB_PI / 16.0 * mu * model->spot * spin[2] * model->spot
                / (model->spot * upright + 15.0 * TB_PI / 16.0 * slip);
}

/* Contact force of a ball that slips: N (ẑ − μ û), N what keeps the centre at its height. */
static void
sliding_force (RefModel *model,
               const Pose *pose,
               const double state[REF_SIZE],
               const double free[3],
               double force[3],
               double moment[3])
{
  double slip[2] = { state[REF_VELOCITY] - model->radius * pose->spin[1],
                     state[REF_VELOCITY + 1] + model->radius * pose->spin[0] };
  double size = hypot (slip[0], slip[1]), response[3], resisting[3], swing[3], normal;
  double mu = ref_model_coefficient (model, state[0], state[1], 1.0);

  if (slip[0] * model->along[0] + slip[1] * model->along[1] < 0.0)
    size = -size;
  force[0] = size != 0.0 ? -mu * slip[0] / size : -mu * model->along[0];
  force[1] = size != 0.0 ? -mu * slip[1] / size : -mu * model->along[1];
  force[2] = 1.0;
  contact_response (model, pose, force, response);
  resisting_moment (model, pose->spin, fabs (size), mu, moment);
  angular_response (model, pose, moment, resisting);
  cross (resisting, pose->arm, swing);
  normal = -free[2] / (response[2] + swing[2]);
  for (int i = 0; i < 3; i++)
    {
      force[i] *= normal;
      moment[i] *= normal;
    }
}

/* Solves a 3×3 system by Cramer's rule; the rows of the matrix are the system's columns. */
static void
solve (const Matrix *columns, const double right[3], double out[3])
{
  const double *first = columns->at[0];
  double c[3], determinant;

  cross (columns->at[1], columns->at[2], c);
  determinant = first[0] * c[0] + first[1] * c[1] + first[2] * c[2];
  for (int i = 0; i < 3; i++)
    {
      const double *a = columns->at[(i + 1) % 3], *b = columns->at[(i + 2) % 3];

      cross (a, b, c);
      out[i] = (right[0] * c[0] + right[1] * c[1] + right[2] * c[2]) / determinant;
    }
}

/* Contact force of a ball that does not slip: the contact point does not accelerate. */
static void
rolling_force (const RefModel *model, const Pose *pose, const double free[3], double force[3])
{
  double right[3] = { -free[0], -free[1], -free[2] };
  Matrix columns;

  for (int i = 0; i < 3; i++)
    {
      double unit[3] = { i == 0, i == 1, i == 2 };

      contact_response (model, pose, unit, columns.at[i]);
    }
  solve (&columns, right, force);
}

/* What happens to the ball without the contact's force. */
typedef struct Free
{
  double acceleration[3]; /* of the centre of mass */
  double angular[3];      /* lane frame */
  double whirl[3];        /* ω × (ω × offset) */
  double contact[3];      /* acceleration of the contact point */
} Free;

/* Moment (lane frame) about the centre of mass, of what is neither weight nor the contact's force. While the ball
 * slips, what resists its spin is left to the contact. */
static void
other_moments (const RefModel *model,
               const Pose *pose,
               const double state[REF_SIZE],
               const double drag[3],
               double moment[3])
{
  double resisting[3], mu;

  cross (drag, pose->offset, moment);
  if (model->mode != REF_ROLL || (model->spot == 0.0 && model->rolling_resistance == 0.0))
    return;
  mu = ref_model_coefficient (model, state[0], state[1], 1.0);
  resisting_moment (model, pose->spin, 0.0, mu, resisting);
  for (int i = 0; i < 3; i++)
    moment[i] += model->mass * model->gravity * resisting[i];
}

static void
free_motion (const RefModel *model, const Pose *pose, const double state[REF_SIZE], Free *out)
{
  const double *v = state + REF_VELOCITY, *w = pose->spin_body;
  double speed = sqrt (v[0] * v[0] + v[1] * v[1] + v[2] * v[2]);
  double momentum[3], turning[3], drag[3], moment[3], other[3], body[3], swing[3];

  for (int i = 0; i < 3; i++)
    {
      momentum[i] = model->moment[i] * w[i];
      drag[i] = -model->drag * speed * v[i];
      out->acceleration[i] = drag[i] / model->mass;
    }
  out->acceleration[0] -= model->gravity * model->slope;
  out->acceleration[2] -= model->gravity;
  cross (momentum, w, turning);
  other_moments (model, pose, state, drag, moment);
  to_body (&pose->turn, moment, other);
  for (int i = 0; i < 3; i++)
    body[i] = (turning[i] + other[i]) / model->moment[i];
  to_lane (&pose->turn, body, out->angular);
  cross (pose->spin, pose->offset, swing);
  cross (pose->spin, swing, out->whirl);
  cross (out->angular, pose->arm, out->contact);
  for (int i = 0; i < 3; i++)
    out->contact[i] += out->acceleration[i] - out->whirl[i];
}

static void
contact_force (RefModel *model,
               const Pose *pose,
               const double state[REF_SIZE],
               const Free *free,
               double force[3],
               double moment[3])
{
  memset (force, 0, 3 * sizeof (double));
  memset (moment, 0, 3 * sizeof (double));
  if (model->mode == REF_SLIDE)
    sliding_force (model, pose, state, free->contact, force, moment);
  else if (model->mode == REF_ROLL)
    rolling_force (model, pose, free->contact, force);
}

void
ref_model_derivative (RefModel *model, const double state[REF_SIZE], double derivative[REF_SIZE])
{
  const double *q = state + REF_ATTITUDE, *w = state + REF_SPIN;
  double force[3], moment[3], resisting[3], angular[3], swing[3], body[3];
  double *dq = derivative + REF_ATTITUDE;
  Pose pose;
  Free free;

  model->evaluations++;
  pose_of (model, state, &pose);
  free_motion (model, &pose, state, &free);
  contact_force (model, &pose, state, &free, force, resisting);
  cross (pose.arm, force, moment);
  for (int i = 0; i < 3; i++)
    moment[i] += resisting[i];
  angular_response (model, &pose, moment, angular);
  for (int i = 0; i < 3; i++)
    angular[i] += free.angular[i];
  cross (angular, pose.offset, swing);
  to_body (&pose.turn, angular, body);
  for (int i = 0; i < 3; i++)
    {
      derivative[REF_POSITION + i] = state[REF_VELOCITY + i];
      derivative[REF_VELOCITY + i] = free.acceleration[i] + force[i] / model->mass - swing[i] - free.whirl[i];
      derivative[REF_SPIN + i] = body[i];
    }
  dq[0] = -0.5 * (q[1] * w[0] + q[2] * w[1] + q[3] * w[2]);
  dq[1] = 0.5 * (q[0] * w[0] + q[2] * w[2] - q[3] * w[1]);
  dq[2] = 0.5 * (q[0] * w[1] + q[3] * w[0] - q[1] * w[2]);
  dq[3] = 0.5 * (q[0] * w[2] + q[1] * w[1] - q[2] * w[0]);
}

double
ref_model_event (RefModel *model, const double state[REF_SIZE])
{
  double slip[2], force[3];
  Pose pose;
  Free free;

  if (model->mode == REF_FLIGHT)
    return state[2] - model->radius;
  ref_model_slip (model, state, slip);
  if (model->mode == REF_SLIDE)
    return slip[0] * model->along[0] + slip[1] * model->along[1] - LAST_SLIP;
  pose_of (model, state, &pose);
  free_motion (model, &pose, state, &free);
  rolling_force (model, &pose, free.contact, force);
  return ref_model_coefficient (model, state[0], state[1], 1.0) * force[2] - hypot (force[0], force[1]);
}

/* An impulse on the contact point. */
static void
strike (const RefModel *model, const Pose *pose, const double impulse[3], double state[REF_SIZE])
{
  double moment[3], angular[3], swing[3], body[3];

  cross (pose->arm, impulse, moment);
  angular_response (model, pose, moment, angular);
  cross (angular, pose->offset, swing);
  to_body (&pose->turn, angular, body);
  for (int i = 0; i < 3; i++)
    {
      state[REF_VELOCITY + i] += impulse[i] / model->mass - swing[i];
      state[REF_SPIN + i] += body[i];
    }
}

/* The impulse that changes the contact point's velocity by so much. */
static void
strike_to (const RefModel *model, const double change[3], double state[REF_SIZE])
{
  double impulse[3], back[3] = { -change[0], -change[1], -change[2] };
  Pose pose;

  pose_of (model, state, &pose);
  rolling_force (model, &pose, back, impulse);
  strike (model, &pose, impulse, state);
}

static void
stop_slip (RefModel *model, double state[REF_SIZE])
{
  double slip[2];

  ref_model_slip (model, state, slip);
  strike_to (model, (double[3]){ -slip[0], -slip[1], 0.0 }, state);
  model->mode = REF_ROLL;
}

/* Whether friction can hold the ball without slip. */
static bool
holds (RefModel *model, const double state[REF_SIZE])
{
  model->mode = REF_ROLL;
  return ref_model_event (model, state) >= 0.0;
}

static void
let_go (RefModel *model, double state[REF_SIZE])
{
  double force[3], size;
  Pose pose;
  Free free;

  pose_of (model, state, &pose);
  free_motion (model, &pose, state, &free);
  rolling_force (model, &pose, free.contact, force);
  size = hypot (force[0], force[1]);
  /* It slips the way the lane would have had to hold it back from. */
  model->along[0] = -force[0] / size;
  model->along[1] = -force[1] / size;
  strike_to (model,
             (double[3]){ model->first_slip * model->along[0], model->first_slip * model->along[1], 0.0 },
             state);
  model->mode = REF_SLIDE;
}

static void
after_landing (RefModel *model, double state[REF_SIZE])
{
  double slip[2];

  if (state[REF_VELOCITY + 2] > 0.0)
    return;
  state[2] = model->radius;
  ref_model_slip (model, state, slip);
  if (hypot (slip[0], slip[1]) > LAST_SLIP)
    model->mode = REF_SLIDE;
  else if (!holds (model, state))
    let_go (model, state);
  ref_model_note_slip (model, state);
}

/* Friction up to what stops the slip; the normal speed comes back e times, or not at all after the last bounce. */
static void
land (RefModel *model, double state[REF_SIZE])
{
  double fall = -state[REF_VELOCITY + 2];
  double load = model->squeeze ? 1.0 + fall / (model->gravity * model->landing_time) : 1.0;
  double mu = ref_model_coefficient (model, state[0], state[1], load);
  double rise = model->restitution * fall >= model->least_bounce ? model->restitution * fall : 0.0;
  double slip[2], after[2], size, impulse[3], response[3], struck[REF_SIZE];
  Pose pose;

  ref_model_slip (model, state, slip);
  size = hypot (slip[0], slip[1]);
  pose_of (model, state, &pose);
  impulse[0] = size > 0.0 ? -mu * slip[0] / size : 0.0;
  impulse[1] = size > 0.0 ? -mu * slip[1] / size : 0.0;
  impulse[2] = 1.0;
  contact_response (model, &pose, impulse, response);
  for (int i = 0; i < 3; i++)
    impulse[i] *= (fall + rise) / response[2];
  memcpy (struck, state, sizeof struck);
  strike (model, &pose, impulse, struck);
  ref_model_slip (model, struck, after);
  if (after[0] * slip[0] + after[1] * slip[1] > 0.0)
    memcpy (state, struck, sizeof struck);
  else
    strike_to (model, (double[3]){ -slip[0], -slip[1], fall + rise }, state);
  state[REF_VELOCITY + 2] = rise;
  after_landing (model, state);
}

void
ref_model_switch (RefModel *model, double state[REF_SIZE])
{
  if (model->mode == REF_FLIGHT)
    land (model, state);
  else if (model->mode == REF_SLIDE)
    {
      stop_slip (model, state);
      if (!holds (model, state))
        let_go (model, state);
    }
  else
    let_go (model, state);
}

/* Cells of the film and their images behind the edges. */
static int
mirror_index (int i, int count)
{
  if (i < 0)
    return -1 - i;
  return i < count ? i : 2 * count - 1 - i;
}

static void
copy_film (RefModel *model, const TbFriction *friction)
{
  for (int row = -REF_PAD; row < TB_OIL_ROWS + REF_PAD; row++)
    for (int column = -REF_PAD; column < TB_OIL_COLUMNS + REF_PAD; column++)
      model->film[row + REF_PAD][column + REF_PAD] = tb_oil_cell (friction->oil,
                                                                  mirror_index (row, TB_OIL_ROWS),
                                                                  mirror_index (column, TB_OIL_COLUMNS));
  model->oil_scale = friction->oil_scale;
  model->mirrored = friction->mirrored;
  model->film_friction = friction->law.film_friction;
  model->dry_friction = friction->cover.dry_friction;
  model->film_scale = friction->cover.film_scale;
  model->roughness = friction->cover.roughness;
}

static void
copy_constants (RefModel *model, const TbMotion *motion)
{
  const TbAssumed *assumed = &motion->assumed;
  const TbOptions *options = &motion->options;
  const TbBody *body = &motion->body;

  model->mass = body->mass;
  model->radius = body->radius;
  model->gravity = options->gravity > 0.0 ? options->gravity : TB_STANDARD_GRAVITY;
  memcpy (model->moment, (double[3]){ body->moment.x, body->moment.y, body->moment.z }, sizeof model->moment);
  memcpy (model->offset, (double[3]){ body->offset.x, body->offset.y, body->offset.z }, sizeof model->offset);
  model->restitution = assumed->restitution;
  model->landing_time = assumed->landing_time;
  model->squeeze = !options->no_landing_squeeze;
  model->least_bounce = LEAST_BOUNCE;
  model->first_slip = FIRST_SLIP;
  if (!options->no_air_drag)
    model->drag = 0.5 * assumed->air_density * assumed->drag_coefficient * TB_PI * body->radius * body->radius;
  if (!options->no_rolling_resistance)
    model->rolling_resistance = assumed->rolling_resistance;
  if (!options->no_pivot_friction)
    model->spot = assumed->contact_radius;
  if (!options->no_cross_tilt)
    model->slope = motion->cross_slope;
}

static void
copy_state (const RefModel *model, const TbMotion *motion, double state[REF_SIZE])
{
  const TbState *start = &motion->state;
  TbVec3 momentum = start->angular_momentum, v = start->velocity, p = start->position;
  double swing[3];
  Pose pose;

  memcpy (state + REF_ATTITUDE,
          (double[4]){ start->attitude.w, start->attitude.x, start->attitude.y, start->attitude.z },
          4 * sizeof (double));
  matrix_of (state + REF_ATTITUDE, &pose.turn);
  to_body (&pose.turn, (double[3]){ momentum.x, momentum.y, momentum.z }, state + REF_SPIN);
  for (int i = 0; i < 3; i++)
    state[REF_SPIN + i] /= model->moment[i];
  pose_of (model, state, &pose);
  cross (pose.spin, pose.offset, swing);
  memcpy (state + REF_POSITION, (double[3]){ p.x, p.y, p.z }, 3 * sizeof (double));
  memcpy (state + REF_VELOCITY,
          (double[3]){ v.x - swing[0], v.y - swing[1], v.z - swing[2] },
          3 * sizeof (double));
}

void
ref_model_init (RefModel *model, const TbMotion *motion, double state[REF_SIZE])
{
  memset (model, 0, sizeof *model);
  copy_constants (model, motion);
  if (motion->friction->kind == TB_FRICTION_FILM)
    copy_film (model, motion->friction);
  else
    model->uniform = motion->friction->zones->at_start[0];
  copy_state (model, motion, state);
  model->mode = REF_FLIGHT;
  if (state[2] <= model->radius)
    {
      state[REF_VELOCITY + 2] = 0.0;
      after_landing (model, state);
    }
}
