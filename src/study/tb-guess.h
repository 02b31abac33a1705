/* How good a guess was.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

typedef enum TbVerdictOfGuess
{
  TB_GUESS_RIGHT, /* the right choice, or within TB_GUESS_RIGHT_BOARDS */
  TB_GUESS_CLOSE, /* within TB_GUESS_CLOSE_BOARDS */
  TB_GUESS_OFF
} TbVerdictOfGuess;

/* A marker is right within a board to either side and close within three:
 * a choice of ours. */
#define TB_GUESS_RIGHT_BOARDS 1.0
#define TB_GUESS_CLOSE_BOARDS 3.0

/* A marker dragged to a board, against the board that the throw computed; anything not finite is off. */
TbVerdictOfGuess tb_guess_judge_board (double guess, double answer);
/* A choice, against the right one. */
TbVerdictOfGuess tb_guess_judge_choice (int guess, int right);
/* For people, translated. */
const char *tb_guess_verdict_text (TbVerdictOfGuess verdict);
/* The longest run of right guesses in a list in the order in which they were made, and the one at its end. */
guint tb_guess_best_streak (const TbVerdictOfGuess *verdicts, guint count);
guint tb_guess_present_streak (const TbVerdictOfGuess *verdicts, guint count);

G_END_DECLS
