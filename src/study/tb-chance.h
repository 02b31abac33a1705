/* Random draws that are functions of three numbers: a seed, the index of a shot, the index of a draw. Nothing
 * is kept between calls, so the order in which shots are run cannot matter.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* Which draw of which shot. */
typedef struct TbChance
{
  guint64 seed;
  guint64 shot;
} TbChance;

/* 64 bits that look like nothing. */
guint64 tb_chance_bits (TbChance chance, guint64 draw);
/* Even between 0 and 1, both excluded. */
double tb_chance_uniform (TbChance chance, guint64 draw);
/* Normal with mean 0 and standard deviation 1. */
double tb_chance_normal (TbChance chance, guint64 draw);

G_END_DECLS
