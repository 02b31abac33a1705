/* Worked examples of published textbooks, and a two-zone lane evaluated in closed form.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "support.h"

#define FOOT TB_METRES_PER_FOOT

typedef struct Example
{
  double radius, k, speed, spin, mu, gravity; /* spin: rad/s forwards */
} Example;

typedef struct Answer
{
  double time, distance, speed; /* at the start of the roll */
} Answer;

static Answer
solve (const Example *example)
{
  g_autoptr (CheckRun) run = check_run_new ();
  TbBody body = tb_body_sphere (5.0, example->radius, example->k);
  CheckLane lane;
  TbMotion motion;
  const TbSample *roll;

  check_lane_uniform (&lane, example->mu);
  motion = check_motion (&body, &lane.friction);
  motion.options.gravity = example->gravity;
  check_set_motion (&motion.state, &body, tb_vec3 (0, example->speed, 0), tb_vec3 (-example->spin, 0, 0));
  check_run_motion (run, &motion);
  roll = check_start_of (run, TB_PHASE_ROLL);
  g_assert_nonnull (roll);
  return (Answer){ roll->time, roll->position.y, roll->velocity.y };
}

/* Halliday, Resnick and Walker, "Fundamentals of Physics", chapter 11, the bowler problem (inputs from
 * memory). */
static void
test_fundamentals (void)
{
  const Example example = { .radius = 0.11, .k = 0.4, .speed = 8.5, .mu = 0.21, .gravity = 9.8 };
  Answer answer = solve (&example);

  check_near ("time, s", answer.time, 1.180, 0.0005);
  check_near ("distance, m", answer.distance, 8.598, 0.0005);
  check_near ("speed, m/s", answer.speed, 6.071, 0.0005);
}

/* Beer and Johnston, "Vector Mechanics for Engineers: Dynamics", problem 16.71: an 8 in ball with backspin.
 */
static void
test_backspin (void)
{
  const Example example = { .radius = tb_metres_from_in (4.0),
                            .k = 0.4,
                            .speed = 15 * FOOT,
                            .spin = -9.0,
                            .mu = 0.10,
                            .gravity = 32.2 * FOOT };
  Answer answer = solve (&example);

  check_near ("time, s", answer.time, 1.597, 0.0005);
  check_near ("speed, ft/s", answer.speed / FOOT, 9.857, 0.0005);
  check_near ("distance, ft", answer.distance / FOOT, 19.850, 0.0055);
}

/* Of the type of Meriam and Kraige, "Engineering Mechanics: Dynamics"; published solution 18.6566 ft. */
static void
test_radius_of_gyration (void)
{
  const double radius = tb_metres_from_in (27.0 / (2.0 * TB_PI));
  const double ratio = tb_metres_from_in (3.28) / radius;
  const Example example
      = { .radius = radius, .k = ratio * ratio, .speed = 20 * FOOT, .mu = 0.20, .gravity = 32.2 * FOOT };
  Answer answer = solve (&example);

  check_near ("distance, ft", answer.distance / FOOT, 18.6567, 0.00015);
  check_near ("time, s", answer.time, 1.143, 0.0005);
  check_near ("speed, ft/s", answer.speed / FOOT, 12.637, 0.0005);
}

/* The two-zone lane: μ 0.04 up to 12.192 m, then 0.20; k 0.35. The digits are those of the closed form. */
static void
two_zones (CheckLane *lane)
{
  check_lane_uniform (lane, 0.04);
  check_lane_add (lane, 12.192, 0.04, 0.04);
  check_lane_add (lane, INFINITY, 0.20, 0.20);
}

static const CheckThrow hook_throw
    = { .speed = 8.0, .heading = -1.5, .rpm = 400.0, .rotation = 45.0, .tilt = 15.0 };

static void
run_throw (CheckRun *run, const CheckLane *lane, const CheckThrow *release, double step)
{
  TbBody body = check_plain_ball ();
  TbMotion motion = check_motion (&body, &lane->friction);

  motion.end_y = 18.288;
  motion.options.step = step;
  check_throw (&motion, release);
  check_run_motion (run, &motion);
}

static void
test_two_zones_hook (void)
{
  g_autoptr (CheckRun) run = check_run_new ();
  const TbSample *roll, *end;
  TbSample edge;
  CheckLane lane;

  two_zones (&lane);
  run_throw (run, &lane, &hook_throw, 0.0);
  check_true ("reaches the edge", tb_path_at_distance (&run->path, 12.192, &edge));
  check_near ("edge: t, s", edge.time, 1.574728971, 1e-9);
  check_near ("edge: Y, m", -edge.position.x, -0.055297360, 1e-9);
  check_near ("edge: slip, m/s", edge.slip, 3.521974955, 1e-8);

  roll = check_start_of (run, TB_PHASE_ROLL);
  g_assert_nonnull (roll);
  check_near ("roll: t, s", roll->time, 2.040282763, 1e-9);
  check_near ("roll: X, m", roll->position.y, 15.502277213, 2e-9);
  check_near ("roll: Y, m", -roll->position.x, 0.129450939, 1e-9);
  check_near ("roll: v down, m/s", roll->velocity.y, 6.733504405, 1e-9);
  check_near ("roll: v left, m/s", -roll->velocity.x, 0.654486489, 1e-9);

  end = check_last (run);
  check_near ("end: t, s", end->time, 2.453993458, 1e-9);
  check_near ("end: Y, m", -end->position.x, 0.400219000, 1e-9);
  check_near ("end: speed, m/s", tb_vec3_length (end->velocity), 6.765237182, 1e-9);
  check_near ("end: heading, °", tb_deg_from_radians (tb_sample_heading (end)), 5.551624246, 1e-8);
  check_near ("end: rev rate, rpm", tb_rpm_from_radians_per_second (tb_vec3_length (end->spin)), 600.862,
              0.0005);
  check_near ("end: tilt, °", tb_deg_from_radians (asin (end->spin.z / tb_vec3_length (end->spin))), 9.921486,
              1e-6);
  check_near ("slip loss, J", end->slip_loss, 30.749597, 1e-6);
  check_near ("revolutions", tb_revolutions_from_radians (end->turned), 19.2921, 0.00005);
}

static void
test_two_zones_straight (void)
{
  const CheckThrow straight = { .speed = 8.0 };
  g_autoptr (CheckRun) run = check_run_new ();
  const TbSample *roll;
  TbSample edge;
  CheckLane lane;

  two_zones (&lane);
  run_throw (run, &lane, &straight, 0.0);
  check_true ("reaches the edge", tb_path_at_distance (&run->path, 12.192, &edge));
  check_near ("edge: t, s", edge.time, 1.585641114, 1e-9);
  roll = check_start_of (run, TB_PHASE_ROLL);
  g_assert_nonnull (roll);
  check_near ("roll: t, s", roll->time, 2.325996372, 1e-9);
  check_near ("roll: X, m", roll->position.y, 17.116818306, 2e-9);
  check_near ("roll: v, m/s", roll->velocity.y, 5.925925926, 1e-9);
  check_near ("end: t, s", check_last (run)->time, 2.523633282, 1e-9);
}

/* μ 0.04 up to 10 m, rising evenly to 0.20 at 14 m. */
static void
test_ramp (void)
{
  g_autoptr (CheckRun) run = check_run_new ();
  const TbSample *roll;
  CheckLane lane;

  check_lane_uniform (&lane, 0.04);
  check_lane_add (&lane, 10.0, 0.04, 0.04);
  check_lane_add (&lane, 14.0, 0.04, 0.20);
  check_lane_add (&lane, INFINITY, 0.20, 0.20);
  run_throw (run, &lane, &hook_throw, 0.0005);
  roll = check_start_of (run, TB_PHASE_ROLL);
  g_assert_nonnull (roll);
  check_near ("roll: t, s", roll->time, 2.02189027, 1e-8);
  check_near ("roll: X, m", roll->position.y, 15.34867721, 1e-8);
  check_near ("roll: Y, m", -roll->position.x, 0.13775318, 1e-8);
  check_near ("roll: v down, m/s", roll->velocity.y, 6.733504405, 1e-9);
  check_near ("roll: v left, m/s", -roll->velocity.x, 0.654486489, 1e-9);
  check_near ("end: t, s", check_last (run)->time, 2.45841227, 1e-8);
  check_near ("end: Y, m", -check_last (run)->position.x, 0.42345093, 1e-8);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/worked-examples/fundamentals", test_fundamentals);
  g_test_add_func ("/worked-examples/backspin", test_backspin);
  g_test_add_func ("/worked-examples/radius-of-gyration", test_radius_of_gyration);
  g_test_add_func ("/worked-examples/two-zones-hook", test_two_zones_hook);
  g_test_add_func ("/worked-examples/two-zones-straight", test_two_zones_straight);
  g_test_add_func ("/worked-examples/ramp", test_ramp);
  return g_test_run ();
}
