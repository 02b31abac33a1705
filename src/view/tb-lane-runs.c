/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include <glib/gi18n-lib.h>
#include "tb-lane-ground.h"
#include "tb-lane-runs.h"
#include "tb-path-line.h"

/* The light line under a run is so much wider, em, and so strong. */
#define CASING 0.26
#define CASING_OPACITY 0.7
/* Radius of the mark where a run ends, and half the size of the other marks, em. */
#define END_MARK 0.42
#define BREAK_MARK 0.46
#define TICK_MARK 0.48
#define LANDING_MARK 0.30
/* The gutter's mark is a cross in a ring: both, of the ordinary mark's radius. */
#define GUTTER_MARK 1.5
#define GUTTER_CROSS 0.75
/* In the perspective most of a run lies far away: its line and marks are drawn finer by so much. */
#define FAR_AWAY 0.72
/* A landing nearer to the foul line than this, m, gets no mark. */
#define LANDING_FROM 0.15
/* Distance of a label from what it speaks of, em. */
#define BESIDE 1.2
#define BESIDE_FLAT 0.9
/* Runs no further apart than this run together. */
#define TOGETHER 0.2
/* A label fits between runs that are further apart, em. */
#define NEAR 3

void
tb_lane_runs_init (TbLaneRun runs[TB_LANE_RUNS],
                   const TbCanvas *canvas,
                   const TbLaneLayout *layout,
                   const TbLaneScene *scene)
{
  double fine = scene->projection == TB_LANE_FROM_APPROACH ? FAR_AWAY : 1;

  runs[0] = (TbLaneRun){ scene->before, scene->before_label, tb_run_style (&canvas->theme, TRUE),
                         layout->mark_em };
  runs[1] = (TbLaneRun){ scene->after, scene->after_label, tb_run_style (&canvas->theme, FALSE),
                         layout->mark_em };
  if (runs[0].label == NULL)
    runs[0].label = _ ("before");
  if (runs[1].label == NULL)
    runs[1].label = _ ("after");
  for (int i = 0; i < TB_LANE_RUNS; i++)
    {
      runs[i].style.width *= fine;
      runs[i].em *= fine;
      if (runs[i].path != NULL && runs[i].path->count == 0)
        runs[i].path = NULL;
    }
}

gboolean
tb_lane_run_in_gutter (const TbPath *path)
{
  return path->result != TB_RESULT_PINS;
}

TbPoint
tb_lane_run_point (const TbLaneLayout *layout, const TbPath *path, const TbSample *sample)
{
  double x = tb_lane_x (path->mirrored, sample->position.x);
  double z = MAX (sample->position.z - path->body.radius, 0), limit;

  if (sample->phase != TB_PHASE_FLIGHT)
    z = 0;
  if (layout->projection != TB_LANE_FROM_APPROACH)
    {
      limit = TB_LANE_HALF_WIDTH + 0.5 * layout->gutter_width;
      x = CLAMP (x, -limit, limit);
    }
  return tb_lane_layout_point (layout, x, sample->position.y, z);
}

gboolean
tb_lane_run_point_at (const TbLaneLayout *layout, const TbPath *path, double y, TbPoint *point)
{
  TbSample sample;

  if (isnan (y) || !tb_path_at_distance (path, y, &sample))
    return FALSE;
  *point = tb_lane_run_point (layout, path, &sample);
  return TRUE;
}

static TbPoint
point_of (const TbPath *path, const TbSample *sample, const void *layout)
{
  return tb_lane_run_point (layout, path, sample);
}

static void
draw_lines (TbCanvas *canvas, const TbLaneLayout *layout, const TbLaneRun *run)
{
  cairo_t *cr = canvas->cr;
  g_autoptr (TbPolyline) line = tb_path_line (run->path, FALSE, TB_PIT_Y, point_of, layout);
  g_autoptr (TbPolyline) flight = tb_path_line (run->path, TRUE, TB_PIT_Y, point_of, layout);

  tb_polyline_trace (line, cr);
  cairo_set_line_width (cr, run->style.width + CASING * run->em);
  cairo_set_line_join (cr, CAIRO_LINE_JOIN_ROUND);
  cairo_set_line_cap (cr, CAIRO_LINE_CAP_ROUND);
  tb_draw_color (cr, tb_color_with_alpha (canvas->theme.wood, CASING_OPACITY));
  cairo_stroke_preserve (cr);
  tb_draw_color (cr, run->style.color);
  tb_draw_set_run (cr, &run->style);
  cairo_stroke (cr);
  tb_draw_set_flight (cr, &run->style);
  tb_polyline_trace (flight, cr);
  cairo_stroke (cr);
  cairo_set_dash (cr, NULL, 0, 0);
  tb_polyline_take (line, &canvas->labels);
}

/* The direction of a run in the picture at a distance down the lane, a unit vector. */
static TbPoint
run_direction (const TbLaneLayout *layout, const TbPath *path, double y)
{
  const double step = 0.1; /* m */
  TbPoint a, b;
  double length;

  if (!tb_lane_run_point_at (layout, path, y - step, &a)
      || !tb_lane_run_point_at (layout, path, y + step, &b))
    return (TbPoint){ 0, -1 };
  length = hypot (b.x - a.x, b.y - a.y);
  if (length == 0)
    return (TbPoint){ 0, -1 };
  return (TbPoint){ (b.x - a.x) / length, (b.y - a.y) / length };
}

/* A short line across the run. */
static void
draw_tick (TbCanvas *canvas, const TbLaneLayout *layout, const TbLaneRun *run, double y)
{
  double half = TICK_MARK * run->em;
  TbPoint at, along;

  if (!tb_lane_run_point_at (layout, run->path, y, &at))
    return;
  along = run_direction (layout, run->path, y);
  cairo_set_line_width (canvas->cr, 0.75 * run->style.width);
  cairo_set_line_cap (canvas->cr, CAIRO_LINE_CAP_BUTT);
  tb_draw_color (canvas->cr, run->style.color);
  tb_draw_line (canvas->cr, (TbPoint){ at.x - half * along.y, at.y + half * along.x },
                (TbPoint){ at.x + half * along.y, at.y - half * along.x });
}

static void
fill_and_edge (TbCanvas *canvas, const TbRunStyle *style)
{
  tb_draw_color (canvas->cr, style->before ? canvas->theme.background : style->color);
  cairo_fill_preserve (canvas->cr);
  tb_draw_color (canvas->cr, style->before ? style->color : canvas->theme.background);
  cairo_set_line_width (canvas->cr, 0.6 * style->width);
  cairo_stroke (canvas->cr);
}

static void
draw_breakpoint (TbCanvas *canvas, const TbLaneLayout *layout, const TbLaneRun *run)
{
  double half = BREAK_MARK * run->em;
  TbPoint at;

  if (!tb_lane_run_point_at (layout, run->path, run->path->measures.breakpoint_y, &at))
    return;
  cairo_move_to (canvas->cr, at.x, at.y - half);
  cairo_line_to (canvas->cr, at.x + half, at.y);
  cairo_line_to (canvas->cr, at.x, at.y + half);
  cairo_line_to (canvas->cr, at.x - half, at.y);
  cairo_close_path (canvas->cr);
  fill_and_edge (canvas, &run->style);
}

static void
draw_landing (TbCanvas *canvas, const TbLaneLayout *layout, const TbLaneRun *run)
{
  double y = run->path->measures.landing_y;
  TbPoint at;

  if (!(y > LANDING_FROM) || !tb_lane_run_point_at (layout, run->path, y, &at))
    return;
  tb_draw_circle (canvas->cr, at, LANDING_MARK * run->em);
  fill_and_edge (canvas, &run->style);
}

void
tb_lane_run_end_mark (TbCanvas *canvas, const TbLaneRun *run, TbPoint at, double radius)
{
  cairo_t *cr = canvas->cr;
  double half = GUTTER_CROSS * radius;

  if (!tb_lane_run_in_gutter (run->path))
    {
      tb_draw_run_mark (cr, &canvas->theme, &run->style, &at, radius);
      return;
    }
  tb_draw_circle (cr, at, GUTTER_MARK * radius);
  tb_draw_color (cr, canvas->theme.background);
  cairo_fill_preserve (cr);
  tb_draw_color (cr, run->style.color);
  cairo_set_line_cap (cr, CAIRO_LINE_CAP_ROUND);
  cairo_set_line_width (cr, MIN (0.7 * run->style.width, 0.5 * radius));
  cairo_stroke (cr);
  tb_draw_line (cr, (TbPoint){ at.x - half, at.y - half }, (TbPoint){ at.x + half, at.y + half });
  tb_draw_line (cr, (TbPoint){ at.x - half, at.y + half }, (TbPoint){ at.x + half, at.y - half });
}

static void
draw_end (TbCanvas *canvas, const TbLaneLayout *layout, const TbLaneRun *run)
{
  const TbPath *path = run->path;
  TbPoint at = tb_lane_run_point (layout, path, &path->samples[path->count - 1]);

  tb_lane_run_end_mark (canvas, run, at, END_MARK * run->em);
}

void
tb_lane_runs_draw (TbCanvas *canvas, const TbLaneLayout *layout, const TbLaneRun runs[TB_LANE_RUNS])
{
  cairo_save (canvas->cr);
  tb_lane_clip (canvas->cr, layout);
  for (int i = 0; i < TB_LANE_RUNS; i++)
    if (runs[i].path != NULL)
      draw_lines (canvas, layout, &runs[i]);
  cairo_restore (canvas->cr);
  for (int i = 0; i < TB_LANE_RUNS; i++)
    if (runs[i].path != NULL)
      {
        draw_tick (canvas, layout, &runs[i], runs[i].path->measures.hook_start_y);
        draw_tick (canvas, layout, &runs[i], runs[i].path->measures.roll_start_y);
        draw_landing (canvas, layout, &runs[i]);
        draw_breakpoint (canvas, layout, &runs[i]);
        draw_end (canvas, layout, &runs[i]);
      }
}

/* What a label on the lane speaks of, and the side of it, 1 to the right or below, where it had better be. */
typedef struct TbBeside
{
  TbPoint at; /* px */
  double side;
  gboolean only; /* not on the other side, where the other run is near */
} TbBeside;

/* A thin line from a label that could not stay beside what it speaks of. */
static void
draw_label_leader (TbCanvas *canvas, const cairo_rectangle_t *box, TbColor color, TbPoint at)
{
  TbPoint from = { CLAMP (at.x, box->x, box->x + box->width), CLAMP (at.y, box->y, box->y + box->height) };

  tb_draw_color (canvas->cr, color);
  cairo_set_line_width (canvas->cr, MAX (1, 0.09 * canvas->em));
  tb_draw_line (canvas->cr, from, at);
}

/* Where labels on the lane may lie: in a plan the gutters are room as well. */
static cairo_rectangle_t
label_room (const TbLaneLayout *layout)
{
  TbPoint edge = tb_lane_layout_point (layout, TB_LANE_HALF_WIDTH, 0, 0);
  TbPoint end = tb_lane_layout_point (layout, TB_LANE_HALF_WIDTH + layout->gutter_width, 0, 0);
  double across = fabs (end.x - edge.x), along = fabs (end.y - edge.y);
  cairo_rectangle_t room = layout->lane;

  if (layout->projection == TB_LANE_FROM_APPROACH)
    return room;
  return (cairo_rectangle_t){ room.x - across, room.y - along, room.width + 2 * across,
                              room.height + 2 * along };
}

/* Places a label on the lane beside a point: right beside it on either side, then further on along the lane.
 * TRUE if it has found a place. */
static gboolean
label_beside (TbCanvas *canvas, const TbLaneLayout *layout, TbLabel label, const TbBeside *beside)
{
  /* Away from the run, and along it, em. The run lies across the picture in one of the plans. */
  static const double away[] = { 1, -1 }, along[] = { 0, -1.5, 1.5, -3, 3, -4.5, 4.5, -6, 6 };
  gboolean sideways = layout->projection == TB_LANE_PLAN_SIDEWAYS;
  const cairo_rectangle_t room = label_room (layout);

  label.plate = TRUE;
  label.across = label.down = TB_ALIGN_MIDDLE;
  for (guint i = 0; i < G_N_ELEMENTS (away) * G_N_ELEMENTS (along); i++)
    {
      double side = away[i % 2] * beside->side, slide = along[i / 2] * canvas->em;
      cairo_rectangle_t box;

      if (beside->only && side != beside->side)
        continue;
      *(sideways ? &label.down : &label.across) = side > 0 ? TB_ALIGN_START : TB_ALIGN_END;
      label.x = beside->at.x + (sideways ? 2 * slide : side * BESIDE * canvas->em);
      label.y = beside->at.y + (sideways ? side * BESIDE_FLAT * canvas->em : slide);
      box = tb_canvas_measure (canvas, &label);
      if (!tb_rectangle_contains (&room, &box) || !tb_canvas_try_clear_label (canvas, &label))
        continue;
      if (slide != 0)
        draw_label_leader (canvas, &box, label.color, beside->at);
      return TRUE;
    }
  return FALSE;
}

/* Beside a point of a run, on the side that lies away from the other run: on the other a label would seem to
 * speak of that one. Where they run together, and from the approach, where they always do, after is spoken of
 * on the side of its bowler's gutter, before on the other. */
static TbBeside
beside_run (const TbLaneLayout *layout, const TbLaneRun *run, const TbLaneRun *other, TbPoint at, double y)
{
  TbBeside beside = { .at = at, .side = run->style.before == run->path->mirrored ? 1 : -1 };
  TbPoint there;
  double apart = 0;

  if (layout->projection != TB_LANE_FROM_APPROACH && other->path != NULL
      && tb_lane_run_point_at (layout, other->path, y, &there))
    apart = layout->projection == TB_LANE_PLAN_SIDEWAYS ? at.y - there.y : at.x - there.x;
  if (fabs (apart) <= TOGETHER * run->em)
    return beside;
  beside.side = apart > 0 ? 1 : -1;
  beside.only = fabs (apart) < NEAR * run->em;
  return beside;
}

static void
take_breakpoint (TbCanvas *canvas, const TbLaneLayout *layout, const TbLaneRun *run)
{
  double half = BREAK_MARK * run->em;
  TbPoint at;

  if (tb_lane_run_point_at (layout, run->path, run->path->measures.breakpoint_y, &at))
    tb_label_space_take (&canvas->labels,
                         &(cairo_rectangle_t){ at.x - half, at.y - half, 2 * half, 2 * half });
}

static void
label_breakpoint (TbCanvas *canvas,
                  const TbLaneLayout *layout,
                  const TbLaneScene *scene,
                  const TbLaneRun runs[TB_LANE_RUNS],
                  int which)
{
  const TbLaneRun *run = &runs[which], *other = &runs[TB_LANE_RUNS - 1 - which];
  const TbMeasures *m = &run->path->measures;
  double board = tb_scene_board (scene, tb_lane_x (run->path->mirrored, m->breakpoint_x));
  double ft = tb_ft_from_metres (m->breakpoint_y);
  TbLabel label = { .color = run->style.color, .bold = TRUE };
  TbBeside beside;
  TbPoint at;
  g_autofree char *text = NULL, *narrow = NULL;

  if (!tb_lane_run_point_at (layout, run->path, m->breakpoint_y, &at))
    return;
  beside = beside_run (layout, run, other, at, m->breakpoint_y);
  /* Translators: a board and a distance from the foul line, as in "8.6 at 42 ft"; then the same in two lines.
   */
  text = g_strdup_printf (_ ("%.1f at %.0f ft"), board, ft);
  narrow = g_strdup_printf (_ ("%.1f\n%.0f ft"), board, ft);
  label.text = text;
  if (label_beside (canvas, layout, label, &beside))
    return;
  label.text = narrow;
  label_beside (canvas, layout, label, &beside);
}

static void
draw_reading_line (TbCanvas *canvas, const TbLaneLayout *layout, double y)
{
  double outer = TB_LANE_HALF_WIDTH + layout->gutter_width;
  TbPoint a = tb_lane_layout_point (layout, -outer, y, 0), b = tb_lane_layout_point (layout, outer, y, 0);

  tb_draw_color (canvas->cr, canvas->theme.text);
  cairo_set_line_width (canvas->cr, MAX (1, 0.4 * canvas->theme.line_width));
  cairo_set_dash (canvas->cr, NULL, 0, 0);
  tb_draw_line (canvas->cr, a, b);
}

static void
label_reading (TbCanvas *canvas,
               const TbLaneLayout *layout,
               const TbLaneScene *scene,
               const TbLaneRun runs[TB_LANE_RUNS],
               int which)
{
  const TbLaneRun *run = &runs[which], *other = &runs[TB_LANE_RUNS - 1 - which];
  TbSample sample;
  g_autofree char *text = NULL;
  TbLabel label = { .color = run->style.color, .bold = TRUE };
  TbBeside beside;
  TbPoint at;

  if (!tb_path_at_distance (run->path, scene->cursor_y, &sample)
      || fabs (sample.position.y - scene->cursor_y) > TB_METRES_PER_INCH)
    return;
  at = tb_lane_run_point (layout, run->path, &sample);
  tb_draw_run_mark (canvas->cr, &canvas->theme, &run->style, &at, 0.7 * END_MARK * run->em);
  text = g_strdup_printf ("%s %.1f", run->label,
                          tb_scene_board (scene, tb_lane_x (run->path->mirrored, sample.position.x)));
  label.text = text;
  beside = beside_run (layout, run, other, at, scene->cursor_y);
  label_beside (canvas, layout, label, &beside);
}

/* In the scale of feet, where it takes the place of a number. */
void
tb_lane_reading_draw (TbCanvas *canvas, const TbLaneLayout *layout, const TbLaneScene *scene)
{
  TbPoint at = tb_lane_layout_point (layout, -TB_LANE_HALF_WIDTH - layout->gutter_width, scene->cursor_y, 0);
  g_autofree char *text = NULL;
  TbLabel label = { .color = canvas->theme.text, .bold = TRUE };

  if (isnan (scene->cursor_y))
    return;
  draw_reading_line (canvas, layout, scene->cursor_y);
  text = g_strdup_printf (_ ("%.0f ft"), tb_ft_from_metres (scene->cursor_y));
  label.text = text;
  tb_lane_set_foot_place (&label, layout, at);
  tb_canvas_try_label (canvas, &label);
}

void
tb_lane_runs_label (TbCanvas *canvas,
                    const TbLaneLayout *layout,
                    const TbLaneScene *scene,
                    const TbLaneRun runs[TB_LANE_RUNS])
{
  gboolean reading = !isnan (scene->cursor_y);

  for (int i = TB_LANE_RUNS - 1; i >= 0 && reading; i--)
    if (runs[i].path != NULL)
      label_reading (canvas, layout, scene, runs, i);
  for (int i = 0; i < TB_LANE_RUNS; i++)
    if (runs[i].path != NULL)
      take_breakpoint (canvas, layout, &runs[i]);
  for (int i = TB_LANE_RUNS - 1; i >= 0; i--)
    if (runs[i].path != NULL)
      label_breakpoint (canvas, layout, scene, runs, i);
}
