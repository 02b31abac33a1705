/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "tb-interpolate.h"

Quintic
quintic_fit (const double from[3], const double to[3], double h)
{
  double v0 = from[1] * h, v1 = to[1] * h, a0 = from[2] * h * h, a1 = to[2] * h * h;
  double d = to[0] - from[0];
  return (Quintic){ .c = { from[0], v0, 0.5 * a0, 10 * d - 6 * v0 - 4 * v1 - 1.5 * a0 + 0.5 * a1,
                           -15 * d + 8 * v0 + 7 * v1 + 1.5 * a0 - a1, 6 * d - 3 * (v0 + v1) - 0.5 * a0 + 0.5 * a1 },
                    .h = h };
}

/* Halvings that take [0, 1] to rounding. */
#define FIND_LIMIT 60

double
quintic_find (const Quintic *q, double value, bool slope)
{
  double low = 0, high = 1;
  double at_low = (slope ? quintic_slope (q, low) : quintic_value (q, low)) - value;
  double at_high = (slope ? quintic_slope (q, high) : quintic_value (q, high)) - value;
  double s = at_low == at_high ? 0.5 : at_low / (at_low - at_high);
  for (int i = 0; i < FIND_LIMIT && high > low; i++)
    {
      double error = (slope ? quintic_slope (q, s) : quintic_value (q, s)) - value;
      if (error == 0)
        return s;
      if ((error > 0) == (at_low > 0))
        low = s;
      else
        high = s;
      double rate = slope ? quintic_curvature (q, s) : quintic_slope (q, s);
      double next = s - error / (rate * q->h);
      /* Newton's step where it stays inside what is left, else the middle. */
      if (!(next > low && next < high))
        next = 0.5 * (low + high);
      if (fabs (next - s) < 1e-15)
        return next;
      s = next;
    }
  return s;
}

Course
course_fit (const TbSample *from, const TbSample *to)
{
  double h = to->time - from->time;
  const double x0[3] = { from->position.x, from->velocity.x, from->acceleration.x };
  const double x1[3] = { to->position.x, to->velocity.x, to->acceleration.x };
  const double y0[3] = { from->position.y, from->velocity.y, from->acceleration.y };
  const double y1[3] = { to->position.y, to->velocity.y, to->acceleration.y };
  const double z0[3] = { from->position.z, from->velocity.z, from->acceleration.z };
  const double z1[3] = { to->position.z, to->velocity.z, to->acceleration.z };
  return (Course){ quintic_fit (x0, x1, h), quintic_fit (y0, y1, h), quintic_fit (z0, z1, h), h };
}

TbVec3
course_position (const Course *course, double s)
{
  return tb_vec3 (quintic_value (&course->x, s), quintic_value (&course->y, s), quintic_value (&course->z, s));
}

TbVec3
course_velocity (const Course *course, double s)
{
  return tb_vec3 (quintic_slope (&course->x, s), quintic_slope (&course->y, s), quintic_slope (&course->z, s));
}

TbVec3
course_acceleration (const Course *course, double s)
{
  return tb_vec3 (quintic_curvature (&course->x, s), quintic_curvature (&course->y, s), quintic_curvature (&course->z, s));
}

void
attitude_between (const TbSample *from, const TbSample *to, double s, TbQuat *attitude, TbVec3 *spin)
{
  double h = to->time - from->time;
  TbVec3 whole = tb_quat_to_rotation (tb_quat_multiply (to->attitude, tb_quat_conjugate (from->attitude)));
  /* Rotation vector as a cubic: it starts with the spin and ends with the spin seen through the rotation so far. */
  TbVec3 first = tb_vec3_scale (from->spin, h);
  TbVec3 once = tb_vec3_cross (whole, to->spin), twice = tb_vec3_cross (whole, once);
  TbVec3 last
      = tb_vec3_scale (tb_vec3_add_scaled (tb_vec3_add_scaled (to->spin, -0.5, once), 1.0 / 12, twice), h);
  double s2 = s * s, s3 = s2 * s;
  TbVec3 rotation = tb_vec3_scale (whole, 3 * s2 - 2 * s3);
  rotation = tb_vec3_add_scaled (rotation, s3 - 2 * s2 + s, first);
  rotation = tb_vec3_add_scaled (rotation, s3 - s2, last);
  *attitude = tb_quat_unit (tb_quat_multiply (tb_quat_from_rotation (rotation), from->attitude));
  *spin = tb_vec3_add_scaled (tb_vec3_scale (from->spin, 1 - s), s, to->spin);
}
