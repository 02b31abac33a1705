/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include "tb-canvas.h"
#include "tb-draw.h"
#include "tb-film-graph.h"
#include "tb-film-lane.h"
#include "tb-lane-film.h"
#include "tb-lane-view.h"
#include "tb-pattern-view.h"

/* Of the height, what the lanes take; and what the graphs do at least, em. */
#define LANES_SHARE 0.56
#define GRAPH_LEAST 9.0
#define PAD 0.6
#define HEADING 2.0
/* Handles, em. */
#define HANDLE 0.42
#define REACH 0.8
/* A graph stands below the other in a picture narrower than this for its height. */
#define BESIDE 1.1

#define MAX_LANES 2

typedef struct View
{
  const TbPatternScene *scene;
  double em;
  cairo_rectangle_t lane[MAX_LANES]; /* the earlier film's first, if there is one */
  cairo_rectangle_t across, along;   /* boxes of the graphs */
} View;

TbPatternScene
tb_pattern_scene_default (void)
{
  return (
      TbPatternScene){ .theme = tb_theme_light (1), .oil_scale = 1, .selected = -1, .cursor_y = TB_ARROWS_Y };
}

static void
lay_out_graphs (View *self, const cairo_rectangle_t *room)
{
  self->across = self->along = *room;
  if (room->width > BESIDE * room->height)
    {
      self->across.width = self->along.width = 0.5 * room->width;
      self->along.x += self->across.width;
      return;
    }
  self->across.height = self->along.height = 0.5 * room->height;
  self->along.y += self->across.height;
}

static void
lay_out (View *self, double width, double height, const TbPatternScene *scene)
{
  double em = tb_canvas_text_size (width, height, &scene->theme), pad = PAD * em;
  double heading = scene->earlier ? HEADING * em : 0;
  double lanes = MIN (LANES_SHARE * height, height - GRAPH_LEAST * em);
  cairo_rectangle_t graphs = { pad, lanes, width - 2 * pad, height - lanes - 0.5 * pad };

  *self = (View){ .scene = scene, .em = em };
  self->lane[0] = (cairo_rectangle_t){ 0, 0, width, lanes };
  if (scene->earlier)
    {
      /* The second has the feet below it, as high as a heading. */
      double top = heading + pad, each = (lanes - top - 2 * heading) / 2;

      self->lane[0] = (cairo_rectangle_t){ pad, top, width - 2 * pad, each };
      self->lane[1] = (cairo_rectangle_t){ pad, top + heading + each, width - 2 * pad, each + heading };
    }
  lay_out_graphs (self, &graphs);
}

/* For the lane view. */
static TbLaneScene
lane_scene (const View *self)
{
  const TbPatternScene *scene = self->scene;
  TbLaneScene plan = tb_lane_scene_default ();

  plan.theme = scene->theme;
  plan.projection = TB_LANE_PLAN_SIDEWAYS;
  plan.oil = scene->oil;
  plan.oil_scale = scene->oil_scale;
  plan.mirrored = scene->mirrored;
  plan.show_phases = false;
  plan.show_legend = true;
  plan.cursor_y = scene->cursor_y;
  return plan;
}

/* px of a place on the lane that stands alone. */
static TbPoint
lane_point (const View *self, double x, double y)
{
  const cairo_rectangle_t *box = &self->lane[0];
  TbLaneScene scene = lane_scene (self);
  TbPoint point;

  tb_lane_view_to_picture (box->width, box->height, &scene, x, y, &point.x, &point.y);
  return (TbPoint){ point.x + box->x, point.y + box->y };
}

/* x of the edge of a board, counted from the right edge whoever bowls. */
static double
board_edge (double board)
{
  return TB_LANE_HALF_WIDTH - (board - 0.5) * TB_BOARD_WIDTH;
}

/* Corners of a strip in the picture: where it starts on its right, and where it ends on its left. */
static void
strip_corners (const View *self, const TbStrip *strip, TbPoint *a, TbPoint *b)
{
  *a = lane_point (self, board_edge (strip->right_board), strip->start);
  *b = lane_point (self, board_edge (strip->left_board + 1), strip->end);
}

static double
taper_start (const TbStrip *strip)
{
  return strip->end + (strip->way == TB_STRIP_OUT ? -strip->taper : strip->taper);
}

/* The outline, with an arrow's head that shows which way it is laid. */
static void
draw_strip (TbCanvas *canvas, const View *self, const TbStrip *strip, gboolean selected)
{
  const TbTheme *theme = &canvas->theme;
  cairo_t *cr = canvas->cr;
  TbPoint a, b, tip;

  strip_corners (self, strip, &a, &b);
  tip = (TbPoint){ b.x, 0.5 * (a.y + b.y) };
  tb_draw_color (cr, selected ? theme->after : tb_color_with_alpha (theme->text, 0.4));
  cairo_set_line_width (cr, selected ? 0.8 * theme->line_width : 1);
  cairo_rectangle (cr, tb_draw_crisp (MIN (a.x, b.x)), tb_draw_crisp (MIN (a.y, b.y)), fabs (b.x - a.x),
                   fabs (b.y - a.y));
  cairo_stroke (cr);
  if (selected)
    tb_draw_arrow_head (cr, tip, (TbPoint){ a.x, tip.y }, 1.1 * self->em);
}

typedef struct Handle
{
  TbPatternPart part;
  TbPoint at;
} Handle;
#define HANDLES 5

static void
find_handles (const View *self, const TbStrip *strip, Handle handles[HANDLES])
{
  double right = board_edge (strip->right_board), left = board_edge (strip->left_board + 1);
  double x = 0.5 * (right + left), y = 0.5 * (strip->start + strip->end);

  handles[0] = (Handle){ TB_PATTERN_START, lane_point (self, x, strip->start) };
  handles[1] = (Handle){ TB_PATTERN_END, lane_point (self, x, strip->end) };
  handles[2] = (Handle){ TB_PATTERN_RIGHT, lane_point (self, right, y) };
  handles[3] = (Handle){ TB_PATTERN_LEFT, lane_point (self, left, y) };
  /* On an edge, so that it does not lie over the others. */
  handles[4] = (Handle){ TB_PATTERN_TAPER, lane_point (self, left, taper_start (strip)) };
}

static void
draw_taper (TbCanvas *canvas, const View *self, const TbStrip *strip)
{
  static const double dash[] = { 3, 3 };
  TbPoint a = lane_point (self, board_edge (strip->right_board), taper_start (strip));
  TbPoint b = lane_point (self, board_edge (strip->left_board + 1), taper_start (strip));

  cairo_save (canvas->cr);
  cairo_set_dash (canvas->cr, dash, G_N_ELEMENTS (dash), 0);
  tb_draw_color (canvas->cr, canvas->theme.after);
  cairo_set_line_width (canvas->cr, 0.5 * canvas->theme.line_width);
  tb_draw_line (canvas->cr, a, b);
  cairo_restore (canvas->cr);
}

static void
draw_handles (TbCanvas *canvas, const View *self, const TbStrip *strip)
{
  Handle handles[HANDLES];

  find_handles (self, strip, handles);
  draw_taper (canvas, self, strip);
  for (int i = 0; i < HANDLES; i++)
    {
      double radius = HANDLE * self->em;

      if (handles[i].part == TB_PATTERN_TAPER)
        tb_draw_circle (canvas->cr, handles[i].at, 0.8 * radius);
      else
        cairo_rectangle (canvas->cr, handles[i].at.x - radius, handles[i].at.y - radius, 2 * radius,
                         2 * radius);
      tb_draw_color (canvas->cr, canvas->theme.background);
      cairo_fill_preserve (canvas->cr);
      tb_draw_color (canvas->cr, canvas->theme.after);
      cairo_set_line_width (canvas->cr, 0.7 * canvas->theme.line_width);
      cairo_stroke (canvas->cr);
    }
}

static void
draw_strips (TbCanvas *canvas, const View *self)
{
  const TbPatternScene *scene = self->scene;

  for (guint i = 0; i < scene->n_strips; i++)
    if ((int)i != scene->selected)
      draw_strip (canvas, self, &scene->strips[i], FALSE);
  if (scene->selected >= 0 && scene->selected < (int)scene->n_strips)
    {
      draw_strip (canvas, self, &scene->strips[scene->selected], TRUE);
      draw_handles (canvas, self, &scene->strips[scene->selected]);
    }
}

/* The whole lane, for a film that stands alone. */
static void
draw_whole_lane (TbCanvas *canvas, const View *self)
{
  const cairo_rectangle_t *box = &self->lane[0];
  TbLaneScene scene = lane_scene (self);

  cairo_save (canvas->cr);
  cairo_translate (canvas->cr, box->x, box->y);
  tb_lane_view_draw (canvas->cr, box->width, box->height, &scene);
  cairo_restore (canvas->cr);
}

static void
draw_heading (TbCanvas *canvas, const View *self, int lane)
{
  gboolean before = lane == 0;
  const char *text = before ? self->scene->earlier_label : self->scene->label;
  TbRunStyle style = tb_run_style (&canvas->theme, before);
  double x = tb_film_lane_plot (canvas, &self->lane[lane], FALSE).x;
  TbLabel label = { .text = text ? text : "", .x = x + 3 * self->em, .bold = TRUE, .down = TB_ALIGN_MIDDLE };

  label.color = canvas->theme.text;
  label.y = self->lane[lane].y - 0.8 * self->em;
  tb_canvas_label (canvas, &label);
  cairo_save (canvas->cr);
  tb_draw_set_run (canvas->cr, &style);
  tb_draw_color (canvas->cr, style.color);
  tb_draw_line (canvas->cr, (TbPoint){ x, label.y }, (TbPoint){ x + 2.4 * self->em, label.y });
  cairo_restore (canvas->cr);
}

static void
draw_legend (TbCanvas *canvas, const View *self)
{
  TbLaneScene scene = lane_scene (self);
  TbLaneLayout layout = { .em = self->em };
  cairo_rectangle_t plot = tb_film_lane_plot (canvas, &self->lane[0], FALSE);
  double width = MIN (22 * self->em, 0.6 * plot.width);

  scene.oil = self->scene->earlier;
  layout.legend = (cairo_rectangle_t){ plot.x + plot.width - width, self->lane[0].y - 2.2 * self->em, width,
                                       2 * self->em };
  tb_lane_film_legend (canvas, &layout, &scene);
}

/* As it was over as it is, with the same tint. */
static void
draw_two_lanes (TbCanvas *canvas, const View *self)
{
  const TbPatternScene *scene = self->scene;

  for (int lane = 0; lane < MAX_LANES; lane++)
    {
      TbFilmLane film = { .oil = lane == 0 ? scene->earlier : scene->oil,
                          .scale = scene->oil_scale,
                          .full = tb_film_full_tint (scene->earlier, scene->oil_scale),
                          .cursor_x = scene->cursor_x,
                          .cursor_y = scene->cursor_y,
                          .mirrored = scene->mirrored,
                          .show_feet = lane == MAX_LANES - 1 };

      draw_heading (canvas, self, lane);
      tb_film_lane_draw (canvas, &self->lane[lane], &film);
    }
  draw_legend (canvas, self);
}

/* The upward axis: as much as the thickest of either film needs, in steps of 20 units. */
static double
full_film (const TbPatternScene *scene)
{
  const double step = tb_film_from_units (20);
  double thickest = 0;

  for (int row = 0; row < TB_OIL_ROWS; row++)
    for (int column = 0; column < TB_OIL_COLUMNS; column++)
      {
        thickest = MAX (thickest, tb_oil_cell (scene->oil, row, column));
        if (scene->earlier)
          thickest = MAX (thickest, tb_oil_cell (scene->earlier, row, column));
      }
  return step * MAX (ceil (scene->oil_scale * thickest / step), 1);
}

static TbFilmGraph
graph_of (const View *self, gboolean along)
{
  const TbPatternScene *scene = self->scene;

  return (TbFilmGraph){ .along = along,
                        .at = along ? scene->cursor_x : scene->cursor_y,
                        .oil = scene->oil,
                        .earlier = scene->earlier,
                        .scale = scene->oil_scale,
                        .full = full_film (scene),
                        .cursor = along ? scene->cursor_y : scene->cursor_x,
                        .mirrored = scene->mirrored };
}

void
tb_pattern_view_draw (cairo_t *cr, double width, double height, const TbPatternScene *scene)
{
  g_auto (TbCanvas) canvas = { 0 };
  TbFilmGraph across, along;
  View self;

  tb_canvas_init (&canvas, cr, width, height, &scene->theme);
  tb_canvas_fill_background (&canvas);
  if (!tb_canvas_has_room (&canvas))
    return;
  lay_out (&self, width, height, scene);
  if (scene->earlier)
    draw_two_lanes (&canvas, &self);
  else
    {
      draw_whole_lane (&canvas, &self);
      draw_strips (&canvas, &self);
    }
  across = graph_of (&self, FALSE);
  along = graph_of (&self, TRUE);
  tb_film_graph_draw (&canvas, &self.across, &across);
  tb_film_graph_draw (&canvas, &self.along, &along);
}

void
tb_pattern_view_to_lane (double width,
                         double height,
                         const TbPatternScene *scene,
                         const double at[2],
                         double lane[2])
{
  View self;
  TbPoint a, b;

  lay_out (&self, width, height, scene);
  /* The plan is even in both directions. */
  a = lane_point (&self, -TB_LANE_HALF_WIDTH, 0);
  b = lane_point (&self, TB_LANE_HALF_WIDTH, TB_HEAD_PIN_Y);
  lane[0] = TB_LANE_HALF_WIDTH * (2 * (at[1] - a.y) / (b.y - a.y) - 1);
  lane[1] = TB_HEAD_PIN_Y * (at[0] - a.x) / (b.x - a.x);
}

static gboolean
is_in (const cairo_rectangle_t *box, const double at[2])
{
  return at[0] >= box->x && at[0] <= box->x + box->width && at[1] >= box->y && at[1] <= box->y + box->height;
}

static double
distance_to_segment (TbPoint p, TbPoint a, TbPoint b)
{
  double dx = b.x - a.x, dy = b.y - a.y, length = dx * dx + dy * dy;
  double share = length > 0 ? CLAMP (((p.x - a.x) * dx + (p.y - a.y) * dy) / length, 0, 1) : 0;

  return hypot (p.x - a.x - share * dx, p.y - a.y - share * dy);
}

static double
distance_to_strip (const View *self, const TbStrip *strip, TbPoint p)
{
  TbPoint a, b, c, d;

  strip_corners (self, strip, &a, &b);
  c = (TbPoint){ b.x, a.y };
  d = (TbPoint){ a.x, b.y };
  return MIN (MIN (distance_to_segment (p, a, c), distance_to_segment (p, c, b)),
              MIN (distance_to_segment (p, b, d), distance_to_segment (p, d, a)));
}

static TbPatternPart
handle_at (const View *self, const double at[2])
{
  const TbPatternScene *scene = self->scene;
  Handle handles[HANDLES];
  TbPatternPart nearest = TB_PATTERN_NOTHING;
  double least = REACH * self->em;

  if (scene->selected < 0 || scene->selected >= (int)scene->n_strips)
    return TB_PATTERN_NOTHING;
  find_handles (self, &scene->strips[scene->selected], handles);
  for (int i = 0; i < HANDLES; i++)
    {
      double distance = hypot (handles[i].at.x - at[0], handles[i].at.y - at[1]);

      if (distance <= least)
        {
          least = distance;
          nearest = handles[i].part;
        }
    }
  return nearest;
}

static int
strip_at (const View *self, const double at[2])
{
  double least = REACH * self->em;
  int nearest = -1;

  for (guint i = 0; i < self->scene->n_strips; i++)
    {
      double distance = distance_to_strip (self, &self->scene->strips[i], (TbPoint){ at[0], at[1] });

      if (distance < least)
        {
          least = distance;
          nearest = (int)i;
        }
    }
  return nearest;
}

static gboolean
hit_graph (const View *self, TbCanvas *canvas, gboolean along, const double at[2], TbPatternHit *hit)
{
  const cairo_rectangle_t *box = along ? &self->along : &self->across;
  cairo_rectangle_t plot = tb_film_graph_plot (canvas, box);
  TbFilmGraph graph = graph_of (self, along);
  double place;

  if (!is_in (box, at))
    return FALSE;
  place = tb_film_graph_place (&plot, &graph, at[0]);
  hit->part = along ? TB_PATTERN_ALONG : TB_PATTERN_ACROSS;
  if (along)
    hit->y = place;
  else
    hit->x = place;
  return TRUE;
}

TbPatternHit
tb_pattern_view_hit (double width, double height, const TbPatternScene *scene, const double at[2])
{
  g_auto (TbCanvas) canvas = { 0 };
  TbPatternHit hit = { TB_PATTERN_NOTHING, -1, scene->cursor_x, scene->cursor_y };
  double lane[2];
  View self;

  lay_out (&self, width, height, scene);
  tb_canvas_init (&canvas, NULL, width, height, &scene->theme);
  if (hit_graph (&self, &canvas, FALSE, at, &hit) || hit_graph (&self, &canvas, TRUE, at, &hit))
    return hit;
  tb_pattern_view_to_lane (width, height, scene, at, lane);
  hit.part = handle_at (&self, at);
  hit.strip = scene->selected;
  if (hit.part == TB_PATTERN_NOTHING && (hit.strip = strip_at (&self, at)) >= 0)
    hit.part = TB_PATTERN_STRIP;
  if (fabs (lane[0]) > TB_LANE_HALF_WIDTH || lane[1] < 0 || lane[1] > TB_HEAD_PIN_Y)
    return hit;
  hit.x = lane[0];
  hit.y = lane[1];
  if (hit.part == TB_PATTERN_NOTHING)
    hit.part = TB_PATTERN_LANE;
  return hit;
}
