/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "lane-support.h"

#include <math.h>

static TbPattern *
profile (double outside_share, double front_units)
{
  const TbOilProfile numbers = { .length = tb_metres_from_ft (40),
                                 .fade = tb_metres_from_ft (2),
                                 .front = tb_film_from_units (front_units),
                                 .back = tb_film_from_units (front_units / 9),
                                 .outside_share = outside_share,
                                 .outside_x = 5.5 * TB_BOARD_WIDTH,
                                 .inside_x = 13.5 * TB_BOARD_WIDTH };

  return tb_pattern_new_profile (NULL, "House", &numbers, NULL);
}

TbPattern *
lane_house (void)
{
  return profile (0.125, 45);
}

/* 31.4 units in front hold the 24.0 mL of the house pattern. */
TbPattern *
lane_flat (void)
{
  return profile (0.9, 31.4);
}

double
lane_board_of (const TbShot *shot)
{
  g_autofree TbWorkspace *workspace = g_malloc (tb_workspace_size ());
  TbShot edgeless = *shot;
  TbPath path = { 0 };

  edgeless.options.edgeless = true;
  if (tb_shot_run (&edgeless, workspace, &path, NULL) != TB_OK)
    return (double)NAN;
  return tb_board_from_x (path.measures.x_at_pins);
}

double
lane_board_at_pins (TbSetup *setup)
{
  return lane_board_of (&setup->shot);
}

/* From the outside line inwards in steps, to the first that crosses the pocket, and then halving. */
TbSetup *
lane_setup (TbPattern *pattern, double laydown_board)
{
  const double pocket = 17.5, step = 0.25;
  TbShot shot = tb_shot_default ();
  double low = laydown_board, high;

  shot.lane.oil = &pattern->oil;
  shot.delivery.laydown = tb_x_from_board (laydown_board);
  for (high = low; low > 1; low -= step)
    {
      shot.delivery.aim = tb_x_from_board (low);
      if (lane_board_of (&shot) < pocket)
        break;
      high = low;
    }
  for (int i = 0; i < 30; i++)
    {
      double middle = 0.5 * (low + high);

      shot.delivery.aim = tb_x_from_board (middle);
      if (lane_board_of (&shot) < pocket)
        low = middle;
      else
        high = middle;
    }
  return tb_setup_new (&shot, pattern);
}

void
lane_near (const char *what, double got, double want, double bound)
{
  g_test_message ("%s: %.9g, wanted %.9g, off by %.3g (bound %.3g)", what, got, want, got - want, bound);
  if (!(fabs (got - want) <= bound))
    g_test_fail_printf ("%s: %.9g, wanted %.9g within %.3g", what, got, want, bound);
}

void
lane_between (const char *what, double got, double low, double high)
{
  g_test_message ("%s: %.9g, wanted %.9g to %.9g", what, got, low, high);
  if (!(got >= low && got <= high))
    g_test_fail_printf ("%s: %.9g, wanted %.9g to %.9g", what, got, low, high);
}
