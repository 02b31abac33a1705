/* What the tests of core share: checks that say what they measured, and the setups of the check pages.
 *
 * Check values are given in the frame of a mechanics text (X down the lane, Y to the bowler's left, Z up).
 * Core has x to the right and y down the lane, so X = y, Y = −x.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>
#include "tb-core.h"

G_BEGIN_DECLS

/* Fails the test, and goes on, unless |got − want| ≤ bound. What was measured is printed either way. */
void check_near (const char *what, double got, double want, double bound);
/* The same for a number that only has to stay under, or over, something. */
void check_below (const char *what, double got, double bound);
void check_above (const char *what, double got, double bound);
void check_true (const char *what, gboolean got);
void check_status (const char *what, TbStatus got, TbStatus want);

/* A vector of the text's frame in core's. */
TbVec3 check_vector (double down, double left, double up);

/* A path with room for samples, and memory to run in. */
typedef struct CheckRun
{
  TbPath path;
  TbWorkspace *workspace;
} CheckRun;
CheckRun *check_run_new (void);
void check_run_free (CheckRun *run);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (CheckRun, check_run_free)
/* Run, and end the program if core refuses. */
void check_run_motion (CheckRun *run, const TbMotion *motion);
void check_run_shot (CheckRun *run, const TbShot *shot);
const TbSample *check_first (const CheckRun *run);
const TbSample *check_last (const CheckRun *run);
/* First sample of the last stretch of a phase; NULL if there is none. */
const TbSample *check_start_of (const CheckRun *run, TbPhase phase);
/* First sample at or after a time. */
const TbSample *check_at (const CheckRun *run, double time);

/* The house pattern: 45 units in the middle of the heads, 40 ft, an eighth of the middle outside board 6. */
const TbOil *check_house_oil (void);
/* The default shot on it. */
TbShot check_house_shot (void);

/* A lane of zones. */
typedef struct CheckLane
{
  TbZones zones;
  TbFriction friction;
} CheckLane;
void check_lane_uniform (CheckLane *lane, double coefficient);
/* Adds a zone that ends at a distance (m); the coefficient rises evenly from one to the other. */
void check_lane_add (CheckLane *lane, double end, double at_start, double at_end);

/* A release as the text gives it. */
typedef struct CheckThrow
{
  double speed;   /* m/s, of the centre */
  double heading; /* degrees, positive to the left */
  double rpm;
  double rotation; /* degrees */
  double tilt;     /* degrees */
} CheckThrow;
/* A plain ball, resting on the lane at the foul line, on a lane without anything but friction. */
TbMotion check_motion (const TbBody *body, const TbFriction *friction);
void check_throw (TbMotion *motion, const CheckThrow *release);
/* Gives a state's spin (rad/s, core's frame) to a body, and a velocity of the sphere's centre. */
void check_set_motion (TbState *state, const TbBody *body, TbVec3 centre_velocity, TbVec3 spin);
TbVec3 check_spin (const CheckThrow *release);

/* Slip velocity of a sample, and the state it stands for. */
TbVec3 check_slip (const TbSample *sample, double radius);
TbState check_state (const TbSample *sample, const TbBody *body);
double check_energy (const TbSample *sample, const TbBody *body);

/* The ball of the two-zone lane: 15 lb, 0.10915 m, k 0.35. */
TbBody check_plain_ball (void);
/* The ball off balance with three moments of the check page. */
TbBody check_odd_ball (void);

/* A generator that gives the same numbers everywhere: uniform in [low, high). */
double check_uniform (guint64 *state, double low, double high);

G_END_DECLS
