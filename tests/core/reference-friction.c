/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "reference-ball-oil.h"
#include "reference-internal.h"

/* Cell in front of a place, and the weights of it, the one before and the two after; the place is held to the
 * grid. */
static int
split (double place, int count, double w[4])
{
  double t = fmin (fmax (place, 0.0), count) - 0.5;
  double cell = fmin (floor (t), count - 1);

  ref_spline_weights (t - cell, w);
  return (int)cell;
}

double
ref_model_film (const RefModel *model, double x, double y)
{
  double across[4], along[4], sum = 0.0;
  int column
      = split ((TB_LANE_HALF_WIDTH - (model->mirrored ? -x : x)) / TB_BOARD_WIDTH, TB_OIL_COLUMNS, across);
  int row = split (y / TB_OIL_ROW_LENGTH, TB_OIL_ROWS, along);

  for (int i = 0; i < 4; i++)
    {
      const double *cell = &model->film[row - 1 + i + REF_PAD][column - 1 + REF_PAD];

      sum += along[i]
             * (across[0] * cell[0] + across[1] * cell[1] + across[2] * cell[2] + across[3] * cell[3]);
    }
  return sum * model->oil_scale;
}

double
ref_model_coefficient (const RefModel *model, const double state[REF_SIZE], double load)
{
  double film, share, dry = model->dry_friction;

  if (model->film_scale == 0.0)
    return model->uniform;
  film = ref_model_film (model, state[0], state[1]);
  if (model->ball != NULL)
    film += ref_ball_oil_film (model->ball, state + REF_ATTITUDE);
  if (load != 1.0)
    {
      film /= sqrt (load);
      dry /= cbrt (load);
    }
  share = 1.0 + film / (model->roughness * model->film_scale);
  return model->film_friction + (dry - model->film_friction) / (share * share);
}

/* Cells of the film and their images behind the edges. */
static int
mirror_index (int i, int count)
{
  if (i < 0)
    return -1 - i;
  return i < count ? i : 2 * count - 1 - i;
}

void
ref_copy_film (RefModel *model, const TbFriction *friction)
{
  for (int row = -REF_PAD; row < TB_OIL_ROWS + REF_PAD; row++)
    for (int column = -REF_PAD; column < TB_OIL_COLUMNS + REF_PAD; column++)
      model->film[row + REF_PAD][column + REF_PAD] = tb_oil_cell (
          friction->oil, mirror_index (row, TB_OIL_ROWS), mirror_index (column, TB_OIL_COLUMNS));
  model->oil_scale = friction->oil_scale;
  model->mirrored = friction->mirrored;
  model->film_friction = friction->law.film_friction;
  model->dry_friction = friction->cover.dry_friction;
  model->film_scale = friction->cover.film_scale;
  model->roughness = friction->cover.roughness;
}
