/* Next: what to try for a wish, each knob alone and some customary pairs, solved and thrown again.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "tb-knob.h"
#include "tb-wish.h"

G_BEGIN_DECLS

/* One place on an option's curve. NAN where there is no number. */
typedef struct TbNextPoint
{
  double at;                     /* the knob, in its field's unit */
  double wished;                 /* the wished measure, in the wish's unit */
  double board, angle_deg;       /* at the pins: what the extremes cost */
  double breakpoint_ft, roll_ft; /* likewise */
  double aim_board;              /* of the throw, which may have been re-aimed */
} TbNextPoint;
#define TB_NEXT_POINTS 13

#define TB_NEXT_MAX_CHANGES 4
typedef struct TbNextChange
{
  const TbField *field;
  double from, to; /* in its unit */
} TbNextChange;

typedef enum TbReach
{
  TB_REACH_MET, /* the throw was made again and meets the wish within TB_WISH_TOLERANCE; or it has more room
                 */
  TB_REACH_NEARER, /* it cannot be met inside the usual limits, but this comes nearer than now */
  TB_REACH_NOT     /* no use */
} TbReach;
const char *tb_reach_name (TbReach reach); /* "met", "nearer", "not" */

/* Immutable and counted. */
typedef struct TbNextOption
{
  gatomicrefcount ref_count;
  const TbKnob *knob;
  char *title; /* translated: the knob, or the ball that is meant */
  TbReach reach;
  TbSetup *setup; /* with the change made: this is what a click puts in "after" */
  TbRun *run;     /* of it, thrown with gutters */
  double wished;  /* the wished measure of that run */
  double missing; /* target − wished; for a wish for room, minus the room gained */
  guint n_changes;
  TbNextChange change[TB_NEXT_MAX_CHANGES];
  double effort;
  double room_out, room_in;   /* at the arrows, boards; 0 both outside of the pocket */
  const TbField *curve_field; /* whose number the curve is over: the knob's, or the laydown of the line that
                                 goes with it */
  guint n_points;             /* 0 where there is no such number */
  TbNextPoint point[TB_NEXT_POINTS];
  gboolean turns; /* the computed curve has a turning point inside the limits */
  double turns_at, turns_wished, turns_aim_board;
} TbNextOption;
TbNextOption *tb_next_option_ref (TbNextOption *option);
void tb_next_option_unref (TbNextOption *option);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (TbNextOption, tb_next_option_unref)

/* A ball that could be thrown instead. */
typedef struct TbNextBall
{
  const char *id, *name;
  TbBall ball;
} TbNextBall;

/* What is asked, and what came of it. Immutable and counted. */
typedef struct TbNext
{
  gatomicrefcount ref_count;
  TbWish wish;
  TbSetup *start;            /* the throw to be changed */
  TbMeasures start_measures; /* edgeless */
  TbStatus status;           /* anything but TB_OK: it does not get to the pins, and there are no options */
  double now, target;        /* of the wished measure */
  double reaimed; /* of the wished measure, once the target alone is moved to the pocket; NAN where that is
                     not asked */
  gboolean met;   /* the wish is met as things stand */
  GPtrArray *options; /* of TbNextOption: by group; in it those that meet the wish by effort, then those that
                         come nearer */
  guint throws;
} TbNext;
TbNext *tb_next_ref (TbNext *next);
void tb_next_unref (TbNext *next);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (TbNext, tb_next_unref)

/* Called in the main context of the caller for each option as it is found, in no particular order. Both are
 * borrowed; `next` has no options yet. */
typedef void (*TbNextProgress) (TbNext *next, TbNextOption *option, gpointer user_data);

/* What is asked; nothing of it is kept. What is not set is 0. */
typedef struct TbNextQuestion
{
  TbSetup *start; /* the throw to be changed */
  const TbWish *wish;
  const TbNextBall *balls; /* that could be thrown instead; NULL for none */
  guint n_balls;
  guint threads;           /* 0 for one a processor; the answer does not depend on it */
  TbNextProgress progress; /* of tb_next_find_async(); NULL if nobody wants to know */
} TbNextQuestion;

/* NULL if cancelled. */
TbNext *tb_next_find (const TbNextQuestion *question, GCancellable *cancellable);
/* The same beside the caller's thread. No progress is told after a cancel or after the callback. */
void tb_next_find_async (const TbNextQuestion *question,
                         GCancellable *cancellable,
                         GAsyncReadyCallback callback,
                         gpointer user_data);
/* NULL if cancelled. */
TbNext *tb_next_find_finish (GAsyncResult *result, GError **error);
/* The option that meets the wish with the least effort; borrowed. NULL if none does, or if the wish is for as much as can
 * be had. */
const TbNextOption *tb_next_smallest (const TbNext *next);
/* How options are listed: negative if a comes before b. */
int tb_next_option_compare (const TbNextOption *a, const TbNextOption *b);

/* All translated; free them. */
/* The change in the bowler's terms: "Move your feet 3.0 boards to the left, the target 1.5 boards to the
 * left." */
char *tb_next_change_text (const TbNextOption *option, gboolean metric);
/* What else moves: "Angle 4.1° → 3.6°, …". */
char *tb_next_effect_text (const TbNext *next, const TbNextOption *option, gboolean metric);
/* What comes of it, in the terms of the wish: "4.9°", "board 17.5". */
char *tb_next_wished_text (const TbNext *next, const TbNextOption *option, gboolean metric);
/* How far it gets, or how far past the wish, for one that does not meet the wish; NULL for one that does. */
char *tb_next_reach_text (const TbNext *next, const TbNextOption *option, gboolean metric);
/* What the curve does: its turning point, or NULL. */
char *tb_next_curve_text (const TbNext *next, const TbNextOption *option, gboolean metric);
/* The wish and where things stand: "Three boards less: from board 17.5 to 14.5." */
char *tb_next_wish_text (const TbNext *next, gboolean metric);
/* Why the wish is out of reach of some: the turn is used up. NULL where it is not. */
char *tb_next_turn_text (const TbNext *next, gboolean metric);

G_END_DECLS
