/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"
#include "tb-guess-view.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "tb-canvas.h"
#include "tb-draw.h"
#include "tb-fill.h"
#include "tb-lane-layout.h"

/* Sizes, em: the stem from the line to the handle, the handle, the ring of the focus, the arrows beside the
 * handle, the head of the pointer, the mark of the answer, and how far the distance's bar and label are from
 * the line. */
#define STEM 3.0
#define HANDLE 1.15
#define RING 1.5
#define ARROW_FROM 1.5
#define ARROW_TO 2.1
#define ARROW_HEAD 0.55
#define POINT 0.8
#define ANSWER 0.6
#define BAR 1.1
#define LABEL 0.5
/* Text in the handle, em. */
#define HANDLE_TEXT 0.9
/* All around the line and the marker; a label may stand out. */
#define ROOM 6.0
#define LABEL_ROOM 8.0
/* Lines, px of a path. */
#define LINE_WIDTH 0.8
#define STEM_WIDTH 1.0
#define BAR_WIDTH 1.2
#define DASH 0.5
#define GAP 0.4
#define WAITING_ALPHA 0.75

static double
x_of_board (const TbGuessScene *scene, double board)
{
  return tb_lane_x (scene->lane->mirrored, tb_x_from_board (board));
}

static TbPoint
point_at (const TbGuessScene *scene, double x)
{
  TbPoint point;

  tb_lane_view_to_picture (scene->width, scene->height, scene->lane, x, scene->y, &point.x, &point.y);
  return point;
}

/* The way back up the lane, one px long: there is room on that side of any line. */
static TbPoint
towards_bowler (const TbGuessScene *scene)
{
  switch (scene->lane->projection)
    {
    case TB_LANE_PLAN_SIDEWAYS:
      return (TbPoint){ -1, 0 };
    case TB_LANE_PLAN:
    case TB_LANE_FROM_APPROACH:
    default:
      return (TbPoint){ 0, 1 };
    }
}

static TbPoint
moved (TbPoint from, TbPoint way, double distance)
{
  return (TbPoint){ from.x + distance * way.x, from.y + distance * way.y };
}

static double
em_of (const TbGuessScene *scene)
{
  return tb_canvas_text_size (scene->width, scene->height, &scene->lane->theme);
}

static TbPoint
handle_of (const TbGuessScene *scene)
{
  return moved (point_at (scene, x_of_board (scene, scene->guess)), towards_bowler (scene),
                STEM * em_of (scene));
}

void
tb_guess_view_place (const TbGuessScene *scene, double *px, double *py)
{
  TbPoint handle = handle_of (scene);

  *px = handle.x;
  *py = handle.y;
}

double
tb_guess_view_board_at (const TbGuessScene *scene, double px, double py)
{
  TbPoint left = point_at (scene, -TB_LANE_HALF_WIDTH), right = point_at (scene, TB_LANE_HALF_WIDTH);
  double across_x = right.x - left.x, across_y = right.y - left.y;
  double square = across_x * across_x + across_y * across_y;
  double share = square > 0 ? ((px - left.x) * across_x + (py - left.y) * across_y) / square : 0.5;

  return tb_scene_board (scene->lane, (2 * share - 1) * TB_LANE_HALF_WIDTH);
}

static void
draw_line (TbCanvas *canvas, const TbGuessScene *scene)
{
  const double dashes[] = { DASH * canvas->em, GAP * canvas->em };

  cairo_set_dash (canvas->cr, dashes, G_N_ELEMENTS (dashes), 0);
  cairo_set_line_width (canvas->cr, LINE_WIDTH * canvas->theme.line_width);
  tb_draw_color (canvas->cr, canvas->theme.text);
  tb_draw_line (canvas->cr, point_at (scene, -TB_LANE_HALF_WIDTH), point_at (scene, TB_LANE_HALF_WIDTH));
  cairo_set_dash (canvas->cr, NULL, 0, 0);
}

/* Says that it can be dragged, and which way. */
static void
draw_arrows (TbCanvas *canvas, TbPoint handle, TbPoint across)
{
  for (int side = -1; side <= 1; side += 2)
    tb_draw_arrow_head (canvas->cr, moved (handle, across, side * ARROW_TO * canvas->em),
                        moved (handle, across, side * ARROW_FROM * canvas->em), ARROW_HEAD * canvas->em);
}

static void
draw_marker (TbCanvas *canvas, const TbGuessScene *scene)
{
  cairo_t *cr = canvas->cr;
  TbPoint tip = point_at (scene, x_of_board (scene, scene->guess)), way = towards_bowler (scene);
  TbPoint handle = handle_of (scene), across = { fabs (way.y), fabs (way.x) };
  double alpha = scene->placed ? 1.0 : WAITING_ALPHA;

  tb_draw_color (cr, tb_color_with_alpha (canvas->theme.text, alpha));
  cairo_set_line_width (cr, STEM_WIDTH * canvas->theme.line_width);
  tb_draw_line (cr, moved (tip, way, POINT * canvas->em), handle);
  tb_draw_arrow_head (cr, tip, handle, POINT * canvas->em);
  if (isnan (scene->answer))
    draw_arrows (canvas, handle, across);
  cairo_new_path (cr);
  tb_draw_circle (cr, handle, HANDLE * canvas->em);
  tb_draw_color (cr, scene->placed ? canvas->theme.text : canvas->theme.background);
  cairo_fill_preserve (cr);
  tb_draw_color (cr, canvas->theme.text);
  cairo_stroke (cr);
  if (!scene->focused)
    return;
  tb_draw_circle (cr, handle, RING * canvas->em);
  cairo_stroke (cr);
}

/* In the handle, or a question mark before it has been put anywhere. */
static void
label_marker (TbCanvas *canvas, const TbGuessScene *scene)
{
  TbPoint handle = handle_of (scene);
  int digits = scene->guess == round (scene->guess) ? 0 : 1;
  g_autofree char *board
      = scene->placed ? tb_number_text (scene->guess, digits) : g_strdup (C_ ("guess", "?"));

  tb_canvas_label (canvas, &(TbLabel){ .text = board,
                                       .x = handle.x,
                                       .y = handle.y,
                                       .across = TB_ALIGN_MIDDLE,
                                       .down = TB_ALIGN_MIDDLE,
                                       .color = scene->placed ? canvas->theme.background : canvas->theme.text,
                                       .size = HANDLE_TEXT * canvas->em,
                                       .bold = TRUE });
}

static void
draw_answer (TbCanvas *canvas, const TbGuessScene *scene)
{
  TbPoint at = point_at (scene, x_of_board (scene, scene->answer));
  TbRunStyle style = tb_run_style (&canvas->theme, FALSE);

  tb_draw_run_mark (canvas->cr, &canvas->theme, &style, &at, ANSWER * canvas->em);
}

/* How far off: a bar from the marker to the answer, and its length in words. */
static void
draw_distance (TbCanvas *canvas, const TbGuessScene *scene)
{
  TbPoint way = towards_bowler (scene);
  TbPoint a = moved (point_at (scene, x_of_board (scene, scene->guess)), way, BAR * canvas->em);
  TbPoint b = moved (point_at (scene, x_of_board (scene, scene->answer)), way, BAR * canvas->em);
  double off = fabs (scene->guess - scene->answer);
  g_autofree char *number = tb_number_text (off, 1);
  /* Translators: how far a guess was from where the ball went; %s is a number. */
  g_autofree char *text = tb_fill_with (_ ("%s boards off"), number, NULL);
  TbPoint at = moved (handle_of (scene), way, (HANDLE + LABEL) * canvas->em);

  cairo_set_line_width (canvas->cr, BAR_WIDTH * canvas->theme.line_width);
  tb_draw_color (canvas->cr, canvas->theme.after);
  tb_draw_line (canvas->cr, a, b);
  tb_canvas_label (canvas, &(TbLabel){ .text = text,
                                       .x = at.x,
                                       .y = at.y,
                                       .across = way.x < 0 ? TB_ALIGN_END : TB_ALIGN_MIDDLE,
                                       .down = way.y > 0 ? TB_ALIGN_START : TB_ALIGN_MIDDLE,
                                       .color = canvas->theme.text,
                                       .bold = TRUE,
                                       .plate = TRUE });
}

void
tb_guess_view_draw (cairo_t *cr, const TbGuessScene *scene)
{
  g_auto (TbCanvas) canvas = { 0 };

  tb_canvas_init (&canvas, cr, scene->width, scene->height, &scene->lane->theme);
  if (!tb_canvas_has_room (&canvas))
    return;
  cairo_save (cr);
  draw_line (&canvas, scene);
  if (!isnan (scene->answer) && scene->placed)
    draw_distance (&canvas, scene);
  if (!isnan (scene->answer))
    draw_answer (&canvas, scene);
  if (scene->placed || isnan (scene->answer))
    {
      draw_marker (&canvas, scene);
      label_marker (&canvas, scene);
    }
  cairo_restore (cr);
}

void
tb_guess_view_extents (const TbGuessScene *scene, cairo_rectangle_t *extents)
{
  TbPoint left = point_at (scene, -TB_LANE_HALF_WIDTH), right = point_at (scene, TB_LANE_HALF_WIDTH);
  TbPoint across = { LABEL_ROOM * em_of (scene), ROOM * em_of (scene) };

  if (scene->lane->projection == TB_LANE_PLAN_SIDEWAYS)
    across.x += LABEL_ROOM * em_of (scene);
  extents->x = MIN (left.x, right.x) - across.x;
  extents->y = MIN (left.y, right.y) - across.y;
  extents->width = fabs (left.x - right.x) + 2 * across.x;
  extents->height = fabs (left.y - right.y) + 2 * across.y;
}
