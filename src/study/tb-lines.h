/* Lines as bowlers and coaches speak of them: feet, drift, moves, spares.
 *
 * Boards here are the bowler's own (from the right for a right-hander), and all of this is plain geometry but
 * for the family of lines and the aimed spare, which are thrown.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "tb-setup.h"

G_BEGIN_DECLS

/* How a bowler's feet turn into the board on which the ball is laid down. */
typedef struct TbStance
{
  double slide_board; /* board under the middle of the slide foot at the start of the approach */
  double drift;       /* boards the foot comes to slide towards higher boards; negative: towards lower ones */
  double offset; /* boards by which the ball passes outside of the foot: 6 to 7 are usual (common practice) */
} TbStance;
#define TB_STANCE_OFFSET 6.5
TbStance tb_stance_default (void);
/* Board on which such feet lay the ball down, and the stance board that lays it down there. */
double tb_stance_laydown_board (const TbStance *stance);
TbStance tb_stance_for_laydown (const TbStance *stance, double laydown_board);

/* A customary move of feet and target. */
typedef struct TbMove
{
  const char *label;   /* for people, untranslated */
  const char *help;    /* likewise: when it is made; common practice */
  double feet, target; /* boards at the stance (and foul line) and at the arrows, towards higher boards */
  gboolean pivot;      /* the target stays, and the foul line follows half of the feet: 3 : 1 : 2 */
} TbMove;
/* Ends with a NULL label. */
extern const TbMove tb_moves[];
/* A delivery after a move; `sign` −1 turns it round. Boards stop at the lane's edges. */
TbDelivery tb_move_delivery (const TbDelivery *delivery, const TbMove *move, int sign);

/* 3 : 1 : 2, from the target at 15 ft: a pivot over it by so many boards at the pins. */
typedef struct TbPivot
{
  double at_pins, at_line, at_stance; /* boards; the pins' sign is the opposite of the others' */
} TbPivot;
TbPivot tb_pivot (double boards_at_pins);
/* Where the feet stand at the start of the approach in that rule: as far behind the line as the target is
 * past it. */
#define TB_STANCE_BEHIND TB_ARROWS_Y

/* Runs of lines beside a planned one, for drawing: misses inside and outside. */
typedef struct TbFamily
{
  guint count;
  double *boards; /* of miss; negative towards lower boards */
  TbRun **runs;   /* edgeless */
} TbFamily;
/* `each_side` lines either way of the plan, `spacing` boards apart; parallel, or by the target alone. */
TbFamily *tb_family_new (TbSetup *setup, guint each_side, double spacing, gboolean parallel);
void tb_family_free (TbFamily *family);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (TbFamily, tb_family_free)

/* A spare: one pin, left to be hit by a straight ball. */
typedef struct TbSpare
{
  int pin; /* 0 the head pin to 9 the 10 pin */
  double laydown_board;
  double aim_board;   /* at the arrows */
  double pin_board;   /* where the pin stands, the bowler's board */
  double room;        /* boards at the pin either way that still touch it: radii of ball and pin */
  double angle;       /* rad, positive towards higher boards */
  gboolean in_gutter; /* a straight ball that hits it in the middle would be over the edge before it */
} TbSpare;
/* For a ball rolled straight from that board. Left-handers read pins from their own side: pins are numbered
 * as usual. */
TbSpare tb_spare_straight (const TbSetup *setup, int pin, double laydown_board);
/* The customary board to lay down from: cross-lane, from the far side of the lane. */
double tb_spare_laydown_board (TbHand hand, int pin);
/* The aim that takes this very ball and release from that board to the pin: what the ball does is computed.
 * FALSE if none is found. */
gboolean tb_spare_aimed (const TbSetup *setup, int pin, double laydown_board, TbSpare *spare);
/* The setup thrown at a spare. */
TbSetup *tb_spare_setup (TbSetup *setup, const TbSpare *spare);

G_END_DECLS
