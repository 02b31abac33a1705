/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"
#include "tb-ball-limits.h"

#include <glib/gi18n-lib.h>

/* Of the Equipment Specifications Manual, where core does not need them itself. */
#define MIN_CIRCUMFERENCE_IN 26.704
#define MAX_CIRCUMFERENCE_IN 27.002
#define MAX_FRICTION 0.32
#define MAX_MODEL_ROUGHNESS_UIN 50.0
#define MIN_HARDNESS_D 73
/* Static weights of balls up to this are held to narrower limits, which are not told here. */
#define LIGHT_BALL_LB 10.0
/* Rounding of a value that lies on its limit, in the value's own unit. */
#define ROUNDING 1e-9

void
tb_limit_line_free (TbLimitLine *line)
{
  g_free (line->label);
  g_free (line->value);
  g_free (line->limit);
  g_free (line->sentence);
  g_free (line);
}

/* One limit on a number. */
typedef struct NumberLimit
{
  const char *name;
  const char *label; /* untranslated */
  const char *unit;  /* with the space before it */
  int digits;
  double low, high; /* NAN where there is no such end */
} NumberLimit;

static char *
number_text (const NumberLimit *limit, double value)
{
  /* gettext() gives a translation's header for an empty text. */
  const char *unit = limit->unit[0] ? _ (limit->unit) : "";

  /* A true minus sign. */
  return g_strdup_printf ("%s%.*f%s", value < 0 ? "−" : "", limit->digits, fabs (value), unit);
}

static char *
range_text (const NumberLimit *limit)
{
  g_autofree char *low = number_text (limit, limit->low), *high = number_text (limit, limit->high);

  if (limit->low == -limit->high)
    return g_strdup_printf (_ ("at most %s either way"), high);
  if (isnan (limit->low))
    /* Translators: a limit such as "16.00 lb". */
    return g_strdup_printf (_ ("at most %s"), high);
  /* Translators: the ends of a range, each with its unit. */
  return g_strdup_printf (_ ("%s to %s"), low, high);
}

static char *
verdict_sentence (const TbLimitLine *line)
{
  if (line->verdict == TB_LIMIT_WITHIN)
    /* Translators: what is measured, its value, the limit: "Weight: 15.00 lb is within the limit, at
     * most 16.00 lb." */
    return g_strdup_printf (_ ("%s: %s is within the limit, %s."), line->label, line->value, line->limit);
  return g_strdup_printf (_ ("%s: %s is outside the limit, %s."), line->label, line->value, line->limit);
}

static TbLimitLine *
add_number (GPtrArray *lines, const NumberLimit *limit, double value)
{
  TbLimitLine *line = g_new0 (TbLimitLine, 1);
  gboolean low_fine = isnan (limit->low) || value >= limit->low - ROUNDING;

  line->name = limit->name;
  line->label = g_strdup (_ (limit->label));
  line->value = number_text (limit, value);
  line->limit = range_text (limit);
  line->verdict = low_fine && value <= limit->high + ROUNDING ? TB_LIMIT_WITHIN : TB_LIMIT_OUTSIDE;
  line->sentence = verdict_sentence (line);
  g_ptr_array_add (lines, line);
  return line;
}

static void
add_unknown (GPtrArray *lines, const char *name, const char *label, const char *limit, char *sentence)
{
  TbLimitLine *line = g_new0 (TbLimitLine, 1);

  line->name = name;
  line->label = g_strdup (label);
  line->value = g_strdup ("");
  line->limit = g_strdup (limit);
  line->verdict = TB_LIMIT_NOT_KNOWN;
  line->sentence = sentence;
  g_ptr_array_add (lines, line);
}

static void
add_size (GPtrArray *lines, const TbBall *ball)
{
  static const NumberLimit weight
      = { "weight", N_ ("Weight before drilling"), N_ (" lb"), 2, (double)NAN, TB_BALL_MAX_WEIGHT_LB };
  static const NumberLimit diameter
      = { "diameter", N_ ("Diameter"), N_ (" in"), 3, TB_BALL_MIN_DIAMETER_IN, TB_BALL_MAX_DIAMETER_IN };
  static const NumberLimit circumference
      = { "circumference", N_ ("Circumference"), N_ (" in"), 3, MIN_CIRCUMFERENCE_IN, MAX_CIRCUMFERENCE_IN };
  double inches = tb_in_from_metres (ball->diameter);

  add_number (lines, &weight, tb_lb_from_kilograms (ball->mass));
  add_number (lines, &diameter, inches);
  /* Limits are rounded to thousandths, and so is the value. */
  add_number (lines, &circumference, round (TB_PI * inches * 1e3) / 1e3);
}

static void
add_core (GPtrArray *lines, const TbBall *ball)
{
  static const NumberLimit rg = { "rg", N_ ("RG"), N_ (" in"), 3, TB_BALL_MIN_RG_IN, TB_BALL_MAX_RG_IN };
  static const NumberLimit differential
      = { "differential", N_ ("Differential"), N_ (" in"), 3, (double)NAN, TB_BALL_MAX_DIFFERENTIAL_IN };

  add_number (lines, &rg, tb_in_from_metres (ball->rg));
  add_number (lines, &differential, tb_in_from_metres (ball->differential));
}

static void
add_cover (GPtrArray *lines, const TbBall *ball)
{
  static const NumberLimit friction
      = { "friction", N_ ("Friction on a dry lane"), "", 3, (double)NAN, MAX_FRICTION };
  static const NumberLimit roughness
      = { "roughness", N_ ("Roughness Ra"), N_ (" µin"), 1, (double)NAN, TB_BALL_MAX_ROUGHNESS_UIN };
  double uin = tb_uin_from_metres (ball->cover.roughness);
  TbLimitLine *line;

  line = add_number (lines, &friction, ball->cover.dry_friction);
  g_free (line->sentence);
  line->sentence = g_strdup_printf (line->verdict == TB_LIMIT_WITHIN
                                        ? _ ("Friction: %s here, %s in the laboratory's test. This model's "
                                             "value is assumed, not measured, and the two "
                                             "need not agree.")
                                        : _ ("Friction: %s here is more than %s in the laboratory's test. "
                                             "This model's value is assumed, not measured, "
                                             "and the two need not agree."),
                                    line->value, line->limit);
  line = add_number (lines, &roughness, uin);
  if (line->verdict == TB_LIMIT_WITHIN && uin > MAX_MODEL_ROUGHNESS_UIN + ROUNDING)
    {
      g_free (line->sentence);
      line->sentence = g_strdup_printf (
          _ ("Roughness Ra: %s is within the limit for one ball, %s, but over the %.0f µin "
             "that a model may have when it is approved."),
          line->value, line->limit, MAX_MODEL_ROUGHNESS_UIN);
    }
}

static void
add_static_weights (GPtrArray *lines, const TbBall *ball, const TbBody *body)
{
  static const NumberLimit limits[] = {
    { "top-weight", N_ ("Top weight"), N_ (" oz"), 2, -TB_BALL_MAX_STATIC_OZ, TB_BALL_MAX_STATIC_OZ },
    { "side-weight", N_ ("Side weight"), N_ (" oz"), 2, -TB_BALL_MAX_STATIC_OZ, TB_BALL_MAX_STATIC_OZ },
    { "finger-weight", N_ ("Finger weight"), N_ (" oz"), 2, -TB_BALL_MAX_STATIC_OZ, TB_BALL_MAX_STATIC_OZ },
  };
  const double values[]
      = { body->static_weights.top, body->static_weights.side, body->static_weights.finger };

  if (tb_lb_from_kilograms (ball->mass) > LIGHT_BALL_LB)
    for (gsize i = 0; i < G_N_ELEMENTS (limits); i++)
      add_number (lines, &limits[i], tb_oz_from_kilograms (values[i]));
  else
    add_unknown (lines, "static-weights", _ ("Static weights"), "",
                 g_strdup_printf (
                     _ ("Static weights: %.2f oz top, %.2f oz side, %.2f oz finger; balls of 10 lb and less "
                        "have limits of their own: ask a pro shop."),
                     tb_oz_from_kilograms (values[0]), tb_oz_from_kilograms (values[1]),
                     tb_oz_from_kilograms (values[2])));
}

static void
add_holes (GPtrArray *lines, const TbBall *ball)
{
  static const NumberLimit holes = { "holes", N_ ("Holes"), "", 0, (double)NAN, TB_MAX_HOLES };
  TbLimitLine *line;

  if (ball->n_holes == 0)
    {
      add_unknown (lines, "holes", _ ("Holes"), "",
                   g_strdup (_ ("Holes: none are given; the ball is taken as its numbers say, top weight and all.")));
      return;
    }
  line = add_number (lines, &holes, ball->n_holes);
  g_free (line->sentence);
  line->sentence = g_strdup_printf (
      g_dngettext (GETTEXT_PACKAGE,
                   "Holes: %d of at most %d. Every hole must be used for gripping in every "
                   "delivery; balance holes have not been allowed since August 2020.",
                   "Holes: %d of at most %d. Every hole must be used for gripping in every "
                   "delivery; balance holes have not been allowed since August 2020.",
                   (gulong)ball->n_holes),
      ball->n_holes, TB_MAX_HOLES);
}

GPtrArray *
tb_ball_limits (const TbBall *ball)
{
  GPtrArray *lines = g_ptr_array_new_with_free_func ((GDestroyNotify)tb_limit_line_free);
  TbBody body;

  add_size (lines, ball);
  add_core (lines, ball);
  add_cover (lines, ball);
  if (tb_ball_body (ball, &body) == TB_OK)
    add_static_weights (lines, ball, &body);
  add_holes (lines, ball);
  add_unknown (lines, "hardness", _ ("Hardness"), "",
               g_strdup_printf (
                   _ ("Hardness: at least %d on the Shore D scale is asked; it is no part of this model, a "
                      "gauge must tell."),
                   MIN_HARDNESS_D));
  return lines;
}

TbLimitVerdict
tb_ball_limits_verdict (const GPtrArray *lines)
{
  for (guint i = 0; i < lines->len; i++)
    if (((const TbLimitLine *)lines->pdata[i])->verdict == TB_LIMIT_OUTSIDE)
      return TB_LIMIT_OUTSIDE;
  return TB_LIMIT_WITHIN;
}

const char *
tb_ball_limits_source (void)
{
  return _ ("Limits of the USBC Equipment Specifications Manual. The rulebook in force where the ball is "
            "used comes "
            "first.");
}
