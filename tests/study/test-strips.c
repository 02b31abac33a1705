/* Strips: the oil on the list is the oil on the lane, wherever the strips end; patterns built to published
 * numbers have those numbers.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include <math.h>
#include <string.h>

#include "lane-support.h"
#include "tb-chance.h"
#include "tb-pattern-figures.h"

#define N_RANDOM 40

static double
uniform (guint64 shot, guint draw, double low, double high)
{
  return low + (high - low) * tb_chance_uniform ((TbChance){ 5, shot }, draw);
}

static TbStrip
random_strip (guint64 index)
{
  TbStrip strip = { .way = uniform (index, 0, 0, 1) < 0.5 ? TB_STRIP_OUT : TB_STRIP_BACK,
                    .right_board = (int)uniform (index, 1, 1, 38.99),
                    .volume = tb_cubic_metres_from_ml (uniform (index, 3, 0.01, 0.2)) };
  double a = uniform (index, 4, 0, 40), b = a + uniform (index, 5, 0.6, 20);

  strip.left_board = (int)uniform (index, 2, strip.right_board, 39.99);
  strip.start = tb_metres_from_ft (strip.way == TB_STRIP_OUT ? a : b);
  strip.end = tb_metres_from_ft (strip.way == TB_STRIP_OUT ? b : a);
  strip.taper = uniform (index, 6, 0, 1) * fabs (strip.end - strip.start);
  return strip;
}

/* Strips that begin and end anywhere, with tapers of any length. */
static void
test_volume (void)
{
  TbStrip strips[N_RANDOM];
  g_autofree TbOil *oil = g_new (TbOil, 1);

  for (guint i = 0; i < N_RANDOM; i++)
    strips[i] = random_strip (i);
  g_assert_cmpint (tb_strips_lay (strips, N_RANDOM, oil, NULL), ==, TB_OK);
  /* The issue asks for 0.1 %; cells get exact means, so that it is rounding: 2e-16 measured. */
  lane_near ("oil on the lane over oil on the list",
             tb_oil_volume (oil) / tb_strips_volume (strips, N_RANDOM), 1, 1e-12);
  lane_near ("out and back over all",
             (tb_strips_volume_of_way (strips, N_RANDOM, TB_STRIP_OUT)
              + tb_strips_volume_of_way (strips, N_RANDOM, TB_STRIP_BACK))
                 / tb_strips_volume (strips, N_RANDOM),
             1, 1e-12);
}

/* Only the boards named get oil, both included; each gets what the strip says. */
static void
test_boards (void)
{
  TbStrip strip = tb_strip_default ();
  g_autofree TbOil *oil = g_new (TbOil, 1);

  strip.right_board = 5;
  strip.left_board = 7;
  g_assert_cmpint (tb_strips_lay (&strip, 1, oil, NULL), ==, TB_OK);
  for (int board = 1; board <= TB_LANE_BOARDS; board++)
    lane_near ("oil on a board", tb_oil_board_volume (oil, board - 1),
               board >= 5 && board <= 7 ? strip.volume : 0, 1e-12 * strip.volume);
}

/* The film of a strip, against a fine sum over it. */
static void
test_film (void)
{
  for (guint i = 0; i < 5; i++)
    {
      TbStrip strip = random_strip (100 + i);
      double sum = 0, step = tb_metres_from_ft (0.001);

      for (double y = 0.5 * step; y < tb_metres_from_ft (62); y += step)
        sum += tb_strip_film (&strip, y) * step * TB_BOARD_WIDTH;
      lane_near ("sum of the film over the oil on a board", sum / strip.volume, 1, 2e-3);
      g_assert_cmpfloat (tb_strip_film (&strip, tb_strip_far (&strip) + 0.01), ==, 0);
      g_assert_cmpfloat (tb_strip_film (&strip, tb_strip_near (&strip) - 0.01), ==, 0);
    }
}

static void
test_refused (void)
{
  TbStrip strips[2] = { tb_strip_default (), tb_strip_default () };
  g_autofree TbOil *oil = g_new0 (TbOil, 1);
  const TbStrip good = strips[1];
  guint wrong = 9;

  strips[1].left_board = 40;
  g_assert_cmpint (tb_strips_lay (strips, 2, oil, &wrong), ==, TB_ERROR_OUT_OF_RANGE);
  g_assert_cmpuint (wrong, ==, 1);
  g_assert_cmpfloat (tb_oil_volume (oil), ==, 0);
  strips[1] = good;
  strips[1].way = TB_STRIP_BACK; /* but it still runs out */
  g_assert_cmpint (tb_strip_check (&strips[1]), ==, TB_ERROR_OUT_OF_RANGE);
  strips[1] = good;
  strips[1].taper = 2 * strips[1].end;
  g_assert_cmpint (tb_strip_check (&strips[1]), ==, TB_ERROR_OUT_OF_RANGE);
  strips[1] = good;
  strips[1].volume = (double)NAN;
  g_assert_cmpint (tb_strip_check (&strips[1]), ==, TB_ERROR_NOT_FINITE);
  g_assert_null (tb_pattern_new_strips (NULL, NULL, NULL, 0, NULL));
}

static void
test_tidy (void)
{
  for (guint i = 0; i < 200; i++)
    {
      TbStrip strip = random_strip (200 + i);

      strip.right_board += (int)uniform (i, 10, -30, 30);
      strip.start += uniform (i, 11, -20, 20);
      strip.taper += uniform (i, 12, -5, 5);
      strip.volume *= uniform (i, 13, -1, 60);
      tb_strip_tidy (&strip);
      g_assert_cmpint (tb_strip_check (&strip), ==, TB_OK);
      tb_strip_turn (&strip);
      g_assert_cmpint (tb_strip_check (&strip), ==, TB_OK);
    }
}

/* Published figures come as ranges: USBC Open patterns 2005 to 2016, 38 to 41 ft, 19 to 27.6 mL, 1.7 to 3.1 :
 * 1; house patterns 37 to 41 ft, 20 to 26 mL, 8 : 1 (USBC speaks of 10 : 1); sport 3 : 1, later 4 : 1 or
 * flatter. Ten rows from their ends and between; which length went with which volume is ours. */
static const struct
{
  double feet, ml, ratio;
} published[] = { { 38, 19, 1.7 }, { 41, 27.6, 3.1 }, { 38, 27.6, 1.7 }, { 41, 19, 3.1 }, { 39.5, 23.3, 2.4 },
                  { 37, 20, 8 },   { 41, 26, 8 },     { 40, 23, 10 },    { 39, 24, 3 },   { 40, 25, 4 } };
G_STATIC_ASSERT (G_N_ELEMENTS (published) == 10);

static void
check_published (double feet, double ml, double ratio)
{
  TbStripsPlan plan = { .length = tb_metres_from_ft (feet),
                        .volume = tb_cubic_metres_from_ml (ml),
                        .ratio = ratio,
                        .taper = tb_metres_from_ft (3) };
  TbStrip strips[TB_STRIPS_PLAN_COUNT];
  g_autoptr (TbPattern) pattern = NULL;
  TbPatternFigures figures;

  g_assert_true (tb_strips_plan (&plan, strips));
  pattern = tb_pattern_new_strips (NULL, "Built", strips, G_N_ELEMENTS (strips), NULL);
  g_assert_nonnull (pattern);
  figures = tb_pattern_figures (pattern);
  lane_near ("mL", tb_ml_from_cubic_metres (figures.volume), ml, 1e-3 * ml);
  lane_near ("ratio", figures.ratio, ratio, 1e-9 * ratio);
  lane_near ("ft", tb_ft_from_metres (figures.length), feet, 1e-9);
  /* The film comes down over the taper: the last foot of it is under a unit. Measured: 0.3 to 1.3 ft short.
   */
  lane_between ("ft to the last unit of film", tb_ft_from_metres (figures.film_length), feet - 2, feet);
  if (ratio > 1.5)
    lane_between ("falls off at board", figures.fall_off_right, 7, 15);
  lane_near ("either side alike", figures.fall_off_right, figures.fall_off_left, 1e-9);
}

static void
test_published (void)
{
  for (guint i = 0; i < G_N_ELEMENTS (published); i++)
    check_published (published[i].feet, published[i].ml, published[i].ratio);
}

/* The house pattern of the documents: 8 : 1 by its own numbers, 7.8 counted board by board, since boards 6
 * and 7 rise a little already; the film falls off about the second arrow. */
static void
test_house (void)
{
  g_autoptr (TbPattern) pattern = lane_house ();
  TbPatternFigures figures = tb_pattern_figures (pattern);

  lane_near ("mL", tb_ml_from_cubic_metres (figures.volume), 24.0, 0.05);
  lane_near ("ratio", figures.ratio, 8, 0.3);
  lane_near ("falls off at", figures.fall_off_right, 10, 0.05);
  lane_near ("breakpoint by length − 31", figures.breakpoint_board, 9, 1e-9);
  g_assert_true (isnan (figures.volume_out));
}

static void
test_flat_has_no_edge (void)
{
  TbStripsPlan plan = { .length = 12, .volume = tb_cubic_metres_from_ml (24), .ratio = 1, .taper = 1 };
  TbStrip strips[TB_STRIPS_PLAN_COUNT];
  g_autoptr (TbPattern) pattern = NULL;

  /* Even across: the narrower strips carry nothing. */
  g_assert_true (tb_strips_plan (&plan, strips));
  pattern = tb_pattern_new_strips (NULL, NULL, strips, G_N_ELEMENTS (strips), NULL);
  g_assert_true (isnan (tb_pattern_figures (pattern).fall_off_right));
  lane_near ("ratio", tb_pattern_figures (pattern).ratio, 1, 1e-12);
  plan.ratio = 0.5;
  g_assert_false (tb_strips_plan (&plan, strips));
}

static void
test_renamed (void)
{
  TbStrip strip = tb_strip_default ();
  g_autoptr (TbPattern) pattern = tb_pattern_new_strips ("one", "One", &strip, 1, NULL);
  g_autoptr (TbPattern) renamed = tb_pattern_renamed (pattern, NULL, "Two");

  g_assert_null (renamed->id);
  g_assert_cmpstr (renamed->name, ==, "Two");
  g_assert_cmpuint (renamed->n_strips, ==, 1);
  g_assert_cmpmem (renamed->strips, sizeof strip, &strip, sizeof strip);
  g_assert_cmpmem (&renamed->oil, sizeof renamed->oil, &pattern->oil, sizeof pattern->oil);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/strips/volume", test_volume);
  g_test_add_func ("/strips/boards", test_boards);
  g_test_add_func ("/strips/film", test_film);
  g_test_add_func ("/strips/refused", test_refused);
  g_test_add_func ("/strips/tidy", test_tidy);
  g_test_add_func ("/strips/published", test_published);
  g_test_add_func ("/strips/house", test_house);
  g_test_add_func ("/strips/flat-has-no-edge", test_flat_has_no_edge);
  g_test_add_func ("/strips/renamed", test_renamed);
  return g_test_run ();
}
