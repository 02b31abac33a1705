/* What the parts of the room's picture share.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "tb-canvas.h"
#include "tb-draw.h"
#include "tb-room-tint.h"
#include "tb-room-view.h"
#include "tb-unit-pair.h"

G_BEGIN_DECLS

/* Distances, em. */
#define TB_ROOM_ROW 1.5 /* a line of text */
#define TB_ROOM_TICK 0.35
#define TB_ROOM_NUMBERS 2.4 /* for the numbers of the upward axis */
#define TB_ROOM_LEGEND_BAR 0.75
/* Boards between the lines beyond the pocket. */
#define TB_ROOM_LINE_SPACING 2.0

/* The picture while it is being drawn. */
typedef struct TbRoomDrawing
{
  TbCanvas *canvas;
  const TbRoomScene *scene;
  const TbRoomAxis *axis;    /* of either map; they have the same */
  cairo_rectangle_t plot[2]; /* before, after; of no size where there is none */
  cairo_rectangle_t legend;
} TbRoomDrawing;

/* The share of an axis at which a miss lies. */
double tb_room_share_at (const TbRoomAxis *axis, double miss);
/* Whether it is told in boards. */
gboolean tb_room_is_board (const TbRoomAxis *axis);
/* How misses along it are told in the picture. */
TbToldUnit tb_room_unit (const TbRoomDrawing *self, const TbRoomAxis *axis);

/* tb-room-axes.c */
void tb_room_draw_axes (TbRoomDrawing *self, const cairo_rectangle_t *plot, const TbRoomMap *map);

/* tb-room-lines.c: lines of equal board. The strokes first, then the bars' numbers, and then the lines' own.
 */
typedef enum TbRoomLineWork
{
  TB_ROOM_LINE_STROKE,
  TB_ROOM_LINE_LABEL
} TbRoomLineWork;
void tb_room_draw_lines (TbRoomDrawing *self,
                         const cairo_rectangle_t *plot,
                         const TbRoomMap *map,
                         TbRoomLineWork work);

/* tb-room-bars.c: the plan, and the room along both axes. The numbers take room for the bars as well. */
void tb_room_label_bars (TbRoomDrawing *self, const cairo_rectangle_t *plot, const TbRoomPanel *panel);
void tb_room_draw_plan (TbRoomDrawing *self,
                        const cairo_rectangle_t *plot,
                        const TbRoomPanel *panel,
                        gboolean before);

/* tb-room-legend.c */
void tb_room_draw_legend (TbRoomDrawing *self);

G_END_DECLS
