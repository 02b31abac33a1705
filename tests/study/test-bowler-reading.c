/* A bowler's numbers from what is measured at the counter: against formulas worked by hand, and read back off
 * throws of known numbers.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "study-support.h"
#include "tb-bowler-reading.h"
#include "tb-drilling.h"

#define M(inches) tb_metres_from_in (inches)
#define IN(value) tb_in_from_metres (value)
#define DEG(radians) tb_deg_from_radians (radians)

/* mean mph = 40.91 / seconds over 60 ft (arithmetic). */
static void
test_mean_speed (void)
{
  TbMeasured speed = tb_reading_mean_speed (TB_HEAD_PIN_Y, (TbMeasured){ 2.5, 0.1 });

  g_assert_cmpfloat_with_epsilon (tb_mph_from_metres_per_second (speed.value), 40.909 / 2.5, 0.001);
  /* The larger of 40.909/2.4 and 40.909/2.6 against 40.909/2.5. */
  g_assert_cmpfloat_with_epsilon (tb_mph_from_metres_per_second (speed.error), 40.909 / 2.4 - 40.909 / 2.5,
                                  0.001);
  g_assert_true (isnan (tb_reading_mean_speed (TB_HEAD_PIN_Y, (TbMeasured){ 0, 0.1 }).value));
}

/* The watch starts as the ball passes the foul line, in the hand, which carries it on at the speed of the
 * throw. */
static double
time_on_watch (const TbSetup *setup, const TbRun *run)
{
  const TbDelivery *delivery = &setup->shot.delivery;
  double ahead = delivery->speed * cos (delivery->loft_angle) * cos (tb_delivery_launch_heading (delivery));

  return run->path.measures.time + delivery->loft_reach / ahead;
}

/* The time that the model's own throw takes gives back its speed, however far past the foul line it is let
 * go. */
static void
test_release_speed (void)
{
  g_autoptr (TbSetup) setup = NULL;
  TbMeasured speed;

  for (double reach = 0; reach <= 36; reach += 18)
    {
      g_autoptr (TbRun) run = NULL;

      g_clear_pointer (&setup, tb_setup_unref);
      setup = house_setup ();
      put (&setup, "loft_reach_in", reach);
      run = tb_run_new (setup);
      speed = tb_reading_release_speed (setup, (TbMeasured){ time_on_watch (setup, run), 0.1 });
      g_test_message ("let go at %.0f in: %.3f m/s, thrown at %.3f", reach, speed.value,
                      setup->shot.delivery.speed);
      g_assert_cmpfloat_with_epsilon (speed.value, setup->shot.delivery.speed, 0.001);
    }
  g_assert_cmpfloat (speed.error, >, 0.2);
  g_assert_true (isnan (tb_reading_release_speed (setup, (TbMeasured){ 60, 0.1 }).value));
  g_assert_true (isnan (tb_reading_release_speed (setup, (TbMeasured){ 0.5, 0.1 }).value));
}

/* What is measured is what left the hand; a setup holds what a neutral grip would have given. */
static void
test_grip (void)
{
  g_autoptr (TbSetup) setup = setup_with ("grip_pressure=8");
  g_autoptr (TbRun) run = tb_run_new (setup);
  const TbMeasures *measures = &run->path.measures;
  const TbDelivery *delivery = &setup->shot.delivery;
  double ahead = measures->actual_speed * cos (tb_delivery_launch_heading (delivery));
  TbMeasured time = { measures->time + delivery->loft_reach / ahead, 0.1 };
  TbMeasured speed = tb_reading_release_speed (setup, time);

  g_assert_cmpfloat (fabs (measures->actual_speed - delivery->speed), >, 0.1);
  g_assert_cmpfloat_with_epsilon (speed.value, measures->actual_speed, 0.001);
  g_assert_cmpfloat_with_epsilon (tb_reading_neutral_speed (setup, measures->actual_speed), delivery->speed,
                                  1e-12);
  g_assert_cmpfloat_with_epsilon (tb_reading_neutral_rev_rate (setup, measures->actual_rev_rate),
                                  delivery->rev_rate, 1e-12);
}

/* 2 turns in 12 frames of 30 a second are 300 rpm; a frame more or less 23 or 27, a sixteenth of a turn 9. */
static void
test_rev_rate (void)
{
  TbMeasured rate = tb_reading_rev_rate ((TbMeasured){ 2, TB_READING_TURN_ERROR },
                                         (TbMeasured){ 12, TB_READING_FRAME_ERROR }, 30);

  g_assert_cmpfloat_with_epsilon (tb_rpm_from_radians_per_second (rate.value), 300, 1e-9);
  g_assert_cmpfloat_with_epsilon (tb_rpm_from_radians_per_second (rate.error),
                                  hypot (300.0 * 12 / 11 - 300, 9.375), 1e-6);
  g_assert_true (isnan (tb_reading_rev_rate ((TbMeasured){ 2, 0 }, (TbMeasured){ 0, 1 }, 30).value));
  g_assert_true (isnan (tb_reading_rev_rate ((TbMeasured){ 2, 0 }, (TbMeasured){ 5, 1 }, 0).value));
}

/* (13.5 − arc) / 0.15 on a 27 in ball (geometry). */
static void
test_tilt (void)
{
  double radius = M (27 / (2 * TB_PI));

  for (double arc = 9; arc <= 13.5; arc += 0.5)
    {
      TbMeasured tilt = tb_reading_tilt (radius, (TbMeasured){ M (arc), M (TB_READING_TAPE_ERROR_IN) });

      g_assert_cmpfloat_with_epsilon (DEG (tilt.value), (13.5 - arc) / 0.15, 1e-9);
      g_assert_cmpfloat_with_epsilon (DEG (tilt.error), 0.125 / 0.15, 1e-9);
    }
}

/* The first ring of a computed throw, measured across: the tilt it was thrown with. */
static void
test_tilt_of_throw (void)
{
  g_autoptr (TbSetup) setup = house_setup ();

  for (double tilt = 0; tilt <= 30; tilt += 10)
    {
      TbShot shot = setup->shot;
      g_autoptr (TbSetup) other = NULL;

      shot.delivery.axis_tilt = tb_radians_from_deg (tilt);
      other = tb_setup_with_shot (setup, &shot);

      g_autoptr (TbRun) run = tb_run_new (other);
      const TbSample *sample = &run->path.samples[0];
      TbVec3 axis = tb_sample_axis_on_ball (sample), contact = tb_sample_contact_on_ball (sample);
      double radius = run->path.body.radius;
      /* On the side of the negative axis, from one side of the ring to the other. */
      double arc = 2 * radius * tb_vec3_angle (tb_vec3_scale (axis, -1), contact);

      g_assert_cmpfloat_with_epsilon (DEG (tb_reading_tilt (radius, (TbMeasured){ arc, 0 }).value), tilt,
                                      1e-6);
    }
}

/* A mark on the PAP as core itself puts it at release: on the left of a right-hander's ball, and towards the
 * bowler. */
static void
test_axis (void)
{
  TbDelivery delivery = tb_delivery_default ();

  for (double rotation = 0; rotation <= 90; rotation += 15)
    for (double tilt = 0; tilt <= 30; tilt += 10)
      {
        delivery.axis_rotation = tb_radians_from_deg (rotation);
        delivery.axis_tilt = tb_radians_from_deg (tilt);
        TbVec3 axis = tb_delivery_axis (&delivery);
        TbAxisReading reading = tb_reading_axis ((TbMeasured){ -axis.x, TB_READING_PICTURE_ERROR },
                                                 (TbMeasured){ axis.z, TB_READING_PICTURE_ERROR });

        g_assert_cmpfloat_with_epsilon (DEG (reading.rotation.value), rotation, 1e-5);
        g_assert_cmpfloat_with_epsilon (DEG (reading.tilt.value), tilt, 1e-9);
        g_assert_cmpfloat (reading.rotation.error, >, 0);
      }
  g_assert_true (isnan (tb_reading_axis ((TbMeasured){ 0.9, 0 }, (TbMeasured){ 0.9, 0 }).rotation.value));
}

/* Three points of the circle about a known PAP. */
static void
test_pap (void)
{
  double radius = M (27 / (2 * TB_PI));

  for (double tilt = 0; tilt <= 30; tilt += 15)
    {
      TbVec3 pap = tb_layout_place (radius, M (5), M (0.5));
      TbVec3 across = tb_vec3_unit (tb_vec3_cross (pap, tb_vec3 (0, 1, 0)), tb_vec3 (1, 0, 0));
      TbRingPoint points[TB_RING_POINTS];
      double ring = 0.5 * TB_PI + tb_radians_from_deg (tilt);

      for (int i = 0; i < TB_RING_POINTS; i++)
        {
          TbVec3 side = tb_quat_rotate (tb_quat_from_rotation (tb_vec3_scale (pap, 1.1 * i)), across);
          TbVec3 place = tb_vec3_add_scaled (tb_vec3_scale (pap, cos (ring)), sin (ring), side);

          tb_layout_over_up (radius, place, &points[i].over, &points[i].up);
        }
      TbPapReading reading = tb_reading_pap (radius, points, M (TB_READING_TAPE_ERROR_IN));

      g_assert_cmpfloat_with_epsilon (IN (reading.over.value), 5, 1e-9);
      g_assert_cmpfloat_with_epsilon (IN (reading.up.value), 0.5, 1e-9);
      g_assert_cmpfloat_with_epsilon (DEG (reading.tilt.value), tilt, 1e-9);
      g_assert_cmpfloat_with_epsilon (IN (reading.ring_across), 13.5 - 0.15 * tilt, 1e-6);
      /* Measured 0.13 to 0.2 in: about the error that was put in. */
      g_assert_cmpfloat (IN (reading.over.error), >, 0.05);
      g_assert_cmpfloat (IN (reading.over.error), <, 0.5);
    }
}

static void
test_points_of_no_circle (void)
{
  const TbRingPoint same[TB_RING_POINTS] = { { 0.1, 0.1 }, { 0.1, 0.1 }, { 0.1, 0.1 } };

  g_assert_true (isnan (tb_reading_pap (0.1085, same, 0.003).over.value));
}

static void
test_info (void)
{
  for (int kind = 0; kind < TB_N_READINGS; kind++)
    {
      const TbReadingInfo *info = tb_reading_info ((TbReadingKind) kind);

      g_assert_true (info->label && info->how && info->formula && info->source && info->errors);
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/bowler-reading/mean-speed", test_mean_speed);
  g_test_add_func ("/bowler-reading/release-speed", test_release_speed);
  g_test_add_func ("/bowler-reading/grip", test_grip);
  g_test_add_func ("/bowler-reading/rev-rate", test_rev_rate);
  g_test_add_func ("/bowler-reading/tilt", test_tilt);
  g_test_add_func ("/bowler-reading/tilt-of-throw", test_tilt_of_throw);
  g_test_add_func ("/bowler-reading/axis", test_axis);
  g_test_add_func ("/bowler-reading/pap", test_pap);
  g_test_add_func ("/bowler-reading/points-of-no-circle", test_points_of_no_circle);
  g_test_add_func ("/bowler-reading/info", test_info);
  return g_test_run ();
}
