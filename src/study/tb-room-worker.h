/* Keeps a picture of the room up to date while things change: works in a thread of its own, coarse first, and
 * drops what is no longer asked for.
 *
 * To be used from one thread, with a main context; news arrive there.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "tb-room.h"
#include "tb-study.h"

G_BEGIN_DECLS

/* What is wanted. */
typedef struct TbRoomRequest
{
  TbSetup *side[TB_N_SIDES]; /* NULL: not wanted */
  TbRoomAxis axis[TB_ROOM_AXES];
  TbMiss hold_miss;
  double hold_boards;
  TbScatter scatter;
  guint64 seed;
  guint shots; /* for the chance; 0: not wanted */
} TbRoomRequest;

/* What is known of one side so far. */
typedef struct TbRoomReport
{
  TbRoomMap *map; /* borrowed; NULL: not yet */
  gboolean has_widths, has_chance;
  TbRoomWidth width[TB_ROOM_AXES];
  TbHold hold; /* with the widths */
  TbPocketChance chance;
} TbRoomReport;

typedef struct TbRoomWorker TbRoomWorker;
/* Called in the main context each time something new is known. */
typedef void (*TbRoomNews) (TbSide side, const TbRoomReport *report, gpointer user_data);

TbRoomWorker *tb_room_worker_new (TbRoomNews news, gpointer user_data);
/* Another question; what was asked before is dropped, but for its coarsest map, so that something always
 * moves. The request is copied, its setups referenced. */
void tb_room_worker_ask (TbRoomWorker *self, const TbRoomRequest *request);
/* Nothing more is wanted: no news come any more. */
void tb_room_worker_stop (TbRoomWorker *self);
/* Whether a thread works, or news wait to be told. */
gboolean tb_room_worker_is_busy (TbRoomWorker *self);
/* Stops, and forgets the caller; what still runs ends by itself within a few shots. */
void tb_room_worker_free (TbRoomWorker *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (TbRoomWorker, tb_room_worker_free)

G_END_DECLS
