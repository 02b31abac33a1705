/* A left-hander is the exact mirror image, bit for bit; what he does to the lane too.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include <string.h>
#include "support.h"

/* Everything of the model at once, and nothing that is the same on both sides. */
static TbShot
lopsided_shot (const TbOil *oil)
{
  TbShot shot = check_house_shot ();

  shot.lane.oil = oil;
  shot.lane.cross_tilt = tb_metres_from_in (0.05);
  shot.delivery.release_height = tb_metres_from_in (3.0);
  shot.ball.intermediate_differential = tb_metres_from_in (0.012);
  shot.ball.top_weight = tb_kilograms_from_oz (2.5);
  return shot;
}

static TbOil *
lopsided_oil (void)
{
  TbOil *oil = g_memdup2 (check_house_oil (), sizeof (TbOil));

  for (int row = 0; row < 60; row++)
    for (int column = 0; column < TB_OIL_COLUMNS; column++)
      tb_oil_set_cell (oil, row, column, tb_oil_cell (oil, row, column) * (0.7 + 0.02 * column));
  tb_oil_reflect (oil);
  return oil;
}

static TbShot
left_handed (const TbShot *shot, const TbOil *mirrored_oil)
{
  TbShot other = *shot;

  other.delivery.hand = TB_HAND_LEFT;
  other.lane.oil = mirrored_oil;
  other.lane.cross_tilt = -shot->lane.cross_tilt;
  return other;
}

static void
check_same_path (const TbPath *a, const TbPath *b)
{
  g_assert_cmpint (a->count, ==, b->count);
  g_assert_cmpint (memcmp (&a->measures, &b->measures, sizeof a->measures), ==, 0);
  for (int i = 0; i < a->count; i++)
    {
      g_assert_cmpmem (&a->samples[i].position, sizeof (TbVec3), &b->samples[i].position, sizeof (TbVec3));
      g_assert_cmpmem (&a->samples[i].spin, sizeof (TbVec3), &b->samples[i].spin, sizeof (TbVec3));
      g_assert_cmpmem (&a->samples[i].attitude, sizeof (TbQuat), &b->samples[i].attitude, sizeof (TbQuat));
      g_assert_cmpfloat (a->samples[i].film_on_ball, ==, b->samples[i].film_on_ball);
      g_assert_cmpfloat (a->samples[i].slip_loss, ==, b->samples[i].slip_loss);
    }
}

static void
test_left_hander (void)
{
  g_autofree TbOil *oil = lopsided_oil (), *mirrored_oil = g_memdup2 (oil, sizeof *oil);
  g_autoptr (CheckRun) right = check_run_new ();
  g_autoptr (CheckRun) left = check_run_new ();
  TbShot shot = lopsided_shot (oil), other;

  tb_oil_mirror (mirrored_oil);
  other = left_handed (&shot, mirrored_oil);
  check_run_shot (right, &shot);
  check_run_shot (left, &other);
  g_assert_false (right->path.mirrored);
  g_assert_true (left->path.mirrored);
  check_same_path (&right->path, &left->path);
}

/* The film matters: on the same lopsided lane the left-hander does not get the same. */
static void
test_lopsided_lane_is_seen (void)
{
  g_autofree TbOil *oil = lopsided_oil ();
  g_autoptr (CheckRun) right = check_run_new ();
  g_autoptr (CheckRun) left = check_run_new ();
  TbShot shot = lopsided_shot (oil), other = left_handed (&shot, oil);

  check_run_shot (right, &shot);
  check_run_shot (left, &other);
  check_above ("difference, boards",
               fabs (right->path.measures.x_at_pins - left->path.measures.x_at_pins) / TB_BOARD_WIDTH, 0.5);
}

static void
test_wear (void)
{
  g_autofree TbOil *oil = lopsided_oil (), *mirrored_oil = g_memdup2 (oil, sizeof *oil);
  g_autoptr (CheckRun) run = check_run_new ();
  TbShot shot = lopsided_shot (oil), other;
  double carried, carried_left;

  tb_oil_mirror (mirrored_oil);
  other = left_handed (&shot, mirrored_oil);
  for (int i = 0; i < 5; i++)
    {
      check_status ("right", tb_shot_run_and_wear (&shot, run->workspace, &run->path, oil, &carried, NULL),
                    TB_OK);
      check_status (
          "left",
          tb_shot_run_and_wear (&other, run->workspace, &run->path, mirrored_oil, &carried_left, NULL),
          TB_OK);
      g_assert_cmpfloat (carried, ==, carried_left);
    }
  tb_oil_mirror (mirrored_oil);
  for (int row = 0; row < TB_OIL_ROWS; row++)
    for (int column = 0; column < TB_OIL_COLUMNS; column++)
      g_assert_cmpfloat (tb_oil_cell (oil, row, column), ==, tb_oil_cell (mirrored_oil, row, column));
}

/* Cross-tilt is told from the right edge, whoever bowls: a higher right edge pushes every ball to the left.
 */
static void
test_cross_tilt (void)
{
  for (int hand = 0; hand < TB_N_HANDS; hand++)
    {
      g_autoptr (CheckRun) level = check_run_new ();
      g_autoptr (CheckRun) tilted = check_run_new ();
      TbShot shot = check_house_shot ();
      double moved;

      shot.options.edgeless = true;
      shot.delivery.hand = (TbHand)hand;
      check_run_shot (level, &shot);
      shot.lane.cross_tilt = tb_metres_from_in (0.04);
      check_run_shot (tilted, &shot);
      moved = (tilted->path.measures.x_at_pins - level->path.measures.x_at_pins) / TB_BOARD_WIDTH;
      check_below ("moved to the right, boards", hand == TB_HAND_RIGHT ? moved : -moved, -0.05);
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/mirror/left-hander", test_left_hander);
  g_test_add_func ("/mirror/lopsided-lane-is-seen", test_lopsided_lane_is_seen);
  g_test_add_func ("/mirror/wear", test_wear);
  g_test_add_func ("/mirror/cross-tilt", test_cross_tilt);
  return g_test_run ();
}
