/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "tb-draw.h"
#include "tb-lane-film.h"
#include "tb-lane-ground.h"
#include "tb-lane-runs.h"

/* Radius of the ball in the plans, em. */
#define BALL_RADIUS 1.15
/* Its edge, in line widths; and what is kept free around it, px. */
#define BALL_EDGE 0.7
#define BALL_MARGIN 2.0
/* The light on the ball comes from its upper left: offset of the highlight, and its size, of the radius. */
#define LIGHT_OFFSET 0.35
#define LIGHT_SIZE 0.15
#define SHADOW_OPACITY 0.35
#define OPEN_BALL_OPACITY 0.55

TbLaneScene
tb_lane_scene_default (void)
{
  TbAssumed assumed = tb_assumed_default ();

  return (TbLaneScene){
    .theme = tb_theme_light (1),
    .projection = TB_LANE_PLAN,
    .oil_scale = 1,
    .pocket_low = assumed.pocket_low,
    .pocket_high = assumed.pocket_high,
    .show_phases = true,
    .show_legend = true,
    .show_note = true,
    .cursor_y = NAN,
  };
}

/* Layers of a picture. */
typedef enum TbLaneParts
{
  TB_LANE_GROUND = 1 << 0,
  TB_LANE_LINES = 1 << 1,    /* of the runs, without a word */
  TB_LANE_THE_RUNS = 1 << 2, /* lines, marks, phases and labels */
  TB_LANE_NAMES = 1 << 3,    /* of the runs, and nothing else of them */
} TbLaneParts;

/* What has labels of its own among what stands still. */
static void
draw_scales (TbCanvas *canvas, const TbLaneLayout *layout, const TbLaneScene *scene)
{
  tb_lane_reading_draw (canvas, layout, scene);
  tb_lane_scales_draw (canvas, layout, scene);
  tb_lane_film_legend (canvas, layout, scene);
}

static void
draw_ground (TbCanvas *canvas, const TbLaneLayout *layout, const TbLaneScene *scene)
{
  tb_lane_ground_draw (canvas, layout, scene);
  draw_scales (canvas, layout, scene);
  tb_lane_pins_draw (canvas, layout);
}

static void
draw_runs (TbCanvas *canvas, const TbLaneLayout *layout, const TbLaneScene *scene)
{
  TbLaneRun runs[TB_LANE_RUNS];

  tb_lane_runs_init (runs, canvas, layout, scene);
  tb_lane_phases_draw (canvas, layout, scene, runs);
  tb_lane_runs_draw (canvas, layout, runs);
  tb_lane_ends_draw (canvas, layout, scene, runs);
  tb_lane_runs_label (canvas, layout, scene, runs);
}

static void
draw_lines (TbCanvas *canvas, const TbLaneLayout *layout, const TbLaneScene *scene)
{
  TbLaneRun runs[TB_LANE_RUNS];

  tb_lane_runs_init (runs, canvas, layout, scene);
  tb_lane_runs_draw (canvas, layout, runs);
}

static void
draw_names (TbCanvas *canvas, const TbLaneLayout *layout, const TbLaneScene *scene)
{
  TbLaneRun runs[TB_LANE_RUNS];

  tb_lane_runs_init (runs, canvas, layout, scene);
  tb_lane_ends_name (canvas, layout, runs);
}

/* Draws some of a picture; where only runs are drawn, their labels keep off those of the ground all the same. */
static void
draw_parts (cairo_t *cr, double width, double height, const TbLaneScene *scene, TbLaneParts parts)
{
  g_auto (TbCanvas) canvas = { 0 };
  TbLaneLayout layout;

  cairo_save (cr);
  tb_canvas_init (&canvas, cr, width, height, &scene->theme);
  if (parts & TB_LANE_GROUND)
    tb_canvas_fill_background (&canvas);
  if (tb_canvas_has_room (&canvas))
    {
      tb_lane_layout_init (&layout, &canvas, scene);
      if (parts & TB_LANE_GROUND)
        draw_ground (&canvas, &layout, scene);
      else if (parts & TB_LANE_THE_RUNS)
        {
          cairo_save (cr);
          cairo_rectangle (cr, 0, 0, 0, 0);
          cairo_clip (cr);
          draw_scales (&canvas, &layout, scene);
          cairo_restore (cr);
        }
      if (parts & TB_LANE_LINES)
        draw_lines (&canvas, &layout, scene);
      if (parts & TB_LANE_THE_RUNS)
        draw_runs (&canvas, &layout, scene);
      if (parts & TB_LANE_NAMES)
        draw_names (&canvas, &layout, scene);
    }
  cairo_restore (cr);
}

void
tb_lane_view_draw (cairo_t *cr, double width, double height, const TbLaneScene *scene)
{
  draw_parts (cr, width, height, scene, TB_LANE_GROUND | TB_LANE_THE_RUNS);
}

void
tb_lane_view_draw_ground (cairo_t *cr, double width, double height, const TbLaneScene *scene)
{
  draw_parts (cr, width, height, scene, TB_LANE_GROUND);
}

static void
append (GByteArray *key, const void *data, gsize size)
{
  g_byte_array_append (key, data, (guint) size);
}

/* Numbers all of them, but for the name of the type in their midst. */
static void
append_theme (GByteArray *key, const TbTheme *theme)
{
  append (key, theme, offsetof (TbTheme, font));
  append (key, theme->font, strlen (theme->font) + 1);
  append (key, &theme->text_size, sizeof *theme - offsetof (TbTheme, text_size));
}

static void
append_scene (GByteArray *key, const TbLaneScene *scene)
{
  append (key, &scene->mirrored, sizeof scene->mirrored);
  append (key, &scene->cursor_y, sizeof scene->cursor_y);
  append (key, &scene->oil_scale, sizeof scene->oil_scale);
  if (scene->oil != NULL)
    append (key, scene->oil->cell, sizeof scene->oil->cell);
}

GBytes *
tb_lane_view_ground_key (double width, double height, const TbLaneScene *scene)
{
  g_auto (TbCanvas) canvas = { 0 };
  GByteArray *key = g_byte_array_new ();
  const double size[] = { width, height, scene->projection };
  TbLaneLayout layout;

  tb_canvas_init (&canvas, NULL, width, height, &scene->theme);
  tb_lane_layout_init (&layout, &canvas, scene);
  append (key, size, sizeof size);
  /* What the layout has room for is told in its boxes. */
  append (key, &layout.em, sizeof layout - offsetof (TbLaneLayout, em));
  append_theme (key, &scene->theme);
  append_scene (key, scene);
  return g_byte_array_free_to_bytes (key);
}

void
tb_lane_view_draw_runs (cairo_t *cr, double width, double height, const TbLaneScene *scene)
{
  draw_parts (cr, width, height, scene, TB_LANE_THE_RUNS);
}

void
tb_lane_view_draw_lines (cairo_t *cr, double width, double height, const TbLaneScene *scene)
{
  draw_parts (cr, width, height, scene, TB_LANE_LINES);
}

void
tb_lane_view_draw_names (cairo_t *cr, double width, double height, const TbLaneScene *scene)
{
  draw_parts (cr, width, height, scene, TB_LANE_NAMES);
}

/* The outline of a ball: an ellipse, since a sphere off the straight line of sight is seen longer. */
typedef struct TbBallOutline
{
  TbPoint centre;
  double radius;       /* px, half the shorter axis */
  double elongation;   /* longer axis over shorter */
  double angle;        /* rad, of the longer axis */
  TbPoint ground;      /* px, under the ball */
  double ground_radius; /* px, half the shadow's width; 0 for no shadow */
} TbBallOutline;

/* A cone of sight around the ball, cut by the picture's plane one focal length ahead. The cone's axis makes the angle
 * θ with the straight line of sight and its half angle is δ. */
static TbBallOutline
perspective_outline (const TbLaneLayout *layout, double x, double y, double z, double radius)
{
  double depth = y + TB_EYE_BEHIND, up = z - TB_EYE_HEIGHT;
  double off = hypot (x, up), distance = hypot (off, depth);
  double theta = atan2 (off, depth), delta = asin (radius / distance);
  double far = tan (theta + delta), near = tan (theta - delta), middle = 0.5 * (far + near);
  double cone = (middle * sin (theta) + cos (theta)) / cos (delta);
  double shorter = sqrt (MAX (cone * cone - middle * middle - 1, 0)), longer = 0.5 * (far - near);
  double angle = off > 0 ? atan2 (-up, x) : 0;

  return (TbBallOutline){ .centre = { layout->ahead.x + layout->focal * middle * cos (angle),
                                      layout->ahead.y + layout->focal * middle * sin (angle) },
                          .radius = layout->focal * shorter,
                          .elongation = longer / shorter,
                          .angle = angle,
                          .ground = tb_lane_layout_point (layout, x, y, 0),
                          .ground_radius = radius * tb_lane_layout_scale (layout, y) };
}

static gboolean
find_outline (const TbLaneLayout *layout, const TbPath *path, double time, TbBallOutline *outline)
{
  TbSample sample;

  if (!tb_path_at_time (path, time, &sample))
    return FALSE;
  if (layout->projection == TB_LANE_FROM_APPROACH)
    *outline = perspective_outline (layout,
                                    tb_lane_x (path->mirrored, sample.position.x),
                                    sample.position.y,
                                    MAX (sample.position.z, path->body.radius),
                                    path->body.radius);
  else
    *outline = (TbBallOutline){ .centre = tb_lane_run_point (layout, path, &sample),
                                .radius = BALL_RADIUS * layout->mark_em,
                                .elongation = 1 };
  return TRUE;
}

static void
add_outline (cairo_t *cr, const TbBallOutline *outline)
{
  cairo_save (cr);
  cairo_translate (cr, outline->centre.x, outline->centre.y);
  cairo_rotate (cr, outline->angle);
  cairo_scale (cr, outline->elongation, 1);
  tb_draw_circle (cr, (TbPoint){ 0, 0 }, outline->radius);
  cairo_restore (cr);
}

static void
draw_shadow (TbCanvas *canvas, const TbLaneLayout *layout, const TbBallOutline *outline)
{
  cairo_t *cr = canvas->cr;
  double flat;

  if (outline->ground_radius <= 0)
    return;
  /* A circle on the floor is seen as flat as the eye is low. */
  flat = (outline->ground.y - layout->ahead.y) / layout->focal;
  cairo_save (cr);
  cairo_translate (cr, outline->ground.x, outline->ground.y);
  cairo_scale (cr, 1, flat);
  tb_draw_circle (cr, (TbPoint){ 0, 0 }, outline->ground_radius);
  cairo_restore (cr);
  tb_draw_color (cr, tb_color_with_alpha (canvas->theme.pit, SHADOW_OPACITY));
  cairo_fill (cr);
}

static void
set_ball_shading (TbCanvas *canvas, const TbBallOutline *outline)
{
  const TbTheme *theme = &canvas->theme;
  double offset = LIGHT_OFFSET * outline->radius;
  TbPoint light = { outline->centre.x - offset, outline->centre.y - offset };
  cairo_pattern_t *shading = cairo_pattern_create_radial (light.x,
                                                          light.y,
                                                          LIGHT_SIZE * outline->radius,
                                                          outline->centre.x,
                                                          outline->centre.y,
                                                          outline->radius * outline->elongation);

  cairo_pattern_add_color_stop_rgb (shading, 0, theme->ball_light.red, theme->ball_light.green, theme->ball_light.blue);
  cairo_pattern_add_color_stop_rgb (shading, 1, theme->ball.red, theme->ball.green, theme->ball.blue);
  cairo_set_source (canvas->cr, shading);
  cairo_pattern_destroy (shading);
}

/* A filled ball for after, an open one with a dashed edge for before. */
static void
draw_ball (TbCanvas *canvas, const TbBallOutline *outline, const TbRunStyle *style)
{
  cairo_t *cr = canvas->cr;
  double edge = BALL_EDGE * style->width;
  const double dashes[2] = { 2.2 * edge, 1.5 * edge };

  add_outline (cr, outline);
  if (style->before)
    tb_draw_color (cr, tb_color_with_alpha (canvas->theme.background, OPEN_BALL_OPACITY));
  else
    set_ball_shading (canvas, outline);
  cairo_fill_preserve (cr);
  cairo_set_line_width (cr, edge);
  cairo_set_line_cap (cr, CAIRO_LINE_CAP_BUTT);
  tb_draw_color (cr, style->before ? style->color : canvas->theme.background);
  cairo_set_dash (cr, dashes, style->before ? 2 : 0, 0);
  cairo_stroke (cr);
}

/* Any path but the scene's "before" is drawn as "after". */
static gboolean
is_before (const TbLaneScene *scene, const TbPath *path)
{
  return path == scene->before && path != scene->after;
}

void
tb_lane_view_draw_ball (cairo_t *cr,
                        double width,
                        double height,
                        const TbLaneScene *scene,
                        const TbPath *path,
                        double time)
{
  g_auto (TbCanvas) canvas = { 0 };
  TbLaneLayout layout;
  TbRunStyle style;
  TbBallOutline outline;

  tb_canvas_init (&canvas, cr, width, height, &scene->theme);
  tb_lane_layout_init (&layout, &canvas, scene);
  if (!tb_canvas_has_room (&canvas) || !find_outline (&layout, path, time, &outline))
    return;
  style = tb_run_style (&canvas.theme, is_before (scene, path));
  cairo_save (cr);
  draw_shadow (&canvas, &layout, &outline);
  draw_ball (&canvas, &outline, &style);
  cairo_restore (cr);
}

/* The smallest rectangle on whole pixels around both. */
static cairo_rectangle_t
whole_pixels (cairo_rectangle_t a, cairo_rectangle_t b)
{
  double left = floor (MIN (a.x, b.x)), top = floor (MIN (a.y, b.y));
  double right = ceil (MAX (a.x + a.width, b.x + b.width)), bottom = ceil (MAX (a.y + a.height, b.y + b.height));

  return (cairo_rectangle_t){ left, top, right - left, bottom - top };
}

void
tb_lane_view_ball_extents (double width,
                           double height,
                           const TbLaneScene *scene,
                           const TbPath *path,
                           double time,
                           cairo_rectangle_t *extents)
{
  g_auto (TbCanvas) canvas = { 0 };
  TbLaneLayout layout;
  TbBallOutline outline;
  cairo_rectangle_t ball, shadow;
  double reach;

  *extents = (cairo_rectangle_t){ 0 };
  tb_canvas_init (&canvas, NULL, width, height, &scene->theme);
  tb_lane_layout_init (&layout, &canvas, scene);
  if (!tb_canvas_has_room (&canvas) || !find_outline (&layout, path, time, &outline))
    return;
  reach = outline.radius * outline.elongation + BALL_EDGE * canvas.theme.line_width + BALL_MARGIN;
  ball = (cairo_rectangle_t){ outline.centre.x - reach, outline.centre.y - reach, 2 * reach, 2 * reach };
  shadow = ball;
  if (outline.ground_radius > 0)
    {
      reach = outline.ground_radius + BALL_MARGIN;
      shadow = (cairo_rectangle_t){ outline.ground.x - reach, outline.ground.y - reach, 2 * reach, 2 * reach };
    }
  *extents = whole_pixels (ball, shadow);
}

void
tb_lane_view_to_picture (double width,
                         double height,
                         const TbLaneScene *scene,
                         double x,
                         double y,
                         double *px,
                         double *py)
{
  g_auto (TbCanvas) canvas = { 0 };
  TbLaneLayout layout;
  TbPoint point;

  tb_canvas_init (&canvas, NULL, width, height, &scene->theme);
  tb_lane_layout_init (&layout, &canvas, scene);
  point = tb_lane_layout_point (&layout, x, y, 0);
  *px = point.x;
  *py = point.y;
}

bool
tb_lane_view_to_lane (double width,
                      double height,
                      const TbLaneScene *scene,
                      double px,
                      double py,
                      double *x,
                      double *y)
{
  g_auto (TbCanvas) canvas = { 0 };
  TbLaneLayout layout;

  tb_canvas_init (&canvas, NULL, width, height, &scene->theme);
  tb_lane_layout_init (&layout, &canvas, scene);
  return tb_canvas_has_room (&canvas) && tb_lane_layout_floor (&layout, (TbPoint){ px, py }, x, y);
}
