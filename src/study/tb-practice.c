/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"
#include "tb-practice-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include "tb-fill.h"
#include "tb-measure-text.h"
#include "tb-room.h"

/* Shots that a chance is counted from, and where their draws begin: the same plan every time. */
#define CHANCE_SHOTS 400
#define CHANCE_SEED 1
/* Balls that a bowler throws to see how it goes. */
#define BALLS_TOLD 10
/* Breakpoints less than this apart, ft, look the same. */
#define SEEN_FT 1.0

static void
step_free (gpointer data)
{
  TbPracticeStep *step = data;

  g_free (step->title);
  g_free (step->how);
  g_free (step->target);
  g_free (step);
}

static char *
number_of (const PracticeInput *input, const TbRun *run, const char *name)
{
  return tb_measure_number_text (tb_measure_find (name), &run->path.measures, input->metric);
}

static char *
told_of (const PracticeInput *input, const TbRun *run, const char *name)
{
  return tb_measure_text (tb_measure_find (name), &run->path.measures, input->metric);
}

static gboolean
turns_back (const TbRun *run)
{
  return !isnan (run->path.measures.breakpoint_y);
}

static char *
right_text (const PracticeInput *input)
{
  const TbRun *run = input->after;
  g_autofree char *arrows
      = number_of (input, run, "board_at_arrows"),
      *turn = number_of (input, run, "breakpoint_board"), *where = told_of (input, run, "breakpoint_ft"),
      *pins = number_of (input, run, "board_at_pins"), *end = tb_run_end_text (run, input->metric);

  if (run->path.result != TB_RESULT_PINS)
    return tb_fill_with (_ ("Over board %1$s at the arrows, as far as it goes: %2$s."), arrows, end, NULL);
  if (!turns_back (run))
    return tb_fill_with (_ ("Over board %1$s at the arrows, to board %2$s at the pins: %3$s."), arrows, pins,
                         end, NULL);
  return tb_fill_with (_ ("Over board %1$s at the arrows, back from board %2$s at %3$s, to board %4$s at the "
                          "pins: %5$s."),
                       arrows, turn, where, pins, end, NULL);
}

static gboolean
turns_look_alike (const PracticeInput *input)
{
  const TbMeasures *before = &input->before->path.measures, *after = &input->after->path.measures;

  return !turns_back (input->before) || !turns_back (input->after)
         || tb_ft_from_metres (fabs (after->breakpoint_y - before->breakpoint_y)) < SEEN_FT;
}

/* What there is to see as long as the ball does what it did. */
static char *
wrong_text (const PracticeInput *input)
{
  const TbRun *before = input->before, *after = input->after;
  gboolean earlier = before->path.measures.breakpoint_y < after->path.measures.breakpoint_y;
  g_autofree char *turn
      = number_of (input, before, "breakpoint_board"),
      *where = told_of (input, before, "breakpoint_ft"), *pins = number_of (input, before, "board_at_pins"),
      *other = number_of (input, after, "board_at_pins"), *end = tb_run_end_text (before, input->metric),
      *now = tb_run_end_text (after, input->metric);

  if (before->path.result != TB_RESULT_PINS)
    return g_str_equal (end, now) ? NULL : tb_fill_with (_ ("It still ends as before: %1$s."), end, NULL);
  if (!turns_look_alike (input))
    return tb_fill_with (
        earlier ? _ ("It turns earlier, at %1$s from board %2$s, and ends on board %3$s: that is the "
                     "throw of before.")
                : _ ("It turns later, at %1$s from board %2$s, and ends on board %3$s: that is the "
                     "throw of before."),
        where, turn, pins, NULL);
  if (g_str_equal (pins, other))
    return NULL;
  return tb_fill_with (_ ("It ends on board %1$s: that is the throw of before."), pins, NULL);
}

static int
of_ten (const TbRun *run, GCancellable *cancellable)
{
  TbScatter scatter = tb_scatter_typical (TB_SKILL_LEAGUE);
  TbPocketChance chance = { 0 };

  if (!tb_pocket_chance (run->setup, &scatter, CHANCE_SEED, CHANCE_SHOTS, 0, &chance, cancellable))
    return 0;
  return (int) round (BALLS_TOLD * chance.share);
}

static char *
score_text (const PracticeInput *input)
{
  int before = of_ten (input->before, input->cancellable), after = of_ten (input->after, input->cancellable);
  g_autofree char *was = tb_number_text (before, 0), *is = tb_number_text (after, 0);

  if (after == 0)
    return NULL;
  if (before == after)
    return tb_fill_with (
        _ ("Count ten balls: with a league bowler’s usual scatter (assumed) about %1$s find the "
           "pocket."),
        is, NULL);
  return tb_fill_with (
      _ ("Count ten balls: with a league bowler’s usual scatter (assumed) about %1$s find the "
         "pocket; before, %2$s."),
      is, was, NULL);
}

static char *
nothing_text (const TbPractice *practice)
{
  if (practice->steps->len > 0)
    return NULL;
  return g_strdup (_ ("Nothing differs between before and after: throw this one until it repeats."));
}

TbPractice *
tb_practice_new (const TbRun *before, const TbRun *after, gboolean metric, GCancellable *cancellable)
{
  PracticeInput input = { before, after, metric, cancellable };
  g_autoptr (TbPractice) practice = g_new0 (TbPractice, 1);

  practice->steps = g_ptr_array_new_with_free_func (step_free);
  if (!practice_add_steps (&input, practice->steps))
    return NULL;
  practice->nothing = nothing_text (practice);
  practice->right = right_text (&input);
  practice->wrong = practice->nothing ? NULL : wrong_text (&input);
  practice->score = score_text (&input);
  return g_cancellable_is_cancelled (cancellable) ? NULL : g_steal_pointer (&practice);
}

void
tb_practice_free (TbPractice *practice)
{
  g_ptr_array_unref (practice->steps);
  g_free (practice->nothing);
  g_free (practice->right);
  g_free (practice->wrong);
  g_free (practice->score);
  g_free (practice);
}

const char *
tb_practice_stop_text (void)
{
  return _ ("Stop if anything hurts or goes numb. A qualified coach comes before this page.");
}
