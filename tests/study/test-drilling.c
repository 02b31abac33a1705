/* Holes from a hand's measurements, layouts from dragged marks, and what the drilled ball becomes.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "house-setup.h"
#include "tb-drilling.h"

#define IN(value) tb_in_from_metres (value)
#define M(inches) tb_metres_from_in (inches)
#define DEG(radians) tb_deg_from_radians (radians)

static double
edge_to_edge (const TbBall *ball, int a, int b)
{
  double radius = 0.5 * ball->diameter;
  TbVec3 from = tb_layout_place (radius, ball->hole[a].over, ball->hole[a].up);
  TbVec3 to = tb_layout_place (radius, ball->hole[b].over, ball->hole[b].up);

  return radius * tb_vec3_angle (from, to) - 0.5 * (ball->hole[a].diameter + ball->hole[b].diameter);
}

static void
test_spans (void)
{
  TbGrip grip = tb_grip_default (), read;
  TbBall ball = tb_ball_default ();

  grip.span[TB_GRIP_MIDDLE] = M (4.25);
  grip.span[TB_GRIP_RING] = M (4.375);
  grip.bridge = M (0.3);
  grip.finger[TB_GRIP_RING].pitch_over = M (0.125);
  grip.thumb.pitch_up = M (-0.25);
  g_assert_cmpint (tb_grip_drill (&grip, &ball), ==, TB_OK);
  g_assert_cmpint (ball.n_holes, ==, 3);
  /* Measured along the surface, edge to edge, whatever the way the places were found. */
  g_assert_cmpfloat_with_epsilon (IN (edge_to_edge (&ball, 2, 0)), 4.25, 1e-9);
  g_assert_cmpfloat_with_epsilon (IN (edge_to_edge (&ball, 2, 1)), 4.375, 1e-9);
  g_assert_cmpfloat_with_epsilon (IN (edge_to_edge (&ball, 0, 1)), 0.3, 1e-6);
  /* The grip centre lies half the mean span above the thumb's edge. */
  g_assert_cmpfloat_with_epsilon (IN (ball.hole[2].up + 0.5 * ball.hole[2].diameter), -0.5 * 4.3125, 1e-9);
  /* The ring finger is on the PAP's side. */
  g_assert_cmpfloat (ball.hole[TB_GRIP_RING].over, >, 0);

  g_assert_true (tb_grip_from_ball (&ball, &read));
  g_assert_cmpfloat_with_epsilon (IN (read.span[TB_GRIP_RING]), 4.375, 1e-9);
  g_assert_cmpfloat_with_epsilon (IN (read.bridge), 0.3, 1e-6);
  g_assert_cmpfloat_with_epsilon (IN (read.finger[TB_GRIP_RING].pitch_over), 0.125, 1e-12);
  g_assert_cmpfloat_with_epsilon (IN (read.thumb.pitch_up), -0.25, 1e-12);
}

static void
test_no_thumb (void)
{
  TbGrip grip = tb_grip_default (), read;
  TbBall ball = tb_ball_default ();

  grip.no_thumb = TRUE;
  g_assert_cmpint (tb_grip_drill (&grip, &ball), ==, TB_OK);
  g_assert_cmpint (ball.n_holes, ==, 2);
  g_assert_true (tb_grip_from_ball (&ball, &read));
  g_assert_true (read.no_thumb);
  g_assert_cmpfloat_with_epsilon (IN (read.span[TB_GRIP_MIDDLE]), IN (grip.span[TB_GRIP_MIDDLE]), 1e-6);
}

static void
test_no_room (void)
{
  TbGrip grip = tb_grip_default ();
  TbBall ball = tb_ball_default (), untouched = ball;

  grip.span[TB_GRIP_MIDDLE] = M (40);
  g_assert_cmpint (tb_grip_drill (&grip, &ball), ==, TB_ERROR_HOLES);
  grip = tb_grip_default ();
  grip.finger[0].depth = M (9);
  g_assert_cmpint (tb_grip_drill (&grip, &ball), ==, TB_ERROR_HOLES);
  grip = tb_grip_default ();
  grip.span[0] = NAN;
  g_assert_cmpint (tb_grip_drill (&grip, &ball), ==, TB_ERROR_HOLES);
  g_assert_cmpmem (&ball, sizeof ball, &untouched, sizeof untouched);
}

/* Worked by hand. 15 lb in a ball of 8.55 in is 0.73336 oz to the cubic inch. A hole of 1 in, 2.5 in deep,
 * straight at the centre from the grip: r²/(4R) = 0.01462 in of its depth is missing at the mouth, so 1.95201
 * in³ or 1.43153 oz are gone, with their middle 3.01769 in from the centre. The grip's side is lighter
 * by 1.43153 × 3.01769 / 4.275. */
static void
test_static_weight (void)
{
  TbBall ball = tb_ball_default ();
  TbBallFigures before, after;

  ball.n_holes = 1;
  ball.hole[0] = (TbHole){ .kind = TB_HOLE_THUMB, .diameter = M (1), .depth = M (2.5) };
  g_assert_cmpint (tb_drilling_figures (&ball, &before, &after), ==, TB_OK);
  g_assert_cmpfloat_with_epsilon (tb_oz_from_kilograms (after.static_weights.top), -1.01050, 2e-5);
  g_assert_cmpfloat_with_epsilon (tb_oz_from_kilograms (before.mass - after.mass), 1.43153, 2e-5);
  g_assert_cmpfloat_with_epsilon (tb_oz_from_kilograms (after.static_weights.side), 0, 1e-9);
  g_assert_cmpfloat_with_epsilon (IN (after.offset), 1.43153 * 3.01769 / (240 - 1.43153), 1e-6);
  g_assert_cmpfloat (before.offset, ==, 0);
}

/* A hole on the PAP's side makes that side light, one at the fingers the fingers' half. */
static void
test_static_signs (void)
{
  TbBall ball = tb_ball_default ();
  TbBallFigures before, after;

  ball.n_holes = 1;
  ball.hole[0] = (TbHole){ .kind = TB_HOLE_FINGER, .over = M (2), .diameter = M (1), .depth = M (2) };
  g_assert_cmpint (tb_drilling_figures (&ball, &before, &after), ==, TB_OK);
  g_assert_cmpfloat (after.static_weights.side, <, 0);
  ball.hole[0].over = 0;
  ball.hole[0].up = M (2);
  g_assert_cmpint (tb_drilling_figures (&ball, &before, &after), ==, TB_OK);
  g_assert_cmpfloat (after.static_weights.finger, <, 0);
  g_assert_cmpfloat (fabs (after.static_weights.side), <, 1e-9);
}

/* A blank gives back its own figures; the pin is its axis of least RG, at its distance from the PAP. */
static void
test_figures_of_blank (void)
{
  TbBall ball = tb_ball_default ();
  TbBallFigures before, after;

  ball.intermediate_differential = M (0.015);
  g_assert_cmpint (tb_drilling_figures (&ball, &before, &after), ==, TB_OK);
  g_assert_cmpfloat_with_epsilon (IN (after.rg), IN (ball.rg), 1e-12);
  g_assert_cmpfloat_with_epsilon (IN (after.differential), IN (ball.differential), 1e-12);
  g_assert_cmpfloat_with_epsilon (IN (after.intermediate_differential), 0.015, 1e-12);
  g_assert_cmpfloat_with_epsilon (after.pin_to_low_axis, 0, 1e-7);
  g_assert_cmpfloat_with_epsilon (IN (after.low_axis_to_pap), IN (ball.pin_to_pap), 1e-6);
}

/* Drilling turns a symmetric ball into a slightly asymmetric one (common practice). */
static void
test_drilled_is_asymmetric (void)
{
  TbGrip grip = tb_grip_default ();
  TbBall ball = tb_ball_default ();
  TbBallFigures before, after;

  g_assert_cmpint (tb_grip_drill (&grip, &ball), ==, TB_OK);
  g_assert_cmpint (tb_drilling_figures (&ball, &before, &after), ==, TB_OK);
  g_assert_cmpfloat (before.intermediate_differential, <, 1e-12);
  /* Measured 0.011 in. */
  g_assert_cmpfloat (IN (after.intermediate_differential), >, 0.003);
  g_assert_cmpfloat (IN (after.intermediate_differential), <, 0.02);
}

/* Every mark of the picture can be dragged to where it is: nothing changes. And dragged anywhere, the layout
 * puts it there. */
static void
test_drag (void)
{
  const double papsover[] = { M (4), M (5.5) }, pins[] = { M (0.5), M (2.25), M (5) };
  const double angles[] = { 0.2, 1.0, 2.4 };

  for (int i = 0; i < 2; i++)
    for (int j = 0; j < 3; j++)
      for (int k = 0; k < 3; k++)
        {
          TbBall ball = tb_ball_default (), moved;
          TbLayoutPlaces places;

          ball.pap_over = papsover[i];
          ball.pin_to_pap = pins[j];
          ball.val_angle = angles[k];
          ball.drilling_angle = angles[2 - k];
          g_assert_cmpint (tb_layout_places (&ball, &places), ==, TB_OK);
          moved = ball;
          moved.pin_to_pap = M (1);
          moved.val_angle = 0.7;
          tb_layout_move_pin (&moved, places.pin);
          g_assert_cmpfloat_with_epsilon (moved.pin_to_pap, ball.pin_to_pap, 1e-9);
          g_assert_cmpfloat_with_epsilon (moved.val_angle, ball.val_angle, 1e-7);
          moved.drilling_angle = 0.1;
          tb_layout_move_mass_bias (&moved, places.mass_bias);
          g_assert_cmpfloat_with_epsilon (moved.drilling_angle, ball.drilling_angle, 1e-7);
          moved.pap_over = 0;
          tb_layout_move_pap (&moved, places.pap);
          g_assert_cmpfloat_with_epsilon (moved.pap_over, ball.pap_over, 1e-9);
          g_assert_cmpfloat_with_epsilon (moved.pap_up, ball.pap_up, 1e-9);
        }
}

static void
test_drag_out_of_reach (void)
{
  TbBall ball = tb_ball_default ();
  TbLayoutPlaces places;

  /* To the far side: held to a quarter of the way round. */
  g_assert_cmpint (tb_layout_places (&ball, &places), ==, TB_OK);
  tb_layout_move_pin (&ball, tb_vec3_scale (places.pap, -1));
  g_assert_cmpfloat (ball.pin_to_pap, <=, M (6.75));
  /* Past the vertical axis line, away from the grip. */
  tb_layout_move_pin (&ball, tb_layout_place (0.5 * ball.diameter, M (6.5), M (2)));
  g_assert_cmpfloat (ball.val_angle, ==, 0);
  tb_layout_move_pap (&ball, tb_layout_place (0.5 * ball.diameter, M (-2), M (5)));
  g_assert_cmpfloat (ball.pap_over, ==, 0);
  g_assert_cmpfloat_with_epsilon (IN (ball.pap_up), 3, 1e-12);
}

/* The layout's three numbers, measured back on the sphere. */
static void
test_places (void)
{
  TbBall ball = tb_ball_default ();
  TbLayoutPlaces places;
  double radius = 0.5 * ball.diameter, over, up;

  ball.drilling_angle = tb_radians_from_deg (50);
  ball.pin_to_pap = M (4);
  ball.val_angle = tb_radians_from_deg (40);
  g_assert_cmpint (tb_layout_places (&ball, &places), ==, TB_OK);
  tb_layout_over_up (radius, places.pap, &over, &up);
  g_assert_cmpfloat_with_epsilon (IN (over), IN (ball.pap_over), 1e-9);
  g_assert_cmpfloat_with_epsilon (IN (up), IN (ball.pap_up), 1e-9);
  g_assert_cmpfloat_with_epsilon (IN (radius * tb_vec3_angle (places.pin, places.pap)), 4, 1e-9);
  /* Angle at the pin between the great circles to the PAP and to the mass bias. */
  TbVec3 to_pap = tb_vec3_unit (
      tb_vec3_add_scaled (places.pap, -tb_vec3_dot (places.pap, places.pin), places.pin), tb_vec3 (1, 0, 0));

  g_assert_cmpfloat_with_epsilon (DEG (tb_vec3_angle (to_pap, places.mass_bias)), 50, 1e-6);
  g_assert_cmpfloat_with_epsilon (DEG (tb_vec3_angle (places.pin, places.mass_bias)), 90, 1e-6);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/drilling/spans", test_spans);
  g_test_add_func ("/drilling/no-thumb", test_no_thumb);
  g_test_add_func ("/drilling/no-room", test_no_room);
  g_test_add_func ("/drilling/static-weight", test_static_weight);
  g_test_add_func ("/drilling/static-signs", test_static_signs);
  g_test_add_func ("/drilling/figures-of-blank", test_figures_of_blank);
  g_test_add_func ("/drilling/drilled-is-asymmetric", test_drilled_is_asymmetric);
  g_test_add_func ("/layout/places", test_places);
  g_test_add_func ("/layout/drag", test_drag);
  g_test_add_func ("/layout/drag-out-of-reach", test_drag_out_of_reach);
  return g_test_run ();
}
