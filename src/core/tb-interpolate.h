/* Between two moments of one phase: the quintic through position, velocity and acceleration at both, and the rotation
 * that starts and ends with the right spin. Private to core.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "tb-path.h"

/* x(t), ẋ(t) of a component between two moments that are h apart; s = t/h in [0, 1]. */
typedef struct Quintic
{
  double c[6]; /* of powers of s */
  double h;
} Quintic;

Quintic quintic_fit (const double from[3], const double to[3], double h);
static inline double
quintic_value (const Quintic *q, double s)
{
  return q->c[0] + s * (q->c[1] + s * (q->c[2] + s * (q->c[3] + s * (q->c[4] + s * q->c[5]))));
}
static inline double
quintic_slope (const Quintic *q, double s)
{
  return (q->c[1] + s * (2 * q->c[2] + s * (3 * q->c[3] + s * (4 * q->c[4] + s * 5 * q->c[5])))) / q->h;
}
static inline double
quintic_curvature (const Quintic *q, double s)
{
  return (2 * q->c[2] + s * (6 * q->c[3] + s * (12 * q->c[4] + s * 20 * q->c[5]))) / (q->h * q->h);
}

/* Where in [0, 1] the quintic (or its slope, where `slope` is set) has a value, given that it lies on different sides of
 * it at 0 and 1. */
double quintic_find (const Quintic *q, double value, bool slope);

/* The three components at once. */
typedef struct Course
{
  Quintic x, y, z;
  double h;
} Course;

Course course_fit (const TbSample *from, const TbSample *to);
TbVec3 course_position (const Course *course, double s);
TbVec3 course_velocity (const Course *course, double s);
TbVec3 course_acceleration (const Course *course, double s);

/* Attitude and spin a share s of the way. */
void attitude_between (const TbSample *from, const TbSample *to, double s, TbQuat *attitude, TbVec3 *spin);
