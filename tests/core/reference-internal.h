/* What the parts of the reference model share.
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

static inline void
cross (const double a[3], const double b[3], double c[3])
{
  c[0] = a[1] * b[2] - a[2] * b[1];
  c[1] = a[2] * b[0] - a[0] * b[2];
  c[2] = a[0] * b[1] - a[1] * b[0];
}

/* A body vector in the lane's frame, and back. */
void ref_to_lane (const Matrix *turn, const double v[3], double out[3]);
void ref_to_body (const Matrix *turn, const double v[3], double out[3]);
void ref_pose (const RefModel *model, const double state[REF_SIZE], Pose *pose);
/* Angular acceleration (lane frame) by a moment about the centre of mass. */
void ref_angular_response (const RefModel *model, const Pose *pose, const double moment[3], double out[3]);
/* Acceleration of the contact point by a force on it. */
void ref_contact_response (const RefModel *model, const Pose *pose, const double force[3], double out[3]);
void ref_free_motion (const RefModel *model, const Pose *pose, const double state[REF_SIZE], Free *out);
/* Contact force of a ball that does not slip: the contact point, which would accelerate so, does not. */
void ref_rolling_force (const RefModel *model, const Pose *pose, const double free[3], double force[3]);
/* The cover and the cells of the film. */
void ref_copy_film (RefModel *model, const TbFriction *friction);
/* What follows from where a state is: flight, slide or roll. */
void ref_choose_mode (RefModel *model, double state[REF_SIZE]);
