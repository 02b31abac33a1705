/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "tb-surface-curve.h"

#include "tb-pocket-line.h"

/* Surfaces that are thrown. */
static const double grits[] = { 500, 750, 1000, 1500, 2000, 2500, 3000, 3500, 4000, 4500, TB_GRIT_POLISH };

const char *
tb_ball_line_label (TbBallLine line)
{
  static const char *const labels[TB_N_BALL_LINES] = { N_ ("Same line"), N_ ("Each on its own pocket line") };

  return labels[line];
}

static const TbSurfaceQuantityInfo infos[TB_N_SURFACE_QUANTITIES] = {
  [TB_SURFACE_HOOK] = { N_ ("Boards hooked"), "", 1, FALSE, 0.3 },
  [TB_SURFACE_PINS] = { N_ ("Board at the pins"), "", 1, FALSE, 0.3 },
  [TB_SURFACE_AIM] = { N_ ("Board at the arrows"), "", 1, FALSE, 0.2 },
  [TB_SURFACE_BREAKPOINT] = { N_ ("Breakpoint, board"), "", 1, FALSE, 0.3 },
  [TB_SURFACE_TURNS] = { N_ ("Breakpoint, distance"), N_ (" ft"), 1, TRUE, 0.5 },
  [TB_SURFACE_ROLLS] = { N_ ("Rolls from"), N_ (" ft"), 1, TRUE, 0.5 },
  [TB_SURFACE_ANGLE] = { N_ ("Angle at the pins"), N_ ("°"), 1, FALSE, 0.5 },
  [TB_SURFACE_TURN] = { N_ ("Length of the turn"), N_ (" ft"), 1, TRUE, 1.0 },
  [TB_SURFACE_ROOM] = { N_ ("Room at the arrows"), N_ (" boards"), 1, FALSE, 0.2 },
};

const TbSurfaceQuantityInfo *
tb_surface_quantity_info (TbSurfaceQuantity quantity)
{
  return &infos[quantity];
}

/* Quantities that are measures of a run. */
static const char *const measure_names[TB_N_SURFACE_QUANTITIES] = {
  [TB_SURFACE_HOOK] = "hook_board",
  [TB_SURFACE_PINS] = "board_at_pins",
  [TB_SURFACE_BREAKPOINT] = "breakpoint_board",
  [TB_SURFACE_TURNS] = "breakpoint_ft",
  [TB_SURFACE_ROLLS] = "roll_start_ft",
  [TB_SURFACE_ANGLE] = "angle_at_pins_deg",
};

/* The stretch in which the ball turns, ft. */
static double
turn_length (const TbMeasures *measures)
{
  double start = tb_measure_value (tb_measure_find ("hook_start_ft"), measures);
  double end = tb_measure_value (tb_measure_find ("roll_start_ft"), measures);

  return (isnan (end) ? TB_HEAD_PIN_FT : end) - start;
}

double
tb_surface_point_value (const TbSurfacePoint *point, TbSurfaceQuantity quantity)
{
  if (!point->there)
    return NAN;
  if (quantity == TB_SURFACE_AIM)
    return tb_board_from_x (point->delivery.aim);
  if (quantity == TB_SURFACE_TURN)
    return turn_length (&point->measures);
  if (quantity == TB_SURFACE_ROOM)
    return point->room;
  return tb_measure_value (tb_measure_find (measure_names[quantity]), &point->measures);
}

static void
throw_same_line (TbThrower *thrower, const TbShot *shot, TbSurfacePoint *point)
{
  point->delivery = shot->delivery;
  point->room = NAN;
  point->there = tb_thrower_throw (thrower, shot, &point->measures) == TB_OK;
}

static gboolean
throw_pocket_line (TbThrower *thrower, const TbShot *shot, GCancellable *cancellable, TbSurfacePoint *point)
{
  TbPocketLines lines;
  const TbPocketAnswer *answer;

  if (!tb_pocket_lines_find (thrower, shot, TB_POCKET_HOLD_LAYDOWN, cancellable, &lines))
    return FALSE;
  answer = tb_pocket_lines_best (&lines);
  if (answer == NULL)
    return TRUE;
  point->there = TRUE;
  point->delivery = answer->delivery;
  point->measures = answer->measures;
  point->room = answer->room_out + answer->room_in;
  return TRUE;
}

static gboolean
throw_point (TbThrower *thrower,
             const TbSurfaceCurve *curve,
             const TbShot *shot,
             GCancellable *cancellable,
             TbSurfacePoint *point)
{
  TbShot surfaced = *shot;

  surfaced.ball.cover.roughness = point->roughness;
  if (g_cancellable_is_cancelled (cancellable))
    return FALSE;
  if (curve->line == TB_BALL_POCKET_LINE)
    return throw_pocket_line (thrower, &surfaced, cancellable, point);
  throw_same_line (thrower, &surfaced, point);
  return TRUE;
}

TbSurfaceCurve *
tb_surface_curve_new (const TbSetup *setup, TbBallLine line, GCancellable *cancellable)
{
  g_autoptr (TbSurfaceCurve) curve = g_new0 (TbSurfaceCurve, 1);
  g_autoptr (TbThrower) thrower = tb_thrower_new ();
  double roughness = setup->shot.ball.cover.roughness;

  curve->line = line;
  curve->points = g_array_new (FALSE, TRUE, sizeof (TbSurfacePoint));
  curve->present = (TbSurfacePoint){ .grit = tb_grit_from_roughness (roughness), .roughness = roughness };
  if (!throw_point (thrower, curve, &setup->shot, cancellable, &curve->present))
    return NULL;
  for (gsize i = 0; i < G_N_ELEMENTS (grits); i++)
    {
      TbSurfacePoint point = { .grit = grits[i], .roughness = tb_roughness_from_grit (grits[i]) };

      if (!throw_point (thrower, curve, &setup->shot, cancellable, &point))
        return NULL;
      g_array_append_val (curve->points, point);
    }
  return g_steal_pointer (&curve);
}

void
tb_surface_curve_free (TbSurfaceCurve *curve)
{
  g_clear_pointer (&curve->points, g_array_unref);
  g_free (curve);
}

static double
value_at (const TbSurfaceCurve *curve, guint i, TbSurfaceQuantity quantity)
{
  return tb_surface_point_value (&g_array_index (curve->points, TbSurfacePoint, i), quantity);
}

/* Ends, and the greatest and least points, of a quantity where it is there. */
typedef struct Course
{
  guint count;
  guint first, last, highest, lowest;
} Course;

static Course
find_course (const TbSurfaceCurve *curve, TbSurfaceQuantity quantity)
{
  Course course = { 0 };

  for (guint i = 0; i < curve->points->len; i++)
    {
      double value = value_at (curve, i, quantity);

      if (isnan (value))
        continue;
      if (course.count++ == 0)
        course.first = course.highest = course.lowest = i;
      course.last = i;
      if (value > value_at (curve, course.highest, quantity))
        course.highest = i;
      if (value < value_at (curve, course.lowest, quantity))
        course.lowest = i;
    }
  return course;
}

/* Whether it goes one way between two points, but for steps back that nobody notices. */
static gboolean
goes_one_way (const TbSurfaceCurve *curve, TbSurfaceQuantity quantity, guint from, guint to, double sign)
{
  double reached = (double)-INFINITY;

  for (guint i = from; i <= to; i++)
    {
      double value = sign * value_at (curve, i, quantity);

      if (value < reached - infos[quantity].noticeable)
        return FALSE;
      reached = fmax (reached, value);
    }
  return TRUE;
}

static gboolean
turns_at (const TbSurfaceCurve *curve, TbSurfaceQuantity quantity, const Course *course, double sign)
{
  guint at = sign > 0 ? course->highest : course->lowest;
  double value = sign * value_at (curve, at, quantity);
  double ends = fmax (sign * value_at (curve, course->first, quantity),
                      sign * value_at (curve, course->last, quantity));

  return value - ends >= infos[quantity].noticeable && goes_one_way (curve, quantity, course->first, at, sign)
         && goes_one_way (curve, quantity, at, course->last, -sign);
}

TbSurfaceTrend
tb_surface_curve_trend (const TbSurfaceCurve *curve, TbSurfaceQuantity quantity, guint *turning)
{
  Course course = find_course (curve, quantity);

  if (course.count == 0)
    return TB_TREND_MIXED;
  if (value_at (curve, course.highest, quantity) - value_at (curve, course.lowest, quantity)
      < infos[quantity].noticeable)
    return TB_TREND_LEVEL;
  if (turns_at (curve, quantity, &course, 1))
    {
      if (turning != NULL)
        *turning = course.highest;
      return TB_TREND_PEAK;
    }
  if (turns_at (curve, quantity, &course, -1))
    {
      if (turning != NULL)
        *turning = course.lowest;
      return TB_TREND_VALLEY;
    }
  if (goes_one_way (curve, quantity, course.first, course.last, 1))
    return TB_TREND_RISES;
  return goes_one_way (curve, quantity, course.first, course.last, -1) ? TB_TREND_FALLS : TB_TREND_MIXED;
}

/* The middle of the scale, where nothing is looked for. */
#define MIDDLE_GRIT 2000.0

static guint
middle_point (const TbSurfaceCurve *curve, const Course *course)
{
  guint middle = course->first;

  for (guint i = course->first; i <= course->last; i++)
    {
      const TbSurfacePoint *point = &g_array_index (curve->points, TbSurfacePoint, i);

      if (point->there && point->grit <= MIDDLE_GRIT)
        middle = i;
    }
  return middle;
}

gboolean
tb_surface_curve_landmarks (const TbSurfaceCurve *curve, guint *coarse, guint *middle, guint *fine)
{
  gboolean re_aimed = curve->line == TB_BALL_POCKET_LINE;
  Course course = find_course (curve, re_aimed ? TB_SURFACE_ROOM : TB_SURFACE_HOOK);

  *coarse = course.first;
  *fine = course.last;
  *middle = re_aimed ? course.highest : middle_point (curve, &course);
  return course.count >= 3;
}
