/* Where everything on a slide goes, and how large its type is.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "tb-canvas.h"
#include "tb-slide-view.h"

G_BEGIN_DECLS

/* Size of the headline, of ordinary type. */
#define TB_SLIDE_HEADLINE 1.6

typedef struct TbSlideLayout
{
  double em;                  /* px of ordinary type */
  cairo_rectangle_t headline; /* of no size where there is none; likewise the others */
  cairo_rectangle_t body;
  cairo_rectangle_t heads; /* names of the columns of numbers */
  cairo_rectangle_t items;
  cairo_rectangle_t caution;
  guint columns, rows; /* of items */
} TbSlideLayout;

void tb_slide_layout_init (TbSlideLayout *self, TbCanvas *canvas, const TbSlide *slide);
cairo_rectangle_t tb_slide_layout_item (const TbSlideLayout *self, guint item);
/* Shares of a row's width: where the name ends, and bars or columns begin. */
double tb_slide_layout_name_width (const TbSlideLayout *self, TbSlideKind kind);

/* tb-slide-items.c */
void tb_slide_items_draw (TbCanvas *canvas, const TbSlideLayout *layout, const TbSlide *slide);

G_END_DECLS
