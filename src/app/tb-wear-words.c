/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "tb-wear-words.h"

#include <glib/gi18n-lib.h>

#include "tb-pattern-figures.h"
#include "tb-quantity.h"

/* The heads and the track: the first 20 ft of the five boards that have lost most. */
#define HEADS_FT 20.0
#define TRACK_BOARDS 5

char *
tb_wear_games_text (double games)
{
  g_autofree char *number = NULL;

  if (games <= 0)
    return g_strdup (_ ("fresh"));
  number = tb_number_format (games, games == floor (games) ? 0 : 1);
  /* Translators: %s is a number, perhaps with a half. */
  return g_strdup_printf (_ ("after %s games"), number);
}

/* What is left of the heads' oil on the boards that have lost most, %; the first of those, from the right. */
static double
left_in_track (const TbOil *fresh, const TbOil *worn, int *board)
{
  double far = tb_metres_from_ft (HEADS_FT), least = 1;

  *board = 1;
  for (int column = 0; column + TRACK_BOARDS <= TB_LANE_BOARDS; column++)
    {
      double before = tb_oil_volume_within (fresh, column, column + TRACK_BOARDS - 1, 0, far);
      double after = tb_oil_volume_within (worn, column, column + TRACK_BOARDS - 1, 0, far);

      if (before > 0 && after / before < least)
        {
          least = after / before;
          *board = column + 1;
        }
    }
  return 100 * least;
}

char *
tb_wear_numbers_text (const TbSetup *setup)
{
  const TbOil *fresh = &setup->pattern->oil, *worn = setup->shot.lane.oil;
  double scale = setup->shot.lane.pattern_scale, all = TB_OIL_ROWS * TB_OIL_ROW_LENGTH;
  double past = tb_pattern_figures (setup->pattern).length, carried;
  int board;
  double left = left_in_track (fresh, worn, &board);

  if (setup->shot.delivery.hand == TB_HAND_LEFT)
    board = TB_LANE_BOARDS + 2 - TRACK_BOARDS - board;
  if (!setup->worn)
    return g_strdup_printf (_ ("Fresh: %.1f mL."), tb_ml_from_cubic_metres (scale * tb_oil_volume (fresh)));
  carried = tb_oil_volume_within (worn, 0, TB_OIL_COLUMNS - 1, past, all)
            - tb_oil_volume_within (fresh, 0, TB_OIL_COLUMNS - 1, past, all);
  return g_strdup_printf (_ ("%u shots. %.1f of %.1f mL are left on the lane, %.1f mL went away with the "
                             "balls, %.2f mL lie past the pattern’s "
                             "end. Of the heads’ oil %.0f %% is left on boards %d to %d, which lost most."),
                          setup->worn->shots, tb_ml_from_cubic_metres (scale * tb_oil_volume (worn)),
                          tb_ml_from_cubic_metres (scale * tb_oil_volume (fresh)),
                          tb_ml_from_cubic_metres (setup->worn->carried),
                          tb_ml_from_cubic_metres (scale * carried), left, board, board + TRACK_BOARDS - 1);
}

static char *
move_text (const TbWearLife *life)
{
  g_autofree char *feet = tb_number_format_signed (life->feet, 0),
                  *target = tb_number_format_signed (life->target, 1);
  g_autofree char *board = tb_number_format (tb_board_from_x (life->moved_x_at_pins), 1);

  if (!life->has_move)
    return g_strdup (
        _ ("No move of feet and target alone brings it back: another ball, surface or release is needed."));
  /* Translators: boards with their signs, then a board. */
  return g_strdup_printf (_ ("Feet %s and target %s boards bring it back to board %s."), feet, target, board);
}

char *
tb_wear_life_text (const TbWearLife *life)
{
  g_autofree char *move = NULL;

  if (isnan (life->lost))
    return g_strdup_printf (_ ("This line finds the pocket on the fresh lane and after every game up to %u."),
                            life->count - 1);
  move = move_text (life);
  if (isnan (life->last_good))
    return g_strdup_printf (_ ("This line does not find the pocket on the fresh lane. %s"), move);
  return g_strdup_printf (
      _ ("This line finds the pocket up to %.0f games; after %.0f the ball is at board %.1f. %s"),
      life->last_good, life->lost, tb_board_from_x (life->points[(int)life->lost].x_at_pins), move);
}
