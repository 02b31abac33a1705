/* Room to miss, drawn: a map for each run of the board at the pins over two ways of missing, with the
 * pocket's edges as labelled lines and the room along both axes as bars through the plan.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <cairo.h>
#include "tb-room.h"
#include "tb-theme.h"

G_BEGIN_DECLS

/* One side of the picture. */
typedef struct TbRoomPanel
{
  const TbRoomMap *map;                   /* NULL: not there, or not yet */
  const TbRoomWidth *width[TB_ROOM_AXES]; /* bars; NULL for none */
  const char *label;                      /* translated */
} TbRoomPanel;

typedef struct TbRoomScene
{
  TbTheme theme;
  TbRoomPanel before, after; /* with the same axes */
  gboolean show_legend;
  gboolean metric; /* km/h rather than mph */
} TbRoomScene;

TbRoomScene tb_room_scene_default (void);
void tb_room_view_draw (cairo_t *cr, double width, double height, const TbRoomScene *scene);
/* The misses at a place of the picture, in the axes' units, and whose map it is. FALSE where there is none.
 */
gboolean tb_room_view_to_miss (double width,
                               double height,
                               const TbRoomScene *scene,
                               const double at[2],
                               double miss[TB_ROOM_AXES],
                               gboolean *is_before);

G_END_DECLS
