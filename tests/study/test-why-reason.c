/* Which fact explains what a change came to: one that was computed, points the same way, and is of the place
 * where the boards come from. The numbers are made up; each differs from the first in one thing.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include <locale.h>
#include <math.h>

#include "tb-why-reason.h"

#define OIL_FT 40
#define BOARDS 2

typedef struct Fixture
{
  TbWhy why;
  WhyTeller teller;
  TbWhyInput *input;
} Fixture;

/* The boards of a change come from one stretch: to the oil's end, or behind it. */
static void
come_from (Fixture *self, gboolean dry)
{
  self->why.stretch[0] = (TbWhyStretch){ 0, OIL_FT, { dry ? 0 : BOARDS, 0 } };
  self->why.stretch[1] = (TbWhyStretch){ OIL_FT, TB_HEAD_PIN_FT, { dry ? BOARDS : 0, 0 } };
}

/* A ball that hooks ten boards, and by two more because it was thrown slower: a tenth of a second on the dry.
 */
static void
set_up (Fixture *self, gconstpointer data)
{
  self->teller.why = &self->why;
  self->input = &self->why.input[0];
  self->why.n_inputs = 1;
  self->why.n_stretches = 2;
  for (int side = 0; side < TB_N_SIDES; side++)
    {
      self->why.value[side][TB_WHY_BOARD] = 10 + BOARDS * side;
      self->why.value[side][TB_WHY_OIL_EXIT] = OIL_FT;
    }
  for (int fact = TB_WHY_N_SPLITS; fact < TB_WHY_N_MEASURES; fact++)
    self->input->part[fact] = NAN;
  self->input->part[TB_WHY_BOARD] = BOARDS;
  self->input->part[TB_WHY_DRY_TIME] = 0.1;
  self->input->change = (TbChange){ TB_CHANGE_FIELD, tb_field_find (TB_GROUP_DELIVERY, "speed_mph") };
  come_from (self, TRUE);
}

static void
tear_down (Fixture *self, gconstpointer data)
{
}

static void
assert_reason (Fixture *self, TbWhyMeasure fact)
{
  const WhyReason *reason = why_reason_for (&self->teller, self->input);

  g_assert_nonnull (reason);
  g_assert_cmpint (why_reason_fact (reason), ==, fact);
}

static void
assert_none (Fixture *self)
{
  g_assert_null (why_reason_for (&self->teller, self->input));
}

static void
test_where_boards_come_from (Fixture *self, gconstpointer data)
{
  assert_reason (self, TB_WHY_DRY_TIME);
  come_from (self, FALSE);
  assert_none (self);
  self->input->part[TB_WHY_SIDE_SHARE] = 0.05;
  assert_reason (self, TB_WHY_SIDE_SHARE);
}

static void
test_same_way (Fixture *self, gconstpointer data)
{
  self->input->part[TB_WHY_DRY_TIME] = -0.1;
  assert_none (self);
  /* An earlier hook goes with more boards. */
  self->input->part[TB_WHY_HOOK_START] = 1;
  assert_none (self);
  self->input->part[TB_WHY_HOOK_START] = -1;
  assert_reason (self, TB_WHY_HOOK_START);
}

static void
test_large_enough (Fixture *self, gconstpointer data)
{
  self->input->part[TB_WHY_DRY_TIME] = 0.004;
  assert_none (self);
  self->input->part[TB_WHY_DRY_TIME] = 0.006;
  assert_reason (self, TB_WHY_DRY_TIME);
}

static void
test_straight_ball (Fixture *self, gconstpointer data)
{
  self->why.value[TB_SIDE_BEFORE][TB_WHY_LAUNCH] = self->why.value[TB_SIDE_BEFORE][TB_WHY_BOARD];
  assert_none (self);
}

static void
test_sentence (Fixture *self, gconstpointer data)
{
  const WhyReason *reason = why_reason_for (&self->teller, self->input);
  g_autofree char *more
      = why_reason_sentence (&self->teller, self->input, reason, &(WhySaid){ "This", "that" });

  g_assert_cmpstr (more, ==, "This leaves the ball 0.10 s more on the dry last 20 ft: that.");
}

/* What is subtracted is what is told: 10.04 and 12.06 are 10.0 and 12.1. */
static void
test_told_difference (Fixture *self, gconstpointer data)
{
  self->why.value[TB_SIDE_BEFORE][TB_WHY_BOARD] = 10.04;
  self->why.value[TB_SIDE_AFTER][TB_WHY_BOARD] = 12.06;
  self->why.difference[TB_WHY_BOARD] = 12.06 - 10.04;
  g_assert_cmpfloat_with_epsilon (why_told_difference (&self->teller, TB_WHY_BOARD), 2.1, 1e-9);
  /* Nothing to speak of is nothing, though it tips a digit over. */
  self->why.value[TB_SIDE_AFTER][TB_WHY_BOARD] = 10.06;
  self->why.difference[TB_WHY_BOARD] = 10.06 - 10.04;
  g_assert_cmpfloat (why_told_difference (&self->teller, TB_WHY_BOARD), ==, 0);
  g_assert_false (why_differs (&self->teller, TB_WHY_BOARD));
}

int
main (int argc, char **argv)
{
  setlocale (LC_ALL, "C.UTF-8");
  g_test_init (&argc, &argv, NULL);
#define ADD(name, test) g_test_add ("/why-reason/" name, Fixture, NULL, set_up, test, tear_down)
  ADD ("where-boards-come-from", test_where_boards_come_from);
  ADD ("same-way", test_same_way);
  ADD ("large-enough", test_large_enough);
  ADD ("straight-ball", test_straight_ball);
  ADD ("sentence", test_sentence);
  ADD ("told-difference", test_told_difference);
#undef ADD
  return g_test_run ();
}
