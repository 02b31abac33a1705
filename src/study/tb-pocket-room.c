/* How far the target can be missed.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "tb-pocket-line.h"

#include <math.h>
#include "tb-solve.h"

/* Room is looked for in steps, boards; its end is where the ball meets the pocket's edge to this, boards at
 * the pins, or where halving so often finds it. */
#define ROOM_STEP 0.5
#define ROOM_TOLERANCE 0.01
#define ROOM_HALVINGS 6
/* A target that is missed, with the laydown kept. */
typedef struct Miss
{
  TbThrower *thrower;
  TbShot shot;
  TbMeasures measures; /* of the last throw */
  double edge;         /* of the pocket, board */
} Miss;

static gboolean
ends_in_pocket (Miss *self, double aim_board)
{
  self->shot.delivery.aim = tb_x_from_board (aim_board);
  tb_thrower_throw (self->thrower, &self->shot, &self->measures);
  return tb_pocket_contains (&self->shot.assumed, &self->measures);
}

static double
board_past_edge (double aim_board, gpointer data)
{
  Miss *self = data;

  ends_in_pocket (self, aim_board);
  return tb_board_from_x (self->measures.x_at_pins) - self->edge;
}

/* Where the gutter ends the room, or the ball jumps past the edge. */
static double
halve_to_edge (Miss *self, double aim, double inside, double outside)
{
  for (int i = 0; i < ROOM_HALVINGS; i++)
    {
      double middle = 0.5 * (inside + outside);

      if (ends_in_pocket (self, aim + middle))
        inside = middle;
      else
        outside = middle;
    }
  return fabs (inside);
}

/* Boards of miss to one side, `sign` of it. at_plan: board at the pins of the planned shot, in the pocket. */
static double
room_to (Miss *self, double aim, double at_plan, int sign)
{
  const TbCurve curve = { board_past_edge, self };
  double inside = 0, outside, at_inside = at_plan, at_outside, root;
  gboolean gutter;

  for (;;)
    {
      outside = inside + sign * ROOM_STEP;
      if (!ends_in_pocket (self, aim + outside))
        break;
      inside = outside;
      at_inside = tb_board_from_x (self->measures.x_at_pins);
      if (fabs (inside) >= TB_POCKET_MOST_ROOM)
        return TB_POCKET_MOST_ROOM;
    }
  at_outside = tb_board_from_x (self->measures.x_at_pins);
  gutter = isfinite (self->measures.gutter_y);
  self->edge = tb_board_from_x (at_outside > at_inside ? self->shot.assumed.pocket_high
                                                       : self->shot.assumed.pocket_low);
  if (!gutter
      && tb_solve_root (
          &curve,
          sign > 0
              ? &(TbBracket){ aim + inside, aim + outside, at_inside - self->edge, at_outside - self->edge }
              : &(TbBracket){ aim + outside, aim + inside, at_outside - self->edge, at_inside - self->edge },
          ROOM_TOLERANCE, &root))
    return fabs (root - aim);
  return halve_to_edge (self, aim, inside, outside);
}

void
tb_pocket_room (TbThrower *thrower, const TbShot *shot, double *room_out, double *room_in)
{
  Miss miss = { .thrower = thrower, .shot = *shot };
  double aim = tb_board_from_x (shot->delivery.aim), at_plan;

  *room_out = *room_in = 0;
  if (!ends_in_pocket (&miss, aim))
    return;
  at_plan = tb_board_from_x (miss.measures.x_at_pins);
  *room_out = room_to (&miss, aim, at_plan, -1);
  *room_in = room_to (&miss, aim, at_plan, 1);
}
