/* Feet, moves, families of lines.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "tb-lines.h"

#define STANDARD_SLIDE_BOARD 30.5

const TbMove tb_moves[] = {
  { N_ ("Parallel, 1 and 1"),
    N_ ("Feet and target one board: the same angle on fresh oil beside the old line."), 1, 1, FALSE },
  { N_ ("Feet 2, target 1"),
    N_ ("The usual answer when the ball hooks too soon: a little more angle, the same breakpoint."), 2, 1,
    FALSE },
  { N_ ("Feet 3, target 2"), N_ ("For a lane that changes fast: deeper, and almost the same angle."), 3, 2,
    FALSE },
  { N_ ("Feet 1, target stays"),
    N_ ("A small correction: a board at the foul line about the target is three at the pins."), 1, 0, FALSE },
  { N_ ("Feet 2 about the target"),
    N_ ("3 : 1 : 2: two boards at the stance are one at the foul line and three at the pins, the other way."),
    2, 0, TRUE },
  { NULL, NULL, 0, 0, FALSE },
};

TbStance
tb_stance_default (void)
{
  return (TbStance){ .slide_board = STANDARD_SLIDE_BOARD, .drift = 0, .offset = TB_STANCE_OFFSET };
}

double
tb_stance_laydown_board (const TbStance *stance)
{
  return stance->slide_board + stance->drift - stance->offset;
}

TbStance
tb_stance_for_laydown (const TbStance *stance, double laydown_board)
{
  TbStance moved = *stance;

  moved.slide_board = laydown_board - stance->drift + stance->offset;
  return moved;
}

static double
moved_x (double x, double boards)
{
  double board = CLAMP (tb_board_from_x (x) + boards, 1, TB_LANE_BOARDS);

  return boards == 0 ? x : tb_x_from_board (board);
}

TbDelivery
tb_move_delivery (const TbDelivery *delivery, const TbMove *move, int sign)
{
  TbDelivery moved = *delivery;
  double at_line = move->pivot ? 0.5 * move->feet : move->feet;

  moved.laydown = moved_x (delivery->laydown, sign * at_line);
  moved.aim = moved_x (delivery->aim, sign * move->target);
  return moved;
}

/* Similar triangles about the target: the pins are (60 − 15)/15 as far behind it as the line is before it. */
TbPivot
tb_pivot (double boards_at_pins)
{
  TbPivot pivot = { .at_pins = boards_at_pins };

  pivot.at_line = -boards_at_pins * TB_ARROWS_Y / (TB_HEAD_PIN_Y - TB_ARROWS_Y);
  pivot.at_stance = pivot.at_line * (TB_ARROWS_Y + TB_STANCE_BEHIND) / TB_ARROWS_Y;
  return pivot;
}

static TbRun *
family_run (TbSetup *setup, double boards, gboolean parallel)
{
  TbMove move = { .feet = parallel ? boards : 0, .target = boards };
  TbShot shot = setup->shot;
  g_autoptr (TbSetup) missed = NULL;

  shot.delivery = tb_move_delivery (&setup->shot.delivery, &move, 1);
  missed = tb_setup_with_shot (setup, &shot);
  return tb_run_new_edgeless (missed);
}

TbFamily *
tb_family_new (TbSetup *setup, guint each_side, double spacing, gboolean parallel)
{
  TbFamily *family = g_new0 (TbFamily, 1);

  family->count = 2 * each_side;
  family->boards = g_new (double, MAX (family->count, 1));
  family->runs = g_new (TbRun *, MAX (family->count, 1));
  for (guint i = 0; i < family->count; i++)
    {
      double boards = i < each_side ? i - (double)each_side : i - (double)each_side + 1;

      family->boards[i] = spacing * boards;
      family->runs[i] = family_run (setup, family->boards[i], parallel);
    }
  return family;
}

void
tb_family_free (TbFamily *family)
{
  for (guint i = 0; i < family->count; i++)
    tb_run_unref (family->runs[i]);
  g_free (family->boards);
  g_free (family->runs);
  g_free (family);
}
