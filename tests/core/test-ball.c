/* The layout: where the core lies against the PAP and the grip, by spherical trigonometry.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "support.h"

static TbBody
body_of (const TbBall *ball)
{
  TbBody body;

  g_assert_cmpint (tb_ball_body (ball, &body), ==, TB_OK);
  return body;
}

static TbBall
asymmetric_ball (void)
{
  TbBall ball = tb_ball_default ();

  ball.differential = tb_metres_from_in (0.050);
  ball.intermediate_differential = tb_metres_from_in (0.018);
  ball.n_holes = 0;
  ball.top_weight = 0.0;
  return ball;
}

/* Direction along the surface from one place to another. */
static TbVec3
towards (TbVec3 from, TbVec3 to)
{
  return tb_vec3_unit (tb_vec3_add_scaled (to, -tb_vec3_dot (from, to), from), tb_vec3 (0, 0, 1));
}

static double
angle_deg (TbVec3 a, TbVec3 b)
{
  return tb_deg_from_radians (tb_vec3_angle (a, b));
}

static void
test_axes (void)
{
  TbBall ball = asymmetric_ball ();
  TbBody body = body_of (&ball);
  TbVec3 rg = tb_body_rg (&body);
  double low = ball.rg, high = low + ball.differential, middle = high - ball.intermediate_differential;

  check_near ("low RG, in", tb_in_from_metres (rg.x), tb_in_from_metres (low), 1e-12);
  check_near ("middle RG, in", tb_in_from_metres (rg.y), tb_in_from_metres (middle), 1e-12);
  check_near ("high RG, in", tb_in_from_metres (rg.z), tb_in_from_metres (high), 1e-12);
  check_near ("the pin lies on the low axis", fabs (body.pin.x), 1.0, 1e-12);
  check_near ("the mass bias on the high one", fabs (body.mass_bias.z), 1.0, 1e-12);
  check_near ("balanced, m", tb_vec3_length (body.offset), 0.0, 0.0);
  check_near ("radius, in", tb_in_from_metres (body.radius), tb_in_from_metres (0.5 * ball.diameter), 1e-14);
}

static void
check_layout (double drilling_deg, double pin_to_pap_in, double val_deg)
{
  TbBall ball = asymmetric_ball ();
  TbVec3 midline, val;
  TbBody body;

  ball.drilling_angle = tb_radians_from_deg (drilling_deg);
  ball.pin_to_pap = tb_metres_from_in (pin_to_pap_in);
  ball.val_angle = tb_radians_from_deg (val_deg);
  body = body_of (&ball);
  g_test_message ("%g° × %g in × %g°", drilling_deg, pin_to_pap_in, val_deg);
  check_near ("pin to PAP, in", tb_in_from_metres (body.radius * tb_vec3_angle (body.pin, body.pap)),
              pin_to_pap_in, 1e-10);
  check_near ("pin to mass bias, °", angle_deg (body.pin, body.mass_bias), 90.0, 1e-10);
  /* The VAL is the great circle through the PAP that meets the midline square: it goes through the pole of
   * the midline, which is the direction up at the grip. */
  val = towards (body.pap, body.up);
  midline = tb_vec3_cross (body.up, body.grip);
  if (pin_to_pap_in > 0.0)
    {
      check_near ("drilling angle, °",
                  angle_deg (towards (body.pin, body.pap), towards (body.pin, body.mass_bias)), drilling_deg,
                  1e-8);
      check_near ("VAL angle, °", angle_deg (towards (body.pap, body.pin), val), val_deg, 1e-8);
      /* The pin is on the grip's side of the VAL. */
      if (val_deg > 0.0 && val_deg < 180.0)
        check_below ("towards the grip",
                     tb_vec3_dot (towards (body.pap, body.pin), tb_vec3_cross (val, body.pap)), 0.0);
    }
  check_near ("up is along the surface", tb_vec3_dot (body.up, body.grip), 0.0, 1e-14);
  check_near ("PAP up, in", tb_in_from_metres (body.radius * asin (tb_vec3_dot (body.pap, body.up))), 0.5,
              1e-10);
  check_near ("PAP over, in",
              tb_in_from_metres (
                  body.radius * atan2 (tb_vec3_dot (body.pap, midline), tb_vec3_dot (body.pap, body.grip))),
              5.0, 1e-10);
}

static void
test_layouts (void)
{
  static const double drilling[] = { 0, 10, 50, 90, 135, 180 }, distance[] = { 0.0, 1.0, 3.375, 4.5, 6.75 };
  static const double val[] = { 0, 20, 45, 70, 120 };

  for (guint i = 0; i < G_N_ELEMENTS (drilling); i++)
    for (guint j = 0; j < G_N_ELEMENTS (distance); j++)
      for (guint k = 0; k < G_N_ELEMENTS (val); k++)
        check_layout (drilling[i], distance[j], val[k]);
}

/* A symmetric ball does not know its drilling angle. */
static void
test_symmetric (void)
{
  TbBall ball = asymmetric_ball ();
  TbBody one, two;

  ball.intermediate_differential = 0.0;
  ball.drilling_angle = 0.3;
  one = body_of (&ball);
  ball.drilling_angle = 1.1;
  two = body_of (&ball);
  check_near ("PAP from the pin", tb_vec3_dot (one.pap, one.pin), tb_vec3_dot (two.pap, two.pin), 1e-15);
  check_near ("moments across", one.moment.y, one.moment.z, 1e-18);
}

static void
test_sphere (void)
{
  TbBody body = tb_body_sphere (6.0, 0.109, 0.4);

  check_near ("moment, kg m²", body.moment.x, 0.4 * 6.0 * 0.109 * 0.109, 1e-17);
  check_near ("the same across", body.moment.y - body.moment.z, 0.0, 0.0);
  check_near ("a PAP", tb_vec3_length (body.pap), 1.0, 1e-15);
}

static void
test_errors (void)
{
  TbBall ball = asymmetric_ball ();
  TbBody body = tb_body_sphere (1.0, 1.0, 1.0);

  ball.rg = NAN;
  check_status ("not a number", tb_ball_body (&ball, &body), TB_ERROR_NOT_FINITE);
  ball = asymmetric_ball ();
  ball.intermediate_differential = 2 * ball.differential;
  check_status ("differentials", tb_ball_body (&ball, &body), TB_ERROR_DIFFERENTIALS);
  check_near ("the body is not touched", body.mass, 1.0, 0.0);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/ball/axes", test_axes);
  g_test_add_func ("/ball/layouts", test_layouts);
  g_test_add_func ("/ball/symmetric", test_symmetric);
  g_test_add_func ("/ball/sphere", test_sphere);
  g_test_add_func ("/ball/errors", test_errors);
  return g_test_run ();
}
