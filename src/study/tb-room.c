/* Maps, coarse first: the points of every stride-th row and column, then of every half stride, and so on, so
 * that a picture of the whole is there after a sixty-fourth of the work.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "tb-room.h"

#include <math.h>
#include <string.h>
#include "tb-batch.h"

typedef struct MissKind
{
  const char *field, *with, *label;
  double reach; /* either way, in the field's unit */
} MissKind;

static const MissKind miss_kinds[TB_N_MISSES] = {
  [TB_MISS_AIM] = { "aim_board", NULL, N_ ("Board at the arrows"), 2 },
  [TB_MISS_PARALLEL] = { "laydown_board", "aim_board", N_ ("Line, moved in parallel"), 4 },
  [TB_MISS_LAYDOWN] = { "laydown_board", NULL, N_ ("Board at the foul line"), 3 },
  [TB_MISS_SPEED] = { "speed_mph", NULL, N_ ("Speed"), 2 },
  [TB_MISS_REV_RATE] = { "rev_rate_rpm", NULL, N_ ("Rev rate"), 80 },
  [TB_MISS_ROTATION] = { "axis_rotation_deg", NULL, N_ ("Axis rotation"), 20 },
};

const char *
tb_miss_label (TbMiss miss)
{
  return miss_kinds[miss].label;
}

TbRoomAxis
tb_room_axis (TbMiss miss, int count)
{
  const MissKind *kind = &miss_kinds[miss];

  return (TbRoomAxis){ .field = tb_field_find (TB_GROUP_DELIVERY, kind->field),
                       .with = kind->with ? tb_field_find (TB_GROUP_DELIVERY, kind->with) : NULL,
                       .low = -kind->reach,
                       .high = kind->reach,
                       .count = count };
}

double
tb_room_axis_at (const TbRoomAxis *axis, int index)
{
  /* From the middle outwards, so that a plan in the middle is met exactly. */
  double share = (2.0 * index - (axis->count - 1)) / (axis->count - 1);

  return 0.5 * (axis->low + axis->high) + 0.5 * (axis->high - axis->low) * share;
}

static void
move_field (const TbField *field, double difference, TbShot *shot)
{
  double *value = (double *)(gpointer)((char *)tb_shot_group (shot, field->group) + field->offset);

  *value = field->to_si (field->from_si (*value) + difference);
}

void
tb_room_axis_move (const TbRoomAxis *axis, double difference, TbShot *shot)
{
  if (difference == 0)
    return;
  move_field (axis->field, difference, shot);
  if (axis->with)
    move_field (axis->with, difference, shot);
}

gboolean
tb_in_pocket (const TbAssumed *assumed, double x)
{
  return x <= MAX (assumed->pocket_low, assumed->pocket_high)
         && x >= MIN (assumed->pocket_low, assumed->pocket_high);
}

static TbRoomPoint
empty_point (TbStatus status)
{
  double none = (double)NAN;

  return (TbRoomPoint){ status, none, none, none, none, none, none, none };
}

static TbRoomPoint
point_of (const TbBatchItem *item)
{
  const TbMeasures *m = &item->measures;

  if (item->status != TB_OK)
    return empty_point (item->status);
  return (TbRoomPoint){ TB_OK,           m->x_at_arrows,  m->x_at_pins,    m->angle_at_pins,
                        m->breakpoint_x, m->breakpoint_y, m->roll_start_y, m->gutter_y };
}

static guint
map_size (const TbRoomMap *map)
{
  return (guint)(map->axis[0].count * map->axis[1].count);
}

static TbRoomMap *
map_alloc (TbSetup *setup, const TbRoomAxis axis[TB_ROOM_AXES])
{
  TbRoomMap *map = g_new0 (TbRoomMap, 1);

  g_atomic_ref_count_init (&map->ref_count);
  map->setup = tb_setup_ref (setup);
  for (int i = 0; i < TB_ROOM_AXES; i++)
    map->axis[i] = axis[i];
  map->points = g_new (TbRoomPoint, map_size (map));
  return map;
}

static TbRoomMap *
map_copy (const TbRoomMap *map)
{
  TbRoomMap *copy = map_alloc (map->setup, map->axis);

  copy->stride = map->stride;
  memcpy (copy->points, map->points, map_size (map) * sizeof *map->points);
  return copy;
}

TbShot
tb_room_map_shot (const TbRoomMap *map, int across, int up)
{
  TbShot shot = map->setup->shot;

  shot.options.edgeless = true;
  tb_room_axis_move (&map->axis[0], tb_room_axis_at (&map->axis[0], across), &shot);
  tb_room_axis_move (&map->axis[1], tb_room_axis_at (&map->axis[1], up), &shot);
  return shot;
}

const TbRoomPoint *
tb_room_map_point (const TbRoomMap *map, int across, int up)
{
  across -= across % map->stride;
  up -= up % map->stride;
  return &map->points[up * map->axis[0].count + across];
}

/* The points that one level adds. */
typedef struct Level
{
  const TbRoomMap *map;
  GArray *indices; /* of guint */
} Level;

static void
make_shot (TbShot *shot, guint index, gpointer user_data)
{
  const Level *level = user_data;
  int point = (int)g_array_index (level->indices, guint, index);
  int columns = level->map->axis[0].count;

  *shot = tb_room_map_shot (level->map, point % columns, point / columns);
}

static GArray *
points_of_level (const TbRoomMap *map, int stride)
{
  GArray *indices = g_array_new (FALSE, FALSE, sizeof (guint));
  int columns = map->axis[0].count;

  for (int up = 0; up < map->axis[1].count; up += stride)
    for (int across = 0; across < columns; across += stride)
      {
        guint index = (guint)(up * columns + across);

        if (map->points[index].status == TB_N_STATUS)
          g_array_append_val (indices, index);
      }
  return indices;
}

static gboolean
run_level (TbRoomMap *map, int stride, guint threads, GCancellable *cancellable)
{
  g_autoptr (GArray) indices = points_of_level (map, stride);
  g_autofree TbBatchItem *items = g_new (TbBatchItem, MAX (indices->len, 1));
  Level level = { map, indices };

  if (!tb_batch_run (indices->len, make_shot, &level, items, threads, cancellable))
    return FALSE;
  for (guint i = 0; i < indices->len; i++)
    map->points[g_array_index (indices, guint, i)] = point_of (&items[i]);
  map->stride = stride;
  return TRUE;
}

static void
tell (const TbRoomMap *map, TbRoomProgress progress, gpointer user_data)
{
  g_autoptr (TbRoomMap) copy = progress ? map_copy (map) : NULL;

  if (progress)
    progress (copy, user_data);
}

TbRoomMap *
tb_room_map_new (TbSetup *setup,
                 const TbRoomAxis axis[TB_ROOM_AXES],
                 guint threads,
                 TbRoomProgress progress,
                 gpointer user_data,
                 GCancellable *cancellable)
{
  g_autoptr (TbRoomMap) map = map_alloc (setup, axis);

  for (guint i = 0; i < map_size (map); i++)
    map->points[i] = empty_point (TB_N_STATUS);
  run_level (map, TB_ROOM_COARSEST, threads, NULL);
  for (int stride = TB_ROOM_COARSEST; stride > 1; stride /= 2)
    {
      tell (map, progress, user_data);
      if (!run_level (map, stride / 2, threads, cancellable))
        return NULL;
    }
  tell (map, progress, user_data);
  return g_steal_pointer (&map);
}

TbRoomMap *
tb_room_map_ref (TbRoomMap *map)
{
  g_atomic_ref_count_inc (&map->ref_count);
  return map;
}

void
tb_room_map_unref (TbRoomMap *map)
{
  if (!g_atomic_ref_count_dec (&map->ref_count))
    return;
  tb_setup_unref (map->setup);
  g_free (map->points);
  g_free (map);
}
