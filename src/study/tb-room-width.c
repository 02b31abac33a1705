/* Widths, hold and recovery, chances.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "tb-room.h"

#include <math.h>
#include "tb-batch.h"

/* Shots either way of the plan before an edge is looked for between two of them. */
#define WIDTH_SHOTS 24
/* Each halves the stretch in which the edge lies: to a thousandth of a step. */
#define WIDTH_HALVINGS 10

typedef struct Misses
{
  const TbSetup *setup;
  const TbRoomAxis *axis;
} Misses;

/* Differences: the plan, then outwards to the low end, then outwards to the high one. */
static double
miss_at (const TbRoomAxis *axis, guint index)
{
  if (index <= WIDTH_SHOTS)
    return axis->low * index / WIDTH_SHOTS;
  return axis->high * (index - WIDTH_SHOTS) / WIDTH_SHOTS;
}

static TbShot
missed_shot (const TbSetup *setup, const TbRoomAxis *axis, double difference)
{
  TbShot shot = setup->shot;

  shot.options.edgeless = true;
  tb_room_axis_move (axis, difference, &shot);
  return shot;
}

static void
make_miss (TbShot *shot, guint index, gpointer user_data)
{
  const Misses *misses = user_data;

  *shot = missed_shot (misses->setup, misses->axis, miss_at (misses->axis, index));
}

/* A ball that went through the gutter on its way found nothing. */
static gboolean
found_pocket (const TbAssumed *assumed, TbStatus status, const TbMeasures *measures)
{
  return status == TB_OK && isnan (measures->gutter_y) && tb_in_pocket (assumed, measures->x_at_pins);
}

static TbStatus throw (const TbShot *shot, TbMeasures *measures)
{
  g_autofree TbWorkspace *workspace = g_malloc (tb_workspace_size ());
  TbPath path = { 0 };
  TbStatus status = tb_shot_run (shot, workspace, &path, NULL);

  *measures = path.measures;
  return status;
}

static gboolean
miss_finds_pocket (const Misses *misses, double difference)
{
  TbShot shot = missed_shot (misses->setup, misses->axis, difference);
  TbMeasures measures;
  TbStatus status = throw (&shot, &measures);

  return found_pocket (&shot.assumed, status, &measures);
}

static double
edge_between (const Misses *misses, double inside, double outside)
{
  for (int i = 0; i < WIDTH_HALVINGS; i++)
    {
      double middle = 0.5 * (inside + outside);

      if (miss_finds_pocket (misses, middle))
        inside = middle;
      else
        outside = middle;
    }
  return 0.5 * (inside + outside);
}

/* The edge among the items from `first` on, outwards; the plan stands before them. */
static double
find_edge (const Misses *misses, const TbBatchItem *items, guint first, gboolean *is_end)
{
  double inside = 0;

  for (guint i = first; i < first + WIDTH_SHOTS; i++)
    {
      double difference = miss_at (misses->axis, i);

      if (!found_pocket (&misses->setup->shot.assumed, items[i].status, &items[i].measures))
        return edge_between (misses, inside, difference);
      inside = difference;
    }
  *is_end = TRUE;
  return inside;
}

gboolean
tb_room_width (const TbSetup *setup,
               const TbRoomAxis *axis,
               guint threads,
               TbRoomWidth *width,
               GCancellable *cancellable)
{
  TbBatchItem items[2 * WIDTH_SHOTS + 1];
  Misses misses = { setup, axis };

  *width = (TbRoomWidth){ 0 };
  if (!tb_batch_run (G_N_ELEMENTS (items), make_miss, &misses, items, threads, cancellable))
    return FALSE;
  width->in_pocket = found_pocket (&setup->shot.assumed, items[0].status, &items[0].measures);
  if (!width->in_pocket)
    return TRUE;
  width->low = find_edge (&misses, items, 1, &width->low_is_end);
  width->high = find_edge (&misses, items, 1 + WIDTH_SHOTS, &width->high_is_end);
  return TRUE;
}

static double
x_of_miss (const TbSetup *setup, const TbRoomAxis *axis, double boards)
{
  TbShot shot = missed_shot (setup, axis, boards);
  TbMeasures measures;

  return throw (&shot, &measures) == TB_OK ? measures.x_at_pins : (double)NAN;
}

TbHold
tb_hold (const TbSetup *setup, TbMiss miss, double boards)
{
  TbRoomAxis axis = tb_room_axis (miss, 2);
  TbHold hold = { .miss = boards };

  hold.plan_x = x_of_miss (setup, &axis, 0);
  hold.outside_x = x_of_miss (setup, &axis, -boards);
  hold.inside_x = x_of_miss (setup, &axis, boards);
  hold.recovered = boards + tb_boards_from_width (hold.outside_x - hold.plan_x);
  hold.held = boards - tb_boards_from_width (hold.inside_x - hold.plan_x);
  return hold;
}

typedef struct Scattered
{
  const TbSetup *setup;
  TbScatterDraw draw;
  guint64 seed;
} Scattered;

static void
make_scattered (TbShot *shot, guint index, gpointer user_data)
{
  const Scattered *scattered = user_data;

  *shot = scattered->setup->shot;
  shot->options.edgeless = true;
  tb_scatter_move (&scattered->draw, (TbChance){ scattered->seed, index }, &shot->delivery);
}

/* Agresti and Coull's adjustment ("Approximate is better than 'exact'", The American Statistician 52, 1998):
 * two shots of each outcome are added, so that the error of a share of 0 or 1 is not 0. */
#define ADDED_SHOTS 4.0

static double
standard_error (guint hits, guint shots)
{
  double count = shots + ADDED_SHOTS, share = (hits + 0.5 * ADDED_SHOTS) / count;

  return sqrt (share * (1 - share) / count);
}

/* Mean and deviation at the pins of the shots that arrived; from the mean, so that no spread at all is none.
 */
static void
measure_spread (const TbBatchItem *items, TbPocketChance *chance)
{
  double sum = 0, squares = 0;
  guint arrived = 0;

  for (guint i = 0; i < chance->shots; i++)
    if (items[i].status == TB_OK)
      {
        sum += items[i].measures.x_at_pins;
        arrived++;
      }
  chance->mean_x = arrived > 0 ? sum / arrived : (double)NAN;
  for (guint i = 0; i < chance->shots; i++)
    if (items[i].status == TB_OK)
      squares
          += (items[i].measures.x_at_pins - chance->mean_x) * (items[i].measures.x_at_pins - chance->mean_x);
  chance->deviation_x = arrived > 1 ? sqrt (squares / (arrived - 1)) : (double)NAN;
}

static void
count_chance (const TbAssumed *assumed, const TbBatchItem *items, TbPocketChance *chance)
{
  for (guint i = 0; i < chance->shots; i++)
    chance->hits += found_pocket (assumed, items[i].status, &items[i].measures);
  chance->share = chance->shots > 0 ? (double)chance->hits / chance->shots : 0;
  chance->standard_error = standard_error (chance->hits, chance->shots);
  measure_spread (items, chance);
}

gboolean
tb_pocket_chance (const TbSetup *setup,
                  const TbScatter *scatter,
                  guint64 seed,
                  guint shots,
                  guint threads,
                  TbPocketChance *chance,
                  GCancellable *cancellable)
{
  Scattered scattered = { .setup = setup, .seed = seed };
  g_autofree TbBatchItem *items = g_new (TbBatchItem, MAX (shots, 1));

  *chance = (TbPocketChance){ .shots = shots };
  if (!tb_scatter_prepare (scatter, &scattered.draw)
      || !tb_batch_run (shots, make_scattered, &scattered, items, threads, cancellable))
    return FALSE;
  count_chance (&setup->shot.assumed, items, chance);
  return TRUE;
}
