/* Drilled holes against an integration that knows nothing but where they are: small boxes of the ball's mean
 * density.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "support.h"

/* Edge of a box, m. */
#define BOX 0.4e-3

/* Mass, first moment and inertia (about the ball's centre), in the grip's frame: over, up, out. */
typedef struct Sum
{
  double mass;
  TbVec3 first;
  double second[3][3]; /* ∫ r rᵀ dm */
} Sum;

static void
add_mass (Sum *sum, double mass, TbVec3 at)
{
  const double r[] = { at.x, at.y, at.z };

  sum->mass += mass;
  sum->first = tb_vec3_add_scaled (sum->first, mass, at);
  for (int i = 0; i < 3; i++)
    for (int j = 0; j < 3; j++)
      sum->second[i][j] += mass * r[i] * r[j];
}

/* A hole's mouth, and the direction of its line: it misses the centre by the pitches. */
static void
hole_line (const TbHole *hole, double radius, TbVec3 *mouth, TbVec3 *inwards)
{
  double a = hole->over / radius, b = hole->up / radius;
  TbVec3 over = tb_vec3 (cos (a), 0, -sin (a)),
         up = tb_vec3 (-sin (b) * sin (a), cos (b), -sin (b) * cos (a));
  TbVec3 out = tb_vec3 (cos (b) * sin (a), sin (b), cos (b) * cos (a));
  double p = hole->pitch_over / radius, q = hole->pitch_up / radius;

  *mouth = tb_vec3_scale (out, radius);
  *inwards = tb_vec3_add_scaled (tb_vec3_add_scaled (tb_vec3_scale (out, -sqrt (1 - p * p - q * q)), p, over),
                                 q, up);
}

static void
remove_hole (Sum *sum, const TbHole *hole, double radius, double density)
{
  TbVec3 mouth, line, side, other;
  double reach = 0.5 * hole->diameter;

  hole_line (hole, radius, &mouth, &line);
  side = tb_vec3_unit (tb_vec3_cross (line, tb_vec3 (1, 0, 0)), tb_vec3 (0, 1, 0));
  other = tb_vec3_cross (line, side);
  for (double depth = -reach + 0.5 * BOX; depth < hole->depth; depth += BOX)
    for (double s = -reach + 0.5 * BOX; s < reach; s += BOX)
      for (double t = -reach + 0.5 * BOX; t < reach; t += BOX)
        {
          TbVec3 at = tb_vec3_add_scaled (mouth, depth, line);

          at = tb_vec3_add_scaled (tb_vec3_add_scaled (at, s, side), t, other);
          if (s * s + t * t <= reach * reach && tb_vec3_dot (at, at) <= radius * radius)
            add_mass (sum, -density * BOX * BOX * BOX, at);
        }
}

/* The ball before drilling: three pairs of points on the core's axes have any moments one likes. */
static void
add_blank (Sum *sum, const TbBall *ball, const TbBody *blank, const TbVec3 axes[3])
{
  double total = blank->moment.x + blank->moment.y + blank->moment.z;
  const double moment[] = { blank->moment.x, blank->moment.y, blank->moment.z };

  for (int i = 0; i < 3; i++)
    {
      /* ∫ (along the axis)² dm = half the total less the moment. */
      double spread = 0.5 * total - moment[i], share = ball->mass / 6.0, arm = sqrt (spread / (2.0 * share));

      add_mass (sum, share, tb_vec3_scale (axes[i], arm));
      add_mass (sum, share, tb_vec3_scale (axes[i], -arm));
    }
}

/* A body vector in the grip's frame. */
static TbVec3
in_grip_frame (const TbBody *body, TbVec3 v)
{
  TbVec3 over = tb_vec3_cross (body->up, body->grip);

  return tb_vec3 (tb_vec3_dot (v, over), tb_vec3_dot (v, body->up), tb_vec3_dot (v, body->grip));
}

static TbBall
drilled_ball (void)
{
  TbBall ball = tb_ball_default ();
  const double in = TB_METRES_PER_INCH;

  ball.differential = 0.050 * in;
  ball.intermediate_differential = 0.018 * in;
  ball.top_weight = 0.0;
  ball.n_holes = 3;
  ball.hole[0] = (TbHole){ TB_HOLE_FINGER, -0.65 * in, 1.9 * in, 0.97 * in, 2.5 * in, 0.125 * in, 0.0 };
  ball.hole[1]
      = (TbHole){ TB_HOLE_FINGER, 0.65 * in, 2.0 * in, 0.97 * in, 2.4 * in, -0.125 * in, 0.375 * in };
  ball.hole[2] = (TbHole){ TB_HOLE_THUMB, 0.1 * in, -1.9 * in, 1.05 * in, 2.9 * in, 0.2 * in, -0.25 * in };
  return ball;
}

typedef struct Both
{
  TbBall ball;
  TbBody blank, drilled;
  Sum sum; /* of the drilled ball, by boxes */
} Both;

static void
drill (Both *both)
{
  TbBall plain = both->ball = drilled_ball ();
  double volume = TB_PI / 6.0 * plain.diameter * plain.diameter * plain.diameter;
  TbVec3 axes[3];

  plain.n_holes = 0;
  g_assert_cmpint (tb_ball_body (&plain, &both->blank), ==, TB_OK);
  g_assert_cmpint (tb_ball_body (&both->ball, &both->drilled), ==, TB_OK);
  axes[0] = in_grip_frame (&both->blank, tb_vec3 (1, 0, 0));
  axes[1] = in_grip_frame (&both->blank, tb_vec3 (0, 1, 0));
  axes[2] = in_grip_frame (&both->blank, tb_vec3 (0, 0, 1));
  both->sum = (Sum){ 0 };
  add_blank (&both->sum, &plain, &both->blank, axes);
  for (int i = 0; i < both->ball.n_holes; i++)
    remove_hole (&both->sum, &both->ball.hole[i], 0.5 * plain.diameter, plain.mass / volume);
}

static void
test_mass_and_centre (void)
{
  Both both;
  TbVec3 offset, want;

  drill (&both);
  want = tb_vec3_scale (both.sum.first, 1.0 / both.sum.mass);
  offset = in_grip_frame (&both.drilled, both.drilled.offset);
  /* The three holes take about 0.16 kg. */
  check_near ("mass, kg", both.drilled.mass, both.sum.mass, 5e-4);
  check_near ("centre of mass over, mm", 1e3 * offset.x, 1e3 * want.x, 0.01);
  check_near ("centre of mass up, mm", 1e3 * offset.y, 1e3 * want.y, 0.01);
  check_near ("centre of mass out, mm", 1e3 * offset.z, 1e3 * want.z, 0.01);
  check_below ("away from the grip, mm", 1e3 * offset.z, -1.0);
}

/* The inertia about the centre of mass in the grip's frame, out of the body's moments and out of the boxes.
 */
static void
test_inertia (void)
{
  Both both;
  const double unit[3][3] = { { 1, 0, 0 }, { 0, 1, 0 }, { 0, 0, 1 } };
  TbVec3 axis[3], centre;
  double trace, change = 0.0, scale = 0.0;

  drill (&both);
  for (int i = 0; i < 3; i++)
    axis[i] = in_grip_frame (&both.drilled, tb_vec3 (unit[i][0], unit[i][1], unit[i][2]));
  centre = tb_vec3_scale (both.sum.first, 1.0 / both.sum.mass);
  add_mass (&both.sum, -both.sum.mass, centre);
  trace = both.sum.second[0][0] + both.sum.second[1][1] + both.sum.second[2][2];
  for (int i = 0; i < 3; i++)
    for (int j = 0; j < 3; j++)
      {
        const double *moment = &both.drilled.moment.x;
        double want = (i == j ? trace : 0.0) - both.sum.second[i][j], got = 0.0;

        for (int k = 0; k < 3; k++)
          got += moment[k] * (&axis[k].x)[i] * (&axis[k].x)[j];
        change = fmax (change, fabs (got - want));
        scale = fmax (scale, fabs (want));
      }
  /* The holes change the moments by 2 to 4 %. */
  check_below ("greatest difference of an element, of the greatest moment", change / scale, 2e-4);
}

static void
test_principal_axes (void)
{
  Both both;

  drill (&both);
  check_above ("moments in order", both.drilled.moment.y, both.drilled.moment.x);
  check_above ("moments in order", both.drilled.moment.z, both.drilled.moment.y);
  check_near ("pin still where it was laid out",
              tb_in_from_metres (both.drilled.radius * tb_vec3_angle (both.drilled.pin, both.drilled.pap)),
              tb_in_from_metres (both.ball.pin_to_pap), 1e-9);
}

/* Static weights of a worked case: one radial hole in the grip's middle takes its weight times its lever from
 * the top, and nothing from the sides. The scale's arm is taken as the ball's radius (assumed). */
static void
test_static_weights (void)
{
  TbBall ball = tb_ball_default ();
  TbBody body;
  double density = ball.mass / (TB_PI / 6.0 * pow (ball.diameter, 3));
  double depth = 0.07, diameter = 0.025, weight, lever;

  ball.top_weight = 0.0;
  ball.n_holes = 1;
  ball.hole[0] = (TbHole){ TB_HOLE_THUMB, 0, 0, diameter, depth, 0, 0 };
  g_assert_cmpint (tb_ball_body (&ball, &body), ==, TB_OK);
  weight = density * TB_PI / 4.0 * diameter * diameter * depth;
  lever = 0.5 * ball.diameter - 0.5 * depth;
  check_near ("top weight, oz", tb_oz_from_kilograms (body.static_weights.top),
              tb_oz_from_kilograms (-weight * lever / body.radius), 0.03);
  check_near ("side weight, oz", tb_oz_from_kilograms (body.static_weights.side), 0.0, 1e-9);
  check_near ("finger weight, oz", tb_oz_from_kilograms (body.static_weights.finger), 0.0, 1e-9);
  /* A hole towards the PAP makes that side light. */
  ball.hole[0].over = 0.04;
  g_assert_cmpint (tb_ball_body (&ball, &body), ==, TB_OK);
  check_below ("side weight, oz", tb_oz_from_kilograms (body.static_weights.side), -0.1);
}

/* Top weight before drilling is what the scale shows with the pin up. */
static void
test_top_weight (void)
{
  TbBall ball = tb_ball_default ();
  TbBody body;

  ball.n_holes = 0;
  ball.top_weight = tb_kilograms_from_oz (3.0);
  g_assert_cmpint (tb_ball_body (&ball, &body), ==, TB_OK);
  check_near ("towards the pin, rad", tb_vec3_angle (body.offset, body.pin), 0.0, 1e-9);
  check_near ("m d/R, oz", tb_oz_from_kilograms (body.mass * tb_vec3_length (body.offset) / body.radius), 3.0,
              1e-9);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/holes/mass-and-centre", test_mass_and_centre);
  g_test_add_func ("/holes/inertia", test_inertia);
  g_test_add_func ("/holes/principal-axes", test_principal_axes);
  g_test_add_func ("/holes/static-weights", test_static_weights);
  g_test_add_func ("/holes/top-weight", test_top_weight);
  return g_test_run ();
}
