/* The integrator's order, observed by halving the step; and what is left at the step a shot uses.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "support.h"

/* Order the integrator claims, and what a fit over three halvings may miss of it. */
#define ORDER 4.0
#define ORDER_SLACK 0.35

static TbShot
base_shot (void)
{
  TbShot shot = check_house_shot ();

  shot.options.edgeless = true;
  shot.ball.intermediate_differential = tb_metres_from_in (0.015);
  shot.ball.top_weight = tb_kilograms_from_oz (3.0);
  return shot;
}

static double
x_at_pins (const TbShot *base, double step)
{
  g_autoptr (CheckRun) run = check_run_new ();
  TbShot shot = *base;

  shot.options.step = step;
  check_run_shot (run, &shot);
  return run->path.measures.x_at_pins / TB_BOARD_WIDTH;
}

/* |x(h) − x(h/2)| falls by 2^order when h is halved. The geometric mean over several shots keeps out the chance that
 * an error passes through nothing. */
static void
check_order (const char *what, const TbShot *base)
{
  double logs[3] = { 0.0, 0.0, 0.0 };
  const int shots = 12;

  for (int i = 0; i < shots; i++)
    {
      TbShot shot = *base;
      double x[4];

      shot.delivery.speed *= 0.94 + 0.01 * i;
      for (int j = 0; j < 4; j++)
        x[j] = x_at_pins (&shot, 0.01 / (1 << j));
      for (int j = 0; j < 3; j++)
        logs[j] += log2 (fabs (x[j] - x[j + 1])) / shots;
    }
  g_test_message ("%s: differences 2^%.1f, 2^%.1f, 2^%.1f boards", what, logs[0], logs[1], logs[2]);
  check_above (what, 0.5 * (logs[0] - logs[2]), ORDER - ORDER_SLACK);
}

static void
test_order_without_oil_on_ball (void)
{
  TbShot shot = base_shot ();

  shot.options.no_film_on_ball = true;
  shot.delivery.release_height = 0.0;
  shot.delivery.loft_angle = 0.0;
  check_order ("order, laid down flat, then rolling", &shot);
  shot.delivery.release_height = tb_metres_from_in (4.0);
  check_order ("order, with a landing", &shot);
}

/* With oil on the ball there is no outside reference: the shot against itself at a much smaller step. */
static void
test_self_convergence (void)
{
  TbShot shot = base_shot ();
  double fine = x_at_pins (&shot, TB_SHOT_STEP / 64.0), previous = INFINITY;

  for (int halving = 0; halving <= 3; halving++)
    {
      double error = fabs (x_at_pins (&shot, TB_SHOT_STEP / (1 << halving)) - fine);

      g_test_message ("step/%d: %.2e boards", 1 << halving, error);
      if (halving == 0)
        check_below ("at the step a shot uses, boards", error, 0.01);
      check_below ("no worse than the step before", error, fmax (previous, 1e-4));
      previous = error;
    }
}

/* What each term of the whole model is worth at the step a shot uses, over a spread of releases. */
static void
test_default_step (void)
{
  double worst = 0.0;

  for (int i = 0; i < 40; i++)
    {
      TbShot shot = base_shot ();
      guint64 seed = 100 + i;

      shot.delivery.speed = tb_metres_per_second_from_mph (check_uniform (&seed, 13, 21));
      shot.delivery.rev_rate = tb_radians_per_second_from_rpm (check_uniform (&seed, 100, 550));
      shot.delivery.axis_rotation = tb_radians_from_deg (check_uniform (&seed, 0, 80));
      shot.delivery.axis_tilt = tb_radians_from_deg (check_uniform (&seed, 0, 30));
      shot.delivery.release_height = tb_metres_from_in (check_uniform (&seed, 0, 6));
      shot.delivery.aim = tb_x_from_board (check_uniform (&seed, 8, 24));
      worst = fmax (worst, fabs (x_at_pins (&shot, 0.0) - x_at_pins (&shot, TB_SHOT_STEP / 16.0)));
    }
  check_below ("worst of 40 releases at the pins, boards", worst, 0.01);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/order/without-oil-on-ball", test_order_without_oil_on_ball);
  g_test_add_func ("/order/self-convergence", test_self_convergence);
  g_test_add_func ("/order/default-step", test_default_step);
  return g_test_run ();
}
