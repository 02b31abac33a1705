/* The curves in words. Every clause is there because the points differ by it, and says by how much.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"
#include "tb-surface-curve.h"

#include <glib/gi18n-lib.h>

/* The two ways in which a quantity differs, as clauses; %s is the size with its unit. */
typedef struct Difference
{
  TbSurfaceQuantity quantity;
  const char *more;
  const char *less;
} Difference;

static const Difference differences[] = {
  { TB_SURFACE_ROLLS, N_ ("it rolls %s later"), N_ ("it rolls %s earlier") },
  { TB_SURFACE_TURNS, N_ ("it turns %s later"), N_ ("it turns %s earlier") },
  { TB_SURFACE_TURN, N_ ("its turn is %s longer"), N_ ("its turn is %s shorter") },
  { TB_SURFACE_ANGLE, N_ ("it comes in %s steeper"), N_ ("it comes in %s flatter") },
  { TB_SURFACE_HOOK, N_ ("it hooks %s more"), N_ ("it hooks %s less") },
  { TB_SURFACE_AIM, N_ ("it is aimed %s further in at the arrows"),
    N_ ("it is aimed %s further out at the arrows") },
  { TB_SURFACE_ROOM, N_ ("it has %s more room"), N_ ("it has %s less room") },
};

static char *
distance_text (double ft, int digits, gboolean metric)
{
  return metric ? g_strdup_printf (_ ("%.*f m"), digits, tb_metres_from_ft (ft))
                : g_strdup_printf (_ ("%.*f ft"), digits, ft);
}

/* A size of a quantity, with its unit. */
static char *
amount_text (TbSurfaceQuantity quantity, double amount, gboolean metric)
{
  if (tb_surface_quantity_info (quantity)->distance)
    return distance_text (amount, 1, metric);
  return g_strdup_printf (quantity == TB_SURFACE_ANGLE ? _ ("%.1f°") : _ ("%.1f boards"), amount);
}

/* The surface of a point, which is one of a pad or polish. */
static char *
surface_text (const TbSurfacePoint *point)
{
  return point->grit >= TB_GRIT_POLISH ? g_strdup (_ ("polish"))
                                       : g_strdup_printf (_ ("%.0f grit"), point->grit);
}

static const TbSurfacePoint *
point_at (const TbSurfaceCurve *curve, guint i)
{
  return &g_array_index (curve->points, TbSurfacePoint, i);
}

#pragma GCC diagnostic push
#pragma GCC diagnostic ignored "-Wformat-nonliteral"
static char *
difference_clause (const Difference *difference, double by, gboolean metric)
{
  g_autofree char *amount = amount_text (difference->quantity, fabs (by), metric);

  return g_strdup_printf (_ (by > 0 ? difference->more : difference->less), amount);
}
#pragma GCC diagnostic pop

/* How far the ball runs on once it rolls, ft: straight, for nothing turns a ball that rolls. */
static double
straight_run (const TbSurfacePoint *point)
{
  double rolls = tb_surface_point_value (point, TB_SURFACE_ROLLS);

  return isnan (rolls) ? 0 : TB_HEAD_PIN_FT - rolls;
}

static GPtrArray *
compare (const TbSurfacePoint *point, const TbSurfacePoint *best, gboolean metric)
{
  GPtrArray *clauses = g_ptr_array_new_with_free_func (g_free);

  for (gsize i = 0; i < G_N_ELEMENTS (differences); i++)
    {
      TbSurfaceQuantity quantity = differences[i].quantity;
      double by = tb_surface_point_value (point, quantity) - tb_surface_point_value (best, quantity);

      if (fabs (by) >= tb_surface_quantity_info (quantity)->noticeable)
        g_ptr_array_add (clauses, difference_clause (&differences[i], by, metric));
    }
  return clauses;
}

static char *
join (GPtrArray *clauses)
{
  GString *text = g_string_new (NULL);

  for (guint i = 0; i < clauses->len; i++)
    {
      if (i > 0)
        /* Translators: between parts of a list; the second before its last part. */
        g_string_append (text, i + 1 < clauses->len ? _ (", ") : _ (" and "));
      g_string_append (text, clauses->pdata[i]);
    }
  return g_string_free (text, FALSE);
}

/* Further apart than this, ft, a roll to the pins counts as a long straight run worth telling. */
#define LONG_RUN_FT 3.0

static char *
end_sentence (const TbSurfacePoint *end, const TbSurfacePoint *best, gboolean metric)
{
  g_autoptr (GPtrArray) clauses = compare (end, best, metric);
  g_autofree char *surface = surface_text (end), *other = surface_text (best);
  g_autofree char *list = NULL, *run = distance_text (straight_run (end), metric ? 1 : 0, metric);

  if (clauses->len == 0)
    return g_strdup_printf (_ ("At %s the numbers are those at %s, but for differences too small to notice."),
                            surface, other);
  list = join (clauses);
  if (straight_run (end) - straight_run (best) > LONG_RUN_FT)
    return g_strdup_printf (_ ("At %s, against %s, %s; it rolls, and no longer turns, over the last %s."),
                            surface, other, list, run);
  if (isnan (tb_surface_point_value (end, TB_SURFACE_ROLLS))
      && !isnan (tb_surface_point_value (best, TB_SURFACE_ROLLS)))
    return g_strdup_printf (_ ("At %s, against %s, %s; it is still sliding when it meets the pins."), surface,
                            other, list);
  return g_strdup_printf (_ ("At %s, against %s, %s."), surface, other, list);
}

/* Room to miss, where every surface is aimed anew. */
static char *
room_sentence (const TbSurfaceCurve *curve, guint coarse, guint best, guint fine)
{
  const TbSurfacePoint *point = point_at (curve, best);
  g_autofree char *surface = surface_text (point);
  double angle = tb_surface_point_value (point, TB_SURFACE_ANGLE);

  if (tb_surface_curve_trend (curve, TB_SURFACE_ROOM, NULL) == TB_TREND_LEVEL)
    return g_strdup (
        _ ("Each on its own pocket line, every surface leaves about the same room at the arrows."));
  return g_strdup_printf (best != coarse && best != fine
                              ? _ ("Each on its own pocket line, the most room at the arrows, %.1f boards, "
                                   "lies in the middle: %s, which comes "
                                   "in at %.1f°.")
                              : _ ("Each on its own pocket line, the most room at the arrows, %.1f boards, "
                                   "lies at one end: %s, which comes in "
                                   "at %.1f°."),
                          point->room, surface, angle);
}

/* Boards hooked, where every surface is launched alike. */
static char *
hook_sentence (const TbSurfaceCurve *curve, guint coarse, guint middle, guint fine)
{
  TbSurfaceTrend trend = tb_surface_curve_trend (curve, TB_SURFACE_HOOK, NULL);
  g_autofree char *of_coarse = surface_text (point_at (curve, coarse)),
                  *of_middle = surface_text (point_at (curve, middle));
  g_autofree char *of_fine = surface_text (point_at (curve, fine));
  const char *sentence;

  if (trend == TB_TREND_FALLS)
    sentence = _ ("On the same line, the finer the surface, the fewer boards the ball hooks: %.1f at %s, "
                  "%.1f at %s, %.1f at "
                  "%s.");
  else if (trend == TB_TREND_RISES)
    sentence = _ ("On the same line, the finer the surface, the more boards the ball hooks: %.1f at %s, %.1f "
                  "at %s, %.1f at "
                  "%s.");
  else
    sentence = _ ("On the same line the ball hooks %.1f boards at %s, %.1f at %s and %.1f at %s.");
#pragma GCC diagnostic push
#pragma GCC diagnostic ignored "-Wformat-nonliteral"
  return g_strdup_printf (sentence, tb_surface_point_value (point_at (curve, coarse), TB_SURFACE_HOOK),
                          of_coarse, tb_surface_point_value (point_at (curve, middle), TB_SURFACE_HOOK),
                          of_middle, tb_surface_point_value (point_at (curve, fine), TB_SURFACE_HOOK),
                          of_fine);
#pragma GCC diagnostic pop
}

/* The largest step against the way a quantity goes, in its unit. */
static double
largest_step_back (const TbSurfaceCurve *curve, TbSurfaceQuantity quantity, double sign)
{
  double reached = (double)-INFINITY, largest = 0;

  for (guint i = 0; i < curve->points->len; i++)
    {
      double value = sign * tb_surface_point_value (point_at (curve, i), quantity);

      largest = fmax (largest, reached - value);
      reached = fmax (reached, value);
    }
  return largest;
}

static char *
slope_sentence (const TbSurfaceCurve *curve, gboolean rises)
{
  double back = largest_step_back (curve, TB_SURFACE_ANGLE, rises ? 1 : -1);
  /* What is told with one decimal. */
  gboolean smooth = back < 0.05;

  if (smooth)
    return g_strdup (rises ? _ ("The finer the surface, the steeper the angle at the pins, all the way.")
                           : _ ("The finer the surface, the flatter the angle at the pins, all the way."));
  return g_strdup_printf (
      rises ? _ ("The finer the surface, the steeper the angle at the pins, but for steps back of up to "
                 "%.1f°.")
            : _ ("The finer the surface, the flatter the angle at the pins, but for steps back of up to "
                 "%.1f°."),
      back);
}

static char *
angle_sentence (const TbSurfaceCurve *curve)
{
  guint turning;
  TbSurfaceTrend trend = tb_surface_curve_trend (curve, TB_SURFACE_ANGLE, &turning);
  g_autofree char *surface = NULL;

  switch (trend)
    {
    case TB_TREND_LEVEL:
      return g_strdup (_ ("The angle at the pins hardly depends on the surface here."));
    case TB_TREND_RISES:
    case TB_TREND_FALLS:
      return slope_sentence (curve, trend == TB_TREND_RISES);
    case TB_TREND_PEAK:
    case TB_TREND_VALLEY:
      surface = surface_text (point_at (curve, turning));
      return g_strdup_printf (trend == TB_TREND_PEAK
                                  ? _ ("The angle at the pins is steepest between the ends: %.1f° at %s.")
                                  : _ ("The angle at the pins is flattest between the ends: %.1f° at %s."),
                              tb_surface_point_value (point_at (curve, turning), TB_SURFACE_ANGLE), surface);
    default:
      return g_strdup (
          _ ("The angle at the pins goes up and down with the surface; no simple rule holds here."));
    }
}

static char *
missing_sentence (const TbSurfaceCurve *curve)
{
  g_autoptr (GPtrArray) missing = g_ptr_array_new_with_free_func (g_free);
  g_autofree char *list = NULL;

  for (guint i = 0; i < curve->points->len; i++)
    if (!point_at (curve, i)->there)
      g_ptr_array_add (missing, surface_text (point_at (curve, i)));
  if (missing->len == 0)
    return NULL;
  if (missing->len == curve->points->len)
    return g_strdup (curve->line == TB_BALL_POCKET_LINE
                         ? _ ("No line from this laydown leads to the pocket, whatever the surface.")
                         : _ ("This shot cannot be thrown."));
  list = join (missing);
  return g_strdup_printf (_ ("No line from this laydown leads to the pocket with %s."), list);
}

GPtrArray *
tb_surface_curve_explain (const TbSurfaceCurve *curve, gboolean metric)
{
  GPtrArray *sentences = g_ptr_array_new_with_free_func (g_free);
  guint coarse, best, fine;
  char *missing = missing_sentence (curve);

  if (tb_surface_curve_landmarks (curve, &coarse, &best, &fine))
    {
      g_ptr_array_add (sentences, curve->line == TB_BALL_POCKET_LINE
                                      ? room_sentence (curve, coarse, best, fine)
                                      : hook_sentence (curve, coarse, best, fine));
      if (coarse != best)
        g_ptr_array_add (sentences, end_sentence (point_at (curve, coarse), point_at (curve, best), metric));
      if (fine != best)
        g_ptr_array_add (sentences, end_sentence (point_at (curve, fine), point_at (curve, best), metric));
      g_ptr_array_add (sentences, angle_sentence (curve));
    }
  if (missing != NULL)
    g_ptr_array_add (sentences, missing);
  return sentences;
}
