/* How long a line lasts while the lane wears, and the move that brings it back.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gio/gio.h>
#include "tb-lines.h"

G_BEGIN_DECLS

/* A line after each whole number of games. */
typedef struct TbWearPoint
{
  double games;
  TbStatus status;
  double x_at_pins;     /* m, bowler's frame; edgeless */
  double angle_at_pins; /* rad */
  gboolean in_pocket;
} TbWearPoint;

/* Immutable and counted. */
typedef struct TbWearLife
{
  gatomicrefcount ref_count;
  TbSetup *setup;      /* the line, as it was asked about */
  guint count;         /* of points */
  TbWearPoint *points; /* from fresh on */
  double last_good;  /* games after which the line last finds the pocket without having lost it before; NAN if
                      * it  does not find it on the fresh lane */
  double lost;       /* first whole game after which it does not; NAN if it lasts */
  gboolean has_move; /* a move of feet and target was found that finds the pocket after `lost` games */
  double feet, target;    /* boards, towards higher boards */
  double moved_x_at_pins; /* m */
  TbDelivery moved;
} TbWearLife;

/* Plays `games` games and throws the line after each. NULL if cancelled. */
TbWearLife *tb_wear_life_new (TbSetup *setup, guint games, GCancellable *cancellable);
void tb_wear_life_new_async (TbSetup *setup,
                             guint games,
                             GCancellable *cancellable,
                             GAsyncReadyCallback callback,
                             gpointer user_data);
TbWearLife *tb_wear_life_new_finish (GAsyncResult *result, GError **error);
TbWearLife *tb_wear_life_ref (TbWearLife *life);
void tb_wear_life_unref (TbWearLife *life);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (TbWearLife, tb_wear_life_unref)

G_END_DECLS
