/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include "tb-draw.h"
#include "tb-film-lane.h"
#include "tb-lane-film.h"

/* Distances, em. */
#define LEFT 2.6
#define RIGHT 0.8
#define FEET 1.5
#define TICK 0.25
/* Samples of the film for a cell of the grid, each way. */
#define FINE 2
#define BOARD_STEP 10
#define FEET_STEP 10

cairo_rectangle_t
tb_film_lane_plot (const TbCanvas *canvas, const cairo_rectangle_t *box, gboolean show_feet)
{
  double em = canvas->em;

  return (cairo_rectangle_t){ box->x + LEFT * em, box->y, box->width - (LEFT + RIGHT) * em,
                              box->height - (show_feet ? FEET * em : 0) };
}

static guint32
pixel (TbColor color)
{
  return (guint32)lround (255 * color.red) << 16 | (guint32)lround (255 * color.green) << 8
         | (guint32)lround (255 * color.blue);
}

static cairo_surface_t *
film_image (const TbTheme *theme, const TbFilmLane *lane)
{
  int along = (int)TB_HEAD_PIN_FT * TB_OIL_ROWS_PER_FOOT * FINE, across = TB_OIL_COLUMNS * FINE;
  cairo_surface_t *image = cairo_image_surface_create (CAIRO_FORMAT_RGB24, along, across);
  guchar *data = cairo_image_surface_get_data (image);
  int stride = cairo_image_surface_get_stride (image);

  for (int j = 0; j < across; j++)
    for (int i = 0; i < along; i++)
      {
        double x = (j + 0.5) * TB_BOARD_WIDTH / FINE - TB_LANE_HALF_WIDTH,
               y = (i + 0.5) * TB_OIL_ROW_LENGTH / FINE;
        double tint = tb_film_tint (lane->scale * tb_oil_film (lane->oil, x, y), lane->full);

        ((guint32 *)(gpointer)(data + j * stride))[i] = pixel (tb_film_color (theme, tint));
      }
  cairo_surface_mark_dirty (image);
  return image;
}

static void
draw_film (TbCanvas *canvas, const cairo_rectangle_t *plot, const TbFilmLane *lane)
{
  cairo_surface_t *image = film_image (&canvas->theme, lane);

  tb_draw_image (canvas->cr, image, plot, plot);
  cairo_surface_destroy (image);
}

static TbPoint
place (const cairo_rectangle_t *plot, double x, double y)
{
  return (TbPoint){ plot->x + plot->width * y / TB_HEAD_PIN_Y,
                    plot->y + plot->height * (x + TB_LANE_HALF_WIDTH) / (2 * TB_LANE_HALF_WIDTH) };
}

static void
draw_numbers (TbCanvas *canvas, const cairo_rectangle_t *plot, const TbFilmLane *lane)
{
  double em = canvas->em;
  TbLabel label = { .color = canvas->theme.quiet, .size = 0.9 * em };

  for (int board = BOARD_STEP; board < TB_LANE_BOARDS; board += BOARD_STEP)
    {
      g_autofree char *text = g_strdup_printf ("%d", board);
      double x = tb_x_from_board (board);

      label.text = text;
      label.x = plot->x - 0.5 * em;
      label.y = place (plot, lane->mirrored ? -x : x, 0).y;
      label.across = TB_ALIGN_END;
      label.down = TB_ALIGN_MIDDLE;
      tb_canvas_try_label (canvas, &label);
    }
  for (int feet = 0; lane->show_feet && feet <= TB_HEAD_PIN_FT; feet += FEET_STEP)
    {
      g_autofree char *text = g_strdup_printf (feet == TB_HEAD_PIN_FT ? _ ("%d ft") : "%d", feet);

      label.text = text;
      label.x = place (plot, 0, tb_metres_from_ft (feet)).x;
      label.y = plot->y + plot->height + TICK * em;
      label.across = feet == TB_HEAD_PIN_FT ? TB_ALIGN_END : TB_ALIGN_MIDDLE;
      label.down = TB_ALIGN_START;
      tb_canvas_try_label (canvas, &label);
    }
}

/* Arrows as small marks, to know where one is. */
static void
draw_arrows (TbCanvas *canvas, const cairo_rectangle_t *plot)
{
  tb_draw_color (canvas->cr, canvas->theme.mark);
  for (int i = 0; i < TB_N_ARROWS; i++)
    {
      TbPoint tip = place (plot, tb_lane_arrows[i].x, tb_lane_arrows[i].y);

      tb_draw_arrow_head (canvas->cr, tip, (TbPoint){ tip.x - 1, tip.y }, 0.6 * canvas->em);
    }
}

static void
draw_cursors (TbCanvas *canvas, const cairo_rectangle_t *plot, const TbFilmLane *lane)
{
  TbPoint at = place (plot, lane->cursor_x, lane->cursor_y);

  tb_draw_color (canvas->cr, tb_color_with_alpha (canvas->theme.text, 0.45));
  cairo_set_line_width (canvas->cr, 1);
  if (!isnan (lane->cursor_y))
    tb_draw_line (canvas->cr, (TbPoint){ tb_draw_crisp (at.x), plot->y },
                  (TbPoint){ tb_draw_crisp (at.x), plot->y + plot->height });
  if (!isnan (lane->cursor_x))
    tb_draw_line (canvas->cr, (TbPoint){ plot->x, tb_draw_crisp (at.y) },
                  (TbPoint){ plot->x + plot->width, tb_draw_crisp (at.y) });
}

void
tb_film_lane_draw (TbCanvas *canvas, const cairo_rectangle_t *box, const TbFilmLane *lane)
{
  cairo_rectangle_t plot = tb_film_lane_plot (canvas, box, lane->show_feet);

  if (plot.width < canvas->em || plot.height < canvas->em)
    return;
  draw_film (canvas, &plot, lane);
  draw_arrows (canvas, &plot);
  draw_cursors (canvas, &plot, lane);
  draw_numbers (canvas, &plot, lane);
  tb_draw_color (canvas->cr, canvas->theme.quiet);
  cairo_set_line_width (canvas->cr, 1);
  cairo_rectangle (canvas->cr, floor (plot.x) + 0.5, floor (plot.y) + 0.5, floor (plot.width),
                   floor (plot.height));
  cairo_stroke (canvas->cr);
}
