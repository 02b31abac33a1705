/* The numbers of Why as they are told: in which unit, how far, and when a difference is none.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "tb-unit-pair.h"
#include "tb-why.h"

G_BEGIN_DECLS

/* A ball that hooks less than this, boards, runs straight as far as a sentence goes. */
#define WHY_STRAIGHT_BOARDS 0.5

/* What is told of, and in which units. */
typedef struct WhyTeller
{
  const TbWhy *why;
  gboolean metric;
} WhyTeller;

/* These are of the splits only: boards, degrees, feet. */
TbToldUnit why_told_unit (const WhyTeller *teller, TbWhyMeasure split);
/* A number in the unit it is told in, as far as it is told. */
double why_as_told (const WhyTeller *teller, TbWhyMeasure split, double value);
/* The same as a text; the caller's. */
char *why_told_text (const WhyTeller *teller, TbWhyMeasure split, double value);
/* The difference between the numbers as they are told, so that nobody who subtracts them gets another. */
double why_told_difference (const WhyTeller *teller, TbWhyMeasure split);
/* Its size as a text; the caller's. */
char *why_told_difference_text (const WhyTeller *teller, TbWhyMeasure split);
/* Whether there is a difference to be told. */
gboolean why_differs (const WhyTeller *teller, TbWhyMeasure split);
/* Too small to be told, in core's unit; not a number is. */
gboolean why_is_small (TbWhyMeasure split, double amount);
/* Steeper and flatter are said of a ball that comes in towards higher boards. */
gboolean why_comes_in (const WhyTeller *teller);

G_END_DECLS
