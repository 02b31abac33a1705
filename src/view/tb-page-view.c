/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "tb-canvas.h"
#include "tb-draw.h"
#include "tb-page-view.h"

/* The lane's share of the page, beside the column and above the row. */
#define LANE_ACROSS 0.60
#define LANE_DOWN 0.62
/* The ball's share of what is left. */
#define BALL_SHARE_COLUMN 0.62
#define BALL_SHARE_ROW 0.5
#define TITLE_SIZE 1.35 /* em */
#define TITLE_ROOM 2.6  /* em */

typedef struct TbPageLayout
{
  cairo_rectangle_t lane, ball, loft;
} TbPageLayout;

TbPageScene
tb_page_scene_default (void)
{
  return (TbPageScene){ .theme = tb_theme_light (1),
                        .lane = tb_lane_scene_default (),
                        .ball = tb_ball_scene_default (),
                        .loft = tb_loft_scene_default (),
                        .time = NAN };
}

static gboolean
has_loft (const TbPageScene *scene)
{
  return scene->loft.before != NULL || scene->loft.after != NULL;
}

/* Ball and loft share what the lane leaves; one that is missing leaves its part to the other. */
static TbPageLayout
lay_page (const TbPageScene *scene, cairo_rectangle_t page)
{
  gboolean ball = scene->ball.path != NULL, loft = has_loft (scene), tall = page.height > page.width;
  double ball_share = ball && loft ? (tall ? BALL_SHARE_ROW : BALL_SHARE_COLUMN) : ball ? 1 : 0;
  TbPageLayout layout = { .lane = page };
  cairo_rectangle_t rest = page;

  if (!ball && !loft)
    return layout;
  if (tall)
    {
      layout.lane.height = round (LANE_DOWN * page.height);
      rest.y += layout.lane.height;
      rest.height -= layout.lane.height;
      layout.ball = layout.loft = rest;
      layout.ball.width = round (ball_share * rest.width);
      layout.loft.x += layout.ball.width;
      layout.loft.width -= layout.ball.width;
    }
  else
    {
      layout.lane.width = round (LANE_ACROSS * page.width);
      rest.x += layout.lane.width;
      rest.width -= layout.lane.width;
      layout.ball = layout.loft = rest;
      layout.ball.height = round (ball_share * rest.height);
      layout.loft.y += layout.ball.height;
      layout.loft.height -= layout.ball.height;
    }
  return layout;
}

static void
begin_part (cairo_t *cr, const cairo_rectangle_t *part)
{
  cairo_save (cr);
  cairo_translate (cr, part->x, part->y);
}

static void
draw_lane (cairo_t *cr, const cairo_rectangle_t *part, const TbPageScene *scene)
{
  TbLaneScene lane = scene->lane;

  lane.theme = scene->theme;
  begin_part (cr, part);
  tb_lane_view_draw (cr, part->width, part->height, &lane);
  if (!isnan (scene->time) && lane.before != NULL)
    tb_lane_view_draw_ball (cr, part->width, part->height, &lane, lane.before, scene->time);
  if (!isnan (scene->time) && lane.after != NULL)
    tb_lane_view_draw_ball (cr, part->width, part->height, &lane, lane.after, scene->time);
  cairo_restore (cr);
}

static void
draw_ball (cairo_t *cr, const cairo_rectangle_t *part, const TbPageScene *scene)
{
  TbBallScene ball = scene->ball;

  if (ball.path == NULL)
    return;
  ball.theme = scene->theme;
  begin_part (cr, part);
  tb_ball_view_draw (cr, part->width, part->height, &ball);
  cairo_restore (cr);
}

static void
draw_loft (cairo_t *cr, const cairo_rectangle_t *part, const TbPageScene *scene)
{
  TbLoftScene loft = scene->loft;

  if (!has_loft (scene))
    return;
  loft.theme = scene->theme;
  begin_part (cr, part);
  tb_loft_view_draw (cr, part->width, part->height, &loft);
  cairo_restore (cr);
}

/* Returns the height that the title takes. */
static double
draw_title (TbCanvas *canvas, const char *title)
{
  TbLabel label = { .text = title, .bold = TRUE, .across = TB_ALIGN_MIDDLE, .down = TB_ALIGN_MIDDLE };

  if (title == NULL)
    return 0;
  label.x = 0.5 * canvas->width;
  label.y = 0.5 * TITLE_ROOM * canvas->em;
  label.size = TITLE_SIZE * canvas->em;
  label.color = canvas->theme.text;
  tb_canvas_try_label (canvas, &label);
  return round (TITLE_ROOM * canvas->em);
}

void
tb_page_view_draw (cairo_t *cr, double width, double height, const TbPageScene *scene)
{
  g_auto (TbCanvas) canvas = { 0 };
  TbPageLayout layout;
  double title;

  cairo_save (cr);
  tb_canvas_init (&canvas, cr, width, height, &scene->theme);
  tb_canvas_fill_background (&canvas);
  if (tb_canvas_has_room (&canvas))
    {
      title = draw_title (&canvas, scene->title);
      layout = lay_page (scene, (cairo_rectangle_t){ 0, title, width, height - title });
      draw_lane (cr, &layout.lane, scene);
      draw_ball (cr, &layout.ball, scene);
      draw_loft (cr, &layout.loft, scene);
    }
  cairo_restore (cr);
}
