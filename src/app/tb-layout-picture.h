/* The layout of the ball of "after": pin, PAP and mass bias are dragged where they are wanted; anything else
 * turns the ball. The keyboard's way is the sliders beside it.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "tb-layout-view.h"
#include "tb-picture.h"

G_BEGIN_DECLS

#define TB_TYPE_LAYOUT_PICTURE (tb_layout_picture_get_type ())
G_DECLARE_FINAL_TYPE (TbLayoutPicture, tb_layout_picture, TB, LAYOUT_PICTURE, TbPicture)

/* Faces grip and PAP again. */
void tb_layout_picture_face (TbLayoutPicture *self);
/* For tests: what a drag of a mark to a point (px) does. */
void tb_layout_picture_move (TbLayoutPicture *self, TbLayoutMark mark, double x, double y);

G_END_DECLS
