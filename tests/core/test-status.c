/* Bad input comes back as a status with a sentence, names the field, and leaves an empty path.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include <string.h>
#include "support.h"

static void
test_sentences (void)
{
  g_autoptr (GHashTable) seen = g_hash_table_new (g_str_hash, g_str_equal);

  for (int status = 0; status < TB_N_STATUS; status++)
    {
      const char *sentence = tb_status_sentence ((TbStatus)status);

      g_assert_nonnull (sentence);
      g_assert_true (g_ascii_isupper (sentence[0]));
      g_assert_true (g_str_has_suffix (sentence, "."));
      g_assert_true (g_hash_table_add (seen, (gpointer)sentence));
    }
  g_assert_nonnull (tb_status_sentence (TB_N_STATUS));
}

/* Runs a bad shot over a path that holds an earlier one. */
static void
check_refused (const char *what, const TbShot *shot, TbStatus want, const TbField *blamed)
{
  g_autoptr (CheckRun) run = check_run_new ();
  TbShot good = check_house_shot ();
  TbProblem problem = { 0 };

  check_run_shot (run, &good);
  check_status (what, tb_shot_check (shot, &problem), want);
  check_status (what, tb_shot_run (shot, run->workspace, &run->path, &problem), want);
  check_status (what, problem.status, want);
  if (problem.field != blamed)
    g_test_fail_printf ("%s: blames %s", what, problem.field != NULL ? problem.field->name : "no field");
  if (run->path.count != 0 || run->path.n_stretches != 0)
    g_test_fail_printf ("%s: the path is not cleared", what);
  check_status ("the same without a problem to fill in", tb_shot_run (shot, run->workspace, &run->path, NULL),
                want);
}

static void
set_raw (TbShot *shot, const TbField *field, double value)
{
  *(double *)((char *)tb_shot_group (shot, field->group) + field->offset) = value;
}

static void
test_every_field (void)
{
  for (const TbField *f = tb_field_table; f->name != NULL; f++)
    {
      TbShot shot = check_house_shot ();
      double beyond = 0.05 * (f->max - f->min);
      gboolean weight = strcmp (f->name, "weight_lb") == 0;

      if (f->kind == TB_FIELD_CHOICE || f->alias_of != NULL)
        continue;
      set_raw (&shot, f, NAN);
      check_refused (f->name, &shot, TB_ERROR_NOT_FINITE, f);
      set_raw (&shot, f, INFINITY);
      check_refused (f->name, &shot, TB_ERROR_NOT_FINITE, f);
      set_raw (&shot, f, f->to_si (f->max + beyond));
      check_refused (f->name, &shot, weight ? TB_ERROR_BALL_TOO_HEAVY : TB_ERROR_OUT_OF_RANGE, f);
      set_raw (&shot, f, f->to_si (f->min - beyond));
      check_refused (f->name, &shot, TB_ERROR_OUT_OF_RANGE, f);
    }
}

static void
test_choices (void)
{
  TbShot shot = check_house_shot ();

  shot.delivery.hand = (TbHand)7;
  g_assert_cmpint (tb_shot_check (&shot, NULL), !=, TB_OK);
  shot = check_house_shot ();
  shot.ball.cover.kind = (TbCoverKind)-1;
  g_assert_cmpint (tb_shot_check (&shot, NULL), !=, TB_OK);
}

static void
test_value_is_told (void)
{
  TbShot shot = check_house_shot ();
  TbProblem problem = { 0 };

  shot.ball.mass = tb_kilograms_from_lb (16.5);
  check_status ("too heavy", tb_shot_check (&shot, &problem), TB_ERROR_BALL_TOO_HEAVY);
  g_assert_cmpstr (problem.field->name, ==, "weight_lb");
  check_near ("told in its unit, lb", problem.value, 16.5, 1e-12);
}

static void
test_patterns (void)
{
  g_autofree TbOil *oil = g_memdup2 (check_house_oil (), sizeof (TbOil));
  TbShot shot = check_house_shot ();

  shot.lane.oil = NULL;
  check_refused ("no pattern", &shot, TB_ERROR_NO_PATTERN, NULL);
  shot.lane.oil = oil;
  tb_oil_set_cell (oil, 10, 10, NAN);
  tb_oil_reflect (oil);
  check_refused ("film not a number", &shot, TB_ERROR_NOT_FINITE, NULL);
  tb_oil_set_cell (oil, 10, 10, -1e-6);
  tb_oil_reflect (oil);
  check_refused ("film below nothing", &shot, TB_ERROR_OUT_OF_RANGE, NULL);
  tb_oil_clear (oil);
  check_refused ("empty pattern", &shot, TB_ERROR_EMPTY_PATTERN, NULL);
}

static void
test_ball (void)
{
  TbShot shot = check_house_shot ();

  shot.ball.intermediate_differential = shot.ball.differential + 1e-4;
  g_assert_cmpint (tb_shot_check (&shot, NULL), ==, TB_ERROR_DIFFERENTIALS);
  shot = check_house_shot ();
  shot.ball.n_holes = TB_MAX_HOLES + 1;
  g_assert_cmpint (tb_shot_check (&shot, NULL), ==, TB_ERROR_HOLES);
  shot.ball.n_holes = 1;
  shot.ball.hole[0] = (TbHole){ TB_HOLE_THUMB, 0, 0, 0.025, 0.30, 0, 0 };
  g_assert_cmpint (tb_shot_check (&shot, NULL), ==, TB_ERROR_HOLES);
  shot.ball.hole[0] = (TbHole){ TB_HOLE_THUMB, 0.5, 0, 0.025, 0.05, 0, 0 };
  g_assert_cmpint (tb_shot_check (&shot, NULL), ==, TB_ERROR_HOLES);
  shot.ball.hole[0] = (TbHole){ TB_HOLE_THUMB, 0, NAN, 0.025, 0.05, 0, 0 };
  g_assert_cmpint (tb_shot_check (&shot, NULL), ==, TB_ERROR_NOT_FINITE);
}

static void
test_zones (void)
{
  CheckLane lane;

  check_lane_uniform (&lane, 0.1);
  check_status ("uniform", tb_zones_check (&lane.zones), TB_OK);
  lane.zones.at_start[0] = -0.01;
  check_status ("less than none", tb_zones_check (&lane.zones), TB_ERROR_BAD_ZONES);
  check_lane_uniform (&lane, 0.1);
  check_lane_add (&lane, 5.0, 0.1, 0.1);
  check_lane_add (&lane, 4.0, 0.1, 0.1);
  check_status ("out of order", tb_zones_check (&lane.zones), TB_ERROR_BAD_ZONES);
  lane.zones.count = 0;
  check_status ("none", tb_zones_check (&lane.zones), TB_ERROR_BAD_ZONES);
  lane.zones.count = TB_MAX_ZONES + 1;
  check_status ("too many", tb_zones_check (&lane.zones), TB_ERROR_BAD_ZONES);
  check_lane_uniform (&lane, NAN);
  check_status ("not a number", tb_zones_check (&lane.zones), TB_ERROR_NOT_FINITE);
}

static void
check_motion_refused (const char *what, const TbMotion *motion, TbStatus want)
{
  g_autoptr (CheckRun) run = check_run_new ();

  check_status (what, tb_motion_run (motion, run->workspace, &run->path), want);
}

static void
test_motions (void)
{
  const CheckThrow straight = { .speed = 8.0 };
  TbBody body = check_plain_ball ();
  CheckLane lane;
  TbMotion motion, good;

  check_lane_uniform (&lane, 0.2);
  good = check_motion (&body, &lane.friction);
  check_throw (&good, &straight);
  motion = good;
  check_set_motion (&motion.state, &body, tb_vec3 (0, 0.2, 0), tb_vec3 (-0.2 / body.radius, 0, 0));
  check_motion_refused ("too slow", &motion, TB_ERROR_TOO_SLOW);
  motion = good;
  motion.state.position.y = motion.end_y + 0.1;
  check_motion_refused ("past the pins", &motion, TB_ERROR_BEYOND_LANE);
  motion = good;
  motion.state.velocity.z = 30.0;
  motion.state.velocity.y = 30.0;
  check_motion_refused ("over the pins", &motion, TB_ERROR_BEYOND_LANE);
  motion = good;
  motion.state.velocity.y = NAN;
  check_motion_refused ("not a number", &motion, TB_ERROR_NOT_FINITE);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/status/sentences", test_sentences);
  g_test_add_func ("/status/every-field", test_every_field);
  g_test_add_func ("/status/choices", test_choices);
  g_test_add_func ("/status/value-is-told", test_value_is_told);
  g_test_add_func ("/status/patterns", test_patterns);
  g_test_add_func ("/status/ball", test_ball);
  g_test_add_func ("/status/zones", test_zones);
  g_test_add_func ("/status/motions", test_motions);
  return g_test_run ();
}
