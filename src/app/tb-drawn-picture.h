/* A picture whose page draws it: what a page has computed, not what the session has.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "tb-picture.h"

G_BEGIN_DECLS

#define TB_TYPE_DRAWN_PICTURE (tb_drawn_picture_get_type ())
G_DECLARE_FINAL_TYPE (TbDrawnPicture, tb_drawn_picture, TB, DRAWN_PICTURE, TbPicture)

typedef void (*TbDrawnFunc) (cairo_t *cr, double width, double height, const TbTheme *theme, gpointer page);

/* name is told to assistive technology, translated. The page must outlive the picture, or clear it. */
void tb_drawn_picture_set_draw (TbDrawnPicture *self, const char *name, TbDrawnFunc draw, gpointer page);
/* What is drawn is another, and so is what it shows, in words. */
void tb_drawn_picture_refresh (TbDrawnPicture *self, const char *description);

G_END_DECLS
