/* Bars that a difference is made of.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "tb-parts-view.h"
#include "tb-picture.h"

G_BEGIN_DECLS

#define TB_TYPE_PARTS_PICTURE (tb_parts_picture_get_type ())
G_DECLARE_FINAL_TYPE (TbPartsPicture, tb_parts_picture, TB, PARTS_PICTURE, TbPicture)

/* Takes copies. */
void tb_parts_picture_set_parts (TbPartsPicture *self, const TbPart *parts, guint n_parts);
/* Digits after the point; the unit with the space before it, translated. */
void tb_parts_picture_set_unit (TbPartsPicture *self, const char *unit, int digits);

G_END_DECLS
