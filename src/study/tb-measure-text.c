/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"
#include "tb-measure-text.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include "tb-fill.h"

/* Stands where a run has no number. */
#define NOTHING "–"
#define DISTANCE_DIGITS 1
/* Digits that the least miss of the pocket takes, boards. */
#define MISS_DIGITS 3
#define LEAST_MISS 0.001

const char *const tb_main_measures[] = { "hook_board",
                                         "board_at_pins",
                                         "angle_at_pins_deg",
                                         "breakpoint_board",
                                         "breakpoint_ft",
                                         "board_at_arrows",
                                         "hook_start_ft",
                                         "roll_start_ft",
                                         "speed_at_pins_mph",
                                         "time_s",
                                         NULL };

/* A measure in the units shown. */
typedef struct Shown
{
  double (*from_si) (double);
  const char *unit;
  int digits;
} Shown;

static Shown
shown_in (const TbMeasureInfo *info, gboolean metric)
{
  if (metric && info->metric_unit)
    return (Shown){ info->metric_from_si, info->metric_unit, info->metric_digits };
  return (Shown){ info->from_si, info->unit, info->digits };
}

static char *
with_unit (double number, int digits, const char *unit)
{
  g_autofree char *text = tb_number_text (number, digits);

  if (unit[0] == '\0')
    return g_steal_pointer (&text);
  return g_strconcat (text, g_str_equal (unit, "°") ? "" : " ", _ (unit), NULL);
}

const char *
tb_measure_unit_text (const TbMeasureInfo *info, gboolean metric)
{
  const char *unit = shown_in (info, metric).unit;

  return unit[0] == '\0' ? unit : _ (unit);
}

char *
tb_measure_number_text (const TbMeasureInfo *info, const TbMeasures *measures, gboolean metric)
{
  Shown shown = shown_in (info, metric);
  double value = shown.from_si (tb_measure_si (info, measures));

  return isnan (value) ? g_strdup (NOTHING) : tb_number_text (value, shown.digits);
}

char *
tb_measure_text (const TbMeasureInfo *info, const TbMeasures *measures, gboolean metric)
{
  Shown shown = shown_in (info, metric);
  double value = shown.from_si (tb_measure_si (info, measures));

  return isnan (value) ? g_strdup (NOTHING) : with_unit (value, shown.digits, shown.unit);
}

/* The number that is read, as a number again. */
static double
as_read (double value, int digits)
{
  double scale = pow (10, digits);

  return round (value * scale) / scale;
}

char *
tb_measure_difference_text (const TbMeasureInfo *info,
                            const TbMeasures *before,
                            const TbMeasures *after,
                            gboolean metric)
{
  Shown shown = shown_in (info, metric);
  double from = as_read (shown.from_si (tb_measure_si (info, before)), shown.digits);
  double to = as_read (shown.from_si (tb_measure_si (info, after)), shown.digits);

  return isnan (to - from) ? g_strdup (NOTHING) : tb_signed_text (to - from, shown.digits);
}

char *
tb_distance_text (double y, gboolean metric)
{
  if (metric)
    return with_unit (y, DISTANCE_DIGITS, N_ ("m"));
  return with_unit (tb_ft_from_metres (y), DISTANCE_DIGITS, N_ ("ft"));
}

static char *
gutter_text (const TbRun *run, gboolean metric)
{
  g_autofree char *where = tb_distance_text (run->path.measures.gutter_y, metric);

  if (run->path.result == TB_RESULT_RIGHT_GUTTER)
    /* Translators: %s is a distance such as "43.0 ft". */
    return tb_fill_with (_ ("right gutter at %s"), where, NULL);
  return tb_fill_with (_ ("left gutter at %s"), where, NULL);
}

/* Boards that a place at the pins is past the pocket: positive when high. */
static double
pocket_miss (const TbRun *run, double x)
{
  const TbAssumed *assumed = &run->setup->shot.assumed;
  double board = tb_board_from_x (x);
  double one = tb_board_from_x (assumed->pocket_low);
  double other = tb_board_from_x (assumed->pocket_high);

  if (board < MIN (one, other))
    return board - MIN (one, other);
  return board > MAX (one, other) ? board - MAX (one, other) : 0;
}

char *
tb_run_end_text (const TbRun *run, gboolean metric)
{
  g_autofree char *boards = NULL;
  double miss;

  if (run->status != TB_OK)
    return g_strdup (_ ("not thrown"));
  if (run->path.result != TB_RESULT_PINS)
    return gutter_text (run, metric);
  miss = pocket_miss (run, run->path.measures.x_at_pins);
  if (miss == 0)
    return g_strdup (_ ("in the pocket"));
  if (pocket_miss (run, -run->path.measures.x_at_pins) == 0)
    /* Translators: in the one on the far side of the head pin, where a back-up ball belongs and a hook has
     * gone too far. */
    return g_strdup (_ ("in the other pocket"));
  /* Beside the pocket is beside it, by however little: never by "0.0 boards". */
  miss = copysign (MAX (fabs (miss), LEAST_MISS), miss);
  boards = tb_number_text (fabs (miss), tb_digits_apart (miss, 0, 1, MISS_DIGITS));
  /* Translators: boards by which the ball passes the pocket on the far side (high) or falls short of it
   * (light). */
  return tb_fill_with (miss > 0 ? _ ("%s boards high") : _ ("%s boards light"), boards, NULL);
}
