/* Room to miss: maps of before and after, how much room each has, and how often a bowler's own shots find the
 * pocket.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "tb-lane-page.h"
#include "tb-room-worker.h"

G_BEGIN_DECLS

#define TB_TYPE_ROOM_PAGE (tb_room_page_get_type ())
G_DECLARE_FINAL_TYPE (TbRoomPage, tb_room_page, TB, ROOM_PAGE, TbLanePage)

/* What is missed across and up. */
void tb_room_page_set_misses (TbRoomPage *self, TbMiss across, TbMiss up);
/* For tests: whether anything is still to come, and the last map of a side (borrowed; NULL before the first).
 */
gboolean tb_room_page_is_busy (TbRoomPage *self);
const TbRoomMap *tb_room_page_get_map (TbRoomPage *self, TbSide side);

G_END_DECLS
