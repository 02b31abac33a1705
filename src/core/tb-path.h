/* What the ball did: samples that can be drawn and interpolated, phases, events and measures.
 *
 * Everything is in the bowler's frame: x towards the bowler's own side, so that a left-hander's path reads the same
 * numbers; TbPath.mirrored says that the picture of it is to be turned left for right.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <stdbool.h>
#include <stddef.h>
#include "tb-ball.h"
#include "tb-lane-geometry.h"
#include "tb-math.h"
#include "tb-units.h"

typedef enum TbPhase
{
  TB_PHASE_FLIGHT,
  TB_PHASE_SLIDE, /* the contact point slips */
  TB_PHASE_ROLL,
  TB_N_PHASES
} TbPhase;

typedef enum TbResult
{
  TB_RESULT_PINS,
  TB_RESULT_RIGHT_GUTTER, /* as seen by the bowler from the foul line, whichever hand */
  TB_RESULT_LEFT_GUTTER,
  TB_N_RESULTS
} TbResult;
/* "pins", "right-gutter", "left-gutter": the name used in files. */
const char *tb_result_name (TbResult result);

/* One moment of the path. The values after a switch of phase stand in a second sample at the same time. */
typedef struct TbSample
{
  double time;          /* s since release */
  TbVec3 position;      /* m, the sphere's centre */
  TbVec3 velocity;      /* m/s, of the centre */
  TbVec3 acceleration;  /* m/s², of the centre */
  TbQuat attitude;      /* body axes to bowler's frame */
  TbVec3 spin;          /* rad/s */
  double slip;          /* m/s, speed of the contact point over the lane */
  double normal;        /* N */
  double friction;      /* N, size of the force along the lane */
  double coefficient;   /* of friction; 0 in flight */
  double film_on_lane;  /* m */
  double film_on_ball;  /* m, at the contact */
  double turned;        /* rad, ∫|spin| dt since release */
  double slip_loss;     /* J, energy rubbed away since release */
  TbPhase phase;
} TbSample;

/* Stretch of one phase. */
typedef struct TbStretch
{
  TbPhase phase;
  double start_time, end_time; /* s */
  double start_y, end_y;       /* m */
} TbStretch;
#define TB_PATH_MAX_STRETCHES 24

/* Boards are reported every 5 ft, foul line and pins included. */
#define TB_BOARD_MARK_FT 5.0
#define TB_N_BOARD_MARKS 13

/* Every number told of a run; NAN where there is none. Core units; tb-measures.h has names and units. */
typedef struct TbMeasures
{
  double x_at_arrows;      /* m */
  double breakpoint_x;     /* m, the greatest x on the way, where the ball turns back */
  double breakpoint_y;     /* m */
  double x_at_pins;        /* m */
  double angle_at_pins;    /* rad, positive towards higher boards */
  double hook;             /* m, x of the ball at the pins less that of the launch line there */
  double hook_start_y;     /* m, where the heading has turned 1° from the launch */
  double roll_start_y;     /* m, start of the roll that lasts to the pins; slipping by less than 5 cm/s now and then still
                            * counts as rolling (assumed: an eye does not see it) */
  double oil_exit_y;       /* m, where the ball is out of the oil for good */
  double oil_exit_x;       /* m */
  double time_in_oil;      /* s */
  double time;             /* s, from release to the pins */
  double speed_at_pins;    /* m/s */
  double rev_rate_at_pins; /* rad/s */
  double turned;           /* rad, ∫|spin| dt */
  double flare;            /* m on the ball's surface */
  double ring_spacing;     /* m on the ball's surface, over the first turn */
  double landing_y;        /* m, first touch of the lane */
  double landing_speed;    /* m/s, downwards, of the contact point at the first touch; 0 for a ball laid on the lane */
  double landing_load;     /* load on the lane at the first touch over the ball's weight; its time is assumed, 1 without a squeeze */
  double landing_slowed;   /* m/s along the lane, taken by the landing and the bounces that follow it */
  double landing_loss;     /* J of motion, likewise */
  double actual_speed;     /* m/s at release */
  double actual_rev_rate;  /* rad/s at release */
  double gutter_y;         /* m, where the ball leaves the lane; NAN if it does not (an edgeless run tells it too) */
  double x_at_mark[TB_N_BOARD_MARKS]; /* m, every 5 ft */
} TbMeasures;

typedef struct TbPath
{
  /* Sample memory of the caller: NULL or a capacity of 0 keeps measures only. When it is full every second sample is
   * dropped and the rest are kept further apart. */
  TbSample *samples;
  int capacity;
  int count;
  bool mirrored; /* the bowler is left-handed */
  TbBody body;
  int n_stretches;
  TbStretch stretches[TB_PATH_MAX_STRETCHES];
  TbResult result;
  TbMeasures measures;
  int evaluations; /* of the forces, for benchmarks */
} TbPath;

/* Enough for any shot at the default step. */
#define TB_PATH_CAPACITY 4096

/* The state at a time (held to the path's beginning and end), interpolated to the path's own accuracy. false if the
 * path keeps no samples. */
bool tb_path_at_time (const TbPath *path, double time, TbSample *sample);
/* The same at a distance down the lane, m: where the centre first passes it. */
bool tb_path_at_distance (const TbPath *path, double y, TbSample *sample);
double tb_path_duration (const TbPath *path);
/* Heading against the lane's long axis, rad, positive towards higher boards. */
double tb_sample_heading (const TbSample *sample);
/* The spin axis, and the contact point, as unit vectors from the centre in body axes. */
TbVec3 tb_sample_axis_on_ball (const TbSample *sample);
TbVec3 tb_sample_contact_on_ball (const TbSample *sample);
