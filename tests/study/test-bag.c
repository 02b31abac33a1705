/* A bag of balls on one lane: the order of covers that the trade tells, sorting, gaps.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "house-setup.h"
#include "tb-bag.h"
#include "tb-pocket-line.h"

static TbBagBall *
ball_of (const char *name, TbCoverKind kind, double dry_friction, double grit)
{
  TbBall ball = tb_ball_default ();

  ball.cover = tb_cover_typical (kind);
  if (dry_friction > 0)
    ball.cover.dry_friction = dry_friction;
  ball.cover.roughness = tb_roughness_from_grit (grit);
  return tb_bag_ball_new (NULL, name, &ball);
}

/* Not in the order of their hook. */
static TbBag *
throw_bag (const TbSetup *setup)
{
  g_autoptr (GPtrArray) balls = g_ptr_array_new_with_free_func ((GDestroyNotify)tb_bag_ball_free);

  g_ptr_array_add (balls, ball_of ("strong solid", TB_COVER_REACTIVE_SOLID, 0.20, 2000));
  g_ptr_array_add (balls, ball_of ("plastic", TB_COVER_PLASTIC, 0, 2000));
  g_ptr_array_add (balls, ball_of ("weak hybrid", TB_COVER_REACTIVE_HYBRID, 0.15, 2000));
  g_ptr_array_add (balls, ball_of ("urethane", TB_COVER_URETHANE, 0.12, 2000));
  return tb_bag_new (setup, balls, NULL);
}

/* Common practice: plastic, urethane, weak reactive, strong reactive, on one surface and one line. */
static void
test_order_of_covers (void)
{
  static const char *const expected[] = { "plastic", "urethane", "weak hybrid", "strong solid" };
  g_autoptr (TbSetup) setup = house_setup ();
  g_autoptr (TbBag) bag = throw_bag (setup);
  guint order[4];

  tb_bag_order (bag, TB_BALL_SAME_LINE, tb_measure_find ("hook_board"), order);
  for (guint i = 0; i < 4; i++)
    g_assert_cmpstr (tb_bag_entry (bag, order[i])->name, ==, expected[i]);
}

/* Common practice: among reactives a pearl keeps most for the back, a solid starts first. On one surface and
 * with one dry friction: the solid starts to hook and turns back before the hybrid, the hybrid before the
 * pearl. */
static void
test_pearl_and_solid (void)
{
  g_autoptr (TbSetup) setup = house_setup ();
  g_autoptr (GPtrArray) balls = g_ptr_array_new_with_free_func ((GDestroyNotify)tb_bag_ball_free);
  const TbMeasureInfo *start = tb_measure_find ("hook_start_ft"), *turn = tb_measure_find ("breakpoint_ft");

  g_ptr_array_add (balls, ball_of ("solid", TB_COVER_REACTIVE_SOLID, 0.17, 3000));
  g_ptr_array_add (balls, ball_of ("hybrid", TB_COVER_REACTIVE_HYBRID, 0.17, 3000));
  g_ptr_array_add (balls, ball_of ("pearl", TB_COVER_REACTIVE_PEARL, 0.17, 3000));

  g_autoptr (TbBag) bag = tb_bag_new (setup, balls, NULL);

  for (guint i = 0; i + 1 < 3; i++)
    {
      g_assert_cmpfloat (tb_bag_value (bag, i, TB_BALL_SAME_LINE, start), <,
                         tb_bag_value (bag, i + 1, TB_BALL_SAME_LINE, start));
      g_assert_cmpfloat (tb_bag_value (bag, i, TB_BALL_SAME_LINE, turn), <,
                         tb_bag_value (bag, i + 1, TB_BALL_SAME_LINE, turn));
    }
}

static void
test_pocket_lines (void)
{
  g_autoptr (TbSetup) setup = house_setup ();
  g_autoptr (TbBag) bag = throw_bag (setup);

  for (guint i = 0; i < bag->entries->len; i++)
    {
      const TbRun *run = tb_bag_entry (bag, i)->run[TB_BALL_POCKET_LINE];

      if (run == NULL)
        {
          g_assert_true (isnan (tb_bag_entry (bag, i)->room));
          continue;
        }
      g_assert_true (tb_pocket_contains (&setup->shot.assumed, &run->path.measures));
      g_assert_cmpfloat (run->setup->shot.delivery.laydown, ==, setup->shot.delivery.laydown);
    }
  g_assert_nonnull (tb_bag_entry (bag, 0)->run[TB_BALL_POCKET_LINE]);
}

/* One and the same ball, and numbers put where they are wanted. */
static TbBag *
made_up (const double *boards, guint count)
{
  g_autoptr (TbSetup) setup = house_setup ();
  g_autoptr (GPtrArray) balls = g_ptr_array_new_with_free_func ((GDestroyNotify)tb_bag_ball_free);
  TbBag *bag;

  for (guint i = 0; i < count; i++)
    {
      g_autofree char *name = g_strdup_printf ("ball %u", i);

      g_ptr_array_add (balls, tb_bag_ball_new (name, name, &setup->shot.ball));
    }
  bag = tb_bag_new (setup, balls, NULL);
  for (guint i = 0; i < count; i++)
    tb_bag_entry (bag, i)->run[TB_BALL_SAME_LINE]->path.measures.x_at_pins
        = isnan (boards[i]) ? NAN : tb_x_from_board (boards[i]);
  return bag;
}

static void
test_gap (void)
{
  const double boards[] = { 18, 5, NAN, 7, 12, 6 };
  g_autoptr (TbBag) bag = made_up (boards, G_N_ELEMENTS (boards));
  const TbMeasureInfo *pins = tb_measure_find ("board_at_pins");
  g_autofree char *statement = tb_bag_statement (bag, TB_BALL_SAME_LINE, pins, FALSE);
  guint order[6], between = 99;
  TbBagGap gap;

  tb_bag_order (bag, TB_BALL_SAME_LINE, pins, order);
  g_assert_cmpuint (order[0], ==, 1);
  g_assert_cmpuint (order[4], ==, 0);
  /* Without the measure: last. */
  g_assert_cmpuint (order[5], ==, 2);
  g_assert_true (tb_bag_widest_gap (bag, TB_BALL_SAME_LINE, pins, &gap));
  g_assert_cmpuint (gap.low, ==, 4);
  g_assert_cmpuint (gap.high, ==, 0);
  g_assert_cmpfloat_with_epsilon (gap.width, 6, 1e-9);
  g_assert_nonnull (strstr (statement, "from ball 1 to ball 0"));
  g_assert_nonnull (strstr (statement, "Nearest to the middle of that is ball 4"));
  g_assert_nonnull (strstr (statement, "spans 13.0 boards"));
  g_assert_nonnull (strstr (statement, "lies between ball 4 and ball 0"));
  /* Nearest to the middle of 5 and 18. */
  g_assert_true (tb_bag_between (bag, TB_BALL_SAME_LINE, pins, (const guint[]){ 0, 1 }, &between));
  g_assert_cmpuint (between, ==, 4);
  g_assert_false (tb_bag_between (bag, TB_BALL_SAME_LINE, pins, (const guint[]){ 1, 5 }, &between));
}

static void
test_nothing_to_compare (void)
{
  const double boards[] = { 18, NAN };
  g_autoptr (TbBag) bag = made_up (boards, 2);
  const TbMeasureInfo *pins = tb_measure_find ("board_at_pins");
  g_autofree char *statement = tb_bag_statement (bag, TB_BALL_SAME_LINE, pins, FALSE);
  TbBagGap gap;

  g_assert_false (tb_bag_widest_gap (bag, TB_BALL_SAME_LINE, pins, &gap));
  g_assert_nonnull (strstr (statement, "nothing to compare"));
}

static void
test_cancelled (void)
{
  g_autoptr (TbSetup) setup = house_setup ();
  g_autoptr (GPtrArray) balls = g_ptr_array_new_with_free_func ((GDestroyNotify)tb_bag_ball_free);
  g_autoptr (GCancellable) cancellable = g_cancellable_new ();

  g_ptr_array_add (balls, tb_bag_ball_new (NULL, "one", &setup->shot.ball));
  g_cancellable_cancel (cancellable);
  g_assert_null (tb_bag_new (setup, balls, cancellable));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/bag/order-of-covers", test_order_of_covers);
  g_test_add_func ("/bag/pearl-and-solid", test_pearl_and_solid);
  g_test_add_func ("/bag/pocket-lines", test_pocket_lines);
  g_test_add_func ("/bag/gap", test_gap);
  g_test_add_func ("/bag/nothing-to-compare", test_nothing_to_compare);
  g_test_add_func ("/bag/cancelled", test_cancelled);
  return g_test_run ();
}
