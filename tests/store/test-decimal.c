/* Numbers as text: exact, short, and read strictly.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include <locale.h>
#include <math.h>

#include "tb-core.h"
#include "tb-decimal.h"

#define N_RANDOM 2000

static void
test_short (void)
{
  static const struct
  {
    double number;
    const char *text;
  } cases[] = {
    { 0, "0" },           { -0.0, "0" },       { 17, "17" },           { 300, "300" },
    { 123456, "123456" }, { 0.1, "0.1" },      { -2.5, "-2.5" },       { 1e-7, "1e-07" },
    { 8.595, "8.595" },   { 1e300, "1e+300" }, { 2000000, "2000000" }, { 1.0 / 3, "0.3333333333333333" },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      char buffer[TB_DECIMAL_SIZE];

      g_assert_cmpstr (tb_decimal_format (cases[i].number, buffer), ==, cases[i].text);
    }
}

/* Every double reads back as itself. */
static void
test_exact (void)
{
  for (int i = 0; i < N_RANDOM; i++)
    {
      double number = ldexp (g_test_rand_double_range (-1, 1), g_test_rand_int_range (-60, 60));
      char buffer[TB_DECIMAL_SIZE];
      double back;

      g_assert_true (tb_decimal_parse (tb_decimal_format (number, buffer), &back));
      g_assert_cmpfloat (back, ==, number);
    }
}

static void
check_field (const TbField *field, double value)
{
  double si = field->to_si (value), back;
  char buffer[TB_DECIMAL_SIZE];

  g_assert_true (tb_decimal_format_si (si, field->to_si, field->from_si, buffer));
  g_assert_true (tb_decimal_parse (buffer, &back));
  g_assert_cmpfloat (field->to_si (back), ==, si);
}

/* Whatever number of a field's unit was set, the number that is saved gives the same bits. */
static void
test_fields_exact (void)
{
  for (const TbField *field = tb_field_table; field->name; field++)
    for (int i = 0; i < N_RANDOM / 10; i++)
      if (field->kind == TB_FIELD_REAL)
        check_field (field, g_test_rand_double_range (field->min, field->max));
}

/* What people set is what they find in the file: no digits that nobody typed. */
static void
test_fields_short (void)
{
  const TbField *speed = tb_field_find (TB_GROUP_DELIVERY, "speed_mph");
  const TbField *board = tb_field_find (TB_GROUP_DELIVERY, "aim_board");

  for (int tenths = 60; tenths < 280; tenths++)
    {
      char buffer[TB_DECIMAL_SIZE], plain[TB_DECIMAL_SIZE];

      g_ascii_formatd (plain, sizeof plain, "%.3g", tenths / 10.0);
      g_assert_true (
          tb_decimal_format_si (speed->to_si (tenths / 10.0), speed->to_si, speed->from_si, buffer));
      g_assert_cmpstr (buffer, ==, plain);
      g_assert_true (
          tb_decimal_format_si (board->to_si (tenths / 10.0), board->to_si, board->from_si, buffer));
      g_assert_cmpstr (buffer, ==, plain);
    }
}

static double
coarse (double number)
{
  return floor (number);
}

static double
same (double number)
{
  return number;
}

/* A number in SI that no number of the unit gives is told of, and written as near as can be. */
static void
test_unreachable (void)
{
  char buffer[TB_DECIMAL_SIZE];

  g_assert_false (tb_decimal_format_si (1.5, coarse, same, buffer));
  g_assert_cmpstr (buffer, ==, "1.5");
}

static void
test_strict (void)
{
  static const char *const bad[]
      = { "", " 1", "1 ", "1,5", "nan", "inf", "0x10", "1e", "1e999", "--1", "1.2.3", "e5", "1 000", "١" };
  double number = 7;

  for (gsize i = 0; i < G_N_ELEMENTS (bad); i++)
    g_assert_false (tb_decimal_parse (bad[i], &number));
  g_assert_cmpfloat (number, ==, 7);
  g_assert_true (tb_decimal_parse ("-1.25e2", &number));
  g_assert_cmpfloat (number, ==, -125);
}

int
main (int argc, char **argv)
{
  /* With a decimal comma where the system has such a locale: it must not matter. */
  setlocale (LC_ALL, "de_DE.UTF-8");
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/decimal/short", test_short);
  g_test_add_func ("/decimal/exact", test_exact);
  g_test_add_func ("/decimal/fields-exact", test_fields_exact);
  g_test_add_func ("/decimal/fields-short", test_fields_short);
  g_test_add_func ("/decimal/unreachable", test_unreachable);
  g_test_add_func ("/decimal/strict", test_strict);
  return g_test_run ();
}
