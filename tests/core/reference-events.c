/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "reference-internal.h"

/* Slip that is over, m/s. */
#define LAST_SLIP 1e-9

void
ref_model_slip (const RefModel *model, const double state[REF_SIZE], double slip[2])
{
  Pose pose;

  ref_pose (model, state, &pose);
  slip[0] = state[REF_VELOCITY] - model->radius * pose.spin[1];
  slip[1] = state[REF_VELOCITY + 1] + model->radius * pose.spin[0];
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
  ref_pose (model, state, &pose);
  ref_free_motion (model, &pose, state, &free);
  ref_rolling_force (model, &pose, free.contact, force);
  return ref_model_coefficient (model, state, 1.0) * force[2] - hypot (force[0], force[1]);
}

/* An impulse on the contact point. */
static void
strike (const RefModel *model, const Pose *pose, const double impulse[3], double state[REF_SIZE])
{
  double moment[3], angular[3], swing[3], body[3];

  cross (pose->arm, impulse, moment);
  ref_angular_response (model, pose, moment, angular);
  cross (angular, pose->offset, swing);
  ref_to_body (&pose->turn, angular, body);
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

  ref_pose (model, state, &pose);
  ref_rolling_force (model, &pose, back, impulse);
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

  ref_pose (model, state, &pose);
  ref_free_motion (model, &pose, state, &free);
  ref_rolling_force (model, &pose, free.contact, force);
  size = hypot (force[0], force[1]);
  /* It slips the way the lane would have had to hold it back from. */
  model->along[0] = -force[0] / size;
  model->along[1] = -force[1] / size;
  strike_to (model,
             (double[3]){ model->first_slip * model->along[0], model->first_slip * model->along[1], 0.0 },
             state);
  model->mode = REF_SLIDE;
}

void
ref_choose_mode (RefModel *model, double state[REF_SIZE])
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

/* Friction up to what stops the slip; the normal speed comes back e times, or not at all after the last
 * bounce. */
static void
land (RefModel *model, double state[REF_SIZE])
{
  double fall = -state[REF_VELOCITY + 2];
  double load = model->squeeze ? 1.0 + fall / (model->gravity * model->landing_time) : 1.0;
  double mu = ref_model_coefficient (model, state, load);
  double rise = model->restitution * fall >= model->least_bounce ? model->restitution * fall : 0.0;
  double slip[2], after[2], size, impulse[3], response[3], struck[REF_SIZE];
  Pose pose;

  ref_model_slip (model, state, slip);
  size = hypot (slip[0], slip[1]);
  ref_pose (model, state, &pose);
  impulse[0] = size > 0.0 ? -mu * slip[0] / size : 0.0;
  impulse[1] = size > 0.0 ? -mu * slip[1] / size : 0.0;
  impulse[2] = 1.0;
  ref_contact_response (model, &pose, impulse, response);
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
  ref_choose_mode (model, state);
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
