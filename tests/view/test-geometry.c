/* Places in pictures: there and back, mirrored, and the rectangle of the moving ball.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include <glib.h>
#include "picture.h"
#include "scenes.h"
#include "tb-ball-figure.h"
#include "tb-canvas.h"
#include "tb-lane-layout.h"

#define WIDTH 640
#define HEIGHT 600

static Scenes scenes;
static const TbLaneProjection projections[] = { TB_LANE_PLAN, TB_LANE_PLAN_SIDEWAYS, TB_LANE_FROM_APPROACH };

static void
test_round_trip (void)
{
  for (guint p = 0; p < G_N_ELEMENTS (projections); p++)
    {
      TbLaneScene scene = scenes_lane (&scenes, projections[p]);
      double px, py, x, y;

      for (int i = -9; i <= 9; i++)
        for (int j = 1; j < 20; j++)
          {
            double across = 0.1 * i * TB_LANE_HALF_WIDTH, along = 0.05 * j * TB_PIT_Y;

            tb_lane_view_to_picture (WIDTH, HEIGHT, &scene, across, along, &px, &py);
            g_assert_true (tb_lane_view_to_lane (WIDTH, HEIGHT, &scene, px, py, &x, &y));
            g_assert_cmpfloat_with_epsilon (x, across, 1e-9);
            g_assert_cmpfloat_with_epsilon (y, along, 1e-9);
            g_assert_cmpfloat (px, >, 0);
            g_assert_cmpfloat (px, <, WIDTH);
            g_assert_cmpfloat (py, >, 0);
            g_assert_cmpfloat (py, <, HEIGHT);
          }
    }
}

static void
test_outside (void)
{
  static const double outside[][2] = { { 1.05, 0.5 }, { -1.05, 0.5 }, { 0, -0.01 }, { 0, 1.01 } };

  for (guint p = 0; p < G_N_ELEMENTS (projections); p++)
    {
      TbLaneScene scene = scenes_lane (&scenes, projections[p]);
      double px, py, x = 7, y = 7;

      for (guint i = 0; i < G_N_ELEMENTS (outside); i++)
        {
          tb_lane_view_to_picture (WIDTH, HEIGHT, &scene, outside[i][0] * TB_LANE_HALF_WIDTH,
                                   outside[i][1] * TB_PIT_Y, &px, &py);
          g_assert_false (tb_lane_view_to_lane (WIDTH, HEIGHT, &scene, px, py, &x, &y));
        }
      g_assert_false (tb_lane_view_to_lane (WIDTH, HEIGHT, &scene, 0, 0, &x, &y));
      g_assert_cmpfloat (x, ==, 7);
      g_assert_cmpfloat (y, ==, 7);
    }
}

/* The plan's foul line is below, sideways it is on the left; the right edge of the lane is on the right, or below. */
static void
test_directions (void)
{
  double near[2], far[2], left[2], right[2];

  for (guint p = 0; p < G_N_ELEMENTS (projections); p++)
    {
      TbLaneScene scene = scenes_lane (&scenes, projections[p]);
      gboolean sideways = projections[p] == TB_LANE_PLAN_SIDEWAYS;

      tb_lane_view_to_picture (WIDTH, HEIGHT, &scene, 0, 0, &near[0], &near[1]);
      tb_lane_view_to_picture (WIDTH, HEIGHT, &scene, 0, TB_HEAD_PIN_Y, &far[0], &far[1]);
      tb_lane_view_to_picture (WIDTH, HEIGHT, &scene, -0.5, 9, &left[0], &left[1]);
      tb_lane_view_to_picture (WIDTH, HEIGHT, &scene, 0.5, 9, &right[0], &right[1]);
      g_assert_cmpfloat (sideways ? near[0] : far[1], <, sideways ? far[0] : near[1]);
      g_assert_cmpfloat (sideways ? left[1] : left[0], <, sideways ? right[1] : right[0]);
    }
}

/* A pinhole camera: what is twice as far from the eye is half as wide, and the eye's height is the horizon's. */
static void
test_perspective (void)
{
  TbLaneScene scene = scenes_lane (&scenes, TB_LANE_FROM_APPROACH);
  double distances[] = { 0, 3, 8, 15, TB_HEAD_PIN_Y }, product = 0, horizon = 0;

  for (guint i = 0; i < G_N_ELEMENTS (distances); i++)
    {
      double depth = distances[i] + TB_EYE_BEHIND, left, right, py, width;

      tb_lane_view_to_picture (WIDTH, HEIGHT, &scene, -0.5, distances[i], &left, &py);
      tb_lane_view_to_picture (WIDTH, HEIGHT, &scene, 0.5, distances[i], &right, &py);
      width = right - left;
      if (i == 0)
        {
          product = width * depth;
          horizon = py - width * TB_EYE_HEIGHT;
        }
      g_assert_cmpfloat_with_epsilon (width * depth, product, 1e-6 * product);
      g_assert_cmpfloat_with_epsilon (py - width * TB_EYE_HEIGHT, horizon, 1e-6);
    }
}

static bool
no_labels (const char *text, const cairo_rectangle_t *box, void *data)
{
  return false;
}

static cairo_surface_t *
draw_without_text (const TbLaneScene *scene)
{
  cairo_surface_t *picture = picture_new (WIDTH, HEIGHT);
  cairo_t *cr = cairo_create (picture);

  tb_canvas_set_label_hook (cr, no_labels, NULL);
  tb_lane_view_draw (cr, WIDTH, HEIGHT, scene);
  cairo_destroy (cr);
  cairo_surface_flush (picture);
  return picture;
}

/* Share of the pixels on the lane that differ from those of the other picture in the mirrored place. */
static double
mirror_difference (cairo_surface_t *a, cairo_surface_t *b, const TbLaneScene *scene)
{
  gboolean sideways = scene->projection == TB_LANE_PLAN_SIDEWAYS;
  g_auto (TbCanvas) canvas = { 0 };
  TbLaneLayout layout;
  TbPoint middle;
  double x, y;
  int twice, count = 0, over = 0;

  tb_canvas_init (&canvas, NULL, WIDTH, HEIGHT, &scene->theme);
  tb_lane_layout_init (&layout, &canvas, scene);
  middle = tb_lane_layout_point (&layout, 0, 9, 0);
  twice = (int) lround (2 * (sideways ? middle.y : middle.x));
  for (int j = 0; j < HEIGHT; j++)
    for (int i = 0; i < WIDTH; i++)
      if (tb_lane_layout_floor (&layout, (TbPoint){ i + 0.5, j + 0.5 }, &x, &y))
        {
          guint32 original = picture_pixel (a, i, j);
          guint32 mirrored = sideways ? picture_pixel (b, i, twice - 1 - j) : picture_pixel (b, twice - 1 - i, j);

          over += picture_pixel_difference (original, mirrored) > PICTURE_CHANNEL;
          count++;
        }
  g_assert_cmpint (count, >, WIDTH * HEIGHT / 8);
  return (double) over / count;
}

/* The line in the middle of the lane is one pixel wide, and a pin is lit from one side (0.0001, 0.0072, 0.0097). */
#define MIRROR_SHARE 0.015

static void
test_mirror (void)
{
  TbOil *mirrored = g_memdup2 (&scenes.lopsided, sizeof (TbOil));

  tb_oil_mirror (mirrored);
  for (guint p = 0; p < G_N_ELEMENTS (projections); p++)
    {
      TbLaneScene right = scenes_lane (&scenes, projections[p]), left = scenes_left_lane (&scenes, projections[p]);
      cairo_surface_t *a, *b, *c;
      double share, other;

      right.oil = &scenes.lopsided;
      left.oil = mirrored;
      a = draw_without_text (&right);
      b = draw_without_text (&left);
      left.oil = &scenes.lopsided;
      c = draw_without_text (&left);
      share = mirror_difference (a, b, &right);
      other = mirror_difference (a, c, &right);
      g_test_message ("projection %u: %.4f of the pixels differ, %.4f on the wrong oil", p, share, other);
      g_assert_cmpfloat (share, <, MIRROR_SHARE);
      g_assert_cmpfloat (other, >, 10 * MIRROR_SHARE);
      cairo_surface_destroy (a);
      cairo_surface_destroy (b);
      cairo_surface_destroy (c);
    }
  g_free (mirrored);
}

/* A left-hander's ball is seen the other way round, and nothing else. */
static void
test_ball_mirror (void)
{
  for (int eye = TB_BALL_FROM_BEHIND; eye <= TB_BALL_FROM_SIDE; eye++)
    {
      TbBallScene right = scenes_ball (&scenes, (TbBallEye) eye, 1.1), left = right;
      TbBallFigure a, b;

      left.path = &scenes.left_pocket->path;
      g_assert_true (tb_ball_figure_init (&a, &right));
      g_assert_true (tb_ball_figure_init (&b, &left));
      for (int i = 0; i < 50; i++)
        {
          TbVec3 on_ball = tb_vec3_unit (tb_vec3 (cos (i), sin (2 * i), cos (3 * i)), tb_vec3 (0, 0, 1));
          TbSeen seen = tb_ball_figure_see_on_ball (&a, on_ball), other = tb_ball_figure_see_on_ball (&b, on_ball);

          g_assert_cmpfloat (seen.right, ==, -other.right);
          g_assert_cmpfloat (seen.up, ==, other.up);
          g_assert_cmpfloat (seen.near, ==, other.near);
        }
    }
}

/* From behind, the front of the ball is the bowler's; from the side, the pins are on the right. */
static void
test_ball_eye (void)
{
  TbBallScene scene = scenes_ball (&scenes, TB_BALL_FROM_BEHIND, 1);
  TbBallFigure figure;

  g_assert_true (tb_ball_figure_init (&figure, &scene));
  g_assert_cmpfloat (tb_ball_figure_see (&figure, tb_vec3 (0, -1, 0)).near, ==, 1);
  g_assert_cmpfloat (tb_ball_figure_see (&figure, tb_vec3 (1, 0, 0)).right, ==, 1);
  scene.eye = TB_BALL_FROM_SIDE;
  g_assert_true (tb_ball_figure_init (&figure, &scene));
  g_assert_cmpfloat (tb_ball_figure_see (&figure, tb_vec3 (1, 0, 0)).near, ==, 1);
  g_assert_cmpfloat (tb_ball_figure_see (&figure, tb_vec3 (0, 1, 0)).right, ==, 1);
  g_assert_cmpfloat (tb_ball_figure_see (&figure, tb_vec3 (0, 0, 1)).up, ==, 1);
}

static gboolean
inside (const cairo_rectangle_t *box, int x, int y)
{
  return x >= box->x && x < box->x + box->width && y >= box->y && y < box->y + box->height;
}

/* Draws the ball over a picture; every pixel that changes must lie in its rectangle, and the rectangle must be small. */
static void
check_extents (cairo_surface_t *plain, const TbLaneScene *scene, const TbPath *path, double time)
{
  cairo_surface_t *picture = picture_new (WIDTH, HEIGHT);
  cairo_t *cr = cairo_create (picture);
  cairo_rectangle_t extents;
  int changed = 0;

  cairo_set_source_surface (cr, plain, 0, 0);
  cairo_paint (cr);
  tb_lane_view_draw_ball (cr, WIDTH, HEIGHT, scene, path, time);
  cairo_destroy (cr);
  cairo_surface_flush (picture);
  tb_lane_view_ball_extents (WIDTH, HEIGHT, scene, path, time, &extents);
  for (int y = 0; y < HEIGHT; y++)
    for (int x = 0; x < WIDTH; x++)
      if (picture_pixel (picture, x, y) != picture_pixel (plain, x, y))
        {
          g_assert_true (inside (&extents, x, y));
          changed++;
        }
  g_assert_cmpint (changed, >, 0);
  g_assert_cmpfloat (extents.width * extents.height, <, 0.12 * WIDTH * HEIGHT);
  g_assert_cmpfloat (extents.x, ==, floor (extents.x));
  g_assert_cmpfloat (extents.y, ==, floor (extents.y));
  cairo_surface_destroy (picture);
}

static void
test_extents (void)
{
  for (guint p = 0; p < G_N_ELEMENTS (projections); p++)
    {
      TbLaneScene scene = scenes_lane (&scenes, projections[p]);
      cairo_surface_t *plain;

      scene.after = &scenes.lofted->path;
      plain = draw_without_text (&scene);
      for (double time = 0; time < 2.6; time += 0.2)
        {
          check_extents (plain, &scene, scene.before, time);
          check_extents (plain, &scene, scene.after, time);
        }
      check_extents (plain, &scene, &scenes.gutter->path, 5);
      cairo_surface_destroy (plain);
    }
}

/* The exact outline of a sphere against rays: a point just inside the drawn outline sees the ball, one just outside
 * does not. */
static void
test_ball_outline (void)
{
  TbLaneScene scene = scenes_lane (&scenes, TB_LANE_FROM_APPROACH);
  const TbPath *path = scene.after;
  cairo_rectangle_t extents;
  double left, right, py, scale;
  TbSample sample;

  for (double time = 0.3; time < 2; time += 0.5)
    {
      tb_path_at_time (path, time, &sample);
      tb_lane_view_ball_extents (WIDTH, HEIGHT, &scene, path, time, &extents);
      tb_lane_view_to_picture (WIDTH, HEIGHT, &scene, sample.position.x - 0.5, sample.position.y, &left, &py);
      tb_lane_view_to_picture (WIDTH, HEIGHT, &scene, sample.position.x + 0.5, sample.position.y, &right, &py);
      scale = right - left;
      /* Twice the radius, stretched by at most an eighth for looking down at it, and the margin. */
      g_assert_cmpfloat (extents.width, >, 2 * scale * path->body.radius);
      g_assert_cmpfloat (extents.width, <, 2.25 * scale * path->body.radius + 12);
      /* It stands on the floor: its lowest point is at its own place on the lane, a little below in the picture. */
      g_assert_cmpfloat (extents.y + extents.height, >, py);
      g_assert_cmpfloat (extents.y, <, py - 1.5 * scale * path->body.radius);
    }
}

/* However small, a picture can be drawn; a widget is first given no room at all. */
static void
draw_every_view (cairo_t *cr, int width, int height)
{
  TbPageScene page = scenes_page (&scenes);
  TbBallScene ball = scenes_ball (&scenes, TB_BALL_FROM_SIDE, 1);
  TbLoftScene loft = scenes_loft (&scenes);

  tb_page_view_draw (cr, width, height, &page);
  tb_ball_view_draw (cr, width, height, &ball);
  tb_loft_view_draw (cr, width, height, &loft);
  for (guint p = 0; p < G_N_ELEMENTS (projections); p++)
    {
      TbLaneScene scene = scenes_lane (&scenes, projections[p]);
      cairo_rectangle_t extents;
      double x, y;

      scene.theme = tb_theme_light (2.5);
      tb_lane_view_draw (cr, width, height, &scene);
      tb_lane_view_draw_ball (cr, width, height, &scene, scene.after, 1);
      tb_lane_view_ball_extents (width, height, &scene, scene.after, 1, &extents);
      g_assert_true (isfinite (extents.x + extents.y + extents.width + extents.height));
      tb_lane_view_to_picture (width, height, &scene, 0, 1, &x, &y);
      g_assert_true (isfinite (x + y));
      tb_lane_view_to_lane (width, height, &scene, 0.5 * width, 0.5 * height, &x, &y);
    }
}

static void
test_tiny (void)
{
  static const int sides[] = { 0, 1, 7, 40, 71, 72, 75, 90, 120, 160, 239 };
  cairo_surface_t *picture = picture_new (240, 240);

  for (guint i = 0; i < G_N_ELEMENTS (sides); i++)
    for (guint j = 0; j < G_N_ELEMENTS (sides); j++)
      {
        cairo_t *cr = cairo_create (picture);

        draw_every_view (cr, sides[i], sides[j]);
        g_assert_cmpint (cairo_status (cr), ==, CAIRO_STATUS_SUCCESS);
        cairo_destroy (cr);
      }
  cairo_surface_destroy (picture);
}

/* Runs that are not there, or have kept no samples. */
static void
test_nothing_to_draw (void)
{
  cairo_surface_t *picture = picture_new (WIDTH, HEIGHT);
  cairo_t *cr = cairo_create (picture);
  TbPath empty = { .count = 0 };
  TbLaneScene lane = tb_lane_scene_default ();
  TbBallScene ball = tb_ball_scene_default ();
  TbLoftScene loft = tb_loft_scene_default ();
  TbPageScene page = tb_page_scene_default ();
  cairo_rectangle_t extents;

  tb_lane_view_draw (cr, WIDTH, HEIGHT, &lane);
  tb_ball_view_draw (cr, WIDTH, HEIGHT, &ball);
  tb_loft_view_draw (cr, WIDTH, HEIGHT, &loft);
  tb_page_view_draw (cr, WIDTH, HEIGHT, &page);
  lane.before = lane.after = ball.path = loft.before = loft.after = &empty;
  tb_lane_view_draw (cr, WIDTH, HEIGHT, &lane);
  tb_lane_view_draw_ball (cr, WIDTH, HEIGHT, &lane, &empty, 1);
  tb_lane_view_ball_extents (WIDTH, HEIGHT, &lane, &empty, 1, &extents);
  g_assert_cmpfloat (extents.width, ==, 0);
  tb_ball_view_draw (cr, WIDTH, HEIGHT, &ball);
  tb_loft_view_draw (cr, WIDTH, HEIGHT, &loft);
  g_assert_cmpint (cairo_status (cr), ==, CAIRO_STATUS_SUCCESS);
  cairo_destroy (cr);
  cairo_surface_destroy (picture);
}

/* How far it goes is said in numbers that need not be any. */
static void
test_loft_reach (void)
{
  static const double reaches[] = { NAN, INFINITY, -INFINITY, 0, -20, 1e6 };
  cairo_surface_t *picture = picture_new (WIDTH, HEIGHT);
  cairo_t *cr = cairo_create (picture);
  TbLoftScene loft = scenes_loft (&scenes);

  for (guint i = 0; i < G_N_ELEMENTS (reaches); i++)
    {
      loft.shown_to_ft = reaches[i];
      tb_loft_view_draw (cr, WIDTH, HEIGHT, &loft);
      g_assert_cmpint (cairo_status (cr), ==, CAIRO_STATUS_SUCCESS);
    }
  cairo_destroy (cr);
  cairo_surface_destroy (picture);
}

int
main (int argc, char **argv)
{
  int status;

  g_test_init (&argc, &argv, NULL);
  scenes_init (&scenes);
  g_test_add_func ("/geometry/round-trip", test_round_trip);
  g_test_add_func ("/geometry/outside", test_outside);
  g_test_add_func ("/geometry/directions", test_directions);
  g_test_add_func ("/geometry/perspective", test_perspective);
  g_test_add_func ("/geometry/mirror", test_mirror);
  g_test_add_func ("/geometry/ball-mirror", test_ball_mirror);
  g_test_add_func ("/geometry/ball-eye", test_ball_eye);
  g_test_add_func ("/geometry/extents", test_extents);
  g_test_add_func ("/geometry/ball-outline", test_ball_outline);
  g_test_add_func ("/geometry/tiny", test_tiny);
  g_test_add_func ("/geometry/nothing-to-draw", test_nothing_to_draw);
  g_test_add_func ("/geometry/loft-reach", test_loft_reach);
  status = g_test_run ();
  scenes_clear (&scenes);
  return status;
}
