/* Mechanics knows ratios only: what weighs twice as much, or happens twice as fast under four times the weight, goes the
 * same way.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "support.h"

/* An uneven ball on the house film, carrying oil, without the air: all else grows with the weight. */
static TbShot
airless_shot (void)
{
  TbShot shot = check_house_shot ();

  shot.options.edgeless = true;
  shot.options.no_air_drag = true;
  shot.ball.intermediate_differential = tb_metres_from_in (0.015);
  return shot;
}

/* Galilei: light and heavy go the same way, to the last bit where the factor is a power of two. */
static void
test_weight (void)
{
  g_autoptr (CheckRun) light = check_run_new (), heavy = check_run_new ();
  TbShot shot = airless_shot ();

  shot.ball.mass = tb_kilograms_from_lb (8.0);
  check_run_shot (light, &shot);
  shot.ball.mass *= 2.0;
  check_run_shot (heavy, &shot);
  check_near ("board", heavy->path.measures.x_at_pins, light->path.measures.x_at_pins, 0.0);
  check_near ("angle", heavy->path.measures.angle_at_pins, light->path.measures.angle_at_pins, 0.0);
  check_near ("time", heavy->path.measures.time, light->path.measures.time, 0.0);
  check_near ("energy rubbed away", check_last (heavy)->slip_loss, 2.0 * check_last (light)->slip_loss, 0.0);
}

/* Froude: with g times n², speed and spin times n, the path is the same and n times as fast. What has a speed or a time of
 * its own is left out: bounces, soaking, and the fading of what resists a slow spin. The walk up to the end of the slip of
 * an uneven ball ends at a speed of its own too, which is what the bound is for. */
static void
test_speed (void)
{
  const double n = 2.0;
  g_autoptr (CheckRun) slow = check_run_new (), fast = check_run_new ();
  TbShot shot = airless_shot ();

  shot.options.no_rolling_resistance = shot.options.no_pivot_friction = true;
  shot.ball.cover.absorption = 0.0;
  shot.delivery.release_height = 0.0;
  shot.delivery.speed = tb_metres_per_second_from_mph (12.0);
  shot.delivery.rev_rate = tb_radians_per_second_from_rpm (250.0);
  shot.options.step = 0.002;
  shot.options.gravity = TB_STANDARD_GRAVITY;
  check_run_shot (slow, &shot);
  shot.delivery.speed *= n;
  shot.delivery.rev_rate *= n;
  shot.options.step /= n;
  shot.options.gravity *= n * n;
  check_run_shot (fast, &shot);
  check_true ("rolls", isfinite (slow->path.measures.roll_start_y));
  check_near ("place at the pins, m", fast->path.measures.x_at_pins, slow->path.measures.x_at_pins, 1e-5);
  check_near ("angle, rad", fast->path.measures.angle_at_pins, slow->path.measures.angle_at_pins, 1e-5);
  check_near ("time, s", n * fast->path.measures.time, slow->path.measures.time, 1e-5);
  check_near ("start of the roll, m", fast->path.measures.roll_start_y, slow->path.measures.roll_start_y, 1e-3);
  check_near ("turns, rad", fast->path.measures.turned, slow->path.measures.turned, 1e-4);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/similarity/weight", test_weight);
  g_test_add_func ("/similarity/speed", test_speed);
  return g_test_run ();
}
