/* What the parts of the reference model share; what every evaluation runs through is inline, as a solver's
 * user would have it.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <string.h>
#include "reference-model.h"

/* A rotation; rows. */
typedef struct Matrix
{
  double at[3][3];
} Matrix;

/* What a state means, worked out once. */
typedef struct Pose
{
  Matrix turn;      /* body to lane */
  double offset[3]; /* lane frame */
  double arm[3];    /* contact point from the centre of mass */
  double spin[3];
  double spin_body[3];
} Pose;

/* What happens to the ball without the contact's force. */
typedef struct Free
{
  double acceleration[3]; /* of the centre of mass */
  double angular[3];      /* lane frame */
  double whirl[3];        /* ω × (ω × offset) */
  double contact[3];      /* acceleration of the contact point */
} Free;

/* Weights of a uniform cubic B-spline for the part f of a cell, 0 … 1: one before it, its two ends, one after. */
static inline void
ref_spline_weights (double f, double w[4])
{
  double g = 1.0 - f;

  w[0] = g * g * g / 6.0;
  w[1] = (4.0 - 3.0 * f * f * (2.0 - f)) / 6.0;
  w[2] = (4.0 - 3.0 * g * g * (2.0 - g)) / 6.0;
  w[3] = f * f * f / 6.0;
}

static inline void
cross (const double a[3], const double b[3], double c[3])
{
  c[0] = a[1] * b[2] - a[2] * b[1];
  c[1] = a[2] * b[0] - a[0] * b[2];
  c[2] = a[0] * b[1] - a[1] * b[0];
}

/* A body vector in the lane's frame, and back. */
static inline void
ref_to_lane (const Matrix *m, const double v[3], double out[3])
{
  for (int i = 0; i < 3; i++)
    out[i] = m->at[i][0] * v[0] + m->at[i][1] * v[1] + m->at[i][2] * v[2];
}

static inline void
ref_to_body (const Matrix *m, const double v[3], double out[3])
{
  for (int i = 0; i < 3; i++)
    out[i] = m->at[0][i] * v[0] + m->at[1][i] * v[1] + m->at[2][i] * v[2];
}

static inline void
ref_matrix (const double q[4], Matrix *m)
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

static inline void
ref_pose (const RefModel *model, const double state[REF_SIZE], Pose *pose)
{
  ref_matrix (state + REF_ATTITUDE, &pose->turn);
  ref_to_lane (&pose->turn, model->offset, pose->offset);
  memcpy (pose->spin_body, state + REF_SPIN, sizeof pose->spin_body);
  ref_to_lane (&pose->turn, pose->spin_body, pose->spin);
  pose->arm[0] = -pose->offset[0];
  pose->arm[1] = -pose->offset[1];
  pose->arm[2] = -pose->offset[2] - model->radius;
}

/* Angular acceleration (lane frame) by a moment about the centre of mass. */
static inline void
ref_angular_response (const RefModel *model, const Pose *pose, const double moment[3], double out[3])
{
  double body[3];

  ref_to_body (&pose->turn, moment, body);
  for (int i = 0; i < 3; i++)
    body[i] /= model->moment[i];
  ref_to_lane (&pose->turn, body, out);
}

/* Acceleration of the contact point by a force on it. */
static inline void
ref_contact_response (const RefModel *model, const Pose *pose, const double force[3], double out[3])
{
  double moment[3], angular[3];

  cross (pose->arm, force, moment);
  ref_angular_response (model, pose, moment, angular);
  cross (angular, pose->arm, out);
  for (int i = 0; i < 3; i++)
    out[i] += force[i] / model->mass;
}

void ref_free_motion (const RefModel *model, const Pose *pose, const double state[REF_SIZE], Free *out);
/* Contact force of a ball that does not slip: the contact point, which would accelerate so, does not. */
void ref_rolling_force (const RefModel *model, const Pose *pose, const double free[3], double force[3]);
/* The cover and the cells of the film. */
void ref_copy_film (RefModel *model, const TbFriction *friction);
/* What follows from where a state is: flight, slide or roll. */
void ref_choose_mode (RefModel *model, double state[REF_SIZE]);
