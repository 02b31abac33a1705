/* Pictures against stored ones, and a proof that the comparison can fail.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include <glib.h>
#include "picture.h"
#include "scenes.h"

static Scenes scenes;

typedef struct Canvas
{
  cairo_surface_t *picture;
  cairo_t *cr;
} Canvas;

static Canvas
new_canvas (int width, int height)
{
  Canvas canvas = { .picture = picture_new (width, height) };

  canvas.cr = cairo_create (canvas.picture);
  return canvas;
}

static void
finish (Canvas *canvas, const char *name)
{
  g_assert_cmpint (cairo_status (canvas->cr), ==, CAIRO_STATUS_SUCCESS);
  cairo_destroy (canvas->cr);
  if (name != NULL)
    picture_assert_golden (canvas->picture, name);
  cairo_surface_destroy (canvas->picture);
}

static void
check_lane (const char *name, int width, int height, const TbLaneScene *scene)
{
  Canvas canvas = new_canvas (width, height);

  tb_lane_view_draw (canvas.cr, width, height, scene);
  if (scene->before != NULL)
    tb_lane_view_draw_ball (canvas.cr, width, height, scene, scene->before, 1.5);
  if (scene->after != NULL)
    tb_lane_view_draw_ball (canvas.cr, width, height, scene, scene->after, 1.5);
  finish (&canvas, name);
}

static void
check_ball (const char *name, int width, int height, const TbBallScene *scene)
{
  Canvas canvas = new_canvas (width, height);

  tb_ball_view_draw (canvas.cr, width, height, scene);
  finish (&canvas, name);
}

static void
check_loft (const char *name, int width, int height, const TbLoftScene *scene)
{
  Canvas canvas = new_canvas (width, height);

  tb_loft_view_draw (canvas.cr, width, height, scene);
  finish (&canvas, name);
}

static void
test_plan (void)
{
  TbLaneScene scene = scenes_lane (&scenes, TB_LANE_PLAN);

  check_lane ("lane-plan", 480, 640, &scene);
  scene.cursor_y = tb_metres_from_ft (33);
  check_lane ("lane-plan-reading", 480, 640, &scene);
  scene.cursor_y = NAN;
  scene.theme = tb_theme_dark (2);
  check_lane ("lane-plan-dark-large-type", 640, 800, &scene);
}

static void
test_plan_left (void)
{
  TbLaneScene scene = scenes_left_lane (&scenes, TB_LANE_PLAN);

  scene.oil = &scenes.lopsided;
  check_lane ("lane-plan-left", 480, 640, &scene);
}

static void
test_plan_gutter (void)
{
  TbLaneScene scene = scenes_lane (&scenes, TB_LANE_PLAN);

  scene.after = &scenes.gutter->path;
  check_lane ("lane-plan-gutter", 480, 640, &scene);
}

static void
test_plan_bare (void)
{
  TbLaneScene scene = scenes_lane (&scenes, TB_LANE_PLAN);

  scene.before = scene.after = NULL;
  scene.oil = NULL;
  check_lane ("lane-plan-bare", 320, 480, &scene);
}

static void
test_sideways (void)
{
  TbLaneScene scene = scenes_lane (&scenes, TB_LANE_PLAN_SIDEWAYS);

  scene.theme = tb_theme_contrast (1.3);
  check_lane ("lane-sideways-contrast", 960, 420, &scene);
}

static void
test_approach (void)
{
  TbLaneScene scene = scenes_lane (&scenes, TB_LANE_FROM_APPROACH);

  check_lane ("lane-approach", 720, 560, &scene);
  scene.theme = tb_theme_dark (1);
  scene.after = &scenes.lofted->path;
  check_lane ("lane-approach-dark-lofted", 480, 640, &scene);
}

static void
test_ball (void)
{
  TbBallScene scene = scenes_ball (&scenes, TB_BALL_FROM_BEHIND, 1.5);

  check_ball ("ball-behind", 360, 360, &scene);
  scene = scenes_ball (&scenes, TB_BALL_FROM_SIDE, 0.05);
  scene.theme = tb_theme_dark (1);
  check_ball ("ball-side-dark-flight", 360, 360, &scene);
  scene = scenes_ball (&scenes, TB_BALL_FROM_BEHIND, 2.2);
  scene.theme = tb_theme_contrast (1.5);
  scene.path = &scenes.left_pocket->path;
  check_ball ("ball-left-contrast", 480, 420, &scene);
}

static void
test_loft (void)
{
  TbLoftScene scene = scenes_loft (&scenes);

  check_loft ("loft", 420, 280, &scene);
  scene.metric = true;
  check_loft ("loft-metric", 420, 280, &scene);
  scene.metric = false;
  scene.theme = tb_theme_dark (1.4);
  scene.before = NULL;
  scene.time = 0.15;
  check_loft ("loft-dark-moving", 420, 280, &scene);
}

static void
test_page (void)
{
  TbPageScene scene = scenes_page (&scenes);
  Canvas canvas = new_canvas (1280, 800);

  tb_page_view_draw (canvas.cr, 1280, 800, &scene);
  finish (&canvas, "page");
}

/* A run half a board off, and another shade of oil, must not pass for the same picture. */
static void
test_can_fail (void)
{
  SyntheticShape moved = synthetic_faster;
  TbLaneScene scene = scenes_lane (&scenes, TB_LANE_PLAN), other = scene;
  Canvas a = new_canvas (480, 640), b = new_canvas (480, 640);
  PictureDifference difference;
  Synthetic *run;

  moved.hook_boards -= 0.5;
  run = synthetic_new (&moved);
  other.after = &run->path;
  tb_lane_view_draw (a.cr, 480, 640, &scene);
  tb_lane_view_draw (b.cr, 480, 640, &other);
  difference = picture_compare (a.picture, b.picture);
  g_assert_true (difference.same_size);
  g_assert_cmpfloat (difference.share, >, PICTURE_SHARE); /* 0.0041 */
  cairo_surface_destroy (difference.picture);

  other = scene;
  other.oil_scale = 0.8;
  tb_lane_view_draw (b.cr, 480, 640, &other);
  difference = picture_compare (a.picture, b.picture);
  g_assert_cmpfloat (difference.share, >, PICTURE_SHARE);
  cairo_surface_destroy (difference.picture);
  g_free (run);
  finish (&a, NULL);
  finish (&b, NULL);
}

/* The same picture twice is the same picture. */
static void
test_repeats (void)
{
  TbPageScene scene = scenes_page (&scenes);
  Canvas a = new_canvas (900, 600), b = new_canvas (900, 600);
  PictureDifference difference;

  tb_page_view_draw (a.cr, 900, 600, &scene);
  tb_page_view_draw (b.cr, 900, 600, &scene);
  difference = picture_compare (a.picture, b.picture);
  g_assert_cmpint (difference.worst, ==, 0);
  cairo_surface_destroy (difference.picture);
  finish (&a, NULL);
  finish (&b, NULL);
}

int
main (int argc, char **argv)
{
  int status;

  g_test_init (&argc, &argv, NULL);
  scenes_init (&scenes);
  g_test_add_func ("/golden/plan", test_plan);
  g_test_add_func ("/golden/plan-left", test_plan_left);
  g_test_add_func ("/golden/plan-gutter", test_plan_gutter);
  g_test_add_func ("/golden/plan-bare", test_plan_bare);
  g_test_add_func ("/golden/sideways", test_sideways);
  g_test_add_func ("/golden/approach", test_approach);
  g_test_add_func ("/golden/ball", test_ball);
  g_test_add_func ("/golden/loft", test_loft);
  g_test_add_func ("/golden/page", test_page);
  g_test_add_func ("/golden/can-fail", test_can_fail);
  g_test_add_func ("/golden/repeats", test_repeats);
  status = g_test_run ();
  scenes_clear (&scenes);
  return status;
}
