/* From the hand to the moment of release.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "support.h"

static TbDelivery
some_delivery (void)
{
  TbDelivery d = tb_delivery_default ();

  d.speed = 8.0;
  d.rev_rate = 40.0;
  d.axis_rotation = tb_radians_from_deg (50.0);
  d.axis_tilt = tb_radians_from_deg (12.0);
  d.laydown = tb_x_from_board (24.0);
  d.aim = tb_x_from_board (16.0);
  d.release_height = 0.05;
  d.loft_angle = tb_radians_from_deg (3.0);
  d.loft_reach = 0.2;
  return d;
}

static TbBody
some_body (void)
{
  TbBall ball = tb_ball_default ();
  TbBody body;

  ball.top_weight = tb_kilograms_from_oz (3.0);
  g_assert_cmpint (tb_ball_body (&ball, &body), ==, TB_OK);
  return body;
}

static void
test_launch_line (void)
{
  TbDelivery d = some_delivery ();

  check_near ("at the foul line, board", tb_board_from_x (tb_delivery_launch_x (&d, 0.0)), 24.0, 1e-12);
  check_near ("at the arrows, board", tb_board_from_x (tb_delivery_launch_x (&d, TB_ARROWS_Y)), 16.0, 1e-12);
  /* A board over 15 ft is 0.339° (geometry). */
  check_near ("heading, °", tb_deg_from_radians (tb_delivery_launch_heading (&d)),
              -tb_deg_from_radians (atan (8.0 * TB_BOARD_WIDTH / TB_ARROWS_Y)), 1e-12);
  d.aim = tb_x_from_board (25.0);
  check_near ("a board to the left, °", tb_deg_from_radians (tb_delivery_launch_heading (&d)), 0.339, 5e-4);
}

static void
test_axis (void)
{
  TbDelivery d = some_delivery ();
  const double a = d.axis_rotation, b = d.axis_tilt;
  TbVec3 axis = tb_delivery_axis (&d), want = check_vector (-cos (b) * sin (a), cos (b) * cos (a), sin (b));

  check_near ("axis", tb_vec3_length (tb_vec3_sub (axis, want)), 0.0, 1e-15);
  d.axis_rotation = d.axis_tilt = 0.0;
  axis = tb_delivery_axis (&d);
  /* End over end: the axis points to the left, the top of the ball runs forwards. */
  check_near ("end over end", tb_vec3_length (tb_vec3_sub (axis, tb_vec3 (-1, 0, 0))), 0.0, 1e-15);
}

static void
test_release (void)
{
  TbDelivery d = some_delivery ();
  TbAssumed assumed = tb_assumed_default ();
  TbBody body = some_body ();
  TbState state = tb_delivery_release (&d, &body, &assumed);
  TbVec3 v = tb_state_centre_velocity (&state, &body), spin = tb_state_spin (&state, &body);

  check_near ("speed along the flight, m/s", tb_vec3_length (v), 8.0, 1e-13);
  check_near ("upwards, rad", asin (v.z / 8.0), d.loft_angle, 1e-13);
  check_near ("heading, rad", atan2 (-v.x, v.y), tb_delivery_launch_heading (&d), 1e-13);
  check_near ("spin", tb_vec3_length (tb_vec3_sub (spin, tb_vec3_scale (tb_delivery_axis (&d), 40.0))), 0.0,
              1e-12);
  check_near ("past the foul line, m", state.position.y, d.loft_reach, 0.0);
  check_near ("on the launch line, m", state.position.x, tb_delivery_launch_x (&d, d.loft_reach), 1e-15);
  check_near ("lowest point, m", state.position.z - body.radius, d.release_height, 1e-15);
  check_near ("time, s", state.time, 0.0, 0.0);
}

/* The PAP is where the spin axis leaves the ball, and the grip behind the ball as far as that allows. */
static void
test_attitude (void)
{
  TbDelivery d = some_delivery ();
  TbAssumed assumed = tb_assumed_default ();
  TbBody body = some_body ();

  for (double rotation = -60.0; rotation <= 90.0; rotation += 30.0)
    {
      TbState state;
      TbVec3 axis, grip, behind;

      d.axis_rotation = tb_radians_from_deg (rotation);
      state = tb_delivery_release (&d, &body, &assumed);
      axis = tb_delivery_axis (&d);
      check_near ("PAP from the axis, rad", tb_vec3_angle (tb_quat_rotate (state.attitude, body.pap), axis),
                  0.0, 1e-12);
      grip = tb_quat_rotate (state.attitude, body.grip);
      behind = tb_vec3_add_scaled (tb_vec3 (0, -1, 0), axis.y, axis);
      grip = tb_vec3_add_scaled (grip, -tb_vec3_dot (grip, axis), axis);
      check_near ("grip from behind, rad", tb_vec3_angle (grip, behind), 0.0, 1e-9);
      check_near ("a rotation and no more",
                  tb_vec3_length (tb_vec3 (state.attitude.x, state.attitude.y, state.attitude.z))
                          * tb_vec3_length (tb_vec3 (state.attitude.x, state.attitude.y, state.attitude.z))
                      + state.attitude.w * state.attitude.w,
                  1.0, 1e-14);
    }
}

/* Common practice: a tight grip costs speed and adds revs; neutral changes nothing. */
static void
test_grip (void)
{
  TbDelivery d = some_delivery ();
  TbAssumed assumed = tb_assumed_default ();

  d.grip_pressure = TB_GRIP_NEUTRAL;
  check_near ("neutral speed", tb_delivery_actual_speed (&d, &assumed), d.speed, 1e-15);
  check_near ("neutral rev rate", tb_delivery_actual_rev_rate (&d, &assumed), d.rev_rate, 1e-14);
  d.grip_pressure = 8.0;
  check_below ("tight: speed over stated", tb_delivery_actual_speed (&d, &assumed) / d.speed, 0.999);
  check_above ("tight: revs over stated", tb_delivery_actual_rev_rate (&d, &assumed) / d.rev_rate, 1.001);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/delivery/launch-line", test_launch_line);
  g_test_add_func ("/delivery/axis", test_axis);
  g_test_add_func ("/delivery/release", test_release);
  g_test_add_func ("/delivery/attitude", test_attitude);
  g_test_add_func ("/delivery/grip", test_grip);
  return g_test_run ();
}
