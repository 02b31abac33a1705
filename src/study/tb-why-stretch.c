/* The split by stretch of lane.
 *
 * With v and x the speed and the way across the launch line (both 0 at release), a the acceleration across it
 * and T the time at the pins, x(T) = ∫ a (T − t) dt, and the part of that integral between two moments is, by
 * parts and exactly, the change of v (T − t) plus the change of x. Jumps of v at a landing are in it.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "tb-why-private.h"

#include <math.h>

typedef struct Across
{
  double way;   /* m across the launch line, towards higher boards */
  double speed; /* m/s */
} Across;

static double
launch_slope (const TbRun *run)
{
  const TbDelivery *delivery = &run->setup->shot.delivery;

  return (delivery->aim - delivery->laydown) / TB_ARROWS_Y;
}

static Across
across_at (const TbRun *run, const TbSample *sample)
{
  double slope = launch_slope (run), length = sqrt (1 + slope * slope);
  double line = tb_delivery_launch_x (&run->setup->shot.delivery, sample->position.y);

  return (Across){ -(sample->position.x - line) / length,
                   -(sample->velocity.x - slope * sample->velocity.y) / length };
}

/* What is still to come of x (T) once the ball is here: the antiderivative of a (T − t). */
static double
reach_at (const TbRun *run, const TbSample *sample)
{
  Across across = across_at (run, sample);

  return across.way + across.speed * (tb_path_duration (&run->path) - sample->time);
}

void
tb_run_stretch (const TbRun *run, double from_ft, double to_ft, double part[2])
{
  TbSample from, to;
  double slope = launch_slope (run);

  part[TB_WHY_BOARD] = part[TB_WHY_ANGLE] = NAN;
  if (!tb_path_at_distance (&run->path, tb_metres_from_ft (from_ft), &from)
      || !tb_path_at_distance (&run->path, tb_metres_from_ft (to_ft), &to))
    return;
  /* The pins stand square to the lane, not to the launch line. */
  part[TB_WHY_BOARD]
      = (reach_at (run, &to) - reach_at (run, &from)) * sqrt (1 + slope * slope) / TB_BOARD_WIDTH;
  part[TB_WHY_ANGLE] = tb_deg_from_radians (tb_sample_heading (&to) - tb_sample_heading (&from));
}

void
tb_run_launch (const TbRun *run, double part[2])
{
  const TbDelivery *delivery = &run->setup->shot.delivery;

  part[TB_WHY_BOARD] = tb_board_from_x (tb_delivery_launch_x (delivery, TB_HEAD_PIN_Y));
  part[TB_WHY_ANGLE] = tb_deg_from_radians (tb_delivery_launch_heading (delivery));
}

static void
add_stretch (TbWhy *why, double from_ft, double to_ft)
{
  TbWhyStretch *stretch = &why->stretch[why->n_stretches++];
  double before[2], after[2];

  stretch->from_ft = from_ft;
  stretch->to_ft = to_ft;
  tb_run_stretch (why->run[TB_SIDE_BEFORE], from_ft, to_ft, before);
  tb_run_stretch (why->run[TB_SIDE_AFTER], from_ft, to_ft, after);
  for (int i = 0; i < 2; i++)
    stretch->part[i] = after[i] - before[i];
}

void
why_split_by_stretch (TbWhy *why, double length_ft)
{
  double length = CLAMP (length_ft, TB_HEAD_PIN_FT / TB_WHY_MAX_STRETCHES, TB_HEAD_PIN_FT);
  guint count = (guint) ceil (TB_HEAD_PIN_FT / length - 1e-9);
  double before[2], after[2];

  tb_run_launch (why->run[TB_SIDE_BEFORE], before);
  tb_run_launch (why->run[TB_SIDE_AFTER], after);
  for (int i = 0; i < 2; i++)
    why->launch_part[i] = after[i] - before[i];
  why->n_stretches = 0;
  for (guint i = 0; i < count; i++)
    add_stretch (why, i * length, MIN ((i + 1) * length, TB_HEAD_PIN_FT));
}
