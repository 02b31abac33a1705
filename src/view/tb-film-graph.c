/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include "tb-draw.h"
#include "tb-film-graph.h"

/* Distances, em. */
#define LEFT 2.6
#define RIGHT 0.8
#define TOP 1.9
#define BOTTOM 1.6
#define TICK 0.3
/* Points of a curve: one each so many px. */
#define CURVE_PX 2.0
#define FILL_OPACITY 0.28
#define FEET_STEP 10
#define BOARD_STEP 5
#define TICKS_UP 4

cairo_rectangle_t
tb_film_graph_plot (const TbCanvas *canvas, const cairo_rectangle_t *box)
{
  double em = canvas->em;

  return (cairo_rectangle_t){ box->x + LEFT * em, box->y + TOP * em, box->width - (LEFT + RIGHT) * em,
                              box->height - (TOP + BOTTOM) * em };
}

/* The sideways axis from one end to the other. Across: board 39 left and board 1 right, as the bowler sees
 * the lane. */
static double
axis_low (const TbFilmGraph *graph)
{
  return graph->along ? 0 : -TB_LANE_HALF_WIDTH;
}

static double
axis_high (const TbFilmGraph *graph)
{
  return graph->along ? TB_HEAD_PIN_Y : TB_LANE_HALF_WIDTH;
}

static double
px_at (const cairo_rectangle_t *plot, const TbFilmGraph *graph, double place)
{
  return plot->x + plot->width * (place - axis_low (graph)) / (axis_high (graph) - axis_low (graph));
}

double
tb_film_graph_place (const cairo_rectangle_t *plot, const TbFilmGraph *graph, double px)
{
  double share = CLAMP ((px - plot->x) / plot->width, 0, 1);

  return axis_low (graph) + share * (axis_high (graph) - axis_low (graph));
}

static double
film_at (const TbFilmGraph *graph, const TbOil *oil, double place)
{
  return graph->scale
         * (graph->along ? tb_oil_film (oil, graph->at, place) : tb_oil_film (oil, place, graph->at));
}

static double
py_of (const cairo_rectangle_t *plot, const TbFilmGraph *graph, double film)
{
  return plot->y + plot->height * (1 - CLAMP (film / graph->full, 0, 1));
}

static TbPolyline *
curve (const cairo_rectangle_t *plot, const TbFilmGraph *graph, const TbOil *oil)
{
  TbPolyline *line = tb_polyline_new ();
  int points = MAX ((int)(plot->width / CURVE_PX), 2);

  for (int i = 0; i <= points; i++)
    {
      double px = plot->x + plot->width * i / points;

      tb_polyline_add (
          line,
          (TbPoint){ px, py_of (plot, graph, film_at (graph, oil, tb_film_graph_place (plot, graph, px))) });
    }
  return line;
}

static void
draw_area (TbCanvas *canvas, const cairo_rectangle_t *plot, const TbFilmGraph *graph)
{
  cairo_t *cr = canvas->cr;
  g_autoptr (TbPolyline) line = curve (plot, graph, graph->oil);

  tb_polyline_trace (line, cr);
  cairo_line_to (cr, plot->x + plot->width, plot->y + plot->height);
  cairo_line_to (cr, plot->x, plot->y + plot->height);
  cairo_close_path (cr);
  tb_draw_color (cr, tb_color_with_alpha (canvas->theme.oil_thick, FILL_OPACITY));
  cairo_fill (cr);
  tb_polyline_trace (line, cr);
  tb_draw_color (cr, graph->earlier ? canvas->theme.after : canvas->theme.text);
  cairo_set_line_width (cr, 0.7 * canvas->theme.line_width);
  cairo_stroke (cr);
}

static void
draw_earlier (TbCanvas *canvas, const cairo_rectangle_t *plot, const TbFilmGraph *graph)
{
  g_autoptr (TbPolyline) line = curve (plot, graph, graph->earlier);
  TbRunStyle style = tb_run_style (&canvas->theme, TRUE);

  style.width *= 0.7;
  cairo_save (canvas->cr);
  tb_draw_set_run (canvas->cr, &style);
  tb_draw_color (canvas->cr, style.color);
  tb_polyline_trace (line, canvas->cr);
  cairo_stroke (canvas->cr);
  cairo_restore (canvas->cr);
}

static void
draw_tick (TbCanvas *canvas, TbPoint at, gboolean upwards, const char *text)
{
  double em = canvas->em;
  TbLabel label = { .text = text, .x = at.x, .y = at.y, .color = canvas->theme.quiet, .size = 0.9 * em };

  label.x -= upwards ? (TICK + 0.2) * em : 0;
  label.y += upwards ? 0 : (TICK + 0.1) * em;
  label.across = upwards ? TB_ALIGN_END : TB_ALIGN_MIDDLE;
  label.down = upwards ? TB_ALIGN_MIDDLE : TB_ALIGN_START;
  tb_canvas_try_label (canvas, &label);
  tb_draw_color (canvas->cr, canvas->theme.quiet);
  cairo_set_line_width (canvas->cr, 1);
  if (upwards)
    tb_draw_line (canvas->cr, (TbPoint){ at.x - TICK * em, tb_draw_crisp (at.y) },
                  (TbPoint){ at.x, tb_draw_crisp (at.y) });
  else
    tb_draw_line (canvas->cr, (TbPoint){ tb_draw_crisp (at.x), at.y },
                  (TbPoint){ tb_draw_crisp (at.x), at.y + TICK * em });
}

static void
draw_ticks (TbCanvas *canvas, const cairo_rectangle_t *plot, const TbFilmGraph *graph)
{
  int step = graph->along ? FEET_STEP : BOARD_STEP,
      last = graph->along ? (int)TB_HEAD_PIN_FT : TB_LANE_BOARDS;
  double units = tb_units_from_film (graph->full);

  for (int i = graph->along ? 0 : step; i <= last; i += step)
    {
      g_autofree char *text = g_strdup_printf ("%d", i);
      double x = tb_x_from_board (i), place = graph->along ? tb_metres_from_ft (i) : graph->mirrored ? -x : x;

      draw_tick (canvas, (TbPoint){ px_at (plot, graph, place), plot->y + plot->height }, FALSE, text);
    }
  for (int i = 0; i <= TICKS_UP; i++)
    {
      g_autofree char *text = g_strdup_printf ("%.4g", units * i / TICKS_UP);

      draw_tick (canvas, (TbPoint){ plot->x, plot->y + plot->height * (1 - (double)i / TICKS_UP) }, TRUE,
                 text);
    }
}

static char *
title_text (const TbFilmGraph *graph)
{
  double board = tb_board_from_x (graph->mirrored ? -graph->at : graph->at);

  if (graph->along)
    return g_strdup_printf (_ ("along board %.0f, units over feet"), board);
  return g_strdup_printf (_ ("across at %.1f ft, units over boards"), tb_ft_from_metres (graph->at));
}

static void
draw_cursor (TbCanvas *canvas, const cairo_rectangle_t *plot, const TbFilmGraph *graph)
{
  double px = px_at (plot, graph, graph->cursor), film = film_at (graph, graph->oil, graph->cursor);
  g_autofree char *text = g_strdup_printf (_ ("%.1f units"), tb_units_from_film (film));
  TbPoint dot = { px, py_of (plot, graph, film) };
  TbLabel label = { .text = text, .y = dot.y - 0.5 * canvas->em, .down = TB_ALIGN_END, .plate = TRUE };

  tb_draw_color (canvas->cr, tb_color_with_alpha (canvas->theme.text, 0.45));
  cairo_set_line_width (canvas->cr, 1);
  tb_draw_line (canvas->cr, (TbPoint){ tb_draw_crisp (px), plot->y },
                (TbPoint){ tb_draw_crisp (px), plot->y + plot->height });
  tb_draw_circle (canvas->cr, dot, 0.3 * canvas->em);
  tb_draw_color (canvas->cr, canvas->theme.text);
  cairo_fill (canvas->cr);
  label.color = canvas->theme.text;
  label.across = px > plot->x + 0.5 * plot->width ? TB_ALIGN_END : TB_ALIGN_START;
  label.x = px + (label.across == TB_ALIGN_END ? -0.6 : 0.6) * canvas->em;
  label.y = MAX (label.y, plot->y + 1.3 * canvas->em);
  tb_canvas_label (canvas, &label);
}

void
tb_film_graph_draw (TbCanvas *canvas, const cairo_rectangle_t *box, const TbFilmGraph *graph)
{
  cairo_rectangle_t plot = tb_film_graph_plot (canvas, box);
  g_autofree char *title = title_text (graph);
  TbLabel label = { .text = title, .x = plot.x, .y = box->y + 0.2 * canvas->em, .color = canvas->theme.text };

  if (plot.width < canvas->em || plot.height < canvas->em)
    return;
  tb_canvas_label (canvas, &label);
  draw_area (canvas, &plot, graph);
  if (graph->earlier)
    draw_earlier (canvas, &plot, graph);
  draw_ticks (canvas, &plot, graph);
  tb_draw_color (canvas->cr, canvas->theme.quiet);
  cairo_set_line_width (canvas->cr, 1);
  cairo_rectangle (canvas->cr, floor (plot.x) + 0.5, floor (plot.y) + 0.5, floor (plot.width),
                   floor (plot.height));
  cairo_stroke (canvas->cr);
  if (!isnan (graph->cursor))
    draw_cursor (canvas, &plot, graph);
}
