/* The oil on the ball against the same shots walked through in small steps by independent code
 * (reference-ball-oil.c).
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include <stdlib.h>
#include "reference-ball-oil.h"
#include "support.h"

#define SHOTS 24
/* Of the walk, s. A fifth of it changes the board at the pins by 1e-4. */
#define SMALL_STEP 0.0002
/* Of core, where its own step is not to count. */
#define FINE_STEP (TB_SHOT_STEP / 32.0)

static TbShot
some_shot (guint64 seed)
{
  TbShot shot = check_house_shot ();

  shot.options.edgeless = true;
  shot.delivery.speed = tb_metres_per_second_from_mph (check_uniform (&seed, 13.0, 20.0));
  shot.delivery.rev_rate = tb_radians_per_second_from_rpm (check_uniform (&seed, 100.0, 450.0));
  shot.delivery.axis_rotation = tb_radians_from_deg (check_uniform (&seed, 0.0, 80.0));
  shot.delivery.axis_tilt = tb_radians_from_deg (check_uniform (&seed, 0.0, 30.0));
  shot.delivery.release_height = tb_metres_from_in (check_uniform (&seed, 0.0, 4.0));
  shot.ball.differential = tb_metres_from_in (check_uniform (&seed, 0.0, 0.06));
  shot.ball.pin_to_pap = tb_metres_from_in (check_uniform (&seed, 0.0, 6.0));
  shot.ball.cover = tb_cover_typical ((TbCoverKind) check_uniform (&seed, 0.0, TB_N_COVER_KINDS));
  shot.ball.cover.roughness = tb_roughness_from_grit (check_uniform (&seed, 500.0, 5000.0));
  return shot;
}

static double
board_at_step (CheckRun *run, const TbMotion *motion, double step)
{
  TbMotion stepped = *motion;

  stepped.options.step = step;
  check_run_motion (run, &stepped);
  return tb_board_from_x (check_last (run)->position.x);
}

static void
test_random (void)
{
  g_autoptr (CheckRun) run = check_run_new ();
  double oil_effect = 0.0, worst = 0.0, worst_fine = 0.0;

  for (int i = 0; i < SHOTS; i++)
    {
      TbShot shot = some_shot (10 + (guint64) i), dry = shot;
      TbFriction friction;
      TbMotion motion;
      RefAnswer answer;
      double want, fine, usual;

      check_status ("motion", tb_shot_motion (&shot, &friction, &motion, NULL), TB_OK);
      ref_ball_oil_walk (&motion, SMALL_STEP, &answer);
      want = tb_board_from_x (answer.state[0]);
      fine = board_at_step (run, &motion, FINE_STEP);
      usual = board_at_step (run, &motion, 0.0);
      dry.options.no_film_on_ball = true;
      check_run_shot (run, &dry);
      oil_effect += fabs (want - tb_board_from_x (run->path.measures.x_at_pins)) / SHOTS;
      g_test_message ("board %.3f: %+.5f in small steps, %+.5f in the usual ones", want, fine - want,
                      usual - want);
      worst_fine = fmax (worst_fine, fabs (fine - want));
      worst = fmax (worst, fabs (usual - want));
    }
  check_above ("what the oil on the ball does, boards", oil_effect, 1.0);
  /* Measured: 0.001 and 0.02. */
  check_below ("small steps, boards", worst_fine, 0.002);
  check_below ("usual steps, boards", worst, 0.03);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/reference-oil/random", test_random);
  return g_test_run ();
}
