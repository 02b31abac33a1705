/* The oil that a ball carries, a drilled hole and a spinning contact, each against a sum worked out by itself.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include <string.h>
#include "support.h"
#include "tb-ball-film.h"
#include "tb-oil-film.h"

#define PASSINGS 400
#define FILM 8e-6 /* m */

static TbFriction
house_friction (void)
{
  TbShot shot = check_house_shot ();
  TbFriction friction;
  TbMotion motion;

  check_status ("motion", tb_shot_motion (&shot, &friction, &motion, NULL), TB_OK);
  return friction;
}

static double
oil_in_cells (const BallFilm *film)
{
  double sum = 0;

  for (int row = 0; row < BALL_FILM_ROWS; row++)
    for (int column = 0; column < BALL_FILM_COLUMNS; column++)
      sum += film->cell[row + BALL_FILM_PAD][column];
  return sum * film->cell_area;
}

/* What is taken from the lane less what is left on it is what lies on the ball, wherever on the ball it came to lie:
 * at the poles of the map and over its seam too. The books are kept apart from the cells. */
static void
test_balance (void)
{
  BallFilm *film = g_new (BallFilm, 1);
  TbShot shot = check_house_shot ();
  TbFriction friction = house_friction ();
  TbBody body;
  guint64 state = 5;

  check_status ("body", tb_ball_body (&shot.ball, &body), TB_OK);
  friction.cover.absorption = 0;
  ball_film_init (film, &friction, &shot.assumed, &body, NULL, TB_SHOT_OILY_STEP);
  for (int i = 0; i < PASSINGS; i++)
    {
      TbVec3 axis = { check_uniform (&state, -1, 1), check_uniform (&state, -1, 1), check_uniform (&state, -1, 1) };
      TbQuat attitude = tb_quat_from_rotation (tb_vec3_scale (axis, 3));
      Passing passing = { .x = 0, .y = 5, .lane_area = 1e-4, .ball_area = 1e-4, .lane_film = FILM, .ball_film = 0.5 * FILM,
                          .turned = i, .growth = 1 };

      ball_film_look (film, attitude, tb_vec3_scale (axis, 30), 0, TB_SHOT_OILY_STEP);
      passing.place = film->ahead[0];
      ball_film_pass (film, &passing);
    }
  ball_film_finish (film, 0);
  check_above ("taken, m³", film->taken, 1e-8);
  check_above ("left, m³", film->left, 1e-9);
  check_near ("on the ball / (taken − left)", oil_in_cells (film) / (film->taken - film->left), 1, 1e-12);
  check_near ("told / (taken − left)", film->on_surface / (film->taken - film->left), 1, 1e-12);
  g_free (film);
}

static double
in_row (const BallFilm *film, int row)
{
  double sum = 0;

  for (int column = 0; column < BALL_FILM_COLUMNS; column++)
    sum += film->cell[row + BALL_FILM_PAD][column];
  return sum;
}

/* Oil that comes to lie on one pole of the map lies there as it would on the other. */
static void
test_poles (void)
{
  BallFilm *film = g_new (BallFilm, 1);
  TbShot shot = check_house_shot ();
  TbFriction friction = house_friction ();
  TbBody body;

  check_status ("body", tb_ball_body (&shot.ball, &body), TB_OK);
  ball_film_init (film, &friction, &shot.assumed, &body, NULL, TB_SHOT_OILY_STEP);
  for (int pole = -1; pole <= 1; pole += 2)
    {
      /* The attitude that brings the pole under the ball. */
      TbVec3 out = tb_vec3_scale (body.pap, pole), down = { 0, 0, -1 };
      TbVec3 about = tb_vec3_unit (tb_vec3_cross (out, down), tb_vec3 (1, 0, 0));
      TbQuat attitude = tb_quat_from_rotation (tb_vec3_scale (about, tb_vec3_angle (out, down)));
      Passing passing = { .y = 5, .lane_area = 1e-4, .lane_film = FILM, .turned = 100 * pole, .growth = 1 };

      ball_film_look (film, attitude, tb_vec3 (0, 0, 0), 0, TB_SHOT_OILY_STEP);
      passing.place = film->ahead[0];
      ball_film_pass (film, &passing);
    }
  ball_film_finish (film, 0);
  check_above ("on the pole", in_row (film, 0), 1e-9);
  for (int row = 0; row < 4; row++)
    check_near ("row of one pole less the other's", in_row (film, row) - in_row (film, BALL_FILM_ROWS - 1 - row), 0,
                1e-9 * in_row (film, 0));
  g_free (film);
}

/* Each look meets its own film on top of the lane's. */
static void
test_seen (void)
{
  TbFriction friction = house_friction ();
  const TbContact contact = { .x = 0.1, .y = 8, .load = 1 };
  const double films[] = { 0, FILM }, weights[] = { 0.25, 0.75 };
  const TbBallSpots spots = { 2, films, weights }, none = { 0, NULL, NULL };
  double lane = tb_friction_film (&friction, contact.x, contact.y), told;
  double dry = tb_cover_friction (&friction.cover, &friction.law, lane, 1);
  double wet = tb_cover_friction (&friction.cover, &friction.law, lane + FILM, 1);

  check_above ("the oil on the ball takes friction", dry - wet, 1e-4);
  check_near ("mean of the looks", tb_friction_mean (&friction, &contact, &spots, &told), 0.25 * dry + 0.75 * wet, 1e-15);
  check_near ("film on the lane", told, lane, 0);
  check_near ("a dry ball", tb_friction_mean (&friction, &contact, &none, NULL), dry, 0);
}

/* Oil put down at one end of the lane lies as it does at the other: the edges fold alike. */
static void
test_edges_fold_alike (void)
{
  TbOil *near = g_new0 (TbOil, 1), *far = g_new0 (TbOil, 1);
  const double length = TB_OIL_ROWS * TB_OIL_ROW_LENGTH;

  for (double y = 0.01; y < 0.3; y += 0.03)
    {
      tb_oil_add (near, 0.2, y, 1e-9);
      tb_oil_add (far, 0.2, length - y, 1e-9);
    }
  tb_oil_reflect (near);
  tb_oil_reflect (far);
  for (int row = 0; row < TB_OIL_ROWS; row++)
    for (int column = 0; column < TB_OIL_COLUMNS; column++)
      g_assert_cmpfloat_with_epsilon (tb_oil_cell (near, row, column), tb_oil_cell (far, TB_OIL_ROWS - 1 - row, column),
                                      1e-18);
  check_near ("near / far", tb_oil_volume (near) / tb_oil_volume (far), 1, 1e-12);
  g_free (near);
  g_free (far);
}

/* A cylinder of mass μ, radius r and length l has μr²/2 along its axis and μ(3r² + l²)/12 across it; the sum of a body's
 * three moments does not know which way the axes lie. */
static void
test_hole (void)
{
  TbBall ball = tb_ball_default ();
  TbBody blank, drilled;
  const double r = tb_metres_from_in (0.6), depth = tb_metres_from_in (3), radius = 0.5 * ball.diameter;
  double density = ball.mass / (TB_PI / 6 * ball.diameter * ball.diameter * ball.diameter);
  double missing = r * r / (4 * radius), length = depth - missing, mass = density * TB_PI * r * r * length;
  double out = radius - missing - 0.5 * length, left = ball.mass - mass, shift = mass * out / left;
  double removed = 0.5 * mass * r * r + mass * (3 * r * r + length * length) / 6 + 2 * mass * out * out;

  check_status ("blank", tb_ball_body (&ball, &blank), TB_OK);
  ball.n_holes = 1;
  ball.hole[0] = (TbHole){ .diameter = 2 * r, .depth = depth };
  check_status ("drilled", tb_ball_body (&ball, &drilled), TB_OK);
  check_near ("mass, kg", drilled.mass, left, 1e-12);
  check_near ("sum of moments, kg m²", drilled.moment.x + drilled.moment.y + drilled.moment.z,
              blank.moment.x + blank.moment.y + blank.moment.z - removed - 2 * left * shift * shift, 1e-12);
}

/* The formula of the spinning contact: (3π/16) μ N a · aω/(aω + (15π/16) u), a the spot's radius. */
static void
test_pivot (void)
{
  TbBody ball = check_plain_ball ();
  CheckLane lane;
  TbMotion motion;
  const double spin = 20, slip = 0.5, coefficient = 0.1;

  check_lane_uniform (&lane, coefficient);
  motion = check_motion (&ball, &lane.friction);
  motion.options.no_pivot_friction = false;
  check_set_motion (&motion.state, &ball, tb_vec3 (0, slip, 0), tb_vec3 (0, 0, spin));
  double a = motion.assumed.contact_radius, share = a * spin / (a * spin + 15 * TB_PI / 16 * slip);
  double moment = 3 * TB_PI / 16 * coefficient * ball.mass * TB_STANDARD_GRAVITY * a * share;
  TbForces forces = tb_motion_forces (&motion, &motion.state, false);

  /* The spin fades out below a tenth of a radian a second, which at twenty is an eighty-thousandth. */
  check_near ("braking / formula", forces.angular_acceleration.z / (-moment / ball.moment.z), 1, 2e-5);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/oil-on-ball/balance", test_balance);
  g_test_add_func ("/oil-on-ball/poles", test_poles);
  g_test_add_func ("/oil-on-ball/seen", test_seen);
  g_test_add_func ("/oil-on-ball/edges-fold-alike", test_edges_fold_alike);
  g_test_add_func ("/oil-on-ball/hole", test_hole);
  g_test_add_func ("/oil-on-ball/pivot", test_pivot);
  return g_test_run ();
}
