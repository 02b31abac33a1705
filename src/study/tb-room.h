/* Room to miss: what becomes of the shots around a planned one.
 *
 * A map throws a shot for every pair of misses in two fields; a width says how far one field can be missed
 * and still find the pocket; hold and recovery say how much of a miss to either side the lane takes back; a
 * chance says how many of a bowler's own scattered shots find the pocket. All shots are edgeless, so that
 * nothing breaks at the gutter; `gutter_y` says where the real ball would be in it.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gio/gio.h>
#include "tb-scatter.h"
#include "tb-setup.h"

G_BEGIN_DECLS

/* One way of missing: a field, and how far it is missed, in its unit, as a difference from the plan. */
typedef struct TbRoomAxis
{
  const TbField *field; /* a real one, of any group */
  const TbField *with;  /* moved by the same difference: parallel lines, say; NULL for none */
  double low, high;     /* low < high */
  int count;            /* of misses, 2 or more, evenly from low to high */
} TbRoomAxis;

/* The ways of missing that people ask for. */
typedef enum TbMiss
{
  TB_MISS_AIM,      /* board at the arrows, the ball laid down as planned */
  TB_MISS_PARALLEL, /* laid down and aimed the same number of boards off */
  TB_MISS_LAYDOWN,  /* laid down off, aimed as planned */
  TB_MISS_SPEED,
  TB_MISS_REV_RATE,
  TB_MISS_ROTATION,
  TB_N_MISSES
} TbMiss;
const char *tb_miss_label (TbMiss miss); /* for people, untranslated */
/* A customary range either way of the plan, and so many misses. */
TbRoomAxis tb_room_axis (TbMiss miss, int count);

/* The difference at an index of an axis, in the field's unit. */
double tb_room_axis_at (const TbRoomAxis *axis, int index);
/* Moves a shot along an axis by a difference. A difference of 0 changes no bit. The value may leave the
 * field's range; the shot then says so when it is run. */
void tb_room_axis_move (const TbRoomAxis *axis, double difference, TbShot *shot);

/* What is kept of a shot. Not a number where there is none. */
typedef struct TbRoomPoint
{
  TbStatus status; /* TB_N_STATUS: not thrown yet */
  double x_at_arrows, x_at_pins, angle_at_pins, breakpoint_x, breakpoint_y, roll_start_y,
      gutter_y; /* core units */
} TbRoomPoint;

/* Across: axis[0]; up: axis[1]. */
#define TB_ROOM_AXES 2

/* A map, immutable and counted. Coarse ones have every stride-th point of both axes. */
typedef struct TbRoomMap
{
  gatomicrefcount ref_count;
  TbSetup *setup;
  TbRoomAxis axis[TB_ROOM_AXES];
  int stride;          /* 1 when all points are there */
  TbRoomPoint *points; /* axis[0].count in a row, axis[1].count rows */
} TbRoomMap;

/* Stride of the coarsest map; halved from map to map. */
#define TB_ROOM_COARSEST 8

/* Told of every map on the way, coarse first; in the caller's thread. `map` is borrowed. */
typedef void (*TbRoomProgress) (TbRoomMap *map, gpointer user_data);

/* Throws them all. The coarsest map always comes to its end; `cancellable` is heard after that, and NULL is
 * returned then. progress may be NULL. threads 0 means one a processor; the result does not depend on it. */
TbRoomMap *tb_room_map_new (TbSetup *setup,
                            const TbRoomAxis axis[TB_ROOM_AXES],
                            guint threads,
                            TbRoomProgress progress,
                            gpointer user_data,
                            GCancellable *cancellable);
TbRoomMap *tb_room_map_ref (TbRoomMap *map);
void tb_room_map_unref (TbRoomMap *map);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (TbRoomMap, tb_room_map_unref)

/* The point at a pair of indices, or the one that stands for it on a coarse map. */
const TbRoomPoint *tb_room_map_point (const TbRoomMap *map, int across, int up);
/* The shot behind a point: thrown by itself it gives the same bits. */
TbShot tb_room_map_shot (const TbRoomMap *map, int across, int up);
/* Whether a ball that is at x (m, bowler's frame) at the pins is in the pocket of these constants. */
gboolean tb_in_pocket (const TbAssumed *assumed, double x);

/* How far a field can be missed and still find the pocket. */
typedef struct TbRoomWidth
{
  gboolean in_pocket; /* FALSE: the plan itself misses it, and the rest is 0 */
  double low, high;   /* differences at which the pocket is left; low ≤ 0 ≤ high; the field's unit */
  gboolean low_is_end, high_is_end; /* not left within the axis: there is at least so much room */
} TbRoomWidth;
/* NULL cancellable and threads as above. FALSE if cancelled. */
gboolean tb_room_width (const TbSetup *setup,
                        const TbRoomAxis *axis,
                        guint threads,
                        TbRoomWidth *width,
                        GCancellable *cancellable);

/* A miss of so many boards to either side, and what is left of it at the pins. */
typedef struct TbHold
{
  double miss;      /* boards */
  double plan_x;    /* m at the pins, bowler's frame; NAN if a shot did not arrive */
  double outside_x; /* of the shot missed towards lower boards */
  double inside_x;  /* of the shot missed towards higher boards */
  double recovered; /* boards of the outside miss that the lane gave back; negative: it made it worse */
  double held;      /* likewise of the inside miss */
} TbHold;
TbHold tb_hold (const TbSetup *setup, TbMiss miss, double boards);

/* Pocket shots among a bowler's own. */
typedef struct TbPocketChance
{
  guint shots, hits;
  double share;               /* hits over shots */
  double standard_error;      /* of the share; never quite 0, since neither 0 nor all hits prove anything */
  double mean_x, deviation_x; /* at the pins, m; of the shots that arrive */
} TbPocketChance;
/* FALSE if cancelled, or if the scatter cannot be (tb_scatter_prepare). */
gboolean tb_pocket_chance (const TbSetup *setup,
                           const TbScatter *scatter,
                           guint64 seed,
                           guint shots,
                           guint threads,
                           TbPocketChance *chance,
                           GCancellable *cancellable);

G_END_DECLS
