/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include <glib/gi18n-lib.h>
#include "tb-loft-private.h"
#include "tb-measure-text.h"
#include "tb-path-line.h"

/* Numbers along the lane are this far apart, ft and m. */
#define NUMBERED_FT 5.0
#define NUMBERED_M 1.0
/* Distances, em. */
#define PAD 0.9
#define TOP 0.94           /* over and under the words of the runs */
#define FLOOR 0.6          /* thickness of the drawn lane */
#define SWATCH 2.4         /* line that stands for a run before its words */
/* What is shown when nothing has been thrown, m. */
#define USUAL_HEIGHT 0.4
#define OPEN_BALL_OPACITY 0.6
/* Of a step between numbers, or m: what rounding may take. */
#define ALMOST 1e-6

TbLoftScene
tb_loft_scene_default (void)
{
  return (TbLoftScene){ .theme = tb_theme_light (1),
                        .time = NAN,
                        .before_name = _("before"),
                        .after_name = _("after"),
                        .shown_to_ft = LOFT_LEAST_SHOWN_TO_FT };
}

static int
find_runs (const TbLoft *self, TbLoftRun runs[LOFT_RUNS])
{
  const TbPath *paths[LOFT_RUNS] = { self->scene->before, self->scene->after };
  const char *names[LOFT_RUNS] = { self->scene->before_name, self->scene->after_name };
  int count = 0;

  for (int i = 0; i < LOFT_RUNS; i++)
    if (paths[i] != NULL && paths[i]->count > 0)
      runs[count++] = (TbLoftRun){ .path = paths[i],
                                   .style = tb_run_style (&self->canvas->theme, i == 0),
                                   .name = names[i],
                                   .height = MAX (paths[i]->samples[0].position.z - paths[i]->body.radius, 0),
                                   .landing = paths[i]->measures.landing_y };
  return count;
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

/* What is said of a run, in few words or in fewer. */
static char *
run_text (const TbLoft *self, const TbLoftRun *run, gboolean brief)
{
  g_autofree char *height = loft_length_text (self, run->height, 1), *landing = NULL;

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
    write_run (self, &runs[i], top + (i + 0.5) * LOFT_ROW * em, brief);
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
  int last = (int) floor (loft_shown_to (self) / step + ALMOST);

  for (int i = 0; i <= last; i++)
    {
      g_autofree char *text = i == 0                ? g_strdup (_("foul line"))
                              : self->scene->metric ? g_strdup_printf ("%.0f", i * NUMBERED_M)
                                                    : g_strdup_printf ("%.0f", i * NUMBERED_FT);
      TbPoint at = loft_point (self, i * step, 0);
      TbLabel label = { .text = text, .x = at.x, .y = y, .across = TB_ALIGN_MIDDLE };

      label.color = self->canvas->theme.quiet;
      /* The outer ones stay within the plot. */
      if (i == last && loft_shown_to (self) - i * step < ALMOST)
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
  return tb_path_line (path, flight, loft_shown_to (self), centre_of, self);
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

  if (isnan (run->landing) || run->landing > loft_shown_to (self))
    return;
  centre = loft_point (self, run->landing, run->path->body.radius);
  foot = loft_point (self, run->landing, 0);
  cairo_set_line_width (cr, width);
  cairo_set_line_cap (cr, CAIRO_LINE_CAP_BUTT);
  cairo_set_dash (cr, dashes, 2, 0);
  tb_draw_color (cr, run->style.color);
  tb_draw_circle (cr, centre, loft_ball_radius (self, run->path));
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
  double radius = loft_ball_radius (self, run->path), edge = MAX (1, 0.6 * run->style.width);
  const double dashes[2] = { 2.4 * edge, 1.6 * edge };
  TbSample sample;
  TbPoint centre;

  if (!tb_path_at_time (run->path, isnan (self->scene->time) ? 0 : self->scene->time, &sample) || !loft_is_shown (self, &sample))
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
  g_autofree char *text = note_text (self, loft_longest_stretch ());
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
    loft_measure_runs (self, runs, count);
  else
    loft_draw_height (self, runs, count);
}

/* Highest place of a ball's top within what is shown, m. */
static double
highest (const TbLoft *self, const TbLoftRun *runs, int count)
{
  double top = count > 0 ? 0 : USUAL_HEIGHT;

  for (int i = 0; i < count; i++)
    for (int j = 0; j < runs[i].path->count && loft_is_shown (self, &runs[i].path->samples[j]); j++)
      top = MAX (top, runs[i].path->samples[j].position.z + runs[i].path->body.radius);
  return top;
}

/* The plot between the words above and below. */
static void
lay_plot (TbLoft *self, const TbLoftRun *runs, int count)
{
  TbCanvas *canvas = self->canvas;
  double em = canvas->em, top = (TOP + (self->scene->measured ? 2 : 1) * count * LOFT_ROW) * em, high = highest (self, runs, count);
  double bottom = canvas->height - PAD * em - note_height (self) - (FLOOR + 0.45 + LOFT_ROW) * em;

  self->plot = (cairo_rectangle_t){ PAD * em, top, canvas->width - 2 * PAD * em, MAX (bottom - top, 1) };
  loft_fit (self, high);
}

static void
draw_all (TbLoft *self)
{
  TbLoftRun runs[LOFT_RUNS];
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
