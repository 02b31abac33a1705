/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"
#include "tb-flare-view.h"

#include <glib/gi18n-lib.h>

/* Distances, em. */
#define PAD 0.9
#define ROW 1.45
#define GAP 1.2
/* The ball, of its cell. */
#define BALL_SHARE 0.46
/* A picture this much wider than high has ball and bars side by side. */
#define WIDE 1.3
/* Rings are so wide, of the ball's radius, and so much wider where they carry the most oil. */
#define RING_WIDTH 0.012
#define OIL_WIDTH 0.035
#define HIDDEN_RING 0.16
/* Steps of tint between a dry ring and the wettest. */
#define TINTS 8
/* Inches that the ruler on the ball spans. */
#define RULER_IN 1.0

static char *
length_text (double metres, gboolean metric)
{
  return metric ? g_strdup_printf (_ ("%.0f mm"), metres * 1e3) : g_strdup_printf (_ ("%.2f in"), tb_in_from_metres (metres));
}

/* The side from which the rings lie furthest apart: along the way the axis went over the ball, square to the axis. */
static void
look_at_rings (TbGlobe *globe, const TbRun *run)
{
  const TbPath *path = &run->path;
  TbVec3 first = tb_sample_axis_on_ball (&path->samples[0]), furthest = first;
  double most = 0;

  for (int i = 1; i < path->count; i++)
    {
      TbVec3 axis = tb_sample_axis_on_ball (&path->samples[i]);
      double angle = tb_vec3_angle (axis, first);

      if (angle <= most)
        continue;
      most = angle;
      furthest = axis;
    }
  TbVec3 middle = tb_vec3_unit (tb_vec3_add (first, furthest), first);
  TbVec3 way = tb_vec3_sub (furthest, first);
  TbVec3 aside = tb_vec3_unit (tb_vec3_cross (middle, path->body.pin), tb_vec3 (0, 1, 0));

  way = tb_vec3_add_scaled (way, -tb_vec3_dot (way, middle), middle);
  /* The axis points to the right: its own great circle's pole is up. */
  TbVec3 near = tb_vec3_unit (way, aside);

  tb_globe_look (globe, near, tb_vec3_cross (near, middle));
  globe->mirrored = path->mirrored;
}

static double
tint_of (const TbSample *sample, const TbRun *run)
{
  double film = tb_flare_film_left (sample, &run->setup->shot.assumed, run->path.body.radius);

  return fmin (sqrt (fmax (film, 0) / TB_FLARE_FULL_TINT), 1);
}

/* One piece of the track, in a colour and width that tell its oil. */
static void
stroke_piece (const TbGlobe *globe, TbCanvas *canvas, int tint, gboolean seen)
{
  double share = (double) tint / TINTS;
  TbColor color = tb_color_mix (canvas->theme.ball_mark, tb_color_with_alpha (canvas->theme.oil_thick, 1), share);

  cairo_set_line_width (canvas->cr, MAX (0.8, (RING_WIDTH + OIL_WIDTH * share) * globe->radius));
  tb_draw_color (canvas->cr, tb_color_with_alpha (color, seen ? 0.95 : HIDDEN_RING));
  cairo_stroke (canvas->cr);
}

/* Between two samples the contact runs along a piece of circle about the axis; so many degrees need a vertex. */
#define VERTEX_ANGLE 0.06

static TbVec3
contact_between (const TbPath *path, const TbSample *from, const TbSample *to, double share)
{
  TbSample sample;

  if (share <= 0)
    return tb_sample_contact_on_ball (from);
  if (share >= 1)
    return tb_sample_contact_on_ball (to);
  tb_path_at_time (path, from->time + share * (to->time - from->time), &sample);
  return tb_sample_contact_on_ball (&sample);
}

static void
add_piece (const TbGlobe *globe, cairo_t *cr, const TbPath *path, int i, gboolean seen)
{
  const TbSample *from = &path->samples[i], *to = &path->samples[i + 1];
  int steps = MAX (1, (int) ceil ((to->turned - from->turned) / VERTEX_ANGLE));
  gboolean joined = FALSE;

  for (int j = 0; j <= steps; j++)
    {
      TbVec3 place = contact_between (path, from, to, (double) j / steps);
      TbPoint at = tb_globe_point (globe, place);

      if (tb_globe_sees (globe, place) != seen)
        {
          joined = FALSE;
          continue;
        }
      (joined ? cairo_line_to : cairo_move_to) (cr, at.x, at.y);
      joined = TRUE;
    }
}

static void
draw_track (const TbGlobe *globe, TbCanvas *canvas, const TbRun *run, gboolean seen)
{
  const TbPath *path = &run->path;
  int tint = -1;

  cairo_set_line_cap (canvas->cr, CAIRO_LINE_CAP_BUTT);
  for (int i = 0; i + 1 < path->count; i++)
    {
      const TbSample *sample = &path->samples[i];
      int now = (int) lround (TINTS * 0.5 * (tint_of (sample, run) + tint_of (sample + 1, run)));

      if (sample->phase == TB_PHASE_FLIGHT)
        continue;
      if (tint >= 0 && now != tint)
        stroke_piece (globe, canvas, tint, seen);
      tint = now;
      add_piece (globe, canvas->cr, path, i, seen);
    }
  if (tint >= 0)
    stroke_piece (globe, canvas, tint, seen);
}

/* An inch in the middle of the ball, along the way the rings are apart. */
static void
draw_ruler (const TbGlobe *globe, TbCanvas *canvas, double radius_m)
{
  cairo_t *cr = canvas->cr;
  double half = globe->radius * sin (0.5 * tb_metres_from_in (RULER_IN) / radius_m), y = globe->centre.y + globe->radius + 0.9 * canvas->em;
  double tick = 0.3 * canvas->em;
  TbPoint left = { globe->centre.x - half, y }, right = { globe->centre.x + half, y };
  TbLabel label = { .text = _ ("1 in"), .x = right.x + 0.5 * canvas->em, .y = y, .down = TB_ALIGN_MIDDLE };

  label.color = canvas->theme.quiet;
  tb_draw_color (cr, canvas->theme.quiet);
  cairo_set_line_width (cr, MAX (1, 0.5 * canvas->theme.line_width));
  tb_draw_line (cr, left, right);
  tb_draw_line (cr, (TbPoint){ left.x, y - tick }, (TbPoint){ left.x, y + tick });
  tb_draw_line (cr, (TbPoint){ right.x, y - tick }, (TbPoint){ right.x, y + tick });
  tb_canvas_try_label (canvas, &label);
}

static void
draw_ball (TbGlobe *globe, TbCanvas *canvas, const TbRun *run)
{
  look_at_rings (globe, run);
  tb_globe_draw (globe, canvas);
  cairo_save (canvas->cr);
  tb_draw_circle (canvas->cr, globe->centre, globe->radius);
  cairo_clip (canvas->cr);
  draw_track (globe, canvas, run, FALSE);
  draw_track (globe, canvas, run, TRUE);
  cairo_restore (canvas->cr);
}

/* --- a bar for each ring ----------------------------------------------------------------------------------------- */

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
  TbLabel zero = { .text = "0", .x = top.x, .y = box->y + box->height, .across = TB_ALIGN_END, .down = TB_ALIGN_END };

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
  double slot = chart->box.width / count, height = chart->full > 0 ? chart->box.height * value / chart->full : 0;

  return (cairo_rectangle_t){ chart->box.x + slot * (i + 0.15), chart->box.y + chart->box.height - height, 0.7 * slot,
                              height };
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
  TbLabel title = { .text = _ ("turn, and where it begins"), .x = chart->box.x + chart->box.width, .across = TB_ALIGN_END };

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
  g_autofree char *full_spacing = length_text (spacing.full, scene->metric);
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
  g_autofree char *first = length_text (flare->first_spacing, scene->metric);
  g_autofree char *widest = length_text (flare->widest_spacing, scene->metric);
  g_autofree char *total = length_text (flare->total, scene->metric);
  g_autofree char *text
      = g_strdup_printf (_ ("rings %s apart at first, at most %s; total flare %s\nthe wider and bluer, the more oil"), first,
                         widest, total);
  TbLabel label = { .text = text, .x = area->x + 0.5 * area->width, .y = area->y + area->height, .color = canvas->theme.text };

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
      charts = (cairo_rectangle_t){ ball.x + ball.width + pad, pad, width - ball.width - 3 * pad, height - 2 * pad };
    }
  else
    {
      ball = (cairo_rectangle_t){ pad, pad, width - 2 * pad, 0.6 * (height - 3 * pad) };
      charts = (cairo_rectangle_t){ pad, ball.y + ball.height + pad, width - 2 * pad, height - ball.height - 3 * pad };
    }
  globe.radius = fmin (0.5 * ball.width, 0.5 * (ball.height - foot - 1.5 * canvas.em));
  globe.centre = (TbPoint){ ball.x + 0.5 * ball.width, ball.y + globe.radius };
  if (scene->run->status == TB_OK && scene->run->path.count > 1 && globe.radius > 2 * canvas.em)
    {
      draw_ball (&globe, &canvas, scene->run);
      draw_ruler (&globe, &canvas, scene->run->path.body.radius);
      draw_figures (&canvas, &ball, scene);
      draw_charts (&canvas, &charts, scene);
    }
  cairo_restore (cr);
}

/* --- the pin elsewhere ------------------------------------------------------------------------------------------- */

/* A case that is nearer than this to the ball as it is, m, stands for it: a sixteenth of an inch. */
#define PRESENT_SLACK (0.0625 * TB_METRES_PER_INCH)

static guint
present_case (const TbFlareCasesScene *scene)
{
  guint nearest = G_MAXUINT;
  double least = (double) INFINITY;

  for (guint i = 0; i < scene->cases->len; i++)
    {
      const TbFlareCase *one = scene->cases->pdata[i];
      double off = fabs (one->pin_to_pap - scene->present);

      if (off < least && off <= PRESENT_SLACK)
        {
          least = off;
          nearest = i;
        }
    }
  return nearest;
}

static void
draw_case (TbCanvas *canvas, const cairo_rectangle_t *cell, const TbFlareCasesScene *scene, guint i)
{
  const TbFlareCase *one = scene->cases->pdata[i];
  double em = canvas->em, text = 4 * ROW * em;
  TbGlobe globe = { .radius = fmin (0.5 * cell->width - PAD * em, 0.5 * (cell->height - text - 1.2 * PAD * em)) };
  g_autofree char *pin = length_text (one->pin_to_pap, scene->metric);
  g_autofree char *widest = length_text (one->flare->widest_spacing, scene->metric);
  g_autofree char *total = length_text (one->flare->total, scene->metric);
  g_autofree char *title = g_strdup_printf (_ ("pin to PAP %s"), pin);
  g_autofree char *figures = g_strdup_printf (_ ("up to %s apart\ntotal %s\nown oil met %.2f µm"), widest, total,
                                              tb_um_from_metres (one->flare->film_met));
  TbLabel head = { .text = title, .x = cell->x + 0.5 * cell->width, .y = cell->y + 0.5 * PAD * em, .color = canvas->theme.text };
  TbLabel foot = { .text = figures, .x = head.x, .color = canvas->theme.quiet, .across = TB_ALIGN_MIDDLE };

  head.across = TB_ALIGN_MIDDLE;
  head.bold = i == present_case (scene);
  foot.wrap = cell->width;
  if (globe.radius < 1.5 * em || one->run->status != TB_OK)
    return;
  globe.centre = (TbPoint){ head.x, cell->y + (0.5 * PAD + ROW) * em + globe.radius };
  foot.y = globe.centre.y + globe.radius + 0.4 * em;
  draw_ball (&globe, canvas, one->run);
  tb_canvas_try_label (canvas, &head);
  tb_canvas_try_label (canvas, &foot);
}

/* Columns that make the largest balls. */
static guint
best_columns (const TbCanvas *canvas, guint count)
{
  guint best = 1;
  double largest = 0;

  for (guint columns = 1; columns <= count; columns++)
    {
      guint rows = (count + columns - 1) / columns;
      double size = fmin (canvas->width / columns - 2 * PAD * canvas->em,
                          canvas->height / rows - (4 * ROW + 1.2 * PAD) * canvas->em);

      if (size <= largest)
        continue;
      largest = size;
      best = columns;
    }
  return best;
}

void
tb_flare_cases_draw (cairo_t *cr, double width, double height, const TbFlareCasesScene *scene)
{
  g_auto (TbCanvas) canvas = { 0 };
  guint count = scene->cases->len, columns, rows;

  cairo_save (cr);
  tb_canvas_init (&canvas, cr, width, height, &scene->theme);
  tb_canvas_fill_background (&canvas);
  columns = best_columns (&canvas, MAX (count, 1));
  rows = (count + columns - 1) / columns;
  for (guint i = 0; i < count; i++)
    {
      cairo_rectangle_t cell = { width / columns * (i % columns), height / rows * (i / columns), width / columns,
                                 height / rows };

      if (i == present_case (scene))
        {
          cairo_rectangle_t frame = tb_rectangle_grown (&cell, -0.25 * canvas.em);

          tb_draw_rounded (cr, &frame, 0.6 * canvas.em);
          tb_draw_color (cr, canvas.theme.after);
          cairo_set_line_width (cr, MAX (1, 0.5 * canvas.theme.line_width));
          cairo_stroke (cr);
        }
      draw_case (&canvas, &cell, scene, i);
    }
  cairo_restore (cr);
}
