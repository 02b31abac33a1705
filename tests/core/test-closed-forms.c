/* Closed forms of the sliding and rolling ball with equal moments.
 *
 * All are classical: G. G. Coriolis, "Théorie mathématique des effets du jeu de billard", 1835, and any
 * mechanics text. With k = (RG/R)², b = (1 + 1/k): the slip u keeps its direction whatever the friction map
 * and falls at b μ g; the vertical spin never changes; P = v + k R (ω × ẑ) is constant; the rolling velocity
 * is P/(1 + k).
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "support.h"

#define MASS 6.80388555
#define RADIUS 0.10915
#define K 0.35
#define G TB_STANDARD_GRAVITY

static const CheckThrow hook_throw
    = { .speed = 8.0, .heading = -1.5, .rpm = 400.0, .rotation = 45.0, .tilt = 15.0 };

/* A lane that changes in both directions, so that nothing in the answer can lean on a uniform one. */
static void
patchy_lane (CheckLane *lane)
{
  check_lane_uniform (lane, 0.0);
  check_lane_add (lane, 5.0, 0.03, 0.06);
  check_lane_add (lane, 9.0, 0.02, 0.02);
  check_lane_add (lane, 14.0, 0.12, 0.05);
  check_lane_add (lane, INFINITY, 0.20, 0.20);
  lane->zones.split[1] = 0.05;
  lane->zones.beyond[1] = 0.09;
}

static TbFriction
house_friction (double scale)
{
  TbFriction friction = { 0 };

  friction.kind = TB_FRICTION_FILM;
  friction.oil = check_house_oil ();
  friction.oil_scale = scale;
  friction.cover = tb_cover_typical (TB_COVER_REACTIVE_HYBRID);
  friction.law.film_friction = tb_assumed_default ().film_friction;
  return friction;
}

static TbVec3
coriolis_vector (const TbSample *sample, double k, double radius)
{
  return tb_vec3 (sample->velocity.x + k * radius * sample->spin.y,
                  sample->velocity.y - k * radius * sample->spin.x, 0.0);
}

/* The greatest turn of the slip direction, change of the vertical spin and change of P over a run. */
typedef struct Constants
{
  double direction, vertical_spin, vector;
} Constants;

static Constants
constants_of (const CheckRun *run, double k, double radius)
{
  Constants worst = { 0 };
  TbVec3 slip = check_slip (check_first (run), radius);
  TbVec3 vector = coriolis_vector (check_first (run), k, radius);
  double vertical = check_first (run)->spin.z;

  for (int i = 0; i < run->path.count; i++)
    {
      const TbSample *sample = &run->path.samples[i];
      TbVec3 u = check_slip (sample, radius);
      TbVec3 change = tb_vec3_sub (coriolis_vector (sample, k, radius), vector);

      worst.vector = fmax (worst.vector, tb_vec3_length (change));
      worst.vertical_spin = fmax (worst.vertical_spin, fabs (sample->spin.z - vertical));
      /* Close to rolling the direction is lost in rounding. */
      if (sample->phase == TB_PHASE_SLIDE && tb_vec3_length (u) > 1e-3)
        worst.direction = fmax (worst.direction, tb_vec3_angle (u, slip));
    }
  return worst;
}

static void
check_constants (const char *where, const TbMotion *motion)
{
  g_autoptr (CheckRun) run = check_run_new ();
  Constants worst;

  check_run_motion (run, motion);
  worst = constants_of (run, K, RADIUS);
  g_test_message ("%s", where);
  check_below ("turn of the slip direction, rad", worst.direction, 1e-9);
  check_below ("change of the vertical spin, rad/s", worst.vertical_spin, 1e-9);
  check_below ("change of P, m/s", worst.vector, 1e-10);
}

static void
test_constants (void)
{
  TbBody body = check_plain_ball ();
  CheckLane lane;
  TbFriction house = house_friction (1.0);
  TbMotion motion;

  patchy_lane (&lane);
  motion = check_motion (&body, &lane.friction);
  check_throw (&motion, &hook_throw);
  check_constants ("zones", &motion);
  motion.friction = &house;
  check_constants ("house film", &motion);
}

/* P through flight, landing and bounces. */
static void
test_constants_through_bounces (void)
{
  TbBody body = check_plain_ball ();
  TbFriction house = house_friction (1.0);
  TbMotion motion = check_motion (&body, &house);

  check_throw (&motion, &hook_throw);
  motion.state.position.z += 0.15;
  motion.state.velocity.z = 0.5;
  check_constants ("dropped on the house film", &motion);
}

/* |u| falls at (1 + 1/k) μ g, against itself, wherever on the lane. */
static void
test_slip_deceleration (void)
{
  TbBody body = check_plain_ball ();
  TbFriction house = house_friction (1.0);
  TbMotion motion = check_motion (&body, &house);

  check_throw (&motion, &hook_throw);
  for (double y = 1.0; y < 18.0; y += 2.5)
    {
      TbContact contact = { .x = 0.2, .y = y, .load = 1.0 };
      double mu = tb_friction_at (&house, &contact, NULL);
      TbForces forces;
      TbVec3 fall;

      motion.state.position = tb_vec3 (contact.x, y, RADIUS);
      forces = tb_motion_forces (&motion, &motion.state, false);
      fall = tb_vec3 (forces.centre_acceleration.x - RADIUS * forces.angular_acceleration.y,
                      forces.centre_acceleration.y + RADIUS * forces.angular_acceleration.x, 0.0);
      check_near ("coefficient", forces.coefficient, mu, 0.0);
      check_near ("fall of the slip, m/s²", tb_vec3_length (fall), (1.0 + 1.0 / K) * mu * G, 1e-12);
      check_near ("against the slip, rad", tb_vec3_angle (fall, forces.slip), TB_PI, 1e-12);
    }
}

/* Time to roll, displacement and energy lost, on a uniform lane. */
static void
test_time_to_roll (void)
{
  const double mu = 0.12;
  g_autoptr (CheckRun) run = check_run_new ();
  TbBody body = check_plain_ball ();
  CheckLane lane;
  TbMotion motion;
  const TbSample *roll;
  TbVec3 start, end, moved;
  double u, time;

  check_lane_uniform (&lane, mu);
  motion = check_motion (&body, &lane.friction);
  check_throw (&motion, &hook_throw);
  check_run_motion (run, &motion);
  roll = check_start_of (run, TB_PHASE_ROLL);
  g_assert_nonnull (roll);

  start = check_first (run)->velocity;
  u = tb_vec3_length (check_slip (check_first (run), RADIUS));
  time = K * u / ((1.0 + K) * mu * G);
  end = tb_vec3_scale (coriolis_vector (check_first (run), K, RADIUS), 1.0 / (1.0 + K));
  moved = tb_vec3_scale (tb_vec3_add (start, end), 0.5 * time);
  check_near ("time to roll, s", roll->time, time, 1e-10);
  check_near ("moved down, m", roll->position.y, moved.y, 1e-9);
  check_near ("moved across, m", roll->position.x, moved.x, 1e-9);
  check_near ("rolling velocity down, m/s", roll->velocity.y, end.y, 1e-10);
  check_near ("rolling velocity across, m/s", roll->velocity.x, end.x, 1e-10);
  check_near ("lost to slip, J", check_last (run)->slip_loss, 0.5 * MASS * K / (1.0 + K) * u * u, 1e-8);
}

/* No spin at release: slide distance k(2 + k)/(1 + k)² v0²/(2 μ g). */
static void
check_no_spin (double k, double speed, double mu, double *distance, double *rolling)
{
  g_autoptr (CheckRun) run = check_run_new ();
  TbBody body = tb_body_sphere (MASS, RADIUS, k);
  CheckLane lane;
  TbMotion motion;
  CheckThrow straight = { .speed = speed };

  check_lane_uniform (&lane, mu);
  motion = check_motion (&body, &lane.friction);
  check_throw (&motion, &straight);
  check_run_motion (run, &motion);
  *distance = check_start_of (run, TB_PHASE_ROLL)->position.y;
  *rolling = check_last (run)->velocity.y;
}

static void
test_no_spin (void)
{
  double distance, rolling;

  check_no_spin (K, 7.0, 0.2, &distance, &rolling);
  check_near ("slide, m", distance, K * (2 + K) / ((1 + K) * (1 + K)) * 49.0 / (2 * 0.2 * G), 1e-9);
  check_no_spin (0.4, 7.0, 0.2, &distance, &rolling);
  check_near ("slide of a solid ball, m", distance, 12.0 * 49.0 / (49.0 * 0.2 * G), 1e-9);
  check_near ("rolling speed of a solid ball, m/s", rolling, 5.0 / 7.0 * 7.0, 1e-10);
}

/* Total turn and final speed, the same on every lane on which the ball reaches roll. */
static void
check_total_turn (const char *where, const TbFriction *friction)
{
  const double radius = tb_metres_from_in (4.297);
  const double k = (2.50 / 4.297) * (2.50 / 4.297);
  const CheckThrow release
      = { .speed = tb_metres_per_second_from_mph (17.9), .rpm = 416.0, .rotation = 45.0 };
  const double b = k * radius * tb_radians_per_second_from_rpm (416.0);
  g_autoptr (CheckRun) run = check_run_new ();
  TbBody body = tb_body_sphere (MASS, radius, k);
  TbMotion motion = check_motion (&body, friction);
  double turn;

  motion.options.edgeless = true;
  check_throw (&motion, &release);
  check_run_motion (run, &motion);
  g_test_message ("%s", where);
  check_true ("rolls before the pins", check_last (run)->phase == TB_PHASE_ROLL);
  turn = atan (b * sin (TB_PI / 4) / (release.speed + b * cos (TB_PI / 4)));
  check_near ("turn, rad", tb_sample_heading (check_last (run)), turn, 1e-9);
  /* The round numbers as they are usually quoted. */
  check_near ("turn, degrees", tb_deg_from_radians (tb_sample_heading (check_last (run))), 7.1, 0.05);
  check_near ("speed, mph", tb_mph_from_metres_per_second (tb_vec3_length (check_last (run)->velocity)), 15.4,
              0.05);
}

static void
test_total_turn (void)
{
  CheckLane lane;
  TbFriction film;

  check_lane_uniform (&lane, 0.12);
  check_total_turn ("uniform", &lane.friction);
  check_lane_uniform (&lane, 0.04);
  check_lane_add (&lane, 11.0, 0.04, 0.04);
  check_lane_add (&lane, INFINITY, 0.20, 0.20);
  check_total_turn ("two zones", &lane.friction);
  patchy_lane (&lane);
  check_total_turn ("patchy", &lane.friction);
  for (double scale = 0.02; scale < 0.4; scale *= 4.0)
    {
      film = house_friction (scale);
      /* Grips early enough on any share of the film. */
      film.cover.dry_friction = 0.30;
      check_total_turn ("film", &film);
    }
}

/* Rolling on a small cross-slope s: sideways g s/(1 + k), towards the lower side. */
static void
test_cross_slope (void)
{
  const double slope = 1e-3;
  g_autoptr (CheckRun) run = check_run_new ();
  TbBody body = check_plain_ball ();
  CheckLane lane;
  TbMotion motion;
  double time;

  check_lane_uniform (&lane, 0.2);
  motion = check_motion (&body, &lane.friction);
  check_set_motion (&motion.state, &body, tb_vec3 (0, 7.0, 0), tb_vec3 (-7.0 / RADIUS, 0, 0));
  motion.options.no_cross_tilt = false;
  motion.cross_slope = slope;
  check_run_motion (run, &motion);
  time = check_last (run)->time;
  check_true ("rolls all the way", check_start_of (run, TB_PHASE_SLIDE) == NULL);
  /* Relative to a drift of 23 mm: s²/2 is what small means. */
  check_near ("drift, m", check_last (run)->position.x, -0.5 * G * slope / (1 + K) * time * time, 1e-7);
}

/* Mirrored in every lateral input, the path is mirrored, bit for bit. */
static TbMotion
mirrored (const TbMotion *motion)
{
  TbMotion other = *motion;

  other.state.position.x = -motion->state.position.x;
  other.state.velocity.x = -motion->state.velocity.x;
  other.state.angular_momentum.y = -motion->state.angular_momentum.y;
  other.state.angular_momentum.z = -motion->state.angular_momentum.z;
  other.state.attitude.y = -motion->state.attitude.y;
  other.state.attitude.z = -motion->state.attitude.z;
  other.launch_x = -motion->launch_x;
  other.launch_slope = -motion->launch_slope;
  other.cross_slope = -motion->cross_slope;
  return other;
}

static void
check_mirrored (const TbMotion *motion, const TbMotion *other)
{
  g_autoptr (CheckRun) one = check_run_new ();
  g_autoptr (CheckRun) two = check_run_new ();
  int differences = 0;

  check_run_motion (one, motion);
  check_run_motion (two, other);
  g_assert_cmpint (one->path.count, ==, two->path.count);
  for (int i = 0; i < one->path.count; i++)
    {
      const TbSample *a = &one->path.samples[i], *b = &two->path.samples[i];

      differences += a->time != b->time || a->position.x != -b->position.x || a->position.y != b->position.y
                     || a->velocity.x != -b->velocity.x || a->velocity.y != b->velocity.y
                     || a->spin.x != b->spin.x || a->spin.y != -b->spin.y || a->spin.z != -b->spin.z
                     || a->slip_loss != b->slip_loss;
    }
  g_assert_cmpint (differences, ==, 0);
}

static void
test_mirror (void)
{
  TbBody body = check_plain_ball ();
  TbOil oil = *check_house_oil ();
  TbFriction film = house_friction (1.0), film_mirrored = film;
  CheckLane lane;
  TbMotion motion, other;

  check_lane_uniform (&lane, 0.04);
  check_lane_add (&lane, 11.0, 0.03, 0.05);
  check_lane_add (&lane, INFINITY, 0.20, 0.20);
  motion = check_motion (&body, &lane.friction);
  check_throw (&motion, &hook_throw);
  motion.state.position.x = 0.1;
  other = mirrored (&motion);
  check_mirrored (&motion, &other);

  /* Not the same on both sides. */
  tb_oil_add (&oil, 0.2, 6.0, 1e-6);
  tb_oil_reflect (&oil);
  film.oil = film_mirrored.oil = &oil;
  film_mirrored.mirrored = true;
  motion.friction = &film;
  other.friction = &film_mirrored;
  check_mirrored (&motion, &other);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/closed-forms/constants", test_constants);
  g_test_add_func ("/closed-forms/constants-through-bounces", test_constants_through_bounces);
  g_test_add_func ("/closed-forms/slip-deceleration", test_slip_deceleration);
  g_test_add_func ("/closed-forms/time-to-roll", test_time_to_roll);
  g_test_add_func ("/closed-forms/no-spin", test_no_spin);
  g_test_add_func ("/closed-forms/total-turn", test_total_turn);
  g_test_add_func ("/closed-forms/cross-slope", test_cross_slope);
  g_test_add_func ("/closed-forms/mirror", test_mirror);
  return g_test_run ();
}
