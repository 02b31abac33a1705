/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "tb-loft-words.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "tb-describe.h"
#include "tb-quantity.h"

/* Boards that nobody would see a difference in. */
#define UNSEEN 0.05

const char *
tb_loft_style_name (TbLoftStyle style)
{
  return style == TB_LOFT_FLAT ? _ ("Flat") : _ ("High arc");
}

char *
tb_loft_lane_name (TbLoftLane lane, double games)
{
  if (lane == TB_LOFT_FRESH)
    return g_strdup (C_ ("lane", "fresh"));
  return g_strdup_printf (ngettext ("after %g game", "after %g games", (gulong) ceil (games)), games);
}

/* One throw's landing: where, how hard, and what it takes. */
static char *
landing_text (TbLoftRuns *runs, TbLoftStyle style, TbUnits units)
{
  TbRun *run = tb_loft_runs_get_run (runs, style, TB_LOFT_FRESH);
  const TbMeasures *measures;
  g_autofree char *place = NULL, *speed = NULL, *lost = NULL;

  if (run == NULL)
    return NULL;
  if (run->status != TB_OK)
    {
      g_autofree char *problem = tb_describe_problem (run);

      /* Translators: a throw, such as "High arc", and a sentence. */
      return g_strdup_printf (_ ("%s: %s"), tb_loft_style_name (style), problem);
    }
  measures = &run->path.measures;
  place = tb_describe_measure (tb_measure_find ("landing_ft"), measures, units);
  speed = tb_describe_measure (tb_measure_find ("landing_speed_mph"), measures, units);
  lost = tb_describe_measure (tb_measure_find ("landing_loss_j"), measures, units);
  /* Translators: a throw, a distance, a speed, a number of weights, an energy. */
  return g_strdup_printf (
      _ ("%s: comes down at %s with %s, presses with %.0f times its weight and loses %s."),
      tb_loft_style_name (style), place, speed, measures->landing_load, lost);
}

/* The arc against the flat throw on one lane. */
static char *
hook_text (TbLoftRuns *runs, TbLoftLane lane)
{
  TbRun *flat = tb_loft_runs_get_run (runs, TB_LOFT_FLAT, lane);
  TbRun *arc = tb_loft_runs_get_run (runs, TB_LOFT_ARC, lane);
  double more;

  if (flat == NULL || arc == NULL)
    return NULL;
  more = tb_boards_from_width (arc->path.measures.hook - flat->path.measures.hook);
  if (flat->status != TB_OK || arc->status != TB_OK || isnan (more))
    return NULL;
  if (fabs (more) < UNSEEN)
    return g_strdup (lane == TB_LOFT_FRESH ? _ ("On the fresh lane both hook alike.")
                                           : _ ("On the worn lane both hook alike."));
  if (lane == TB_LOFT_FRESH)
    return more > 0 ? g_strdup_printf (_ ("On the fresh lane the arc hooks %.1f boards more."), more)
                    : g_strdup_printf (_ ("On the fresh lane the arc hooks %.1f boards less."), -more);
  return more > 0 ? g_strdup_printf (_ ("On the worn lane the arc hooks %.1f boards more."), more)
                  : g_strdup_printf (_ ("On the worn lane the arc hooks %.1f boards less."), -more);
}

char *
tb_loft_runs_text (TbLoftRuns *runs, TbUnits units)
{
  GString *text = g_string_new (NULL);

  for (int i = 0; i < TB_N_LOFTS + TB_N_LOFT_LANES; i++)
    {
      g_autofree char *sentence = i < TB_N_LOFTS ? landing_text (runs, (TbLoftStyle) i, units)
                                                 : hook_text (runs, (TbLoftLane) (i - TB_N_LOFTS));

      if (sentence != NULL)
        g_string_append_printf (text, text->len > 0 ? " %s" : "%s", sentence);
    }
  return g_string_free (text, FALSE);
}
