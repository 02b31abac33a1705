/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"
#include "tb-run-graph.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include "tb-canvas.h"
#include "tb-draw.h"

/* Sizes, em. */
#define MARGIN 0.9
#define RIGHT_MARGIN 2.2
#define AXIS_HEIGHT 1.7
#define STRIP_HEIGHT 0.55
#define STRIP_GAP 0.25
#define BAND_GAP 0.9
#define SCALE_WIDTH 3.2
#define CURSOR_REACH 10.0
#define DOT 0.3
#define TITLE_WIDTH 6.5
/* A graph is wide and low; its type is smaller than the theme's by no more than this. */
#define LEAST_TEXT 0.9
/* Phases: see the strips beside the lane. em, shares of the strip. */
#define RUNG_PITCH 0.55
#define RUNG_SHARE 0.5
#define SKID_SHARE 0.28

#define NEWTONS_PER_POUND (TB_KILOGRAMS_PER_POUND * TB_STANDARD_GRAVITY)
#define FEET_BETWEEN_TICKS 10
#define METRES_BETWEEN_TICKS 3

/* A landing's friction may go this far beyond the rest; more of it is cut off. */
#define FRICTION_ROOM 1.6

typedef struct Span
{
  double low, high; /* unit of the quantity */
} Span;

typedef struct Layout
{
  double left, right; /* px of foul line and head pin */
  cairo_rectangle_t band[TB_RUN_N_QUANTITIES];
  double strip[2]; /* px, tops of the strips of before and after */
  double axis;     /* px, top of the axis */
  Span span[TB_RUN_N_QUANTITIES];
} Layout;

TbRunGraphScene
tb_run_graph_scene_default (void)
{
  return (TbRunGraphScene){ .theme = tb_theme_light (1), .left = NAN, .right = NAN };
}

const char *
tb_run_quantity_name (TbRunQuantity quantity)
{
  const char *const names[TB_RUN_N_QUANTITIES] = { _ ("friction"), _ ("slip"), _ ("heading") };

  return names[quantity];
}

const char *
tb_run_quantity_unit (TbRunQuantity quantity, bool metric)
{
  switch (quantity)
    {
    case TB_RUN_FRICTION:
      return metric ? _ ("N") : _ ("lb");
    case TB_RUN_SLIP:
      return metric ? _ ("km/h") : _ ("mph");
    default:
      return _ ("°");
    }
}

int
tb_run_quantity_digits (TbRunQuantity quantity)
{
  return 1;
}

static double
quantity_of (const TbSample *sample, TbRunQuantity quantity, bool metric)
{
  switch (quantity)
    {
    case TB_RUN_FRICTION:
      return metric ? sample->friction : sample->friction / NEWTONS_PER_POUND;
    case TB_RUN_SLIP:
      return metric ? tb_km_per_hour_from_metres_per_second (sample->slip)
                    : tb_mph_from_metres_per_second (sample->slip);
    default:
      return tb_deg_from_radians (tb_sample_heading (sample));
    }
}

/* A ball in the air touches nothing. */
static bool
has_quantity (const TbSample *sample, TbRunQuantity quantity)
{
  return quantity == TB_RUN_HEADING || sample->phase != TB_PHASE_FLIGHT;
}

double
tb_run_quantity_at (const TbPath *path, TbRunQuantity quantity, double y, bool metric)
{
  TbSample sample;

  if (path == NULL || path->count == 0 || y < path->samples[0].position.y
      || y > path->samples[path->count - 1].position.y || !tb_path_at_distance (path, y, &sample)
      || !has_quantity (&sample, quantity))
    return NAN;
  return quantity_of (&sample, quantity, metric);
}

static void
widen (Span *span, const TbPath *path, TbRunQuantity quantity, bool metric)
{
  for (int i = 0; path != NULL && i < path->count; i++)
    if (has_quantity (&path->samples[i], quantity))
      {
        double value = quantity_of (&path->samples[i], quantity, metric);

        span->low = fmin (span->low, value);
        span->high = fmax (span->high, value);
      }
}

/* The greatest friction after the ball has settled, so that a hard landing does not flatten the rest. */
static double
settled_friction (const TbPath *path, bool metric)
{
  double greatest = 0;

  for (int i = 0; path != NULL && i < path->count; i++)
    if (path->samples[i].phase != TB_PHASE_FLIGHT && path->samples[i].position.y > TB_ARROWS_Y)
      greatest = fmax (greatest, quantity_of (&path->samples[i], TB_RUN_FRICTION, metric));
  return greatest;
}

static Span
find_span (const TbRunGraphScene *scene, TbRunQuantity quantity)
{
  Span span = { 0, 0 };

  widen (&span, scene->before, quantity, scene->metric);
  widen (&span, scene->after, quantity, scene->metric);
  if (quantity == TB_RUN_FRICTION)
    {
      double settled = fmax (settled_friction (scene->before, scene->metric),
                             settled_friction (scene->after, scene->metric));

      span.high = settled > 0 ? fmin (span.high, FRICTION_ROOM * settled) : span.high;
    }
  if (!(span.high > span.low))
    span.high = span.low + 1;
  return span;
}

static void
layout_init (Layout *self, const TbCanvas *canvas, const TbRunGraphScene *scene)
{
  double em = canvas->em, top = MARGIN * em, height;

  self->left = isfinite (scene->left) ? scene->left : SCALE_WIDTH * em;
  self->right = isfinite (scene->right) ? scene->right : canvas->width - RIGHT_MARGIN * em;
  self->axis = canvas->height - AXIS_HEIGHT * em;
  self->strip[1] = self->axis - (STRIP_GAP + STRIP_HEIGHT) * em;
  self->strip[0] = self->strip[1] - (STRIP_GAP + STRIP_HEIGHT) * em;
  height = (self->strip[0] - STRIP_GAP * em - top) / TB_RUN_N_QUANTITIES;
  for (int i = 0; i < TB_RUN_N_QUANTITIES; i++)
    {
      self->band[i] = (cairo_rectangle_t){ self->left, top + i * height, self->right - self->left,
                                           height - BAND_GAP * em };
      self->span[i] = find_span (scene, (TbRunQuantity) i);
    }
}

static void
canvas_init (TbCanvas *canvas, cairo_t *cr, double width, double height, const TbRunGraphScene *scene)
{
  tb_canvas_init (canvas, cr, width, height, &scene->theme);
  canvas->em = fmax (canvas->em, LEAST_TEXT * scene->theme.text_size);
}

static double
px_from_y (const Layout *layout, double y)
{
  return layout->left + (layout->right - layout->left) * y / TB_HEAD_PIN_Y;
}

static double
py_from_value (const Layout *layout, TbRunQuantity quantity, double value)
{
  const cairo_rectangle_t *band = &layout->band[quantity];
  const Span *span = &layout->span[quantity];
  double share = (CLAMP (value, span->low, span->high) - span->low) / (span->high - span->low);

  return band->y + band->height * (1 - share);
}

static void
draw_scale_label (TbCanvas *canvas, const Layout *layout, TbRunQuantity quantity, double value)
{
  g_autofree char *text = g_strdup_printf ("%.*f", fabs (value) < 9.95 ? 1 : 0, value);

  tb_canvas_try_label (canvas, &(TbLabel){ .text = text,
                                           .x = layout->left - 0.4 * canvas->em,
                                           .y = py_from_value (layout, quantity, value),
                                           .across = TB_ALIGN_END,
                                           .down = TB_ALIGN_MIDDLE,
                                           .size = 0.85 * canvas->em,
                                           .color = canvas->theme.quiet });
}

static void
draw_band (TbCanvas *canvas, const Layout *layout, TbRunQuantity quantity)
{
  double zero = tb_draw_crisp (py_from_value (layout, quantity, 0));

  tb_draw_color (canvas->cr, canvas->theme.rule);
  cairo_set_line_width (canvas->cr, 1);
  tb_draw_line (canvas->cr, (TbPoint){ layout->left, zero }, (TbPoint){ layout->right, zero });
  draw_scale_label (canvas, layout, quantity, 0);
  draw_scale_label (canvas, layout, quantity, layout->span[quantity].high);
  if (layout->span[quantity].low < 0)
    draw_scale_label (canvas, layout, quantity, layout->span[quantity].low);
}

/* Over the lines, so that it can be read. */
static void
draw_title (TbCanvas *canvas, const Layout *layout, const TbRunGraphScene *scene, TbRunQuantity quantity)
{
  g_autofree char *title = NULL;

  /* Translators: a quantity and its unit: "friction, lb" */
  title = g_strdup_printf (_ ("%s, %s"), tb_run_quantity_name (quantity),
                           tb_run_quantity_unit (quantity, scene->metric));
  tb_canvas_label (canvas, &(TbLabel){ .text = title,
                                       .x = layout->left + 0.3 * canvas->em,
                                       .y = layout->band[quantity].y - 0.4 * canvas->em,
                                       .plate = TRUE,
                                       .color = canvas->theme.text });
}

static void
draw_run (TbCanvas *canvas, const Layout *layout, const TbRunGraphScene *scene, gboolean before)
{
  const TbPath *path = before ? scene->before : scene->after;
  TbRunStyle style = tb_run_style (&canvas->theme, before);

  for (int quantity = 0; path != NULL && quantity < TB_RUN_N_QUANTITIES; quantity++)
    {
      g_autoptr (TbPolyline) line = tb_polyline_new ();

      for (int i = 0; i < path->count; i++)
        if (has_quantity (&path->samples[i], (TbRunQuantity) quantity))
          tb_polyline_add (line,
                           (TbPoint){ px_from_y (layout, path->samples[i].position.y),
                                      py_from_value (layout, (TbRunQuantity) quantity,
                                                     quantity_of (&path->samples[i], (TbRunQuantity) quantity,
                                                                  scene->metric)) });
      tb_draw_color (canvas->cr, style.color);
      tb_draw_set_run (canvas->cr, &style);
      tb_polyline_trace (line, canvas->cr);
      cairo_stroke (canvas->cr);
      cairo_set_dash (canvas->cr, NULL, 0, 0);
    }
}

static void
add_box (cairo_t *cr, const Layout *layout, double from, double to, double top, double height)
{
  double x = px_from_y (layout, from);

  if (to > from)
    tb_draw_rectangle (cr, &(cairo_rectangle_t){ x, top, px_from_y (layout, to) - x, height });
}

/* Skid a thin line, hook rungs, roll a solid band, as beside the lane. */
static void
draw_strip (TbCanvas *canvas, const Layout *layout, const TbPath *path, gboolean before)
{
  const TbMeasures *m = &path->measures;
  double end = path->samples[path->count - 1].position.y, top = layout->strip[before ? 0 : 1];
  double height = STRIP_HEIGHT * canvas->em,
         pitch = RUNG_PITCH * canvas->em * TB_HEAD_PIN_Y / (layout->right - layout->left);
  double start = CLAMP (isnan (m->landing_y) ? 0 : m->landing_y, 0, end);
  double roll = CLAMP (isnan (m->roll_start_y) ? end : m->roll_start_y, start, end);
  double hook = CLAMP (isnan (m->hook_start_y) ? roll : m->hook_start_y, start, roll);
  int rungs = MAX ((int) lround ((roll - hook) / pitch), 1);

  tb_draw_color (canvas->cr, tb_run_style (&canvas->theme, before).color);
  add_box (canvas->cr, layout, start, hook, top + 0.5 * (1 - SKID_SHARE) * height, SKID_SHARE * height);
  for (int i = 0; i < rungs && roll > hook; i++)
    add_box (canvas->cr, layout, hook + (roll - hook) * i / rungs,
             hook + (roll - hook) * (i + RUNG_SHARE) / rungs, top, height);
  add_box (canvas->cr, layout, roll, end, top, height);
  cairo_fill (canvas->cr);
}

static void
draw_axis (TbCanvas *canvas, const Layout *layout, bool metric)
{
  double step = metric ? METRES_BETWEEN_TICKS : TB_METRES_PER_FOOT * FEET_BETWEEN_TICKS;
  int count = (int) floor (TB_HEAD_PIN_Y / step + 1e-6);

  for (int i = 0; i <= count; i++)
    {
      double x = tb_draw_crisp (px_from_y (layout, i * step));
      int number = metric ? i * METRES_BETWEEN_TICKS : i * FEET_BETWEEN_TICKS;
      g_autofree char *text = i < count ? g_strdup_printf ("%d", number)
                                        : g_strdup_printf (metric ? _ ("%d m") : _ ("%d ft"), number);

      tb_draw_color (canvas->cr, tb_color_with_alpha (canvas->theme.rule, 0.6));
      cairo_set_line_width (canvas->cr, 1);
      tb_draw_line (canvas->cr, (TbPoint){ x, layout->band[0].y }, (TbPoint){ x, layout->axis });
      tb_canvas_try_label (canvas, &(TbLabel){ .text = text,
                                               .x = x,
                                               .y = layout->axis + 0.15 * canvas->em,
                                               .across = TB_ALIGN_MIDDLE,
                                               .color = canvas->theme.quiet });
    }
}

void
tb_run_graph_draw (cairo_t *cr, double width, double height, const TbRunGraphScene *scene)
{
  g_auto (TbCanvas) canvas;
  Layout layout;

  canvas_init (&canvas, cr, width, height, scene);
  tb_canvas_fill_background (&canvas);
  if (!tb_canvas_has_room (&canvas))
    return;
  layout_init (&layout, &canvas, scene);
  draw_axis (&canvas, &layout, scene->metric);
  for (int quantity = 0; quantity < TB_RUN_N_QUANTITIES; quantity++)
    draw_band (&canvas, &layout, (TbRunQuantity) quantity);
  for (int side = 0; side < 2; side++)
    {
      const TbPath *path = side == 0 ? scene->before : scene->after;

      draw_run (&canvas, &layout, scene, side == 0);
      if (path != NULL && path->count > 0)
        draw_strip (&canvas, &layout, path, side == 0);
    }
  for (int quantity = 0; quantity < TB_RUN_N_QUANTITIES; quantity++)
    draw_title (&canvas, &layout, scene, (TbRunQuantity) quantity);
}

/* What one run has at the line: a mark, and the number beside it. */
static void
draw_reading (TbCanvas *canvas,
              const Layout *layout,
              const TbRunGraphScene *scene,
              TbRunQuantity quantity,
              double y)
{
  double x = px_from_y (layout, y), number_y[2];
  gboolean flip = x > 0.5 * (layout->left + layout->right);

  for (int side = 0; side < 2; side++)
    {
      double value
          = tb_run_quantity_at (side == 0 ? scene->before : scene->after, quantity, y, scene->metric);
      TbRunStyle style = tb_run_style (&canvas->theme, side == 0);
      g_autofree char *text = NULL;
      TbPoint at;

      if (isnan (value))
        continue;
      at = (TbPoint){ x, py_from_value (layout, quantity, value) };
      tb_draw_run_mark (canvas->cr, &canvas->theme, &style, &at, DOT * canvas->em);
      text = g_strdup_printf ("%.*f", tb_run_quantity_digits (quantity), value);
      number_y[side] = layout->band[quantity].y + (side == 0 ? 0 : 1.05) * canvas->em;
      tb_canvas_label (canvas, &(TbLabel){ .text = text,
                                           .x = flip ? x - 0.6 * canvas->em
                                                     : fmax (x + 0.6 * canvas->em,
                                                             layout->left + TITLE_WIDTH * canvas->em),
                                           .y = number_y[side],
                                           .across = flip ? TB_ALIGN_END : TB_ALIGN_START,
                                           .plate = TRUE,
                                           .bold = side == 1,
                                           .color = style.color });
    }
}

void
tb_run_graph_draw_cursor (cairo_t *cr, double width, double height, const TbRunGraphScene *scene, double y)
{
  g_auto (TbCanvas) canvas;
  Layout layout;
  double x;

  canvas_init (&canvas, cr, width, height, scene);
  if (!tb_canvas_has_room (&canvas))
    return;
  layout_init (&layout, &canvas, scene);
  x = tb_draw_crisp (px_from_y (&layout, y));
  tb_draw_color (cr, canvas.theme.text);
  cairo_set_line_width (cr, 1);
  tb_draw_line (cr, (TbPoint){ x, layout.band[0].y }, (TbPoint){ x, layout.axis });
  for (int quantity = 0; quantity < TB_RUN_N_QUANTITIES; quantity++)
    draw_reading (&canvas, &layout, scene, (TbRunQuantity) quantity, y);
}

void
tb_run_graph_cursor_extents (double width,
                             double height,
                             const TbRunGraphScene *scene,
                             double y,
                             cairo_rectangle_t *extents)
{
  g_auto (TbCanvas) canvas;
  Layout layout;
  double x;

  canvas_init (&canvas, NULL, width, height, scene);
  layout_init (&layout, &canvas, scene);
  x = px_from_y (&layout, y);
  *extents = (cairo_rectangle_t){ x - CURSOR_REACH * canvas.em, 0, 2 * CURSOR_REACH * canvas.em, height };
}

bool
tb_run_graph_to_distance (double width, double height, const TbRunGraphScene *scene, double px, double *y)
{
  g_auto (TbCanvas) canvas;
  Layout layout;
  double at;

  canvas_init (&canvas, NULL, width, height, scene);
  layout_init (&layout, &canvas, scene);
  at = (px - layout.left) / (layout.right - layout.left) * TB_HEAD_PIN_Y;
  *y = CLAMP (at, 0, TB_HEAD_PIN_Y);
  return at == *y;
}
