/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "tb-describe.h"

#include <glib/gi18n-lib.h>

#include "tb-measure-text.h"
#include "tb-quantity.h"
#include "tb-store-error.h"

/* Stands where a run has no number. */
#define NOTHING "–"

const char *
tb_describe_measure_unit (const TbMeasureInfo *info, TbUnits units)
{
  return tb_measure_unit_text (info, units == TB_UNITS_METRIC);
}

char *
tb_describe_measure_number (const TbMeasureInfo *info, const TbMeasures *measures, TbUnits units)
{
  return tb_measure_number_text (info, measures, units == TB_UNITS_METRIC);
}

char *
tb_describe_measure (const TbMeasureInfo *info, const TbMeasures *measures, TbUnits units)
{
  return tb_measure_text (info, measures, units == TB_UNITS_METRIC);
}

char *
tb_describe_difference (const TbMeasureInfo *info,
                        const TbMeasures *before,
                        const TbMeasures *after,
                        TbUnits units)
{
  return tb_measure_difference_text (info, before, after, units == TB_UNITS_METRIC);
}

static char *
measure (const char *name, const TbRun *run, TbUnits units)
{
  return tb_describe_measure (tb_measure_find (name), &run->path.measures, units);
}

static char *
measure_number (const char *name, const TbRun *run, TbUnits units)
{
  return tb_describe_measure_number (tb_measure_find (name), &run->path.measures, units);
}

char *
tb_describe_distance (double y, TbUnits units)
{
  return tb_distance_text (y, units == TB_UNITS_METRIC);
}

char *
tb_describe_end (const TbRun *run, TbUnits units)
{
  return tb_run_end_text (run, units == TB_UNITS_METRIC);
}

char *
tb_describe_problem (const TbRun *run)
{
  const TbProblem *problem = &run->problem;
  g_autofree char *clause = NULL, *wrong = NULL;

  if (problem->field == NULL)
    clause = tb_problem_sentence (problem);
  else
    {
      /* As it is called on the left, not as in a file. */
      wrong = tb_field_sentence (problem->field, problem->status, problem->value);
      clause = g_strdup_printf (_ ("%s: %s"), _ (problem->field->label), wrong);
    }
  return g_strdup_printf (_ ("%s. Change it on the left, or undo; nothing is lost."), clause);
}

static void
add_turn (GString *text, const TbRun *run, TbUnits units)
{
  g_autofree char *board = measure_number ("breakpoint_board", run, units);
  g_autofree char *where = measure ("breakpoint_ft", run, units);
  g_autofree char *roll = measure ("roll_start_ft", run, units);

  if (!isnan (run->path.measures.breakpoint_y))
    g_string_append_printf (text, _ (" It turns back at board %s, %s down the lane."), board, where);
  if (!isnan (run->path.measures.roll_start_y))
    g_string_append_printf (text, _ (" It rolls from %s."), roll);
}

char *
tb_describe_run (const TbRun *run, TbUnits units)
{
  g_autoptr (GString) text = g_string_new (NULL);
  g_autofree char *speed = NULL, *arrows = NULL, *pins = NULL, *angle = NULL, *end = NULL;

  if (run->status != TB_OK)
    return tb_describe_problem (run);
  speed = measure ("actual_speed_mph", run, units);
  arrows = measure_number ("board_at_arrows", run, units);
  end = tb_describe_end (run, units);
  g_string_append_printf (text, _ ("Thrown at %s, the ball crosses the arrows at board %s."), speed, arrows);
  add_turn (text, run, units);
  if (run->path.result == TB_RESULT_PINS)
    {
      pins = measure_number ("board_at_pins", run, units);
      angle = measure ("angle_at_pins_deg", run, units);
      g_string_append_printf (text, _ (" It meets the pins at board %s at %s: %s."), pins, angle, end);
    }
  else
    /* Translators: %s is where it ended, such as "right gutter at 43.0 ft". */
    g_string_append_printf (text, _ (" It ends in the gutter: %s."), end);
  return g_string_free (g_steal_pointer (&text), FALSE);
}

/* A sentence for more and one for less, with the difference in them. */
typedef struct Comparison
{
  const char *measure;
  const char *more, *less;
} Comparison;

static const Comparison comparisons[] = {
  /* Translators: %s is a number of boards; the same below. */
  { "hook_board", N_ (" It hooks %s boards more."), N_ (" It hooks %s boards less.") },
  { "board_at_pins", N_ (" It meets the pins at a board higher by %s."),
    N_ (" It meets the pins at a board lower by %s.") },
  /* Translators: %s is a number of degrees. */
  { "angle_at_pins_deg", N_ (" It comes in %s° steeper."), N_ (" It comes in %s° flatter.") },
};

/* Nothing where the two are alike as they are shown, or where one of them has no such number. */
static void
add_comparison (GString *text, const Comparison *comparison, const TbRun *runs[TB_N_SIDES], TbUnits units)
{
  g_autofree char *difference
      = tb_describe_difference (tb_measure_find (comparison->measure), &runs[TB_SIDE_BEFORE]->path.measures,
                                &runs[TB_SIDE_AFTER]->path.measures, units);
  const char *sentence = NULL;

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

static char *
describe_differences (const TbRun *before, const TbRun *after, TbUnits units)
{
  const TbRun *runs[TB_N_SIDES] = { before, after };
  g_autoptr (GString) text = g_string_new (NULL);

  if (before->status != TB_OK || after->status != TB_OK)
    return g_strdup (_ ("Difference: not to be told while one of the two cannot be thrown."));
  for (gsize i = 0; i < G_N_ELEMENTS (comparisons); i++)
    add_comparison (text, &comparisons[i], runs, units);
  if (text->len == 0)
    return g_strdup (_ ("Difference: none that shows."));
  /* Translators: before sentences such as " It hooks 2.3 boards less." */
  g_string_prepend (text, _ ("Difference, after against before:"));
  return g_string_free (g_steal_pointer (&text), FALSE);
}

char *
tb_describe_both (const TbRun *before, const TbRun *after, TbUnits units)
{
  g_autofree char *first = tb_describe_run (before, units);
  g_autofree char *second = tb_describe_run (after, units);
  g_autofree char *difference = describe_differences (before, after, units);

  /* Translators: the first two %s are each a sentence or more about a run, the third how they differ. */
  return g_strdup_printf (_ ("Before: %s After: %s %s"), first, second, difference);
}

static const char *
phase_word (const TbPath *path, const TbSample *sample)
{
  switch (sample->phase)
    {
    case TB_PHASE_FLIGHT:
      return _ ("In the air");
    case TB_PHASE_ROLL:
      return _ ("Rolls");
    default:
      return sample->position.y >= path->measures.hook_start_y ? _ ("Hooks") : _ ("Skids");
    }
}

char *
tb_describe_moment (const TbRun *run, double time, TbUnits units)
{
  TbSample sample;
  g_autofree char *board = NULL, *where = NULL, *speed = NULL;
  double v;

  if (run->status != TB_OK || !tb_path_at_time (&run->path, time, &sample))
    return g_strdup (NOTHING);
  board = tb_number_format (tb_board_from_x (sample.position.x), 1);
  where = tb_describe_distance (sample.position.y, units);
  v = tb_vec3_length (sample.velocity);
  speed = units == TB_UNITS_METRIC
              ? tb_number_with_unit (tb_km_per_hour_from_metres_per_second (v), 1, N_ ("km/h"))
              : tb_number_with_unit (tb_mph_from_metres_per_second (v), 1, N_ ("mph"));
  /* Translators: what the ball does, its board, distance and speed: "Hooks at board 8.3, 41.0 ft, 15.2 mph".
   */
  return g_strdup_printf (_ ("%s at board %s, %s, %s"), phase_word (&run->path, &sample), board, where,
                          speed);
}

char *
tb_describe_place (const TbRun *run, double x, double y, TbUnits units)
{
  TbFriction friction;
  TbMotion motion;
  double film = 0, own_x = run->path.mirrored ? -x : x;
  double coefficient;
  g_autofree char *board = tb_number_format (tb_board_from_x (own_x), 1);
  g_autofree char *where = tb_describe_distance (y, units);
  g_autofree char *oil = NULL, *grip = NULL;

  if (tb_shot_motion (&run->setup->shot, &friction, &motion, NULL) != TB_OK)
    return g_strdup_printf (_ ("Board %s, %s"), board, where);
  coefficient = tb_friction_at (&friction, &(TbContact){ .x = own_x, .y = y, .load = 1.0 }, &film);
  oil = units == TB_UNITS_METRIC ? tb_number_with_unit (tb_um_from_metres (film), 1, N_ ("µm"))
                                 : tb_number_with_unit (tb_units_from_film (film), 1, N_ ("units"));
  grip = tb_number_format (coefficient, 3);
  /* Translators: a place on the lane: "Board 12.3, 38.4 ft: film 14.0 units, friction 0.041". */
  return g_strdup_printf (_ ("Board %s, %s: film %s, friction %s"), board, where, oil, grip);
}
