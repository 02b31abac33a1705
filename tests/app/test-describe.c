/* Runs in words.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include <string.h>

#include "tb-describe.h"
#include "tb-measure-text.h"
#include "tb-quantity.h"

static TbRun *
run_with (double aim_board, double speed_mph)
{
  g_autoptr (TbStudy) study = tb_library_start_study ();
  TbShot shot = study->side[TB_SIDE_AFTER]->shot;
  g_autoptr (TbSetup) setup = NULL;

  if (!isnan (aim_board))
    shot.delivery.aim = tb_x_from_board (aim_board);
  shot.delivery.speed = tb_metres_per_second_from_mph (speed_mph);
  setup = tb_setup_with_shot (study->side[TB_SIDE_AFTER], &shot);
  return tb_run_new (setup);
}

/* The numbers of a sentence are those of the run, not of a template. */
static void
assert_has_measure (const char *text, const char *name, const TbRun *run)
{
  g_autofree char *number
      = tb_describe_measure_number (tb_measure_find (name), &run->path.measures, TB_UNITS_IMPERIAL);

  if (strstr (text, number) == NULL)
    g_error ("“%s” does not say %s %s", text, name, number);
}

static void
test_run (void)
{
  const double speeds[] = { 15, 17, 20 };

  for (gsize i = 0; i < G_N_ELEMENTS (speeds); i++)
    {
      g_autoptr (TbRun) run = run_with (NAN, speeds[i]);
      g_autofree char *text = tb_describe_run (run, TB_UNITS_IMPERIAL);

      assert_has_measure (text, "board_at_arrows", run);
      assert_has_measure (text, "breakpoint_board", run);
      assert_has_measure (text, "board_at_pins", run);
      assert_has_measure (text, "angle_at_pins_deg", run);
    }
}

/* Both throws in one paragraph, with a difference that is the one the table shows. */
static void
test_both (void)
{
  g_autoptr (TbRun) slow = run_with (NAN, 17), fast = run_with (NAN, 19);
  g_autofree char *less = tb_describe_both (slow, fast, TB_UNITS_IMPERIAL);
  g_autofree char *more = tb_describe_both (fast, slow, TB_UNITS_IMPERIAL);
  g_autofree char *none = tb_describe_both (slow, slow, TB_UNITS_IMPERIAL);
  g_autofree char *difference = tb_describe_difference (tb_measure_find ("hook_board"), &slow->path.measures,
                                                        &fast->path.measures, TB_UNITS_IMPERIAL);
  g_autofree char *hooks = g_strdup_printf ("hooks %s boards less", g_utf8_next_char (difference));

  g_assert_true (g_str_has_prefix (less, "Before: "));
  g_assert_nonnull (strstr (less, " After: "));
  g_assert_nonnull (strstr (less, hooks));
  g_assert_nonnull (strstr (more, "boards more."));
  g_assert_nonnull (strstr (none, "Difference: none that shows."));
}

static void
test_gutter (void)
{
  g_autoptr (TbRun) run = run_with (3, 17);
  g_autofree char *end = tb_describe_end (run, TB_UNITS_IMPERIAL);
  g_autofree char *text = tb_describe_run (run, TB_UNITS_IMPERIAL);
  g_autofree char *where = tb_describe_distance (run->path.measures.gutter_y, TB_UNITS_IMPERIAL);

  g_assert_cmpint (run->path.result, ==, TB_RESULT_RIGHT_GUTTER);
  g_assert_nonnull (strstr (end, "right gutter"));
  g_assert_nonnull (strstr (end, where));
  g_assert_nonnull (strstr (text, end));
}

/* High, light, in the pocket and in the one beyond the head pin, from what the run's own assumptions call the
 * pocket. */
static void
test_end (void)
{
  int seen_high = 0, seen_light = 0, seen_pocket = 0, seen_other = 0;

  for (double aim = 10; aim <= 22; aim += 0.25)
    {
      g_autoptr (TbRun) run = run_with (aim, 17);
      g_autofree char *end = tb_describe_end (run, TB_UNITS_IMPERIAL);
      double board = tb_board_from_x (run->path.measures.x_at_pins);
      double low = tb_board_from_x (run->setup->shot.assumed.pocket_low);
      double high = tb_board_from_x (run->setup->shot.assumed.pocket_high);

      /* The middle of the lane is the middle of board 20. */
      gboolean other = 40 - board >= MIN (low, high) && 40 - board <= MAX (low, high);

      if (run->path.result != TB_RESULT_PINS)
        continue;
      seen_other += other;
      g_assert_cmpint (strstr (end, "in the other pocket") != NULL, ==, other);
      seen_high += strstr (end, "high") != NULL;
      seen_light += strstr (end, "light") != NULL;
      seen_pocket += strstr (end, "in the pocket") != NULL;
      g_assert_cmpint (strstr (end, "high") != NULL, ==, board > MAX (low, high) && !other);
      g_assert_cmpint (strstr (end, "light") != NULL, ==, board < MIN (low, high));
    }
  g_assert_cmpint (seen_high, >, 0);
  g_assert_cmpint (seen_light, >, 0);
  g_assert_cmpint (seen_pocket, >, 0);
  g_assert_cmpint (seen_other, >, 0);
}

static void
test_moment (void)
{
  g_autoptr (TbRun) run = run_with (NAN, 17);
  g_autofree char *start = tb_describe_moment (run, 0, TB_UNITS_IMPERIAL);
  g_autofree char *end = tb_describe_moment (run, 99, TB_UNITS_IMPERIAL);
  g_autofree char *metric = tb_describe_moment (run, 99, TB_UNITS_METRIC);

  g_assert_nonnull (strstr (start, "In the air"));
  g_assert_nonnull (strstr (end, "60.0 ft"));
  g_assert_nonnull (strstr (metric, "18.3 m"));
  g_assert_nonnull (strstr (metric, "km/h"));
}

/* Film and friction of a place are those the ball meets there; a left-hander counts from the left. */
static void
test_place (void)
{
  g_autoptr (TbRun) run = run_with (NAN, 17);
  TbShot shot = run->setup->shot;
  g_autoptr (TbSetup) setup = NULL;
  g_autoptr (TbRun) left = NULL;
  double x = tb_x_from_board (12), y = tb_metres_from_ft (20);
  double units = tb_units_from_film (tb_oil_film (shot.lane.oil, x, y) * shot.lane.pattern_scale);
  g_autofree char *film = tb_number_format (units, 1);
  g_autofree char *right_text = tb_describe_place (run, x, y, TB_UNITS_IMPERIAL);
  g_autofree char *left_text = NULL;

  g_assert_nonnull (strstr (right_text, "12.0"));
  g_assert_nonnull (strstr (right_text, film));
  shot.delivery.hand = TB_HAND_LEFT;
  setup = tb_setup_with_shot (run->setup, &shot);
  left = tb_run_new (setup);
  left_text = tb_describe_place (left, x, y, TB_UNITS_IMPERIAL);
  g_assert_nonnull (strstr (left_text, "28.0"));
  g_assert_nonnull (strstr (left_text, film));
}

static void
test_problem (void)
{
  g_autoptr (TbStudy) study = tb_library_start_study ();
  TbShot shot = study->side[TB_SIDE_AFTER]->shot;
  g_autoptr (TbSetup) setup = NULL;
  g_autoptr (TbRun) run = NULL;
  g_autofree char *text = NULL;

  shot.ball.intermediate_differential = 2 * shot.ball.differential;
  setup = tb_setup_with_shot (study->side[TB_SIDE_AFTER], &shot);
  run = tb_run_new (setup);
  text = tb_describe_run (run, TB_UNITS_IMPERIAL);
  g_assert_cmpint (run->status, !=, TB_OK);
  g_assert_true (g_str_has_prefix (text, "Intermediate differential: 0.09 is out of range"));
  g_assert_nonnull (strstr (text, "expected. Change it on the left, or undo"));
}

static void
test_difference (void)
{
  g_autoptr (TbRun) slow = run_with (NAN, 17);
  g_autoptr (TbRun) fast = run_with (NAN, 19);
  const TbMeasureInfo *speed = tb_measure_find ("actual_speed_mph");
  g_autofree char *imperial
      = tb_describe_difference (speed, &slow->path.measures, &fast->path.measures, TB_UNITS_IMPERIAL);
  g_autofree char *metric
      = tb_describe_difference (speed, &slow->path.measures, &fast->path.measures, TB_UNITS_METRIC);

  g_assert_cmpstr (imperial, ==, "+2.0");
  g_assert_cmpstr (metric, ==, "+3.2");
}

/* 17.75 and 12.05 are shown as 17.8 and 12.0, or the other way about: the difference is that of what is
 * shown. */
static void
test_difference_as_read (void)
{
  const TbMeasureInfo *board = tb_measure_find ("board_at_pins");
  const double from[] = { 17.7517, 17.7489, 17.84, 17.86 }, to[] = { 12.0488, 12.0511, 17.86, 17.84 };

  for (guint i = 0; i < G_N_ELEMENTS (from); i++)
    {
      TbMeasures before = { .x_at_pins = tb_x_from_board (from[i]) },
                 after = { .x_at_pins = tb_x_from_board (to[i]) };
      g_autofree char *a = tb_measure_number_text (board, &before, FALSE);
      g_autofree char *b = tb_measure_number_text (board, &after, FALSE);
      g_autofree char *difference = tb_measure_difference_text (board, &before, &after, FALSE);
      double told = g_ascii_strtod (b, NULL) - g_ascii_strtod (a, NULL);
      g_autofree char *expected = g_strdup_printf ("%s%.1f", told < 0 ? "−" : "+", fabs (told));

      g_assert_cmpstr (difference, ==, expected);
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/describe/run", test_run);
  g_test_add_func ("/describe/both", test_both);
  g_test_add_func ("/describe/gutter", test_gutter);
  g_test_add_func ("/describe/end", test_end);
  g_test_add_func ("/describe/moment", test_moment);
  g_test_add_func ("/describe/place", test_place);
  g_test_add_func ("/describe/problem", test_problem);
  g_test_add_func ("/describe/difference", test_difference);
  g_test_add_func ("/describe/difference-as-read", test_difference_as_read);
  return g_test_run ();
}
