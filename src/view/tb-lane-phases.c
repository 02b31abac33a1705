/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include <glib/gi18n-lib.h>
#include "tb-lane-ground.h"
#include "tb-lane-runs.h"

/* From a strip to its names, em. */
#define NAMES_GAP (TB_STRIP_NAMES - TB_STRIP_BEFORE - TB_STRIP_SPACE - TB_STRIP_AFTER)
/* Skid is drawn so wide, of the strip; the rungs of hook lie so far apart, em, and are so thick. */
#define SKID_SHARE 0.28
#define RUNG_PITCH 0.55
#define RUNG_SHARE 0.5
/* Radius of the mark at a strip's end, em. */
#define END_MARK 0.42

typedef enum TbSpanKind
{
  TB_SPAN_SKID,
  TB_SPAN_HOOK,
  TB_SPAN_ROLL,
  TB_N_SPANS
} TbSpanKind;

/* From the landing to the pins, or to the gutter. */
typedef struct TbSpan
{
  double near, far; /* m; far <= near: there is none */
} TbSpan;

static double
known_or (double value, double otherwise)
{
  return isnan (value) ? otherwise : value;
}

/* Skid until the heading has turned by a degree, hook until the ball rolls for good, roll to the end. A ball that
 * rolls before it has turned does not hook. */
static void
find_spans (const TbPath *path, TbSpan spans[TB_N_SPANS])
{
  const TbMeasures *m = &path->measures;
  double end = path->samples[path->count - 1].position.y;
  double start = CLAMP (known_or (m->landing_y, 0), 0, end);
  double roll = CLAMP (known_or (m->roll_start_y, end), start, end);
  double hook = CLAMP (known_or (m->hook_start_y, roll), start, roll);

  spans[TB_SPAN_SKID] = (TbSpan){ start, hook };
  spans[TB_SPAN_HOOK] = (TbSpan){ hook, roll };
  spans[TB_SPAN_ROLL] = (TbSpan){ roll, end };
}

/* A strip's sides, m across the lane frame. The perspective has one strip, on the floor; the plans have two beside
 * the lane, of before nearer to it. */
static TbLaneArea
strip_area (const TbLaneLayout *layout, gboolean before)
{
  double scale = tb_lane_layout_scale (layout, 0), em = layout->em;
  double near, width;

  if (layout->projection == TB_LANE_FROM_APPROACH)
    return (TbLaneArea){ TB_PHASES_NEAR, TB_PHASES_NEAR + TB_PHASES_WIDTH, 0, 0 };
  near = layout->projection == TB_LANE_PLAN_SIDEWAYS ? layout->phases.y - layout->lane.y
                                                      : layout->phases.x - layout->lane.x;
  width = (before ? TB_STRIP_BEFORE : TB_STRIP_AFTER) * em;
  if (!before)
    near += (TB_STRIP_BEFORE + TB_STRIP_SPACE) * em;
  near = near / scale - TB_LANE_HALF_WIDTH;
  return (TbLaneArea){ near, near + width / scale, 0, 0 };
}

static void
add_quad (cairo_t *cr, const TbLaneLayout *layout, TbLaneArea strip, TbSpan span)
{
  strip.near = span.near;
  strip.far = span.far;
  tb_lane_quad (cr, layout, strip);
}

/* Three ways of filling that differ without colour: a thin line, rungs, a solid band. */
static void
add_span (cairo_t *cr, const TbLaneLayout *layout, TbLaneArea strip, TbSpan span, TbSpanKind kind)
{
  double middle = 0.5 * (strip.left + strip.right), half = 0.5 * (strip.right - strip.left);

  if (span.far <= span.near)
    return;
  if (kind == TB_SPAN_ROLL)
    add_quad (cr, layout, strip, span);
  else if (kind == TB_SPAN_SKID)
    {
      strip.left = middle - SKID_SHARE * half;
      strip.right = middle + SKID_SHARE * half;
      add_quad (cr, layout, strip, span);
    }
  else
    {
      double pitch = layout->projection == TB_LANE_FROM_APPROACH
                       ? TB_METRES_PER_FOOT
                       : tb_lane_layout_along_from_px (layout, RUNG_PITCH * layout->em);
      int rungs = MAX ((int) lround ((span.far - span.near) / pitch), 1);
      double step = (span.far - span.near) / rungs;

      for (int i = 0; i < rungs; i++)
        add_quad (cr, layout, strip, (TbSpan){ span.near + i * step, span.near + (i + RUNG_SHARE) * step });
    }
}

static void
draw_strip (TbCanvas *canvas, const TbLaneLayout *layout, const TbLaneRun *run)
{
  TbLaneArea strip = strip_area (layout, run->style.before);
  TbSpan spans[TB_N_SPANS];

  find_spans (run->path, spans);
  tb_draw_color (canvas->cr, run->style.color);
  for (int kind = 0; kind < TB_N_SPANS; kind++)
    add_span (canvas->cr, layout, strip, spans[kind], (TbSpanKind) kind);
  cairo_fill (canvas->cr);
  /* Before or after: the strip ends as the run's line does. */
  if (layout->projection != TB_LANE_FROM_APPROACH)
    {
      TbPoint end = tb_lane_layout_point (layout, 0.5 * (strip.left + strip.right), spans[TB_SPAN_ROLL].far, 0);

      tb_lane_run_end_mark (canvas, run, end, END_MARK * layout->em);
    }
}

/* A label beside the strip at a distance down the lane. */
static TbLabel
strip_label (TbCanvas *canvas, const TbLaneLayout *layout, TbLaneArea strip, double y)
{
  TbPoint at = tb_lane_layout_point (layout, strip.right, y, 0);
  TbLabel label = { .x = at.x, .y = at.y, .color = canvas->theme.text };

  if (layout->projection == TB_LANE_PLAN_SIDEWAYS)
    {
      label.y += NAMES_GAP * canvas->em;
      label.across = TB_ALIGN_MIDDLE;
    }
  else
    {
      label.x += NAMES_GAP * canvas->em;
      label.down = TB_ALIGN_MIDDLE;
    }
  return label;
}

/* What each part is called, in its middle; short neighbours make room for each other. */
static void
name_spans (TbCanvas *canvas, const TbLaneLayout *layout, TbLaneArea strip, const TbSpan spans[TB_N_SPANS])
{
  const char *names[TB_N_SPANS] = { _("skid"), _("hook"), _("roll") };
  gboolean sideways = layout->projection == TB_LANE_PLAN_SIDEWAYS;
  double place[TB_N_SPANS], size[TB_N_SPANS];
  double ends[2] = { sideways ? 0 : layout->ends.y, sideways ? canvas->width : canvas->height };
  TbLabel labels[TB_N_SPANS];
  int count = 0;

  /* In the plan the way down the lane is up the picture: from the far end on, so that places rise. */
  for (int i = 0; i < TB_N_SPANS; i++)
    {
      int kind = sideways ? i : TB_N_SPANS - 1 - i;
      TbLabel near, far;
      cairo_rectangle_t box;

      if (spans[kind].far <= spans[kind].near)
        continue;
      near = strip_label (canvas, layout, strip, spans[kind].near);
      far = strip_label (canvas, layout, strip, spans[kind].far);
      labels[count] = near;
      labels[count].x = 0.5 * (near.x + far.x);
      labels[count].y = 0.5 * (near.y + far.y);
      labels[count].text = names[kind];
      box = tb_canvas_measure (canvas, &labels[count]);
      place[count] = sideways ? labels[count].x : labels[count].y;
      size[count++] = sideways ? box.width : box.height;
    }
  if (!tb_spread (place, size, count, ends, (sideways ? 0.8 : 0.1) * canvas->em))
    return;
  for (int i = 0; i < count; i++)
    {
      *(sideways ? &labels[i].x : &labels[i].y) = place[i];
      tb_canvas_try_label (canvas, &labels[i]);
    }
}

/* Where hook and roll begin, in feet, where there is room. */
static void
number_spans (TbCanvas *canvas, const TbLaneLayout *layout, TbLaneArea strip, const TbSpan spans[TB_N_SPANS])
{
  for (int kind = TB_SPAN_HOOK; kind < TB_N_SPANS; kind++)
    {
      g_autofree char *text = NULL;
      TbLabel label = strip_label (canvas, layout, strip, spans[kind].near);

      if (spans[kind].far <= spans[kind].near)
        continue;
      text = g_strdup_printf (_("%.0f ft"), tb_ft_from_metres (spans[kind].near));
      label.text = text;
      label.color = canvas->theme.quiet;
      label.size = 0.9 * canvas->em;
      tb_canvas_try_label (canvas, &label);
    }
}

void
tb_lane_phases_draw (TbCanvas *canvas,
                     const TbLaneLayout *layout,
                     const TbLaneScene *scene,
                     const TbLaneRun runs[TB_LANE_RUNS])
{
  const TbLaneRun *named = runs[1].path != NULL ? &runs[1] : &runs[0];
  gboolean perspective = layout->projection == TB_LANE_FROM_APPROACH;
  TbSpan spans[TB_N_SPANS];

  if (!scene->show_phases || named->path == NULL || (!perspective && layout->phases.width == 0))
    return;
  if (!perspective && layout->phases.height == 0)
    return;
  for (int i = 0; i < TB_LANE_RUNS; i++)
    if (runs[i].path != NULL && (!perspective || &runs[i] == named))
      draw_strip (canvas, layout, &runs[i]);
  find_spans (named->path, spans);
  name_spans (canvas, layout, strip_area (layout, named->style.before), spans);
  number_spans (canvas, layout, strip_area (layout, FALSE), spans);
}
