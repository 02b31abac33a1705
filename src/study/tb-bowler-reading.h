/* A bowler's numbers from what can be measured at the counter, each with its likely error.
 *
 * Every answer is the formula at the measured values; its error is what the errors of the measured values
 * make of it, taken as independent.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>
#include "tb-setup.h"

G_BEGIN_DECLS

/* A value and how far off it may well be; both in the same unit. */
typedef struct TbMeasured
{
  double value;
  double error;
} TbMeasured;

typedef enum TbReadingKind
{
  TB_READING_SPEED,    /* from the time over the lane */
  TB_READING_REV_RATE, /* from turns of a strip of tape in video frames */
  TB_READING_TILT,     /* from the arc across the first ring */
  TB_READING_AXIS,     /* rotation and tilt, from where the tape on the PAP stands in one frame */
  TB_READING_PAP,      /* from three points of the first ring */
  TB_N_READINGS
} TbReadingKind;

/* What stands beside a reading; untranslated. */
typedef struct TbReadingInfo
{
  const char *label; /* what comes out */
  const char *how;   /* what to do */
  const char *formula;
  const char *source;
  const char *errors; /* where the error comes from */
} TbReadingInfo;
const TbReadingInfo *tb_reading_info (TbReadingKind kind);

/* Typical errors of what is measured. */
#define TB_READING_STOPWATCH_ERROR 0.1 /* s, two presses by hand (common practice) */
#define TB_READING_FRAME_ERROR 1.0     /* frames, over a count */
#define TB_READING_TURN_ERROR 0.0625   /* turns, over a count: a sixteenth */
#define TB_READING_TAPE_ERROR_IN 0.125 /* in along the surface */
#define TB_READING_PICTURE_ERROR 0.04  /* ball radii in a video frame */

/* All of these answer NAN as the value where the measurement makes no sense. */

/* Mean speed over a distance (m) from the time (s), m/s. */
TbMeasured tb_reading_mean_speed (double distance, TbMeasured time);
/* Speed at release, m/s: the one with which the setup's ball takes that time (s) from the foul line to the head pin in this
 * model, carried on by the hand at that speed to where it is let go (assumed). */
TbMeasured tb_reading_release_speed (const TbSetup *setup, TbMeasured time);
/* What the setup's fields, which are at neutral grip, have to be for such a speed (m/s) or rev rate (rad/s) to leave the hand
 * with its grip. */
double tb_reading_neutral_speed (const TbSetup *setup, double speed);
double tb_reading_neutral_rev_rate (const TbSetup *setup, double rev_rate);
/* Rev rate, rad/s, from turns counted over a number of video frames. */
TbMeasured tb_reading_rev_rate (TbMeasured turns, TbMeasured frames, double frames_per_second);
/* Tilt, rad, from the arc (m along the surface) straight across the first ring, on its smaller side, of a
 * ball of that radius (m): (π R − arc)/(2 R). */
TbMeasured tb_reading_tilt (double radius, TbMeasured arc);
/* Where a mark on the PAP stands in a frame taken from behind, right after release: towards the side of the
 * other hand from the ball's centre (left for a right-hander), and above it, in ball radii. */
typedef struct TbAxisReading
{
  TbMeasured rotation; /* rad; 0 to 90° (the view from behind cannot tell from more) */
  TbMeasured tilt;     /* rad */
} TbAxisReading;
TbAxisReading tb_reading_axis (TbMeasured aside, TbMeasured above);

/* A point of the first ring: m along the surface from the grip centre, as PAP over and up are. */
typedef struct TbRingPoint
{
  double over, up;
} TbRingPoint;
#define TB_RING_POINTS 3
typedef struct TbPapReading
{
  TbMeasured over, up; /* m */
  TbMeasured tilt;     /* rad */
  double ring_across;  /* m, the arc across the ring on its smaller side */
} TbPapReading;
/* error is of every one of the six numbers, m. */
TbPapReading tb_reading_pap (double radius, const TbRingPoint points[TB_RING_POINTS], double error);

G_END_DECLS
