/* The tint of a room map: which colour a board at the pins has, and the map as an image.
 *
 * Light shots lean to blue, high ones to orange, the pocket is the palest: told apart with any colour vision,
 * and by the labelled lines besides.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <cairo.h>
#include "tb-room.h"
#include "tb-theme.h"

G_BEGIN_DECLS

/* Boards beyond the pocket at which the tint is at its strongest. */
#define TB_ROOM_TINT_REACH 6.0

/* Edges of the pocket, boards. */
typedef struct TbPocketBoards
{
  double low, high;
} TbPocketBoards;
TbPocketBoards tb_pocket_boards (const TbAssumed *assumed);

/* Of the lines at the pocket's edges. */
TbColor tb_room_edge_color (const TbTheme *theme);
TbColor tb_room_color (const TbTheme *theme, const TbPocketBoards *pocket, double board);
/* The board at the pins between the points of a map, in columns and rows of the whole map; NAN where there is
 * none. */
double tb_room_board_at (const TbRoomMap *map, double column, double row);
/* Fills a box with the map's tint; the first row lies at the bottom. */
void
tb_room_tint_draw (cairo_t *cr, const cairo_rectangle_t *box, const TbTheme *theme, const TbRoomMap *map);
/* Hatches the shots that the gutter takes, over the tint. */
void
tb_room_gutter_draw (cairo_t *cr, const cairo_rectangle_t *box, const TbTheme *theme, const TbRoomMap *map);
/* Hatches a box as those shots are. */
void tb_room_hatch (cairo_t *cr, const cairo_rectangle_t *box, const TbTheme *theme);

G_END_DECLS
