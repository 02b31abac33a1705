/* What is kept of a bowler's guesses, and that it can be deleted.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include <glib/gstdio.h>
#include <math.h>
#include <signal.h>
#include <string.h>
#include <sys/resource.h>

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

/* No room: what was kept before stays, and the sentence says so. In a process of its own, for its limit. */
static void
test_disk_full (void)
{
  if (g_test_subprocess ())
    {
      g_autoptr (TbProgress) kept = tb_progress_new ("full"), again = NULL;
      TbProgressGuess guess = { (char *) "speed", 1, NAN, TB_GUESS_RIGHT };
      g_autoptr (GError) error = NULL;
      struct rlimit all, little;

      signal (SIGXFSZ, SIG_IGN);
      g_assert_true (tb_progress_save (kept, NULL));
      tb_progress_add (kept, &guess);
      g_assert_cmpint (getrlimit (RLIMIT_FSIZE, &all), ==, 0);
      little = (struct rlimit){ 100, all.rlim_max };
      g_assert_cmpint (setrlimit (RLIMIT_FSIZE, &little), ==, 0);
      g_assert_false (tb_progress_save (kept, &error));
      setrlimit (RLIMIT_FSIZE, &all);
      g_assert_true (g_str_has_suffix (error->message, "full.json: the file cannot be saved: File too large."));
      again = tb_progress_load ("full", NULL);
      g_assert_cmpuint (again->guesses->len, ==, 0);
      return;
    }
  g_test_trap_subprocess (NULL, 0, G_TEST_SUBPROCESS_DEFAULT);
  g_test_trap_assert_passed ();
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, G_TEST_OPTION_ISOLATE_DIRS, NULL);
  g_test_add_func ("/progress/round-trip", test_round_trip);
  g_test_add_func ("/progress/disk-full", test_disk_full);
  g_test_add_func ("/progress/delete", test_delete);
  g_test_add_func ("/progress/damaged", test_damaged);
  g_test_add_func ("/progress/oldest-go-first", test_oldest_go_first);
  return g_test_run ();
}
