/* Throws for roots and curves: one after the other, without gutters, and only their measures.
 *
 * One for each thread; what it answers depends on the shot alone.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "tb-setup.h"

G_BEGIN_DECLS

typedef struct TbThrower
{
  TbWorkspace *workspace;
  guint throws; /* so far, for those who count */
} TbThrower;

TbThrower *tb_thrower_new (void);
void tb_thrower_free (TbThrower *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (TbThrower, tb_thrower_free)

/* On an error every measure is NAN. */
TbStatus tb_thrower_throw (TbThrower *self, const TbShot *shot, TbMeasures *measures);

/* The breakpoint, ft, as a number that moves without a jump: a ball that still runs outwards at the pins
 * would turn back beyond them and counts as turning at 60 ft; one that never ran outwards has turned at the
 * foul line, 0 ft. NAN only where there was no run. */
double tb_breakpoint_ft_held (const TbMeasures *measures);
/* Likewise where the roll begins, ft; a ball that does not roll counts as rolling from TB_NO_ROLL_FT, beyond
 * the pins. */
#define TB_NO_ROLL_FT 61.0
double tb_roll_start_ft_held (const TbMeasures *measures);

G_END_DECLS
