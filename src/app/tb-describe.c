/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "tb-describe.h"

#include <glib/gi18n-lib.h>

#include "tb-measure-text.h"
#include "tb-quantity.h"
#include "tb-say.h"
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

char *
tb_describe_run (const TbRun *run, TbUnits units)
{
  return run->status == TB_OK ? tb_say_run (run, units == TB_UNITS_METRIC) : tb_describe_problem (run);
}

char *
tb_describe_both (const TbRun *before, const TbRun *after, TbUnits units)
{
  g_autofree char *first = tb_describe_run (before, units);
  g_autofree char *second = tb_describe_run (after, units);
  g_autofree char *difference = tb_say_difference (before, after, units == TB_UNITS_METRIC);

  return tb_say_together (first, second, difference);
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
