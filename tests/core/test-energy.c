/* Energy and work. Classical: what the contact rubs away is the friction times the slip; nothing else may go
 * missing on a lane without drag, and nothing may ever be gained.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "support.h"

/* Energy with the height of the centre, on a lane that may be tilted. */
static double
whole_energy (const TbSample *sample, const TbBody *body, double slope)
{
  return check_energy (sample, body)
         + body->mass * TB_STANDARD_GRAVITY * (sample->position.z + slope * sample->position.x);
}

static TbFriction
house_friction (void)
{
  TbFriction friction = { 0 };

  friction.kind = TB_FRICTION_FILM;
  friction.oil = check_house_oil ();
  friction.oil_scale = 1.0;
  friction.cover = tb_cover_typical (TB_COVER_REACTIVE_SOLID);
  friction.law.film_friction = tb_assumed_default ().film_friction;
  return friction;
}

/* An off-balance ball with three moments slides and then rolls over the house film: energy lost is work done.
 */
static void
test_balance (void)
{
  const CheckThrow release = { .speed = 7.5, .heading = -2.0, .rpm = 350.0, .rotation = 50.0, .tilt = 12.0 };
  g_autoptr (CheckRun) run = check_run_new ();
  TbBody body = check_odd_ball ();
  TbFriction friction = house_friction ();
  TbMotion motion = check_motion (&body, &friction);
  double start, worst = 0.0;

  motion.options.step = 0.0005;
  motion.options.edgeless = true;
  motion.state.attitude = tb_quat_unit ((TbQuat){ 0.3, -0.5, 0.7, 0.4 });
  check_throw (&motion, &release);
  check_run_motion (run, &motion);
  check_true ("rolls in the end", check_last (run)->phase == TB_PHASE_ROLL);
  start = whole_energy (check_first (run), &body, 0.0);
  for (int i = 0; i < run->path.count; i++)
    {
      const TbSample *sample = &run->path.samples[i];

      worst = fmax (worst, fabs (whole_energy (sample, &body, 0.0) + sample->slip_loss - start));
    }
  check_below ("energy and work out of balance, of the energy", worst / start, 1e-8);
}

/* Fall, bounces and all: never more energy than before. */
static void
check_never_rises (const char *what, const TbShot *shot)
{
  g_autoptr (CheckRun) run = check_run_new ();
  double slope = shot->lane.cross_tilt / (2.0 * TB_LANE_HALF_WIDTH), previous = INFINITY, rise = 0.0, first;

  check_run_shot (run, shot);
  first = whole_energy (check_first (run), &run->path.body, slope);
  for (int i = 0; i < run->path.count; i++)
    {
      double energy = whole_energy (&run->path.samples[i], &run->path.body, slope);

      rise = fmax (rise, energy - previous);
      previous = energy;
    }
  g_test_message ("%s: %.1f J at release, %.1f J at the end", what, first, previous);
  check_below ("greatest rise between samples, of the energy", rise / first, 1e-8);
}

static void
test_never_rises (void)
{
  TbShot shot = check_house_shot ();

  shot.options.edgeless = true;
  check_never_rises ("as it stands", &shot);
  shot.delivery.release_height = tb_metres_from_in (12.0);
  shot.delivery.loft_angle = tb_radians_from_deg (8.0);
  check_never_rises ("lofted", &shot);
  shot.ball.top_weight = tb_kilograms_from_oz (5.0);
  shot.ball.intermediate_differential = tb_metres_from_in (0.02);
  check_never_rises ("off balance", &shot);
  shot.lane.cross_tilt = tb_metres_from_in (0.1);
  check_never_rises ("on a tilted lane", &shot);
}

/* Every optional part takes energy: with one of them on, less is left than with it off. */
static void
test_parts_take_energy (void)
{
  TbShot shot = check_house_shot ();
  TbOptions bare = tb_options_bare ();
  g_autoptr (CheckRun) none = check_run_new ();
  g_autoptr (CheckRun) with = check_run_new ();

  shot.options = bare;
  check_run_shot (none, &shot);
  shot.options.no_air_drag = false;
  check_run_shot (with, &shot);
  check_below ("air drag: speed, m/s", with->path.measures.speed_at_pins,
               none->path.measures.speed_at_pins - 1e-3);
  /* As the list of assumed constants says. */
  check_near (
      "air drag: speed lost, mph",
      tb_mph_from_metres_per_second (none->path.measures.speed_at_pins - with->path.measures.speed_at_pins),
      1.0 / 3.0, 0.05);
  shot.options = bare;
  shot.options.no_rolling_resistance = false;
  check_run_shot (with, &shot);
  check_below ("rolling resistance: speed, m/s", with->path.measures.speed_at_pins,
               none->path.measures.speed_at_pins - 1e-5);
  shot.options = bare;
  shot.options.no_pivot_friction = false;
  check_run_shot (with, &shot);
  check_below ("pivot friction: upright spin, rad/s", check_last (with)->spin.z,
               check_last (none)->spin.z - 1e-5);
}

/* Classical: a sphere alone in the air loses speed to drag as 1/v grows evenly over the way, c = ρ C A/(2 m).
 */
static void
test_drag (void)
{
  g_autoptr (CheckRun) run = check_run_new ();
  TbBody body = check_plain_ball ();
  TbAssumed assumed = tb_assumed_default ();
  const CheckThrow straight = { .speed = 9.0 };
  double c
      = 0.5 * assumed.air_density * assumed.drag_coefficient * TB_PI * body.radius * body.radius / body.mass;
  CheckLane lane;
  TbMotion motion;

  check_lane_uniform (&lane, 0.0);
  motion = check_motion (&body, &lane.friction);
  check_throw (&motion, &straight);
  motion.options.no_air_drag = false;
  motion.time_limit = 1.5;
  check_run_motion (run, &motion);
  check_near ("speed, m/s", check_last (run)->velocity.y, 9.0 / (1.0 + c * 9.0 * 1.5), 1e-7);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/energy/balance", test_balance);
  g_test_add_func ("/energy/never-rises", test_never_rises);
  g_test_add_func ("/energy/parts-take-energy", test_parts_take_energy);
  g_test_add_func ("/energy/drag", test_drag);
  return g_test_run ();
}
