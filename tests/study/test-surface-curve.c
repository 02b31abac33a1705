/* Curves against grit: the order that the trade tells, turning points only where the points have one, and
 * words that say what the points say.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "house-setup.h"
#include "tb-pocket-line.h"
#include "tb-surface-curve.h"

static const TbSurfacePoint *
point_at (const TbSurfaceCurve *curve, guint i)
{
  return &g_array_index (curve->points, TbSurfacePoint, i);
}

/* Common practice: on one line, the coarser the surface, the more and the earlier it hooks and the sooner it
 * rolls. */
static void
test_same_line (void)
{
  g_autoptr (TbSetup) setup = house_setup ();
  g_autoptr (TbSurfaceCurve) curve = tb_surface_curve_new (setup, TB_BALL_SAME_LINE, NULL);

  g_assert_cmpint (tb_surface_curve_trend (curve, TB_SURFACE_HOOK, NULL), ==, TB_TREND_FALLS);
  g_assert_cmpint (tb_surface_curve_trend (curve, TB_SURFACE_TURNS, NULL), ==, TB_TREND_RISES);
  g_assert_cmpint (tb_surface_curve_trend (curve, TB_SURFACE_ROLLS, NULL), ==, TB_TREND_RISES);
  g_assert_cmpint (tb_surface_curve_trend (curve, TB_SURFACE_AIM, NULL), ==, TB_TREND_LEVEL);
  for (guint i = 0; i < curve->points->len; i++)
    g_assert_true (isnan (point_at (curve, i)->room));
}

/* Each on its own pocket line every ball ends in the pocket from the same laydown; the coarse one is sent
 * further out, rolls sooner and comes in flatter than the middling one: what the trade calls burning up. */
static void
test_pocket_line (void)
{
  g_autoptr (TbSetup) setup = house_setup ();
  g_autoptr (TbSurfaceCurve) curve = tb_surface_curve_new (setup, TB_BALL_POCKET_LINE, NULL);
  const TbAssumed *assumed = &setup->shot.assumed;
  guint coarse, best, fine;

  for (guint i = 0; i < curve->points->len; i++)
    {
      const TbSurfacePoint *point = point_at (curve, i);

      g_assert_true (point->there);
      g_assert_true (tb_pocket_contains (assumed, &point->measures));
      g_assert_cmpfloat (point->delivery.laydown, ==, setup->shot.delivery.laydown);
      g_assert_cmpfloat (point->room, >, 0);
    }
  g_assert_cmpint (tb_surface_curve_trend (curve, TB_SURFACE_AIM, NULL), ==, TB_TREND_RISES);
  g_assert_true (tb_surface_curve_landmarks (curve, &coarse, &best, &fine));
  /* Measured 2.8° at 500 and 4.1° at 4000 grit; 41 ft at 500 and 51 at 2000. */
  g_assert_cmpfloat (tb_surface_point_value (point_at (curve, 0), TB_SURFACE_ANGLE) + 0.5, <,
                     tb_surface_point_value (point_at (curve, 8), TB_SURFACE_ANGLE));
  g_assert_cmpfloat (tb_surface_point_value (point_at (curve, 0), TB_SURFACE_ROLLS) + 4, <,
                     tb_surface_point_value (point_at (curve, 4), TB_SURFACE_ROLLS));
}

/* The present ball is thrown as it is, not as the nearest pad would leave it. */
static void
test_present (void)
{
  g_autoptr (TbSetup) setup = house_setup ();
  TbShot shot = setup->shot;
  g_autoptr (TbSetup) other = NULL;

  shot.ball.cover.roughness = tb_roughness_from_grit (1234);
  other = tb_setup_with_shot (setup, &shot);

  g_autoptr (TbSurfaceCurve) curve = tb_surface_curve_new (other, TB_BALL_SAME_LINE, NULL);
  g_autoptr (TbRun) run = tb_run_new_edgeless (other);

  g_assert_cmpfloat_with_epsilon (curve->present.grit, 1234, 1e-6);
  g_assert_cmpfloat (curve->present.measures.x_at_pins, ==, run->path.measures.x_at_pins);
}

static void
test_cancelled (void)
{
  g_autoptr (TbSetup) setup = house_setup ();
  g_autoptr (GCancellable) cancellable = g_cancellable_new ();

  g_cancellable_cancel (cancellable);
  g_assert_null (tb_surface_curve_new (setup, TB_BALL_SAME_LINE, cancellable));
  g_assert_null (tb_surface_curve_new (setup, TB_BALL_POCKET_LINE, cancellable));
}

/* Words, of curves made up for the purpose. */

static TbSurfaceCurve *
made_up (TbBallLine line, const double *angles_deg, const double *rooms, guint count)
{
  static const double grits[] = { 500, 1000, 2000, 4000, TB_GRIT_POLISH };
  TbSurfaceCurve *curve = g_new0 (TbSurfaceCurve, 1);

  g_assert_cmpuint (count, <=, G_N_ELEMENTS (grits));
  curve->line = line;
  curve->points = g_array_new (FALSE, TRUE, sizeof (TbSurfacePoint));
  for (guint i = 0; i < count; i++)
    {
      TbSurfacePoint point
          = { .grit = grits[i], .roughness = tb_roughness_from_grit (grits[i]), .there = TRUE };

      point.measures.angle_at_pins = tb_radians_from_deg (angles_deg[i]);
      point.measures.roll_start_y = tb_metres_from_ft (50);
      point.measures.hook_start_y = tb_metres_from_ft (30);
      point.measures.breakpoint_y = tb_metres_from_ft (40);
      point.room = rooms[i];
      g_array_append_val (curve->points, point);
    }
  return curve;
}

static char *
words (const TbSurfaceCurve *curve)
{
  g_autoptr (GPtrArray) sentences = tb_surface_curve_explain (curve, FALSE);

  g_ptr_array_add (sentences, NULL);
  return g_strjoinv (" ", (char **)sentences->pdata);
}

static void
expect_trend (const double *angles_deg, TbSurfaceTrend trend, guint at)
{
  const double rooms[] = { 1, 1, 1, 1, 1 };
  g_autoptr (TbSurfaceCurve) curve = made_up (TB_BALL_POCKET_LINE, angles_deg, rooms, 5);
  guint turning = 99;

  g_assert_cmpint (tb_surface_curve_trend (curve, TB_SURFACE_ANGLE, &turning), ==, trend);
  g_assert_cmpuint (turning, ==, at);
}

static void
test_trends (void)
{
  expect_trend ((const double[]){ 1, 2, 3, 4, 5 }, TB_TREND_RISES, 99);
  expect_trend ((const double[]){ 5, 4, 3, 2, 1 }, TB_TREND_FALLS, 99);
  expect_trend ((const double[]){ 2, 3, 4, 3, 2 }, TB_TREND_PEAK, 2);
  expect_trend ((const double[]){ 4, 3, 2, 3, 4 }, TB_TREND_VALLEY, 2);
  expect_trend ((const double[]){ 3, 3.2, 3.1, 3.3, 3 }, TB_TREND_LEVEL, 99);
  expect_trend ((const double[]){ 1, 5, 1, 5, 1 }, TB_TREND_MIXED, 99);
  /* Less than anyone notices beyond an end is no turning point. */
  expect_trend ((const double[]){ 1, 3, 5, 5.3, 5 }, TB_TREND_RISES, 99);
}

static void
test_words_of_peak (void)
{
  const double rooms[] = { 1, 2, 3, 2, 1 }, angles[] = { 2, 3, 4, 3.2, 3 };
  g_autoptr (TbSurfaceCurve) curve = made_up (TB_BALL_POCKET_LINE, angles, rooms, 5);
  g_autofree char *text = words (curve);

  g_assert_nonnull (strstr (text, "3.0 boards, lies in the middle: 2000 grit"));
  g_assert_nonnull (strstr (
      text, "At 500 grit, against 2000 grit, it comes in 2.0° flatter and it has 2.0 boards less room."));
  g_assert_nonnull (strstr (text, "At polish"));
  g_assert_nonnull (strstr (text, "steepest between the ends: 4.0° at 2000 grit"));
  /* Nothing that the points do not differ by. */
  g_assert_null (strstr (text, "it rolls"));
  g_assert_null (strstr (text, "it turns"));
}

static void
test_words_of_slope (void)
{
  const double rooms[] = { 3, 2, 1.5, 1.2, 1 }, angles[] = { 2, 3, 4, 5, 6 };
  g_autoptr (TbSurfaceCurve) curve = made_up (TB_BALL_POCKET_LINE, angles, rooms, 5);
  g_autofree char *text = words (curve);

  g_assert_nonnull (strstr (text, "lies at one end: 500 grit"));
  g_assert_nonnull (strstr (text, "The finer the surface, the steeper the angle at the pins, all the way."));
  g_assert_null (strstr (text, "in the middle"));
  g_assert_null (strstr (text, "between the ends"));
}

/* A slope with a step back says so. */
static void
test_words_of_steps (void)
{
  const double rooms[] = { 3, 2, 1.5, 1.2, 1 }, angles[] = { 2, 3, 2.7, 5, 6 };
  g_autoptr (TbSurfaceCurve) curve = made_up (TB_BALL_POCKET_LINE, angles, rooms, 5);
  g_autofree char *text = words (curve);

  g_assert_nonnull (strstr (text, "but for steps back of up to 0.3°"));
  g_assert_null (strstr (text, "all the way"));
}

static void
test_words_of_level (void)
{
  const double rooms[] = { 1, 1, 1, 1, 1 }, angles[] = { 4, 4, 4, 4, 4 };
  g_autoptr (TbSurfaceCurve) curve = made_up (TB_BALL_POCKET_LINE, angles, rooms, 5);
  g_autofree char *text = words (curve);

  g_assert_nonnull (strstr (text, "about the same room"));
  g_assert_nonnull (strstr (text, "hardly depends"));
  g_assert_nonnull (strstr (text, "too small to notice"));
}

/* A long straight run, and a ball that never rolls, are told where they are. */
static void
test_words_of_ends (void)
{
  const double rooms[] = { 1, 2, 3, 2, 1 }, angles[] = { 4, 4, 4, 4, 4 };
  g_autoptr (TbSurfaceCurve) curve = made_up (TB_BALL_POCKET_LINE, angles, rooms, 5);
  g_autofree char *text = NULL;

  g_array_index (curve->points, TbSurfacePoint, 0).measures.roll_start_y = tb_metres_from_ft (42);
  g_array_index (curve->points, TbSurfacePoint, 4).measures.roll_start_y = NAN;
  text = words (curve);
  g_assert_nonnull (strstr (text, "it rolls 8.0 ft earlier"));
  g_assert_nonnull (strstr (text, "over the last 18 ft"));
  g_assert_nonnull (strstr (text, "still sliding when it meets the pins"));

  g_autoptr (GPtrArray) metric = tb_surface_curve_explain (curve, TRUE);

  /* 8 ft, 18 ft. */
  g_assert_nonnull (strstr (metric->pdata[1], "it rolls 2.4 m earlier"));
  g_assert_nonnull (strstr (metric->pdata[1], "over the last 5.5 m"));
}

static void
test_words_of_nothing (void)
{
  const double rooms[] = { 1, 1, 1 }, angles[] = { 4, 4, 4 };
  g_autoptr (TbSurfaceCurve) curve = made_up (TB_BALL_POCKET_LINE, angles, rooms, 3);
  g_autofree char *one = NULL, *none = NULL;

  g_array_index (curve->points, TbSurfacePoint, 0).there = FALSE;
  one = words (curve);
  g_assert_nonnull (strstr (one, "pocket with 500 grit"));
  for (guint i = 0; i < 3; i++)
    g_array_index (curve->points, TbSurfacePoint, i).there = FALSE;
  none = words (curve);
  g_assert_cmpstr (none, ==, "No line from this laydown leads to the pocket, whatever the surface.");
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/surface-curve/same-line", test_same_line);
  g_test_add_func ("/surface-curve/pocket-line", test_pocket_line);
  g_test_add_func ("/surface-curve/present", test_present);
  g_test_add_func ("/surface-curve/cancelled", test_cancelled);
  g_test_add_func ("/surface-curve/trends", test_trends);
  g_test_add_func ("/surface-curve/words-of-peak", test_words_of_peak);
  g_test_add_func ("/surface-curve/words-of-slope", test_words_of_slope);
  g_test_add_func ("/surface-curve/words-of-steps", test_words_of_steps);
  g_test_add_func ("/surface-curve/words-of-level", test_words_of_level);
  g_test_add_func ("/surface-curve/words-of-ends", test_words_of_ends);
  g_test_add_func ("/surface-curve/words-of-nothing", test_words_of_nothing);
  return g_test_run ();
}
