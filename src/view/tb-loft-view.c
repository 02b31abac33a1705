/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include <glib/gi18n-lib.h>
#include "tb-canvas.h"
#include "tb-draw.h"
#include "tb-loft-view.h"
#include "tb-measure-text.h"
#include "tb-path-line.h"
#include "tb-unit-pair.h"

/* What the picture shows along the lane, ft. */
#define SHOWN_FROM_FT (-3.0)
#define LEAST_SHOWN_TO_FT 15.0
/* Numbers along the lane are this far apart, ft and m. */
#define NUMBERED_FT 5.0
#define NUMBERED_M 1.0
/* Distances, em. */
#define PAD 0.9
#define ROW 1.45
#define TOP 0.94           /* over and under the words of the runs */
#define FLOOR 0.6          /* thickness of the drawn lane */
#define SWATCH 2.4         /* line that stands for a run before its words */
#define DIMENSION_GAP 0.7  /* from the ball to the measure of its height */
#define ARROW 0.5
#define RAY 3.2            /* from a ball along its launch */
#define RAY_ARC 2.2
#define HEIGHT_COLUMN 4.6 /* from one measure of height to the next */
/* Heights may be drawn so many times larger than lengths. */
static const double stretches[] = { 3, 2.5, 2, 1.5, 1 };
/* Of the plot's height, how much the highest ball may take. */
#define FILLED 0.94
/* What is shown when nothing has been thrown, m. */
#define USUAL_HEIGHT 0.4
/* A ball released lower than this, m, has no height worth a measure in the picture. */
#define HEIGHT_FROM (0.5 * TB_METRES_PER_INCH)
#define OPEN_BALL_OPACITY 0.6
/* Of a step between numbers, or m: what rounding may take. */
#define ALMOST 1e-6
/* A launch that is less than this off the level, rad, is level to the eye. */
#define ANGLE_FROM tb_radians_from_deg (0.25)

typedef struct TbLoft
{
  TbCanvas *canvas;
  const TbLoftScene *scene;
  cairo_rectangle_t plot; /* above the lane */
  double along;           /* px a metre */
  double stretch;
  double spare;           /* px that are left free above and below all of it */
} TbLoft;

/* A run as it is told here. */
typedef struct TbLoftRun
{
  const TbPath *path;
  TbRunStyle style;
  const char *name;
  double height;  /* m, of the lowest point at release */
  double landing; /* m down the lane; NAN if it never lands in what is shown */
} TbLoftRun;
#define RUNS 2

TbLoftScene
tb_loft_scene_default (void)
{
  return (TbLoftScene){ .theme = tb_theme_light (1),
                        .time = NAN,
                        .before_name = _("before"),
                        .after_name = _("after"),
                        .shown_to_ft = LEAST_SHOWN_TO_FT };
}

static int
find_runs (const TbLoft *self, TbLoftRun runs[RUNS])
{
  const TbPath *paths[RUNS] = { self->scene->before, self->scene->after };
  const char *names[RUNS] = { self->scene->before_name, self->scene->after_name };
  int count = 0;

  for (int i = 0; i < RUNS; i++)
    if (paths[i] != NULL && paths[i]->count > 0)
      runs[count++] = (TbLoftRun){ .path = paths[i],
                                   .style = tb_run_style (&self->canvas->theme, i == 0),
                                   .name = names[i],
                                   .height = MAX (paths[i]->samples[0].position.z - paths[i]->body.radius, 0),
                                   .landing = paths[i]->measures.landing_y };
  return count;
}

static TbPoint
loft_point (const TbLoft *self, double y, double z)
{
  return (TbPoint){ self->plot.x + (y - tb_metres_from_ft (SHOWN_FROM_FT)) * self->along,
                    self->plot.y + self->plot.height - z * self->along * self->stretch };
}

/* Drawn as high as heights are, and as wide as high, so that it stays round. */
static double
ball_radius (const TbLoft *self, const TbPath *path)
{
  return path->body.radius * self->along * self->stretch;
}

static double
shown_to (const TbLoft *self)
{
  return tb_metres_from_ft (isfinite (self->scene->shown_to_ft) ? MAX (self->scene->shown_to_ft, LEAST_SHOWN_TO_FT)
                                                                 : LEAST_SHOWN_TO_FT);
}

static gboolean
is_shown (const TbLoft *self, const TbSample *sample)
{
  return sample->position.y <= shown_to (self);
}

/* Highest place of a ball's top within what is shown, m. */
static double
highest (const TbLoft *self, const TbLoftRun *runs, int count)
{
  double top = count > 0 ? 0 : USUAL_HEIGHT;

  for (int i = 0; i < count; i++)
    for (int j = 0; j < runs[i].path->count && is_shown (self, &runs[i].path->samples[j]); j++)
      top = MAX (top, runs[i].path->samples[j].position.z + runs[i].path->body.radius);
  return top;
}

/* The largest stretch that fits, and lengths drawn shorter if not even true heights do. */
static void
choose_scale (TbLoft *self, double top)
{
  double length = shown_to (self) - tb_metres_from_ft (SHOWN_FROM_FT), room = FILLED * self->plot.height;
  double slack;

  self->along = self->plot.width / length;
  self->stretch = 1;
  for (guint i = 0; i < G_N_ELEMENTS (stretches) && !self->scene->true_scale; i++)
    if (top * self->along * stretches[i] <= room)
      {
        self->stretch = stretches[i];
        return;
      }
  self->along = fmin (self->along, room / top);
  slack = self->plot.width - self->along * length;
  self->plot.x += 0.5 * slack;
  self->plot.width -= slack;
}

static char *
note_text (const TbLoft *self, double stretch)
{
  bool metric = self->scene->metric;

  if (stretch == 1)
    return g_strdup (metric ? _("metres; from the side, to scale") : _("feet; from the side, to scale"));
  return g_strdup_printf (metric ? _("metres; from the side, heights and ball drawn %g times larger")
                                 : _("feet; from the side, heights and ball drawn %g times larger"),
                          stretch);
}

/* A length that a hand could span: "2.0 in" or "5.1 cm". digits are those of inches. */
static char *
short_length_text (const TbLoft *self, double metres, int digits)
{
  TbToldUnit told = tb_told_unit ("in", digits, self->scene->metric);

  return g_strdup_printf ("%.*f %s", told.digits, tb_in_from_metres (metres) * told.factor, told.unit);
}

/* What is said of a run, in few words or in fewer. */
static char *
run_text (const TbLoft *self, const TbLoftRun *run, gboolean brief)
{
  g_autofree char *height = short_length_text (self, run->height, 1), *landing = NULL;

  if (isnan (run->landing))
    /* Translators: a throw's name, and a height such as "2.0 in". */
    return g_strdup_printf (brief ? _("%s: %s up") : _("%s: released %s up"), run->name, height);
  landing = tb_distance_text (run->landing, self->scene->metric);
  /* Translators: a throw's name, a height such as "2.0 in", a distance such as "3.0 ft". */
  return g_strdup_printf (brief ? _("%s: %s, %s") : _("%s: released %s up, lands at %s"), run->name, height, landing);
}

static void
draw_swatch (const TbLoft *self, const TbLoftRun *run, double x, double y)
{
  cairo_t *cr = self->canvas->cr;
  double em = self->canvas->em;

  tb_draw_color (cr, run->style.color);
  tb_draw_set_run (cr, &run->style);
  tb_draw_line (cr, (TbPoint){ x, y }, (TbPoint){ x + SWATCH * em, y });
  cairo_set_dash (cr, NULL, 0, 0);
  tb_draw_run_mark (cr, &self->canvas->theme, &run->style, &(TbPoint){ x + SWATCH * em, y }, 0.36 * em);
}

static void
write_run (const TbLoft *self, const TbLoftRun *run, double y, gboolean brief)
{
  double em = self->canvas->em, x = PAD * em;
  g_autofree char *text = run_text (self, run, brief);
  TbLabel label = { .text = text, .x = x + (SWATCH + 0.9) * em, .y = y, .down = TB_ALIGN_MIDDLE, .bold = TRUE };

  label.color = run->style.color;
  if (tb_canvas_try_label (self->canvas, &label))
    draw_swatch (self, run, x, y);
}

/* One line for each run; all brief if one of them has to be. */
static void
write_runs (const TbLoft *self, const TbLoftRun *runs, int count, double top)
{
  double em = self->canvas->em, room = self->canvas->width - (2 * PAD + SWATCH + 0.9) * em;
  gboolean brief = FALSE;

  for (int i = 0; i < count; i++)
    {
      g_autofree char *text = run_text (self, &runs[i], FALSE);
      TbLabel label = { .text = text, .bold = TRUE };

      brief = brief || tb_canvas_measure (self->canvas, &label).width > room;
    }
  for (int i = 0; i < count; i++)
    write_run (self, &runs[i], top + (i + 0.5) * ROW * em, brief);
}

static void
draw_floor (const TbLoft *self)
{
  cairo_t *cr = self->canvas->cr;
  const TbTheme *theme = &self->canvas->theme;
  double em = self->canvas->em, foul = round (loft_point (self, 0, 0).x);
  double left = round (self->plot.x), right = round (self->plot.x + self->plot.width);
  double top = round (self->plot.y + self->plot.height), depth = round (FLOOR * em);

  tb_draw_color (cr, theme->approach);
  cairo_rectangle (cr, left, top, foul - left, depth);
  cairo_fill (cr);
  tb_draw_color (cr, theme->wood);
  cairo_rectangle (cr, foul, top, right - foul, depth);
  cairo_fill (cr);
  tb_draw_color (cr, theme->mark);
  cairo_set_line_width (cr, 1);
  tb_draw_line (cr, (TbPoint){ left, top + 0.5 }, (TbPoint){ right, top + 0.5 });
  tb_draw_color (cr, theme->text);
  cairo_rectangle (cr, foul - ceil (0.12 * em), top, ceil (0.24 * em), depth + ceil (0.25 * em));
  cairo_fill (cr);
}

static void
number_lane (const TbLoft *self)
{
  double em = self->canvas->em, y = self->plot.y + self->plot.height + (FLOOR + 0.45) * em;
  double step = self->scene->metric ? NUMBERED_M : tb_metres_from_ft (NUMBERED_FT);
  int last = (int) floor (shown_to (self) / step + ALMOST);

  for (int i = 0; i <= last; i++)
    {
      g_autofree char *text = i == 0                ? g_strdup (_("foul line"))
                              : self->scene->metric ? g_strdup_printf ("%.0f", i * NUMBERED_M)
                                                    : g_strdup_printf ("%.0f", i * NUMBERED_FT);
      TbPoint at = loft_point (self, i * step, 0);
      TbLabel label = { .text = text, .x = at.x, .y = y, .across = TB_ALIGN_MIDDLE };

      label.color = self->canvas->theme.quiet;
      /* The outer ones stay within the plot. */
      if (i == last && shown_to (self) - i * step < ALMOST)
        label.across = TB_ALIGN_END;
      if (i == 0)
        label.x = MAX (at.x, PAD * em + 0.5 * tb_canvas_measure (self->canvas, &label).width);
      tb_canvas_try_label (self->canvas, &label);
    }
}

static TbPoint
centre_of (const TbPath *path, const TbSample *sample, const void *loft)
{
  return loft_point (loft, sample->position.y, sample->position.z);
}

/* Centre of the ball, in the air or on the lane. */
static TbPolyline *
centre_line (const TbLoft *self, const TbPath *path, gboolean flight)
{
  return tb_path_line (path, flight, shown_to (self), centre_of, self);
}

static void
draw_arc (const TbLoft *self, const TbLoftRun *run)
{
  cairo_t *cr = self->canvas->cr;
  g_autoptr (TbPolyline) flight = centre_line (self, run->path, TRUE);
  g_autoptr (TbPolyline) rest = centre_line (self, run->path, FALSE);

  cairo_save (cr);
  tb_draw_rectangle (cr, &self->plot);
  cairo_clip (cr);
  tb_draw_set_run (cr, &run->style);
  cairo_set_line_width (cr, MAX (1, 0.4 * run->style.width));
  tb_draw_color (cr, tb_color_with_alpha (run->style.color, 0.5));
  tb_polyline_trace (rest, cr);
  cairo_stroke (cr);
  tb_draw_set_run (cr, &run->style);
  tb_draw_color (cr, run->style.color);
  tb_polyline_trace (flight, cr);
  cairo_stroke (cr);
  cairo_restore (cr);
}

/* Where the ball first touches: its outline, and a mark on the lane. */
static void
draw_landing (const TbLoft *self, const TbLoftRun *run)
{
  cairo_t *cr = self->canvas->cr;
  double em = self->canvas->em, width = MAX (1, 0.45 * run->style.width);
  const double dashes[2] = { 2.4 * width, 2.0 * width };
  TbPoint centre, foot;

  if (isnan (run->landing) || run->landing > shown_to (self))
    return;
  centre = loft_point (self, run->landing, run->path->body.radius);
  foot = loft_point (self, run->landing, 0);
  cairo_set_line_width (cr, width);
  cairo_set_line_cap (cr, CAIRO_LINE_CAP_BUTT);
  cairo_set_dash (cr, dashes, 2, 0);
  tb_draw_color (cr, run->style.color);
  tb_draw_circle (cr, centre, ball_radius (self, run->path));
  cairo_stroke (cr);
  cairo_set_dash (cr, NULL, 0, 0);
  tb_draw_run_mark (cr, &self->canvas->theme, &run->style, &foot, 0.34 * em);
}

static void
set_ball_light (const TbLoft *self, TbPoint centre, double radius)
{
  const TbTheme *theme = &self->canvas->theme;
  cairo_pattern_t *light = cairo_pattern_create_radial (centre.x - 0.35 * radius,
                                                        centre.y - 0.35 * radius,
                                                        0.1 * radius,
                                                        centre.x,
                                                        centre.y,
                                                        radius);

  cairo_pattern_add_color_stop_rgb (light, 0, theme->ball_light.red, theme->ball_light.green, theme->ball_light.blue);
  cairo_pattern_add_color_stop_rgb (light, 1, theme->ball.red, theme->ball.green, theme->ball.blue);
  cairo_set_source (self->canvas->cr, light);
  cairo_pattern_destroy (light);
}

/* The ball itself, at the scene's time: filled for after, open and dashed for before. */
static void
draw_ball (const TbLoft *self, const TbLoftRun *run)
{
  cairo_t *cr = self->canvas->cr;
  double radius = ball_radius (self, run->path), edge = MAX (1, 0.6 * run->style.width);
  const double dashes[2] = { 2.4 * edge, 1.6 * edge };
  TbSample sample;
  TbPoint centre;

  if (!tb_path_at_time (run->path, isnan (self->scene->time) ? 0 : self->scene->time, &sample) || !is_shown (self, &sample))
    return;
  centre = loft_point (self, sample.position.y, sample.position.z);
  tb_draw_circle (cr, centre, radius);
  if (run->style.before)
    tb_draw_color (cr, tb_color_with_alpha (self->canvas->theme.background, OPEN_BALL_OPACITY));
  else
    set_ball_light (self, centre, radius);
  cairo_fill_preserve (cr);
  cairo_set_dash (cr, dashes, run->style.before ? 2 : 0, 0);
  cairo_set_line_width (cr, edge);
  tb_draw_color (cr, run->style.before ? run->style.color : self->canvas->theme.background);
  cairo_stroke (cr);
  cairo_set_dash (cr, NULL, 0, 0);
}

/* The left edge of the balls at release, px. */
static double
leftmost (const TbLoft *self, const TbLoftRun *runs, int count)
{
  double left = INFINITY;

  for (int i = 0; i < count; i++)
    left = MIN (left, loft_point (self, runs[i].path->samples[0].position.y, 0).x - ball_radius (self, runs[i].path));
  return left;
}

/* A measure between two points, with ends across it and arrows where there is room for them. */
static void
draw_dimension (const TbLoft *self, TbPoint a, TbPoint b)
{
  cairo_t *cr = self->canvas->cr;
  double em = self->canvas->em, length = hypot (b.x - a.x, b.y - a.y);
  TbPoint across = length > 0 ? (TbPoint){ -(b.y - a.y) / length, (b.x - a.x) / length } : (TbPoint){ 0, 1 };

  cairo_set_line_width (cr, MAX (1, 0.35 * self->canvas->theme.line_width));
  tb_draw_line (cr, a, b);
  for (int i = 0; i < 2; i++)
    {
      TbPoint at = i == 0 ? a : b;

      tb_draw_line (cr,
                    (TbPoint){ at.x - 0.3 * em * across.x, at.y - 0.3 * em * across.y },
                    (TbPoint){ at.x + 0.3 * em * across.x, at.y + 0.3 * em * across.y });
    }
  if (length > 2.5 * ARROW * em)
    {
      tb_draw_arrow_head (cr, a, b, ARROW * em);
      tb_draw_arrow_head (cr, b, a, ARROW * em);
    }
}

/* A fine dotted line that leads the eye to a measure. */
static void
draw_lead (const TbLoft *self, TbPoint a, TbPoint b)
{
  cairo_t *cr = self->canvas->cr;
  const double dots[2] = { 0.2 * self->canvas->em, 0.3 * self->canvas->em };

  cairo_set_line_width (cr, 1);
  cairo_set_dash (cr, dots, 2, 0);
  tb_draw_line (cr, a, b);
  cairo_set_dash (cr, NULL, 0, 0);
}

/* Beside the balls at release, which end at `left`, px: how high one of them is over the lane. */
static void
draw_height (const TbLoft *self, const TbLoftRun *run, double left)
{
  double em = self->canvas->em, y = run->path->samples[0].position.y;
  TbPoint low = loft_point (self, y, 0), high = loft_point (self, y, run->height);
  g_autofree char *text = short_length_text (self, run->height, 1);
  TbLabel label = { .text = text, .across = TB_ALIGN_END, .down = TB_ALIGN_MIDDLE };

  if (run->height < HEIGHT_FROM)
    return;
  label.color = self->scene->measured ? run->style.color : self->canvas->theme.text;
  low.x = high.x = tb_draw_crisp (left - DIMENSION_GAP * em);
  label.x = low.x - 0.5 * em;
  label.y = 0.5 * (low.y + high.y);
  if (!tb_canvas_try_label (self->canvas, &label))
    return;
  tb_draw_color (self->canvas->cr, label.color);
  if (self->scene->measured)
    draw_lead (self, high, loft_point (self, y, run->height));
  draw_dimension (self, low, high);
}

/* From the foul line to where the hand lets go, in a row of its own above the balls. */
static void
draw_reach (const TbLoft *self, const TbLoftRun *run, double y)
{
  cairo_t *cr = self->canvas->cr;
  double em = self->canvas->em, reach = run->path->samples[0].position.y;
  TbPoint foul = loft_point (self, 0, 0), centre = loft_point (self, reach, run->path->samples[0].position.z);
  TbPoint from = { tb_draw_crisp (foul.x), y }, to = { tb_draw_crisp (centre.x), y };
  g_autofree char *length = short_length_text (self, reach, 0);
  /* Translators: %s is a length such as "12 in". */
  g_autofree char *text = g_strdup_printf (_("%s past the line"), length);
  TbLabel label = { .text = text, .x = to.x + 0.6 * em, .y = y, .down = TB_ALIGN_MIDDLE };

  label.color = run->style.color;
  tb_draw_color (cr, run->style.color);
  draw_lead (self, from, (TbPoint){ from.x, foul.y });
  draw_lead (self, to, (TbPoint){ to.x, centre.y });
  draw_dimension (self, from, to);
  tb_canvas_try_label (self->canvas, &label);
}

/* A ray along the launch, the level, and the angle between them, as it is drawn. */
static void
draw_angle (const TbLoft *self, const TbLoftRun *run)
{
  cairo_t *cr = self->canvas->cr;
  const TbSample *release = &run->path->samples[0];
  double angle = atan2 (release->velocity.z, release->velocity.y);
  double drawn = atan2 (release->velocity.z * self->stretch, release->velocity.y), em = self->canvas->em;
  double length = ball_radius (self, run->path) + RAY * em, arc = ball_radius (self, run->path) + RAY_ARC * em;
  TbPoint at = loft_point (self, release->position.y, release->position.z);
  TbPoint tip = { at.x + length * cos (drawn), at.y - length * sin (drawn) };
  g_autofree char *text = g_strdup_printf (_("%.1f°"), tb_deg_from_radians (angle));
  TbLabel label = { .text = text, .down = TB_ALIGN_END, .plate = TRUE };

  if (fabs (angle) < ANGLE_FROM)
    return;
  label.color = run->style.color;
  label.x = tip.x + 0.3 * em;
  label.y = fmin (tip.y, at.y) - 0.3 * em;
  tb_draw_color (cr, run->style.color);
  cairo_set_line_width (cr, MAX (1, 0.35 * self->canvas->theme.line_width));
  tb_draw_line (cr, at, tip);
  tb_draw_arrow_head (cr, tip, at, ARROW * em);
  tb_draw_line (cr, at, (TbPoint){ at.x + length, at.y });
  (drawn > 0 ? cairo_arc_negative : cairo_arc) (cr, at.x, at.y, arc, 0, -drawn);
  cairo_stroke (cr);
  tb_canvas_try_label (self->canvas, &label);
}

/* Reaches in rows above the balls, heights in columns to the left of both. */
static void
measure_runs (const TbLoft *self, const TbLoftRun *runs, int count)
{
  double left = leftmost (self, runs, count);

  for (int i = 0; i < count; i++)
    {
      double y = self->plot.y - (count - i - 0.5) * ROW * self->canvas->em;

      draw_reach (self, &runs[i], tb_draw_crisp (y));
      draw_angle (self, &runs[i]);
      draw_height (self, &runs[i], left - i * HEIGHT_COLUMN * self->canvas->em);
    }
}

static void
write_note (const TbLoft *self, double y)
{
  g_autofree char *text = note_text (self, self->stretch);
  double inner = self->canvas->width - 2 * PAD * self->canvas->em;
  TbLabel label = { .text = text, .x = 0.5 * self->canvas->width, .y = y, .across = TB_ALIGN_MIDDLE };

  label.down = TB_ALIGN_END;
  label.wrap = inner;
  label.color = self->canvas->theme.quiet;
  tb_canvas_label (self->canvas, &label);
}

/* How high the note is, which may take two lines. */
static double
note_height (const TbLoft *self)
{
  g_autofree char *text = note_text (self, stretches[0] - 0.5);
  TbLabel label = { .text = text, .wrap = self->canvas->width - 2 * PAD * self->canvas->em };

  return tb_canvas_measure (self->canvas, &label).height;
}

static void
draw_runs (const TbLoft *self, const TbLoftRun *runs, int count)
{
  for (int i = 0; i < count; i++)
    {
      draw_arc (self, &runs[i]);
      draw_landing (self, &runs[i]);
    }
  for (int i = 0; i < count; i++)
    draw_ball (self, &runs[i]);
  if (self->scene->measured)
    measure_runs (self, runs, count);
  else if (count > 0)
    draw_height (self, &runs[count - 1], leftmost (self, runs, count));
}

/* The plot between the words above and below; what its height leaves over goes above and below the whole. */
static void
lay_plot (TbLoft *self, const TbLoftRun *runs, int count)
{
  TbCanvas *canvas = self->canvas;
  double em = canvas->em, top = (TOP + (self->scene->measured ? 2 : 1) * count * ROW) * em, high = highest (self, runs, count);
  double bottom = canvas->height - PAD * em - note_height (self) - (FLOOR + 0.45 + ROW) * em;

  self->plot = (cairo_rectangle_t){ PAD * em, top, canvas->width - 2 * PAD * em, MAX (bottom - top, 1) };
  choose_scale (self, high);
  self->spare = 0.5 * MAX (self->plot.height - high * self->along * self->stretch / FILLED, 0);
  self->plot.y += self->spare;
  self->plot.height -= 2 * self->spare;
}

static void
draw_all (TbLoft *self)
{
  TbLoftRun runs[RUNS];
  int count = find_runs (self, runs);
  double em = self->canvas->em;

  lay_plot (self, runs, count);
  write_runs (self, runs, count, self->spare + 0.6 * PAD * em);
  draw_floor (self);
  number_lane (self);
  write_note (self, self->canvas->height - PAD * em - self->spare);
  draw_runs (self, runs, count);
}

void
tb_loft_view_draw (cairo_t *cr, double width, double height, const TbLoftScene *scene)
{
  g_auto (TbCanvas) canvas = { 0 };
  TbLoft loft = { .canvas = &canvas, .scene = scene };

  cairo_save (cr);
  tb_canvas_init (&canvas, cr, width, height, &scene->theme);
  tb_canvas_fill_background (&canvas);
  if (tb_canvas_has_room (&canvas))
    draw_all (&loft);
  cairo_restore (cr);
}
