/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "tb-solve.h"

#include <gsl/gsl_errno.h>
#include <gsl/gsl_min.h>
#include <gsl/gsl_roots.h>
#include <math.h>

/* Steps after which a search has failed: bisection alone would have come down to a billionth of the interval.
 */
#define MAX_STEPS 40

G_DEFINE_AUTOPTR_CLEANUP_FUNC (gsl_root_fsolver, gsl_root_fsolver_free)
G_DEFINE_AUTOPTR_CLEANUP_FUNC (gsl_min_fminimizer, gsl_min_fminimizer_free)

/* The library's own answer to an error is to end the program; here every call is looked at instead. */
static void
quieten (void)
{
  static gsize once = 0;

  if (g_once_init_enter (&once))
    {
      gsl_set_error_handler_off ();
      g_once_init_leave (&once, 1);
    }
}

/* The solver asks for the ends again, which the caller has already paid for; and the best place so far is
 * kept, so that a search can stop as soon as the value will do, not when the interval is small. */
typedef struct Search
{
  const TbCurve *curve;
  const TbBracket *known;
  double best, at_best;
} Search;

static double
search_value (double x, void *data)
{
  Search *search = data;
  double value = x == search->known->low    ? search->known->at_low
                 : x == search->known->high ? search->known->at_high
                                            : search->curve->function (x, search->curve->user_data);

  if (fabs (value) < fabs (search->at_best))
    {
      search->best = x;
      search->at_best = value;
    }
  return value;
}

static gboolean
encloses_root (const TbBracket *bracket)
{
  return isfinite (bracket->at_low) && isfinite (bracket->at_high) && bracket->low < bracket->high
         && bracket->at_low * bracket->at_high < 0;
}

static gboolean
step_to_root (gsl_root_fsolver *solver, Search *search, double tolerance)
{
  for (int step = 0; step < MAX_STEPS && fabs (search->at_best) > tolerance; step++)
    if (gsl_root_fsolver_iterate (solver) != GSL_SUCCESS)
      break;
  return fabs (search->at_best) <= tolerance;
}

gboolean
tb_solve_root (const TbCurve *curve, const TbBracket *bracket, double tolerance, double *root)
{
  Search search = { curve, bracket, NAN, INFINITY };
  gsl_function function = { search_value, &search };
  g_autoptr (gsl_root_fsolver) solver = NULL;

  search_value (bracket->low, &search);
  search_value (bracket->high, &search);
  if (fabs (search.at_best) > tolerance)
    {
      if (!encloses_root (bracket))
        return FALSE;
      quieten ();
      solver = gsl_root_fsolver_alloc (gsl_root_fsolver_brent);
      if (gsl_root_fsolver_set (solver, &function, bracket->low, bracket->high) != GSL_SUCCESS
          || !step_to_root (solver, &search, tolerance))
        return FALSE;
    }
  *root = search.best;
  return TRUE;
}

/* A greatest value is the least of the curve turned over. */
typedef struct Turned
{
  const TbCurve *curve;
  double sign;
} Turned;

static double
turned_value (double x, void *data)
{
  const Turned *turned = data;

  return turned->sign * turned->curve->function (x, turned->curve->user_data);
}

static gboolean
turning_sign (const TbTriple *triple, double *sign)
{
  if (triple->at_middle < triple->at_low && triple->at_middle < triple->at_high)
    *sign = 1;
  else if (triple->at_middle > triple->at_low && triple->at_middle > triple->at_high)
    *sign = -1;
  else
    return FALSE;
  return triple->low < triple->middle && triple->middle < triple->high;
}

gboolean
tb_solve_turning_point (const TbCurve *curve,
                        const TbTriple *triple,
                        double tolerance,
                        double *place,
                        double *value)
{
  Turned turned = { curve, 1 };
  gsl_function function = { turned_value, &turned };
  g_autoptr (gsl_min_fminimizer) search = NULL;

  if (!turning_sign (triple, &turned.sign))
    return FALSE;
  quieten ();
  search = gsl_min_fminimizer_alloc (gsl_min_fminimizer_brent);
  if (gsl_min_fminimizer_set_with_values (search, &function, triple->middle, turned.sign * triple->at_middle,
                                          triple->low, turned.sign * triple->at_low, triple->high,
                                          turned.sign * triple->at_high)
      != GSL_SUCCESS)
    return FALSE;
  for (int step = 0; step < MAX_STEPS; step++)
    if (gsl_min_fminimizer_x_upper (search) - gsl_min_fminimizer_x_lower (search) <= tolerance
        || gsl_min_fminimizer_iterate (search) != GSL_SUCCESS)
      break;
  *place = gsl_min_fminimizer_x_minimum (search);
  *value = turned.sign * gsl_min_fminimizer_f_minimum (search);
  return TRUE;
}
