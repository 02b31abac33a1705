/* The pocket line: answers that end in the pocket, hold what they hold, and have the room they claim; and
 * what the trade calls burning up, which must come out of the mechanics.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include <math.h>

#include "study-support.h"
#include "tb-pocket-line.h"
#include "tb-room.h"

static void
find (const char *changes, TbPocketHold hold, TbPocketLines *lines, TbShot *shot)
{
  g_autoptr (TbSetup) setup = setup_with (changes);
  g_autoptr (TbThrower) thrower = tb_thrower_new ();

  g_assert_true (tb_pocket_lines_find (thrower, &setup->shot, hold, NULL, lines));
  *shot = setup->shot;
  shot->lane.oil = NULL; /* gone with the setup */
}

/* The answer thrown again, gutters and all. */
static TbMeasures
rethrow (const char *changes, const TbDelivery *delivery, TbResult *result)
{
  g_autoptr (TbSetup) setup = setup_with (changes);
  TbShot shot = setup->shot;
  g_autoptr (TbSetup) answered = NULL;
  g_autoptr (TbRun) run = NULL;

  shot.delivery = *delivery;
  answered = tb_setup_with_shot (setup, &shot);
  run = tb_run_new (answered);
  g_assert_cmpint (run->status, ==, TB_OK);
  *result = run->path.result;
  return run->path.measures;
}

static const char *const setups[] = { "",
                                      "grit=500",
                                      "grit=5000",
                                      "speed_mph=19",
                                      "laydown_board=20",
                                      "rev_rate_rpm=420 axis_rotation_deg=60",
                                      "hand=1" };

static void
test_answers (void)
{
  guint found = 0;

  for (gsize i = 0; i < G_N_ELEMENTS (setups); i++)
    for (int hold = 0; hold < TB_POCKET_N_HOLDS; hold++)
      {
        TbPocketLines lines;
        TbShot shot;

        find (setups[i], hold, &lines, &shot);
        for (guint k = 0; k < lines.count; k++)
          {
            TbResult result;
            TbMeasures measures = rethrow (setups[i], &lines.answer[k].delivery, &result);

            g_assert_cmpint (result, ==, TB_RESULT_PINS);
            g_assert_cmpfloat_with_epsilon (tb_board_from_x (measures.x_at_pins),
                                            tb_pocket_middle (&shot.assumed), 0.05);
            found++;
          }
      }
  /* Measured: 20. */
  g_assert_cmpuint (found, >=, 12);
}

static void
test_holds (void)
{
  g_autoptr (TbSetup) setup = setup_with ("");
  g_autoptr (TbRun) run = tb_run_new_edgeless (setup);
  TbPocketLines lines;
  TbShot shot;

  find ("", TB_POCKET_HOLD_LAYDOWN, &lines, &shot);
  g_assert_cmpuint (lines.count, >=, 1);
  g_assert_true (lines.answer[0].delivery.laydown == shot.delivery.laydown);
  find ("", TB_POCKET_HOLD_AIM, &lines, &shot);
  g_assert_cmpuint (lines.count, >=, 1);
  g_assert_true (lines.answer[0].delivery.aim == shot.delivery.aim);
  find ("", TB_POCKET_HOLD_BREAKPOINT, &lines, &shot);
  g_assert_cmpuint (lines.count, >=, 1);
  g_assert_cmpfloat_with_epsilon (tb_board_from_x (lines.answer[0].measures.breakpoint_x),
                                  tb_board_from_x (run->path.measures.breakpoint_x), 0.05);
}

static gboolean
misses_into_pocket (const TbDelivery *planned, double boards)
{
  TbDelivery delivery = *planned;
  TbResult result;
  TbMeasures measures;
  TbAssumed assumed = tb_assumed_default ();

  delivery.aim = tb_x_from_board (tb_board_from_x (planned->aim) + boards);
  measures = rethrow ("", &delivery, &result);
  return result == TB_RESULT_PINS && tb_pocket_contains (&assumed, &measures);
}

/* Just inside of the room the ball still finds the pocket, just outside no longer. */
static void
test_room (void)
{
  TbPocketLines lines;
  TbShot shot;
  const TbPocketAnswer *best;

  find ("", TB_POCKET_HOLD_LAYDOWN, &lines, &shot);
  best = tb_pocket_lines_best (&lines);
  g_assert_nonnull (best);
  g_test_message ("room %.2f out, %.2f in", best->room_out, best->room_in);
  g_assert_true (misses_into_pocket (&best->delivery, 0));
  g_assert_true (misses_into_pocket (&best->delivery, best->room_in - 0.02));
  g_assert_true (misses_into_pocket (&best->delivery, -best->room_out + 0.02));
  g_assert_false (misses_into_pocket (&best->delivery, best->room_in + 0.02));
  g_assert_false (misses_into_pocket (&best->delivery, -best->room_out - 0.02));
}

/* The room of a line and the room that the map of misses finds are one and the same, found in two ways. */
static void
test_room_agrees (void)
{
  g_autoptr (TbSetup) setup = setup_with ("");
  const TbRoomAxis axis = tb_room_axis (TB_MISS_AIM, 9);
  TbPocketLines lines;
  TbShot shot;

  find ("", TB_POCKET_HOLD_LAYDOWN, &lines, &shot);
  g_assert_cmpuint (lines.count, >=, 1);
  for (guint i = 0; i < lines.count; i++)
    {
      TbShot planned = setup->shot;
      g_autoptr (TbSetup) answered = NULL;
      TbRoomWidth width;

      planned.delivery = lines.answer[i].delivery;
      answered = tb_setup_with_shot (setup, &planned);
      g_assert_true (tb_room_width (answered, &axis, 0, &width, NULL));
      g_assert_true (width.in_pocket);
      if (!width.low_is_end)
        g_assert_cmpfloat_with_epsilon (lines.answer[i].room_out, -width.low, 0.03);
      if (!width.high_is_end)
        g_assert_cmpfloat_with_epsilon (lines.answer[i].room_in, width.high, 0.03);
    }
}

/* From here no ball that hooks so much, or so little, gets to the pocket. */
static void
test_none (void)
{
  TbPocketLines lines;
  TbShot shot;

  find ("axis_rotation_deg=-60 rev_rate_rpm=500 laydown_board=8 grit=500", TB_POCKET_HOLD_AIM, &lines, &shot);
  g_assert_cmpuint (lines.count, ==, 0);
  g_assert_null (tb_pocket_lines_best (&lines));
  find ("rev_rate_rpm=0", TB_POCKET_HOLD_BREAKPOINT, &lines, &shot);
  g_assert_cmpuint (lines.count, ==, 0);
}

static double
pocket_angle (const char *changes)
{
  TbPocketLines lines;
  TbShot shot;

  find (changes, TB_POCKET_HOLD_LAYDOWN, &lines, &shot);
  g_assert_cmpuint (lines.count, >=, 1);
  return tb_deg_from_radians (tb_pocket_lines_best (&lines)->measures.angle_at_pins);
}

static double
same_line_board (const char *changes)
{
  g_autoptr (TbSetup) setup = setup_with (changes);
  g_autoptr (TbRun) run = tb_run_new_edgeless (setup);

  return tb_board_from_x (run->path.measures.x_at_pins);
}

/* Common practice: at 500 grit the ball spends itself before the pins. On one and the same line it hooks the
 * most boards; on its own pocket line it has to be sent out further, rolls early and arrives flat. */
static void
test_burning_up (void)
{
  double coarse = pocket_angle ("grit=500"), middle = pocket_angle ("grit=2000"),
         fine = pocket_angle ("grit=4000");

  g_test_message ("on its own pocket line: 500 grit %.2f°, 2000 grit %.2f°, 4000 grit %.2f°", coarse, middle,
                  fine);
  g_assert_cmpfloat (coarse, <, middle - 0.3);
  g_assert_cmpfloat (coarse, <, fine - 0.3);
  g_assert_cmpfloat (same_line_board ("grit=500"), >, same_line_board ("grit=2000"));
  g_assert_cmpfloat (same_line_board ("grit=2000"), >, same_line_board ("grit=4000"));
}

static void
test_reaim (void)
{
  g_autoptr (TbSetup) setup = setup_with ("grit=1000");
  g_autoptr (TbThrower) thrower = tb_thrower_new ();
  TbShot shot = setup->shot;
  TbMeasures measures;

  g_assert_true (tb_pocket_reaim (thrower, &shot, &measures));
  g_assert_cmpfloat_with_epsilon (tb_board_from_x (measures.x_at_pins), tb_pocket_middle (&shot.assumed),
                                  TB_POCKET_TOLERANCE);
  g_assert_true (shot.delivery.laydown == setup->shot.delivery.laydown);
  /* Measured: 8 throws. A second re-aim finds itself there. */
  g_test_message ("%u throws", thrower->throws);
  thrower->throws = 0;
  g_assert_true (tb_pocket_reaim (thrower, &shot, NULL));
  g_assert_cmpuint (thrower->throws, <=, 8);
}

/* The mirror image is the same answer, boards counted from the other side. */
static void
test_left (void)
{
  TbPocketLines right, left;
  TbShot shot;

  find ("", TB_POCKET_HOLD_LAYDOWN, &right, &shot);
  find ("hand=1", TB_POCKET_HOLD_LAYDOWN, &left, &shot);
  g_assert_cmpuint (right.count, ==, left.count);
  for (guint i = 0; i < right.count; i++)
    g_assert_cmpfloat_with_epsilon (right.answer[i].delivery.aim, left.answer[i].delivery.aim, 1e-9);
}

static void
test_cancel (void)
{
  g_autoptr (GCancellable) cancellable = g_cancellable_new ();
  g_autoptr (TbSetup) setup = setup_with ("");
  g_autoptr (TbThrower) thrower = tb_thrower_new ();
  TbPocketLines lines;

  g_cancellable_cancel (cancellable);
  g_assert_false (tb_pocket_lines_find (thrower, &setup->shot, TB_POCKET_HOLD_LAYDOWN, cancellable, &lines));
  g_assert_cmpuint (thrower->throws, <=, 2);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/pocket-line/answers", test_answers);
  g_test_add_func ("/pocket-line/holds", test_holds);
  g_test_add_func ("/pocket-line/room", test_room);
  g_test_add_func ("/pocket-line/room-agrees", test_room_agrees);
  g_test_add_func ("/pocket-line/none", test_none);
  g_test_add_func ("/pocket-line/burning-up", test_burning_up);
  g_test_add_func ("/pocket-line/reaim", test_reaim);
  g_test_add_func ("/pocket-line/left", test_left);
  g_test_add_func ("/pocket-line/cancel", test_cancel);
  return g_test_run ();
}
