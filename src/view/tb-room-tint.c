/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include <math.h>
#include "tb-draw.h"
#include "tb-room-tint.h"

/* The image has so many pixels for each step between two points of the whole map. */
#define SAMPLES 4
/* Hatching, in text sizes. */
#define HATCH_SPACING 0.55
#define HATCH_WIDTH 0.09

#define RGB(hex)                                                                             \
  {                                                                                          \
    (((hex) >> 16) & 0xff) / 255.0, (((hex) >> 8) & 0xff) / 255.0, ((hex)&0xff) / 255.0, 1.0 \
  }

/* Ends and middle of the tint on a light ground and on a dark one. */
typedef struct Tints
{
  TbColor light, pocket, high;
} Tints;
static const Tints on_light = { RGB (0x2f6ca8), RGB (0xfff8e0), RGB (0xc2701c) };
static const Tints on_dark = { RGB (0x1d4a7c), RGB (0xe9dfc2), RGB (0x8c4c10) };

TbPocketBoards
tb_pocket_boards (const TbAssumed *assumed)
{
  double a = tb_board_from_x (assumed->pocket_low), b = tb_board_from_x (assumed->pocket_high);

  return (TbPocketBoards){ MIN (a, b), MAX (a, b) };
}

static gboolean
is_dark (const TbTheme *theme)
{
  return theme->background.red + theme->background.green + theme->background.blue < 1.5;
}

TbColor
tb_room_edge_color (const TbTheme *theme)
{
  return is_dark (theme) ? theme->background : theme->text;
}

TbColor
tb_room_color (const TbTheme *theme, const TbPocketBoards *pocket, double board)
{
  const Tints *tints = is_dark (theme) ? &on_dark : &on_light;
  double beyond = board < pocket->low ? pocket->low - board : board > pocket->high ? board - pocket->high : 0;
  /* A step at the pocket's edge, so that in and out never look alike. */
  double share = beyond > 0 ? 0.22 + 0.78 * MIN (beyond / TB_ROOM_TINT_REACH, 1) : 0;

  if (isnan (board))
    return theme->rule;
  return tb_color_mix (tints->pocket, board < pocket->low ? tints->light : tints->high, share);
}

static double
board_of (const TbRoomMap *map, int column, int row)
{
  const TbRoomPoint *point
      = tb_room_map_point (map, MIN (column, map->axis[0].count - 1), MIN (row, map->axis[1].count - 1));

  return point->status == TB_OK ? tb_board_from_x (point->x_at_pins) : (double)NAN;
}

/* Between two that are there; what is there counts for what is not. */
static double
between (double a, double b, double share)
{
  if (isnan (a) || isnan (b))
    return share < 0.5 ? a : b;
  return a + share * (b - a);
}

double
tb_room_board_at (const TbRoomMap *map, double column, double row)
{
  int stride = map->stride, left = (int)floor (column / stride) * stride,
      below = (int)floor (row / stride) * stride;
  double across = (column - left) / stride, up = (row - below) / stride;
  double lower = between (board_of (map, left, below), board_of (map, left + stride, below), across);
  double upper
      = between (board_of (map, left, below + stride), board_of (map, left + stride, below + stride), across);

  return between (lower, upper, up);
}

static guint32
pixel (TbColor color)
{
  return (guint32)lround (255 * color.red) << 16 | (guint32)lround (255 * color.green) << 8
         | (guint32)lround (255 * color.blue);
}

static cairo_surface_t *
map_image (const TbTheme *theme, const TbRoomMap *map)
{
  TbPocketBoards pocket = tb_pocket_boards (&map->setup->shot.assumed);
  int width = (map->axis[0].count - 1) * SAMPLES, height = (map->axis[1].count - 1) * SAMPLES;
  cairo_surface_t *image = cairo_image_surface_create (CAIRO_FORMAT_RGB24, width, height);
  guchar *data = cairo_image_surface_get_data (image);
  int stride = cairo_image_surface_get_stride (image);

  for (int j = 0; j < height; j++)
    for (int i = 0; i < width; i++)
      {
        double board = tb_room_board_at (map, (i + 0.5) / SAMPLES, (height - j - 0.5) / SAMPLES);

        ((guint32 *)(gpointer)(data + j * stride))[i] = pixel (tb_room_color (theme, &pocket, board));
      }
  cairo_surface_mark_dirty (image);
  return image;
}

void
tb_room_tint_draw (cairo_t *cr, const cairo_rectangle_t *box, const TbTheme *theme, const TbRoomMap *map)
{
  cairo_surface_t *image = map_image (theme, map);

  tb_draw_image (cr, image, box, box);
  cairo_surface_destroy (image);
}

void
tb_room_hatch (cairo_t *cr, const cairo_rectangle_t *box, const TbTheme *theme)
{
  double spacing = HATCH_SPACING * theme->text_size;

  tb_draw_color (cr, tb_color_with_alpha (theme->text, 0.55));
  cairo_set_line_width (cr, MAX (1, HATCH_WIDTH * theme->text_size));
  for (double x = box->x - box->height; x < box->x + box->width; x += spacing)
    {
      cairo_move_to (cr, x, box->y + box->height);
      cairo_line_to (cr, x + box->height, box->y);
    }
  cairo_stroke (cr);
}

static gboolean
add_gutter_cells (cairo_t *cr, const cairo_rectangle_t *box, const TbRoomMap *map)
{
  double across = box->width / (map->axis[0].count - 1), up = box->height / (map->axis[1].count - 1);
  gboolean any = FALSE;

  for (int row = 0; row < map->axis[1].count; row += map->stride)
    for (int column = 0; column < map->axis[0].count; column += map->stride)
      {
        const TbRoomPoint *point = tb_room_map_point (map, column, row);

        if (point->status != TB_OK || isnan (point->gutter_y))
          continue;
        any = TRUE;
        cairo_rectangle (cr, box->x + (column - 0.5 * map->stride) * across,
                         box->y + box->height - (row + 0.5 * map->stride) * up, map->stride * across,
                         map->stride * up);
      }
  return any;
}

void
tb_room_gutter_draw (cairo_t *cr, const cairo_rectangle_t *box, const TbTheme *theme, const TbRoomMap *map)
{
  cairo_save (cr);
  tb_draw_rectangle (cr, box);
  cairo_clip (cr);
  if (add_gutter_cells (cr, box, map))
    {
      cairo_clip (cr);
      tb_room_hatch (cr, box, theme);
    }
  cairo_restore (cr);
}
