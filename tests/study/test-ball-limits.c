/* A ball's values against the published limits, in words. Expected limits: USBC Equipment Specifications
 * Manual.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "../scratch.h"
#include "tb-ball-limits.h"
#include "tb-drilling.h"

#include <glib/gstdio.h>
#include <libintl.h>
#include <locale.h>
#include <string.h>

static const TbLimitLine *
find (const GPtrArray *lines, const char *name)
{
  for (guint i = 0; i < lines->len; i++)
    if (g_str_equal (((const TbLimitLine *) lines->pdata[i])->name, name))
      return lines->pdata[i];
  return NULL;
}

static void
expect (const TbBall *ball, const char *name, TbLimitVerdict verdict, const char *words)
{
  g_autoptr (GPtrArray) lines = tb_ball_limits (ball);
  const TbLimitLine *line = find (lines, name);

  g_assert_nonnull (line);
  g_assert_cmpint (line->verdict, ==, verdict);
  if (strstr (line->sentence, words) == NULL)
    g_error ("\"%s\" does not say \"%s\"", line->sentence, words);
}

static void
test_ordinary (void)
{
  TbBall ball = tb_ball_default ();
  g_autoptr (GPtrArray) lines = tb_ball_limits (&ball);
  g_autofree char *on_top = NULL;
  TbLayoutPlaces places;

  g_assert_cmpint (tb_ball_limits_verdict (lines), ==, TB_LIMIT_WITHIN);
  expect (&ball, "weight", TB_LIMIT_WITHIN, "15.00 lb is within the limit, at most 16.00 lb");
  expect (&ball, "circumference", TB_LIMIT_WITHIN, "26.704 in to 27.002 in");
  expect (&ball, "rg", TB_LIMIT_WITHIN, "2.500 in");
  expect (&ball, "differential", TB_LIMIT_WITHIN, "at most 0.060 in");
  expect (&ball, "friction", TB_LIMIT_WITHIN, "assumed, not measured");
  expect (&ball, "roughness", TB_LIMIT_WITHIN, "18.9 µin");
  expect (&ball, "hardness", TB_LIMIT_NOT_KNOWN, "73");
  expect (&ball, "holes", TB_LIMIT_NOT_KNOWN, "as its numbers say");
  /* Without holes to take it away the top weight stands, as far as the pin lies on top. */
  ball.top_weight = tb_kilograms_from_oz (2);
  g_assert_cmpint (tb_layout_places (&ball, &places), ==, TB_OK);
  on_top = g_strdup_printf ("Top weight: %.2f oz", 2 * places.pin.z);
  expect (&ball, "top-weight", TB_LIMIT_WITHIN, on_top);
}

static void
test_ends (void)
{
  TbBall ball = tb_ball_default ();

  ball.mass = tb_kilograms_from_lb (16);
  ball.diameter = tb_metres_from_in (8.595);
  ball.rg = tb_metres_from_in (2.8);
  ball.differential = tb_metres_from_in (0.06);
  expect (&ball, "weight", TB_LIMIT_WITHIN, "16.00 lb");
  expect (&ball, "diameter", TB_LIMIT_WITHIN, "8.595 in");
  expect (&ball, "circumference", TB_LIMIT_WITHIN, "27.002 in");
  expect (&ball, "rg", TB_LIMIT_WITHIN, "2.800 in");
  expect (&ball, "differential", TB_LIMIT_WITHIN, "0.060 in");
  ball.diameter = tb_metres_from_in (8.5);
  expect (&ball, "circumference", TB_LIMIT_WITHIN, "26.704 in");
}

static void
test_outside (void)
{
  TbBall ball = tb_ball_default ();
  g_autoptr (GPtrArray) lines = NULL;

  ball.mass = tb_kilograms_from_lb (16.2);
  ball.rg = tb_metres_from_in (2.45);
  ball.differential = tb_metres_from_in (0.065);
  ball.cover.roughness = tb_metres_from_uin (70);
  ball.cover.dry_friction = 0.4;
  expect (&ball, "weight", TB_LIMIT_OUTSIDE, "16.20 lb is outside the limit, at most 16.00 lb");
  expect (&ball, "rg", TB_LIMIT_OUTSIDE, "outside");
  expect (&ball, "differential", TB_LIMIT_OUTSIDE, "outside");
  expect (&ball, "roughness", TB_LIMIT_OUTSIDE, "70.0 µin");
  expect (&ball, "friction", TB_LIMIT_OUTSIDE, "more than");
  lines = tb_ball_limits (&ball);
  g_assert_cmpint (tb_ball_limits_verdict (lines), ==, TB_LIMIT_OUTSIDE);
}

/* 50 µin for a model, 65 for one ball. */
static void
test_between_roughness_limits (void)
{
  TbBall ball = tb_ball_default ();

  ball.cover.roughness = tb_metres_from_uin (58);
  expect (&ball, "roughness", TB_LIMIT_WITHIN, "over the 50 µin");
}

static void
test_static_weights (void)
{
  TbBall ball = tb_ball_default ();

  ball.n_holes = 2;
  for (int i = 0; i < ball.n_holes; i++)
    ball.hole[i] = (TbHole){ .kind = TB_HOLE_FINGER,
                             .over = tb_metres_from_in (5),
                             .up = tb_metres_from_in (i == 0 ? 1.5 : -1.5),
                             .diameter = tb_metres_from_in (1.4),
                             .depth = tb_metres_from_in (4.5) };
  expect (&ball, "side-weight", TB_LIMIT_OUTSIDE, "at most 3.00 oz either way");
  expect (&ball, "holes", TB_LIMIT_WITHIN, "used for gripping");
  ball.mass = tb_kilograms_from_lb (9);
  expect (&ball, "static-weights", TB_LIMIT_NOT_KNOWN, "10 lb and less");
}

/* A ball that cannot be still has its other lines. */
static void
test_impossible (void)
{
  TbBall ball = tb_ball_default ();
  g_autoptr (GPtrArray) lines = NULL;

  ball.intermediate_differential = tb_metres_from_in (0.055);
  lines = tb_ball_limits (&ball);
  g_assert_null (find (lines, "top-weight"));
  g_assert_nonnull (find (lines, "weight"));
}

#define DOMAIN "tenboard"

/* A catalogue without texts, as msgfmt writes one: what an empty text is translated to is its header. */
static const guint8 catalogue[]
    = { 0xde, 0x12, 0x04, 0x95, 0,  0, 0,  0, 1, 0,   0,   0,   28,  0,   0,   0,    36, 0,
        0,    0,    0,    0,    0,  0, 44, 0, 0, 0,   0,   0,   0,   0,   44,  0,    0,  0,
        7,    0,    0,    0,    45, 0, 0,  0, 0, 'H', 'e', 'a', 'd', 'e', 'r', '\n', 0 };

/* A unit that is empty stays so in a translation. */
static void
test_translated (void)
{
  TbBall ball = tb_ball_default ();
  g_autoptr (GPtrArray) lines = NULL;
  const char *folder = scratch_folder ();
  g_autofree char *language = g_build_filename (folder, "fr", NULL);
  g_autofree char *messages = g_build_filename (language, "LC_MESSAGES", NULL);
  g_autofree char *file = g_build_filename (messages, DOMAIN ".mo", NULL);

  g_assert_cmpint (g_mkdir_with_parents (messages, 0700), ==, 0);
  g_assert_true (g_file_set_contents (file, (const char *) catalogue, sizeof catalogue, NULL));
  bindtextdomain (DOMAIN, folder);
  lines = tb_ball_limits (&ball);
  g_assert_cmpstr (find (lines, "friction")->value, ==, "0.170");
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/ball-limits/ordinary", test_ordinary);
  g_test_add_func ("/ball-limits/ends", test_ends);
  g_test_add_func ("/ball-limits/outside", test_outside);
  g_test_add_func ("/ball-limits/between-roughness-limits", test_between_roughness_limits);
  g_test_add_func ("/ball-limits/static-weights", test_static_weights);
  g_test_add_func ("/ball-limits/impossible", test_impossible);
  if (setlocale (LC_ALL, "C.UTF-8") && g_setenv ("LANGUAGE", "fr", TRUE))
    g_test_add_func ("/ball-limits/translated", test_translated);
  return g_test_run ();
}
