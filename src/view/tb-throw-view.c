/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include "tb-throw-caption.h"
#include "tb-throw-view.h"

/* Letters grow with the picture: at this length of its shorter side, px, they are of their ordinary size. */
#define ORDINARY_SIDE 600.0

const char *const tb_throw_view_names[TB_N_THROW_VIEWS + 1]
    = { "lane", "plan", "sideways", "approach", "ball", "ball-side", "loft", "both", NULL };

const char *
tb_throw_view_label (TbThrowView view)
{
  static const char *const labels[TB_N_THROW_VIEWS] = {
    [TB_THROW_LANE] = N_ ("Lane, as the shape suits"),
    [TB_THROW_PLAN] = N_ ("Lane from above, upright"),
    [TB_THROW_SIDEWAYS] = N_ ("Lane from above, on its side"),
    [TB_THROW_APPROACH] = N_ ("Lane from the approach"),
    [TB_THROW_BALL] = N_ ("Ball from behind"),
    [TB_THROW_BALL_SIDE] = N_ ("Ball from the side"),
    [TB_THROW_LOFT] = N_ ("Release from the side"),
    [TB_THROW_BOTH] = N_ ("Lane and ball"),
  };

  return _ (labels[view]);
}

TbThrowScene
tb_throw_scene_new (const TbRun *before, const TbRun *after)
{
  /* Two runs that are the same would hide each other. */
  gboolean differ = before != NULL && !tb_setup_equal (before->setup, after->setup);

  return (TbThrowScene){
    .theme = tb_theme_light (1), .before = differ ? before : NULL, .after = after, .time = NAN, .rate = 1
  };
}

double
tb_throw_scene_duration (const TbThrowScene *scene)
{
  double before = scene->before != NULL ? tb_path_duration (&scene->before->path) : 0;

  return fmax (before, tb_path_duration (&scene->after->path));
}

double
tb_throw_view_text_scale (int width, int height)
{
  return fmax (1.0, fmin (width, height) / ORDINARY_SIDE);
}

static TbLaneProjection
projection_of (const TbThrowScene *scene, double width, double height)
{
  switch (scene->view)
    {
    case TB_THROW_SIDEWAYS:
      return TB_LANE_PLAN_SIDEWAYS;
    case TB_THROW_APPROACH:
      return TB_LANE_FROM_APPROACH;
    case TB_THROW_LANE:
      return width > height ? TB_LANE_PLAN_SIDEWAYS : TB_LANE_PLAN;
    default:
      return TB_LANE_PLAN;
    }
}

static TbLaneScene
lane_of (const TbThrowScene *scene, double width, double height)
{
  TbLaneScene lane = tb_lane_scene_default ();
  const TbShot *shot = &scene->after->setup->shot;

  lane.theme = scene->theme;
  lane.projection = projection_of (scene, width, height);
  lane.oil = shot->lane.oil;
  lane.oil_scale = shot->lane.pattern_scale;
  lane.before = scene->before != NULL ? &scene->before->path : NULL;
  lane.after = &scene->after->path;
  lane.pocket_low = shot->assumed.pocket_low;
  lane.pocket_high = shot->assumed.pocket_high;
  lane.mirrored = scene->after->path.mirrored;
  return lane;
}

static TbBallScene
ball_of (const TbThrowScene *scene)
{
  TbBallScene ball = tb_ball_scene_default ();
  double duration = tb_path_duration (&scene->after->path);

  ball.theme = scene->theme;
  ball.eye = scene->view == TB_THROW_BALL_SIDE ? TB_BALL_FROM_SIDE : TB_BALL_FROM_BEHIND;
  ball.path = &scene->after->path;
  ball.metric = scene->metric;
  ball.time = isnan (scene->time) ? duration : fmin (scene->time, duration);
  return ball;
}

static void
draw_lane (cairo_t *cr, double width, double height, const TbThrowScene *scene)
{
  TbPageScene page = tb_page_scene_default ();

  page.theme = scene->theme;
  page.lane = lane_of (scene, width, height);
  page.time = scene->time;
  if (scene->view == TB_THROW_BOTH)
    page.ball = ball_of (scene);
  tb_page_view_draw (cr, width, height, &page);
}

static void
draw_ball (cairo_t *cr, double width, double height, const TbThrowScene *scene)
{
  TbBallScene ball = ball_of (scene);

  tb_ball_view_draw (cr, width, height, &ball);
}

static void
draw_loft (cairo_t *cr, double width, double height, const TbThrowScene *scene)
{
  TbLoftScene loft = tb_loft_scene_default ();

  loft.theme = scene->theme;
  loft.before = scene->before != NULL ? &scene->before->path : NULL;
  loft.after = &scene->after->path;
  loft.time = scene->time;
  loft.metric = scene->metric;
  tb_loft_view_draw (cr, width, height, &loft);
}

static void
draw_view (cairo_t *cr, double width, double height, const TbThrowScene *scene)
{
  switch (scene->view)
    {
    case TB_THROW_BALL:
    case TB_THROW_BALL_SIDE:
      draw_ball (cr, width, height, scene);
      break;
    case TB_THROW_LOFT:
      draw_loft (cr, width, height, scene);
      break;
    default:
      draw_lane (cr, width, height, scene);
    }
}

void
tb_throw_view_draw (cairo_t *cr, double width, double height, const TbThrowScene *scene)
{
  double caption = scene->caption ? tb_throw_caption_height (width, height, scene) : 0;

  if (caption > 0)
    {
      cairo_save (cr);
      cairo_translate (cr, 0, height - caption);
      tb_throw_caption_draw (cr, width, caption, scene);
      cairo_restore (cr);
    }
  cairo_save (cr);
  cairo_rectangle (cr, 0, 0, width, height - caption);
  cairo_clip (cr);
  draw_view (cr, width, height - caption, scene);
  cairo_restore (cr);
}
