/* Roots and turning points of a function of one number, by the GNU Scientific Library.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* NAN where the function has no value; a search that meets one gives up. */
typedef double (*TbFunction) (double x, gpointer user_data);

typedef struct TbCurve
{
  TbFunction function;
  gpointer user_data;
} TbCurve;

/* Two places with their values. */
typedef struct TbBracket
{
  double low, high;
  double at_low, at_high;
} TbBracket;

/* Where the curve is within `tolerance` (its own unit) of 0, between two ends at which it has opposite signs
 * or is 0. Brent's method. FALSE if the ends do not enclose a root, or if it is not found: the curve jumps
 * over 0. */
gboolean tb_solve_root (const TbCurve *curve, const TbBracket *bracket, double tolerance, double *root);

/* Three places; the value in the middle is below both ends, or above both. */
typedef struct TbTriple
{
  double low, middle, high;
  double at_low, at_middle, at_high;
} TbTriple;

/* Where the curve is least (if the middle is below the ends) or greatest, to `tolerance` (unit of x). Brent's
 * method. FALSE if the middle is not below or above both ends. */
gboolean tb_solve_turning_point (const TbCurve *curve,
                                 const TbTriple *triple,
                                 double tolerance,
                                 double *place,
                                 double *value);

G_END_DECLS
