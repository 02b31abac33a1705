/* Turns the steps of a run into a path: samples, stretches and measures. Private to core.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "tb-dynamics.h"
#include "tb-path.h"

typedef struct Recorder
{
  TbPath *path;
  const Dynamics *dynamics;
  double interval;        /* s, kept between samples */
  TbSample sample[2];     /* beginning and end of what is being looked at; they take turns */
  int last;               /* which of them is the end of what has been recorded */
  bool fresh;             /* the last sample began a stretch and may not be dropped */
  double last_kept;       /* s, time of the last sample kept */
  int next_mark;          /* of the five-foot marks */
  bool passed_arrows;
  double greatest_x;
  bool hooking;           /* the hook's start has been seen */
  bool in_oil;
  double rolls_from;      /* m, where the present roll began; NAN while it slips */
  TbVec3 launch;          /* unit vector along the launch line */
  TbVec3 release_axis;    /* on the ball, body axes */
  TbVec3 furthest;        /* the axis when it was furthest from there */
  double least_cosine;    /* of the angle between the two */
} Recorder;

void recorder_init (Recorder *self, TbPath *path, const Dynamics *dynamics);
/* A stretch of one phase begins at a point. */
void recorder_begin (Recorder *self, TbPhase phase, const Point *point, const Rates *rates);
/* The thrown ball lands, or bounces. */
void recorder_land (Recorder *self, const Landing *landing);
/* The phase goes on to a point. The rates there are of the same phase. */
void recorder_step (Recorder *self, TbPhase phase, const Point *point, const Rates *rates);
/* The stretch is over; the last step's end is kept. */
void recorder_end (Recorder *self);
/* The run is over: at the pins, or with the ball off the lane at the last point. */
void recorder_finish (Recorder *self, bool off_lane);
