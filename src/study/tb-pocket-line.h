/* The launch that brings this ball, on this lane, with this release, to the pocket.
 *
 * Compared on one and the same line a rougher ball only hooks more. A bowler re-aims: compared each on its
 * own pocket line, two balls, surfaces or lanes show what they really offer.
 *
 * Boards are the bowler's own. All throws are without gutters; a line whose real ball would be in one is no
 * answer.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gio/gio.h>
#include "tb-thrower.h"

G_BEGIN_DECLS

/* What stays as it is. */
typedef enum TbPocketHold
{
  TB_POCKET_HOLD_LAYDOWN,    /* the target at the arrows is moved */
  TB_POCKET_HOLD_AIM,        /* the laydown is moved */
  TB_POCKET_HOLD_BREAKPOINT, /* both are moved, the board on which the ball turns back stays */
  TB_POCKET_N_HOLDS
} TbPocketHold;
/* "laydown", "aim", "breakpoint": in JSON. */
const char *tb_pocket_hold_name (TbPocketHold hold);
const char *tb_pocket_hold_label (TbPocketHold hold); /* for people, untranslated */

/* Launches that are tried: no wider than so many boards out, or in, from foul line to arrows (6° and 2°). */
#define TB_POCKET_BOARDS_OUT 17.75
#define TB_POCKET_BOARDS_IN 6.0
/* How near to the middle of the pocket an answer ends, boards. */
#define TB_POCKET_TOLERANCE 0.01

typedef struct TbPocketAnswer
{
  TbDelivery delivery;
  TbMeasures measures;
  double room_out,
      room_in; /* boards by which the target at the arrows may be missed to lower and to higher boards, the
                * laydown kept, and the ball still ends in the pocket; TB_POCKET_MOST_ROOM: at least that */
} TbPocketAnswer;
#define TB_POCKET_MOST_ROOM 6.0

#define TB_POCKET_MAX_ANSWERS 4
typedef struct TbPocketLines
{
  guint count; /* none, one or two as a rule; from the most open line to the straightest */
  TbPocketAnswer answer[TB_POCKET_MAX_ANSWERS];
} TbPocketLines;

/* Middle of the pocket, board. */
double tb_pocket_middle (const TbAssumed *assumed);
gboolean tb_pocket_contains (const TbAssumed *assumed, const TbMeasures *measures);
/* FALSE if cancelled; lines then has what was found so far. */
gboolean tb_pocket_lines_find (TbThrower *thrower,
                               const TbShot *shot,
                               TbPocketHold hold,
                               GCancellable *cancellable,
                               TbPocketLines *lines);
/* The answer with the most room; NULL if there is none. */
const TbPocketAnswer *tb_pocket_lines_best (const TbPocketLines *lines);
/* Moves the target, the laydown held, to the nearest board that leads to the pocket. FALSE if there is none,
 * and then nothing is changed. `measures` may be NULL. Cheap where the shot is near the pocket already. */
gboolean tb_pocket_reaim (TbThrower *thrower, TbShot *shot, TbMeasures *measures);
/* Room at the arrows around a shot; 0 both if it is not in the pocket itself. */
void tb_pocket_room (TbThrower *thrower, const TbShot *shot, double *room_out, double *room_in);

G_END_DECLS
