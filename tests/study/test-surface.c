/* The surface between one resurfacing and the next.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "tb-surface.h"

#include <string.h>

/* A 3000 ball rubbed by hand with 500 read about 1650 (USBC technical note): it blends, it does not reset. */
static void
test_touch_up (void)
{
  double before = tb_roughness_from_grit (3000), after = tb_surface_touched_up (before, 500);

  g_assert_cmpfloat_with_epsilon (tb_grit_from_roughness (after), 1650, 1);
  /* Finer pads smooth, the same pad changes nothing, and the end is never quite reached. */
  g_assert_cmpfloat (tb_surface_touched_up (tb_roughness_from_grit (1000), 4000), <,
                     tb_roughness_from_grit (1000));
  g_assert_cmpfloat_with_epsilon (tb_surface_touched_up (before, 3000) / before, 1, 1e-12);
  g_assert_cmpfloat (after, <, tb_roughness_from_grit (500));
}

/* Common practice: a sanded ball comes back smoother with every game, fastest at first; a polished one does
 * not get rougher by this model. */
static void
test_games (void)
{
  double rough = tb_roughness_from_grit (500), polished = tb_roughness_from_grit (TB_GRIT_POLISH);

  g_assert_cmpfloat (tb_surface_after_games (rough, 0), ==, rough);
  g_assert_cmpfloat (tb_surface_after_games (rough, 10), <, rough);
  g_assert_cmpfloat (rough - tb_surface_after_games (rough, 10), >,
                     tb_surface_after_games (rough, 10) - tb_surface_after_games (rough, 20));
  g_assert_cmpfloat (tb_surface_after_games (rough, 1e4), >=, TB_SURFACE_WORN);
  g_assert_cmpfloat (tb_surface_after_games (polished, 50), ==, polished);
  /* Games add up. */
  g_assert_cmpfloat_with_epsilon (tb_surface_after_games (tb_surface_after_games (rough, 7), 5) * 1e6,
                                  tb_surface_after_games (rough, 12) * 1e6, 1e-9);
}

static void
expect_text (double grit, const char *words)
{
  g_autofree char *text = tb_surface_text (tb_roughness_from_grit (grit));

  g_assert_cmpstr (text, ==, words);
}

static void
test_text (void)
{
  expect_text (500, "500 grit");
  expect_text (2000, "2000 grit");
  expect_text (1650, "between 1000 and 2000 grit");
  expect_text (4000, "4000 grit");
  expect_text (4500, "between 4000 grit and polish");
  expect_text (TB_GRIT_POLISH, "polish");
}

static void
test_dates (void)
{
  g_assert_true (tb_surface_date_is_valid ("2026-11-25"));
  g_assert_true (tb_surface_date_is_valid ("2024-02-29"));
  g_assert_false (tb_surface_date_is_valid ("2023-02-29"));
  g_assert_false (tb_surface_date_is_valid ("2026-13-01"));
  g_assert_false (tb_surface_date_is_valid ("2026-1-01"));
  g_assert_false (tb_surface_date_is_valid ("26-11-2025"));
  g_assert_false (tb_surface_date_is_valid (""));
}

static void
test_log (void)
{
  g_autoptr (TbSurfaceLog) log = tb_surface_log_new ();
  gboolean measured;
  double bought = tb_roughness_from_grit (2000);

  g_assert_cmpfloat (tb_surface_log_roughness (log, 0, bought, &measured), ==, bought);
  g_assert_false (measured);
  tb_surface_log_add (log, tb_surface_entry_new ("2026-03-02", TB_SURFACE_PLAYED, 12, NULL));
  tb_surface_log_add (log, tb_surface_entry_new ("2026-03-01", TB_SURFACE_MACHINE, 1000, "as bought"));
  tb_surface_log_add (log,
                      tb_surface_entry_new ("2026-03-05", TB_SURFACE_READING, tb_metres_from_uin (20), NULL));
  tb_surface_log_add (log, tb_surface_entry_new ("2026-03-05", TB_SURFACE_CLEAN, 0, NULL));
  tb_surface_log_add (log, tb_surface_entry_new ("2026-03-06", TB_SURFACE_HAND, 500, NULL));
  /* By date, whatever the order in which they came. */
  g_assert_cmpstr (((TbSurfaceEntry *)log->pdata[0])->date, ==, "2026-03-01");
  g_assert_cmpfloat (tb_surface_log_roughness (log, 1, bought, NULL), ==, tb_roughness_from_grit (1000));
  g_assert_cmpfloat (tb_surface_log_roughness (log, 2, bought, &measured), ==,
                     tb_surface_after_games (tb_roughness_from_grit (1000), 12));
  g_assert_false (measured);
  g_assert_cmpfloat (tb_surface_log_roughness (log, 3, bought, &measured), ==, tb_metres_from_uin (20));
  g_assert_true (measured);
  tb_surface_log_roughness (log, 4, bought, &measured);
  g_assert_true (measured);
  g_assert_cmpfloat (tb_surface_log_roughness (log, 99, bought, &measured), ==,
                     tb_surface_touched_up (tb_metres_from_uin (20), 500));
  g_assert_false (measured);
  g_assert_cmpfloat (tb_surface_log_games (log), ==, 12);
}

static void
test_entry_text (void)
{
  TbSurfaceEntry *hand = tb_surface_entry_new ("2026-11-25", TB_SURFACE_HAND, 500, NULL);
  TbSurfaceEntry *clean = tb_surface_entry_new ("2026-11-26", TB_SURFACE_CLEAN, 0, NULL);
  TbSurfaceEntry *reading
      = tb_surface_entry_new ("2026-11-27", TB_SURFACE_READING, tb_metres_from_uin (22.5), NULL);
  g_autofree char *of_hand = tb_surface_entry_text (hand), *of_clean = tb_surface_entry_text (clean);
  g_autofree char *of_reading = tb_surface_entry_text (reading);

  g_assert_cmpstr (of_hand, ==, "2026-11-25: touched up by hand, 500 grit");
  g_assert_cmpstr (of_clean, ==, "2026-11-26: cleaned");
  g_assert_cmpstr (of_reading, ==, "2026-11-27: read with a gauge, 22.5 µin");
  tb_surface_entry_free (hand);
  tb_surface_entry_free (clean);
  tb_surface_entry_free (reading);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/surface/touch-up", test_touch_up);
  g_test_add_func ("/surface/games", test_games);
  g_test_add_func ("/surface/text", test_text);
  g_test_add_func ("/surface/dates", test_dates);
  g_test_add_func ("/surface/log", test_log);
  g_test_add_func ("/surface/entry-text", test_entry_text);
  return g_test_run ();
}
