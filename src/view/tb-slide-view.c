/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include <math.h>
#include "tb-draw.h"
#include "tb-slide-layout.h"

/* The caution's mark: a triangle so high, em, with a line of this width in it. */
#define MARK_HEIGHT 0.95
#define MARK_LINE 0.11

static void
begin (TbCanvas *canvas,
       TbSlideLayout *layout,
       cairo_t *cr,
       double width,
       double height,
       const TbSlide *slide)
{
  tb_canvas_init (canvas, cr, width, height, &slide->theme);
  tb_slide_layout_init (layout, canvas, slide);
  canvas->theme.text_size = layout->em;
}

static void
draw_block (TbCanvas *canvas, const char *text, const cairo_rectangle_t *box, double size, TbColor color)
{
  TbLabel label = { .text = text,
                    .x = box->x,
                    .y = box->y,
                    .size = size,
                    .wrap = box->width,
                    .color = color,
                    .bold = size > canvas->em };

  if (box->height > 0)
    tb_canvas_label (canvas, &label);
}

static void
draw_caution (TbCanvas *canvas, const TbSlideLayout *layout, const char *text)
{
  const cairo_rectangle_t *box = &layout->caution;
  cairo_t *cr = canvas->cr;
  double em = layout->em, high = MARK_HEIGHT * em, half = 0.58 * high;
  double middle = box->x - 1.5 * em + half, top = box->y + 0.12 * em;

  if (box->height <= 0)
    return;
  tb_draw_color (cr, canvas->theme.warning);
  cairo_move_to (cr, middle, top);
  cairo_line_to (cr, middle + half, top + high);
  cairo_line_to (cr, middle - half, top + high);
  cairo_close_path (cr);
  cairo_fill (cr);
  tb_draw_color (cr, canvas->theme.background);
  cairo_set_line_width (cr, MARK_LINE * em);
  cairo_set_line_cap (cr, CAIRO_LINE_CAP_ROUND);
  tb_draw_line (cr, (TbPoint){ middle, top + 0.38 * high }, (TbPoint){ middle, top + 0.66 * high });
  tb_draw_line (cr, (TbPoint){ middle, top + 0.84 * high }, (TbPoint){ middle, top + 0.84 * high });
  draw_block (canvas, text, box, em, canvas->theme.warning);
}

void
tb_slide_view_draw (cairo_t *cr, double width, double height, const TbSlide *slide)
{
  g_auto (TbCanvas) canvas = { 0 };
  TbSlideLayout layout;

  cairo_save (cr);
  begin (&canvas, &layout, cr, width, height, slide);
  tb_canvas_fill_background (&canvas);
  if (tb_canvas_has_room (&canvas))
    {
      draw_block (&canvas, slide->headline, &layout.headline, TB_SLIDE_HEADLINE * layout.em,
                  slide->theme.text);
      draw_block (&canvas, slide->body, &layout.body, layout.em, slide->theme.text);
      tb_slide_items_draw (&canvas, &layout, slide);
      draw_caution (&canvas, &layout, slide->caution);
    }
  cairo_restore (cr);
}

int
tb_slide_view_item_at (double width, double height, const TbSlide *slide, double x, double y)
{
  g_auto (TbCanvas) canvas = { 0 };
  TbSlideLayout layout;

  begin (&canvas, &layout, NULL, width, height, slide);
  for (guint i = 0; i < slide->n_items && tb_canvas_has_room (&canvas); i++)
    {
      cairo_rectangle_t box = tb_slide_layout_item (&layout, i);

      if (x >= box.x && x < box.x + box.width && y >= box.y && y < box.y + box.height)
        return (int) i;
    }
  return -1;
}

double
tb_slide_view_text_size (double width, double height, const TbSlide *slide)
{
  g_auto (TbCanvas) canvas = { 0 };
  TbSlideLayout layout;

  begin (&canvas, &layout, NULL, width, height, slide);
  return layout.em;
}
