/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include "tb-room-view-private.h"

static void
draw_legend_bar (TbRoomDrawing *self, const cairo_rectangle_t *bar, const TbPocketBoards *pocket)
{
  double low = pocket->low - TB_ROOM_TINT_REACH, high = pocket->high + TB_ROOM_TINT_REACH;
  int columns = (int)ceil (bar->width);

  for (int i = 0; i < columns; i++)
    {
      tb_draw_color (self->canvas->cr,
                     tb_room_color (&self->canvas->theme, pocket, low + (high - low) * (i + 0.5) / columns));
      cairo_rectangle (self->canvas->cr, bar->x + i, bar->y, MIN (1.0, bar->width - i), bar->height);
      cairo_fill (self->canvas->cr);
    }
  for (int i = -3; i <= 3; i++)
    {
      double board
          = i < 0 ? pocket->low + (i + 1) * TB_ROOM_LINE_SPACING : pocket->high + i * TB_ROOM_LINE_SPACING;
      g_autofree char *text = g_strdup_printf ("%.4g", board);
      TbLabel label = { .text = text,
                        .x = bar->x + bar->width * (board - low) / (high - low),
                        .y = bar->y + bar->height + 0.15 * self->canvas->em,
                        .across = TB_ALIGN_MIDDLE,
                        .color = self->canvas->theme.quiet,
                        .size = 0.92 * self->canvas->em };

      tb_canvas_try_label (self->canvas, &label);
    }
}

/* After the bar: what hatching means. Returns the width it takes. */
static double
legend_hatch (TbRoomDrawing *self, const cairo_rectangle_t *legend, gboolean draw)
{
  TbCanvas *canvas = self->canvas;
  double em = canvas->em, bar = TB_ROOM_LEGEND_BAR * em;
  TbLabel label = { .text = _ ("in the gutter"), .color = canvas->theme.quiet, .down = TB_ALIGN_MIDDLE };
  double width = tb_canvas_measure (canvas, &label).width + 2.4 * em;
  cairo_rectangle_t swatch = { legend->x + legend->width - width, legend->y, 1.8 * em, bar };

  if (!draw)
    return width + em;
  cairo_save (canvas->cr);
  tb_draw_rectangle (canvas->cr, &swatch);
  cairo_clip_preserve (canvas->cr);
  tb_draw_color (canvas->cr, tb_color_with_alpha (canvas->theme.rule, 0.5));
  cairo_fill (canvas->cr);
  tb_room_hatch (canvas->cr, &swatch, &canvas->theme);
  cairo_restore (canvas->cr);
  label.x = swatch.x + swatch.width + 0.5 * em;
  label.y = swatch.y + 0.5 * bar;
  tb_canvas_label (canvas, &label);
  return width;
}

void
tb_room_draw_legend (TbRoomDrawing *self)
{
  TbCanvas *canvas = self->canvas;
  const TbRoomMap *map = self->scene->after.map ? self->scene->after.map : self->scene->before.map;
  TbPocketBoards pocket = tb_pocket_boards (&map->setup->shot.assumed);
  double em = canvas->em;
  TbLabel label = { .text = _ ("board at the pins"), .color = canvas->theme.quiet, .down = TB_ALIGN_MIDDLE };
  double title = tb_canvas_measure (canvas, &label).width + em,
         hatch = legend_hatch (self, &self->legend, FALSE);
  cairo_rectangle_t bar = { self->legend.x + title, self->legend.y, self->legend.width - title - hatch,
                            TB_ROOM_LEGEND_BAR * em };

  if (bar.width < 8 * em)
    return;
  label.x = self->legend.x;
  label.y = bar.y + 0.5 * bar.height;
  tb_canvas_label (canvas, &label);
  draw_legend_bar (self, &bar, &pocket);
  legend_hatch (self, &self->legend, TRUE);
}
