/* The two handles of the launch line on the lane's picture: what holds the keyboard for each, which one the
 * pointer is over or drags, and where they are drawn.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "tb-line-handles.h"
#include "tb-picture.h"

G_BEGIN_DECLS

typedef struct TbLaneGrips
{
  TbPicture *picture; /* that they lie on */
  GtkWidget *grip[TB_N_LINE_HANDLES];
  TbLineHandle hovered, dragged; /* or none */
  double slip;                   /* m across, from the pointer to the middle of what it drags */
} TbLaneGrips;

/* `focus_changed` is told, with the picture, when a handle gets or loses the keyboard. */
void tb_lane_grips_init (TbLaneGrips *self, TbPicture *picture, void (*focus_changed) (gpointer picture));
void tb_lane_grips_clear (TbLaneGrips *self);
/* The one that is dragged, pointed at or focused; or none. */
TbLineHandle tb_lane_grips_get_raised (const TbLaneGrips *self);
/* As they are to be drawn; scene has to outlive it. */
TbLineHandles tb_lane_grips_see (const TbLaneGrips *self, const TbLaneScene *scene);
/* Lets them lie where they are drawn, for who asks where they are. */
void tb_lane_grips_allocate (TbLaneGrips *self, const TbLaneScene *scene);
/* The pointer, px of the picture. Take the one it is on, drag it across the lane; FALSE if it is on none. */
gboolean tb_lane_grips_take (TbLaneGrips *self, const TbLaneScene *scene, double px, double py);
void tb_lane_grips_drag (TbLaneGrips *self, const TbLaneScene *scene, double px, double py);
/* FALSE if none was dragged. */
gboolean tb_lane_grips_let_go (TbLaneGrips *self);

G_END_DECLS
