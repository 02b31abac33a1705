/* How guesses are judged and counted.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include <math.h>

#include "tb-guess.h"

static void
test_board (void)
{
  g_assert_cmpint (tb_guess_judge_board (17.5, 17.5), ==, TB_GUESS_RIGHT);
  g_assert_cmpint (tb_guess_judge_board (16.5, 17.5), ==, TB_GUESS_RIGHT);
  g_assert_cmpint (tb_guess_judge_board (18.6, 17.5), ==, TB_GUESS_CLOSE);
  g_assert_cmpint (tb_guess_judge_board (20.5, 17.5), ==, TB_GUESS_CLOSE);
  g_assert_cmpint (tb_guess_judge_board (14.4, 17.5), ==, TB_GUESS_OFF);
  g_assert_cmpint (tb_guess_judge_board (NAN, 17.5), ==, TB_GUESS_OFF);
  g_assert_cmpint (tb_guess_judge_board (17.5, NAN), ==, TB_GUESS_OFF);
}

static void
test_choice (void)
{
  g_assert_cmpint (tb_guess_judge_choice (1, 1), ==, TB_GUESS_RIGHT);
  g_assert_cmpint (tb_guess_judge_choice (0, 1), ==, TB_GUESS_OFF);
  g_assert_cmpint (tb_guess_judge_choice (-1, -1), ==, TB_GUESS_OFF);
}

static void
test_streaks (void)
{
  static const TbVerdictOfGuess made[]
      = { TB_GUESS_RIGHT, TB_GUESS_RIGHT, TB_GUESS_RIGHT, TB_GUESS_CLOSE, TB_GUESS_RIGHT, TB_GUESS_RIGHT };

  g_assert_cmpuint (tb_guess_best_streak (made, 6), ==, 3);
  g_assert_cmpuint (tb_guess_present_streak (made, 6), ==, 2);
  g_assert_cmpuint (tb_guess_best_streak (made, 0), ==, 0);
  g_assert_cmpuint (tb_guess_present_streak (made, 4), ==, 0);
  g_assert_cmpuint (tb_guess_present_streak (made, 3), ==, 3);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/guess/board", test_board);
  g_test_add_func ("/guess/choice", test_choice);
  g_test_add_func ("/guess/streaks", test_streaks);
  return g_test_run ();
}
