/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "tb-draw.h"
#include "tb-lane-ground.h"

/* In the plans: at most this many em, and at most this share of the space between the head pin and the 5 pin. */
#define PLAN_RADIUS 0.75
#define PLAN_SHARE 0.42
#define HEAD 0.42 /* the pin's head, of its belly */
/* The two bands round the neck, m above the lane (typical), and how wide. */
static const double bands[] = { 0.247, 0.262 };
#define BAND_HEIGHT 0.007
/* How much of a pin lies in its own shade. */
#define SHADE 0.30
/* Between the centres of neighbouring pins, m. */
#define PIN_SPACING (12.0 * TB_METRES_PER_INCH)

double
tb_lane_pin_radius (const TbLaneLayout *layout)
{
  double spacing = sqrt (3.0) * PIN_SPACING * tb_lane_layout_along (layout);

  return MIN (PLAN_RADIUS * layout->em, PLAN_SHARE * spacing);
}

static void
draw_from_above (TbCanvas *canvas, const TbLaneLayout *layout)
{
  cairo_t *cr = canvas->cr;
  double radius = tb_lane_pin_radius (layout);

  cairo_set_line_width (cr, MAX (1, 0.1 * layout->em));
  for (int i = 0; i < TB_N_PINS; i++)
    {
      TbPoint at = tb_lane_layout_point (layout, tb_lane_pins[i].x, tb_lane_pins[i].y, 0);

      tb_draw_circle (cr, at, radius);
      tb_draw_color (cr, canvas->theme.pin);
      cairo_fill_preserve (cr);
      tb_draw_color (cr, canvas->theme.pin_edge);
      cairo_stroke (cr);
      tb_draw_circle (cr, at, HEAD * radius);
      tb_draw_color (cr, tb_color_with_alpha (canvas->theme.pin_edge, 0.35));
      cairo_fill (cr);
    }
}

/* Half the pin's width at a height, m. */
static double
half_width (double height)
{
  for (int i = 1; i < TB_N_PIN_PROFILE; i++)
    if (height <= tb_pin_profile[i].height)
      {
        double span = tb_pin_profile[i].height - tb_pin_profile[i - 1].height;
        double share = span > 0 ? (height - tb_pin_profile[i - 1].height) / span : 0;

        return tb_pin_profile[i - 1].radius + share * (tb_pin_profile[i].radius - tb_pin_profile[i - 1].radius);
      }
  return tb_pin_profile[TB_N_PIN_PROFILE - 1].radius;
}

static TbPoint
profile_point (const TbLaneLayout *layout, const TbMark *at, int i, double side)
{
  const TbPinProfile *p = &tb_pin_profile[i];

  return tb_lane_layout_point (layout, at->x + side * p->radius, at->y, p->height);
}

/* A quarter of an ellipse from a to b: upright at a and level at b, or, the other way round, level at a. */
static void
quarter_to (cairo_t *cr, TbPoint a, TbPoint b, gboolean upright)
{
  const double k = 0.5523; /* the usual share for a circle out of Bézier curves */

  if (upright)
    cairo_curve_to (cr, a.x, a.y + k * (b.y - a.y), b.x + k * (a.x - b.x), b.y, b.x, b.y);
  else
    cairo_curve_to (cr, a.x + k * (b.x - a.x), a.y, b.x, b.y + k * (a.y - b.y), b.x, b.y);
}

/* Adds the outline of a pin to the path: one side upwards, over the round head, the other side downwards. */
static void
pin_outline (cairo_t *cr, const TbLaneLayout *layout, const TbMark *at)
{
  const int brow = TB_N_PIN_PROFILE - 2, top = TB_N_PIN_PROFILE - 1;
  TbPoint point, crown = profile_point (layout, at, top, 0);

  for (int i = 0; i <= brow; i++)
    {
      point = profile_point (layout, at, i, -1);
      (i == 0 ? cairo_move_to : cairo_line_to) (cr, point.x, point.y);
    }
  quarter_to (cr, point, crown, TRUE);
  quarter_to (cr, crown, profile_point (layout, at, brow, 1), FALSE);
  for (int i = brow - 1; i >= 0; i--)
    {
      point = profile_point (layout, at, i, 1);
      cairo_line_to (cr, point.x, point.y);
    }
  cairo_close_path (cr);
}

static void
set_pin_shading (TbCanvas *canvas, TbPoint foot, double radius)
{
  const TbTheme *theme = &canvas->theme;
  TbColor shade = tb_color_mix (theme->pin, theme->pin_edge, SHADE);
  cairo_pattern_t *light = cairo_pattern_create_linear (foot.x - radius, 0, foot.x + radius, 0);

  cairo_pattern_add_color_stop_rgb (light, 0, shade.red, shade.green, shade.blue);
  cairo_pattern_add_color_stop_rgb (light, 0.4, theme->pin.red, theme->pin.green, theme->pin.blue);
  cairo_pattern_add_color_stop_rgb (light, 0.7, theme->pin.red, theme->pin.green, theme->pin.blue);
  cairo_pattern_add_color_stop_rgb (light, 1, shade.red, shade.green, shade.blue);
  cairo_set_source (canvas->cr, light);
  cairo_pattern_destroy (light);
}

static void
draw_standing_pin (TbCanvas *canvas, const TbLaneLayout *layout, const TbMark *at)
{
  cairo_t *cr = canvas->cr;
  TbPoint foot = tb_lane_layout_point (layout, at->x, at->y, 0);
  double scale = tb_lane_layout_scale (layout, at->y);

  pin_outline (cr, layout, at);
  set_pin_shading (canvas, foot, scale * half_width (bands[0] / 2));
  cairo_fill_preserve (cr);
  cairo_set_line_width (cr, MAX (0.5, 0.004 * scale));
  tb_draw_color (cr, tb_color_with_alpha (canvas->theme.pin_edge, 0.8));
  cairo_stroke (cr);
  tb_draw_color (cr, canvas->theme.pin_band);
  for (guint i = 0; i < G_N_ELEMENTS (bands); i++)
    {
      double half = scale * half_width (bands[i]);

      cairo_rectangle (cr, foot.x - half, foot.y - scale * (bands[i] + BAND_HEIGHT), 2 * half, scale * BAND_HEIGHT);
    }
  cairo_fill (cr);
}

void
tb_lane_pins_draw (TbCanvas *canvas, const TbLaneLayout *layout)
{
  if (layout->projection != TB_LANE_FROM_APPROACH)
    {
      draw_from_above (canvas, layout);
      return;
    }
  /* The furthest first. */
  for (int i = TB_N_PINS - 1; i >= 0; i--)
    draw_standing_pin (canvas, layout, &tb_lane_pins[i]);
}
