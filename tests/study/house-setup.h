/* The shot that the tests of balls start from: a league delivery on a house pattern, by numbers of our own.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "tb-setup.h"

/* The house film of the project's description: 40 ft, 45 units falling to a ninth, an eighth of it outside.
 */
static inline TbOilProfile
house_profile (void)
{
  return (TbOilProfile){ .length = tb_metres_from_ft (40),
                         .fade = tb_metres_from_ft (2),
                         .front = tb_film_from_units (45),
                         .back = tb_film_from_units (5),
                         .outside_share = 0.125,
                         .outside_x = 5.5 * TB_BOARD_WIDTH,
                         .inside_x = 13.5 * TB_BOARD_WIDTH };
}

static inline TbPattern *
house_pattern (void)
{
  const TbOilProfile profile = house_profile ();
  TbStatus status;
  TbPattern *pattern = tb_pattern_new_profile ("house", "House", &profile, &status);

  g_assert_cmpint (status, ==, TB_OK);
  return pattern;
}

/* Laid down at 24, aimed at 16.6, the default ball. */
static inline TbSetup *
house_setup (void)
{
  g_autoptr (TbPattern) pattern = house_pattern ();
  TbShot shot = tb_shot_default ();

  shot.lane.oil = &pattern->oil;
  return tb_setup_new (&shot, pattern);
}
