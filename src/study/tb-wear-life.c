/* A line on a lane that wears.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "tb-wear-life.h"

#include <math.h>
#include "tb-room.h"
#include "tb-task.h"

/* Moves that are looked at: up to so many boards with the feet, either way, with the target following by
 * these shares (common practice: half, two thirds, all of it, or not at all). The smallest move that does
 * comes first. */
#define MAX_FEET 12
static const double target_shares[] = { 0.5, 2.0 / 3.0, 1.0, 0.0 };

TbWearLife *
tb_wear_life_ref (TbWearLife *life)
{
  g_atomic_ref_count_inc (&life->ref_count);
  return life;
}

void
tb_wear_life_unref (TbWearLife *life)
{
  if (!g_atomic_ref_count_dec (&life->ref_count))
    return;
  tb_setup_unref (life->setup);
  g_free (life->points);
  g_free (life);
}

/* The line on a lane that has been played on so much. NULL if cancelled. */
static TbWorn *
lane_after (const TbSetup *setup, double games, GCancellable *cancellable)
{
  TbWearKey key = tb_setup_wear_key (setup);
  TbWorn *worn = tb_worn_new (&key, games, cancellable);

  tb_wear_key_clear (&key);
  return worn;
}

static TbWearPoint
throw_on (const TbSetup *setup, const TbDelivery *delivery, const TbWorn *worn, double games)
{
  g_autofree TbWorkspace *workspace = g_malloc (tb_workspace_size ());
  TbShot shot = setup->shot;
  TbPath path = { 0 };
  TbWearPoint point = { .games = games };

  shot.delivery = *delivery;
  shot.lane.oil = &worn->oil;
  shot.options.edgeless = true;
  point.status = tb_shot_run (&shot, workspace, &path, NULL);
  point.x_at_pins = point.status == TB_OK ? path.measures.x_at_pins : (double)NAN;
  point.angle_at_pins = point.status == TB_OK ? path.measures.angle_at_pins : (double)NAN;
  point.in_pocket = point.status == TB_OK && isnan (path.measures.gutter_y)
                    && tb_in_pocket (&shot.assumed, path.measures.x_at_pins);
  return point;
}

static void
find_loss (TbWearLife *life)
{
  life->last_good = life->lost = (double)NAN;
  for (guint i = 0; i < life->count; i++)
    {
      if (!life->points[i].in_pocket)
        {
          life->lost = life->points[i].games;
          return;
        }
      life->last_good = life->points[i].games;
    }
}

static gboolean
try_move (TbWearLife *life, const TbWorn *worn, double feet, double share)
{
  TbMove move = { .feet = feet, .target = feet * share };
  TbDelivery moved = tb_move_delivery (&life->setup->shot.delivery, &move, 1);
  TbWearPoint point = throw_on (life->setup, &moved, worn, life->lost);

  if (!point.in_pocket)
    return FALSE;
  life->has_move = TRUE;
  life->feet = move.feet;
  life->target = move.target;
  life->moved = moved;
  life->moved_x_at_pins = point.x_at_pins;
  return TRUE;
}

static void
find_move (TbWearLife *life, const TbWorn *worn)
{
  for (int feet = 1; feet <= MAX_FEET; feet++)
    for (guint i = 0; i < G_N_ELEMENTS (target_shares); i++)
      if (try_move (life, worn, feet, target_shares[i]) || try_move (life, worn, -feet, target_shares[i]))
        return;
}

/* Fills in the points; FALSE if cancelled. */
static gboolean
play_on (TbWearLife *life, guint games, GCancellable *cancellable)
{
  for (guint i = 0; i <= games; i++)
    {
      g_autoptr (TbWorn) worn = lane_after (life->setup, i, cancellable);

      if (!worn)
        return FALSE;
      life->points[life->count++] = throw_on (life->setup, &life->setup->shot.delivery, worn, i);
    }
  return TRUE;
}

TbWearLife *
tb_wear_life_new (TbSetup *setup, guint games, GCancellable *cancellable)
{
  g_autoptr (TbWearLife) life = g_new0 (TbWearLife, 1);
  guint held = MIN (games, (guint)TB_MAX_GAMES);

  g_atomic_ref_count_init (&life->ref_count);
  life->setup = tb_setup_ref (setup);
  life->points = g_new0 (TbWearPoint, held + 1);
  if (!play_on (life, held, cancellable))
    return NULL;
  find_loss (life);
  if (life->lost >= 0)
    {
      g_autoptr (TbWorn) worn = lane_after (setup, life->lost, cancellable);

      if (!worn)
        return NULL;
      find_move (life, worn);
    }
  return g_steal_pointer (&life);
}

typedef struct Order
{
  TbSetup *setup;
  guint games;
} Order;

static void
order_free (gpointer data)
{
  Order *order = data;

  tb_setup_unref (order->setup);
  g_free (order);
}

static void
work (GTask *task, gpointer source, gpointer data, GCancellable *cancellable)
{
  Order *order = data;

  tb_task_answer (task, tb_wear_life_new (order->setup, order->games, cancellable),
                  (GDestroyNotify) tb_wear_life_unref);
}

void
tb_wear_life_new_async (TbSetup *setup,
                        guint games,
                        GCancellable *cancellable,
                        GAsyncReadyCallback callback,
                        gpointer user_data)
{
  g_autoptr (GTask) task = g_task_new (NULL, cancellable, callback, user_data);
  Order *order = g_new0 (Order, 1);

  order->setup = tb_setup_ref (setup);
  order->games = games;
  g_task_set_task_data (task, order, order_free);
  tb_task_run (task, work);
}

TbWearLife *
tb_wear_life_new_finish (GAsyncResult *result, GError **error)
{
  return g_task_propagate_pointer (G_TASK (result), error);
}
