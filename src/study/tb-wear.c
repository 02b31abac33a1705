/* Wear, game by game.
 *
 * The shots of a game are bowled in turn: everyone's first ball, everyone's second, and so on, the spares in
 * between. Each is a function of its number, so that the lane after n shots is the same however it was got
 * to.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "tb-wear.h"

#include <math.h>
#include <string.h>
#include "tb-task.h"

/* Histories that are kept: before and after, and a few that were looked at before. */
#define KEPT 6
/* Moves that a bowler considers between two games, boards with the feet and half as many with the target. */
#define MOVE_REACH 3
#define TARGET_SHARE 0.5
/* A spare ball: hard plastic, polished, and thrown with hardly a turn. Typical. */
#define SPARE_ROTATION_DEG 5.0
#define SPARE_REVS 0.5
/* From this far on the other side of the middle, m. */
#define SPARE_ACROSS (7 * TB_BOARD_WIDTH)
/* The pins that are left most often stand at the sides of the deck; these are aimed at in turn. */
static const int spare_pins[] = { 9, 6, 5, 3 };

/* One lane on its way through the games; film[n] is the lane after n games. */
typedef struct History
{
  TbWearKey key;
  GPtrArray *worn;  /* of TbWorn: fresh, after one game, after two … */
  GArray *delivery; /* of TbDelivery: the lines as they stood after each game, a bowler each */
  gint64 used;      /* when it was last asked for, in asks */
} History;

static GMutex lock;
static GPtrArray *histories; /* of History, guarded by `lock` */
static gint64 asks;

TbWorn *
tb_worn_ref (TbWorn *worn)
{
  g_atomic_ref_count_inc (&worn->ref_count);
  return worn;
}

void
tb_worn_unref (TbWorn *worn)
{
  if (g_atomic_ref_count_dec (&worn->ref_count))
    g_free (worn);
}

guint
tb_mix_game_shots (const TbMix *mix)
{
  return TB_GAME_SHOTS * tb_mix_count (mix);
}

static TbWorn *
worn_copy (const TbWorn *worn)
{
  TbWorn *copy = g_memdup2 (worn, sizeof *worn);

  g_atomic_ref_count_init (&copy->ref_count);
  return copy;
}

static TbWorn *
worn_fresh (const TbPattern *pattern)
{
  TbWorn *worn = g_new0 (TbWorn, 1);

  g_atomic_ref_count_init (&worn->ref_count);
  worn->oil = pattern->oil;
  return worn;
}

/* What a shot needs. */
typedef struct Alley
{
  const TbWearKey *key;
  TbWorn *worn;
  TbDelivery *delivery; /* of each bowler, as his line stands */
  TbWorkspace *workspace;
} Alley;

static TbShot
shot_of (const Alley *alley, guint bowler)
{
  TbShot shot = { .delivery = alley->delivery[bowler],
                  .ball = alley->key->mix->bowlers[bowler].ball,
                  .lane = alley->key->lane,
                  .assumed = alley->key->assumed };

  shot.lane.oil = &alley->worn->oil;
  return shot;
}

/* Straight at a pin, across the lane, with the spare ball. */
static void
aim_at_spare (TbShot *shot, guint turn)
{
  TbMark pin = tb_lane_pins[spare_pins[turn % G_N_ELEMENTS (spare_pins)]];
  TbDelivery *delivery = &shot->delivery;
  double x = delivery->hand == TB_HAND_LEFT ? -pin.x : pin.x;

  delivery->axis_rotation = tb_radians_from_deg (SPARE_ROTATION_DEG);
  delivery->rev_rate *= SPARE_REVS;
  delivery->laydown = x > 0 ? -SPARE_ACROSS : SPARE_ACROSS;
  delivery->aim = delivery->laydown + (x - delivery->laydown) * TB_ARROWS_Y / pin.y;
  shot->ball.cover = tb_cover_typical (TB_COVER_PLASTIC);
  shot->ball.cover.roughness = tb_roughness_from_grit (TB_GRIT_POLISH);
}

/* How many of a bowler's first `turn` shots of a game are at spares: they are spread evenly over it. */
static guint
spares_before (guint turn)
{
  return turn * TB_GAME_SPARE_SHOTS / TB_GAME_SHOTS;
}

static void
scatter (const Alley *alley, guint bowler, guint64 number, TbShot *shot)
{
  TbScatter typical = tb_scatter_typical (alley->key->mix->bowlers[bowler].skill);
  TbScatterDraw draw;

  if (tb_scatter_prepare (&typical, &draw))
    tb_scatter_move (&draw, (TbChance){ alley->key->mix->seed, number }, &shot->delivery);
}

static void
bowl (Alley *alley, guint bowler, guint turn)
{
  TbShot shot = shot_of (alley, bowler);
  TbPath path = { 0 };
  double carried = 0;

  if (spares_before (turn + 1) > spares_before (turn))
    aim_at_spare (&shot, spares_before (turn));
  scatter (alley, bowler, alley->worn->shots, &shot);
  if (tb_shot_run_and_wear (&shot, alley->workspace, &path, &alley->worn->oil, &carried, NULL) == TB_OK)
    alley->worn->carried += carried;
  else
    alley->worn->failed++;
  alley->worn->shots++;
}

/* The bowlers of a mix one after the other, each kind as often as there are of it. */
static guint
bowler_at (const TbMix *mix, guint index)
{
  guint bowler = 0;

  while (index >= mix->bowlers[bowler].count)
    index -= mix->bowlers[bowler++].count;
  return bowler;
}

static double
miss_of_pocket (const Alley *alley, TbShot *shot)
{
  TbPath path = { 0 };
  const TbAssumed *assumed = &alley->key->assumed;
  double middle = 0.5 * (assumed->pocket_low + assumed->pocket_high);

  shot->options.edgeless = true;
  if (tb_shot_run (shot, alley->workspace, &path, NULL) != TB_OK)
    return HUGE_VAL;
  return fabs (path.measures.x_at_pins - middle);
}

static TbDelivery
moved (const TbDelivery *delivery, int feet)
{
  TbDelivery line = *delivery;

  line.laydown -= feet * TB_BOARD_WIDTH;
  line.aim -= feet * TARGET_SHARE * TB_BOARD_WIDTH;
  return line;
}

/* Between two games a bowler looks where the ball would go, and moves to what comes nearest to the pocket:
 * feet and half as much with the target, the least move first. */
static void
move_with_lane (Alley *alley, guint bowler)
{
  TbShot shot = shot_of (alley, bowler);
  TbDelivery line = shot.delivery, best = line;
  double nearest = miss_of_pocket (alley, &shot);

  for (int feet = 1; feet <= MOVE_REACH; feet++)
    for (int sign = -1; sign <= 1; sign += 2)
      {
        double miss;

        shot.delivery = moved (&line, sign * feet);
        miss = miss_of_pocket (alley, &shot);
        if (miss < nearest)
          {
            nearest = miss;
            best = shot.delivery;
          }
      }
  alley->delivery[bowler] = best;
}

static void
begin_game (Alley *alley)
{
  if (alley->key->mix->moves)
    for (guint bowler = 0; bowler < alley->key->mix->n_bowlers; bowler++)
      move_with_lane (alley, bowler);
}

/* Bowls `shots` shots of a game. FALSE if cancelled. */
static gboolean
play (Alley *alley, guint shots, GCancellable *cancellable)
{
  guint bowlers = tb_mix_count (alley->key->mix);

  if (shots == 0 || bowlers == 0)
    return TRUE;
  begin_game (alley);
  for (guint i = 0; i < shots; i++)
    {
      if (g_cancellable_is_cancelled (cancellable))
        return FALSE;
      bowl (alley, bowler_at (alley->key->mix, i % bowlers), i / bowlers);
    }
  return TRUE;
}

TbWearKey
tb_wear_key_copy (const TbWearKey *key)
{
  TbWearKey copy = *key;

  copy.pattern = tb_pattern_ref (key->pattern);
  copy.mix = tb_mix_ref (key->mix);
  return copy;
}

void
tb_wear_key_clear (TbWearKey *key)
{
  tb_pattern_unref (key->pattern);
  tb_mix_unref (key->mix);
}

static gboolean
same_assumed (const TbAssumed *a, const TbAssumed *b)
{
  for (const TbAssumedInfo *info = tb_assumed_table; info->name; info++)
    if (memcmp ((const char *)a + info->offset, (const char *)b + info->offset, sizeof (double)) != 0)
      return FALSE;
  return TRUE;
}

gboolean
tb_wear_key_equal (const TbWearKey *a, const TbWearKey *b)
{
  return a->lane.pattern_scale == b->lane.pattern_scale && a->lane.cross_tilt == b->lane.cross_tilt
         && (a->pattern == b->pattern
             || memcmp (&a->pattern->oil, &b->pattern->oil, sizeof a->pattern->oil) == 0)
         && same_assumed (&a->assumed, &b->assumed) && tb_mix_equal (a->mix, b->mix);
}

static void
history_free (gpointer data)
{
  History *history = data;

  tb_wear_key_clear (&history->key);
  g_ptr_array_unref (history->worn);
  g_array_unref (history->delivery);
  g_free (history);
}

static void
drop_oldest (void)
{
  guint oldest = 0;

  for (guint i = 1; i < histories->len; i++)
    if (((History *)g_ptr_array_index (histories, i))->used
        < ((History *)g_ptr_array_index (histories, oldest))->used)
      oldest = i;
  g_ptr_array_remove_index_fast (histories, oldest);
}

static History *
history_new (const TbWearKey *key)
{
  History *history = g_new0 (History, 1);

  history->key = tb_wear_key_copy (key);
  history->worn = g_ptr_array_new_with_free_func ((GDestroyNotify)tb_worn_unref);
  history->delivery = g_array_new (FALSE, FALSE, sizeof (TbDelivery));
  g_ptr_array_add (history->worn, worn_fresh (key->pattern));
  for (guint i = 0; i < key->mix->n_bowlers; i++)
    g_array_append_val (history->delivery, key->mix->bowlers[i].delivery);
  return history;
}

static History *
history_find_locked (const TbWearKey *key)
{
  for (guint i = 0; histories && i < histories->len; i++)
    if (tb_wear_key_equal (&((History *)g_ptr_array_index (histories, i))->key, key))
      return g_ptr_array_index (histories, i);
  return NULL;
}

static History *
history_get_locked (const TbWearKey *key)
{
  History *history = history_find_locked (key);

  if (!histories)
    histories = g_ptr_array_new_with_free_func (history_free);
  if (!history)
    {
      if (histories->len == KEPT)
        drop_oldest ();
      history = history_new (key);
      g_ptr_array_add (histories, history);
    }
  history->used = ++asks;
  return history;
}

/* The most worn lane that is known up to so many games, with the lines as they stood then. */
static TbWorn *
recall (const TbWearKey *key, guint games, guint *at, GArray **delivery)
{
  History *history;
  TbWorn *worn;

  g_mutex_lock (&lock);
  history = history_get_locked (key);
  *at = MIN (games, history->worn->len - 1);
  worn = worn_copy (g_ptr_array_index (history->worn, *at));
  *delivery = g_array_new (FALSE, FALSE, sizeof (TbDelivery));
  g_array_append_vals (*delivery, &g_array_index (history->delivery, TbDelivery, *at * key->mix->n_bowlers),
                       key->mix->n_bowlers);
  g_mutex_unlock (&lock);
  return worn;
}

/* Keeps the lane after `games` games, if it is the next that is missing. */
static void
remember (const TbWearKey *key, guint games, const TbWorn *worn, const GArray *delivery)
{
  History *history;

  g_mutex_lock (&lock);
  history = history_get_locked (key);
  if (history->worn->len == games)
    {
      g_ptr_array_add (history->worn, worn_copy (worn));
      g_array_append_vals (history->delivery, delivery->data, delivery->len);
    }
  g_mutex_unlock (&lock);
}

TbWorn *
tb_worn_new (const TbWearKey *key, double games, GCancellable *cancellable)
{
  double held = CLAMP (games, 0, TB_MAX_GAMES);
  guint whole = (guint)floor (held), at;
  guint rest = (guint)lround ((held - whole) * tb_mix_game_shots (key->mix));
  g_autoptr (GArray) delivery = NULL;
  g_autoptr (TbWorn) worn = recall (key, whole, &at, &delivery);
  g_autofree TbWorkspace *workspace = g_malloc (tb_workspace_size ());
  Alley alley = {
    .key = key, .worn = worn, .delivery = (TbDelivery *)(gpointer)delivery->data, .workspace = workspace
  };

  for (; at < whole; at++)
    {
      if (!play (&alley, tb_mix_game_shots (key->mix), cancellable))
        return NULL;
      remember (key, at + 1, worn, delivery);
    }
  return play (&alley, rest, cancellable) ? g_steal_pointer (&worn) : NULL;
}

gboolean
tb_worn_is_at_hand (const TbWearKey *key, double games)
{
  const History *history;
  gboolean known;

  g_mutex_lock (&lock);
  history = history_find_locked (key);
  known = history && history->worn->len > (guint)floor (CLAMP (games, 0, TB_MAX_GAMES));
  g_mutex_unlock (&lock);
  return known;
}

typedef struct Order
{
  TbWearKey key;
  double games;
} Order;

static void
order_free (gpointer data)
{
  Order *order = data;

  tb_wear_key_clear (&order->key);
  g_free (order);
}

static void
work (GTask *task, gpointer source, gpointer data, GCancellable *cancellable)
{
  Order *order = data;

  tb_task_answer (task, tb_worn_new (&order->key, order->games, cancellable), (GDestroyNotify) tb_worn_unref);
}

void
tb_worn_new_async (const TbWearKey *key,
                   double games,
                   GCancellable *cancellable,
                   GAsyncReadyCallback callback,
                   gpointer user_data)
{
  g_autoptr (GTask) task = g_task_new (NULL, cancellable, callback, user_data);
  Order *order = g_new0 (Order, 1);

  order->key = tb_wear_key_copy (key);
  order->games = games;
  g_task_set_task_data (task, order, order_free);
  tb_task_run (task, work);
}

TbWorn *
tb_worn_new_finish (GAsyncResult *result, GError **error)
{
  return g_task_propagate_pointer (G_TASK (result), error);
}
