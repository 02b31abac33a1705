/* How long a picture takes: ms of processor time, at 1080p and at 4K, on an image surface.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include <glib.h>
#include <stdlib.h>
#include <time.h>
#include "picture.h"
#include "scenes.h"

#define ROUNDS 40
/* Goals, ms, on an ordinary machine. */
#define GOAL_1080P 6.0
#define GOAL_4K 15.0

static Scenes scenes;

typedef void (*BenchDraw) (cairo_t *cr, double width, double height);

static TbTheme
theme_for (double width, double height)
{
  return tb_theme_light (tb_theme_suitable_scale (width, height));
}

static void
draw_lane (cairo_t *cr, double width, double height, TbLaneProjection projection)
{
  TbLaneScene scene = scenes_lane (&scenes, projection);

  scene.theme = theme_for (width, height);
  tb_lane_view_draw (cr, width, height, &scene);
}

static void
draw_plan (cairo_t *cr, double width, double height)
{
  draw_lane (cr, width, height, TB_LANE_PLAN);
}

/* What is drawn when a slider is dragged: the ground is kept. */
static void
draw_runs (cairo_t *cr, double width, double height)
{
  TbLaneScene scene = scenes_lane (&scenes, TB_LANE_PLAN);

  scene.theme = theme_for (width, height);
  tb_lane_view_draw_runs (cr, width, height, &scene);
}

static void
draw_sideways (cairo_t *cr, double width, double height)
{
  draw_lane (cr, width, height, TB_LANE_PLAN_SIDEWAYS);
}

static void
draw_approach (cairo_t *cr, double width, double height)
{
  draw_lane (cr, width, height, TB_LANE_FROM_APPROACH);
}

/* The ball of one frame, in its rectangle. */
static void
draw_moving_ball (cairo_t *cr, double width, double height)
{
  TbLaneScene scene = scenes_lane (&scenes, TB_LANE_PLAN);
  cairo_rectangle_t extents;

  scene.theme = theme_for (width, height);
  tb_lane_view_ball_extents (width, height, &scene, scene.after, 1.5, &extents);
  tb_lane_view_draw_ball (cr, width, height, &scene, scene.after, 1.5);
}

static void
draw_ball (cairo_t *cr, double width, double height)
{
  TbBallScene scene = scenes_ball (&scenes, TB_BALL_FROM_BEHIND, 1.5);

  scene.theme = theme_for (width, height);
  tb_ball_view_draw (cr, width, height, &scene);
}

static void
draw_loft (cairo_t *cr, double width, double height)
{
  TbLoftScene scene = scenes_loft (&scenes);

  scene.theme = theme_for (width, height);
  tb_loft_view_draw (cr, width, height, &scene);
}

static int
compare_times (const void *a, const void *b)
{
  double x = *(const double *) a, y = *(const double *) b;

  return (x > y) - (x < y);
}

/* ms of this process; other programs do not count. */
static double
processor_time (void)
{
  struct timespec now;

  clock_gettime (CLOCK_PROCESS_CPUTIME_ID, &now);
  return 1e3 * (double) now.tv_sec + 1e-6 * (double) now.tv_nsec;
}

/* The median of many rounds, ms. The first picture of a process is slow and not counted. */
static double
time_picture (BenchDraw draw, int width, int height)
{
  cairo_surface_t *picture = picture_new (width, height);
  cairo_t *cr = cairo_create (picture);
  double times[ROUNDS];

  draw (cr, width, height);
  for (int i = 0; i < ROUNDS; i++)
    {
      double start = processor_time ();

      draw (cr, width, height);
      times[i] = processor_time () - start;
    }
  qsort (times, ROUNDS, sizeof times[0], compare_times);
  cairo_destroy (cr);
  cairo_surface_destroy (picture);
  return times[ROUNDS / 2];
}

int
main (void)
{
  static const struct
  {
    const char *name;
    BenchDraw draw;
  } pictures[] = { { "lane, plan", draw_plan },
                   { "lane, plan, runs only", draw_runs },
                   { "lane, sideways", draw_sideways },
                   { "lane, from the approach", draw_approach },
                   { "moving ball", draw_moving_ball },
                   { "ball", draw_ball },
                   { "loft", draw_loft } };

  scenes_init (&scenes);
  g_print ("%-26s %10s %10s   goal for a lane %.0f and %.0f\n", "ms a picture", "1920x1080", "3840x2160", GOAL_1080P,
           GOAL_4K);
  for (guint i = 0; i < G_N_ELEMENTS (pictures); i++)
    g_print ("%-26s %10.2f %10.2f\n",
             pictures[i].name,
             time_picture (pictures[i].draw, 1920, 1080),
             time_picture (pictures[i].draw, 3840, 2160));
  scenes_clear (&scenes);
  return 0;
}
