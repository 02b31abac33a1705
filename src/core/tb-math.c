/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "tb-math.h"
#include "tb-units.h"

TbVec3
tb_vec3_unit (TbVec3 a, TbVec3 fallback)
{
  double length = tb_vec3_length (a);
  return length > 0 ? tb_vec3_scale (a, 1 / length) : fallback;
}

double
tb_vec3_angle (TbVec3 a, TbVec3 b)
{
  return atan2 (tb_vec3_length (tb_vec3_cross (a, b)), tb_vec3_dot (a, b));
}

TbMat3
tb_mat3_multiply (const TbMat3 *a, const TbMat3 *b)
{
  TbMat3 product;
  for (int i = 0; i < 3; i++)
    product.row[i] = tb_mat3_apply_transposed (b, a->row[i]);
  return product;
}

TbVec3
tb_mat3_solve_spd (const TbMat3 *m, TbVec3 b)
{
  /* m = l d lᵀ with ones on l's diagonal: three divisions and no root. */
  double i0 = 1 / m->row[0].x;
  double l10 = m->row[1].x * i0, l20 = m->row[2].x * i0;
  double i1 = 1 / (m->row[1].y - l10 * m->row[1].x);
  double u21 = m->row[2].y - l20 * m->row[1].x, l21 = u21 * i1;
  double i2 = 1 / (m->row[2].z - l20 * m->row[2].x - l21 * u21);
  double y1 = b.y - l10 * b.x;
  double y2 = b.z - l20 * b.x - l21 * y1;
  double z = y2 * i2;
  double y = y1 * i1 - l21 * z;
  double x = b.x * i0 - l10 * y - l20 * z;
  return tb_vec3 (x, y, z);
}

/* Sweeps that take any 3×3 to rounding; five are the most ever seen. */
#define JACOBI_SWEEPS 12

static void
jacobi_rotate (double a[3][3], double v[3][3], int p, int q)
{
  if (a[p][q] == 0)
    return;
  double theta = 0.5 * (a[q][q] - a[p][p]) / a[p][q];
  double t = copysign (1, theta) / (fabs (theta) + sqrt (theta * theta + 1));
  double c = 1 / sqrt (t * t + 1), s = t * c;
  for (int k = 0; k < 3; k++)
    {
      double kp = a[k][p], kq = a[k][q];
      a[k][p] = c * kp - s * kq;
      a[k][q] = s * kp + c * kq;
    }
  for (int k = 0; k < 3; k++)
    {
      double pk = a[p][k], qk = a[q][k];
      a[p][k] = c * pk - s * qk;
      a[q][k] = s * pk + c * qk;
    }
  for (int k = 0; k < 3; k++)
    {
      double pk = v[p][k], qk = v[q][k];
      v[p][k] = c * pk - s * qk;
      v[q][k] = s * pk + c * qk;
    }
}

void
tb_mat3_eigen (const TbMat3 *m, double values[3], TbMat3 *vectors)
{
  double a[3][3] = { { m->row[0].x, m->row[0].y, m->row[0].z },
                     { m->row[1].x, m->row[1].y, m->row[1].z },
                     { m->row[2].x, m->row[2].y, m->row[2].z } };
  double v[3][3] = { { 1, 0, 0 }, { 0, 1, 0 }, { 0, 0, 1 } };
  for (int sweep = 0; sweep < JACOBI_SWEEPS; sweep++)
    {
      jacobi_rotate (a, v, 0, 1);
      jacobi_rotate (a, v, 0, 2);
      jacobi_rotate (a, v, 1, 2);
    }

  /* Rising order; a stable insertion keeps equal values where they stood. */
  int order[3] = { 0, 1, 2 };
  for (int i = 1; i < 3; i++)
    for (int j = i; j > 0 && a[order[j]][order[j]] < a[order[j - 1]][order[j - 1]]; j--)
      {
        int swap = order[j];
        order[j] = order[j - 1];
        order[j - 1] = swap;
      }
  for (int i = 0; i < 3; i++)
    {
      values[i] = a[order[i]][order[i]];
      vectors->row[i] = tb_vec3 (v[order[i]][0], v[order[i]][1], v[order[i]][2]);
    }
  TbVec3 third = tb_vec3_cross (vectors->row[0], vectors->row[1]);
  if (tb_vec3_dot (third, vectors->row[2]) < 0)
    vectors->row[2] = tb_vec3_scale (vectors->row[2], -1);
}

TbQuat
tb_quat_unit (TbQuat q)
{
  double scale = 1 / sqrt (q.w * q.w + q.x * q.x + q.y * q.y + q.z * q.z);
  return (TbQuat){ q.w * scale, q.x * scale, q.y * scale, q.z * scale };
}

/* Below this half angle (rad) the series to the twelfth power is exact to rounding and quicker than libm. */
#define SERIES_HALF_ANGLE 0.7

#define SERIES_TERMS 7
/* Ratios of one coefficient of cos x and of sin x/x, in powers of −x², to the one before it. */
static const double cosine_ratio[SERIES_TERMS]
    = { 1. / 2, 1. / 12, 1. / 30, 1. / 56, 1. / 90, 1. / 132, 1. / 182 };
static const double sine_ratio[SERIES_TERMS]
    = { 1. / 6, 1. / 20, 1. / 42, 1. / 72, 1. / 110, 1. / 156, 1. / 210 };

static inline double
series (double square, const double ratio[SERIES_TERMS])
{
  double sum = 1;
  for (int i = SERIES_TERMS - 1; i >= 0; i--)
    sum = 1 - ratio[i] * square * sum;
  return sum;
}

TbQuat
tb_quat_from_rotation (TbVec3 rotation)
{
  double square = 0.25 * tb_vec3_dot (rotation, rotation);
  double cosine, sine_over_angle; /* of the half angle */
  if (square < SERIES_HALF_ANGLE * SERIES_HALF_ANGLE)
    {
      cosine = series (square, cosine_ratio);
      sine_over_angle = series (square, sine_ratio);
    }
  else
    {
      double half = sqrt (square);
      cosine = cos (half);
      sine_over_angle = sin (half) / half;
    }
  double scale = 0.5 * sine_over_angle;
  return (TbQuat){ cosine, scale * rotation.x, scale * rotation.y, scale * rotation.z };
}

TbVec3
tb_quat_to_rotation (TbQuat q)
{
  double sign = q.w < 0 ? -1 : 1;
  double sine = sqrt (q.x * q.x + q.y * q.y + q.z * q.z);
  if (sine == 0)
    return tb_vec3 (0, 0, 0);
  double scale = sign * 2 * atan2 (sine, sign * q.w) / sine;
  return tb_vec3 (scale * q.x, scale * q.y, scale * q.z);
}

TbQuat
tb_quat_from_mat3 (const TbMat3 *m)
{
  double xx = m->row[0].x, yy = m->row[1].y, zz = m->row[2].z;
  double four[4] = { 1 + xx + yy + zz, 1 + xx - yy - zz, 1 - xx + yy - zz, 1 - xx - yy + zz };
  int largest = 0;
  for (int i = 1; i < 4; i++)
    if (four[i] > four[largest])
      largest = i;
  double root = sqrt (four[largest]), scale = 0.5 / root;
  double wx = (m->row[2].y - m->row[1].z) * scale, wy = (m->row[0].z - m->row[2].x) * scale;
  double wz = (m->row[1].x - m->row[0].y) * scale, xy = (m->row[0].y + m->row[1].x) * scale;
  double xz = (m->row[0].z + m->row[2].x) * scale, yz = (m->row[1].z + m->row[2].y) * scale;
  double own = 0.5 * root;
  switch (largest)
    {
    case 0:
      return tb_quat_unit ((TbQuat){ own, wx, wy, wz });
    case 1:
      return tb_quat_unit ((TbQuat){ wx, own, xy, xz });
    case 2:
      return tb_quat_unit ((TbQuat){ wy, xy, own, yz });
    default:
      return tb_quat_unit ((TbQuat){ wz, xz, yz, own });
    }
}
