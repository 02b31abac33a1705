/* The field tables: every input of a shot can be read, set, refused and reset through them.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include <string.h>
#include "support.h"

static const TbField *
field (TbGroup group, const char *name)
{
  const TbField *found = tb_field_find (group, name);

  if (found == NULL)
    g_error ("no field %s.%s", tb_group_name (group), name);
  return found;
}

static gboolean
same_shot (const TbShot *a, const TbShot *b)
{
  return memcmp (&a->delivery, &b->delivery, sizeof a->delivery) == 0
         && memcmp (&a->ball, &b->ball, sizeof a->ball) == 0
         && memcmp (&a->lane, &b->lane, sizeof a->lane) == 0;
}

static void
test_described (void)
{
  g_autoptr (GHashTable) names = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);
  int count = 0;

  for (const TbField *f = tb_field_table; f->name != NULL; f++, count++)
    {
      if (!g_hash_table_add (names, g_strdup_printf ("%s.%s", tb_group_name (f->group), f->name)))
        g_test_fail_printf ("%s is there twice", f->name);
      g_assert_true (f == tb_field_find (f->group, f->name));
      if (f->label == NULL || *f->label == '\0' || f->help == NULL || !g_str_has_suffix (f->help, ".")
          || f->unit == NULL)
        g_test_fail_printf ("%s is not described", f->name);
      if (!(f->min < f->max && f->min <= f->standard && f->standard <= f->max && f->step > 0
            && f->page >= f->step))
        g_test_fail_printf ("%s has a range that is none", f->name);
    }
  g_assert_cmpint (count, ==, tb_field_count ());
  g_assert_null (tb_field_find (TB_GROUP_BALL, "speed_mph"));
  g_assert_null (tb_field_find (TB_GROUP_BALL, ""));
}

static void
test_round_trip (void)
{
  TbShot shot = check_house_shot ();

  for (const TbField *f = tb_field_table; f->name != NULL; f++)
    {
      void *object = tb_shot_group (&shot, f->group);

      for (int i = 0; i <= 4; i++)
        {
          double value = f->min + i * (f->max - f->min) / 4.0;

          if (f->kind == TB_FIELD_CHOICE)
            value = floor (value);
          check_status (f->name, tb_field_set (f, object, value), TB_OK);
          check_near (f->name, tb_field_get (f, object), value, 1e-11 * fmax (1.0, fabs (value)));
        }
    }
}

static void
test_refuses (void)
{
  TbShot shot = check_house_shot (), before = shot;

  for (const TbField *f = tb_field_table; f->name != NULL; f++)
    {
      void *object = tb_shot_group (&shot, f->group);
      double beyond = fmax (1e-3, 0.01 * (f->max - f->min));
      gboolean weight = strcmp (f->name, "weight_lb") == 0;

      check_status (f->name, tb_field_set (f, object, NAN), TB_ERROR_NOT_FINITE);
      check_status (f->name, tb_field_set (f, object, INFINITY), TB_ERROR_NOT_FINITE);
      check_status (f->name, tb_field_set (f, object, -INFINITY), TB_ERROR_NOT_FINITE);
      check_status (f->name, tb_field_set (f, object, f->min - beyond), TB_ERROR_OUT_OF_RANGE);
      check_status (f->name, tb_field_set (f, object, f->max + beyond),
                    weight ? TB_ERROR_BALL_TOO_HEAVY : TB_ERROR_OUT_OF_RANGE);
      if (!same_shot (&shot, &before))
        g_test_fail_printf ("%s was changed by a value it refused", f->name);
    }
}

static void
test_words (void)
{
  TbShot shot = check_house_shot ();
  const TbField *hand = field (TB_GROUP_DELIVERY, "hand"), *grit = field (TB_GROUP_BALL, "grit");

  check_status ("left", tb_field_set_word (hand, &shot.delivery, "left"), TB_OK);
  g_assert_cmpint (shot.delivery.hand, ==, TB_HAND_LEFT);
  g_assert_cmpstr (tb_field_word (hand, &shot.delivery), ==, "left");
  check_status ("an unknown word", tb_field_set_word (hand, &shot.delivery, "both"), TB_ERROR_UNKNOWN_CHOICE);
  g_assert_cmpint (shot.delivery.hand, ==, TB_HAND_LEFT);
  check_status ("half a choice", tb_field_set (hand, &shot.delivery, 0.5), TB_ERROR_UNKNOWN_CHOICE);

  check_status ("polish", tb_field_set_word (grit, &shot.ball, "polish"), TB_OK);
  check_near ("polished, µm", tb_um_from_metres (shot.ball.cover.roughness), 0.13, 1e-12);
  g_assert_cmpstr (tb_field_word (grit, &shot.ball), ==, "polish");
  check_status ("a word for a number", tb_field_set_word (grit, &shot.ball, "sandpaper"),
                TB_ERROR_UNKNOWN_CHOICE);
}

static void
test_what_follows (void)
{
  TbShot shot = check_house_shot ();
  const TbField *cover = field (TB_GROUP_BALL, "cover"), *grit = field (TB_GROUP_BALL, "grit");
  const TbField *roughness = field (TB_GROUP_BALL, "roughness_uin");
  TbCover urethane = tb_cover_typical (TB_COVER_URETHANE);

  g_assert_cmpstr (grit->alias_of, ==, "roughness_uin");
  check_status ("grit", tb_field_set (grit, &shot.ball, 1000.0), TB_OK);
  check_near ("roughness, µin", tb_field_get (roughness, &shot.ball), tb_uin_from_metres (0.75e-6), 1e-9);
  check_status ("cover", tb_field_set_word (cover, &shot.ball, "urethane"), TB_OK);
  check_near ("dry friction", shot.ball.cover.dry_friction, urethane.dry_friction, 0.0);
  check_near ("film scale", shot.ball.cover.film_scale, urethane.film_scale, 0.0);
  check_near ("absorption", shot.ball.cover.absorption, urethane.absorption, 0.0);
  check_near ("the surface stays", tb_field_get (grit, &shot.ball), 1000.0, 1e-9);
}

static void
test_defaults (void)
{
  TbShot shot = check_house_shot ();

  for (const TbField *f = tb_field_table; f->name != NULL; f++)
    check_near (f->name, tb_field_get (f, tb_shot_group (&shot, f->group)), f->standard,
                1e-9 * fmax (1, fabs (f->standard)));
  check_status ("the default shot", tb_shot_check (&shot, NULL), TB_OK);
}

static void
test_assumed (void)
{
  TbAssumed assumed = tb_assumed_default ();
  int count = 0;

  for (const TbAssumedInfo *info = tb_assumed_table; info->name != NULL; info++, count++)
    {
      double value = *(const double *)((const char *)&assumed + info->offset);

      check_near (info->name, info->from_si (value), info->value, 1e-12 * fmax (1, fabs (info->value)));
      check_near (info->name, info->to_si (info->from_si (value)), value, 1e-15 * fmax (1, fabs (value)));
      if (!(info->low <= info->value && info->value <= info->high))
        g_test_fail_printf ("%s lies outside its plausible range", info->name);
      if (*info->label == '\0' || *info->source == '\0' || *info->consequence == '\0')
        g_test_fail_printf ("%s does not say where it comes from and what it does", info->name);
    }
  g_assert_cmpint (count, ==, tb_assumed_count ());
  /* Nothing is left out of the table. */
  g_assert_cmpuint ((gsize)count * sizeof (double), ==, sizeof (TbAssumed));
}

static void
test_measures (void)
{
  g_autoptr (CheckRun) run = check_run_new ();
  TbShot shot = check_house_shot ();
  int count = 0;

  check_run_shot (run, &shot);
  for (const TbMeasureInfo *info = tb_measure_table; info->name != NULL; info++, count++)
    {
      double si = tb_measure_si (info, &run->path.measures);

      g_assert_true (info == tb_measure_find (info->name));
      g_assert_true (si == *(const double *)((const char *)&run->path.measures + info->offset) || isnan (si));
      if (!isnan (si))
        check_near (info->name, tb_measure_value (info, &run->path.measures), info->from_si (si), 0.0);
    }
  g_assert_cmpint (count, ==, tb_measure_count ());
  g_assert_null (tb_measure_find ("nothing"));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/fields/described", test_described);
  g_test_add_func ("/fields/round-trip", test_round_trip);
  g_test_add_func ("/fields/refuses", test_refuses);
  g_test_add_func ("/fields/words", test_words);
  g_test_add_func ("/fields/what-follows", test_what_follows);
  g_test_add_func ("/fields/defaults", test_defaults);
  g_test_add_func ("/fields/assumed", test_assumed);
  g_test_add_func ("/fields/measures", test_measures);
  return g_test_run ();
}
