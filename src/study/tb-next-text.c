/* Options in words.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"
#include "tb-next.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include "tb-fill.h"
#include "tb-line-move.h"
#include "tb-unit-pair.h"

/* Titles named at most in one sentence. */
#define MOST_TITLES 4
#define MOST_DIGITS 3

static char *
join (GStrvBuilder *builder, const char *separator)
{
  g_auto (GStrv) parts = g_strv_builder_end (builder);

  return g_strjoinv (separator, parts);
}

static void
add_owned (GStrvBuilder *builder, char *text)
{
  if (text)
    g_strv_builder_add (builder, text);
  g_free (text);
}

static double
move_of (const TbNextOption *option, const char *field)
{
  for (guint i = 0; i < option->n_changes; i++)
    if (g_str_equal (option->change[i].field->name, field))
      return option->change[i].to - option->change[i].from;
  return 0;
}

static char *
line_text (const TbNextOption *option)
{
  return tb_line_move_text (move_of (option, "laydown_board"), move_of (option, "aim_board"),
                            option->setup->shot.delivery.hand);
}

static gboolean
is_line (const TbField *field)
{
  return g_str_equal (field->name, "laydown_board") || g_str_equal (field->name, "aim_board");
}

static char *
value_text (const TbField *field, double value, gboolean metric)
{
  TbToldUnit told;

  if (field->kind == TB_FIELD_CHOICE)
    return g_strdup (_ (field->choices[(int) value].label));
  for (const TbWord *word = field->words; word && word->name; word++)
    if (fabs (word->value - value) < 0.5)
      return g_strdup (_ (word->label));
  /* A number that was solved for is told to one digit more than one that was set. */
  told = tb_told_unit (field->unit, field->digits, metric);
  return tb_number_text (value * told.factor,
                         g_str_equal (field->name, "grit") ? 0 : MIN (told.digits + 1, MOST_DIGITS));
}

/* A value with its unit. */
static char *
measured_text (const TbField *field, const char *value, gboolean metric)
{
  TbToldUnit told = tb_told_unit (field->unit, field->digits, metric);

  if (told.unit[0] == '\0' || g_str_equal (field->unit, "board"))
    return g_strdup (value);
  if (g_str_equal (field->unit, "°"))
    return tb_fill_with (_ ("%1$s°"), value, NULL);
  /* Translators: a number and its unit */
  return tb_fill_with (_ ("%1$s %2$s"), value, told.unit, NULL);
}

static char *
field_text (const TbNextChange *change, gboolean metric)
{
  g_autofree char *from = value_text (change->field, change->from, metric);
  g_autofree char *to = value_text (change->field, change->to, metric);
  g_autofree char *with_unit = measured_text (change->field, to, metric);

  /* Translators: a setting, its present value, and its new one with the unit: "Speed: 17.00 → 18.52 mph" */
  return tb_fill_with (_ ("%1$s: %2$s → %3$s"), _ (change->field->label), from, with_unit, NULL);
}

/* A ball is told by its name, a cover by its kind, not by all that comes with it. */
static gboolean
is_told (const TbNextOption *option, const TbField *field)
{
  if (is_line (field) || option->knob->kind == TB_KNOB_OTHER_BALL)
    return FALSE;
  return option->knob->kind != TB_KNOB_COVER || g_str_equal (field->name, "cover");
}

char *
tb_next_change_text (const TbNextOption *option, gboolean metric)
{
  g_autoptr (GStrvBuilder) builder = g_strv_builder_new ();

  if (option->knob->kind == TB_KNOB_OTHER_BALL)
    add_owned (builder, tb_fill_with (_ ("Throw “%1$s”"), option->title, NULL));
  for (guint i = 0; i < option->n_changes; i++)
    if (is_told (option, option->change[i].field))
      add_owned (builder, field_text (&option->change[i], metric));
  add_owned (builder, line_text (option));
  /* Translators: stands between two changes that are made together */
  return join (builder, _ ("; "));
}

typedef struct Effect
{
  const char *measure;
  const char *both; /* %1$s before, %2$s after, %3$s the unit */
  const char *gone; /* there before, not after; NULL to say nothing */
  const char *come; /* not there before: %1$s after, %2$s the unit */
  double smallest;  /* less does not count as moving */
} Effect;

static const Effect effects[] = {
  { "board_at_pins", N_ ("board %1$s → %2$s at the pins"), NULL, NULL, 0.05 },
  { "angle_at_pins_deg", N_ ("angle %1$s° → %2$s°"), NULL, NULL, 0.05 },
  { "breakpoint_board", N_ ("turns on board %1$s → %2$s"), NULL, N_ ("turns on board %1$s"), 0.05 },
  { "breakpoint_ft", N_ ("turns at %1$s → %2$s %3$s"), N_ ("no longer turns back"), N_ ("turns at %1$s %2$s"),
    0.05 },
  { "roll_start_ft", N_ ("rolls from %1$s → %2$s %3$s"), N_ ("no longer rolls before the pins"),
    N_ ("rolls from %1$s %2$s"), 0.05 },
  { "speed_at_pins_mph", N_ ("%1$s → %2$s %3$s at the pins"), NULL, NULL, 0.05 },
};

static char *
effect_text (const Effect *effect, const TbMeasures *before, const TbMeasures *after, gboolean metric)
{
  const TbMeasureInfo *info = tb_measure_find (effect->measure);
  TbToldUnit told = tb_told_unit (info->unit, 1, metric);
  double old = tb_measure_value (info, before), new = tb_measure_value (info, after);
  g_autofree char *old_text = tb_number_text (old * told.factor, told.digits);
  g_autofree char *new_text = tb_number_text (new *told.factor, told.digits);

  if (isfinite (old) && isfinite (new))
    return fabs (new - old) < effect->smallest || g_str_equal (old_text, new_text)
               ? NULL
               : tb_fill_with (_ (effect->both), old_text, new_text, told.unit, NULL);
  if (isfinite (old))
    return effect->gone ? g_strdup (_ (effect->gone)) : NULL;
  return isfinite (new) && effect->come ? tb_fill_with (_ (effect->come), new_text, told.unit, NULL) : NULL;
}

char *
tb_next_effect_text (const TbNext *next, const TbNextOption *option, gboolean metric)
{
  g_autoptr (GStrvBuilder) builder = g_strv_builder_new ();

  for (gsize i = 0; i < G_N_ELEMENTS (effects); i++)
    add_owned (builder,
               effect_text (&effects[i], &next->start_measures, &option->run->path.measures, metric));
  /* Translators: stands between effects in a list */
  return join (builder, _ (", "));
}

/* The wished measure with its unit: whole texts, since a board stands before its number and a foot behind it.
 */
static char *
wished_text (const TbWish *wish, double value, gboolean metric)
{
  TbToldUnit told = tb_told_unit (tb_wish_info (wish->kind)->unit, 1, metric);
  g_autofree char *number = tb_number_text (value * told.factor, told.digits);

  switch (wish->kind)
    {
    case TB_WISH_ANGLE:
      return tb_fill_with (_ ("%1$s°"), number, NULL);
    case TB_WISH_TURN:
    case TB_WISH_ROLL:
      if (wish->kind == TB_WISH_ROLL && value >= TB_HEAD_PIN_FT)
        return g_strdup (_ ("no roll before the pins"));
      return tb_fill_with (_ ("%1$s %2$s"), number, told.unit, NULL);
    case TB_WISH_FORGIVING:
      return tb_fill_with (_ ("%1$s boards of room"), number, NULL);
    default:
      return tb_fill_with (_ ("board %1$s"), number, NULL);
    }
}

char *
tb_next_wished_text (const TbNext *next, const TbNextOption *option, gboolean metric)
{
  return wished_text (&next->wish, option->wished, metric);
}

/* A ball is another step than was asked: it can pass what is wished. */
static gboolean
goes_too_far (const TbNext *next, const TbNextOption *option)
{
  return (option->wished - next->target) * (next->target - next->now) > 0;
}

char *
tb_next_reach_text (const TbNext *next, const TbNextOption *option, gboolean metric)
{
  g_autofree char *gets = wished_text (&next->wish, option->wished, metric), *wished = NULL;

  if (option->reach == TB_REACH_MET)
    return NULL;
  wished = wished_text (&next->wish, next->target, metric);
  return tb_fill_with (goes_too_far (next, option) ? _ ("Goes too far: %1$s instead of %2$s.")
                                                   : _ ("Gets as far as %1$s; %2$s is out of its reach."),
                       gets, wished, NULL);
}

char *
tb_next_curve_text (const TbNext *next, const TbNextOption *option, gboolean metric)
{
  const TbField *field = option->curve_field;
  g_autofree char *value = NULL, *at = NULL, *best = NULL;
  gboolean greatest;

  if (!option->turns || !field)
    return NULL;
  greatest = option->turns_wished > option->point[0].wished;
  value = value_text (field, option->turns_at, metric);
  at = measured_text (field, value, metric);
  best = wished_text (&next->wish, option->turns_wished, metric);
  /* Translators: a happy medium: the setting, its value, and what is reached there. */
  return tb_fill_with (
      greatest ? _ ("%1$s: the most is in the middle, at %2$s (%3$s); more and less both come short of it.")
               : _ ("%1$s: the least is in the middle, at %2$s (%3$s); more and less both go beyond it."),
      _ (field->label), at, best, NULL);
}

static gboolean
is_in_pocket (const TbNext *next)
{
  return tb_pocket_contains (&next->start->shot.assumed, &next->start_measures);
}

static const char *
wish_format (const TbNext *next)
{
  const TbWish *wish = &next->wish;

  switch (wish->kind)
    {
    case TB_WISH_BOARDS:
      return wish->amount < 0 ? _ ("%3$s boards less: from %1$s to %2$s.")
                              : _ ("%3$s boards more: from %1$s to %2$s.");
    case TB_WISH_POCKET:
      return is_in_pocket (next) ? _ ("To the middle of the pocket: from %1$s to %2$s.")
                                 : _ ("Into the pocket: from %1$s to %2$s.");
    case TB_WISH_ANGLE:
      return _ ("An angle of %2$s at the pins; now it is %1$s.");
    case TB_WISH_TURN:
      return wish->amount < 0 ? _ ("Turn %3$s %4$s earlier: from %1$s to %2$s.")
                              : _ ("Turn %3$s %4$s later: from %1$s to %2$s.");
    case TB_WISH_ROLL:
      return _ ("Roll before the pins, from %2$s on; now: %1$s.");
    default:
      return _ ("As it is, but more forgiving; now there are %1$s.");
    }
}

char *
tb_next_wish_text (const TbNext *next, gboolean metric)
{
  TbToldUnit told = tb_told_unit (tb_wish_info (next->wish.kind)->unit, 1, metric);
  g_autofree char *now = wished_text (&next->wish, next->now, metric), *target = NULL, *amount = NULL;

  if (next->status != TB_OK)
    return g_strdup (_ (tb_status_sentence (next->status)));
  target = isfinite (next->target) ? wished_text (&next->wish, next->target, metric) : g_strdup ("");
  amount = tb_number_text (fabs (next->wish.amount) * told.factor, told.digits);
  return tb_fill_with (wish_format (next), now, target, amount, told.unit, NULL);
}

static char *
titles_text (const TbNext *next)
{
  g_autoptr (GStrvBuilder) builder = g_strv_builder_new ();
  guint count = 0;

  for (guint i = 0; i < next->options->len && count < MOST_TITLES; i++)
    {
      const TbNextOption *option = g_ptr_array_index (next->options, i);

      if (option->reach != TB_REACH_NOT && option->knob->group == TB_KNOB_DELIVERY)
        {
          g_strv_builder_add (builder, option->title);
          count++;
        }
    }
  return count > 0 ? join (builder, _ (", ")) : NULL;
}

/* How near the options come that are no delivery. */
static TbReach
reach_without_delivery (const TbNext *next)
{
  TbReach best = TB_REACH_NOT;

  for (guint i = 0; i < next->options->len; i++)
    {
      const TbNextOption *option = g_ptr_array_index (next->options, i);

      if (option->knob->group != TB_KNOB_DELIVERY)
        best = MIN (best, option->reach);
    }
  return best;
}

char *
tb_next_turn_text (const TbNext *next, gboolean metric)
{
  const TbMeasures *measures = &next->start_measures;
  double launch = tb_deg_from_radians (tb_delivery_launch_heading (&next->start->shot.delivery));
  double angle = tb_deg_from_radians (measures->angle_at_pins);
  g_autofree char *roll = NULL, *turn = NULL, *out = NULL, *left = NULL, *titles = NULL;
  TbToldUnit told;

  if (next->wish.kind != TB_WISH_ANGLE || next->target <= next->now || isnan (measures->roll_start_y)
      || reach_without_delivery (next) == TB_REACH_MET)
    return NULL;
  told = tb_told_unit ("ft", 1, metric);
  roll = tb_number_text (tb_ft_from_metres (measures->roll_start_y) * told.factor, told.digits);
  turn = tb_number_text (angle - launch, 1);
  out = tb_number_text (-launch, 1);
  left = tb_number_text (angle, 1);
  titles = titles_text (next);
  if (titles)
    return tb_fill_with (_ ("The turn is used up: the ball rolls from %1$s %6$s on, and from there nothing "
                            "turns it. This release "
                            "holds %2$s° of turn on this ball; launched %3$s° outwards, it comes to %4$s°. "
                            "Surface and oil move "
                            "where it turns, hardly how much. What can change it: %5$s."),
                         roll, turn, out, left, titles, told.unit, NULL);
  return tb_fill_with (
      reach_without_delivery (next) == TB_REACH_NOT
          ? _ ("The turn is used up: the ball rolls from %1$s %6$s on, and from there nothing turns it. This "
               "release "
               "holds %2$s° of turn on this ball; launched %3$s° outwards, it comes to %4$s°. Nothing within "
               "the "
               "usual limits changes that.")
          : _ ("The turn is used up: the ball rolls from %1$s %6$s on, and from there nothing turns it. This "
               "release "
               "holds %2$s° of turn on this ball; launched %3$s° outwards, it comes to %4$s°. Within the "
               "usual "
               "limits, no other release changes that."),
      roll, turn, out, left, "", told.unit, NULL);
}
