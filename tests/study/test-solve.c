/* Roots and turning points against functions whose places are known, and sentences with gaps.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include <math.h>

#include "tb-fill.h"
#include "tb-solve.h"

static double
cubic (double x, gpointer data)
{
  guint *calls = data;

  (*calls)++;
  return x * x * x - 2;
}

static double
jump (double x, gpointer data)
{
  return x < 0.3 ? -1 : 1;
}

static double
hill (double x, gpointer data)
{
  return 3 - (x - 0.7) * (x - 0.7);
}

static double
nothing (double x, gpointer data)
{
  return x < 1 ? -1 : x > 1.9 ? 1 : NAN;
}

static void
test_root (void)
{
  guint calls = 0;
  const TbCurve curve = { cubic, &calls };
  TbBracket bracket = { 0, 2, -2, 6 };
  double root;

  g_assert_true (tb_solve_root (&curve, &bracket, 1e-9, &root));
  g_assert_cmpfloat_with_epsilon (root, cbrt (2.0), 1e-9);
  /* Measured: 9. The ends are not asked for again. */
  g_assert_cmpuint (calls, <=, 12);
  bracket = (TbBracket){ 0, 1, -2, -1 };
  g_assert_false (tb_solve_root (&curve, &bracket, 1e-9, &root));
  bracket = (TbBracket){ 0, 1, 0, -1 };
  g_assert_true (tb_solve_root (&curve, &bracket, 1e-9, &root));
  g_assert_cmpfloat (root, ==, 0);
}

static void
test_no_root (void)
{
  const TbCurve jumps = { jump, NULL }, gap = { nothing, NULL };
  double root;

  g_assert_false (tb_solve_root (&jumps, &(TbBracket){ 0, 1, -1, 1 }, 1e-6, &root));
  g_assert_false (tb_solve_root (&gap, &(TbBracket){ 0, 2, -1, 1 }, 1e-6, &root));
  g_assert_false (tb_solve_root (&gap, &(TbBracket){ 0, 2, NAN, 1 }, 1e-6, &root));
}

static void
test_turning_point (void)
{
  const TbCurve curve = { hill, NULL };
  TbTriple triple = { 0, 0.5, 2, hill (0, NULL), hill (0.5, NULL), hill (2, NULL) };
  double place, value;

  g_assert_true (tb_solve_turning_point (&curve, &triple, 1e-4, &place, &value));
  g_assert_cmpfloat_with_epsilon (place, 0.7, 1e-4);
  g_assert_cmpfloat_with_epsilon (value, 3, 1e-7);
  triple.at_middle = triple.at_low;
  g_assert_false (tb_solve_turning_point (&curve, &triple, 1e-4, &place, &value));
}

static void
assert_filled (const char *expected, char *text)
{
  g_assert_cmpstr (text, ==, expected);
  g_free (text);
}

static void
test_fill (void)
{
  assert_filled ("b before a, 5 %", tb_fill_with ("%2$s before %1$s, 5 %%", "a", "b", NULL));
  assert_filled ("x and y", tb_fill_with ("%s and %s", "x", "y", NULL));
  /* What a careless translation may hold. */
  assert_filled (" gone", tb_fill_with ("%3$s gone", "a", NULL));
  assert_filled ("%d 3%", tb_fill_with ("%d 3%", "a", NULL));
  /* What a name may hold is not looked at. */
  assert_filled ("%1$s", tb_fill_with ("%1$s", "%1$s", NULL));
}

static void
test_number (void)
{
  assert_filled ("0.0", tb_number_text (-0.04, 1));
  assert_filled ("\xe2\x88\x92"
                 "0.1",
                 tb_number_text (-0.06, 1));
  assert_filled ("+2.50", tb_signed_text (2.5, 2));
  assert_filled ("0", tb_signed_text (0.2, 0));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/solve/root", test_root);
  g_test_add_func ("/solve/no-root", test_no_root);
  g_test_add_func ("/solve/turning-point", test_turning_point);
  g_test_add_func ("/solve/fill", test_fill);
  g_test_add_func ("/solve/number", test_number);
  return g_test_run ();
}
