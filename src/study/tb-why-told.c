/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "tb-why-told.h"

#include <math.h>
#include "tb-fill.h"

/* A difference smaller than this, in the digits shown, is none: boards, degrees, feet. */
static const double smallest[TB_WHY_N_SPLITS] = { 0.05, 0.05, 0.05 };

/* Units of the splits, as core's tables have them; digits after the point. */
static const char *const split_units[TB_WHY_N_SPLITS] = { "board", "°", "ft" };
#define DIGITS 1

TbToldUnit
why_told_unit (const WhyTeller *teller, TbWhyMeasure split)
{
  return tb_told_unit (split_units[split], DIGITS, teller->metric);
}

gboolean
why_is_small (TbWhyMeasure split, double amount)
{
  return !(fabs (amount) >= smallest[split]);
}

double
why_as_told (const WhyTeller *teller, TbWhyMeasure split, double value)
{
  TbToldUnit told = why_told_unit (teller, split);
  double steps = pow (10, told.digits);

  return floor (value * told.factor * steps + 0.5) / steps;
}

char *
why_told_text (const WhyTeller *teller, TbWhyMeasure split, double value)
{
  TbToldUnit told = why_told_unit (teller, split);

  return tb_number_text (value * told.factor, told.digits);
}

double
why_told_difference (const WhyTeller *teller, TbWhyMeasure split)
{
  double told = why_as_told (teller, split, teller->why->value[TB_SIDE_AFTER][split])
                - why_as_told (teller, split, teller->why->value[TB_SIDE_BEFORE][split]);

  return fabs (teller->why->difference[split]) < smallest[split] ? 0 : told;
}

char *
why_told_difference_text (const WhyTeller *teller, TbWhyMeasure split)
{
  return tb_number_text (fabs (why_told_difference (teller, split)), why_told_unit (teller, split).digits);
}

gboolean
why_differs (const WhyTeller *teller, TbWhyMeasure split)
{
  return fabs (why_told_difference (teller, split)) > 0.5 * pow (10, -why_told_unit (teller, split).digits);
}

gboolean
why_comes_in (const WhyTeller *teller)
{
  return teller->why->value[TB_SIDE_BEFORE][TB_WHY_ANGLE] >= 0
         && teller->why->value[TB_SIDE_AFTER][TB_WHY_ANGLE] >= 0;
}
