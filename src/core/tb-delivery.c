/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "tb-delivery.h"

#include "tb-fields.h"
#include "tb-lane-geometry.h"

TbDelivery
tb_delivery_default (void)
{
  TbDelivery delivery;
  tb_field_reset_group (TB_GROUP_DELIVERY, &delivery);
  return delivery;
}

double
tb_delivery_actual_speed (const TbDelivery *delivery, const TbAssumed *assumed)
{
  return delivery->speed * (1 - assumed->grip_speed * (delivery->grip_pressure - TB_GRIP_NEUTRAL));
}

double
tb_delivery_actual_rev_rate (const TbDelivery *delivery, const TbAssumed *assumed)
{
  return delivery->rev_rate * (1 + assumed->grip_rev_rate * (delivery->grip_pressure - TB_GRIP_NEUTRAL));
}

double
tb_delivery_launch_x (const TbDelivery *delivery, double y)
{
  return delivery->laydown + (delivery->aim - delivery->laydown) * (y / TB_ARROWS_Y);
}

double
tb_delivery_launch_heading (const TbDelivery *delivery)
{
  return atan2 (delivery->laydown - delivery->aim, TB_ARROWS_Y);
}

TbVec3
tb_delivery_axis (const TbDelivery *delivery)
{
  double level = cos (delivery->axis_tilt);
  return tb_vec3 (-level * cos (delivery->axis_rotation), -level * sin (delivery->axis_rotation),
                  sin (delivery->axis_tilt));
}

/* The part of v across the unit vector axis, made a unit vector. */
static TbVec3
across (TbVec3 v, TbVec3 axis, TbVec3 fallback)
{
  return tb_vec3_unit (tb_vec3_add_scaled (v, -tb_vec3_dot (v, axis), axis), fallback);
}

/* Turns the ball about its spin axis until the grip is as far behind the ball as it can be. */
static TbQuat
release_attitude (const TbBody *body, TbVec3 axis)
{
  const TbVec3 behind = { 0, -1, 0 }, above = { 0, 0, 1 };
  TbVec3 fallback = across (above, axis, tb_vec3 (1, 0, 0));
  TbVec3 lane_second = across (behind, axis, fallback);
  TbVec3 any = fabs (body->pap.x) < 0.5 ? tb_vec3 (1, 0, 0) : tb_vec3 (0, 1, 0);
  TbVec3 ball_second = across (body->grip, body->pap, across (any, body->pap, any));
  TbMat3 lane = { { axis, lane_second, tb_vec3_cross (axis, lane_second) } };
  TbMat3 ball = { { body->pap, ball_second, tb_vec3_cross (body->pap, ball_second) } };
  /* Rows are the axes: laneᵀ takes the triad's coordinates to the lane, ball takes the body's to the triad. */
  TbMat3 turned = { { { lane.row[0].x, lane.row[1].x, lane.row[2].x },
                      { lane.row[0].y, lane.row[1].y, lane.row[2].y },
                      { lane.row[0].z, lane.row[1].z, lane.row[2].z } } };
  TbMat3 attitude = tb_mat3_multiply (&turned, &ball);
  return tb_quat_from_mat3 (&attitude);
}

TbState
tb_delivery_release (const TbDelivery *delivery, const TbBody *body, const TbAssumed *assumed)
{
  double speed = tb_delivery_actual_speed (delivery, assumed);
  double rev_rate = tb_delivery_actual_rev_rate (delivery, assumed);
  double slope = (delivery->aim - delivery->laydown) / TB_ARROWS_Y;
  double level = speed * cos (delivery->loft_angle), ahead = level / sqrt (1 + slope * slope);
  TbVec3 axis = tb_delivery_axis (delivery), spin = tb_vec3_scale (axis, rev_rate);
  TbState state = {
    .position = { tb_delivery_launch_x (delivery, delivery->loft_reach), delivery->loft_reach,
                  body->radius + delivery->release_height },
    .velocity = { slope * ahead, ahead, speed * sin (delivery->loft_angle) },
    .attitude = release_attitude (body, axis),
  };
  TbMat3 m = tb_quat_to_mat3 (state.attitude);
  TbVec3 on_ball = tb_mat3_apply_transposed (&m, spin);
  TbVec3 momentum = { body->moment.x * on_ball.x, body->moment.y * on_ball.y, body->moment.z * on_ball.z };
  state.angular_momentum = tb_mat3_apply (&m, momentum);
  /* The stated speed is the centre's; the state carries the centre of mass. */
  TbVec3 offset = tb_mat3_apply (&m, body->offset);
  state.velocity = tb_vec3_add (state.velocity, tb_vec3_cross (spin, offset));
  return state;
}

TbVec3
tb_state_spin (const TbState *state, const TbBody *body)
{
  TbMat3 m = tb_quat_to_mat3 (state->attitude);
  TbVec3 momentum = tb_mat3_apply_transposed (&m, state->angular_momentum);
  return tb_mat3_apply (&m, tb_vec3 (momentum.x / body->moment.x, momentum.y / body->moment.y, momentum.z / body->moment.z));
}

TbVec3
tb_state_centre_velocity (const TbState *state, const TbBody *body)
{
  TbVec3 offset = tb_quat_rotate (state->attitude, body->offset);
  return tb_vec3_sub (state->velocity, tb_vec3_cross (tb_state_spin (state, body), offset));
}

double
tb_state_energy (const TbState *state, const TbBody *body, double gravity)
{
  TbVec3 spin = tb_state_spin (state, body), offset = tb_quat_rotate (state->attitude, body->offset);
  return 0.5 * body->mass * tb_vec3_dot (state->velocity, state->velocity)
         + 0.5 * tb_vec3_dot (spin, state->angular_momentum) + body->mass * gravity * offset.z;
}
