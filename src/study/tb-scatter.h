/* How far a bowler's shots scatter about the planned one, and how the misses go together.
 *
 * Nobody has measured such a spread in public part by part: the sizes are assumed, and held to the one
 * published figure, a standard deviation of 1.45 to 1.6 boards at 37 ft for skilled bowlers (US Bowler,
 * winter 2010).
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "tb-chance.h"
#include "tb-core.h"

G_BEGIN_DECLS

typedef enum TbScatterPart
{
  TB_SCATTER_LAYDOWN,
  TB_SCATTER_AIM,
  TB_SCATTER_SPEED,
  TB_SCATTER_REV_RATE,
  TB_SCATTER_ROTATION,
  TB_N_SCATTER_PARTS
} TbScatterPart;

typedef struct TbScatter
{
  double deviation[TB_N_SCATTER_PARTS]; /* standard deviations, core units */
  /* Of two parts, −1 to 1; only correlation[a][b] with a > b is read. */
  double correlation[TB_N_SCATTER_PARTS][TB_N_SCATTER_PARTS];
} TbScatter;

typedef enum TbSkill
{
  TB_SKILL_PRACTISED, /* holds the published spread */
  TB_SKILL_LEAGUE,
  TB_SKILL_NEW,
  TB_N_SKILLS
} TbSkill;
const char *tb_skill_name (TbSkill skill);  /* in files */
const char *tb_skill_label (TbSkill skill); /* for people, untranslated */
/* What such a bowler's scatter is taken to be; assumed. */
TbScatter tb_scatter_typical (TbSkill skill);
/* The field of the delivery that a part of the scatter moves. */
const TbField *tb_scatter_field (TbScatterPart part);

/* A scatter made ready for drawing. */
typedef struct TbScatterDraw
{
  double factor[TB_N_SCATTER_PARTS]
               [TB_N_SCATTER_PARTS]; /* lower triangle: deviations times the root of the correlations */
} TbScatterDraw;
/* FALSE if the correlations cannot all hold, or a deviation is negative. */
gboolean tb_scatter_prepare (const TbScatter *scatter, TbScatterDraw *draw);
/* Moves a delivery as one shot's draws have it; what would leave a field's range stops at its end. */
void tb_scatter_move (const TbScatterDraw *draw, TbChance chance, TbDelivery *delivery);

G_END_DECLS
