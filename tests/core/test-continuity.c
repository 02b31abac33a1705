/* The board at the pins follows every input without a jump.
 *
 * Each slider is swept; where the result moves most between two places, the gap is halved again and again,
 * always keeping the half that moves more. A steep slope goes to nothing that way, a jump stays.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include <string.h>
#include "support.h"

#define PLACES 300
#define HALVINGS 26
#define WORST_KEPT 6
/* A jump smaller than this is within what a shot's step is good for, boards. Measured: 0.0084, where a roll
 * just does or just does not let go once more; most inputs 1e-7 or less. */
#define JUMP_BOUND 0.01

typedef struct Sweep
{
  CheckRun *run;
  TbShot shot;
  const TbField *field;
} Sweep;

static double
board_at (Sweep *sweep, double value)
{
  TbShot shot = sweep->shot;

  check_status (sweep->field->name,
                tb_field_set (sweep->field, tb_shot_group (&shot, sweep->field->group), value), TB_OK);
  if (shot.ball.intermediate_differential > shot.ball.differential)
    shot.ball.intermediate_differential = shot.ball.differential;
  check_status (sweep->field->name, tb_shot_run (&shot, sweep->run->workspace, &sweep->run->path, NULL),
                TB_OK);
  return tb_board_from_x (sweep->run->path.measures.x_at_pins);
}

typedef struct Gap
{
  double low, high, board_low, board_high;
} Gap;

static double
gap_size (const Gap *gap)
{
  return fabs (gap->board_high - gap->board_low);
}

static int
larger_first (gconstpointer a, gconstpointer b)
{
  double x = gap_size (a), y = gap_size (b);

  return (x < y) - (x > y);
}

static double
halve (Sweep *sweep, Gap gap)
{
  for (int i = 0; i < HALVINGS; i++)
    {
      double middle = 0.5 * (gap.low + gap.high), board = board_at (sweep, middle);

      if (fabs (board - gap.board_low) > fabs (gap.board_high - board))
        {
          gap.high = middle;
          gap.board_high = board;
        }
      else
        {
          gap.low = middle;
          gap.board_low = board;
        }
    }
  g_test_message ("  jump of %.5f boards at %s %.9g", gap_size (&gap), sweep->field->name, gap.low);
  return gap_size (&gap);
}

static double
greatest_jump (Sweep *sweep)
{
  const TbField *field = sweep->field;
  Gap gaps[PLACES];
  double last = board_at (sweep, field->min), worst = 0.0;

  for (int i = 0; i < PLACES; i++)
    {
      double low = field->min + i * (field->max - field->min) / PLACES;
      double high = i == PLACES - 1 ? field->max : field->min + (i + 1) * (field->max - field->min) / PLACES;
      double board = board_at (sweep, high);

      gaps[i] = (Gap){ low, high, last, board };
      last = board;
    }
  qsort (gaps, PLACES, sizeof gaps[0], larger_first);
  for (int i = 0; i < WORST_KEPT; i++)
    worst = fmax (worst, halve (sweep, gaps[i]));
  return worst;
}

static void
sweep_all (const TbShot *base)
{
  g_autoptr (CheckRun) run = check_run_new ();

  run->path.capacity = 0;
  for (const TbField *field = tb_field_table; field->name != NULL; field++)
    {
      Sweep sweep = { run, *base, field };

      if (field->kind == TB_FIELD_CHOICE)
        continue;
      check_below (field->name, greatest_jump (&sweep), JUMP_BOUND);
    }
}

static TbShot
edgeless_shot (void)
{
  TbShot shot = check_house_shot ();

  shot.options.edgeless = true;
  return shot;
}

static void
test_default_shot (void)
{
  TbShot shot = edgeless_shot ();

  sweep_all (&shot);
}

static void
test_lofted_asymmetric_shot (void)
{
  TbShot shot = edgeless_shot ();

  shot.delivery.release_height = tb_metres_from_in (5.0);
  shot.delivery.loft_angle = tb_radians_from_deg (3.0);
  shot.ball.intermediate_differential = tb_metres_from_in (0.015);
  shot.ball.top_weight = tb_kilograms_from_oz (3.0);
  shot.delivery.rev_rate = tb_radians_per_second_from_rpm (420.0);
  sweep_all (&shot);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/continuity/default-shot", test_default_shot);
  g_test_add_func ("/continuity/lofted-asymmetric-shot", test_lofted_asymmetric_shot);
  return g_test_run ();
}
