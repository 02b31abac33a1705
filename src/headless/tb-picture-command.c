/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"
#include "tb-picture-command.h"

#include "tb-export.h"
#include "tb-page-view.h"

/* Letters grow with the picture: at this length of its shorter side they are of their ordinary size. */
#define ORDINARY_SIDE 600.0

typedef struct Picture
{
  TbPictureView view;
  TbPageScene page;
} Picture;

static TbLaneScene
lane_scene (const TbRun *before, const TbRun *after, gboolean wide)
{
  TbLaneScene scene = tb_lane_scene_default ();
  const TbShot *shot = &after->setup->shot;

  scene.projection = wide ? TB_LANE_PLAN_SIDEWAYS : TB_LANE_PLAN;
  scene.oil = shot->lane.oil;
  scene.oil_scale = shot->lane.pattern_scale;
  scene.before = before ? &before->path : NULL;
  scene.after = &after->path;
  scene.pocket_low = shot->assumed.pocket_low;
  scene.pocket_high = shot->assumed.pocket_high;
  scene.mirrored = after->path.mirrored;
  return scene;
}

static Picture
make_picture (const TbRequest *request, TbRun *runs[TB_N_SIDES])
{
  /* Two runs that are the same would hide each other. */
  const TbRun *before = tb_setup_equal (runs[0]->setup, runs[1]->setup) ? NULL : runs[TB_SIDE_BEFORE];
  const TbRun *after = runs[TB_SIDE_AFTER];
  gboolean wide = request->width > request->height && request->view != TB_PICTURE_BOTH;
  Picture picture = { .view = request->view, .page = tb_page_scene_default () };
  TbTheme theme = tb_theme_light (MAX (1.0, MIN (request->width, request->height) / ORDINARY_SIDE));

  picture.page.lane = lane_scene (before, after, wide);
  picture.page.ball = tb_ball_scene_default ();
  picture.page.ball.path = &after->path;
  picture.page.ball.time = tb_path_duration (&after->path);
  picture.page.loft = tb_loft_scene_default ();
  picture.page.loft.before = before ? &before->path : NULL;
  picture.page.loft.after = &after->path;
  picture.page.theme = picture.page.lane.theme = picture.page.ball.theme = picture.page.loft.theme = theme;
  return picture;
}

static void
draw (cairo_t *cr, double width, double height, gpointer data)
{
  Picture *picture = data;

  switch (picture->view)
    {
    case TB_PICTURE_LANE:
      tb_lane_view_draw (cr, width, height, &picture->page.lane);
      break;
    case TB_PICTURE_BALL:
      tb_ball_view_draw (cr, width, height, &picture->page.ball);
      break;
    case TB_PICTURE_LOFT:
      tb_loft_view_draw (cr, width, height, &picture->page.loft);
      break;
    case TB_PICTURE_BOTH:
    default:
      picture->page.loft.before = picture->page.loft.after = NULL;
      tb_page_view_draw (cr, width, height, &picture->page);
    }
}

static gboolean export(const TbRequest *request, Picture *picture, const char *filename, GError **error)
{
  g_autoptr (GError) problem = NULL;
  gboolean asked;

  if (tb_export_picture (filename, request->width, request->height, draw, picture, &problem))
    return TRUE;
  /* A name or a size that will not do is the user's; the rest is the disk's. */
  asked = g_error_matches (problem, TB_EXPORT_ERROR, TB_EXPORT_ERROR_FORMAT)
          || g_error_matches (problem, TB_EXPORT_ERROR, TB_EXPORT_ERROR_SIZE);
  /* The system's sentences come without their full stop. */
  g_set_error (error, TB_HEADLESS_ERROR, asked ? TB_EXIT_USAGE : TB_EXIT_FILE, "%s%s", problem->message,
               g_str_has_suffix (problem->message, ".") ? "" : ".");
  return FALSE;
}

gboolean
tb_picture_command (TbRequest *request, const char *filename, GError **error)
{
  TbRun *runs[TB_N_SIDES] = { NULL };
  gboolean done = FALSE;

  if (tb_request_throw (request, runs, error))
    {
      Picture picture = make_picture (request, runs);
      done = export(request, &picture, filename, error);
    }
  for (int side = 0; side < TB_N_SIDES; side++)
    g_clear_pointer (&runs[side], tb_run_unref);
  return done;
}
