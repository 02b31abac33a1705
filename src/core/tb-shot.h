/* A shot: everything that decides where a ball goes, and the run that finds out.
 *
 * Same inputs, same build: the same bits, whatever the number of threads. Nothing here allocates, reads a clock or
 * keeps anything between calls.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "tb-assumed.h"
#include "tb-ball.h"
#include "tb-delivery.h"
#include "tb-friction.h"
#include "tb-oil.h"
#include "tb-path.h"
#include "tb-status.h"

/* A ball that is not at the pins after this is reported as too slow, s. */
#define TB_SHOT_TIME_LIMIT 40.0
/* Step of the integrator, s, unless the options ask for another; the second where the ball carries oil, whose rings pass in
 * milliseconds. */
#define TB_SHOT_STEP 0.025
#define TB_SHOT_OILY_STEP 0.0125

/* Parts of the model that can be off. All zero is the whole model as it stands by default. */
typedef struct TbOptions
{
  bool edgeless;              /* no gutters: the edge film goes on sideways */
  bool no_landing_squeeze;    /* a landing meets the film and cover as a resting ball does */
  bool no_film_on_ball;       /* the ball carries no oil */
  bool no_rolling_resistance;
  bool no_air_drag;
  bool no_pivot_friction;
  bool no_cross_tilt;
  double step;                /* s; 0 means TB_SHOT_STEP or TB_SHOT_OILY_STEP */
  double gravity;             /* m/s²; 0 means TB_STANDARD_GRAVITY */
} TbOptions;
/* All of the optional parts off: the textbook ball. */
TbOptions tb_options_bare (void);

typedef struct TbLane
{
  const TbOil *oil;     /* borrowed; counted from the right edge whoever bowls */
  double pattern_scale; /* the film is multiplied by this */
  double cross_tilt;    /* m, how much higher the right edge lies than the left */
  double games_played;  /* on this lane since it was oiled. Core runs on the film it is given: who makes that film wears
                         * it first. */
} TbLane;

typedef struct TbShot
{
  TbDelivery delivery;
  TbBall ball;
  TbLane lane;
  TbAssumed assumed;
  TbOptions options;
} TbShot;

TbLane tb_lane_default (void);
TbShot tb_shot_default (void);

/* Memory that a run works in; about 180 KiB, to be reused from shot to shot. One for each thread. */
typedef struct TbWorkspace TbWorkspace;
size_t tb_workspace_size (void);

/* Checks every field of the shot against its range, and the film. `problem` may be NULL. */
TbStatus tb_shot_check (const TbShot *shot, TbProblem *problem);
/* Runs a checked or unchecked shot. `path` receives the result; its sample memory may be absent (see tb-path.h). On
 * an error the path is left cleared. `workspace` is tb_workspace_size() bytes, aligned as malloc() aligns; its
 * content does not matter and it may not be shared by two runs at once. */
TbStatus tb_shot_run (const TbShot *shot, TbWorkspace *workspace, TbPath *path, TbProblem *problem);
/* The same, and then adds what the ball took from and left on the lane to `wear` (the film the shot ran on, or a copy
 * of it). Returns the oil the ball carried away on and in its cover, m³, in *carried. */
TbStatus tb_shot_run_and_wear (const TbShot *shot,
                               TbWorkspace *workspace,
                               TbPath *path,
                               TbOil *wear,
                               double *carried,
                               TbProblem *problem);

/* The level below: a body with a state on a lane of any friction. */
typedef struct TbMotion
{
  TbBody body;
  TbState state;          /* at the start; on the lane if position.z is no more than the radius */
  const TbFriction *friction;
  TbAssumed assumed;
  TbOptions options;
  double cross_slope;     /* rise of the lane per metre towards the bowler's own side */
  double end_y;           /* m, where the run stops; the head pin for a shot */
  double time_limit;      /* s, where the run stops, with what it has; 0 means TB_SHOT_TIME_LIMIT and an error */
  double launch_x;        /* m, x of the launch line at the foul line, for the boards hooked */
  double launch_slope;    /* dx/dy of the launch line */
} TbMotion;
/* What a shot is made of at that level; `friction` is filled in and pointed to. */
TbStatus tb_shot_motion (const TbShot *shot, TbFriction *friction, TbMotion *motion, TbProblem *problem);
TbStatus tb_motion_run (const TbMotion *motion, TbWorkspace *workspace, TbPath *path);
/* The same in pieces: a run that is begun, goes on until its time (s since release) passes `until` or it is over (then true
 * comes back), and is ended. The motion must stay where it is meanwhile. */
TbStatus tb_motion_begin (const TbMotion *motion, TbWorkspace *workspace, TbPath *path);
bool tb_motion_continue (TbWorkspace *workspace, double until);
TbStatus tb_motion_end (TbWorkspace *workspace);
/* Copies a run between two pieces, so that it can go on from there more than once, to the same bits. `path` is the copy's
 * own, with a copy of the samples so far. */
void tb_workspace_copy (TbWorkspace *to, const TbWorkspace *from, TbPath *path);
/* Forces and accelerations at a state that slides or rolls, for checks and pictures. */
typedef struct TbForces
{
  TbVec3 slip;                 /* m/s, velocity of the contact point over the lane */
  double normal;               /* N */
  TbVec3 friction;             /* N, in the lane's plane */
  TbVec3 centre_acceleration;  /* m/s², of the sphere's centre */
  TbVec3 angular_acceleration; /* rad/s² */
  double coefficient;          /* of friction, at the contact */
} TbForces;
TbForces tb_motion_forces (const TbMotion *motion, const TbState *state, bool rolling);
