/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"
#include "tb-guess.h"

#include <glib/gi18n-lib.h>
#include <math.h>

TbVerdictOfGuess
tb_guess_judge_board (double guess, double answer)
{
  double off = fabs (guess - answer);

  if (off <= TB_GUESS_RIGHT_BOARDS)
    return TB_GUESS_RIGHT;
  return off <= TB_GUESS_CLOSE_BOARDS ? TB_GUESS_CLOSE : TB_GUESS_OFF;
}

TbVerdictOfGuess
tb_guess_judge_choice (int guess, int right)
{
  return guess >= 0 && guess == right ? TB_GUESS_RIGHT : TB_GUESS_OFF;
}

const char *
tb_guess_verdict_text (TbVerdictOfGuess verdict)
{
  switch (verdict)
    {
    case TB_GUESS_RIGHT:
      /* Translators: the guess was right; the hand and the side are another text. */
      return C_ ("guess", "Right");
    case TB_GUESS_CLOSE:
      return _ ("Close");
    case TB_GUESS_OFF:
    default:
      return _ ("Not this time");
    }
}

guint
tb_guess_best_streak (const TbVerdictOfGuess *verdicts, guint count)
{
  guint best = 0, run = 0;

  for (guint i = 0; i < count; i++)
    {
      run = verdicts[i] == TB_GUESS_RIGHT ? run + 1 : 0;
      best = MAX (best, run);
    }
  return best;
}

guint
tb_guess_present_streak (const TbVerdictOfGuess *verdicts, guint count)
{
  guint run = 0;

  while (run < count && verdicts[count - 1 - run] == TB_GUESS_RIGHT)
    run++;
  return run;
}
