/* A throw on the lane lying on its side, for a room: one run or both, and their balls.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "tb-lane-view.h"
#include "tb-picture.h"

G_BEGIN_DECLS

typedef enum TbStripRuns
{
  TB_STRIP_BEFORE,
  TB_STRIP_AFTER,
  TB_STRIP_BOTH
} TbStripRuns;

#define TB_TYPE_STRIP_PICTURE (tb_strip_picture_get_type ())
G_DECLARE_FINAL_TYPE (TbStripPicture, tb_strip_picture, TB, STRIP_PICTURE, TbPicture)

void tb_strip_picture_set_runs (TbStripPicture *self, TbStripRuns runs);
/* Size of its type, px. */
void tb_strip_picture_set_text_size (TbStripPicture *self, double size);
/* Where the ball of a side is now, px; FALSE where it is not shown. For tests. */
gboolean tb_strip_picture_get_ball (TbStripPicture *self, TbSide side, double *x, double *y);

G_END_DECLS
