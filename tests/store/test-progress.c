/* What is kept of a bowler's guesses, and that it can be deleted.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include <glib/gstdio.h>
#include <math.h>
#include <string.h>

#include "tb-document.h"
#include "tb-progress.h"

static void
test_round_trip (void)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (TbProgress) kept = tb_progress_load ("me", &error);
  g_autoptr (TbProgress) again = NULL;
  TbProgressGuess guess = { (char *) "speed", 2, 0.5, TB_GUESS_RIGHT };

  g_assert_no_error (error);
  g_assert_cmpuint (kept->guesses->len, ==, 0);
  g_assert_true (isnan (tb_progress_mean_off (kept)));
  tb_progress_add (kept, &guess);
  guess.off = 1.5;
  tb_progress_add (kept, &guess);
  guess.off = NAN;
  guess.verdict = TB_GUESS_OFF;
  tb_progress_add (kept, &guess);
  g_assert_true (tb_progress_save (kept, &error));
  again = tb_progress_load ("me", &error);
  g_assert_no_error (error);
  g_assert_cmpuint (again->guesses->len, ==, 3);
  g_assert_cmpuint (tb_progress_best_streak (again), ==, 2);
  g_assert_cmpfloat (tb_progress_mean_off (again), ==, 1.0);
  g_assert_cmpstr (g_array_index (again->guesses, TbProgressGuess, 1).lesson, ==, "speed");
  g_assert_cmpuint (g_array_index (again->guesses, TbProgressGuess, 1).step, ==, 2);
}

static void
test_delete (void)
{
  g_autoptr (TbProgress) kept = tb_progress_new ("gone");
  g_autoptr (TbProgress) after = NULL;
  TbProgressGuess guess = { (char *) "speed", 1, NAN, TB_GUESS_RIGHT };

  tb_progress_add (kept, &guess);
  g_assert_true (tb_progress_save (kept, NULL));
  g_assert_true (tb_progress_delete ("gone", NULL));
  after = tb_progress_load ("gone", NULL);
  g_assert_cmpuint (after->guesses->len, ==, 0);
  g_assert_true (tb_progress_delete ("gone", NULL));
}

static void
test_damaged (void)
{
  static const char bad[] = "{\"tenboard\":\"progress\",\"version\":1,\"bowler\":\"torn\",\"guesses\":"
                            "[{\"lesson\":\"speed\",\"step\":0,\"verdict\":\"right\"}]}";
  g_autofree char *folder = tb_document_folder (TB_DOCUMENT_PROGRESS), *now = NULL;
  g_autofree char *path = g_build_filename (folder, "torn.json", NULL);
  g_autoptr (GError) error = NULL;

  g_assert_cmpint (g_mkdir_with_parents (folder, 0755), ==, 0);
  g_assert_true (g_file_set_contents (path, bad, -1, NULL));
  g_assert_null (tb_progress_load ("torn", &error));
  g_assert_nonnull (strstr (error->message, "guesses[1].step: a whole number from 1 was expected"));
  g_assert_true (g_file_get_contents (path, &now, NULL, NULL));
  g_assert_cmpstr (now, ==, bad);
}

static void
test_oldest_go_first (void)
{
  g_autoptr (TbProgress) kept = tb_progress_new ("long");
  TbProgressGuess guess = { (char *) "speed", 1, NAN, TB_GUESS_RIGHT };

  for (guint i = 0; i <= TB_PROGRESS_MAX; i++)
    {
      guess.step = i + 1;
      tb_progress_add (kept, &guess);
    }
  g_assert_cmpuint (kept->guesses->len, ==, TB_PROGRESS_MAX);
  g_assert_cmpuint (g_array_index (kept->guesses, TbProgressGuess, 0).step, ==, 2);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, G_TEST_OPTION_ISOLATE_DIRS, NULL);
  g_test_add_func ("/progress/round-trip", test_round_trip);
  g_test_add_func ("/progress/delete", test_delete);
  g_test_add_func ("/progress/damaged", test_damaged);
  g_test_add_func ("/progress/oldest-go-first", test_oldest_go_first);
  return g_test_run ();
}
