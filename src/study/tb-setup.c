/* Setups, and runs of them.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "tb-setup.h"

#include <math.h>
#include <string.h>

TbWearKey
tb_setup_wear_key (const TbSetup *setup)
{
  return (TbWearKey){ .pattern = tb_pattern_ref (setup->pattern),
                      .lane = setup->shot.lane,
                      .assumed = setup->shot.assumed,
                      .mix = setup->mix ? tb_mix_ref (setup->mix) : tb_mix_new_league () };
}

static gboolean
same_wear (const TbSetup *a, const TbSetup *b)
{
  TbWearKey key_a = tb_setup_wear_key (a), key_b = tb_setup_wear_key (b);
  gboolean same = a->shot.lane.games_played == b->shot.lane.games_played && tb_wear_key_equal (&key_a, &key_b);

  tb_wear_key_clear (&key_a);
  tb_wear_key_clear (&key_b);
  return same;
}

static TbWorn *
wear_lane (const TbSetup *setup, const TbSetup *from)
{
  TbWearKey key;
  TbWorn *worn;

  if (!(setup->shot.lane.games_played > 0))
    return NULL;
  if (from && from->worn && same_wear (setup, from))
    return tb_worn_ref (from->worn);
  key = tb_setup_wear_key (setup);
  worn = tb_worn_new (&key, setup->shot.lane.games_played, NULL);
  tb_wear_key_clear (&key);
  return worn;
}

/* Gives a setup the film that its lane has, once all that decides it is in place. `from` may have it already. */
static void
lay_film (TbSetup *setup, const TbSetup *from)
{
  TbWorn *worn = wear_lane (setup, from);

  g_clear_pointer (&setup->worn, tb_worn_unref);
  setup->worn = worn;
  setup->shot.lane.oil = worn ? &worn->oil : &setup->pattern->oil;
}

/* Without a film. */
static TbSetup *
setup_alloc (const TbShot *shot, TbPattern *pattern)
{
  TbSetup *setup = g_new0 (TbSetup, 1);

  g_atomic_ref_count_init (&setup->ref_count);
  setup->shot = *shot;
  setup->pattern = tb_pattern_ref (pattern);
  return setup;
}

TbSetup *
tb_setup_new (const TbShot *shot, TbPattern *pattern)
{
  TbSetup *setup = setup_alloc (shot, pattern);

  lay_film (setup, NULL);
  return setup;
}

/* A copy that nobody else holds yet, and so may still be changed. */
static TbSetup *
setup_copy (const TbSetup *setup)
{
  TbSetup *copy = setup_alloc (&setup->shot, setup->pattern);

  copy->mix = setup->mix ? tb_mix_ref (setup->mix) : NULL;
  copy->worn = setup->worn ? tb_worn_ref (setup->worn) : NULL;
  copy->bowler_id = g_strdup (setup->bowler_id);
  copy->bowler_name = g_strdup (setup->bowler_name);
  copy->ball_id = g_strdup (setup->ball_id);
  copy->ball_name = g_strdup (setup->ball_name);
  return copy; /* its shot still points to the film that both hold */
}

static void
set_text (char **place, const char *text)
{
  char *copy = g_strdup (text);

  g_free (*place);
  *place = copy;
}

TbSetup *
tb_setup_with_shot (const TbSetup *setup, const TbShot *shot)
{
  TbSetup *copy = setup_copy (setup);

  copy->shot = *shot;
  lay_film (copy, setup);
  return copy;
}

TbSetup *
tb_setup_with_field (const TbSetup *setup, const TbField *field, double value, TbProblem *problem)
{
  g_autoptr (TbSetup) copy = setup_copy (setup);
  TbStatus status = tb_field_set (field, tb_shot_group (&copy->shot, field->group), value);

  if (status == TB_OK)
    {
      lay_film (copy, setup);
      return g_steal_pointer (&copy);
    }
  if (problem)
    *problem = (TbProblem){ .status = status, .field = field, .value = value };
  return NULL;
}

TbSetup *
tb_setup_with_pattern (const TbSetup *setup, TbPattern *pattern)
{
  TbSetup *copy = setup_copy (setup);

  tb_pattern_ref (pattern);
  tb_pattern_unref (copy->pattern);
  copy->pattern = pattern;
  lay_film (copy, setup);
  return copy;
}

TbSetup *
tb_setup_with_mix (const TbSetup *setup, TbMix *mix)
{
  TbSetup *copy = setup_copy (setup);

  g_clear_pointer (&copy->mix, tb_mix_unref);
  copy->mix = mix ? tb_mix_ref (mix) : NULL;
  lay_film (copy, setup);
  return copy;
}

TbSetup *
tb_setup_with_ball (const TbSetup *setup, const TbBall *ball, const char *id, const char *name)
{
  TbSetup *copy = setup_copy (setup);

  copy->shot.ball = *ball;
  set_text (&copy->ball_id, id);
  set_text (&copy->ball_name, name);
  return copy;
}

TbSetup *
tb_setup_with_bowler (const TbSetup *setup, const TbDelivery *delivery, const char *id, const char *name)
{
  TbSetup *copy = setup_copy (setup);

  copy->shot.delivery = *delivery;
  set_text (&copy->bowler_id, id);
  set_text (&copy->bowler_name, name);
  return copy;
}

static gboolean
same_number (double a, double b)
{
  return a == b || (isnan (a) && isnan (b));
}

static double
number_at (const void *object, size_t offset)
{
  double number;

  memcpy (&number, (const char *) object + offset, sizeof number);
  return number;
}

/* Compared as core holds it, not in the field's unit, where two neighbours can look alike. */
static gboolean
same_field (const TbField *field, const TbShot *a, const TbShot *b)
{
  const void *in_a = tb_shot_group_const (a, field->group);
  const void *in_b = tb_shot_group_const (b, field->group);

  if (field->alias_of)
    return TRUE;
  if (field->kind == TB_FIELD_CHOICE)
    return tb_field_get (field, in_a) == tb_field_get (field, in_b);
  return same_number (number_at (in_a, field->offset), number_at (in_b, field->offset));
}

static gboolean
same_hole (const TbHole *a, const TbHole *b)
{
  return a->kind == b->kind && a->over == b->over && a->up == b->up && a->diameter == b->diameter
         && a->depth == b->depth && a->pitch_over == b->pitch_over && a->pitch_up == b->pitch_up;
}

static gboolean
same_holes (const TbBall *a, const TbBall *b)
{
  if (a->n_holes != b->n_holes)
    return FALSE;
  for (int i = 0; i < a->n_holes; i++)
    if (!same_hole (&a->hole[i], &b->hole[i]))
      return FALSE;
  return TRUE;
}

static gboolean
same_options (const TbOptions *a, const TbOptions *b)
{
  return a->edgeless == b->edgeless && a->no_landing_squeeze == b->no_landing_squeeze
         && a->no_film_on_ball == b->no_film_on_ball && a->no_rolling_resistance == b->no_rolling_resistance
         && a->no_air_drag == b->no_air_drag && a->no_pivot_friction == b->no_pivot_friction
         && a->no_cross_tilt == b->no_cross_tilt && a->step == b->step && a->gravity == b->gravity;
}

static gboolean
same_assumed (const TbAssumed *a, const TbAssumed *b)
{
  for (const TbAssumedInfo *info = tb_assumed_table; info->name; info++)
    if (!same_number (number_at (a, info->offset), number_at (b, info->offset)))
      return FALSE;
  return TRUE;
}

static gboolean
same_shot (const TbShot *a, const TbShot *b)
{
  for (const TbField *field = tb_field_table; field->name; field++)
    if (!same_field (field, a, b))
      return FALSE;
  return same_holes (&a->ball, &b->ball) && same_assumed (&a->assumed, &b->assumed)
         && same_options (&a->options, &b->options);
}

static gboolean
same_pattern (const TbPattern *a, const TbPattern *b)
{
  return a == b
         || (g_strcmp0 (a->id, b->id) == 0 && g_strcmp0 (a->name, b->name) == 0
             && memcmp (&a->oil, &b->oil, sizeof a->oil) == 0);
}

static gboolean
same_mix (const TbSetup *a, const TbSetup *b)
{
  g_autoptr (TbMix) league = a->mix && b->mix ? NULL : tb_mix_new_league ();

  return a->mix == b->mix || tb_mix_equal (a->mix ? a->mix : league, b->mix ? b->mix : league);
}

gboolean
tb_setup_equal (const TbSetup *a, const TbSetup *b)
{
  return a == b
         || (same_pattern (a->pattern, b->pattern) && g_strcmp0 (a->bowler_id, b->bowler_id) == 0
             && g_strcmp0 (a->bowler_name, b->bowler_name) == 0 && g_strcmp0 (a->ball_id, b->ball_id) == 0
             && g_strcmp0 (a->ball_name, b->ball_name) == 0 && same_mix (a, b) && same_shot (&a->shot, &b->shot));
}

TbSetup *
tb_setup_ref (TbSetup *setup)
{
  g_atomic_ref_count_inc (&setup->ref_count);
  return setup;
}

void
tb_setup_unref (TbSetup *setup)
{
  if (!g_atomic_ref_count_dec (&setup->ref_count))
    return;
  tb_pattern_unref (setup->pattern);
  g_clear_pointer (&setup->mix, tb_mix_unref);
  g_clear_pointer (&setup->worn, tb_worn_unref);
  g_free (setup->bowler_id);
  g_free (setup->bowler_name);
  g_free (setup->ball_id);
  g_free (setup->ball_name);
  g_free (setup);
}
