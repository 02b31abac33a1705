/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "tb-why-reason.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include "tb-fill.h"

/* Of a part, on the lane behind the oil, from which on time there is its reason. */
#define DRY_SHARE 0.3

/* What a change did on the way, as a reason for boards. `good` is the sign that goes with more boards. */
struct WhyReason
{
  TbWhyMeasure fact;
  int good;
  double smallest; /* in the fact's unit, below which it is no reason */
  int digits;
  const char *unit; /* as core's tables have it */
  const char *more,
      *less; /* %1$s the change, %2$s the amount, %3$s what it comes to, %4$s the dry lane, %5$s the unit */
};

/* Translators: %1$s is the change ("2.0 mph more"), %2$s a number, %3$s what it comes to ("3.1 of the 3.6
 * boards"). */
static const WhyReason reasons[] = {
  { TB_WHY_DRY_TIME, 1, 0.005, 2, "ft",
    N_ ("%1$s leaves the ball %2$s s more on the dry last %4$s %5$s: %3$s."),
    N_ ("%1$s leaves the ball %2$s s less on the dry last %4$s %5$s: %3$s.") },
  { TB_WHY_SIDE_SHARE, 1, 2, 0, "", N_ ("%1$s turns %2$s %% more of the friction sideways: %3$s."),
    N_ ("%1$s turns %2$s %% less of the friction sideways: %3$s.") },
  { TB_WHY_OIL_EXIT, -1, 0.1, 1, "ft", N_ ("%1$s keeps the ball in the oil %2$s %5$s longer: %3$s."),
    N_ ("%1$s brings the ball out of the oil %2$s %5$s earlier: %3$s.") },
  { TB_WHY_HOOK_START, -1, 0.1, 1, "ft", N_ ("%1$s makes the ball hook %2$s %5$s later: %3$s."),
    N_ ("%1$s makes the ball hook %2$s %5$s earlier: %3$s.") },
  { TB_WHY_ROLL_START, -1, 0.1, 1, "ft", N_ ("%1$s makes the ball roll %2$s %5$s later: %3$s."),
    N_ ("%1$s makes the ball roll %2$s %5$s earlier: %3$s.") },
  { TB_WHY_TURN, 1, 0.1, 1, "", N_ ("%1$s turns the ball %2$s° more on its way: %3$s."),
    N_ ("%1$s turns the ball %2$s° less on its way: %3$s.") },
  { TB_WHY_FLARE, 1, 0.05, 1, "in", N_ ("%1$s lets the track flare %2$s %5$s more over dry cover: %3$s."),
    N_ ("%1$s lets the track flare %2$s %5$s less over dry cover: %3$s.") },
};

/* Which reasons are looked at for an input, the trade's own first. */
typedef struct Habit
{
  const char *field;
  TbWhyMeasure fact[4];
} Habit;

static const Habit habits[] = {
  { "speed_mph", { TB_WHY_DRY_TIME, TB_WHY_SIDE_SHARE, TB_WHY_HOOK_START, TB_WHY_ROLL_START } },
  { "rev_rate_rpm", { TB_WHY_SIDE_SHARE, TB_WHY_TURN, TB_WHY_HOOK_START } },
  { "axis_rotation_deg", { TB_WHY_SIDE_SHARE, TB_WHY_TURN, TB_WHY_HOOK_START } },
  { "axis_tilt_deg", { TB_WHY_SIDE_SHARE, TB_WHY_TURN, TB_WHY_HOOK_START } },
  { "grip_pressure", { TB_WHY_SIDE_SHARE, TB_WHY_DRY_TIME, TB_WHY_HOOK_START } },
  { "differential_in", { TB_WHY_FLARE, TB_WHY_HOOK_START } },
  { "intermediate_differential_in", { TB_WHY_FLARE, TB_WHY_HOOK_START } },
  { "pin_to_pap_in", { TB_WHY_FLARE, TB_WHY_HOOK_START } },
  { "drilling_angle_deg", { TB_WHY_FLARE, TB_WHY_HOOK_START } },
  { "val_angle_deg", { TB_WHY_FLARE, TB_WHY_HOOK_START } },
  { NULL, { TB_WHY_HOOK_START, TB_WHY_OIL_EXIT, TB_WHY_ROLL_START, TB_WHY_DRY_TIME } },
};

static const Habit *
find_habit (const TbChange *change)
{
  const Habit *habit = habits;

  while (habit->field && g_strcmp0 (habit->field, tb_change_name (change)) != 0)
    habit++;
  return habit;
}

static const WhyReason *
find_reason (TbWhyMeasure fact)
{
  for (gsize i = 0; i < G_N_ELEMENTS (reasons); i++)
    if (reasons[i].fact == fact)
      return &reasons[i];
  return NULL;
}

/* A share is told in hundredths. */
static double
fact_amount (const TbWhyInput *input, TbWhyMeasure fact)
{
  return input->part[fact] * (fact == TB_WHY_SIDE_SHARE ? 100 : 1);
}

/* A fact explains a part if it is there, is large enough to be told, and points the same way. */
static gboolean
explains (const TbWhyInput *input, const WhyReason *reason)
{
  double amount = fact_amount (input, reason->fact);

  return isfinite (amount) && fabs (amount) >= reason->smallest
         && amount * reason->good * input->part[TB_WHY_BOARD] > 0;
}

/* Facts speak of a ball that hooks towards higher boards in both throws. */
static gboolean
both_hook (const WhyTeller *teller)
{
  for (int side = 0; side < TB_N_SIDES; side++)
    if (!(teller->why->value[side][TB_WHY_BOARD] - teller->why->value[side][TB_WHY_LAUNCH]
          > WHY_STRAIGHT_BOARDS))
      return FALSE;
  return TRUE;
}

/* Time on the dry is no reason for boards that the ball gains or loses in the oil: a fair part of them has to
 * come from the lane behind it. */
static gboolean
comes_from_the_dry (const WhyTeller *teller, const TbWhyInput *input)
{
  const TbWhy *why = teller->why;
  double exit = why->value[TB_SIDE_BEFORE][TB_WHY_OIL_EXIT], part = input->part[TB_WHY_BOARD], dry = 0;

  for (guint i = 0; i < why->n_stretches; i++)
    {
      const TbWhyStretch *stretch = &why->stretch[i];
      double behind = stretch->to_ft - fmax (stretch->from_ft, exit);

      dry += stretch->part[TB_WHY_BOARD] * fmax (behind, 0) / (stretch->to_ft - stretch->from_ft);
    }
  return isfinite (exit) && dry * part > 0 && fabs (dry) >= DRY_SHARE * fabs (part);
}

const WhyReason *
why_reason_for (const WhyTeller *teller, const TbWhyInput *input)
{
  const Habit *habit = find_habit (&input->change);

  if (!both_hook (teller))
    return NULL;
  for (gsize i = 0; i < G_N_ELEMENTS (habit->fact); i++)
    {
      const WhyReason *reason = find_reason (habit->fact[i]);

      if (reason && explains (input, reason)
          && (reason->fact != TB_WHY_DRY_TIME || comes_from_the_dry (teller, input)))
        return reason;
    }
  return NULL;
}

TbWhyMeasure
why_reason_fact (const WhyReason *reason)
{
  return reason->fact;
}

char *
why_reason_sentence (const WhyTeller *teller,
                     const TbWhyInput *input,
                     const WhyReason *reason,
                     const WhySaid *said)
{
  double amount = fact_amount (input, reason->fact);
  double dry = TB_HEAD_PIN_FT - teller->why->value[TB_SIDE_BEFORE][TB_WHY_OIL_EXIT];
  gboolean length = reason->fact != TB_WHY_DRY_TIME;
  TbToldUnit told = tb_told_unit (reason->unit, length ? reason->digits : 0, teller->metric);
  g_autofree char *size = length ? tb_number_text (fabs (amount) * told.factor, told.digits)
                                 : tb_number_text (fabs (amount), reason->digits);
  g_autofree char *rest = tb_number_text (dry * told.factor, told.digits);

  return tb_fill_with (_ (amount > 0 ? reason->more : reason->less), said->change, size, said->comes_to, rest,
                       told.unit, NULL);
}
