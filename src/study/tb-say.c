/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"
#include "tb-say.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include "tb-measure-text.h"
#include "tb-study.h"

static char *
told (const char *name, const TbRun *run, gboolean metric)
{
  return tb_measure_text (tb_measure_find (name), &run->path.measures, metric);
}

static char *
told_number (const char *name, const TbRun *run, gboolean metric)
{
  return tb_measure_number_text (tb_measure_find (name), &run->path.measures, metric);
}

static void
add_turn (GString *text, const TbRun *run, gboolean metric)
{
  g_autofree char *board = told_number ("breakpoint_board", run, metric);
  g_autofree char *where = told ("breakpoint_ft", run, metric);
  g_autofree char *roll = told ("roll_start_ft", run, metric);

  if (!isnan (run->path.measures.breakpoint_y))
    g_string_append_printf (text, _ (" It turns back at board %s, %s down the lane."), board, where);
  if (!isnan (run->path.measures.roll_start_y))
    g_string_append_printf (text, _ (" It rolls from %s."), roll);
}

static void
add_end (GString *text, const TbRun *run, gboolean metric)
{
  g_autofree char *pins = told_number ("board_at_pins", run, metric);
  g_autofree char *angle = told ("angle_at_pins_deg", run, metric), *end = tb_run_end_text (run, metric);

  if (run->path.result == TB_RESULT_PINS)
    g_string_append_printf (text, _ (" It meets the pins at board %s at %s: %s."), pins, angle, end);
  else
    /* Translators: %s is where it ended, such as "right gutter at 43.0 ft". */
    g_string_append_printf (text, _ (" It ends in the gutter: %s."), end);
}

char *
tb_say_run (const TbRun *run, gboolean metric)
{
  g_autoptr (GString) text = g_string_new (NULL);
  g_autofree char *speed = told ("actual_speed_mph", run, metric), *arrows = told_number ("board_at_arrows", run, metric);

  g_return_val_if_fail (run->status == TB_OK, NULL);
  g_string_append_printf (text, _ ("Thrown at %s, the ball crosses the arrows at board %s."), speed, arrows);
  add_turn (text, run, metric);
  add_end (text, run, metric);
  return g_string_free (g_steal_pointer (&text), FALSE);
}

/* A sentence for more and one for less, with the difference in them. */
typedef struct Comparison
{
  const char *measure;
  gboolean upwards; /* said only of balls that hook, or come in, towards higher boards */
  const char *more, *less;
} Comparison;

static const Comparison comparisons[] = {
  /* Translators: %s is a number of boards; the same below. */
  { "hook_board", TRUE, N_ (" It hooks %s boards more."), N_ (" It hooks %s boards less.") },
  { "board_at_pins", FALSE, N_ (" It meets the pins at a board higher by %s."),
    N_ (" It meets the pins at a board lower by %s.") },
  /* Translators: %s is a number of degrees. */
  { "angle_at_pins_deg", TRUE, N_ (" It comes in %s° steeper."), N_ (" It comes in %s° flatter.") },
};

/* Nothing where the two are alike as they are shown, or where one of them has no such number. */
static void
add_comparison (GString *text, const Comparison *comparison, const TbRun *runs[TB_N_SIDES], gboolean metric)
{
  const TbMeasureInfo *info = tb_measure_find (comparison->measure);
  const TbMeasures *before = &runs[TB_SIDE_BEFORE]->path.measures, *after = &runs[TB_SIDE_AFTER]->path.measures;
  g_autofree char *difference = tb_measure_difference_text (info, before, after, metric);
  const char *sentence = NULL;

  if (comparison->upwards && (tb_measure_value (info, before) < 0 || tb_measure_value (info, after) < 0))
    return;
  if (g_str_has_prefix (difference, "+"))
    sentence = comparison->more;
  else if (g_str_has_prefix (difference, "−"))
    sentence = comparison->less;
  if (sentence != NULL)
    {
#pragma GCC diagnostic push
#pragma GCC diagnostic ignored "-Wformat-nonliteral"
      g_string_append_printf (text, _ (sentence), g_utf8_next_char (difference));
#pragma GCC diagnostic pop
    }
}

char *
tb_say_difference (const TbRun *before, const TbRun *after, gboolean metric)
{
  const TbRun *runs[TB_N_SIDES] = { before, after };
  g_autoptr (GString) text = g_string_new (NULL);

  if (before->status != TB_OK || after->status != TB_OK)
    return g_strdup (_ ("Difference: not to be told while one of the two cannot be thrown."));
  if (before->path.result != TB_RESULT_PINS || after->path.result != TB_RESULT_PINS)
    return g_strdup (_ ("Difference: a ball in the gutter has no place at the pins to compare."));
  for (gsize i = 0; i < G_N_ELEMENTS (comparisons); i++)
    add_comparison (text, &comparisons[i], runs, metric);
  if (text->len == 0)
    return g_strdup (_ ("Difference: none that shows."));
  /* Translators: before sentences such as " It hooks 2.3 boards less." */
  g_string_prepend (text, _ ("Difference, after against before:"));
  return g_string_free (g_steal_pointer (&text), FALSE);
}

char *
tb_say_together (const char *before, const char *after, const char *difference)
{
  /* Translators: the first two %s are each a sentence or more about a run, the third how they differ. */
  return g_strdup_printf (_ ("Before: %s After: %s %s"), before, after, difference);
}
