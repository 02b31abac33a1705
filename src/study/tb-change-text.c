/* What has changed, in the bowler's words.
 *
 * Every phrase is whole: the number and its direction stand in one text, so that a translator can turn it
 * round.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"
#include "tb-change.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include "tb-fill.h"
#include "tb-unit-pair.h"

typedef struct Phrase
{
  TbGroup group;
  const char *field;
  const char *more, *less; /* untranslated; %s is the amount of the change in the field's unit */
  int digits;
} Phrase;

/* Translators: each of these begins a sentence such as "2.0 mph more leaves the ball 0.11 s less on the dry:
 * …". %1$s or %s is a number, %2$s its unit. Higher boards are "further in", lower boards "further out". */
static const Phrase phrases[] = {
  { TB_GROUP_DELIVERY, "speed_mph", N_ ("%1$s %2$s more"), N_ ("%1$s %2$s less"), 1 },
  { TB_GROUP_DELIVERY, "rev_rate_rpm", N_ ("%s rpm more"), N_ ("%s rpm less"), 0 },
  { TB_GROUP_DELIVERY, "axis_rotation_deg", N_ ("%s° more axis rotation"), N_ ("%s° less axis rotation"), 0 },
  { TB_GROUP_DELIVERY, "axis_tilt_deg", N_ ("%s° more axis tilt"), N_ ("%s° less axis tilt"), 0 },
  { TB_GROUP_DELIVERY, "laydown_board", N_ ("A laydown %s boards further in"),
    N_ ("A laydown %s boards further out"), 1 },
  { TB_GROUP_DELIVERY, "aim_board", N_ ("A target %s boards further in"),
    N_ ("A target %s boards further out"), 1 },
  { TB_GROUP_DELIVERY, "release_height_in", N_ ("A release %1$s %2$s higher"),
    N_ ("A release %1$s %2$s lower"), 1 },
  { TB_GROUP_DELIVERY, "loft_angle_deg", N_ ("%s° more upward loft"), N_ ("%s° less upward loft"), 1 },
  { TB_GROUP_DELIVERY, "loft_reach_in", N_ ("Letting go %1$s %2$s further out"),
    N_ ("Letting go %1$s %2$s nearer to the line"), 0 },
  { TB_GROUP_DELIVERY, "grip_pressure", N_ ("A grip tighter by %s"), N_ ("A grip looser by %s"), 1 },
  { TB_GROUP_BALL, "weight_lb", N_ ("%s lb more weight"), N_ ("%s lb less weight"), 1 },
  { TB_GROUP_BALL, "diameter_in", N_ ("%1$s %2$s more diameter"), N_ ("%1$s %2$s less diameter"), 3 },
  { TB_GROUP_BALL, "rg_in", N_ ("%1$s %2$s more RG"), N_ ("%1$s %2$s less RG"), 3 },
  { TB_GROUP_BALL, "differential_in", N_ ("%1$s %2$s more differential"), N_ ("%1$s %2$s less differential"),
    3 },
  { TB_GROUP_BALL, "intermediate_differential_in", N_ ("%1$s %2$s more intermediate differential"),
    N_ ("%1$s %2$s less intermediate differential"), 3 },
  { TB_GROUP_BALL, "dry_friction", N_ ("%s more friction on a dry lane"),
    N_ ("%s less friction on a dry lane"), 3 },
  { TB_GROUP_BALL, "film_scale", N_ ("%s more grip through oil"), N_ ("%s less grip through oil"), 1 },
  { TB_GROUP_BALL, "absorption", N_ ("%s/s more oil absorption"), N_ ("%s/s less oil absorption"), 2 },
  { TB_GROUP_BALL, "drilling_angle_deg", N_ ("A drilling angle %s° larger"),
    N_ ("A drilling angle %s° smaller"), 0 },
  { TB_GROUP_BALL, "pin_to_pap_in", N_ ("A pin %1$s %2$s further from the PAP"),
    N_ ("A pin %1$s %2$s nearer to the PAP"), 3 },
  { TB_GROUP_BALL, "val_angle_deg", N_ ("A VAL angle %s° larger"), N_ ("A VAL angle %s° smaller"), 0 },
  { TB_GROUP_BALL, "pap_over_in", N_ ("A PAP %1$s %2$s further over"), N_ ("A PAP %1$s %2$s less over"), 3 },
  { TB_GROUP_BALL, "pap_up_in", N_ ("A PAP %1$s %2$s higher"), N_ ("A PAP %1$s %2$s lower"), 3 },
  { TB_GROUP_BALL, "top_weight_oz", N_ ("%1$s %2$s more top weight"), N_ ("%1$s %2$s less top weight"), 2 },
  { TB_GROUP_LANE, "cross_tilt_in", N_ ("%1$s %2$s more cross-tilt to the left"),
    N_ ("%1$s %2$s more cross-tilt to the right"), 3 },
};

/* As many digits as it takes to tell that something changed; no more than it takes to tell eighths of an
 * inch. */
static char *
amount_text (double amount, int digits)
{
  while (digits < 6 && fabs (amount) < 0.5 * pow (10, -digits))
    digits++;
  while (digits > 1 && fabs (amount * pow (10, digits - 1) - round (amount * pow (10, digits - 1))) < 1e-6)
    digits--;
  return tb_number_text (fabs (amount), digits);
}

/* A back-up ball turns the other way: what its number calls less is more of it. */
static const Phrase back_up = { TB_GROUP_DELIVERY, "axis_rotation_deg", N_ ("%s° less back-up rotation"),
                                N_ ("%s° more back-up rotation"), 0 };

static const Phrase *
find_phrase (const TbField *field)
{
  for (gsize i = 0; i < G_N_ELEMENTS (phrases); i++)
    if (phrases[i].group == field->group && g_str_equal (phrases[i].field, field->name))
      return &phrases[i];
  return NULL;
}

static double
value_in (const TbField *field, const TbSetup *setup)
{
  return tb_field_get (field, tb_shot_group_const (&setup->shot, field->group));
}

/* For a field that has no words of its own. */
static char *
plain_phrase (const TbField *field, const TbSetup *before, const TbSetup *after)
{
  g_autofree char *old = tb_number_text (value_in (field, before), field->digits);
  g_autofree char *new = tb_number_text (value_in (field, after), field->digits);

  /* Translators: what was set, its new value, its old value, as in "Speed 19.0 instead of 17.0" */
  return tb_fill_with (_ ("%1$s %2$s instead of %3$s"), _ (field->label), new, old, NULL);
}

static char *
amount_phrase (const TbField *field, const TbSetup *before, const TbSetup *after, gboolean metric)
{
  const Phrase *phrase = find_phrase (field);
  double amount = value_in (field, after) - value_in (field, before);
  TbToldUnit told;
  g_autofree char *text = NULL;

  if (!phrase)
    return plain_phrase (field, before, after);
  if (g_str_equal (field->name, back_up.field) && value_in (field, before) <= 0
      && value_in (field, after) <= 0)
    phrase = &back_up;
  told = tb_told_unit (field->unit, phrase->digits, metric);
  text = amount_text (amount * told.factor, told.digits);
  return tb_fill_with (_ (amount > 0 ? phrase->more : phrase->less), text, told.unit, NULL);
}

/* A finish is told by its pad where one of the usual pads leaves it, otherwise by its roughness. Between the finest pad and
 * polish the scale has places, but nobody sells a pad. */
static char *
finish_text (double roughness, gboolean metric)
{
  double grit = tb_grit_from_roughness (roughness), round = 100 * floor (grit / 100 + 0.5);

  if (fabs (tb_roughness_from_grit (grit) - roughness) > 1e-3 * roughness || fabs (grit - round) > 1
      || (round > TB_GRIT_FINEST && round < TB_GRIT_POLISH))
    return metric ? g_strdup_printf (_ ("Ra %.2f µm"), tb_um_from_metres (roughness))
                  : g_strdup_printf (_ ("Ra %.1f µin"), tb_uin_from_metres (roughness));
  if (round == TB_GRIT_POLISH)
    return g_strdup (_ ("polish"));
  return g_strdup_printf (_ ("%.0f grit"), round);
}

static char *
surface_phrase (const TbSetup *before, const TbSetup *after, gboolean metric)
{
  double old_roughness = before->shot.ball.cover.roughness, new_roughness = after->shot.ball.cover.roughness;
  g_autofree char *old = finish_text (old_roughness, metric), *new = finish_text (new_roughness, metric);

  if (new_roughness > old_roughness)
    return tb_fill_with (_ ("A rougher surface (%1$s instead of %2$s)"), new, old, NULL);
  return tb_fill_with (_ ("A smoother surface (%1$s instead of %2$s)"), new, old, NULL);
}

static char *
oil_phrase (const TbSetup *before, const TbSetup *after)
{
  double old = before->shot.lane.pattern_scale, new = after->shot.lane.pattern_scale;
  g_autofree char *text = NULL;

  if (old <= 0 || new <= 0)
    return g_strdup (new > old ? _ ("Oil on the lane") : _ ("No oil on the lane"));
  text = amount_text (100 * (new / old - 1), 0);
  return tb_fill_with (new > old ? _ ("%s %% more oil") : _ ("%s %% less oil"), text, NULL);
}

static const char *
cover_label (const TbSetup *setup)
{
  const TbField *field = tb_field_find (TB_GROUP_BALL, "cover");

  return _ (field->choices[setup->shot.ball.cover.kind].label);
}

static char *
field_phrase (const TbField *field, const TbSetup *before, const TbSetup *after, gboolean metric)
{
  if (field->offset == offsetof (TbBall, cover.roughness) && field->group == TB_GROUP_BALL)
    return surface_phrase (before, after, metric);
  if (field->offset == offsetof (TbLane, pattern_scale) && field->group == TB_GROUP_LANE)
    return oil_phrase (before, after);
  if (field->kind == TB_FIELD_CHOICE)
    return g_strdup (_ ("The other hand"));
  return amount_phrase (field, before, after, metric);
}

/* Names that came with the program are translated where they are shown; one's own stay as they are. */
static const char *
shown_name (const char *name)
{
  return name != NULL && name[0] != '\0' ? g_dpgettext2 (GETTEXT_PACKAGE, "document", name) : "";
}

static char *
pattern_phrase (const TbSetup *before, const TbSetup *after)
{
  if (g_strcmp0 (before->pattern->name, after->pattern->name) == 0)
    return g_strdup (_ ("The other pattern"));
  return tb_fill_with (_ ("The pattern “%1$s” instead of “%2$s”"), shown_name (after->pattern->name),
                       shown_name (before->pattern->name), NULL);
}

static char *
wear_phrase (const TbSetup *before, const TbSetup *after)
{
  double more = after->shot.lane.games_played - before->shot.lane.games_played;
  g_autofree char *games = tb_number_text (fabs (more), floor (more) == more ? 0 : 1);
  /* One and a half are games, not a game. */
  gulong count = (gulong) ceil (fabs (more));

  if (more == 0)
    return g_strdup (_ ("Other bowlers on the lane before"));
  return tb_fill_with (
      more > 0 ? ngettext ("%1$s game more on the lane", "%1$s games more on the lane", count)
               : ngettext ("%1$s game less on the lane", "%1$s games less on the lane", count),
      games, NULL);
}

static char *
ball_phrase (const TbSetup *before, const TbSetup *after)
{
  if (!before->ball_name || !after->ball_name || g_str_equal (before->ball_name, after->ball_name))
    return g_strdup (_ ("The other ball"));
  return tb_fill_with (_ ("The ball “%1$s” instead of “%2$s”"), shown_name (after->ball_name),
                       shown_name (before->ball_name), NULL);
}

char *
tb_change_phrase (const TbChange *change, const TbSetup *before, const TbSetup *after, gboolean metric)
{
  switch (change->kind)
    {
    case TB_CHANGE_FIELD:
      return field_phrase (change->field, before, after, metric);
    case TB_CHANGE_COVER:
      return tb_fill_with (_ ("The cover “%1$s” instead of “%2$s”"), cover_label (after),
                           cover_label (before), NULL);
    case TB_CHANGE_HOLES:
      return g_strdup (_ ("The other holes"));
    case TB_CHANGE_PATTERN:
      return pattern_phrase (before, after);
    case TB_CHANGE_WEAR:
      return wear_phrase (before, after);
    case TB_CHANGE_ASSUMED:
      return g_strdup (_ ("The other assumed constants"));
    case TB_CHANGE_OPTIONS:
      return g_strdup (_ ("The other parts of the model"));
    case TB_CHANGE_BALL:
      return ball_phrase (before, after);
    default:
      return g_strdup (_ ("Everything together"));
    }
}

const char *
tb_change_label (const TbChange *change)
{
  const char *const others[] = { "",
                                 "",
                                 _ ("Holes"),
                                 _ ("Pattern"),
                                 _ ("Games on the lane"),
                                 _ ("Assumed constants"),
                                 _ ("Parts of the model"),
                                 _ ("Ball"),
                                 _ ("Everything") };

  return change->field ? _ (change->field->label) : others[change->kind];
}
