/* Mixes of bowlers.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "tb-mix.h"

#include <string.h>

const TbTypicalBowler tb_typical_bowlers[] = {
  { "track", N_ ("On the second arrow, reactive"), N_ ("17 mph, 300 rpm, from board 20 over 12.") },
  { "inside", N_ ("Inside, strong reactive"), N_ ("18 mph, 400 rpm, from board 28 over 17.") },
  { "outside", N_ ("Outside, weak reactive"), N_ ("16.5 mph, 230 rpm, from board 15 over 8.5.") },
  { "urethane", N_ ("Urethane"),
    N_ ("17 mph, 330 rpm, from board 17 over 10: it takes little oil in and carries it down.") },
  { "plastic", N_ ("Plastic, straight"),
    N_ ("16 mph, 150 rpm, nearly straight from board 18: it takes no oil in.") },
  { "two-handed", N_ ("Two-handed, deep inside"), N_ ("18 mph, 480 rpm, from board 32 over 20.") },
  { "left", N_ ("Left-hander, reactive"), N_ ("17 mph, 300 rpm, on the other side of the lane.") },
  { NULL, NULL, NULL },
};

/* Numbers of the typical bowlers, in the same order, in people's units; none of them is measured. */
typedef struct Numbers
{
  TbHand hand;
  double speed_mph, rev_rate_rpm, rotation_deg, tilt_deg, laydown_board, aim_board;
  TbCoverKind cover;
  double grit;
  TbSkill skill;
} Numbers;
static const Numbers numbers[] = {
  { TB_HAND_RIGHT, 17, 300, 50, 12, 20, 12.5, TB_COVER_REACTIVE_HYBRID, 2000, TB_SKILL_LEAGUE },
  { TB_HAND_RIGHT, 18, 400, 55, 12, 28, 17.5, TB_COVER_REACTIVE_SOLID, 2000, TB_SKILL_PRACTISED },
  { TB_HAND_RIGHT, 16.5, 230, 40, 15, 15, 8.5, TB_COVER_REACTIVE_PEARL, TB_GRIT_POLISH, TB_SKILL_LEAGUE },
  { TB_HAND_RIGHT, 17, 330, 45, 10, 17, 10, TB_COVER_URETHANE, 1000, TB_SKILL_LEAGUE },
  { TB_HAND_RIGHT, 16, 150, 20, 15, 18, 15.5, TB_COVER_PLASTIC, TB_GRIT_POLISH, TB_SKILL_LEAGUE },
  { TB_HAND_RIGHT, 18, 480, 50, 8, 32, 20, TB_COVER_REACTIVE_SOLID, 2000, TB_SKILL_PRACTISED },
  { TB_HAND_LEFT, 17, 300, 50, 12, 20, 12.5, TB_COVER_REACTIVE_HYBRID, 2000, TB_SKILL_LEAGUE },
};
G_STATIC_ASSERT (G_N_ELEMENTS (numbers) == G_N_ELEMENTS (tb_typical_bowlers) - 1);

static int
typical_index (const char *id)
{
  for (int i = 0; tb_typical_bowlers[i].id; i++)
    if (g_str_equal (tb_typical_bowlers[i].id, id))
      return i;
  return -1;
}

static void
fill_numbers (TbMixBowler *bowler, const Numbers *n)
{
  TbDelivery *delivery = &bowler->delivery;

  *delivery = tb_delivery_default ();
  delivery->hand = n->hand;
  delivery->speed = tb_metres_per_second_from_mph (n->speed_mph);
  delivery->rev_rate = tb_radians_per_second_from_rpm (n->rev_rate_rpm);
  delivery->axis_rotation = tb_radians_from_deg (n->rotation_deg);
  delivery->axis_tilt = tb_radians_from_deg (n->tilt_deg);
  delivery->laydown = tb_x_from_board (n->laydown_board);
  delivery->aim = tb_x_from_board (n->aim_board);
  bowler->ball = tb_ball_default ();
  bowler->ball.cover = tb_cover_typical (n->cover);
  bowler->ball.cover.roughness = tb_roughness_from_grit (n->grit);
  bowler->skill = n->skill;
}

gboolean
tb_mix_bowler_typical (TbMixBowler *bowler, const char *id, guint count)
{
  int index = typical_index (id);

  if (index < 0)
    return FALSE;
  *bowler = (TbMixBowler){ .id = (char *)tb_typical_bowlers[index].id,
                           .name = (char *)tb_typical_bowlers[index].label,
                           .count = count };
  fill_numbers (bowler, &numbers[index]);
  return TRUE;
}

TbMix *
tb_mix_new (guint64 seed, gboolean moves)
{
  TbMix *mix = g_new0 (TbMix, 1);

  g_atomic_ref_count_init (&mix->ref_count);
  mix->seed = seed;
  mix->moves = moves;
  return mix;
}

gboolean
tb_mix_add (TbMix *mix, const TbMixBowler *bowler)
{
  TbMixBowler *added;

  if (mix->n_bowlers == TB_MIX_MAX_KINDS)
    return FALSE;
  mix->bowlers = g_renew (TbMixBowler, mix->bowlers, mix->n_bowlers + 1);
  added = &mix->bowlers[mix->n_bowlers++];
  *added = *bowler;
  added->id = g_strdup (bowler->id);
  added->name = g_strdup (bowler->name ? bowler->name : "");
  added->count = MIN (bowler->count, TB_MIX_MAX_COUNT);
  return TRUE;
}

static void
add_typical (TbMix *mix, const char *id, guint count)
{
  TbMixBowler bowler;

  if (tb_mix_bowler_typical (&bowler, id, count))
    tb_mix_add (mix, &bowler);
}

TbMix *
tb_mix_new_league (void)
{
  TbMix *mix = tb_mix_new (TB_MIX_LEAGUE_SEED, TRUE);

  add_typical (mix, "track", 2);
  add_typical (mix, "inside", 1);
  add_typical (mix, "outside", 2);
  return mix;
}

/* A copy without the bowlers that are left out. */
static TbMix *
copy_without (const TbMix *mix, const char *id)
{
  TbMix *copy = tb_mix_new (mix->seed, mix->moves);

  for (guint i = 0; i < mix->n_bowlers; i++)
    if (!id || g_strcmp0 (mix->bowlers[i].id, id) != 0)
      tb_mix_add (copy, &mix->bowlers[i]);
  return copy;
}

TbMix *
tb_mix_with_count (const TbMix *mix, const char *id, guint count)
{
  TbMix *copy = copy_without (mix, count == 0 ? id : NULL);

  for (guint i = 0; i < copy->n_bowlers; i++)
    if (g_strcmp0 (copy->bowlers[i].id, id) == 0)
      {
        copy->bowlers[i].count = MIN (count, TB_MIX_MAX_COUNT);
        return copy;
      }
  if (count > 0)
    add_typical (copy, id, count);
  return copy;
}

TbMix *
tb_mix_with_bowler (const TbMix *mix,
                    const char *name,
                    const TbDelivery *delivery,
                    const TbBall *ball,
                    guint count)
{
  TbMix *copy = tb_mix_new (mix->seed, mix->moves);
  TbMixBowler bowler = {
    .name = (char *)name, .count = count, .delivery = *delivery, .ball = *ball, .skill = TB_SKILL_LEAGUE
  };

  for (guint i = 0; i < mix->n_bowlers; i++)
    if (mix->bowlers[i].id || g_strcmp0 (mix->bowlers[i].name, name) != 0)
      tb_mix_add (copy, &mix->bowlers[i]);
  if (count > 0)
    tb_mix_add (copy, &bowler);
  return copy;
}

TbMix *
tb_mix_with_seed (const TbMix *mix, guint64 seed)
{
  TbMix *copy = copy_without (mix, NULL);

  copy->seed = seed;
  return copy;
}

TbMix *
tb_mix_with_moves (const TbMix *mix, gboolean moves)
{
  TbMix *copy = copy_without (mix, NULL);

  copy->moves = moves;
  return copy;
}

guint
tb_mix_count (const TbMix *mix)
{
  guint count = 0;

  for (guint i = 0; i < mix->n_bowlers; i++)
    count += mix->bowlers[i].count;
  return count;
}

guint
tb_mix_count_of (const TbMix *mix, const char *id)
{
  for (guint i = 0; i < mix->n_bowlers; i++)
    if (g_strcmp0 (mix->bowlers[i].id, id) == 0)
      return mix->bowlers[i].count;
  return 0;
}

/* Compared as core holds the numbers. */
static gboolean
same_group (TbGroup group, gconstpointer a, gconstpointer b)
{
  for (const TbField *field = tb_field_table; field->name; field++)
    {
      gsize size = field->kind == TB_FIELD_REAL ? sizeof (double) : sizeof (int);

      if (field->group == group
          && memcmp ((const char *)a + field->offset, (const char *)b + field->offset, size) != 0)
        return FALSE;
    }
  return TRUE;
}

static gboolean
same_bowler (const TbMixBowler *a, const TbMixBowler *b)
{
  return g_strcmp0 (a->id, b->id) == 0 && g_strcmp0 (a->name, b->name) == 0 && a->count == b->count
         && a->skill == b->skill && same_group (TB_GROUP_DELIVERY, &a->delivery, &b->delivery)
         && same_group (TB_GROUP_BALL, &a->ball, &b->ball) && a->ball.n_holes == b->ball.n_holes
         && memcmp (a->ball.hole, b->ball.hole, (gsize)a->ball.n_holes * sizeof *a->ball.hole) == 0;
}

gboolean
tb_mix_equal (const TbMix *a, const TbMix *b)
{
  if (a == b)
    return TRUE;
  if (a->seed != b->seed || a->moves != b->moves || a->n_bowlers != b->n_bowlers)
    return FALSE;
  for (guint i = 0; i < a->n_bowlers; i++)
    if (!same_bowler (&a->bowlers[i], &b->bowlers[i]))
      return FALSE;
  return TRUE;
}

TbMix *
tb_mix_ref (TbMix *mix)
{
  g_atomic_ref_count_inc (&mix->ref_count);
  return mix;
}

void
tb_mix_unref (TbMix *mix)
{
  if (!g_atomic_ref_count_dec (&mix->ref_count))
    return;
  for (guint i = 0; i < mix->n_bowlers; i++)
    {
      g_free (mix->bowlers[i].id);
      g_free (mix->bowlers[i].name);
    }
  g_free (mix->bowlers);
  g_free (mix);
}
