/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "tb-curve-view.h"

#include <math.h>
#include <string.h>

#include "tb-canvas.h"
#include "tb-draw.h"

/* Distances, em. */
#define PAD 0.8
#define ROW 1.4
#define AXIS 2.8 /* to the left of a panel, for its numbers */
#define RIGHT 1.0
#define LEAST_WIDTH 13.0 /* of a panel */
#define DOT 0.28
#define PRESENT_DOT 0.5
/* Share of the scale left free above and below the lines. */
#define MARGIN 0.12

/* One panel, and the way from numbers to the picture. */
typedef struct Plot
{
  const TbCurveScene *scene;
  const TbCurvePanel *panel;
  cairo_rectangle_t box; /* px, between the axes */
  double low, high;      /* of the vertical scale */
} Plot;

static TbPoint
plot_point (const Plot *plot, double x, double y)
{
  const TbCurveScene *scene = plot->scene;

  return (TbPoint){ plot->box.x + plot->box.width * (x - scene->low) / (scene->high - scene->low),
                    plot->box.y + plot->box.height * (plot->high - y) / (plot->high - plot->low) };
}

static void
extend (const TbCurveLine *line, double *low, double *high)
{
  for (guint i = 0; i < line->count; i++)
    {
      *low = fmin (*low, line->y[i]);
      *high = fmax (*high, line->y[i]);
    }
  if (line->count > 0)
    {
      *low = fmin (*low, line->present);
      *high = fmax (*high, line->present);
    }
}

/* FALSE if no line has a number. */
static gboolean
set_scale (Plot *plot)
{
  double low = NAN, high = NAN, span;

  extend (&plot->panel->dashed, &low, &high);
  extend (&plot->panel->solid, &low, &high);
  if (isnan (low))
    return FALSE;
  span = fmax (high - low, plot->panel->least_span);
  plot->low = 0.5 * (low + high) - (0.5 + MARGIN) * span;
  plot->high = 0.5 * (low + high) + (0.5 + MARGIN) * span;
  return plot->high > plot->low;
}

/* Steps of 1, 2 or 5 times a power of ten, four or fewer. */
static double
scale_step (double span)
{
  static const double steps[] = { 1, 2, 5, 10 };
  double power = pow (10, floor (log10 (span / 4)));

  for (gsize i = 0; i < G_N_ELEMENTS (steps); i++)
    if (span / (steps[i] * power) <= 4)
      return steps[i] * power;
  return 10 * power;
}

static void
draw_scale (const Plot *plot, TbCanvas *canvas)
{
  double step = scale_step (plot->high - plot->low);
  int digits = step < 1 ? MAX (1, plot->panel->digits) : 0;

  cairo_set_line_width (canvas->cr, 1);
  for (double value = ceil (plot->low / step) * step; value <= plot->high; value += step)
    {
      double y = plot_point (plot, 0, value).y;
      g_autofree char *text = g_strdup_printf ("%.*f", digits, fabs (value) < 1e-9 ? 0 : value);
      TbLabel label = { .text = text, .x = plot->box.x - 0.4 * canvas->em, .y = y, .across = TB_ALIGN_END };

      label.down = TB_ALIGN_MIDDLE;
      label.color = canvas->theme.quiet;
      tb_draw_color (canvas->cr, tb_color_with_alpha (canvas->theme.rule, 0.5));
      tb_draw_line (canvas->cr, (TbPoint){ plot->box.x, tb_draw_crisp (y) },
                    (TbPoint){ plot->box.x + plot->box.width, tb_draw_crisp (y) });
      tb_canvas_try_label (canvas, &label);
    }
}

static void
draw_ticks (const Plot *plot, TbCanvas *canvas)
{
  double y = plot->box.y + plot->box.height;

  tb_draw_color (canvas->cr, canvas->theme.rule);
  tb_draw_line (canvas->cr, (TbPoint){ plot->box.x, tb_draw_crisp (y) },
                (TbPoint){ plot->box.x + plot->box.width, tb_draw_crisp (y) });
  for (guint i = 0; i < plot->scene->n_ticks; i++)
    {
      const TbCurveTick *tick = &plot->scene->ticks[i];
      double x = plot_point (plot, tick->x, plot->low).x;
      TbLabel label = { .text = tick->label, .x = x, .y = y + 0.35 * canvas->em, .across = TB_ALIGN_MIDDLE };

      label.color = canvas->theme.quiet;
      tb_draw_color (canvas->cr, canvas->theme.rule);
      tb_draw_line (canvas->cr, (TbPoint){ tb_draw_crisp (x), y },
                    (TbPoint){ tb_draw_crisp (x), y + 0.25 * canvas->em });
      tb_canvas_try_label (canvas, &label);
    }
}

static double
place_of (const Plot *plot, const TbCurveLine *line)
{
  return plot->scene->own_places ? line->place : plot->scene->present;
}

static void
draw_present (const Plot *plot, TbCanvas *canvas)
{
  const double dots[] = { 0.25 * canvas->em, 0.25 * canvas->em };
  double x = plot_point (plot, plot->scene->present, plot->low).x;

  if (plot->scene->own_places || isnan (plot->scene->present))
    return;
  tb_draw_color (canvas->cr, canvas->theme.text);
  cairo_set_line_width (canvas->cr, 1);
  cairo_set_dash (canvas->cr, dots, G_N_ELEMENTS (dots), 0);
  tb_draw_line (canvas->cr, (TbPoint){ tb_draw_crisp (x), plot->box.y },
                (TbPoint){ tb_draw_crisp (x), plot->box.y + plot->box.height });
  cairo_set_dash (canvas->cr, NULL, 0, 0);
}

/* The number at the present place, beside its dot. */
static void
label_present (const Plot *plot, TbCanvas *canvas, const TbCurveLine *line, const TbRunStyle *style)
{
  TbPoint at = plot_point (plot, place_of (plot, line), line->present);
  g_autofree char *text = g_strdup_printf ("%.*f%s", plot->panel->digits, line->present, plot->panel->unit);
  double gap = 0.8 * canvas->em;
  const double sides[][2] = { { 1, -0.5 }, { -1, -0.5 }, { 1, 0.5 }, { -1, 0.5 }, { 1, -1.6 }, { -1, 1.6 } };

  for (gsize i = 0; i < G_N_ELEMENTS (sides); i++)
    {
      TbLabel label = {
        .text = text, .x = at.x + sides[i][0] * gap, .y = at.y + sides[i][1] * gap, .color = style->color
      };

      label.across = sides[i][0] < 0 ? TB_ALIGN_END : TB_ALIGN_START;
      label.down = TB_ALIGN_MIDDLE;
      label.bold = TRUE;
      label.plate = TRUE;
      if (tb_canvas_try_label (canvas, &label))
        return;
    }
}

static void
draw_line (const Plot *plot, TbCanvas *canvas, const TbCurveLine *line, gboolean dashed)
{
  TbRunStyle style = tb_run_style (&canvas->theme, dashed);
  gboolean joined = FALSE;

  tb_draw_set_run (canvas->cr, &style);
  tb_draw_color (canvas->cr, style.color);
  for (guint i = 0; i < line->count; i++)
    {
      TbPoint at = plot_point (plot, line->x[i], line->y[i]);

      if (isnan (line->y[i]))
        {
          joined = FALSE;
          continue;
        }
      (joined ? cairo_line_to : cairo_move_to) (canvas->cr, at.x, at.y);
      joined = TRUE;
    }
  cairo_stroke (canvas->cr);
  cairo_set_dash (canvas->cr, NULL, 0, 0);
  for (guint i = 0; i < line->count; i++)
    if (!isnan (line->y[i]))
      {
        TbPoint at = plot_point (plot, line->x[i], line->y[i]);

        tb_draw_run_mark (canvas->cr, &canvas->theme, &style, &at, DOT * canvas->em);
      }
}

static void
draw_present_mark (const Plot *plot, TbCanvas *canvas, const TbCurveLine *line, gboolean dashed)
{
  TbRunStyle style = tb_run_style (&canvas->theme, dashed);
  TbPoint at = plot_point (plot, place_of (plot, line), line->present);

  if (line->count == 0 || isnan (line->present) || isnan (place_of (plot, line)))
    return;
  tb_draw_run_mark (canvas->cr, &canvas->theme, &style, &at, PRESENT_DOT * canvas->em);
  label_present (plot, canvas, line, &style);
}

static void
draw_panel (TbCanvas *canvas,
            const TbCurveScene *scene,
            const TbCurvePanel *panel,
            const cairo_rectangle_t *cell)
{
  double em = canvas->em;
  Plot plot = { .scene = scene, .panel = panel };
  /* The unit stands beside the name, so that the scale's numbers stay short. */
  g_autofree char *name = panel->unit[0] != '\0' ? g_strdup_printf ("%s, %s", panel->title,
                                                                    panel->unit + strspn (panel->unit, " "))
                                                 : g_strdup (panel->title);
  TbLabel title
      = { .text = name, .x = cell->x + PAD * em, .y = cell->y, .bold = TRUE, .color = canvas->theme.text };

  plot.box = (cairo_rectangle_t){ cell->x + AXIS * em, cell->y + ROW * em, cell->width - (AXIS + RIGHT) * em,
                                  cell->height - 2.6 * ROW * em };
  tb_canvas_label (canvas, &title);
  if (plot.box.height < 2 * em || !set_scale (&plot))
    return;
  draw_scale (&plot, canvas);
  draw_ticks (&plot, canvas);
  draw_present (&plot, canvas);
  draw_line (&plot, canvas, &panel->dashed, TRUE);
  draw_line (&plot, canvas, &panel->solid, FALSE);
  draw_present_mark (&plot, canvas, &panel->dashed, TRUE);
  draw_present_mark (&plot, canvas, &panel->solid, FALSE);
}

/* A piece of a line with its name; returns where the next may begin. */
static double
draw_key_entry (TbCanvas *canvas, const char *text, gboolean dashed, double x, double y)
{
  TbRunStyle style = tb_run_style (&canvas->theme, dashed);
  double em = canvas->em;
  TbPoint from = { x, y }, to = { x + 2.2 * em, y };
  TbLabel label
      = { .text = text, .x = to.x + 0.8 * em, .y = y, .down = TB_ALIGN_MIDDLE, .color = canvas->theme.text };
  cairo_rectangle_t box = tb_canvas_measure (canvas, &label);

  tb_draw_set_run (canvas->cr, &style);
  tb_draw_color (canvas->cr, style.color);
  tb_draw_line (canvas->cr, from, to);
  cairo_set_dash (canvas->cr, NULL, 0, 0);
  tb_draw_run_mark (canvas->cr, &canvas->theme, &style, &to, DOT * em);
  tb_canvas_try_label (canvas, &label);
  return box.x + box.width + 1.6 * em;
}

/* Key and the name of the horizontal scale, in one row at the foot. */
static void
draw_foot (TbCanvas *canvas, const TbCurveScene *scene)
{
  double em = canvas->em, y = canvas->height - 0.5 * ROW * em - 0.3 * em, x = PAD * em;
  TbLabel title = { .text = scene->x_title, .x = canvas->width - PAD * em, .y = y, .across = TB_ALIGN_END };

  if (scene->dashed_label != NULL)
    x = draw_key_entry (canvas, scene->dashed_label, TRUE, x, y);
  if (scene->solid_label != NULL)
    draw_key_entry (canvas, scene->solid_label, FALSE, x, y);
  title.down = TB_ALIGN_MIDDLE;
  title.color = canvas->theme.quiet;
  if (scene->x_title != NULL)
    tb_canvas_try_label (canvas, &title);
}

/* Panels are pleasant at this many times their height. */
#define ASPECT 1.5

/* Columns that make the largest panels of a pleasant shape. */
static guint
best_columns (const TbCanvas *canvas, guint count)
{
  guint best = 1;
  double largest = 0;

  for (guint columns = 1; columns <= count; columns++)
    {
      guint rows = (count + columns - 1) / columns;
      double size = fmin (canvas->width / columns / ASPECT, canvas->height / rows);

      if (size <= largest || (columns > 1 && canvas->width / columns < LEAST_WIDTH * canvas->em))
        continue;
      largest = size;
      best = columns;
    }
  return best;
}

void
tb_curve_view_draw (cairo_t *cr, double width, double height, const TbCurveScene *scene)
{
  g_auto (TbCanvas) canvas = { 0 };
  guint columns, rows;
  double top, cell_width, cell_height;

  cairo_save (cr);
  tb_canvas_init (&canvas, cr, width, height, &scene->theme);
  tb_canvas_fill_background (&canvas);
  top = PAD * canvas.em;
  columns = best_columns (&canvas, MAX (scene->n_panels, 1));
  rows = (scene->n_panels + columns - 1) / columns;
  cell_width = width / columns;
  cell_height = (height - top - (ROW + PAD) * canvas.em) / MAX (rows, 1);
  for (guint i = 0; i < scene->n_panels && scene->high > scene->low; i++)
    {
      cairo_rectangle_t cell
          = { cell_width * (i % columns), top + cell_height * (i / columns), cell_width, cell_height };

      draw_panel (&canvas, scene, &scene->panels[i], &cell);
    }
  draw_foot (&canvas, scene);
  cairo_restore (cr);
}
