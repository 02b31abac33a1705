/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "tb-lesson-words.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "tb-change.h"
#include "tb-fill.h"
#include "tb-quantity.h"

/* Changes that are told one by one; more are told together. */
#define MANY_CHANGES 5

static char *
field_text (const TbSetup *setup, TbGroup group, const char *name, TbUnits units)
{
  const TbField *field = tb_field_find (group, name);
  TbQuantity quantity = tb_quantity_for_field (field, units);

  return tb_quantity_format (&quantity, tb_field_get (field, tb_shot_group_const (&setup->shot, group)));
}

/* A board without its unit. */
static char *
board_text (const TbSetup *setup, const char *name)
{
  const TbField *field = tb_field_find (TB_GROUP_DELIVERY, name);

  return tb_number_text (tb_field_get (field, &setup->shot.delivery), 1);
}

static char *
delivery_text (const TbSetup *setup, TbUnits units)
{
  g_autofree char *speed = field_text (setup, TB_GROUP_DELIVERY, "speed_mph", units);
  g_autofree char *revs = field_text (setup, TB_GROUP_DELIVERY, "rev_rate_rpm", units);
  g_autofree char *rotation = field_text (setup, TB_GROUP_DELIVERY, "axis_rotation_deg", units);
  g_autofree char *tilt = field_text (setup, TB_GROUP_DELIVERY, "axis_tilt_deg", units);
  g_autofree char *laydown = board_text (setup, "laydown_board"), *aim = board_text (setup, "aim_board");

  /* Translators: speed, rev rate, two angles, two boards. */
  return tb_fill_with (
      _ ("%1$s, %2$s, %3$s of rotation, %4$s of tilt; laid down on board %5$s, aimed at board %6$s."), speed,
      revs, rotation, tilt, laydown, aim, NULL);
}

static char *
lane_text (const TbSetup *setup)
{
  const char *ball = tb_document_display_name (setup->ball_name);
  const char *pattern = tb_document_display_name (setup->pattern->name);
  double games = setup->shot.lane.games_played;
  g_autofree char *played = tb_number_text (games, games == floor (games) ? 0 : 1);

  if (games > 0)
    /* Translators: a ball, a lane pattern, how many games. */
    return tb_fill_with (_ ("Ball: %1$s. Lane: %2$s, after %3$s games."), ball, pattern, played, NULL);
  return tb_fill_with (_ ("Ball: %1$s. Lane: %2$s, fresh."), ball, pattern, NULL);
}

char *
tb_lesson_words_before (const TbStudy *study, TbUnits units)
{
  g_autofree char *delivery = delivery_text (study->side[TB_SIDE_BEFORE], units);
  g_autofree char *lane = lane_text (study->side[TB_SIDE_BEFORE]);

  return g_strconcat (delivery, "\n", lane, NULL);
}

char *
tb_lesson_words_after (const TbStudy *study, TbUnits units)
{
  const TbSetup *before = study->side[TB_SIDE_BEFORE], *after = study->side[TB_SIDE_AFTER];
  g_autoptr (GString) text = g_string_new (NULL);
  TbChange changes[TB_MAX_CHANGES];
  guint count = tb_changes_find (before, after, changes);

  if (count > MANY_CHANGES)
    count = tb_changes_merge_ball (changes, count);
  for (guint i = 0; i < count; i++)
    {
      g_autofree char *phrase = tb_change_phrase (&changes[i], before, after, units == TB_UNITS_METRIC);

      g_string_append_printf (text, "%s%s", i > 0 ? "\n" : "", phrase);
    }
  if (count == 0)
    g_string_append (text, _ ("The same throw once more."));
  return g_string_free (g_steal_pointer (&text), FALSE);
}

/* How the guess went. */

static char *
board_words (TbLessonRunner *runner, const TbLessonResult *result)
{
  g_autofree char *guess = tb_number_text (tb_lesson_runner_get_board (runner), 1);
  g_autofree char *answer = tb_number_text (result->answer, 1), *off = tb_number_text (result->off, 1);

  if (!result->guessed)
    return tb_fill_with (_ ("The ball crossed the line on board %s."), answer, NULL);
  /* Translators: three numbers of boards. */
  return tb_fill_with (_ ("You said board %1$s. The ball crossed the line on board %2$s: %3$s boards off."),
                       guess, answer, off, NULL);
}

static const char *
choice_text (TbLessonRunner *runner, int choice)
{
  const TbLessonStep *step = tb_lesson_runner_get_step (runner);

  return tb_lesson_display (g_array_index (step->choices, TbLessonChoice, choice).text);
}

static char *
choice_words (TbLessonRunner *runner, const TbLessonResult *result)
{
  int right = tb_lesson_runner_get_right_choice (runner);

  if (right < 0)
    return g_strdup ("");
  if (result->guessed && result->verdict != TB_GUESS_RIGHT)
    /* Translators: two answers. */
    return tb_fill_with (_ ("You said “%1$s”. It was “%2$s”."),
                         choice_text (runner, tb_lesson_runner_get_choice (runner)),
                         choice_text (runner, right), NULL);
  return tb_fill_with (_ ("It was “%s”."), choice_text (runner, right), NULL);
}

char *
tb_lesson_words_guess (TbLessonRunner *runner)
{
  TbLessonResult result = tb_lesson_runner_get_result (runner, tb_lesson_runner_get_position (runner));

  if (!result.revealed || tb_lesson_runner_get_step (runner) == NULL)
    return NULL;
  return tb_lesson_runner_asks_for_marker (runner) ? board_words (runner, &result)
                                                   : choice_words (runner, &result);
}

char *
tb_lesson_words_score (const TbLessonScore *score)
{
  g_autoptr (GString) text = g_string_new (NULL);
  g_autofree char *right = tb_number_text (score->right, 0), *guessed = tb_number_text (score->guessed, 0);
  g_autofree char *streak = tb_number_text (score->best_streak, 0),
                  *off = tb_number_text (score->mean_off, 1);
  g_autofree char *first = NULL, *second = NULL, *third = NULL;

  if (score->guessed == 0)
    return g_strdup (_ ("No guess was made."));
  first = tb_fill_with (ngettext ("%1$s of %2$s guess right", "%1$s of %2$s guesses right", score->guessed),
                        right, guessed, NULL);
  second = tb_fill_with (_ ("Markers %s boards off on average"), off, NULL);
  third = tb_fill_with (
      ngettext ("Best streak: %s right", "Best streak: %s right in a row", score->best_streak), streak, NULL);
  g_string_append (text, first);
  if (!isnan (score->mean_off))
    g_string_append_printf (text, "\n%s", second);
  g_string_append_printf (text, "\n%s", third);
  return g_string_free (g_steal_pointer (&text), FALSE);
}

/* The last guess at a step; NULL if there is none. */
static const TbProgressGuess *
last_guess (const TbProgress *progress, const char *lesson, guint step)
{
  for (guint i = progress->guesses->len; i > 0; i--)
    {
      const TbProgressGuess *guess = &g_array_index (progress->guesses, TbProgressGuess, i - 1);

      if (guess->step == step && g_str_equal (guess->lesson, lesson))
        return guess;
    }
  return NULL;
}

static TbLessonScore
score_of (const TbProgress *progress, const TbLesson *lesson)
{
  TbLessonScore score = { .mean_off = NAN };
  double sum = 0;
  guint marked = 0;

  for (guint step = 1; progress != NULL && step <= lesson->steps->len; step++)
    {
      const TbProgressGuess *guess = last_guess (progress, lesson->id, step);

      if (guess == NULL)
        continue;
      score.guessed++;
      score.right += guess->verdict == TB_GUESS_RIGHT;
      if (isnan (guess->off))
        continue;
      sum += guess->off;
      marked++;
    }
  if (marked > 0)
    score.mean_off = sum / marked;
  return score;
}

char *
tb_lesson_words_progress (const TbProgress *progress, const TbLesson *lesson)
{
  TbLessonScore score = score_of (progress, lesson);
  g_autofree char *right = tb_number_text (score.right, 0), *steps = tb_number_text (lesson->steps->len, 0);
  g_autofree char *guessed = tb_number_text (score.guessed, 0), *off = tb_number_text (score.mean_off, 1);

  if (score.guessed == 0)
    return g_strdup ("");
  if (score.guessed < lesson->steps->len)
    /* Translators: begun, not finished: so many of so many steps. */
    return tb_fill_with (_ ("%1$s of %2$s steps done"), guessed, steps, NULL);
  if (isnan (score.mean_off))
    return tb_fill_with (_ ("Done: %1$s of %2$s right"), right, steps, NULL);
  return tb_fill_with (_ ("Done: %1$s of %2$s right, %3$s boards off"), right, steps, off, NULL);
}
