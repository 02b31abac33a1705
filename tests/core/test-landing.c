/* The impulse of a landing, in closed form.
 *
 * Classical: the slip changes by (1 + 1/k) j, j = min (μ (1 + e) v_n, k/(1 + k) |u|), the friction's impulse
 * a mass being as much as what stops the slip allows; the normal speed is returned e times.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "support.h"

#define K 0.35
#define RESTITUTION 0.5
/* Falls to a normal speed of 1 m/s. */
#define HEIGHT (0.5 / TB_STANDARD_GRAVITY)

static TbMotion
dropped (const CheckLane *lane, const CheckThrow *release)
{
  TbBody body = check_plain_ball ();
  TbMotion motion = check_motion (&body, &lane->friction);

  motion.assumed.restitution = RESTITUTION;
  check_throw (&motion, release);
  motion.state.position.z += HEIGHT;
  return motion;
}

/* The last sample before the first landing and the first one after it. */
static gboolean
first_landing (const CheckRun *run, const TbSample **before, const TbSample **after)
{
  for (int i = 1; i < run->path.count; i++)
    {
      *before = &run->path.samples[i - 1];
      *after = &run->path.samples[i];
      if ((*before)->velocity.z < 0.0 && (*after)->velocity.z >= 0.0 && (*before)->phase == TB_PHASE_FLIGHT)
        return TRUE;
    }
  return FALSE;
}

static double
slip_drop (double mu, const CheckThrow *release)
{
  g_autoptr (CheckRun) run = check_run_new ();
  const TbSample *before = NULL, *after = NULL;
  CheckLane lane;
  TbMotion motion;

  check_lane_uniform (&lane, mu);
  motion = dropped (&lane, release);
  check_run_motion (run, &motion);
  check_true ("lands", first_landing (run, &before, &after));
  check_near ("time of landing, s", before->time, sqrt (2.0 * HEIGHT / TB_STANDARD_GRAVITY), 1e-12);
  check_near ("normal speed before, m/s", before->velocity.z, -1.0, 1e-12);
  check_near ("normal speed after, m/s", after->velocity.z, RESTITUTION, 1e-12);
  check_near ("y of landing, m", run->path.measures.landing_y,
              release->speed * cos (tb_radians_from_deg (release->heading)) * before->time, 1e-12);
  return tb_vec3_length (check_slip (before, motion.body.radius))
         - tb_vec3_length (check_slip (after, motion.body.radius));
}

static void
test_impulse (void)
{
  const CheckThrow hook_throw
      = { .speed = 8.0, .heading = -1.5, .rpm = 400.0, .rotation = 45.0, .tilt = 15.0 };

  check_near ("drop on μ 0.04, m/s", slip_drop (0.04, &hook_throw), 0.231429, 5e-7);
  check_near ("drop on μ 0.20, m/s", slip_drop (0.20, &hook_throw), 1.157143, 5e-7);
}

/* A slip smaller than the friction could stop is stopped, not turned round. */
static void
test_impulse_that_stops (void)
{
  const double radius = check_plain_ball ().radius;
  /* Rolls forward a little too slowly: slip 0.2 m/s. */
  const CheckThrow nearly
      = { .speed = 5.0, .rpm = tb_rpm_from_radians_per_second (4.8 / radius), .rotation = 0.0, .tilt = 0.0 };

  check_near ("drop of a small slip, m/s", slip_drop (0.20, &nearly), 0.2, 1e-12);
}

/* A ball that lands without slip goes on rolling, at the speed it came with. */
static void
test_rolls_after_landing (void)
{
  g_autoptr (CheckRun) run = check_run_new ();
  CheckLane lane;
  TbMotion motion;
  CheckThrow rolling = { .speed = 5.0 };

  rolling.rpm = tb_rpm_from_radians_per_second (5.0 / check_plain_ball ().radius);
  check_lane_uniform (&lane, 0.20);
  motion = dropped (&lane, &rolling);
  check_run_motion (run, &motion);
  check_true ("ends rolling", check_last (run)->phase == TB_PHASE_ROLL);
  check_near ("speed, m/s", check_last (run)->velocity.y, 5.0, 1e-12);
  check_near ("height of the centre, m", check_last (run)->position.z, motion.body.radius, 1e-12);
}

/* Bounces die out: the times between them form a geometric series, all over at t1 (1 + e)/(1 − e). */
static void
test_bounces_end (void)
{
  const CheckThrow straight = { .speed = 6.0 };
  g_autoptr (CheckRun) run = check_run_new ();
  const TbSample *slide;
  CheckLane lane;
  TbMotion motion;
  double first = sqrt (2.0 * HEIGHT / TB_STANDARD_GRAVITY);

  check_lane_uniform (&lane, 0.04);
  motion = dropped (&lane, &straight);
  check_run_motion (run, &motion);
  slide = check_start_of (run, TB_PHASE_SLIDE);
  g_assert_nonnull (slide);
  /* The last bounces, too small to be followed, may be cut off. */
  check_near ("end of the last bounce, s", slide->time, first * (1 + RESTITUTION) / (1 - RESTITUTION), 0.005);
}

/* Under a landing's load r = 1 + v_n/(g · time) the film is h/√r thick and the dry friction falls as
 * r^(−1/3). */
static void
test_squeeze (void)
{
  TbAssumed assumed = tb_assumed_default ();
  TbCover cover = tb_cover_typical (TB_COVER_REACTIVE_SOLID);
  TbCoverLaw law = { .film_friction = assumed.film_friction };
  double load = 1.0 + 1.0 / (TB_STANDARD_GRAVITY * assumed.landing_time);
  double film = tb_film_from_units (30.0);
  double lambda = film / sqrt (load) / cover.roughness / cover.film_scale;
  double dry = cover.dry_friction * pow (load, -1.0 / 3.0);
  double want = law.film_friction + (dry - law.film_friction) / ((1.0 + lambda) * (1.0 + lambda));

  check_near ("coefficient under a landing", tb_cover_friction (&cover, &law, film, load), want, 1e-15);
}

/* Upwards at the release, m/s. */
#define RISE 0.8

static TbMotion
lofted (const CheckLane *lane, double restitution)
{
  const CheckThrow release = { .speed = 7.5, .heading = -1.0, .rpm = 300.0, .rotation = 50.0, .tilt = 12.0 };
  TbMotion motion = dropped (lane, &release);

  motion.assumed.restitution = restitution;
  motion.state.velocity.z = RISE;
  return motion;
}

/* A free flight ends at v = √(2 g h + v0²), and that, with the press's time, is the load. */
static void
test_measures_of_a_flight (void)
{
  g_autoptr (CheckRun) run = check_run_new ();
  const double fall = sqrt (2.0 * TB_STANDARD_GRAVITY * HEIGHT + RISE * RISE);
  CheckLane lane;
  TbMotion motion;

  check_lane_uniform (&lane, 0.04);
  motion = lofted (&lane, RESTITUTION);
  motion.options.no_landing_squeeze = false;
  check_run_motion (run, &motion);
  check_near ("downward speed, m/s", run->path.measures.landing_speed, fall, 1e-12);
  check_near ("load", run->path.measures.landing_load,
              1.0 + fall / (TB_STANDARD_GRAVITY * motion.assumed.landing_time), 1e-9);
}

/* Without a bounce the landing takes ½ v_n² of the fall, and j u − ½ (1 + 1/k) j² of the slip, a mass; the
 * second is told by the states before and after as well. */
static void
test_measures_of_a_loss (void)
{
  g_autoptr (CheckRun) run = check_run_new ();
  const TbSample *before = NULL, *after = NULL;
  double fall, slip, push;
  CheckLane lane;
  TbMotion motion;

  check_lane_uniform (&lane, 0.04);
  motion = lofted (&lane, 0.0);
  check_run_motion (run, &motion);
  check_true ("lands", first_landing (run, &before, &after));
  fall = run->path.measures.landing_speed;
  slip = tb_vec3_length (check_slip (before, motion.body.radius));
  push = 0.04 * fall;
  check_near ("energy lost, J", run->path.measures.landing_loss,
              motion.body.mass * (0.5 * fall * fall + push * slip - 0.5 * (1 + 1 / K) * push * push), 1e-9);
  check_near ("energy of the states, J", run->path.measures.landing_loss,
              check_energy (before, &motion.body) - check_energy (after, &motion.body), 1e-9);
  check_near ("speed lost, m/s", run->path.measures.landing_slowed,
              hypot (before->velocity.x, before->velocity.y) - hypot (after->velocity.x, after->velocity.y),
              1e-12);
}

/* On a lane without friction the bounces take the whole of the fall, and nothing else. */
static void
test_measures_of_bounces (void)
{
  g_autoptr (CheckRun) run = check_run_new ();
  CheckLane lane;
  TbMotion motion;
  double fall;

  check_lane_uniform (&lane, 0.0);
  motion = lofted (&lane, RESTITUTION);
  check_run_motion (run, &motion);
  fall = run->path.measures.landing_speed;
  check_near ("energy lost, J", run->path.measures.landing_loss, 0.5 * motion.body.mass * fall * fall, 1e-9);
  check_near ("speed lost, m/s", run->path.measures.landing_slowed, 0.0, 1e-12);
}

/* A ball that is laid on the lane does not land hard. */
static void
test_measures_of_a_roll (void)
{
  const CheckThrow release = { .speed = 7.5, .rpm = 300.0, .rotation = 50.0 };
  g_autoptr (CheckRun) run = check_run_new ();
  TbBody body = check_plain_ball ();
  CheckLane lane;
  TbMotion motion;

  check_lane_uniform (&lane, 0.04);
  motion = check_motion (&body, &lane.friction);
  check_throw (&motion, &release);
  check_run_motion (run, &motion);
  check_near ("downward speed, m/s", run->path.measures.landing_speed, 0.0, 0.0);
  check_near ("load", run->path.measures.landing_load, 1.0, 0.0);
  check_near ("energy lost, J", run->path.measures.landing_loss, 0.0, 0.0);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/landing/impulse", test_impulse);
  g_test_add_func ("/landing/impulse-that-stops", test_impulse_that_stops);
  g_test_add_func ("/landing/rolls-after-landing", test_rolls_after_landing);
  g_test_add_func ("/landing/bounces-end", test_bounces_end);
  g_test_add_func ("/landing/squeeze", test_squeeze);
  g_test_add_func ("/landing/measures/flight", test_measures_of_a_flight);
  g_test_add_func ("/landing/measures/loss", test_measures_of_a_loss);
  g_test_add_func ("/landing/measures/bounces", test_measures_of_bounces);
  g_test_add_func ("/landing/measures/roll", test_measures_of_a_roll);
  return g_test_run ();
}
