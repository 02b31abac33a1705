/* The graph of friction, slip and heading, and the bars of a difference.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include <math.h>

#include "../study/study-support.h"
#include "tb-canvas.h"
#include "tb-parts-view.h"
#include "tb-run-graph.h"

typedef struct Labels
{
  guint count, outside;
  double width, height;
} Labels;

static bool
see_label (const char *text, const cairo_rectangle_t *box, void *data)
{
  Labels *labels = data;

  labels->count++;
  if (box->x < -1 || box->y < -1 || box->x + box->width > labels->width + 1
      || box->y + box->height > labels->height + 1)
    {
      g_test_message ("“%s” at %.0f, %.0f", text, box->x, box->y);
      labels->outside++;
    }
  return true;
}

typedef struct Runs
{
  TbRun *before, *after;
} Runs;

static Runs
throw_both (const char *before, const char *after)
{
  g_autoptr (TbSetup) a = setup_with (before);
  g_autoptr (TbSetup) b = setup_with (after);

  return (Runs){ tb_run_new (a), tb_run_new (b) };
}

static void
runs_clear (Runs *runs)
{
  tb_run_unref (runs->before);
  tb_run_unref (runs->after);
}

static TbRunGraphScene
scene_of (const Runs *runs)
{
  TbRunGraphScene scene = tb_run_graph_scene_default ();

  scene.before = &runs->before->path;
  scene.after = &runs->after->path;
  return scene;
}

static Labels
draw (const TbRunGraphScene *scene, int width, int height, double cursor)
{
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_RGB24, width, height);
  cairo_t *cr = cairo_create (surface);
  Labels labels = { .width = width, .height = height };

  tb_canvas_set_label_hook (cr, see_label, &labels);
  tb_run_graph_draw (cr, width, height, scene);
  tb_run_graph_draw_cursor (cr, width, height, scene, cursor);
  g_assert_cmpint (cairo_status (cr), ==, CAIRO_STATUS_SUCCESS);
  cairo_destroy (cr);
  cairo_surface_destroy (surface);
  return labels;
}

static void
test_labels (void)
{
  static const int sizes[][2] = { { 330, 150 }, { 560, 170 }, { 900, 260 }, { 2400, 500 } };
  Runs runs = throw_both ("", "speed_mph=20 grit=500");
  TbRunGraphScene scene = scene_of (&runs);

  for (gsize i = 0; i < G_N_ELEMENTS (sizes); i++)
    for (double feet = 0; feet <= 60; feet += 15)
      {
        Labels labels = draw (&scene, sizes[i][0], sizes[i][1], tb_metres_from_ft (feet));

        g_assert_cmpuint (labels.outside, ==, 0);
        g_assert_cmpuint (labels.count, >, 8);
      }
  runs_clear (&runs);
}

/* A run that falls off, one that never hooks, and none at all. */
static void
test_odd_runs (void)
{
  Runs runs = throw_both ("aim_board=4", "rev_rate_rpm=0 loft_angle_deg=20");
  TbRunGraphScene scene = scene_of (&runs);

  draw (&scene, 500, 160, 5);
  scene.before = NULL;
  draw (&scene, 500, 160, 18);
  scene.after = NULL;
  draw (&scene, 500, 160, 0);
  draw (&scene, 20, 10, 0);
  runs_clear (&runs);
}

/* From the picture to the lane and back; under a lane that is drawn beside it, at that lane's very places. */
static void
test_distance (void)
{
  Runs runs = throw_both ("", "");
  TbRunGraphScene scene = scene_of (&runs);
  cairo_rectangle_t extents;
  double y;

  scene.left = 40;
  scene.right = 440;
  g_assert_true (tb_run_graph_to_distance (500, 160, &scene, 240, &y));
  g_assert_cmpfloat_with_epsilon (y, 0.5 * TB_HEAD_PIN_Y, 1e-9);
  tb_run_graph_cursor_extents (500, 160, &scene, y, &extents);
  g_assert_cmpfloat_with_epsilon (extents.x + 0.5 * extents.width, 240, 1e-9);
  g_assert_false (tb_run_graph_to_distance (500, 160, &scene, 480, &y));
  g_assert_cmpfloat (y, ==, TB_HEAD_PIN_Y);
  g_assert_false (tb_run_graph_to_distance (500, 160, &scene, 0, &y));
  g_assert_cmpfloat (y, ==, 0);
  runs_clear (&runs);
}

/* What is read is what the run has, in both systems of units. */
static void
test_quantities (void)
{
  Runs runs = throw_both ("", "");
  const TbPath *path = &runs.after->path;
  double y = tb_metres_from_ft (30);
  TbSample sample;

  g_assert_true (tb_path_at_distance (path, y, &sample));
  g_assert_cmpfloat_with_epsilon (tb_run_quantity_at (path, TB_RUN_FRICTION, y, true), sample.friction, 1e-9);
  g_assert_cmpfloat_with_epsilon (tb_run_quantity_at (path, TB_RUN_FRICTION, y, false) * 4.4482216,
                                  sample.friction, 1e-6);
  g_assert_cmpfloat_with_epsilon (tb_run_quantity_at (path, TB_RUN_SLIP, y, false), sample.slip / 0.44704,
                                  1e-9);
  g_assert_cmpfloat_with_epsilon (tb_run_quantity_at (path, TB_RUN_SLIP, y, true), sample.slip * 3.6, 1e-9);
  g_assert_cmpfloat_with_epsilon (tb_run_quantity_at (path, TB_RUN_HEADING, y, false),
                                  tb_sample_heading (&sample) * 180 / TB_PI, 1e-9);
  /* In the air a ball rubs on nothing. */
  g_assert_true (isnan (tb_run_quantity_at (path, TB_RUN_FRICTION, tb_metres_from_ft (1), false)));
  runs_clear (&runs);
}

static void
test_parts (void)
{
  const TbPart parts[] = { { "Speed", -5.6, 0 },
                           { "Friction on a dry lane, a name longer than there is room for it", 2.3, 0.4 },
                           { "Grip through oil", 0.01, 0 } };
  TbPartsScene scene = { .theme = tb_theme_light (1), .parts = parts, .n_parts = 3, .digits = 1, .unit = "" };

  for (int width = 240; width <= 640; width += 100)
    {
      int height = (int) ceil (tb_parts_view_height (&scene.theme, 3));
      cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_RGB24, width, height);
      cairo_t *cr = cairo_create (surface);
      Labels labels = { .width = width, .height = height };

      tb_canvas_set_label_hook (cr, see_label, &labels);
      tb_parts_view_draw (cr, width, height, &scene);
      g_assert_cmpuint (labels.count, ==, 6);
      g_assert_cmpuint (labels.outside, ==, 0);
      cairo_destroy (cr);
      cairo_surface_destroy (surface);
    }
}

static int
colored_width (const TbPart *parts, guint n_parts)
{
  TbPartsScene scene
      = { .theme = tb_theme_light (1), .parts = parts, .n_parts = n_parts, .digits = 1, .unit = "" };
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_RGB24, 400, 60);
  cairo_t *cr = cairo_create (surface);
  const guint32 *pixel;
  int left = 400, right = 0;

  tb_parts_view_draw (cr, 400, 60, &scene);
  cairo_destroy (cr);
  cairo_surface_flush (surface);
  pixel = (const guint32 *) (gconstpointer) cairo_image_surface_get_data (surface);
  for (int i = 0; i < 400 * 60; i++)
    /* Bars are the only thing with more red than blue by far. */
    if ((int) (pixel[i] >> 16 & 255) - (int) (pixel[i] & 255) > 100)
      {
        left = MIN (left, i % 400);
        right = MAX (right, i % 400 + 1);
      }
  cairo_surface_destroy (surface);
  return MAX (right - left, 0);
}

/* What is told as 0.0 is not drawn as much: measured, 2 px of 400 for the first and 230 for the second. */
static void
test_nothing_is_no_bar (void)
{
  const TbPart nothing[] = { { "Front", 0.004, 0 }, { "Back", 0.002, 0 } };
  const TbPart something[] = { { "Front", 4, 0 }, { "Back", 2, 0 } };

  g_assert_cmpint (colored_width (nothing, 2), <, 10);
  g_assert_cmpint (colored_width (something, 2), >, 150);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/run-graph/labels", test_labels);
  g_test_add_func ("/run-graph/odd-runs", test_odd_runs);
  g_test_add_func ("/run-graph/distance", test_distance);
  g_test_add_func ("/run-graph/quantities", test_quantities);
  g_test_add_func ("/run-graph/parts", test_parts);
  g_test_add_func ("/run-graph/nothing-is-no-bar", test_nothing_is_no_bar);
  return g_test_run ();
}
