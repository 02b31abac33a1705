/* Wear: no oil is lost, the published half of the heads, carry-down by cover, games that do not depend on how
 * they were got to.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include <math.h>
#include <string.h>

#include "lane-support.h"
#include "tb-pattern-figures.h"
#include "tb-wear-life.h"

static TbWearKey
key_of (TbPattern *pattern, TbMix *mix)
{
  return (TbWearKey){
    .pattern = pattern, .lane = tb_lane_default (), .assumed = tb_assumed_default (), .mix = mix
  };
}

/* Fresh oil = oil on the lane + oil that went away with the balls, over ten games, also under twice the oil.
 */
static void
test_balance (void)
{
  g_autoptr (TbPattern) pattern = lane_house ();
  g_autoptr (TbMix) mix = tb_mix_new_league ();
  TbWearKey key = key_of (pattern, mix);

  for (double scale = 1; scale <= 2; scale += 1)
    {
      g_autoptr (TbWorn) worn = NULL;
      double fresh = scale * tb_oil_volume (&pattern->oil);

      key.lane.pattern_scale = scale;
      worn = tb_worn_new (&key, 10, NULL);
      g_assert_cmpuint (worn->shots, ==, 10 * tb_mix_game_shots (mix));
      g_assert_cmpuint (worn->failed, ==, 0);
      g_assert_cmpfloat (worn->carried, >, 0);
      lane_near ("oil on lane and balls over fresh",
                 (scale * tb_oil_volume (&worn->oil) + worn->carried) / fresh, 1, 1e-12);
      g_assert_cmpint (tb_oil_check (&worn->oil), ==, TB_OK);
    }
}

/* Oil of a window of boards in the heads, the first 20 ft, worn over fresh. */
static double
left_in_heads (const TbOil *fresh, const TbOil *worn, int column, int boards)
{
  double far = tb_metres_from_ft (20);

  return tb_oil_volume_within (worn, column, column + boards - 1, 0, far)
         / tb_oil_volume_within (fresh, column, column + boards - 1, 0, far);
}

/* The track: the five neighbouring boards that have lost most. */
static double
left_in_track (const TbOil *fresh, const TbOil *worn)
{
  const int boards = 5;
  double least = 1;

  for (int column = 0; column + boards <= TB_LANE_BOARDS; column++)
    least = MIN (least, left_in_heads (fresh, worn, column, boards));
  return least;
}

/* "About half the oil of the heads gone after 12 to 15 games" (Bowlers Journal, August 2015) fixes the
 * assumed exchange. Taken as: a full pair, ten bowlers, five of them on this lane at a time, 17 shots each a
 * game; house pattern; the heads are the first 20 ft, the track the five neighbouring boards that lose most.
 * Measured: 0.52 after 12 games, 0.50 after 15. */
static void
test_published (void)
{
  g_autoptr (TbPattern) pattern = lane_house ();
  g_autoptr (TbMix) mix = tb_mix_new_league ();
  TbWearKey key = key_of (pattern, mix);
  g_autoptr (TbWorn) after_12 = tb_worn_new (&key, 12, NULL);
  g_autoptr (TbWorn) after_15 = tb_worn_new (&key, 15, NULL);

  g_assert_cmpuint (tb_mix_count (mix), ==, 5);
  g_assert_cmpuint (TB_GAME_SHOTS, ==, 17);
  lane_between ("left after 12 games", left_in_track (&pattern->oil, &after_12->oil), 0.48, 0.56);
  lane_between ("left after 15 games", left_in_track (&pattern->oil, &after_15->oil), 0.44, 0.52);
}

/* Oil past the end of the pattern after some games of one kind of bowler, all straight down board 15, so that
 * every ball goes the same way. */
static double
carried_down (const char *id)
{
  g_autoptr (TbPattern) pattern = lane_house ();
  g_autoptr (TbMix) mix = tb_mix_new (1, FALSE);
  TbMixBowler bowler;
  TbWearKey key;
  g_autoptr (TbWorn) worn = NULL;

  g_assert_true (tb_mix_bowler_typical (&bowler, id, 5));
  bowler.delivery = tb_delivery_default ();
  bowler.delivery.axis_rotation = 0;
  bowler.delivery.axis_tilt = 0;
  bowler.delivery.laydown = bowler.delivery.aim = tb_x_from_board (15);
  g_assert_true (tb_mix_add (mix, &bowler));
  key = key_of (pattern, mix);
  worn = tb_worn_new (&key, 3, NULL);
  return tb_oil_volume_within (&worn->oil, 0, TB_OIL_COLUMNS - 1, tb_metres_from_ft (40),
                               tb_metres_from_ft (60));
}

/* Common practice: a ball that takes oil in carries less of it down the lane. The same release and line, only
 * covers differ. */
static void
test_carry_down (void)
{
  double reactive = carried_down ("track"), urethane = carried_down ("urethane"),
         plastic = carried_down ("plastic");

  g_test_message ("past 40 ft after 3 games: reactive %.4f mL, urethane %.4f mL, plastic %.4f mL",
                  1e6 * reactive, 1e6 * urethane, 1e6 * plastic);
  g_assert_cmpfloat (reactive, >, 0);
  g_assert_cmpfloat (urethane, >, reactive);
  g_assert_cmpfloat (plastic, >, reactive);
}

/* The heads lose, the lane beyond the oil gains, and the same shot hooks more as the games go by. */
static void
test_hooks_more (void)
{
  g_autoptr (TbPattern) pattern = lane_house ();
  g_autoptr (TbSetup) fresh = lane_setup (pattern, 24);
  const TbField *games = tb_field_find (TB_GROUP_LANE, "games_played");
  double last = lane_board_at_pins (fresh);

  for (int i = 4; i <= 12; i += 4)
    {
      g_autoptr (TbSetup) worn = tb_setup_with_field (fresh, games, i, NULL);
      double board = lane_board_at_pins (worn);

      g_test_message ("%d games: board %.2f", i, board);
      g_assert_cmpfloat (board, >, last);
      last = board;
    }
}

static void
check_same (const TbWorn *a, const TbWorn *b)
{
  g_assert_cmpmem (&a->oil, sizeof a->oil, &b->oil, sizeof b->oil);
  g_assert_cmpuint (a->shots, ==, b->shots);
  g_assert_cmpfloat (a->carried, ==, b->carried);
}

/* Straight to 2.5 games, by way of others, with the cache full of other lanes in between: the same bits. */
static void
test_same_way (void)
{
  g_autoptr (TbPattern) pattern = lane_house ();
  g_autoptr (TbMix) mix = tb_mix_new_league ();
  TbWearKey key = key_of (pattern, mix), other = key;
  g_autoptr (TbWorn) straight = tb_worn_new (&key, 2.5, NULL);
  g_autoptr (TbWorn) again = NULL;
  g_autoptr (TbWorn) later = NULL;

  for (int i = 1; i <= 8; i++)
    {
      g_autoptr (TbWorn) worn = NULL;

      other.lane.pattern_scale = 1 + 0.1 * i;
      worn = tb_worn_new (&other, 0.2, NULL);
    }
  g_assert_false (tb_worn_is_at_hand (&key, 2));
  again = tb_worn_new (&key, 2.5, NULL);
  check_same (straight, again);
  g_assert_true (tb_worn_is_at_hand (&key, 2));
  g_clear_pointer (&again, tb_worn_unref);
  later = tb_worn_new (&key, 3, NULL);
  again = tb_worn_new (&key, 2.5, NULL);
  check_same (straight, again);
}

static void
test_seed (void)
{
  g_autoptr (TbPattern) pattern = lane_house ();
  g_autoptr (TbMix) mix = tb_mix_new_league ();
  g_autoptr (TbMix) other = tb_mix_with_seed (mix, 2);
  TbWearKey key = key_of (pattern, mix), other_key = key_of (pattern, other);
  g_autoptr (TbWorn) a = tb_worn_new (&key, 1, NULL);
  g_autoptr (TbWorn) b = tb_worn_new (&other_key, 1, NULL);

  g_assert_false (tb_mix_equal (mix, other));
  g_assert_cmpint (memcmp (&a->oil, &b->oil, sizeof a->oil), !=, 0);
  lane_near ("they take as much, about", b->carried / a->carried, 1, 0.05);
}

static void
test_cancelled (void)
{
  g_autoptr (TbPattern) pattern = lane_house ();
  g_autoptr (TbMix) league = tb_mix_new_league ();
  g_autoptr (TbMix) mix = tb_mix_with_seed (league, 77);
  g_autoptr (GCancellable) cancellable = g_cancellable_new ();
  TbWearKey key = key_of (pattern, mix);

  g_cancellable_cancel (cancellable);
  g_assert_null (tb_worn_new (&key, 5, cancellable));
  g_assert_false (tb_worn_is_at_hand (&key, 1));
}

typedef struct Answer
{
  TbWorn *worn;
  TbWearLife *life;
  GError *error;
  gboolean came;
} Answer;

static void
worn_came (GObject *source, GAsyncResult *result, gpointer user_data)
{
  Answer *answer = user_data;

  answer->worn = tb_worn_new_finish (result, &answer->error);
  answer->came = TRUE;
}

static void
life_came (GObject *source, GAsyncResult *result, gpointer user_data)
{
  Answer *answer = user_data;

  answer->life = tb_wear_life_new_finish (result, &answer->error);
  answer->came = TRUE;
}

static void
wait_for (Answer *answer)
{
  while (!answer->came)
    g_main_context_iteration (NULL, TRUE);
}

static void
test_async (void)
{
  g_autoptr (TbPattern) pattern = lane_house ();
  g_autoptr (TbMix) mix = tb_mix_new_league ();
  g_autoptr (GCancellable) cancellable = g_cancellable_new ();
  TbWearKey key = key_of (pattern, mix);
  g_autoptr (TbWorn) want = tb_worn_new (&key, 1.5, NULL);
  Answer answer = { 0 }, none = { 0 };

  tb_worn_new_async (&key, 1.5, NULL, worn_came, &answer);
  wait_for (&answer);
  g_assert_no_error (answer.error);
  check_same (want, answer.worn);
  g_clear_pointer (&answer.worn, tb_worn_unref);
  tb_worn_new_async (&key, 25, cancellable, worn_came, &none);
  g_cancellable_cancel (cancellable);
  wait_for (&none);
  g_assert_error (none.error, G_IO_ERROR, G_IO_ERROR_CANCELLED);
  g_assert_null (none.worn);
  g_clear_error (&none.error);
}

/* A setup with games on its lane throws on the worn film; without, on the fresh one; and says when it is
 * another. */
static void
test_setup (void)
{
  g_autoptr (TbPattern) pattern = lane_house ();
  g_autoptr (TbSetup) fresh = lane_setup (pattern, 24);
  g_autoptr (TbMix) nobody = tb_mix_new (1, FALSE);
  g_autoptr (TbMix) plastic = tb_mix_with_count (nobody, "plastic", 5);
  const TbField *games = tb_field_find (TB_GROUP_LANE, "games_played");
  g_autoptr (TbSetup) worn = tb_setup_with_field (fresh, games, 2, NULL);
  g_autoptr (TbSetup) other = tb_setup_with_mix (worn, plastic);
  g_autoptr (TbSetup) back = tb_setup_with_field (other, games, 0, NULL);
  g_autoptr (TbSetup) faster
      = tb_setup_with_field (worn, tb_field_find (TB_GROUP_DELIVERY, "speed_mph"), 18, NULL);

  g_assert_null (fresh->worn);
  g_assert_true (fresh->shot.lane.oil == &fresh->pattern->oil);
  g_assert_true (worn->shot.lane.oil == &worn->worn->oil);
  g_assert_false (tb_setup_equal (fresh, worn));
  g_assert_false (tb_setup_equal (worn, other));
  g_assert_cmpint (memcmp (&worn->worn->oil, &other->worn->oil, sizeof (TbOil)), !=, 0);
  g_assert_true (back->shot.lane.oil == &back->pattern->oil);
  g_assert_true (faster->worn == worn->worn);
  g_assert_null (tb_setup_with_field (fresh, games, TB_MAX_GAMES + 1, NULL));
}

/* The line stops finding the pocket within a long evening, and a move that is offered brings it back: thrown,
 * it does. */
static void
test_life (void)
{
  g_autoptr (TbPattern) pattern = lane_house ();
  g_autoptr (TbSetup) setup = lane_setup (pattern, 24);
  g_autoptr (TbWearLife) life = tb_wear_life_new (setup, 12, NULL);
  g_autoptr (TbSetup) worn = NULL;
  TbShot shot = setup->shot;
  Answer answer = { 0 };

  g_assert_cmpuint (life->count, ==, 13);
  g_assert_true (life->points[0].in_pocket);
  lane_between ("first game after which the line misses", life->lost, 1, 12);
  lane_near ("last game it did not", life->last_good, life->lost - 1, 0);
  g_assert_true (life->has_move);
  g_test_message ("after %.0f games: feet %+.1f, target %+.1f", life->lost, life->feet, life->target);
  shot.delivery = life->moved;
  shot.lane.games_played = life->lost;
  worn = tb_setup_with_shot (setup, &shot);
  lane_between ("the moved line", lane_board_at_pins (worn), 16.5, 18.5);
  tb_wear_life_new_async (setup, 2, NULL, life_came, &answer);
  wait_for (&answer);
  g_assert_cmpuint (answer.life->count, ==, 3);
  tb_wear_life_unref (answer.life);
}

static void
test_mix (void)
{
  g_autoptr (TbMix) league = tb_mix_new_league ();
  g_autoptr (TbMix) more = tb_mix_with_count (league, "urethane", 2);
  g_autoptr (TbMix) same = tb_mix_with_count (more, "urethane", 0);
  TbBall ball = tb_ball_default ();
  TbDelivery delivery = tb_delivery_default ();
  g_autoptr (TbMix) mine = tb_mix_with_bowler (league, "Mine", &delivery, &ball, 1);
  g_autoptr (TbMix) mine_again = tb_mix_with_bowler (mine, "Mine", &delivery, &ball, 2);
  TbMixBowler bowler;

  g_assert_cmpuint (tb_mix_count (more), ==, tb_mix_count (league) + 2);
  g_assert_cmpuint (tb_mix_count_of (more, "urethane"), ==, 2);
  g_assert_true (tb_mix_equal (league, same));
  g_assert_false (tb_mix_equal (league, more));
  g_assert_false (tb_mix_equal (mine, mine_again));
  g_assert_cmpuint (mine_again->n_bowlers, ==, mine->n_bowlers);
  g_assert_false (tb_mix_bowler_typical (&bowler, "nobody", 1));
  for (const TbTypicalBowler *typical = tb_typical_bowlers; typical->id; typical++)
    {
      TbShot shot = tb_shot_default ();
      g_autoptr (TbPattern) pattern = lane_house ();

      g_assert_true (tb_mix_bowler_typical (&bowler, typical->id, 1));
      shot.delivery = bowler.delivery;
      shot.ball = bowler.ball;
      shot.lane.oil = &pattern->oil;
      g_assert_cmpint (tb_shot_check (&shot, NULL), ==, TB_OK);
      g_test_message ("%s: board %.2f at the pins", typical->id, lane_board_of (&shot));
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/wear/balance", test_balance);
  g_test_add_func ("/wear/published", test_published);
  g_test_add_func ("/wear/carry-down", test_carry_down);
  g_test_add_func ("/wear/hooks-more", test_hooks_more);
  g_test_add_func ("/wear/same-way", test_same_way);
  g_test_add_func ("/wear/seed", test_seed);
  g_test_add_func ("/wear/cancelled", test_cancelled);
  g_test_add_func ("/wear/async", test_async);
  g_test_add_func ("/wear/setup", test_setup);
  g_test_add_func ("/wear/life", test_life);
  g_test_add_func ("/wear/mix", test_mix);
  return g_test_run ();
}
