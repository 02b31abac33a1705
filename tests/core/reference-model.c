/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "reference-internal.h"

/* What the tests want; a benchmark may ask for less. */
#define LEAST_BOUNCE 1e-5
#define FIRST_SLIP 1e-6
/* Spin under which rolling resistance and pivoting fade out, rad/s, as core has it. */
#define FADE_SPIN 0.1

/* Moment per newton of normal force: rolling resistance against the level spin, and friction against pivoting
 * on the spot, 3π/16 of its radius when the ball spins in place (K. L. Johnson, "Contact Mechanics", 1985),
 * less when it slips. */
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
  double mu = ref_model_coefficient (model, state, 1.0);

  if (slip[0] * model->along[0] + slip[1] * model->along[1] < 0.0)
    size = -size;
  force[0] = size != 0.0 ? -mu * slip[0] / size : -mu * model->along[0];
  force[1] = size != 0.0 ? -mu * slip[1] / size : -mu * model->along[1];
  force[2] = 1.0;
  ref_contact_response (model, pose, force, response);
  resisting_moment (model, pose->spin, fabs (size), mu, moment);
  ref_angular_response (model, pose, moment, resisting);
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
void
ref_rolling_force (const RefModel *model, const Pose *pose, const double free[3], double force[3])
{
  double right[3] = { -free[0], -free[1], -free[2] };
  Matrix columns;

  for (int i = 0; i < 3; i++)
    {
      double unit[3] = { i == 0, i == 1, i == 2 };

      ref_contact_response (model, pose, unit, columns.at[i]);
    }
  solve (&columns, right, force);
}

/* Moment (lane frame) about the centre of mass, of what is neither weight nor the contact's force. While the
 * ball slips, what resists its spin is left to the contact. */
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
  mu = ref_model_coefficient (model, state, 1.0);
  resisting_moment (model, pose->spin, 0.0, mu, resisting);
  for (int i = 0; i < 3; i++)
    moment[i] += model->mass * model->gravity * resisting[i];
}

void
ref_free_motion (const RefModel *model, const Pose *pose, const double state[REF_SIZE], Free *out)
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
  ref_to_body (&pose->turn, moment, other);
  for (int i = 0; i < 3; i++)
    body[i] = (turning[i] + other[i]) / model->moment[i];
  ref_to_lane (&pose->turn, body, out->angular);
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
    ref_rolling_force (model, pose, free->contact, force);
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
  ref_pose (model, state, &pose);
  ref_free_motion (model, &pose, state, &free);
  contact_force (model, &pose, state, &free, force, resisting);
  cross (pose.arm, force, moment);
  for (int i = 0; i < 3; i++)
    moment[i] += resisting[i];
  ref_angular_response (model, &pose, moment, angular);
  for (int i = 0; i < 3; i++)
    angular[i] += free.angular[i];
  cross (angular, pose.offset, swing);
  ref_to_body (&pose.turn, angular, body);
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
    model->drag
        = 0.5 * assumed->air_density * assumed->drag_coefficient * TB_PI * body->radius * body->radius;
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
  ref_matrix (state + REF_ATTITUDE, &pose.turn);
  ref_to_body (&pose.turn, (double[3]){ momentum.x, momentum.y, momentum.z }, state + REF_SPIN);
  for (int i = 0; i < 3; i++)
    state[REF_SPIN + i] /= model->moment[i];
  ref_pose (model, state, &pose);
  cross (pose.spin, pose.offset, swing);
  memcpy (state + REF_POSITION, (double[3]){ p.x, p.y, p.z }, 3 * sizeof (double));
  memcpy (state + REF_VELOCITY, (double[3]){ v.x - swing[0], v.y - swing[1], v.z - swing[2] },
          3 * sizeof (double));
}

void
ref_model_init (RefModel *model, const TbMotion *motion, double state[REF_SIZE])
{
  memset (model, 0, sizeof *model);
  copy_constants (model, motion);
  if (motion->friction->kind == TB_FRICTION_FILM)
    ref_copy_film (model, motion->friction);
  else
    model->uniform = motion->friction->zones->at_start[0];
  copy_state (model, motion, state);
  model->mode = REF_FLIGHT;
  if (state[2] <= model->radius)
    {
      state[REF_VELOCITY + 2] = 0.0;
      ref_choose_mode (model, state);
    }
}
