/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"
#include "tb-flare-view.h"

#include <glib/gi18n-lib.h>

#include "tb-flare-figure.h"

/* Distances, em. */
#define PAD 0.9
#define ROW 1.45
/* The ball, of its cell. */
#define BALL_SHARE 0.46
/* A picture this much wider than high has ball and bars side by side. */
#define WIDE 1.3

/* The chart's frame, px, and what its height stands for. */
typedef struct Chart
{
  cairo_rectangle_t box;
  double full; /* of the quantity */
} Chart;

static void
draw_chart_frame (TbCanvas *canvas, const Chart *chart, const char *title, const char *full)
{
  const cairo_rectangle_t *box = &chart->box;
  TbLabel above = { .text = title, .x = box->x, .y = box->y - 0.35 * canvas->em, .down = TB_ALIGN_END };
  TbLabel top = { .text = full, .x = box->x - 0.4 * canvas->em, .y = box->y, .across = TB_ALIGN_END };
  TbLabel zero
      = { .text = "0", .x = top.x, .y = box->y + box->height, .across = TB_ALIGN_END, .down = TB_ALIGN_END };

  above.color = canvas->theme.text;
  above.wrap = box->width;
  top.color = zero.color = canvas->theme.quiet;
  tb_draw_color (canvas->cr, canvas->theme.rule);
  cairo_set_line_width (canvas->cr, 1);
  tb_draw_line (canvas->cr, (TbPoint){ box->x, tb_draw_crisp (box->y + box->height) },
                (TbPoint){ box->x + box->width, tb_draw_crisp (box->y + box->height) });
  tb_draw_line (canvas->cr, (TbPoint){ tb_draw_crisp (box->x), box->y },
                (TbPoint){ tb_draw_crisp (box->x), box->y + box->height });
  tb_canvas_label (canvas, &above);
  tb_canvas_try_label (canvas, &top);
  tb_canvas_try_label (canvas, &zero);
}

static cairo_rectangle_t
bar_box (const Chart *chart, guint i, guint count, double value)
{
  double slot = chart->box.width / count,
         height = chart->full > 0 ? chart->box.height * value / chart->full : 0;

  return (cairo_rectangle_t){ chart->box.x + slot * (i + 0.15), chart->box.y + chart->box.height - height,
                              0.7 * slot, height };
}

static void
draw_spacing_bars (TbCanvas *canvas, const Chart *chart, const TbFlareScene *scene)
{
  GArray *rings = scene->flare->rings;

  tb_draw_color (canvas->cr, canvas->theme.after);
  for (guint i = 0; i < rings->len; i++)
    {
      const TbFlareRing *ring = &g_array_index (rings, TbFlareRing, i);

      if (isnan (ring->spacing))
        continue;
      cairo_rectangle_t bar = bar_box (chart, i, rings->len, ring->spacing);

      tb_draw_rectangle (canvas->cr, &bar);
      cairo_fill (canvas->cr);
    }
}

/* What lay there before the turn is filled, what the turn added is outlined on top. */
static void
draw_oil_bars (TbCanvas *canvas, const Chart *chart, const TbFlareScene *scene)
{
  GArray *rings = scene->flare->rings;

  cairo_set_line_width (canvas->cr, MAX (1, 0.4 * canvas->theme.line_width));
  for (guint i = 0; i < rings->len; i++)
    {
      const TbFlareRing *ring = &g_array_index (rings, TbFlareRing, i);
      cairo_rectangle_t met = bar_box (chart, i, rings->len, ring->film_met);
      cairo_rectangle_t left = bar_box (chart, i, rings->len, ring->film_left);

      tb_draw_color (canvas->cr, canvas->theme.before);
      tb_draw_rectangle (canvas->cr, &met);
      cairo_fill (canvas->cr);
      tb_draw_rectangle (canvas->cr, &left);
      cairo_stroke (canvas->cr);
    }
}

/* Every so many turns a number, and where on the lane the turn began. */
static void
draw_turns (TbCanvas *canvas, const Chart *chart, const TbFlareScene *scene)
{
  GArray *rings = scene->flare->rings;
  guint every = rings->len > 24 ? 10 : 5;
  double y = chart->box.y + chart->box.height + 0.3 * canvas->em;
  TbLabel title = { .text = _ ("turn, and where it begins"),
                    .x = chart->box.x + chart->box.width,
                    .across = TB_ALIGN_END };

  for (guint i = 0; i < rings->len; i++)
    {
      const TbFlareRing *ring = &g_array_index (rings, TbFlareRing, i);
      g_autofree char *text = NULL;
      TbLabel label = { .y = y, .across = TB_ALIGN_MIDDLE, .color = canvas->theme.quiet };

      if (i != 0 && (i + 1) % every != 0)
        continue;
      text = g_strdup_printf (_ ("%u\n%.0f ft"), i + 1, tb_ft_from_metres (ring->start_y));
      label.text = text;
      label.x = chart->box.x + chart->box.width * (i + 0.5) / rings->len;
      if (i == 0)
        {
          label.x = chart->box.x;
          label.across = TB_ALIGN_START;
        }
      tb_canvas_try_label (canvas, &label);
    }
  title.y = y + 2 * 1.2 * canvas->em;
  title.color = canvas->theme.quiet;
  tb_canvas_try_label (canvas, &title);
}

static double
nice_above (double value)
{
  static const double steps[] = { 0.05, 0.1, 0.2, 0.25, 0.3, 0.4, 0.5, 0.6, 0.8, 1, 1.5, 2, 3, 5, 10, 20 };

  for (gsize i = 0; i < G_N_ELEMENTS (steps); i++)
    if (value <= steps[i])
      return steps[i];
  return value;
}

static double
greatest_oil (const TbFlare *flare)
{
  double greatest = 0;

  for (guint i = 0; i < flare->rings->len; i++)
    {
      const TbFlareRing *ring = &g_array_index (flare->rings, TbFlareRing, i);

      greatest = fmax (greatest, fmax (ring->film_left, ring->film_met));
    }
  return greatest;
}

static void
draw_charts (TbCanvas *canvas, const cairo_rectangle_t *area, const TbFlareScene *scene)
{
  double em = canvas->em, left = area->x + 4.2 * em, width = area->x + area->width - left - 0.5 * em;
  double row = 0.5 * (area->height - 4 * ROW * em), widest = scene->flare->widest_spacing;
  Chart spacing = { { left, area->y + 1.6 * em, width, row - 1.6 * em },
                    tb_metres_from_in (nice_above (tb_in_from_metres (isnan (widest) ? 0 : widest))) };
  Chart oil = { { left, area->y + row + 2.4 * em, width, row - 1.6 * em },
                tb_metres_from_um (nice_above (tb_um_from_metres (greatest_oil (scene->flare)))) };
  g_autofree char *full_spacing = tb_flare_length_text (spacing.full, scene->metric);
  g_autofree char *full_oil = g_strdup_printf (_ ("%.2g µm"), tb_um_from_metres (oil.full));

  if (row < 3 * em || width < 6 * em)
    return;
  draw_chart_frame (canvas, &spacing, _ ("To the next ring"), full_spacing);
  draw_spacing_bars (canvas, &spacing, scene);
  draw_chart_frame (canvas, &oil, _ ("Oil on it: met (filled), left (outline)"), full_oil);
  draw_oil_bars (canvas, &oil, scene);
  draw_turns (canvas, &oil, scene);
}

/* Three lines under the ball. */
static void
draw_figures (TbCanvas *canvas, const cairo_rectangle_t *area, const TbFlareScene *scene)
{
  const TbFlare *flare = scene->flare;
  g_autofree char *first = tb_flare_length_text (flare->first_spacing, scene->metric);
  g_autofree char *widest = tb_flare_length_text (flare->widest_spacing, scene->metric);
  g_autofree char *total = tb_flare_length_text (flare->total, scene->metric);
  g_autofree char *text = g_strdup_printf (
      _ ("rings %s apart at first, at most %s; total flare %s\nthe wider and bluer, the more oil"), first,
      widest, total);
  TbLabel label = {
    .text = text, .x = area->x + 0.5 * area->width, .y = area->y + area->height, .color = canvas->theme.text
  };

  label.across = TB_ALIGN_MIDDLE;
  label.down = TB_ALIGN_END;
  label.wrap = area->width;
  tb_canvas_label (canvas, &label);
}

void
tb_flare_view_draw (cairo_t *cr, double width, double height, const TbFlareScene *scene)
{
  g_auto (TbCanvas) canvas = { 0 };
  cairo_rectangle_t ball, charts;
  TbGlobe globe = { 0 };
  double pad, foot;

  cairo_save (cr);
  tb_canvas_init (&canvas, cr, width, height, &scene->theme);
  tb_canvas_fill_background (&canvas);
  pad = PAD * canvas.em;
  foot = 2.4 * ROW * canvas.em;
  if (width >= WIDE * height)
    {
      ball = (cairo_rectangle_t){ pad, pad, BALL_SHARE * (width - 3 * pad), height - 2 * pad };
      charts = (cairo_rectangle_t){ ball.x + ball.width + pad, pad, width - ball.width - 3 * pad,
                                    height - 2 * pad };
    }
  else
    {
      ball = (cairo_rectangle_t){ pad, pad, width - 2 * pad, 0.6 * (height - 3 * pad) };
      charts = (cairo_rectangle_t){ pad, ball.y + ball.height + pad, width - 2 * pad,
                                    height - ball.height - 3 * pad };
    }
  globe.radius = fmin (0.5 * ball.width, 0.5 * (ball.height - foot - 1.5 * canvas.em));
  globe.centre = (TbPoint){ ball.x + 0.5 * ball.width, ball.y + globe.radius };
  if (scene->run->status == TB_OK && scene->run->path.count > 1 && globe.radius > 2 * canvas.em)
    {
      tb_flare_figure_draw (&globe, &canvas, scene->run);
      tb_flare_figure_draw_ruler (&globe, &canvas, scene->run->path.body.radius);
      draw_figures (&canvas, &ball, scene);
      draw_charts (&canvas, &charts, scene);
    }
  cairo_restore (cr);
}
