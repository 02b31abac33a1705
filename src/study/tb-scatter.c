/* Correlated normal draws: the Cholesky factor of the correlations times independent ones.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "tb-scatter.h"

#include <math.h>

/* Standard deviations of a practised bowler, in boards, boards, mph, rpm and degrees: assumed. */
static const double practised[TB_N_SCATTER_PARTS] = { 0.6, 0.95, 0.3, 8, 2 };
/* How much wider the others scatter: assumed. */
static const double skill_factor[TB_N_SKILLS] = { 1, 1.7, 3 };
/* Who slides too far left also looks too far left, more often than not; a faster swing brings a few more
 * revs; a hand further around the ball brings fewer. Assumed, the signs common practice. */
static const struct
{
  TbScatterPart a, b;
  double correlation;
} typical_correlations[] = {
  { TB_SCATTER_AIM, TB_SCATTER_LAYDOWN, 0.5 },
  { TB_SCATTER_REV_RATE, TB_SCATTER_SPEED, 0.3 },
  { TB_SCATTER_ROTATION, TB_SCATTER_REV_RATE, -0.2 },
};

static const char *const field_names[TB_N_SCATTER_PARTS]
    = { "laydown_board", "aim_board", "speed_mph", "rev_rate_rpm", "axis_rotation_deg" };

const char *
tb_skill_name (TbSkill skill)
{
  static const char *const names[TB_N_SKILLS] = { "practised", "league", "new" };

  return names[skill];
}

const char *
tb_skill_label (TbSkill skill)
{
  static const char *const labels[TB_N_SKILLS] = { N_ ("Practised"), N_ ("League"), N_ ("New to the game") };

  return labels[skill];
}

const TbField *
tb_scatter_field (TbScatterPart part)
{
  return tb_field_find (TB_GROUP_DELIVERY, field_names[part]);
}

/* A difference in the field's unit, in core's. */
static double
si_difference (const TbField *field, double difference)
{
  return fabs (field->to_si (difference) - field->to_si (0));
}

TbScatter
tb_scatter_typical (TbSkill skill)
{
  TbScatter scatter = { 0 };

  for (TbScatterPart part = 0; part < TB_N_SCATTER_PARTS; part++)
    scatter.deviation[part] = si_difference (tb_scatter_field (part), skill_factor[skill] * practised[part]);
  for (guint i = 0; i < G_N_ELEMENTS (typical_correlations); i++)
    scatter.correlation[typical_correlations[i].a][typical_correlations[i].b]
        = typical_correlations[i].correlation;
  return scatter;
}

static double
correlation (const TbScatter *scatter, int a, int b)
{
  return a == b ? 1 : a > b ? scatter->correlation[a][b] : scatter->correlation[b][a];
}

/* One row of the factor; FALSE if nothing is left for its own part, or less. */
static gboolean
factor_row (const TbScatter *scatter, int row, double factor[TB_N_SCATTER_PARTS][TB_N_SCATTER_PARTS])
{
  double left;

  for (int column = 0; column <= row; column++)
    {
      left = correlation (scatter, row, column);
      for (int k = 0; k < column; k++)
        left -= factor[row][k] * factor[column][k];
      if (column < row)
        factor[row][column] = left / factor[column][column];
      else if (left > 0)
        factor[row][row] = sqrt (left);
      else
        return FALSE;
    }
  return TRUE;
}

gboolean
tb_scatter_prepare (const TbScatter *scatter, TbScatterDraw *draw)
{
  *draw = (TbScatterDraw){ 0 };
  for (int row = 0; row < TB_N_SCATTER_PARTS; row++)
    if (!(scatter->deviation[row] >= 0) || !factor_row (scatter, row, draw->factor))
      return FALSE;
  for (int row = 0; row < TB_N_SCATTER_PARTS; row++)
    for (int column = 0; column <= row; column++)
      draw->factor[row][column] *= scatter->deviation[row];
  return TRUE;
}

static void
move_field (const TbField *field, double by, TbDelivery *delivery)
{
  double *value = (double *)(gpointer)((char *)delivery + field->offset);
  double a = field->to_si (field->min), b = field->to_si (field->max);

  *value = CLAMP (*value + by, MIN (a, b), MAX (a, b));
}

void
tb_scatter_move (const TbScatterDraw *draw, TbChance chance, TbDelivery *delivery)
{
  double normal[TB_N_SCATTER_PARTS];

  for (guint i = 0; i < TB_N_SCATTER_PARTS; i++)
    normal[i] = tb_chance_normal (chance, i);
  for (TbScatterPart row = 0; row < TB_N_SCATTER_PARTS; row++)
    {
      double by = 0;

      for (guint column = 0; column <= row; column++)
        by += draw->factor[row][column] * normal[column];
      move_field (tb_scatter_field (row), by, delivery);
    }
}
