/* What the bowler does: from the hand to the moment of release.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "tb-assumed.h"
#include "tb-ball.h"
#include "tb-math.h"

typedef enum TbHand
{
  TB_HAND_RIGHT,
  TB_HAND_LEFT,
  TB_N_HANDS
} TbHand;

/* Grip pressure at which speed and rev rate are as stated. */
#define TB_GRIP_NEUTRAL 5.0

/* All in the bowler's frame: x towards the bowler's own side. A left-hander is the mirror image, computed as one. */
typedef struct TbDelivery
{
  TbHand hand;
  double speed;          /* m/s, of the centre along its flight, at neutral grip */
  double rev_rate;       /* rad/s, at neutral grip */
  double axis_rotation;  /* rad against the lane's long axis; negative is a back-up ball */
  double axis_tilt;      /* rad above the horizontal */
  double laydown;        /* m, x where the launch line crosses the foul line */
  double aim;            /* m, x where the launch line crosses the arrows (15 ft) */
  double release_height; /* m, lowest point of the ball over the lane */
  double loft_angle;     /* rad, upwards */
  double loft_reach;     /* m past the foul line */
  double grip_pressure;  /* 0 to 10, TB_GRIP_NEUTRAL neutral; the size of its effect is assumed */
} TbDelivery;

/* Where the ball is and how it moves. */
typedef struct TbState
{
  double time;             /* s since release */
  TbVec3 position;         /* m, the sphere's centre; z is its height over the lane */
  TbVec3 velocity;         /* m/s, of the centre of mass */
  TbQuat attitude;         /* body axes to the bowler's frame */
  TbVec3 angular_momentum; /* kg m²/s about the centre of mass, bowler's frame */
} TbState;

TbDelivery tb_delivery_default (void);
/* Speed (m/s) and rev rate (rad/s) after the grip's effect. */
double tb_delivery_actual_speed (const TbDelivery *delivery, const TbAssumed *assumed);
double tb_delivery_actual_rev_rate (const TbDelivery *delivery, const TbAssumed *assumed);
/* x of the launch line at a distance down the lane, m, bowler's frame. */
double tb_delivery_launch_x (const TbDelivery *delivery, double y);
/* Angle of the launch line against the lane's long axis, rad, positive towards higher boards. */
double tb_delivery_launch_heading (const TbDelivery *delivery);
/* Unit vector of the spin at release: α the axis rotation, β the tilt. */
TbVec3 tb_delivery_axis (const TbDelivery *delivery);
/* The state at release: the PAP on the spin axis, the grip behind the ball as far as that allows (assumed). */
TbState tb_delivery_release (const TbDelivery *delivery, const TbBody *body, const TbAssumed *assumed);
/* Spin (rad/s) of a state, and velocity of the sphere's centre (m/s), both in the bowler's frame. */
TbVec3 tb_state_spin (const TbState *state, const TbBody *body);
TbVec3 tb_state_centre_velocity (const TbState *state, const TbBody *body);
/* Kinetic energy plus m g times the height of the centre of mass above the sphere's centre, J. */
double tb_state_energy (const TbState *state, const TbBody *body, double gravity);
