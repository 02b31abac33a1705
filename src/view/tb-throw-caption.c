/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include "tb-canvas.h"
#include "tb-draw.h"
#include "tb-throw-caption.h"

/* Letters of the caption, of the picture's ordinary ones: it is read while something moves. */
#define LETTERS 1.3
/* Distances, of the caption's own letters. */
#define ROW 1.5
#define PAD 0.6
#define TIME_WIDTH 7.0 /* seconds */
#define RATE_WIDTH 9.0 /* how fast time passes, beside them where all stands in one column */
#define SWATCH 2.4     /* line that stands for a run before its words */
#define SWATCH_GAP 0.6
#define RUN_WIDTH 28.0 /* a run's line */
/* The moment over the runs; beside them, where that fits. */
#define ROWS_UPRIGHT 3
#define ROWS_BESIDE 2
#define MOMENT_WIDTH (RATE_WIDTH + 2 * PAD)
#define RULE_WIDTH 1.0 /* px */
/* A caption may take so much of a picture's height. */
#define LARGEST_SHARE 0.4

static double
letters (double width, double height, const TbThrowScene *scene)
{
  return fmin (LETTERS * tb_canvas_text_size (width, height, &scene->theme), width / (RUN_WIDTH + 2 * PAD));
}

static gboolean
stands_beside (double width, double em)
{
  return (MOMENT_WIDTH + RUN_WIDTH + 2 * PAD) * em <= width;
}

static double
rows (gboolean beside)
{
  return (beside ? ROWS_BESIDE : ROWS_UPRIGHT) * ROW + 2 * PAD;
}

double
tb_throw_caption_height (double width, double height, const TbThrowScene *scene)
{
  double em = letters (width, height, scene), wanted = round (rows (stands_beside (width, em)) * em);
  gboolean room = fmin (width, height) >= TB_CANVAS_SMALLEST && wanted <= LARGEST_SHARE * height;

  return room && !isnan (scene->time) ? wanted : 0;
}

/* NULL where there is nothing to say about it. */
static const char *
describe_rate (double rate)
{
  if (rate == 0.5)
    return _ ("half speed");
  if (rate == 0.25)
    return _ ("quarter speed");
  return rate == 1 ? _ ("true speed") : NULL;
}

static char *
describe_pins (const TbRun *run)
{
  const TbMeasures *m = &run->path.measures;

  return g_strdup_printf (_ ("board %.1f at the pins, %.1f°"), tb_board_from_x (m->x_at_pins),
                          tb_deg_from_radians (m->angle_at_pins));
}

static char *
describe_gutter (const TbRun *run, gboolean metric)
{
  gboolean right = run->path.result == TB_RESULT_RIGHT_GUTTER;
  double y = run->path.measures.gutter_y;

  if (metric)
    return g_strdup_printf (right ? _ ("right gutter at %.1f m") : _ ("left gutter at %.1f m"), y);
  return g_strdup_printf (right ? _ ("right gutter at %.1f ft") : _ ("left gutter at %.1f ft"),
                          tb_ft_from_metres (y));
}

static char *
describe_moment (const TbSample *sample, gboolean metric)
{
  double board = tb_board_from_x (sample->position.x), y = sample->position.y;
  double speed = tb_vec3_length (sample->velocity);

  if (metric)
    return g_strdup_printf (_ ("board %.1f at %.1f m, %.1f km/h"), board, y,
                            tb_km_per_hour_from_metres_per_second (speed));
  return g_strdup_printf (_ ("board %.1f at %.1f ft, %.1f mph"), board, tb_ft_from_metres (y),
                          tb_mph_from_metres_per_second (speed));
}

char *
tb_throw_caption_time (const TbThrowScene *scene)
{
  /* Translators: seconds since the release. */
  return g_strdup_printf (_ ("%.2f s"), scene->time);
}

char *
tb_throw_caption_run (const TbThrowScene *scene, const TbRun *run)
{
  TbSample sample;

  if (scene->time >= tb_path_duration (&run->path))
    return run->path.result == TB_RESULT_PINS ? describe_pins (run) : describe_gutter (run, scene->metric);
  if (!tb_path_at_time (&run->path, scene->time, &sample))
    return g_strdup ("");
  return describe_moment (&sample, scene->metric);
}

/* A line of the caption, and the run it is about. */
static void
draw_run (TbCanvas *canvas, const TbThrowScene *scene, const TbRun *run, TbPoint at)
{
  gboolean before = run == scene->before;
  TbRunStyle style = tb_run_style (&canvas->theme, before);
  g_autofree char *words = tb_throw_caption_run (scene, run);
  /* Translators: %s is where the ball is, such as "board 9.8 at 34.2 ft, 17.0 mph". */
  g_autofree char *text = g_strdup_printf (before ? _ ("before: %s") : _ ("after: %s"), words);
  TbLabel label = { .text = text, .x = at.x + (SWATCH + SWATCH_GAP) * canvas->em, .y = at.y };

  label.down = TB_ALIGN_MIDDLE;
  label.color = canvas->theme.text;
  cairo_save (canvas->cr);
  tb_draw_color (canvas->cr, style.color);
  tb_draw_set_run (canvas->cr, &style);
  tb_draw_line (canvas->cr, at, (TbPoint){ at.x + SWATCH * canvas->em, at.y });
  cairo_restore (canvas->cr);
  tb_canvas_label (canvas, &label);
}

static void
draw_words (TbCanvas *canvas, const char *text, TbPoint at, gboolean bold)
{
  TbLabel label = { .text = text, .x = at.x, .y = at.y, .down = TB_ALIGN_MIDDLE, .bold = bold };

  label.color = bold ? canvas->theme.text : canvas->theme.quiet;
  if (text != NULL)
    tb_canvas_label (canvas, &label);
}

static void
draw_rule (TbCanvas *canvas)
{
  double y = tb_draw_crisp (0);

  tb_draw_color (canvas->cr, canvas->theme.rule);
  cairo_set_line_width (canvas->cr, RULE_WIDTH);
  tb_draw_line (canvas->cr, (TbPoint){ 0, y }, (TbPoint){ canvas->width, y });
}

static void
draw_lines (TbCanvas *canvas, const TbThrowScene *scene, gboolean beside)
{
  double em = canvas->em, row = ROW * em;
  TbPoint moment = { PAD * em, PAD * em + 0.5 * row }, rate = moment, run = moment;
  g_autofree char *time = tb_throw_caption_time (scene);

  if (beside)
    {
      rate.y += row;
      run.x += MOMENT_WIDTH * em;
    }
  else
    {
      rate.x += TIME_WIDTH * em;
      run.y += row;
    }
  draw_words (canvas, time, moment, TRUE);
  draw_words (canvas, describe_rate (scene->rate), rate, FALSE);
  if (scene->before != NULL)
    draw_run (canvas, scene, scene->before, run);
  draw_run (canvas, scene, scene->after, (TbPoint){ run.x, run.y + (scene->before != NULL ? row : 0) });
}

void
tb_throw_caption_draw (cairo_t *cr, double width, double height, const TbThrowScene *scene)
{
  g_auto (TbCanvas) canvas = { 0 };
  TbTheme theme = scene->theme;
  gboolean beside = stands_beside (width, height / rows (TRUE));
  double em = height / rows (beside);

  tb_canvas_init (&canvas, cr, width, height, &theme);
  /* The caption is low, but not small. */
  canvas.theme.line_width = theme.line_width * em / (LETTERS * theme.text_size);
  canvas.theme.text_size = canvas.em = em;
  tb_canvas_fill_background (&canvas);
  draw_rule (&canvas);
  draw_lines (&canvas, scene, beside);
}
