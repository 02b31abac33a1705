/* What moves on a drawn lane, as nodes.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "tb-lane-view.h"
#include "tb-picture.h"

G_BEGIN_DECLS

/* A node of whole pixels around a place, px, to draw with. Destroy it when done. */
cairo_t *tb_snapshot_append_box (GtkSnapshot *snapshot, const cairo_rectangle_t *place);
/* The ball of one run at the session's time; path may be NULL. */
void tb_snapshot_append_ball (GtkSnapshot *snapshot,
                              TbPicture *picture,
                              const TbLaneScene *scene,
                              const TbPath *path);

G_END_DECLS
