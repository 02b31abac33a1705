/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include <glib/gi18n-lib.h>
#include "tb-lane-runs.h"

/* Labels beyond the pins: both runs and the pocket. */
#define MAX_ENDS (TB_LANE_RUNS + 1)
/* Distances, em. */
#define LABEL_GAP 0.9
#define BRACKET_AT 0.35  /* beyond the lane */
#define BRACKET_DEPTH 0.35
#define LEADER_GAP 0.15

typedef struct TbEnd
{
  char *text;
  TbColor color;
  gboolean bold;
  TbPoint anchor;   /* what the label speaks of, px */
  gboolean pocket;
  gboolean alone;   /* no line leads from the label to the anchor */
  double half;      /* px, half the pocket's width */
} TbEnd;

static gboolean
is_sideways (const TbLaneLayout *layout)
{
  return layout->projection == TB_LANE_PLAN_SIDEWAYS;
}

/* Where the lane's far end is in the picture: what leaders go through. */
static double
far_edge (const TbLaneLayout *layout)
{
  TbPoint far = tb_lane_layout_point (layout, 0, TB_PIT_Y + layout->pit_depth, 0);

  if (layout->projection == TB_LANE_FROM_APPROACH)
    return tb_lane_layout_point (layout, 0, TB_PIT_Y, TB_PIT_HEIGHT).y;
  return is_sideways (layout) ? far.x : far.y;
}

/* Both ends of the pocket's bracket, across the lane, px. */
static void
bracket_ends (const TbLaneLayout *layout, const TbLaneScene *scene, double ends[2])
{
  TbPoint low = tb_lane_layout_point (layout, tb_lane_x (scene->mirrored, scene->pocket_low), TB_HEAD_PIN_Y, 0);
  TbPoint high = tb_lane_layout_point (layout, tb_lane_x (scene->mirrored, scene->pocket_high), TB_HEAD_PIN_Y, 0);

  ends[0] = is_sideways (layout) ? MIN (low.y, high.y) : MIN (low.x, high.x);
  ends[1] = is_sideways (layout) ? MAX (low.y, high.y) : MAX (low.x, high.x);
}

static gboolean
has_pocket (const TbLaneScene *scene)
{
  return scene->pocket_low != scene->pocket_high;
}

/* Where a run has ended: a board at the pins, or a gutter. */
static TbEnd
run_end (const TbLaneLayout *layout, const TbLaneScene *scene, const TbLaneRun *run)
{
  const TbPath *path = run->path;
  const TbSample *last = &path->samples[path->count - 1];
  TbEnd end = { .color = run->style.color, .bold = TRUE, .anchor = tb_lane_run_point (layout, path, last) };

  /* In the perspective the line would cross the scale of feet. */
  end.alone = tb_lane_run_in_gutter (path) && layout->projection == TB_LANE_FROM_APPROACH;
  if (tb_lane_run_in_gutter (path))
    /* Translators: the first is "before" or "after", then a distance from the foul line. */
    end.text = g_strdup_printf (_("%s: gutter at %.0f ft"), run->label, tb_ft_from_metres (last->position.y));
  else
    end.text = g_strdup_printf ("%s %.1f",
                                run->label,
                                tb_scene_board (scene, tb_lane_x (path->mirrored, last->position.x)));
  return end;
}

static TbEnd
pocket_end (TbCanvas *canvas, const TbLaneLayout *layout, const TbLaneScene *scene)
{
  double across[2], edge = far_edge (layout), beyond = (BRACKET_AT + BRACKET_DEPTH) * layout->em, middle;
  TbEnd end = { .text = g_strdup (_("pocket")), .color = canvas->theme.quiet, .pocket = TRUE };

  bracket_ends (layout, scene, across);
  middle = 0.5 * (across[0] + across[1]);
  end.half = 0.5 * (across[1] - across[0]);
  end.anchor = is_sideways (layout) ? (TbPoint){ edge + beyond, middle } : (TbPoint){ middle, edge - beyond };
  return end;
}

static int
collect_ends (TbCanvas *canvas,
              const TbLaneLayout *layout,
              const TbLaneScene *scene,
              const TbLaneRun runs[TB_LANE_RUNS],
              TbEnd ends[MAX_ENDS])
{
  int count = 0;

  for (int i = 0; i < TB_LANE_RUNS; i++)
    if (runs[i].path != NULL)
      ends[count++] = run_end (layout, scene, &runs[i]);
  if (has_pocket (scene))
    ends[count++] = pocket_end (canvas, layout, scene);
  return count;
}

static double
across_of (const TbLaneLayout *layout, TbPoint point)
{
  return is_sideways (layout) ? point.y : point.x;
}

/* Insertion sort: three at most, and equal ones keep their order. */
static void
sort_ends (const TbLaneLayout *layout, TbEnd *ends, int count)
{
  for (int i = 1; i < count; i++)
    for (int j = i; j > 0 && across_of (layout, ends[j].anchor) < across_of (layout, ends[j - 1].anchor); j--)
      {
        TbEnd swap = ends[j];

        ends[j] = ends[j - 1];
        ends[j - 1] = swap;
      }
}

static void
draw_bracket (TbCanvas *canvas, const TbLaneLayout *layout, const TbLaneScene *scene)
{
  cairo_t *cr = canvas->cr;
  double ends[2], edge = far_edge (layout), em = layout->em;
  double foot, back;

  bracket_ends (layout, scene, ends);
  ends[0] = tb_draw_crisp (ends[0]);
  ends[1] = tb_draw_crisp (ends[1]);
  foot = is_sideways (layout) ? edge + BRACKET_AT * em : edge - BRACKET_AT * em;
  back = tb_draw_crisp (is_sideways (layout) ? foot + BRACKET_DEPTH * em : foot - BRACKET_DEPTH * em);
  for (int i = 0; i < 4; i++)
    {
      double across = ends[i / 2], along = i == 0 || i == 3 ? foot : back;

      (i == 0 ? cairo_move_to : cairo_line_to) (cr,
                                                is_sideways (layout) ? along : across,
                                                is_sideways (layout) ? across : along);
    }
  tb_draw_color (cr, canvas->theme.text);
  cairo_set_line_width (cr, MAX (1, 0.13 * em));
  cairo_set_line_cap (cr, CAIRO_LINE_CAP_BUTT);
  cairo_set_line_join (cr, CAIRO_LINE_JOIN_MITER);
  cairo_stroke (cr);
}

/* The point of the pocket's bracket that is nearest to a label. */
static TbPoint
bracket_point (const TbLaneLayout *layout, const TbEnd *end, TbPoint label)
{
  TbPoint point = end->anchor;

  if (is_sideways (layout))
    point.y = CLAMP (label.y, end->anchor.y - end->half, end->anchor.y + end->half);
  else
    point.x = CLAMP (label.x, end->anchor.x - end->half, end->anchor.x + end->half);
  return point;
}

/* From the label to the lane's edge, slanting if the label had to move, and straight on to the run's end. */
static void
draw_leader (TbCanvas *canvas, const TbLaneLayout *layout, const TbEnd *end, const cairo_rectangle_t *box)
{
  cairo_t *cr = canvas->cr;
  double inset = 0.4 * layout->em, edge = far_edge (layout), gap = LEADER_GAP * layout->em;
  TbPoint start, bend;

  if (is_sideways (layout))
    {
      start = (TbPoint){ box->x - gap, box->y + 0.5 * box->height };
      bend = (TbPoint){ edge + 0.2 * layout->em, end->anchor.y };
    }
  else
    {
      start = (TbPoint){ CLAMP (end->anchor.x, box->x + inset, box->x + box->width - inset),
                         box->y + box->height + gap };
      bend = (TbPoint){ end->anchor.x, edge - 0.2 * layout->em };
    }
  if (end->pocket)
    bend = bracket_point (layout, end, start);
  cairo_move_to (cr, start.x, start.y);
  cairo_line_to (cr, bend.x, bend.y);
  if (!end->pocket)
    cairo_line_to (cr, end->anchor.x, end->anchor.y);
  tb_draw_color (cr, end->color);
  cairo_set_line_width (cr, MAX (1, 0.09 * layout->em));
  cairo_set_line_join (cr, CAIRO_LINE_JOIN_ROUND);
  cairo_stroke (cr);
}

static TbLabel
end_label (const TbLaneLayout *layout, const TbEnd *end, double across)
{
  const cairo_rectangle_t *band = &layout->ends;
  TbLabel label = { .text = end->text, .color = end->color, .bold = end->bold };

  if (is_sideways (layout))
    {
      label.x = band->x;
      label.y = across;
      label.down = TB_ALIGN_MIDDLE;
    }
  else
    {
      label.x = across;
      label.y = band->y;
      label.across = TB_ALIGN_MIDDLE;
    }
  return label;
}

/* Places the labels of the first `count` ends in their band. FALSE if they do not fit. */
static gboolean
place_ends (TbCanvas *canvas, const TbLaneLayout *layout, const TbEnd *ends, int count)
{
  const cairo_rectangle_t *band = &layout->ends;
  double limits[2] = { is_sideways (layout) ? band->y - layout->em : band->x,
                       is_sideways (layout) ? band->y + band->height + layout->em : band->x + band->width };
  double centre[MAX_ENDS], size[MAX_ENDS];

  for (int i = 0; i < count; i++)
    {
      TbLabel label = end_label (layout, &ends[i], 0);
      cairo_rectangle_t box = tb_canvas_measure (canvas, &label);

      centre[i] = across_of (layout, ends[i].anchor);
      size[i] = is_sideways (layout) ? box.height : box.width;
    }
  if (!tb_spread (centre, size, count, limits, is_sideways (layout) ? 0.1 * layout->em : LABEL_GAP * layout->em))
    return FALSE;
  for (int i = 0; i < count; i++)
    {
      TbLabel label = end_label (layout, &ends[i], centre[i]);
      cairo_rectangle_t box = tb_canvas_measure (canvas, &label);

      if (tb_canvas_try_label (canvas, &label) && !ends[i].alone)
        draw_leader (canvas, layout, &ends[i], &box);
    }
  return TRUE;
}

/* Takes the pocket out: the bracket says it without words. */
static int
without_pocket (TbEnd *ends, int count)
{
  int kept = 0;

  for (int i = 0; i < count; i++)
    if (ends[i].pocket)
      g_clear_pointer (&ends[i].text, g_free);
    else
      ends[kept++] = ends[i];
  return kept;
}

void
tb_lane_ends_draw (TbCanvas *canvas,
                   const TbLaneLayout *layout,
                   const TbLaneScene *scene,
                   const TbLaneRun runs[TB_LANE_RUNS])
{
  TbEnd ends[MAX_ENDS];
  int count = collect_ends (canvas, layout, scene, runs, ends);

  sort_ends (layout, ends, count);
  if (has_pocket (scene))
    draw_bracket (canvas, layout, scene);
  if (!place_ends (canvas, layout, ends, count))
    {
      count = without_pocket (ends, count);
      place_ends (canvas, layout, ends, count);
    }
  for (int i = 0; i < count; i++)
    g_free (ends[i].text);
}

void
tb_lane_ends_name (TbCanvas *canvas, const TbLaneLayout *layout, const TbLaneRun runs[TB_LANE_RUNS])
{
  TbPoint middle = tb_lane_layout_point (layout, 0, TB_PIT_Y, 0);
  TbEnd ends[TB_LANE_RUNS];
  int count = 0;

  for (int i = 0; i < TB_LANE_RUNS; i++)
    if (runs[i].path != NULL)
      ends[count++] = (TbEnd){ .text = g_strdup (runs[i].label),
                               .color = runs[i].style.color,
                               .bold = TRUE,
                               .anchor = middle,
                               .alone = TRUE };
  place_ends (canvas, layout, ends, count);
  for (int i = 0; i < count; i++)
    g_free (ends[i].text);
}
