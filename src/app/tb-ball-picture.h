/* The ball of "after" as it turns.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "tb-ball-view.h"
#include "tb-picture.h"

G_BEGIN_DECLS

#define TB_TYPE_BALL_PICTURE (tb_ball_picture_get_type ())
G_DECLARE_FINAL_TYPE (TbBallPicture, tb_ball_picture, TB, BALL_PICTURE, TbPicture)

void tb_ball_picture_set_eye (TbBallPicture *self, TbBallEye eye);
TbBallEye tb_ball_picture_get_eye (TbBallPicture *self);

G_END_DECLS
