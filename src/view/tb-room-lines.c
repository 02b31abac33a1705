/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include "tb-contour.h"
#include "tb-room-view-private.h"

/* Lines beyond either edge of the pocket. */
#define LINES_BEYOND 4
/* Every so many pieces of a line its label is tried, from a third of it on. */
#define LABEL_TRIES 9

/* A place of the map, in columns and rows, in the picture. */
static TbPoint
place (const TbRoomDrawing *self, const cairo_rectangle_t *plot, TbPoint at)
{
  return (TbPoint){ plot->x + at.x / (self->axis[0].count - 1) * plot->width,
                    plot->y + plot->height - at.y / (self->axis[1].count - 1) * plot->height };
}

static double
contour_value (int column, int row, gconstpointer data)
{
  const TbRoomMap *map = data;

  return tb_room_board_at (map, column * map->stride, row * map->stride);
}

static gboolean
label_inside (TbRoomDrawing *self, const cairo_rectangle_t *plot, const TbLabel *label)
{
  cairo_rectangle_t box = tb_canvas_measure (self->canvas, label);

  return tb_rectangle_contains (plot, &box) && tb_canvas_try_label (self->canvas, label);
}

/* The line's number, at a piece where there is room. */
static void
label_line (TbRoomDrawing *self, const cairo_rectangle_t *plot, const GArray *places, double board)
{
  g_autofree char *text = g_strdup_printf ("%.4g", board);
  guint pieces = places->len / 2;

  for (guint i = 0; i < LABEL_TRIES && pieces > 0; i++)
    {
      guint piece = (pieces / 3 + i * MAX (pieces / LABEL_TRIES, 1)) % pieces;
      TbPoint a = g_array_index (places, TbPoint, 2 * piece),
              b = g_array_index (places, TbPoint, 2 * piece + 1);
      TbLabel label = { .text = text,
                        .x = 0.5 * (a.x + b.x),
                        .y = 0.5 * (a.y + b.y),
                        .across = TB_ALIGN_MIDDLE,
                        .down = TB_ALIGN_MIDDLE,
                        .color = self->canvas->theme.text,
                        .size = 0.88 * self->canvas->em,
                        .plate = TRUE };

      if (label_inside (self, plot, &label))
        return;
    }
}

/* The pieces of a line, in the picture. */
static GArray *
line_pieces (TbRoomDrawing *self, const cairo_rectangle_t *plot, const TbRoomMap *map, double board)
{
  GArray *pieces = g_array_new (FALSE, FALSE, sizeof (TbPoint));
  TbContourGrid grid = { (map->axis[0].count - 1) / map->stride + 1,
                         (map->axis[1].count - 1) / map->stride + 1, contour_value, map };

  tb_contour_trace (&grid, board, pieces);
  for (guint i = 0; i < pieces->len; i++)
    {
      TbPoint *point = &g_array_index (pieces, TbPoint, i);

      *point = place (self, plot, (TbPoint){ point->x * map->stride, point->y * map->stride });
    }
  return pieces;
}

/* The pocket's edges run along the palest part of the tint: they are dark on any ground. */
static void
stroke_line (TbRoomDrawing *self, const GArray *pieces, gboolean edge)
{
  const TbTheme *theme = &self->canvas->theme;
  cairo_t *cr = self->canvas->cr;

  for (guint i = 0; i < pieces->len; i++)
    {
      TbPoint point = g_array_index (pieces, TbPoint, i);

      if (i % 2 == 0)
        cairo_move_to (cr, point.x, point.y);
      else
        cairo_line_to (cr, point.x, point.y);
    }
  tb_draw_color (cr, edge ? tb_room_edge_color (theme) : tb_color_with_alpha (theme->text, 0.5));
  cairo_set_line_cap (cr, CAIRO_LINE_CAP_ROUND);
  cairo_set_line_width (cr, theme->line_width * (edge ? 0.8 : 0.35));
  cairo_stroke (cr);
}

static void
work_on_line (TbRoomDrawing *self,
              const cairo_rectangle_t *plot,
              const TbRoomMap *map,
              double board,
              TbRoomLineWork work)
{
  TbPocketBoards pocket = tb_pocket_boards (&map->setup->shot.assumed);
  g_autoptr (GArray) pieces = line_pieces (self, plot, map, board);

  if (work == TB_ROOM_LINE_STROKE)
    stroke_line (self, pieces, board == pocket.low || board == pocket.high);
  else
    label_line (self, plot, pieces, board);
}

/* The pocket's edges first, so that their numbers find room first. */
void
tb_room_draw_lines (TbRoomDrawing *self,
                    const cairo_rectangle_t *plot,
                    const TbRoomMap *map,
                    TbRoomLineWork work)
{
  TbPocketBoards pocket = tb_pocket_boards (&map->setup->shot.assumed);

  cairo_save (self->canvas->cr);
  tb_draw_rectangle (self->canvas->cr, plot);
  cairo_clip (self->canvas->cr);
  work_on_line (self, plot, map, pocket.low, work);
  work_on_line (self, plot, map, pocket.high, work);
  for (int i = 1; i <= LINES_BEYOND; i++)
    {
      work_on_line (self, plot, map, pocket.low - i * TB_ROOM_LINE_SPACING, work);
      work_on_line (self, plot, map, pocket.high + i * TB_ROOM_LINE_SPACING, work);
    }
  cairo_restore (self->canvas->cr);
}
