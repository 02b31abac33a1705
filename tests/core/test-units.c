/* Units, the lane's geometry, and the small mathematics of rotation.
 *
 * Sizes: USBC Equipment Specifications Manual; unit definitions: the international inch and pound of 1959.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "support.h"

static void
test_definitions (void)
{
  check_near ("60 ft, m", tb_metres_from_ft (60.0), 18.288, 1e-14);
  check_near ("8.5 in, m", tb_metres_from_in (8.5), 0.2159, 1e-15);
  check_near ("15 lb, kg", tb_kilograms_from_lb (15.0), 6.80388555, 1e-14);
  check_near ("17 mph, m/s", tb_metres_per_second_from_mph (17.0), 7.59968, 1e-14);
  check_near ("300 rpm, rad/s", tb_radians_per_second_from_rpm (300.0), 31.41592653589793, 1e-14);
  check_near ("16 oz, lb", tb_lb_from_kilograms (tb_kilograms_from_oz (16.0)), 1.0, 1e-15);
  check_near ("a revolution", tb_revolutions_from_radians (2.0 * TB_PI), 1.0, 1e-15);
  /* A unit of oil is about 0.180 µm (from memory). */
  check_near ("a unit, µm", tb_um_from_metres (tb_film_from_units (1.0)), 0.180, 0.0005);
}

typedef struct Pair
{
  const char *name;
  double (*there) (double);
  double (*back) (double);
} Pair;

static void
test_round_trips (void)
{
  static const Pair pairs[] = {
    { "in", tb_metres_from_in, tb_in_from_metres },
    { "ft", tb_metres_from_ft, tb_ft_from_metres },
    { "µin", tb_metres_from_uin, tb_uin_from_metres },
    { "µm", tb_metres_from_um, tb_um_from_metres },
    { "mph", tb_metres_per_second_from_mph, tb_mph_from_metres_per_second },
    { "rpm", tb_radians_per_second_from_rpm, tb_rpm_from_radians_per_second },
    { "°", tb_radians_from_deg, tb_deg_from_radians },
    { "lb", tb_kilograms_from_lb, tb_lb_from_kilograms },
    { "oz", tb_kilograms_from_oz, tb_oz_from_kilograms },
    { "units", tb_film_from_units, tb_units_from_film },
    { "mL", tb_cubic_metres_from_ml, tb_ml_from_cubic_metres },
    { "board", tb_x_from_board, tb_board_from_x },
  };

  for (guint i = 0; i < G_N_ELEMENTS (pairs); i++)
    for (double value = -40.0; value <= 40.0; value += 7.25)
      check_near (pairs[i].name, pairs[i].back (pairs[i].there (value)), value, 1e-13);
}

static void
test_boards (void)
{
  check_near ("a board, in", tb_in_from_metres (TB_BOARD_WIDTH), 1.0641, 5e-5);
  check_near ("the middle board", tb_x_from_board (20.0), 0.0, 0.0);
  check_near ("right edge", tb_x_from_board (0.5), TB_LANE_HALF_WIDTH, 1e-15);
  check_near ("left edge", tb_x_from_board (39.5), -TB_LANE_HALF_WIDTH, 1e-15);
  check_near ("two boards to the left", tb_boards_from_width (-2.0 * TB_BOARD_WIDTH), 2.0, 1e-15);
}

static void
test_arrows_and_dots (void)
{
  for (int i = 0; i < TB_N_ARROWS; i++)
    {
      check_near ("arrow's board", tb_board_from_x (tb_lane_arrows[i].x), 5.0 * (i + 1), 1e-12);
      check_near ("a V", tb_lane_arrows[i].y, tb_lane_arrows[TB_N_ARROWS - 1 - i].y, 1e-15);
      /* The band in which the manual wants them, ft. */
      check_near ("arrow's distance, ft", tb_ft_from_metres (tb_lane_arrows[i].y), 14.0, 2.0);
    }
  check_above ("the middle arrow is farthest", tb_lane_arrows[3].y - tb_lane_arrows[0].y, 0.5);
  for (int i = 0; i < TB_N_DOTS; i++)
    {
      static const double boards[] = { 3, 5, 8, 11, 14, 26, 29, 32, 35, 37 };

      check_near ("dot's board", tb_board_from_x (tb_lane_dots[i].x), boards[i], 1e-12);
      check_near ("dot's distance, ft", tb_ft_from_metres (tb_lane_dots[i].y), 7.0, 1.0);
    }
}

static double
pin_distance (int a, int b)
{
  return tb_in_from_metres (
      hypot (tb_lane_pins[a].x - tb_lane_pins[b].x, tb_lane_pins[a].y - tb_lane_pins[b].y));
}

static void
test_pins (void)
{
  check_near ("head pin, ft", tb_ft_from_metres (tb_lane_pins[0].y), 60.0, 1e-12);
  check_near ("head pin, m across", tb_lane_pins[0].x, 0.0, 0.0);
  check_near ("1 to 2, in", pin_distance (0, 1), 12.0, 1e-3);
  check_near ("1 to 3, in", pin_distance (0, 2), 12.0, 1e-3);
  check_near ("4 to 5, in", pin_distance (3, 4), 12.0, 1e-3);
  check_near ("7 to 10, in", pin_distance (6, 9), 36.0, 1e-3);
  check_near ("rows apart, in", tb_in_from_metres (tb_lane_pins[3].y - tb_lane_pins[1].y), 10.392, 1e-3);
  check_above ("3 pin is right of the 2 pin", tb_lane_pins[2].x - tb_lane_pins[1].x, 0.1);
  check_near ("10 pin's board", tb_board_from_x (tb_lane_pins[9].x), 3.08, 0.01);
  check_near ("7 pin's board", tb_board_from_x (tb_lane_pins[6].x), 36.92, 0.01);
  check_near ("pit, ft", TB_PIT_FT, 62.849, 5e-4);
}

static void
test_pin_profile (void)
{
  check_near ("height of a pin, in", tb_in_from_metres (tb_pin_profile[TB_N_PIN_PROFILE - 1].height), 15.0,
              1.6);
  for (int i = 1; i < TB_N_PIN_PROFILE; i++)
    check_above ("rises", tb_pin_profile[i].height - tb_pin_profile[i - 1].height, 1e-4);
  for (int i = 0; i < TB_N_PIN_PROFILE; i++)
    if (fabs (tb_in_from_metres (tb_pin_profile[i].height) - 4.5) < 1e-6)
      check_near ("belly, in", tb_in_from_metres (2 * tb_pin_profile[i].radius), 4.766, 1e-6);
}

static void
check_quat (TbQuat got, TbQuat want, double bound)
{
  double sign = got.w * want.w + got.x * want.x + got.y * want.y + got.z * want.z < 0 ? -1 : 1;

  check_near ("w", sign * got.w, want.w, bound);
  check_near ("x", sign * got.x, want.x, bound);
  check_near ("y", sign * got.y, want.y, bound);
  check_near ("z", sign * got.z, want.z, bound);
}

static void
test_rotations (void)
{
  TbVec3 quarter = tb_vec3 (0, 0, TB_PI / 2),
         v = tb_quat_rotate (tb_quat_from_rotation (quarter), tb_vec3 (1, 0, 0));
  guint64 seed = 5;

  check_near ("x turns to y", tb_vec3_length (tb_vec3_sub (v, tb_vec3 (0, 1, 0))), 0.0, 1e-15);
  for (int i = 0; i < 50; i++)
    {
      TbVec3 rotation = tb_vec3 (check_uniform (&seed, -1.8, 1.8), check_uniform (&seed, -1.8, 1.8),
                                 check_uniform (&seed, -1.8, 1.8));
      TbQuat q = tb_quat_from_rotation (rotation);
      TbMat3 m = tb_quat_to_mat3 (q);

      check_quat (tb_quat_from_mat3 (&m), q, 1e-14);
      if (tb_vec3_length (rotation) < TB_PI)
        check_near ("rotation there and back",
                    tb_vec3_length (tb_vec3_sub (tb_quat_to_rotation (q), rotation)), 0.0, 1e-13);
    }
  check_near ("no rotation", tb_vec3_length (tb_quat_to_rotation ((TbQuat){ 1, 0, 0, 0 })), 0.0, 0.0);
}

static void
test_angles (void)
{
  TbVec3 a = { 1, 2, 3 }, b = { 1, 2, 3 + 1e-9 };

  /* cos is flat here: an arc cosine would give nothing or 1.5e-8. */
  check_near ("small angle, rad", tb_vec3_angle (a, b), 1e-9 * sqrt (5.0) / 14.0, 1e-15);
  check_near ("opposite, rad", tb_vec3_angle (a, tb_vec3_scale (a, -2)), TB_PI, 1e-15);
  check_near ("unit of nothing", tb_vec3_unit (tb_vec3 (0, 0, 0), tb_vec3 (0, 1, 0)).y, 1.0, 0.0);
}

/* A symmetric matrix with known axes and values. */
static TbMat3
symmetric (TbQuat attitude, const double values[3])
{
  TbMat3 turn = tb_quat_to_mat3 (attitude), out = { 0 };
  const TbVec3 axis[] = { { turn.row[0].x, turn.row[1].x, turn.row[2].x },
                          { turn.row[0].y, turn.row[1].y, turn.row[2].y },
                          { turn.row[0].z, turn.row[1].z, turn.row[2].z } };

  for (int i = 0; i < 3; i++)
    {
      out.row[0] = tb_vec3_add_scaled (out.row[0], values[i] * axis[i].x, axis[i]);
      out.row[1] = tb_vec3_add_scaled (out.row[1], values[i] * axis[i].y, axis[i]);
      out.row[2] = tb_vec3_add_scaled (out.row[2], values[i] * axis[i].z, axis[i]);
    }
  return out;
}

static void
test_eigen (void)
{
  const double values[] = { 2.0, 3.0, 7.0 };
  TbMat3 m = symmetric (tb_quat_unit ((TbQuat){ 0.3, 0.5, -0.2, 0.8 }), values), axes;
  double found[3];
  TbVec3 x, b = { 0.3, -1.0, 2.0 };

  tb_mat3_eigen (&m, found, &axes);
  for (int i = 0; i < 3; i++)
    {
      TbVec3 difference = tb_vec3_add_scaled (tb_mat3_apply (&m, axes.row[i]), -found[i], axes.row[i]);

      check_near ("eigenvalue", found[i], values[i], 1e-13);
      check_near ("eigenvector", tb_vec3_length (difference), 0.0, 1e-13);
    }
  check_near ("right-handed", tb_vec3_dot (tb_vec3_cross (axes.row[0], axes.row[1]), axes.row[2]), 1.0,
              1e-14);
  x = tb_mat3_solve_spd (&m, b);
  check_near ("solved", tb_vec3_length (tb_vec3_sub (tb_mat3_apply (&m, x), b)), 0.0, 1e-14);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/units/definitions", test_definitions);
  g_test_add_func ("/units/round-trips", test_round_trips);
  g_test_add_func ("/units/boards", test_boards);
  g_test_add_func ("/geometry/arrows-and-dots", test_arrows_and_dots);
  g_test_add_func ("/geometry/pins", test_pins);
  g_test_add_func ("/geometry/pin-profile", test_pin_profile);
  g_test_add_func ("/math/rotations", test_rotations);
  g_test_add_func ("/math/angles", test_angles);
  g_test_add_func ("/math/eigen", test_eigen);
  return g_test_run ();
}
