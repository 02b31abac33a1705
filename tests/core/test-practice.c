/* What the trade says, as directions and rankings: common practice, no source, unless another is named. The
 * size of an effect is not checked here.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "support.h"

typedef struct Outcome
{
  double board, angle, hook, roll_ft, hook_start_ft, breakpoint_ft, breakpoint_board, oil_s;
} Outcome;

static TbShot
usual_shot (void)
{
  TbShot shot = check_house_shot ();

  shot.options.edgeless = true;
  return shot;
}

static Outcome
throw_it (const TbShot *shot)
{
  g_autoptr (CheckRun) run = check_run_new ();
  const TbMeasures *m = &run->path.measures;

  check_run_shot (run, shot);
  return (Outcome){ .board = tb_board_from_x (m->x_at_pins),
                    .angle = tb_deg_from_radians (m->angle_at_pins),
                    .hook = tb_measure_value (tb_measure_find ("hook_board"), m),
                    .roll_ft = tb_ft_from_metres (m->roll_start_y),
                    .hook_start_ft = tb_ft_from_metres (m->hook_start_y),
                    .breakpoint_ft = tb_ft_from_metres (m->breakpoint_y),
                    .breakpoint_board = tb_board_from_x (m->breakpoint_x),
                    .oil_s = m->time_in_oil };
}

static Outcome
throw_with (const TbShot *base, TbGroup group, const char *name, double value)
{
  TbShot shot = *base;
  const TbField *field = tb_field_find (group, name);
  Outcome outcome;

  g_assert_nonnull (field);
  check_status (name, tb_field_set (field, tb_shot_group (&shot, group), value), TB_OK);
  outcome = throw_it (&shot);
  g_test_message ("%s %g: board %.2f at %.2f°, hook %.2f, breakpoint %.1f at %.1f ft, turns from %.1f ft, "
                  "rolls from %.1f ft",
                  name, value, outcome.board, outcome.angle, outcome.hook, outcome.breakpoint_board,
                  outcome.breakpoint_ft, outcome.hook_start_ft, outcome.roll_ft);
  return outcome;
}

/* Where the ball rolls; past the pins if it does not. */
static double
roll_ft (const Outcome *outcome)
{
  return isnan (outcome->roll_ft) ? 70.0 : outcome->roll_ft;
}

/* The starting values of the friction law on the house pattern: tried out before this program existed. */
static void
test_tried_out_shot (void)
{
  TbShot shot = usual_shot ();
  Outcome outcome;
  TbSample arrows;
  g_autoptr (CheckRun) run = check_run_new ();

  shot.options = tb_options_bare ();
  shot.options.edgeless = true;
  shot.delivery.aim = tb_x_from_board (24.0 - TB_ARROWS_Y * tan (tb_radians_from_deg (2.5)) / TB_BOARD_WIDTH);
  shot.ball.cover.dry_friction = 0.17;
  shot.ball.cover.film_scale = 2.8;
  shot.assumed.film_friction = 0.008;
  outcome = throw_it (&shot);
  check_run_shot (run, &shot);
  g_assert_true (tb_path_at_distance (&run->path, TB_ARROWS_Y, &arrows));
  check_near ("board at the arrows", tb_board_from_x (arrows.position.x), 17.0, 1.5);
  check_near ("breakpoint, board", outcome.breakpoint_board, 8.6, 1.5);
  check_near ("breakpoint, ft", outcome.breakpoint_ft, 42.0, 3.0);
  check_near ("rolls from, ft", outcome.roll_ft, 54.0, 3.0);
  check_near ("board at the pins", outcome.board, 17.4, 1.5);
  check_near ("angle at the pins, °", outcome.angle, 4.0, 0.6);
}

/* Hold: laid down up to two boards to either side at the same angle, a house shot still finds the pocket. */
static void
test_hold (void)
{
  TbShot shot = usual_shot ();
  double middle = throw_it (&shot).board;

  for (int boards = -2; boards <= 2; boards++)
    {
      TbShot moved = shot;

      moved.delivery.laydown += boards * TB_BOARD_WIDTH;
      moved.delivery.aim += boards * TB_BOARD_WIDTH;
      check_near ("board at the pins", throw_it (&moved).board, middle, 1.5);
    }
}

static void
test_speed (void)
{
  TbShot shot = usual_shot ();
  double previous = INFINITY;

  for (double mph = 14.0; mph <= 21.0; mph += 1.0)
    {
      Outcome outcome = throw_with (&shot, TB_GROUP_DELIVERY, "speed_mph", mph);

      check_below ("more speed, less hook", outcome.hook, previous - 0.1);
      previous = outcome.hook;
    }
}

static void
test_rev_rate (void)
{
  TbShot shot = usual_shot ();
  double previous = -INFINITY;

  for (double rpm = 100.0; rpm <= 500.0; rpm += 100.0)
    {
      Outcome outcome = throw_with (&shot, TB_GROUP_DELIVERY, "rev_rate_rpm", rpm);

      check_above ("more revs, more hook", outcome.hook, previous + 0.1);
      previous = outcome.hook;
    }
}

/* Less axis rotation rolls sooner and makes fewer boards; more goes longer and turns sharper. */
static void
test_rotation (void)
{
  TbShot shot = usual_shot ();
  Outcome little = throw_with (&shot, TB_GROUP_DELIVERY, "axis_rotation_deg", 20.0);
  Outcome usual = throw_with (&shot, TB_GROUP_DELIVERY, "axis_rotation_deg", 45.0);
  Outcome much = throw_with (&shot, TB_GROUP_DELIVERY, "axis_rotation_deg", 70.0);

  check_above ("more rotation, more boards", usual.hook, little.hook);
  check_above ("more rotation, more boards", much.hook, usual.hook);
  check_above ("more rotation rolls later, ft", roll_ft (&usual), roll_ft (&little));
  check_above ("more rotation rolls later, ft", roll_ft (&much), roll_ft (&usual));
  check_above ("more rotation, sharper at the pins, °", much.angle, little.angle);
}

/* A back-up ball goes the other way. */
static void
test_back_up (void)
{
  TbShot shot = usual_shot ();

  check_below ("boards", throw_with (&shot, TB_GROUP_DELIVERY, "axis_rotation_deg", -30.0).hook, -1.0);
}

/* A tilted spinner hardly reads the front of the lane. */
static void
test_tilt (void)
{
  TbShot shot = usual_shot ();
  Outcome usual = throw_with (&shot, TB_GROUP_DELIVERY, "axis_tilt_deg", 12.0);
  Outcome spinner = throw_with (&shot, TB_GROUP_DELIVERY, "axis_tilt_deg", 65.0);

  check_below ("a spinner hooks less", spinner.hook, usual.hook - 1.0);
  check_true ("a spinner turns later",
              isnan (spinner.hook_start_ft) || spinner.hook_start_ft > usual.hook_start_ft);
}

/* A tight grip costs speed and adds hook. */
static void
test_grip (void)
{
  TbShot shot = usual_shot ();
  double loose = throw_with (&shot, TB_GROUP_DELIVERY, "grip_pressure", 2.0).hook;
  double neutral = throw_with (&shot, TB_GROUP_DELIVERY, "grip_pressure", 5.0).hook;
  double tight = throw_with (&shot, TB_GROUP_DELIVERY, "grip_pressure", 8.0).hook;

  check_above ("neutral over loose", neutral, loose);
  check_above ("tight over neutral", tight, neutral);
}

/* Loft. On fresh oil a flat loft changes little; a high arc adds hook. */
static void
test_loft_on_fresh_oil (void)
{
  TbShot shot = usual_shot (), high;
  double laid_down, flat, arced;

  shot.delivery.loft_reach = 0.0;
  laid_down = throw_with (&shot, TB_GROUP_DELIVERY, "release_height_in", 0.0).hook;
  shot.delivery.loft_reach = tb_metres_from_in (12.0);
  flat = throw_with (&shot, TB_GROUP_DELIVERY, "release_height_in", 3.0).hook;
  high = shot;
  high.delivery.release_height = tb_metres_from_in (18.0);
  arced = throw_with (&high, TB_GROUP_DELIVERY, "loft_angle_deg", 8.0).hook;
  check_below ("a flat loft changes little, boards", fabs (flat - laid_down), 1.0);
  check_above ("a high arc adds hook, boards", arced - flat, 0.1);
}

/* On worn heads a low, forward loft saves hook: the ball gets through the friction at the front. */
static void
test_loft_on_worn_heads (void)
{
  g_autofree TbOil *oil = g_memdup2 (check_house_oil (), sizeof (TbOil));
  TbShot shot = usual_shot (), lofted;
  double laid_down, flat;

  /* The first 12 ft burnt down to a tenth. */
  for (int row = 0; row < 12 * TB_OIL_ROWS_PER_FOOT; row++)
    for (int column = 0; column < TB_OIL_COLUMNS; column++)
      tb_oil_set_cell (oil, row, column, 0.1 * tb_oil_cell (oil, row, column));
  tb_oil_reflect (oil);
  shot.lane.oil = oil;
  shot.delivery.release_height = 0.0;
  shot.delivery.loft_reach = 0.0;
  laid_down = throw_it (&shot).hook;
  lofted = shot;
  lofted.delivery.release_height = tb_metres_from_in (4.0);
  lofted.delivery.loft_reach = tb_metres_from_in (24.0);
  flat = throw_it (&lofted).hook;
  g_test_message ("laid down %.2f boards of hook, lofted low and forward %.2f", laid_down, flat);
  check_below ("a flat loft saves boards", flat, laid_down - 0.5);
}

/* On one and the same line a rougher ball hooks more and rolls sooner. */
static void
test_surface_on_the_same_line (void)
{
  static const double grits[] = { TB_GRIT_POLISH, 4000, 3000, 2000, 1000, 500 };
  TbShot shot = usual_shot ();
  double hook = -INFINITY, roll = INFINITY;

  for (guint i = 0; i < G_N_ELEMENTS (grits); i++)
    {
      Outcome outcome = throw_with (&shot, TB_GROUP_BALL, "grit", grits[i]);

      check_above ("coarser, more hook", outcome.hook, hook);
      check_below ("coarser, rolls sooner, ft", roll_ft (&outcome), roll);
      hook = outcome.hook;
      roll = roll_ft (&outcome);
    }
}

/* The launch from the same lay-down that brings the ball to the middle of the pocket: the first one found
 * from the straight line on outwards. */
static gboolean
aim_for_pocket (TbShot *shot)
{
  const double pocket = 17.5, laydown = tb_board_from_x (shot->delivery.laydown);
  double inside = laydown, outside;

  for (outside = laydown - 0.5; outside > laydown - 20.0; outside -= 0.5)
    {
      shot->delivery.aim = tb_x_from_board (outside);
      if (throw_it (shot).board < pocket)
        break;
      inside = outside;
    }
  if (outside <= laydown - 20.0)
    return FALSE;
  for (int i = 0; i < 40; i++)
    {
      double middle = 0.5 * (inside + outside);

      shot->delivery.aim = tb_x_from_board (middle);
      *(throw_it (shot).board < pocket ? &outside : &inside) = middle;
    }
  return TRUE;
}

static Outcome
on_own_pocket_line (const TbShot *base, TbGroup group, const char *name, double value)
{
  TbShot shot = *base;
  Outcome outcome = { .angle = NAN, .roll_ft = NAN };

  check_status (name, tb_field_set (tb_field_find (group, name), tb_shot_group (&shot, group), value), TB_OK);
  if (!aim_for_pocket (&shot))
    {
      g_test_message ("%s %g: no pocket line", name, value);
      return outcome;
    }
  outcome = throw_it (&shot);
  g_test_message ("%s %g: aimed at %.2f, breakpoint %.1f at %.1f ft, rolls from %.1f ft, %.2f° at the pins",
                  name, value, tb_board_from_x (shot.delivery.aim), outcome.breakpoint_board,
                  outcome.breakpoint_ft, outcome.roll_ft, outcome.angle);
  return outcome;
}

/* Each on its own pocket line, the coarse ball is sent further out, rolls early and arrives flat: it has
 * spent itself. */
static void
test_surface_on_own_pocket_line (void)
{
  TbShot shot = usual_shot ();
  Outcome coarse = on_own_pocket_line (&shot, TB_GROUP_BALL, "grit", 500);
  Outcome middle = on_own_pocket_line (&shot, TB_GROUP_BALL, "grit", 2000);
  Outcome smooth = on_own_pocket_line (&shot, TB_GROUP_BALL, "grit", 4000);

  check_below ("500 arrives flatter than 2000, °", coarse.angle, middle.angle - 0.3);
  check_below ("500 arrives flatter than 4000, °", coarse.angle, smooth.angle - 0.3);
  check_below ("500 rolls sooner than 2000, ft", roll_ft (&coarse), roll_ft (&middle) - 3.0);
  check_below ("500 is sent further out", coarse.breakpoint_board, middle.breakpoint_board);
}

/* Order of hook: plastic, urethane, weak reactive, strong reactive. Among reactives a pearl keeps most for
 * the back, a solid starts first. */
static void
test_covers (void)
{
  TbShot shot = usual_shot ();
  Outcome outcome[TB_N_COVER_KINDS];

  for (int kind = 0; kind < TB_N_COVER_KINDS; kind++)
    outcome[kind] = throw_with (&shot, TB_GROUP_BALL, "cover", kind);
  check_above ("urethane over plastic", outcome[TB_COVER_URETHANE].hook,
               outcome[TB_COVER_PLASTIC].hook + 0.5);
  check_above ("pearl over urethane", outcome[TB_COVER_REACTIVE_PEARL].hook, outcome[TB_COVER_URETHANE].hook);
  check_above ("hybrid over pearl", outcome[TB_COVER_REACTIVE_HYBRID].hook,
               outcome[TB_COVER_REACTIVE_PEARL].hook);
  check_above ("solid over hybrid", outcome[TB_COVER_REACTIVE_SOLID].hook,
               outcome[TB_COVER_REACTIVE_HYBRID].hook);
  check_below ("a solid turns before a pearl, ft", outcome[TB_COVER_REACTIVE_SOLID].hook_start_ft,
               outcome[TB_COVER_REACTIVE_PEARL].hook_start_ft);
}

/* More oil, less hook. */
static void
test_oil (void)
{
  TbShot shot = usual_shot ();
  double hook = INFINITY, time = 0.0;

  for (double scale = 0.6; scale <= 1.6; scale += 0.2)
    {
      Outcome outcome = throw_with (&shot, TB_GROUP_LANE, "pattern_scale", scale);

      check_below ("more oil, less hook", outcome.hook, hook - 0.05);
      check_above ("more oil, no shorter in it, s", outcome.oil_s, time - 0.02);
      hook = outcome.hook;
      time = outcome.oil_s;
    }
}

/* One track line means little hook; rings spread well apart, in all more than about 2 in, mean much. */
static void
test_flare (void)
{
  g_autoptr (CheckRun) run = check_run_new ();
  TbShot shot = usual_shot ();
  double little, much;

  little = throw_with (&shot, TB_GROUP_BALL, "pin_to_pap_in", 0.0).hook;
  much = throw_with (&shot, TB_GROUP_BALL, "pin_to_pap_in", 4.0).hook;
  check_above ("flare adds hook, boards", much - little, 0.05);
  shot.ball.pin_to_pap = tb_metres_from_in (4.0);
  check_run_shot (run, &shot);
  check_above ("flare of a strong layout, in", tb_in_from_metres (run->path.measures.flare), 2.0);
  shot.ball.pin_to_pap = 0.0;
  check_run_shot (run, &shot);
  check_below ("flare with the pin on the PAP, in", tb_in_from_metres (run->path.measures.flare), 0.75);
}

/* Surface texture leads all factors, static weight matters little (USBC, "Ball Motion Study", 2008, and
 * press). */
static void
test_factors (void)
{
  TbShot shot = usual_shot ();
  double usual = throw_it (&shot).board;
  double surface = fabs (throw_with (&shot, TB_GROUP_BALL, "grit", 500).board - usual);
  double rg = fabs (throw_with (&shot, TB_GROUP_BALL, "rg_in", 2.60).board - usual);
  double differential = fabs (throw_with (&shot, TB_GROUP_BALL, "differential_in", 0.020).board - usual);
  double static_weight = fabs (throw_with (&shot, TB_GROUP_BALL, "top_weight_oz", 3.0).board - usual);

  check_above ("surface over RG", surface, rg);
  check_above ("surface over differential", surface, differential);
  check_above ("surface over static weight, as long as the rules allow it", surface, 4.0 * static_weight);
}

typedef struct LayoutPart
{
  const char *name;
  double low, high;
} LayoutPart;

/* Between which values the start of the roll and the boards hooked, each a mean over many speeds, go over the
 * usual range. */
static void
layout_range (const LayoutPart *part, double start[2], double hook[2])
{
  g_autoptr (CheckRun) run = check_run_new ();
  const TbField *field = tb_field_find (TB_GROUP_BALL, part->name);
  const int speeds = 24;

  start[0] = hook[0] = INFINITY;
  start[1] = hook[1] = -INFINITY;
  for (int step = 0; step <= 4; step++)
    {
      double value = part->low + 0.25 * step * (part->high - part->low);
      double mean_roll = 0.0, mean_hook = 0.0;

      for (int i = 0; i < speeds; i++)
        {
          TbShot shot = check_house_shot ();

          shot.options.edgeless = true;
          shot.ball.intermediate_differential = tb_metres_from_in (0.015);
          shot.delivery.speed = tb_metres_per_second_from_mph (15.5 + 0.1 * i);
          check_status (part->name, tb_field_set (field, &shot.ball, value), TB_OK);
          check_run_shot (run, &shot);
          mean_roll += fmin (tb_ft_from_metres (run->path.measures.roll_start_y), TB_HEAD_PIN_FT) / speeds;
          mean_hook += tb_boards_from_width (run->path.measures.hook) / speeds;
        }
      g_test_message ("%s %g: rolls from %.2f ft, hooks %.2f boards", part->name, value, mean_roll,
                      mean_hook);
      start[0] = fmin (start[0], mean_roll);
      start[1] = fmax (start[1], mean_roll);
      hook[0] = fmin (hook[0], mean_hook);
      hook[1] = fmax (hook[1], mean_hook);
    }
}

/* The trade expects much of a layout's angles and of a lopsided core; the model gives little, which the
 * glossary says. Measured, in ft and boards: drilling angle 0.3 and 0.3, VAL angle 0.1 and 0.1, intermediate
 * differential 0.4 and 0.1. */
static void
test_layout_angles (void)
{
  static const LayoutPart parts[] = { { "drilling_angle_deg", 10.0, 90.0 },
                                      { "val_angle_deg", 10.0, 90.0 },
                                      { "intermediate_differential_in", 0.0, 0.024 } };

  for (guint i = 0; i < G_N_ELEMENTS (parts); i++)
    {
      double start[2], hook[2];

      layout_range (&parts[i], start, hook);
      check_below ("start of the roll, ft", start[1] - start[0], 0.5);
      check_below ("boards hooked", hook[1] - hook[0], 0.5);
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/practice/tried-out-shot", test_tried_out_shot);
  g_test_add_func ("/practice/hold", test_hold);
  g_test_add_func ("/practice/speed", test_speed);
  g_test_add_func ("/practice/rev-rate", test_rev_rate);
  g_test_add_func ("/practice/rotation", test_rotation);
  g_test_add_func ("/practice/back-up", test_back_up);
  g_test_add_func ("/practice/tilt", test_tilt);
  g_test_add_func ("/practice/grip", test_grip);
  g_test_add_func ("/practice/loft-on-fresh-oil", test_loft_on_fresh_oil);
  g_test_add_func ("/practice/loft-on-worn-heads", test_loft_on_worn_heads);
  g_test_add_func ("/practice/surface-on-the-same-line", test_surface_on_the_same_line);
  g_test_add_func ("/practice/surface-on-own-pocket-line", test_surface_on_own_pocket_line);
  g_test_add_func ("/practice/covers", test_covers);
  g_test_add_func ("/practice/oil", test_oil);
  g_test_add_func ("/practice/flare", test_flare);
  g_test_add_func ("/practice/factors", test_factors);
  g_test_add_func ("/practice/layout-angles", test_layout_angles);
  return g_test_run ();
}
