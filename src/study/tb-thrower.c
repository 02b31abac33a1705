/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "tb-thrower.h"

#include <math.h>

TbThrower *
tb_thrower_new (void)
{
  TbThrower *self = g_new0 (TbThrower, 1);

  self->workspace = g_malloc (tb_workspace_size ());
  return self;
}

void
tb_thrower_free (TbThrower *self)
{
  g_free (self->workspace);
  g_free (self);
}

static void
clear_measures (TbMeasures *measures)
{
  double *number = (double *) measures;

  for (gsize i = 0; i < sizeof *measures / sizeof *number; i++)
    number[i] = NAN;
}

TbStatus
tb_thrower_throw (TbThrower *self, const TbShot *shot, TbMeasures *measures)
{
  TbShot edgeless = *shot;
  TbPath path = { 0 };
  TbStatus status;

  edgeless.options.edgeless = true;
  status = tb_shot_run (&edgeless, self->workspace, &path, NULL);
  self->throws++;
  if (status == TB_OK)
    *measures = path.measures;
  else
    clear_measures (measures);
  return status;
}

double
tb_breakpoint_ft_held (const TbMeasures *measures)
{
  if (isfinite (measures->breakpoint_y) || isnan (measures->angle_at_pins))
    return tb_ft_from_metres (measures->breakpoint_y);
  return measures->angle_at_pins < 0 ? TB_HEAD_PIN_FT : 0;
}

double
tb_roll_start_ft_held (const TbMeasures *measures)
{
  if (isfinite (measures->roll_start_y) || isnan (measures->angle_at_pins))
    return tb_ft_from_metres (measures->roll_start_y);
  return TB_NO_ROLL_FT;
}
