/* The release from the side, both runs.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "tb-loft-view.h"
#include "tb-picture.h"

G_BEGIN_DECLS

#define TB_TYPE_LOFT_PICTURE (tb_loft_picture_get_type ())
G_DECLARE_FINAL_TYPE (TbLoftPicture, tb_loft_picture, TB, LOFT_PICTURE, TbPicture)

G_END_DECLS
