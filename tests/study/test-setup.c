/* Patterns, setups, studies and runs: immutable, counted, equal when they say the same.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include <math.h>
#include <string.h>

#include "house-setup.h"
#include "tb-study.h"
#include "tb-study-runs.h"

static void
test_pattern_refuses (void)
{
  TbOilProfile bad = house_profile ();
  TbStatus status = TB_OK;
  g_autofree TbOil *oil = g_new0 (TbOil, 1);

  bad.length = (double) NAN;
  g_assert_null (tb_pattern_new_profile (NULL, "bad", &bad, &status));
  g_assert_cmpint (status, ==, TB_ERROR_NOT_FINITE);
  bad.length = -1;
  g_assert_null (tb_pattern_new_profile (NULL, "bad", &bad, &status));
  g_assert_cmpint (status, ==, TB_ERROR_OUT_OF_RANGE);
  g_assert_null (tb_pattern_new_table (NULL, "empty", oil, &status));
  g_assert_cmpint (status, ==, TB_ERROR_EMPTY_PATTERN);
  g_assert_null (tb_pattern_new_table (NULL, "empty", oil, NULL));
}

/* A table made of a table's film is the same table, to the last bit, and differs from the film it was made of
 * by rounding at most. */
static void
test_pattern_table_settles (void)
{
  g_autoptr (TbPattern) pattern = house_pattern ();
  g_autoptr (TbPattern) table = tb_pattern_new_table (NULL, "Table", &pattern->oil, NULL);
  g_autoptr (TbPattern) again = tb_pattern_new_table (NULL, "Table", &table->oil, NULL);
  double volume = tb_oil_volume (&pattern->oil);

  g_assert_cmpmem (&table->oil, sizeof table->oil, &again->oil, sizeof again->oil);
  /* Measured: 1e-16. */
  g_assert_cmpfloat_with_epsilon (tb_oil_volume (&table->oil) / volume, 1.0, 1e-14);
}

static void
test_setup_points_into_its_pattern (void)
{
  g_autoptr (TbSetup) setup = house_setup ();
  g_autoptr (TbPattern) other = house_pattern ();
  g_autoptr (TbSetup) moved = tb_setup_with_pattern (setup, other);
  TbShot shot = setup->shot;
  g_autoptr (TbSetup) same = NULL;

  g_assert_true (setup->shot.lane.oil == &setup->pattern->oil);
  g_assert_true (moved->shot.lane.oil == &other->oil);
  shot.lane.oil = NULL;
  same = tb_setup_with_shot (setup, &shot);
  g_assert_true (same->shot.lane.oil == &setup->pattern->oil);
}

static void
test_setup_with_field (void)
{
  g_autoptr (TbSetup) setup = house_setup ();
  const TbField *speed = tb_field_find (TB_GROUP_DELIVERY, "speed_mph");
  TbProblem problem = { 0 };
  g_autoptr (TbSetup) faster = tb_setup_with_field (setup, speed, 19, &problem);

  g_assert_cmpfloat (faster->shot.delivery.speed, ==, tb_metres_per_second_from_mph (19));
  g_assert_cmpfloat (setup->shot.delivery.speed, ==, tb_metres_per_second_from_mph (17));
  g_assert_null (tb_setup_with_field (setup, speed, 190, &problem));
  g_assert_cmpint (problem.status, ==, TB_ERROR_OUT_OF_RANGE);
  g_assert_true (problem.field == speed);
  g_assert_cmpfloat (problem.value, ==, 190);
  g_assert_null (tb_setup_with_field (setup, speed, (double) NAN, NULL));
}

static void
test_setup_names (void)
{
  g_autoptr (TbSetup) setup = house_setup ();
  TbBall ball = tb_ball_default ();
  TbDelivery delivery = tb_delivery_default ();
  g_autoptr (TbSetup) with_ball = NULL;
  g_autoptr (TbSetup) with_both = NULL;

  ball.mass = 6;
  delivery.speed = 6;
  with_ball = tb_setup_with_ball (setup, &ball, "b", "Ball");
  with_both = tb_setup_with_bowler (with_ball, &delivery, "p", "Player");
  g_assert_cmpstr (with_both->ball_id, ==, "b");
  g_assert_cmpstr (with_both->ball_name, ==, "Ball");
  g_assert_cmpstr (with_both->bowler_id, ==, "p");
  g_assert_cmpstr (with_both->bowler_name, ==, "Player");
  g_assert_cmpfloat (with_both->shot.ball.mass, ==, 6);
  g_assert_cmpfloat (with_both->shot.delivery.speed, ==, 6);
  g_assert_null (setup->ball_id);
}

/* Every field counts, by one step of its last bit; so do holes, constants, options and names. */
static void
test_setup_equal_sees_every_field (void)
{
  g_autoptr (TbSetup) setup = house_setup ();

  for (const TbField *field = tb_field_table; field->name; field++)
    {
      TbShot shot = setup->shot;
      char *at = (char *) tb_shot_group (&shot, field->group) + field->offset;
      g_autoptr (TbSetup) changed = NULL;

      if (field->kind == TB_FIELD_CHOICE)
        *(int *) at += 1;
      else
        *(double *) at = nextafter (*(double *) at, HUGE_VAL);
      changed = tb_setup_with_shot (setup, &shot);
      g_assert_false (tb_setup_equal (setup, changed));
    }
}

static void
check_differs (const TbSetup *setup, const TbShot *shot)
{
  g_autoptr (TbSetup) changed = tb_setup_with_shot (setup, shot);

  g_assert_false (tb_setup_equal (setup, changed));
}

static void
test_setup_equal_sees_the_rest (void)
{
  g_autoptr (TbSetup) setup = house_setup ();
  g_autoptr (TbSetup) same = house_setup ();
  g_autoptr (TbSetup) named = tb_setup_with_ball (setup, &setup->shot.ball, "b", NULL);
  TbShot shot = setup->shot;

  g_assert_true (tb_setup_equal (setup, same));
  g_assert_false (tb_setup_equal (setup, named));
  shot.ball.n_holes = 1;
  shot.ball.hole[0] = (TbHole){ .diameter = 0.02, .depth = 0.05 };
  check_differs (setup, &shot);
  shot = setup->shot;
  shot.assumed.film_friction *= 2;
  check_differs (setup, &shot);
  shot = setup->shot;
  shot.options.no_air_drag = true;
  check_differs (setup, &shot);
}

static void
test_study_snapshots (void)
{
  g_autoptr (TbSetup) before = house_setup ();
  g_autoptr (TbSetup) after
      = tb_setup_with_field (before, tb_field_find (TB_GROUP_DELIVERY, "speed_mph"), 19, NULL);
  g_autoptr (TbStudy) study = tb_study_new (before, after, "Title", NULL);
  g_autoptr (TbStudy) swapped = tb_study_swapped (study);
  g_autoptr (TbStudy) back = tb_study_swapped (swapped);
  g_autoptr (TbStudy) noted = tb_study_with_text (study, study->title, "noted");
  g_autoptr (TbStudy) alike = tb_study_with_side (study, TB_SIDE_AFTER, before);

  g_assert_cmpstr (study->notes, ==, "");
  g_assert_true (swapped->side[TB_SIDE_BEFORE] == after);
  g_assert_true (tb_study_equal (study, back));
  g_assert_false (tb_study_equal (study, swapped));
  g_assert_false (tb_study_equal (study, noted));
  g_assert_true (alike->side[TB_SIDE_AFTER] == before);
  g_assert_cmpstr (alike->title, ==, "Title");
}

/* What was thrown once is not thrown again, whichever side it is on then. */
static void
test_runs_follow (void)
{
  g_autoptr (TbSetup) first = house_setup ();
  g_autoptr (TbSetup) second
      = tb_setup_with_field (first, tb_field_find (TB_GROUP_DELIVERY, "speed_mph"), 19, NULL);
  g_autoptr (TbStudy) study = tb_study_new (first, second, NULL, NULL);
  g_autoptr (TbStudy) swapped = tb_study_swapped (study);
  g_autoptr (TbStudy) kept = tb_study_with_side (swapped, TB_SIDE_BEFORE, first);
  TbRun *runs[TB_N_SIDES] = { NULL, NULL }, *of_first, *of_second;

  tb_study_runs_follow (runs, study);
  of_first = runs[TB_SIDE_BEFORE];
  of_second = runs[TB_SIDE_AFTER];
  g_assert_true (of_first->setup == first && of_second->setup == second);
  tb_study_runs_follow (runs, swapped);
  g_assert_true (runs[TB_SIDE_BEFORE] == of_second && runs[TB_SIDE_AFTER] == of_first);
  tb_study_runs_follow (runs, kept);
  g_assert_true (runs[TB_SIDE_BEFORE] == of_first && runs[TB_SIDE_AFTER] == of_first);
  tb_study_runs_follow (runs, study);
  g_assert_true (runs[TB_SIDE_BEFORE] == of_first && runs[TB_SIDE_AFTER]->setup == second);
  tb_study_runs_clear (runs);
  g_assert_null (runs[TB_SIDE_AFTER]);
}

static void
test_run (void)
{
  g_autoptr (TbSetup) setup = house_setup ();
  g_autoptr (TbRun) run = tb_run_new (setup);
  g_autoptr (TbRun) held G_GNUC_UNUSED = tb_run_ref (run);

  g_assert_cmpint (run->status, ==, TB_OK);
  g_assert_true (run->setup == setup);
  g_assert_cmpint (run->path.count, >, 10);
  g_assert_cmpint (run->path.capacity, ==, run->path.count);
  g_assert_cmpint (run->path.result, ==, TB_RESULT_PINS);
}

/* Thrown into the gutter, a run stops there; the same without gutters reaches the pins, and says where it
 * left. */
static void
test_run_edgeless (void)
{
  g_autoptr (TbSetup) setup = house_setup ();
  g_autoptr (TbSetup) wide
      = tb_setup_with_field (setup, tb_field_find (TB_GROUP_DELIVERY, "aim_board"), 5, NULL);
  g_autoptr (TbRun) run = tb_run_new (wide);
  g_autoptr (TbRun) edgeless = tb_run_new_edgeless (wide);

  g_assert_cmpint (run->path.result, ==, TB_RESULT_RIGHT_GUTTER);
  g_assert_true (isnan (run->path.measures.x_at_pins));
  g_assert_true (isfinite (edgeless->path.measures.x_at_pins));
  /* Measured: 6e-6 m: the edge is found inside a whole step, and at the end of a shortened one. */
  g_assert_cmpfloat_with_epsilon (edgeless->path.measures.gutter_y, run->path.measures.gutter_y, 1e-4);
  g_assert_false (wide->shot.options.edgeless);
}

static void
test_run_that_cannot (void)
{
  g_autoptr (TbSetup) setup = house_setup ();
  TbShot shot = setup->shot;
  g_autoptr (TbSetup) bad = NULL;
  g_autoptr (TbRun) run = NULL;

  shot.delivery.speed = -1;
  bad = tb_setup_with_shot (setup, &shot);
  run = tb_run_new (bad);
  g_assert_cmpint (run->status, ==, TB_ERROR_OUT_OF_RANGE);
  g_assert_cmpstr (run->problem.field->name, ==, "speed_mph");
  g_assert_cmpint (run->path.count, ==, 0);
  g_assert_null (run->path.samples);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/pattern/refuses", test_pattern_refuses);
  g_test_add_func ("/pattern/table-settles", test_pattern_table_settles);
  g_test_add_func ("/setup/points-into-its-pattern", test_setup_points_into_its_pattern);
  g_test_add_func ("/setup/with-field", test_setup_with_field);
  g_test_add_func ("/setup/names", test_setup_names);
  g_test_add_func ("/setup/equal-sees-every-field", test_setup_equal_sees_every_field);
  g_test_add_func ("/setup/equal-sees-the-rest", test_setup_equal_sees_the_rest);
  g_test_add_func ("/study/snapshots", test_study_snapshots);
  g_test_add_func ("/study/runs-follow", test_runs_follow);
  g_test_add_func ("/run/thrown", test_run);
  g_test_add_func ("/run/edgeless", test_run_edgeless);
  g_test_add_func ("/run/that-cannot", test_run_that_cannot);
  return g_test_run ();
}
