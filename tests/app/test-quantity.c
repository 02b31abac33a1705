/* Numbers as people read and type them.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include <string.h>

#include "tb-quantity.h"

static TbQuantity
quantity (const char *name, TbUnits units)
{
  for (const TbField *field = tb_field_table; field->name != NULL; field++)
    if (g_str_equal (field->name, name))
      return tb_quantity_for_field (field, units);
  g_assert_not_reached ();
}

/* What was typed, and the value it stands for; NAN if it is to be refused. */
typedef struct Typed
{
  const char *field;
  TbUnits units;
  const char *text;
  double value;
} Typed;

static void
test_parse (void)
{
  static const Typed typed[] = {
    { "speed_mph", TB_UNITS_IMPERIAL, "17", 17 },
    { "speed_mph", TB_UNITS_IMPERIAL, " 17.5 mph ", 17.5 },
    { "speed_mph", TB_UNITS_IMPERIAL, "17,5", 17.5 },
    { "speed_mph", TB_UNITS_IMPERIAL, "17.5mph", 17.5 },
    { "speed_mph", TB_UNITS_IMPERIAL, "28.96 km/h", 28.96 / 1.609344 },
    { "speed_mph", TB_UNITS_METRIC, "28.96", 28.96 / 1.609344 },
    { "speed_mph", TB_UNITS_METRIC, "17 mph", 17 },
    { "axis_rotation_deg", TB_UNITS_IMPERIAL, "50°", 50 },
    { "axis_rotation_deg", TB_UNITS_IMPERIAL, "-30", -30 },
    { "axis_rotation_deg", TB_UNITS_IMPERIAL, "−30°", -30 },
    { "grit", TB_UNITS_IMPERIAL, "polish", TB_GRIT_POLISH },
    { "grit", TB_UNITS_IMPERIAL, "Polish", TB_GRIT_POLISH },
    { "grit", TB_UNITS_IMPERIAL, "2000 grit", 2000 },
    /* Thousands are parted with either mark; they are never read as a thousandth. */
    { "grit", TB_UNITS_IMPERIAL, "2,000", 2000 },
    { "grit", TB_UNITS_IMPERIAL, "2.000 grit", 2000 },
    { "axis_tilt_deg", TB_UNITS_IMPERIAL, "12,5", 12.5 },
    { "dry_friction", TB_UNITS_IMPERIAL, "0,170", 0.17 },
    { "rev_rate_rpm", TB_UNITS_IMPERIAL, "1,200", NAN },
    { "rev_rate_rpm", TB_UNITS_IMPERIAL, ",", NAN },
    { "speed_mph", TB_UNITS_IMPERIAL, "1.017,5", NAN },
    { "loft_reach_in", TB_UNITS_METRIC, "15 cm", 15 / 2.54 },
    { "speed_mph", TB_UNITS_IMPERIAL, "", NAN },
    { "speed_mph", TB_UNITS_IMPERIAL, "fast", NAN },
    { "speed_mph", TB_UNITS_IMPERIAL, "17 rpm", NAN },
    { "speed_mph", TB_UNITS_IMPERIAL, "17 18", NAN },
    { "speed_mph", TB_UNITS_IMPERIAL, "nan", NAN },
    { "speed_mph", TB_UNITS_IMPERIAL, "inf", NAN },
    { "speed_mph", TB_UNITS_IMPERIAL, "99", NAN },
    { "speed_mph", TB_UNITS_IMPERIAL, "-1", NAN },
    { "weight_lb", TB_UNITS_IMPERIAL, "17", NAN },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (typed); i++)
    {
      TbQuantity self = quantity (typed[i].field, typed[i].units);
      double value = -777;
      g_autofree char *sentence = tb_quantity_parse (&self, typed[i].text, &value);

      if (isnan (typed[i].value))
        {
          /* A sentence, and nothing touched. */
          g_assert_nonnull (sentence);
          g_assert_true (g_str_has_suffix (sentence, "."));
          g_assert_cmpfloat (value, ==, -777);
        }
      else
        {
          g_assert_null (sentence);
          g_assert_cmpfloat_with_epsilon (value, typed[i].value, 1e-9);
        }
    }
}

/* What is shown can be typed: every field, at its ends and its default, in both kinds of units. */
static void
test_round_trip (void)
{
  for (int units = TB_UNITS_IMPERIAL; units <= TB_UNITS_METRIC; units++)
    for (const TbField *field = tb_field_table; field->name != NULL; field++)
      {
        TbQuantity self = tb_quantity_for_field (field, (TbUnits)units);
        const double values[] = { field->min, field->max, field->standard };

        if (field->kind != TB_FIELD_REAL)
          continue;
        for (gsize i = 0; i < G_N_ELEMENTS (values); i++)
          {
            g_autofree char *text = tb_quantity_format (&self, values[i]);
            double value = NAN;
            g_autofree char *sentence = tb_quantity_parse (&self, text, &value);

            g_assert_cmpstr (sentence, ==, NULL);
            /* To the digits shown. */
            g_assert_cmpfloat_with_epsilon (value * self.factor, values[i] * self.factor,
                                            0.51 * pow (10, -self.digits));
          }
      }
}

static void
assert_text (char *text, const char *expected)
{
  g_assert_cmpstr (text, ==, expected);
  g_free (text);
}

static void
test_format (void)
{
  TbQuantity speed = quantity ("speed_mph", TB_UNITS_IMPERIAL);
  TbQuantity metric = quantity ("speed_mph", TB_UNITS_METRIC);
  TbQuantity rotation = quantity ("axis_rotation_deg", TB_UNITS_IMPERIAL);
  TbQuantity grit = quantity ("grit", TB_UNITS_IMPERIAL);
  TbQuantity aim = quantity ("aim_board", TB_UNITS_IMPERIAL);

  assert_text (tb_quantity_format (&speed, 17), "17.0 mph");
  assert_text (tb_quantity_format (&metric, 17), "27.4 km/h");
  assert_text (tb_quantity_format (&rotation, -30), "−30°");
  assert_text (tb_quantity_format (&grit, TB_GRIT_POLISH), "Polish");
  assert_text (tb_quantity_format (&grit, 2000), "2000 grit");
  assert_text (tb_quantity_format (&aim, 16.5), "board 16.5");
  assert_text (tb_number_format (-0.04, 1), "0.0");
  assert_text (tb_number_format (-0.06, 1), "−0.1");
  assert_text (tb_number_format_signed (0.06, 1), "+0.1");
  assert_text (tb_number_format_signed (-5.6, 1), "−5.6");
  assert_text (tb_number_format_signed (0.01, 1), "0.0");
}

/* A board's number stands behind the word; it is read with the word on either side, and without. */
static void
test_board (void)
{
  static const char *const typed[] = { "16.5", "board 16.5", " Board16.5 ", "16.5 board" };
  TbQuantity aim = quantity ("aim_board", TB_UNITS_IMPERIAL);
  g_autofree char *range = NULL, *example = NULL;

  for (gsize i = 0; i < G_N_ELEMENTS (typed); i++)
    {
      double value = 0;

      g_assert_null (tb_quantity_parse (&aim, typed[i], &value));
      g_assert_cmpfloat (value, ==, 16.5);
    }
  range = tb_quantity_parse (&aim, "board 400", &(double){ 0 });
  g_assert_nonnull (strstr (range, " goes from board "));
  g_assert_nonnull (strstr (range, " to board "));
  example = tb_quantity_parse (&aim, "board", &(double){ 0 });
  g_assert_nonnull (strstr (example, "“board” is not understood"));
}

/* The ends of a slider in metric are the ends of the field. */
static void
test_ends (void)
{
  TbQuantity metric = quantity ("speed_mph", TB_UNITS_METRIC);
  double value;

  g_assert_true (
      tb_quantity_from_shown (&metric, round (metric.field->max * metric.factor * 10) / 10, &value));
  g_assert_cmpfloat (value, <=, metric.field->max);
  g_assert_false (tb_quantity_from_shown (&metric, metric.field->max * metric.factor + 1, &value));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/quantity/parse", test_parse);
  g_test_add_func ("/quantity/round-trip", test_round_trip);
  g_test_add_func ("/quantity/format", test_format);
  g_test_add_func ("/quantity/board", test_board);
  g_test_add_func ("/quantity/ends", test_ends);
  return g_test_run ();
}
