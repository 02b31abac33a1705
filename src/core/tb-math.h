/* Vectors, quaternions and rotations, just what a rolling ball needs.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <math.h>

/* Length of a pair, without hypot()'s care for numbers that never occur here. */
static inline double tb_length2 (double x, double y) { return sqrt (x * x + y * y); }

typedef struct TbVec3
{
  double x, y, z;
} TbVec3;

/* Unit quaternion: w is the scalar part. It takes body coordinates to lane coordinates. */
typedef struct TbQuat
{
  double w, x, y, z;
} TbQuat;

/* Rows of a 3×3 matrix. */
typedef struct TbMat3
{
  TbVec3 row[3];
} TbMat3;

static inline TbVec3 tb_vec3 (double x, double y, double z) { return (TbVec3){ x, y, z }; }
static inline TbVec3 tb_vec3_add (TbVec3 a, TbVec3 b) { return (TbVec3){ a.x + b.x, a.y + b.y, a.z + b.z }; }
static inline TbVec3 tb_vec3_sub (TbVec3 a, TbVec3 b) { return (TbVec3){ a.x - b.x, a.y - b.y, a.z - b.z }; }
static inline TbVec3 tb_vec3_scale (TbVec3 a, double s) { return (TbVec3){ a.x * s, a.y * s, a.z * s }; }
/* a + s b */
static inline TbVec3
tb_vec3_add_scaled (TbVec3 a, double s, TbVec3 b)
{
  return (TbVec3){ a.x + s * b.x, a.y + s * b.y, a.z + s * b.z };
}
static inline double tb_vec3_dot (TbVec3 a, TbVec3 b) { return a.x * b.x + a.y * b.y + a.z * b.z; }
static inline double tb_vec3_length (TbVec3 a) { return sqrt (tb_vec3_dot (a, a)); }
static inline TbVec3
tb_vec3_cross (TbVec3 a, TbVec3 b)
{
  return (TbVec3){ a.y * b.z - a.z * b.y, a.z * b.x - a.x * b.z, a.x * b.y - a.y * b.x };
}
/* The unit vector along a; the fallback where a has no length. */
TbVec3 tb_vec3_unit (TbVec3 a, TbVec3 fallback);
/* Angle between two vectors, radians in [0, π]; accurate near 0 and π. */
double tb_vec3_angle (TbVec3 a, TbVec3 b);

static inline TbVec3
tb_mat3_apply (const TbMat3 *m, TbVec3 v)
{
  return (TbVec3){ tb_vec3_dot (m->row[0], v), tb_vec3_dot (m->row[1], v), tb_vec3_dot (m->row[2], v) };
}
/* The transpose applied to v. */
static inline TbVec3
tb_mat3_apply_transposed (const TbMat3 *m, TbVec3 v)
{
  return (TbVec3){ m->row[0].x * v.x + m->row[1].x * v.y + m->row[2].x * v.z,
                   m->row[0].y * v.x + m->row[1].y * v.y + m->row[2].y * v.z,
                   m->row[0].z * v.x + m->row[1].z * v.y + m->row[2].z * v.z };
}
TbMat3 tb_mat3_multiply (const TbMat3 *a, const TbMat3 *b);
/* Solves m x = b for a symmetric positive definite m (LDLᵀ). m comes from a rigid body and is never
 * singular. */
TbVec3 tb_mat3_solve_spd (const TbMat3 *m, TbVec3 b);
/* Eigenvalues in rising order and the unit eigenvectors as rows, right-handed, of a symmetric m (Jacobi).
 * Equal eigenvalues keep the order of the axes they stand on. */
void tb_mat3_eigen (const TbMat3 *m, double values[3], TbMat3 *vectors);

static inline TbQuat
tb_quat_multiply (TbQuat a, TbQuat b)
{
  return (TbQuat){ a.w * b.w - a.x * b.x - a.y * b.y - a.z * b.z, a.w * b.x + a.x * b.w + a.y * b.z - a.z * b.y,
                   a.w * b.y - a.x * b.z + a.y * b.w + a.z * b.x, a.w * b.z + a.x * b.y - a.y * b.x + a.z * b.w };
}
static inline TbQuat tb_quat_conjugate (TbQuat q) { return (TbQuat){ q.w, -q.x, -q.y, -q.z }; }
TbQuat tb_quat_unit (TbQuat q);
/* The rotation by the vector's length (radians) about its direction. */
TbQuat tb_quat_from_rotation (TbVec3 rotation);
/* The inverse of the above; the length is in [0, π]. */
TbVec3 tb_quat_to_rotation (TbQuat q);
TbQuat tb_quat_from_mat3 (const TbMat3 *m);
static inline TbMat3
tb_quat_to_mat3 (TbQuat q)
{
  double xx = q.x * q.x, yy = q.y * q.y, zz = q.z * q.z;
  double xy = q.x * q.y, xz = q.x * q.z, yz = q.y * q.z;
  double wx = q.w * q.x, wy = q.w * q.y, wz = q.w * q.z;
  return (TbMat3){ { { 1 - 2 * (yy + zz), 2 * (xy - wz), 2 * (xz + wy) },
                     { 2 * (xy + wz), 1 - 2 * (xx + zz), 2 * (yz - wx) },
                     { 2 * (xz - wy), 2 * (yz + wx), 1 - 2 * (xx + yy) } } };
}
/* The inverse rotation: from the lane to the body. */
static inline TbVec3
tb_quat_rotate_back (TbQuat q, TbVec3 v)
{
  TbVec3 axis = { q.x, q.y, q.z }, once = tb_vec3_cross (axis, v);
  TbVec3 twice = tb_vec3_cross (axis, tb_vec3_add_scaled (once, -q.w, v));
  return tb_vec3_add_scaled (v, 2, twice);
}
static inline TbVec3
tb_quat_rotate (TbQuat q, TbVec3 v)
{
  TbMat3 m = tb_quat_to_mat3 (q);
  return tb_mat3_apply (&m, v);
}
