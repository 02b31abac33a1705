/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include <glib/gi18n-lib.h>
#include "tb-draw.h"
#include "tb-lane-film.h"
#include "tb-lane-ground.h"

/* Units that the strongest tint stands for, and what it grows by for a thicker film. */
#define FULL_UNITS 60.0
/* Ticks of the legend, as shares of the full film. */
static const double legend_ticks[] = { 0, 1.0 / 12, 1.0 / 6, 1.0 / 3, 2.0 / 3, 1 };
#define LEGEND_STEPS 64     /* colours in the bar */
/* Colours of the tint that are told apart in an image. */
#define RAMP 256
/* A vector file's image is sampled so much finer than the film's grid: viewers differ in how they smooth an image. */
#define VECTOR_SAMPLES 4
/* The perspective's image has a pixel for each of the picture's up to this many across. */
#define PERSPECTIVE_PIXELS 700

typedef struct TbRamp
{
  guint32 color[RAMP]; /* CAIRO_FORMAT_RGB24 */
} TbRamp;

double
tb_film_full_tint (const TbOil *oil, double scale)
{
  double thickest = 0;
  int steps;

  for (int row = 0; row < TB_OIL_ROWS; row++)
    for (int column = 0; column < TB_OIL_COLUMNS; column++)
      thickest = MAX (thickest, tb_oil_cell (oil, row, column));
  steps = (int) ceil (tb_units_from_film (thickest * scale) / FULL_UNITS);
  return tb_film_from_units (FULL_UNITS * MAX (steps, 1));
}

double
tb_film_tint (double film, double full)
{
  return sqrt (CLAMP (film / full, 0, 1));
}

TbColor
tb_film_color (const TbTheme *theme, double tint)
{
  TbColor film = tb_color_mix (theme->oil_thin, theme->oil_thick, tint);
  TbColor color = tb_color_mix (theme->wood, film, film.alpha);

  color.alpha = 1;
  return color;
}

static guint32
pixel (TbColor color)
{
  return (guint32) lround (255 * color.red) << 16 | (guint32) lround (255 * color.green) << 8
         | (guint32) lround (255 * color.blue);
}

static TbRamp
new_ramp (const TbTheme *theme)
{
  TbRamp ramp;

  for (int i = 0; i < RAMP; i++)
    ramp.color[i] = pixel (tb_film_color (theme, (double) i / (RAMP - 1)));
  return ramp;
}

static gboolean
is_vector (cairo_t *cr)
{
  switch (cairo_surface_get_type (cairo_get_target (cr)))
    {
    case CAIRO_SURFACE_TYPE_PDF:
    case CAIRO_SURFACE_TYPE_PS:
    case CAIRO_SURFACE_TYPE_SVG:
      return TRUE;
    default:
      return FALSE;
    }
}

/* An image of the film, `fine` samples a cell each way, lying as the plan does. */
static cairo_surface_t *
plan_image (const TbLaneScene *scene, const TbRamp *ramp, int fine)
{
  gboolean sideways = scene->projection == TB_LANE_PLAN_SIDEWAYS;
  int across = TB_OIL_COLUMNS * fine, along = TB_OIL_ROWS * fine;
  cairo_surface_t *image = cairo_image_surface_create (CAIRO_FORMAT_RGB24,
                                                       sideways ? along : across,
                                                       sideways ? across : along);
  guchar *data = cairo_image_surface_get_data (image);
  int stride = cairo_image_surface_get_stride (image);
  double full = tb_film_full_tint (scene->oil, scene->oil_scale);

  for (int i = 0; i < across; i++)
    for (int j = 0; j < along; j++)
      {
        double x = (i + 0.5) * TB_BOARD_WIDTH / fine - TB_LANE_HALF_WIDTH;
        double y = (j + 0.5) * TB_OIL_ROW_LENGTH / fine;
        double tint = tb_film_tint (scene->oil_scale * tb_oil_film (scene->oil, x, y), full);
        int column = sideways ? j : i, row = sideways ? i : along - 1 - j;

        ((guint32 *) (gpointer) (data + row * stride))[column] = ramp->color[lround (tint * (RAMP - 1))];
      }
  cairo_surface_mark_dirty (image);
  return image;
}

static void
draw_plan (TbCanvas *canvas, const TbLaneLayout *layout, const TbLaneScene *scene)
{
  cairo_t *cr = canvas->cr;
  TbRamp ramp = new_ramp (&canvas->theme);
  cairo_surface_t *image = plan_image (scene, &ramp, is_vector (cr) ? VECTOR_SAMPLES : 1);
  /* The grid ends a little past the pit. */
  TbPoint a = tb_lane_layout_point (layout, -TB_LANE_HALF_WIDTH, 0, 0);
  TbPoint b = tb_lane_layout_point (layout, TB_LANE_HALF_WIDTH, TB_OIL_ROWS * TB_OIL_ROW_LENGTH, 0);
  cairo_rectangle_t box = { MIN (a.x, b.x), MIN (a.y, b.y), fabs (b.x - a.x), fabs (b.y - a.y) };

  tb_draw_image (cr, image, &box, &layout->lane);
  cairo_surface_destroy (image);
}

/* Tints of one row of the perspective, from the left edge of the lane to the right one, board by board. */
static void
row_tints (const TbLaneScene *scene, double full, double y, float *tint)
{
  for (int i = 0; i < TB_OIL_COLUMNS; i++)
    {
      double x = (i + 0.5) * TB_BOARD_WIDTH - TB_LANE_HALF_WIDTH;

      tint[i] = (float) ((RAMP - 1) * tb_film_tint (scene->oil_scale * tb_oil_film (scene->oil, x, y), full));
    }
}

static guint32
row_color (const TbRamp *ramp, const float *tint, double board)
{
  double place = CLAMP (board, 0, TB_OIL_COLUMNS - 1);
  int left = MIN ((int) place, TB_OIL_COLUMNS - 2);
  double share = place - left;

  return ramp->color[(int) (0.5 + (1 - share) * (double) tint[left] + share * (double) tint[left + 1])];
}

/* In the perspective a row of the picture is one distance down the lane. */
static void
fill_perspective_row (guint32 *row, int width, const TbRamp *ramp, const float *tint, double left, double step)
{
  for (int i = 0; i < width; i++)
    row[i] = row_color (ramp, tint, left + i * step);
}

static cairo_surface_t *
perspective_image (TbCanvas *canvas, const TbLaneLayout *layout, const TbLaneScene *scene, double shrink)
{
  int width = (int) ceil (layout->lane.width / shrink), height = (int) ceil (layout->lane.height / shrink);
  cairo_surface_t *image = cairo_image_surface_create (CAIRO_FORMAT_RGB24, width, height);
  guchar *data = cairo_image_surface_get_data (image);
  int stride = cairo_image_surface_get_stride (image);
  TbRamp ramp = new_ramp (&canvas->theme);
  double full = tb_film_full_tint (scene->oil, scene->oil_scale);
  float tint[TB_OIL_COLUMNS];

  for (int j = 0; j < height; j++)
    {
      double below = layout->lane.y + (j + 0.5) * shrink - layout->ahead.y;
      double depth = layout->focal * TB_EYE_HEIGHT / below;
      double step = shrink * depth / layout->focal / TB_BOARD_WIDTH;
      double left = (layout->lane.x + 0.5 * shrink - layout->ahead.x) * depth / layout->focal;

      row_tints (scene, full, depth - TB_EYE_BEHIND, tint);
      fill_perspective_row ((guint32 *) (gpointer) (data + j * stride),
                            width,
                            &ramp,
                            tint,
                            (left + TB_LANE_HALF_WIDTH) / TB_BOARD_WIDTH - 0.5,
                            step);
    }
  cairo_surface_mark_dirty (image);
  return image;
}

static void
draw_perspective (TbCanvas *canvas, const TbLaneLayout *layout, const TbLaneScene *scene)
{
  cairo_t *cr = canvas->cr;
  double shrink = MAX (1, layout->lane.width / PERSPECTIVE_PIXELS);
  cairo_surface_t *image = perspective_image (canvas, layout, scene, shrink);

  cairo_matrix_t to_image;

  cairo_matrix_init_scale (&to_image, 1 / shrink, 1 / shrink);
  cairo_matrix_translate (&to_image, -layout->lane.x, -layout->lane.y);
  cairo_set_source_surface (cr, image, 0, 0);
  cairo_pattern_set_matrix (cairo_get_source (cr), &to_image);
  cairo_pattern_set_extend (cairo_get_source (cr), CAIRO_EXTEND_PAD);
  cairo_pattern_set_filter (cairo_get_source (cr), CAIRO_FILTER_BILINEAR);
  tb_lane_quad (cr, layout, (TbLaneArea){ -TB_LANE_HALF_WIDTH, TB_LANE_HALF_WIDTH, 0, TB_PIT_Y });
  cairo_fill (cr);
  cairo_surface_destroy (image);
}

void
tb_lane_film_draw (TbCanvas *canvas, const TbLaneLayout *layout, const TbLaneScene *scene)
{
  if (scene->projection == TB_LANE_FROM_APPROACH)
    draw_perspective (canvas, layout, scene);
  else
    draw_plan (canvas, layout, scene);
}

static void
legend_bar (TbCanvas *canvas, const cairo_rectangle_t *bar)
{
  cairo_t *cr = canvas->cr;
  cairo_pattern_t *ramp = cairo_pattern_create_linear (bar->x, 0, bar->x + bar->width, 0);

  for (int i = 0; i <= LEGEND_STEPS; i++)
    {
      TbColor color = tb_film_color (&canvas->theme, (double) i / LEGEND_STEPS);

      cairo_pattern_add_color_stop_rgb (ramp, (double) i / LEGEND_STEPS, color.red, color.green, color.blue);
    }
  cairo_set_source (cr, ramp);
  tb_draw_rectangle (cr, bar);
  cairo_fill (cr);
  cairo_pattern_destroy (ramp);
  tb_draw_color (cr, canvas->theme.rule);
  cairo_set_line_width (cr, 1);
  cairo_rectangle (cr, bar->x + 0.5, bar->y + 0.5, bar->width - 1, bar->height - 1);
  cairo_stroke (cr);
}

static void
legend_tick (TbCanvas *canvas, const cairo_rectangle_t *bar, double share, double full)
{
  g_autofree char *text = g_strdup_printf ("%.0f", tb_units_from_film (share * full));
  double x = bar->x + tb_film_tint (share, 1) * bar->width, bottom = bar->y + bar->height;
  TbLabel label = { .text = text, .x = x, .y = bottom + 0.2 * canvas->em, .across = TB_ALIGN_MIDDLE };

  label.color = canvas->theme.quiet;
  label.size = 0.92 * canvas->em;
  if (!tb_canvas_try_label (canvas, &label))
    return;
  tb_draw_color (canvas->cr, canvas->theme.quiet);
  tb_draw_line (canvas->cr,
                (TbPoint){ tb_draw_crisp (x), bottom - 0.3 * bar->height },
                (TbPoint){ tb_draw_crisp (x), bottom });
}

void
tb_lane_film_legend (TbCanvas *canvas, const TbLaneLayout *layout, const TbLaneScene *scene)
{
  const cairo_rectangle_t *box = &layout->legend;
  double em = canvas->em, full;
  TbLabel title = { .text = _("oil film, units"), .x = box->x, .color = canvas->theme.quiet, .down = TB_ALIGN_MIDDLE };
  cairo_rectangle_t bar, measured;

  if (box->width == 0)
    return;
  measured = tb_canvas_measure (canvas, &title);
  bar.x = floor (box->x + measured.width + 0.9 * em);
  /* The last number is centred under the bar's end and needs half of its own width. */
  bar.width = floor (box->x + box->width - 0.7 * em - bar.x);
  bar.y = floor (box->y);
  bar.height = round (TB_LEGEND_BAR * em);
  title.y = bar.y + 0.5 * bar.height;
  tb_canvas_label (canvas, &title);
  legend_bar (canvas, &bar);
  full = tb_film_full_tint (scene->oil, scene->oil_scale);
  for (guint i = 0; i < G_N_ELEMENTS (legend_ticks); i++)
    legend_tick (canvas, &bar, legend_ticks[i], full);
}
