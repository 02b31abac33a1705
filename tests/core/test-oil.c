/* The oil film: exact volume, smoothness, edges.
 *
 * Classical: a tensor product of uniform cubic B-splines is twice continuously differentiable, lies between
 * the least and the greatest of its coefficients, and its integral is their sum (C. de Boor, "A Practical
 * Guide to Splines").
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "support.h"

#define EDGE TB_LANE_HALF_WIDTH

static TbOil *
house_copy (void)
{
  return g_memdup2 (check_house_oil (), sizeof (TbOil));
}

/* A film of noise: nothing about it can be right by symmetry. */
static TbOil *
rough_film (guint64 seed)
{
  TbOil *oil = g_new0 (TbOil, 1);

  for (int row = 0; row < TB_OIL_ROWS; row++)
    for (int column = 0; column < TB_OIL_COLUMNS; column++)
      tb_oil_set_cell (oil, row, column, check_uniform (&seed, 0.0, 1e-5));
  tb_oil_reflect (oil);
  return oil;
}

/* Gauss-Legendre of three points in each cell's half: exact for the pieces of a cubic spline. */
static double
integral (const TbOil *oil)
{
  static const double node[] = { -0.7745966692414834, 0.0, 0.7745966692414834 };
  static const double weight[] = { 5.0 / 9.0, 8.0 / 9.0, 5.0 / 9.0 };
  double sum = 0.0, dx = 0.5 * TB_BOARD_WIDTH, dy = 0.5 * TB_OIL_ROW_LENGTH;

  for (int i = 0; i < 2 * TB_OIL_COLUMNS; i++)
    for (int j = 0; j < 2 * TB_OIL_ROWS; j++)
      for (int k = 0; k < 9; k++)
        sum += weight[k / 3] * weight[k % 3]
               * tb_oil_film (oil, EDGE - (i + 0.5 + 0.5 * node[k / 3]) * dx,
                              (j + 0.5 + 0.5 * node[k % 3]) * dy);
  return sum * dx * dy / 4.0;
}

static void
test_house_volume (void)
{
  const TbOil *oil = check_house_oil ();

  g_assert_cmpint (tb_oil_check (oil), ==, TB_OK);
  /* The pattern as its description has it: 24.0 mL, 40 ft, an eighth outside. */
  check_near ("volume, mL", tb_ml_from_cubic_metres (tb_oil_volume (oil)), 24.0, 0.05);
  check_near ("heads in the middle, units", tb_units_from_film (tb_oil_film (oil, 0.0, 0.0)), 45.0, 1.0);
  check_near ("length, ft", tb_ft_from_metres (tb_oil_length (oil, tb_film_from_units (0.05))), 40.0, 0.5);
  check_near ("outside over middle",
              tb_oil_film (oil, tb_x_from_board (3.0), 3.0) / tb_oil_film (oil, 0.0, 3.0), 1.0 / 8.0, 0.001);
}

static void
test_integral_is_volume (void)
{
  g_autofree TbOil *house = house_copy (), *rough = rough_film (3);

  check_near ("house film, integral over volume", integral (house) / tb_oil_volume (house), 1.0, 1e-13);
  check_near ("rough film, integral over volume", integral (rough) / tb_oil_volume (rough), 1.0, 1e-13);
}

static void
test_never_negative (void)
{
  g_autofree TbOil *oil = g_new0 (TbOil, 1);
  guint64 seed = 11;
  double least = INFINITY, greatest = 0.0;

  /* Single cells of film in a dry lane: what interpolates would undershoot beside them. */
  for (int row = 0; row < TB_OIL_ROWS; row += 5)
    for (int column = row % 3; column < TB_OIL_COLUMNS; column += 3)
      tb_oil_set_cell (oil, row, column, 1e-5);
  tb_oil_reflect (oil);
  for (int i = 0; i < 20000; i++)
    {
      double film = tb_oil_film (oil, check_uniform (&seed, -0.7, 0.7), check_uniform (&seed, -1.0, 20.0));

      least = fmin (least, film);
      greatest = fmax (greatest, film);
    }
  check_above ("least film, m", least, 0.0);
  check_below ("greatest film, m", greatest, 1e-5);
}

/* The second derivative along a line, from both sides of a place. */
static void
check_curvature (const TbOil *oil, TbVec3 at, TbVec3 along)
{
  const double step = 1e-4;
  double film[5], left, right;

  for (int i = 0; i < 5; i++)
    {
      TbVec3 place = tb_vec3_add_scaled (at, (i - 2) * step, along);

      film[i] = tb_oil_film (oil, place.x, place.y);
    }
  left = (film[0] - 2 * film[1] + film[2]) / (step * step);
  right = (film[2] - 2 * film[3] + film[4]) / (step * step);
  /* The third derivative jumps: a cubic's second difference moves by so much over 2 steps. */
  check_near ("curvature from both sides, 1/m", left, right, 2.0 * step * 6e-5 / pow (TB_BOARD_WIDTH, 3));
}

static void
test_smooth (void)
{
  g_autofree TbOil *oil = rough_film (7);

  for (int cell = 3; cell < 37; cell += 5)
    {
      check_curvature (oil, tb_vec3 (EDGE - (cell + 0.5) * TB_BOARD_WIDTH, 5.0, 0), tb_vec3 (1, 0, 0));
      check_curvature (oil, tb_vec3 (0.1, (cell + 0.5) * TB_OIL_ROW_LENGTH, 0), tb_vec3 (0, 1, 0));
    }
  /* Level at the edges. */
  check_near ("slope at the edge",
              (tb_oil_film (oil, EDGE, 4.0) - tb_oil_film (oil, EDGE - 1e-6, 4.0)) / 1e-6, 0.0, 2e-8);
}

static void
test_past_the_edges (void)
{
  g_autofree TbOil *oil = rough_film (9);

  for (double y = 0.3; y < 18.0; y += 1.7)
    {
      g_assert_cmpfloat (tb_oil_film (oil, EDGE + 0.3, y), ==, tb_oil_film (oil, EDGE, y));
      g_assert_cmpfloat (tb_oil_film (oil, -EDGE - 0.3, y), ==, tb_oil_film (oil, -EDGE, y));
    }
}

static void
test_mirror (void)
{
  g_autofree TbOil *oil = rough_film (13), *other = g_memdup2 (oil, sizeof *oil);
  guint64 seed = 17;

  tb_oil_mirror (other);
  for (int i = 0; i < 2000; i++)
    {
      double x = check_uniform (&seed, -0.6, 0.6), y = check_uniform (&seed, 0, 19.0);

      if (fabs (tb_oil_film (oil, x, y) - tb_oil_film (other, -x, y)) > 1e-18)
        g_test_fail_printf ("mirrored film differs at %g, %g", x, y);
    }
  tb_oil_mirror (other);
  g_assert_cmpmem (oil, sizeof *oil, other, sizeof *other);
}

static void
test_scale (void)
{
  g_autofree TbOil *oil = house_copy ();
  double volume = tb_oil_volume (oil), film = tb_oil_film (oil, 0.1, 4.0);

  tb_oil_scale (oil, 0.25);
  check_near ("volume", tb_oil_volume (oil) / volume, 0.25, 1e-14);
  check_near ("film", tb_oil_film (oil, 0.1, 4.0) / film, 0.25, 1e-14);
}

static void
check_added (TbOil *oil, double x, double y)
{
  const double drop = tb_cubic_metres_from_ml (0.05);
  double before = tb_oil_volume (oil), film = tb_oil_film (oil, x, y);

  tb_oil_add (oil, x, y, drop);
  tb_oil_reflect (oil);
  check_near ("added, of it", (tb_oil_volume (oil) - before) / drop, 1.0, 1e-10);
  check_above ("film grows there, m", tb_oil_film (oil, x, y) - film, 1e-9);
  tb_oil_add (oil, x, y, -drop);
  tb_oil_reflect (oil);
  check_near ("taken back, of it", (tb_oil_volume (oil) - before) / drop, 0.0, 1e-10);
}

static void
test_add (void)
{
  g_autofree TbOil *oil = house_copy ();

  check_added (oil, 0.1, 6.0);
  check_added (oil, EDGE, 6.0);
  check_added (oil, -EDGE, 0.0);
  check_added (oil, 0.51, TB_OIL_ROWS * TB_OIL_ROW_LENGTH);
}

/* What is spread falls where it was aimed at: the centre of the added oil is the place. */
static void
test_add_is_centred (void)
{
  g_autofree TbOil *oil = g_new0 (TbOil, 1);
  double sum = 0.0, x = 0.0, y = 0.0;

  tb_oil_add (oil, 0.123, 4.567, 1e-7);
  for (int row = 0; row < TB_OIL_ROWS; row++)
    for (int column = 0; column < TB_OIL_COLUMNS; column++)
      {
        double film = tb_oil_cell (oil, row, column);

        sum += film;
        x += film * (EDGE - (column + 0.5) * TB_BOARD_WIDTH);
        y += film * (row + 0.5) * TB_OIL_ROW_LENGTH;
      }
  check_near ("x, m", x / sum, 0.123, 1e-12);
  check_near ("y, m", y / sum, 4.567, 1e-12);
}

static void
check_with_cell (const char *what, double film, TbStatus want)
{
  g_autofree TbOil *oil = house_copy ();

  tb_oil_set_cell (oil, 3, 3, film);
  tb_oil_reflect (oil);
  check_status (what, tb_oil_check (oil), want);
}

static void
test_check (void)
{
  g_autofree TbOil *empty = g_new0 (TbOil, 1);

  tb_oil_clear (empty);
  check_status ("empty", tb_oil_check (empty), TB_ERROR_EMPTY_PATTERN);
  check_with_cell ("negative", -1e-9, TB_ERROR_OUT_OF_RANGE);
  check_with_cell ("not a number", NAN, TB_ERROR_NOT_FINITE);
  check_with_cell ("endless", INFINITY, TB_ERROR_NOT_FINITE);
  check_with_cell ("thick", 1e-5, TB_OK);
}

static TbOilProfile
some_profile (void)
{
  return (TbOilProfile){ .length = tb_metres_from_ft (38.0),
                         .fade = tb_metres_from_ft (3.0),
                         .front = tb_film_from_units (50.0),
                         .back = tb_film_from_units (8.0),
                         .outside_share = 0.25,
                         .outside_x = 4 * TB_BOARD_WIDTH,
                         .inside_x = 14 * TB_BOARD_WIDTH };
}

static void
test_profile (void)
{
  g_autofree TbOil *oil = g_new0 (TbOil, 1);
  TbOilProfile profile = some_profile ();

  check_status ("fill", tb_oil_fill_profile (oil, &profile), TB_OK);
  check_status ("check", tb_oil_check (oil), TB_OK);
  check_near ("half way, units", tb_units_from_film (tb_oil_film (oil, 0, 0.5 * profile.length)),
              50.0 * sqrt (8.0 / 50.0), 0.05);
  check_near ("past the end, m", tb_oil_film (oil, 0, profile.length + 0.5), 0.0, 0.0);
  check_near ("the same on both sides", tb_oil_film (oil, 0.3, 5.0), tb_oil_film (oil, -0.3, 5.0), 1e-20);
}

static void
test_profile_errors (void)
{
  g_autofree TbOil *oil = house_copy (), *before = g_memdup2 (oil, sizeof *oil);
  TbOilProfile profile = some_profile ();

  profile.front = NAN;
  check_status ("front not a number", tb_oil_fill_profile (oil, &profile), TB_ERROR_NOT_FINITE);
  profile = some_profile ();
  profile.length = -1.0;
  check_status ("length below nothing", tb_oil_fill_profile (oil, &profile), TB_ERROR_OUT_OF_RANGE);
  profile = some_profile ();
  profile.outside_share = 1.5;
  check_status ("more outside than inside", tb_oil_fill_profile (oil, &profile), TB_ERROR_OUT_OF_RANGE);
  profile = some_profile ();
  profile.inside_x = profile.outside_x - 0.01;
  check_status ("inside out", tb_oil_fill_profile (oil, &profile), TB_ERROR_OUT_OF_RANGE);
  g_assert_cmpmem (oil, sizeof *oil, before, sizeof *before);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/oil/house-volume", test_house_volume);
  g_test_add_func ("/oil/integral-is-volume", test_integral_is_volume);
  g_test_add_func ("/oil/never-negative", test_never_negative);
  g_test_add_func ("/oil/smooth", test_smooth);
  g_test_add_func ("/oil/past-the-edges", test_past_the_edges);
  g_test_add_func ("/oil/mirror", test_mirror);
  g_test_add_func ("/oil/scale", test_scale);
  g_test_add_func ("/oil/add", test_add);
  g_test_add_func ("/oil/add-is-centred", test_add_is_centred);
  g_test_add_func ("/oil/check", test_check);
  g_test_add_func ("/oil/profile", test_profile);
  g_test_add_func ("/oil/profile-errors", test_profile_errors);
  return g_test_run ();
}
