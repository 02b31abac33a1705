/* Lines: feet and boards, moves and their geometry, families, spares.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include <math.h>

#include "lane-support.h"
#include "tb-lines.h"

static void
test_stance (void)
{
  TbStance stance = tb_stance_default (), moved;

  /* The ball passes 6 to 7 boards outside of the slide foot (common practice). */
  lane_between ("boards outside of the foot", stance.slide_board - tb_stance_laydown_board (&stance), 6, 7);
  stance.drift = -2;
  stance.offset = 7;
  moved = tb_stance_for_laydown (&stance, 20);
  lane_near ("slide board", moved.slide_board, 29, 1e-12);
  lane_near ("and back", tb_stance_laydown_board (&moved), 20, 1e-12);
}

static const TbMove *
move_of (double feet, double target)
{
  for (const TbMove *move = tb_moves; move->label; move++)
    if (move->feet == feet && move->target == target && !move->pivot)
      return move;
  g_error ("no such move");
}

/* Board of a straight line at a distance. */
static double
line_at (const TbDelivery *delivery, double feet)
{
  return tb_board_from_x (tb_delivery_launch_x (delivery, tb_metres_from_ft (feet)));
}

/* Geometry (classical): 2 with the feet and 1 with the target moves the line by 2 at the foul line, 1 at the
 * arrows and −2/3 at 40 ft; in parallel by as much everywhere. */
static void
test_moves (void)
{
  TbDelivery plan = tb_delivery_default (), moved = tb_move_delivery (&plan, move_of (2, 1), 1);

  lane_near ("at the foul line", line_at (&moved, 0) - line_at (&plan, 0), 2, 1e-9);
  lane_near ("at the arrows", line_at (&moved, 15) - line_at (&plan, 15), 1, 1e-9);
  lane_near ("at 40 ft", line_at (&moved, 40) - line_at (&plan, 40), -2.0 / 3, 1e-9);
  moved = tb_move_delivery (&plan, move_of (1, 1), -1);
  lane_near ("parallel, at the pins", line_at (&moved, 60) - line_at (&plan, 60), -1, 1e-9);
}

/* 3 : 1 : 2 about a target at 15 ft: similar triangles, with feet that start as far behind the line as the
 * target lies past it. */
static void
test_pivot (void)
{
  TbPivot pivot = tb_pivot (3);
  TbDelivery plan = tb_delivery_default (), moved;

  lane_near ("at the foul line", pivot.at_line, -1, 1e-12);
  lane_near ("at the stance", pivot.at_stance, -2, 1e-12);
  for (const TbMove *move = tb_moves; move->label; move++)
    if (move->pivot)
      {
        moved = tb_move_delivery (&plan, move, 1);
        lane_near ("feet 2 about the target: at the line", line_at (&moved, 0) - line_at (&plan, 0), 1, 1e-9);
        lane_near ("at the pins", line_at (&moved, 60) - line_at (&plan, 60), -3, 1e-9);
      }
}

/* Lines stop at the edge of the lane. */
static void
test_edge (void)
{
  TbDelivery plan = tb_delivery_default (), moved;
  TbMove far = { .feet = 50, .target = -50 };

  moved = tb_move_delivery (&plan, &far, 1);
  lane_near ("feet", tb_board_from_x (moved.laydown), 39, 1e-9);
  lane_near ("target", tb_board_from_x (moved.aim), 1, 1e-9);
}

static void
test_family (void)
{
  g_autoptr (TbPattern) pattern = lane_house ();
  g_autoptr (TbSetup) setup = lane_setup (pattern, 24);
  g_autoptr (TbFamily) family = tb_family_new (setup, 3, 1, TRUE);

  g_assert_cmpuint (family->count, ==, 6);
  for (guint i = 0; i < family->count; i++)
    {
      g_assert_cmpint (family->runs[i]->status, ==, TB_OK);
      g_assert_cmpint (family->runs[i]->path.count, >, 0);
      g_assert_cmpfloat (family->boards[i], !=, 0);
      lane_near ("laid down",
                 tb_board_from_x (family->runs[i]->setup->shot.delivery.laydown) - family->boards[i], 24,
                 1e-9);
    }
}

/* From board 27 over the lane's middle to the 10 pin on board 3.08 (USBC Equipment Specifications Manual:
 * pins on 12 in centres, rows 10.392 in apart): 27 − 23.92 × 15/(60 + 31.18/12). */
static void
test_spare_straight (void)
{
  g_autoptr (TbPattern) pattern = lane_house ();
  g_autoptr (TbSetup) setup = lane_setup (pattern, 24);
  TbSpare spare = tb_spare_straight (setup, 9, tb_spare_laydown_board (TB_HAND_RIGHT, 9));

  lane_near ("10 pin on board", spare.pin_board, 3.08, 0.01);
  lane_near ("aim", spare.aim_board, 27 - (27 - spare.pin_board) * 15 / (60 + 3 * 10.392 / 12), 1e-3);
  /* Radii of ball and pin, 4.275 and 2.383 in, over 1.064 in. */
  lane_near ("boards of room either way", spare.room, (4.275 + 2.383) / 1.0641, 0.02);
}

/* A left-hander's 7 pin is a right-hander's 10 pin. */
static void
test_spare_mirror (void)
{
  g_autoptr (TbPattern) pattern = lane_house ();
  g_autoptr (TbSetup) right = lane_setup (pattern, 24);
  g_autoptr (TbSetup) left = NULL;
  TbShot shot = right->shot;
  TbSpare a, b;

  shot.delivery.hand = TB_HAND_LEFT;
  left = tb_setup_with_shot (right, &shot);
  a = tb_spare_straight (right, 9, tb_spare_laydown_board (TB_HAND_RIGHT, 9));
  b = tb_spare_straight (left, 6, tb_spare_laydown_board (TB_HAND_LEFT, 6));
  g_assert_cmpfloat (a.aim_board, ==, b.aim_board);
}

/* Every pin can be found with a ball that hardly turns, and the throw meets it. */
static void
test_spare_aimed (void)
{
  g_autoptr (TbPattern) pattern = lane_house ();
  g_autoptr (TbSetup) setup = lane_setup (pattern, 24);
  g_autoptr (TbSetup) straight = NULL;
  TbShot shot = setup->shot;

  shot.delivery.axis_rotation = tb_radians_from_deg (5);
  shot.ball.cover = tb_cover_typical (TB_COVER_PLASTIC);
  shot.ball.cover.roughness = tb_roughness_from_grit (TB_GRIT_POLISH);
  straight = tb_setup_with_shot (setup, &shot);
  for (int pin = 0; pin < TB_N_PINS; pin++)
    {
      TbSpare geometry = tb_spare_straight (straight, pin, tb_spare_laydown_board (TB_HAND_RIGHT, pin)),
              spare;
      g_autoptr (TbSetup) thrown = NULL;

      g_assert_true (tb_spare_aimed (straight, pin, geometry.laydown_board, &spare));
      thrown = tb_spare_setup (straight, &spare);
      /* At the head pin's distance; the angle carries it on to the pin: up to 31 in at 6°, 3 boards. */
      lane_near ("board at 60 ft", lane_board_at_pins (thrown), spare.pin_board, 3.5);
      /* It hooks less than the room that the pin leaves. */
      lane_near ("aim against a straight line", spare.aim_board, geometry.aim_board, 1.5);
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/lines/stance", test_stance);
  g_test_add_func ("/lines/moves", test_moves);
  g_test_add_func ("/lines/pivot", test_pivot);
  g_test_add_func ("/lines/edge", test_edge);
  g_test_add_func ("/lines/family", test_family);
  g_test_add_func ("/lines/spare-straight", test_spare_straight);
  g_test_add_func ("/lines/spare-mirror", test_spare_mirror);
  g_test_add_func ("/lines/spare-aimed", test_spare_aimed);
  return g_test_run ();
}
