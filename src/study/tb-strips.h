/* A pattern as a lane machine lays it: one ordered list of strips, each laid going out from the foul line or
 * coming back to it. The film is the sum of the strips; the order is kept because that is how the machine
 * runs, and how the list is read.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>
#include "tb-core.h"

G_BEGIN_DECLS

typedef enum TbStripWay
{
  TB_STRIP_OUT, /* away from the foul line */
  TB_STRIP_BACK,
  TB_N_STRIP_WAYS
} TbStripWay;

/* One strip. Boards are whole, counted from the right edge, both of them included. `start` and `end` are
 * where the machine starts and stops oiling on its way: going out start < end, coming back start > end. */
typedef struct TbStrip
{
  TbStripWay way;
  int right_board, left_board; /* 1 to 39, right_board ≤ left_board */
  double start, end;           /* m from the foul line */
  double volume;               /* m³ on each board */
  double taper;                /* m before `end` over which the film comes down to nothing, smoothly */
} TbStrip;

/* No machine program is longer. */
#define TB_STRIPS_MAX 64
/* Shorter than this is no strip, m. */
#define TB_STRIP_MIN_LENGTH TB_OIL_ROW_LENGTH

/* A strip a beginner would add: all across the middle, going out. */
TbStrip tb_strip_default (void);
/* TB_OK, TB_ERROR_NOT_FINITE or TB_ERROR_OUT_OF_RANGE. */
TbStatus tb_strip_check (const TbStrip *strip);
/* Moves what lies outside its range to the nearest that will do. */
void tb_strip_tidy (TbStrip *strip);
/* Near and far end, whichever way it is laid, m. */
double tb_strip_near (const TbStrip *strip);
double tb_strip_far (const TbStrip *strip);
/* Boards it covers, and all of its oil, m³. */
int tb_strip_boards (const TbStrip *strip);
double tb_strip_volume (const TbStrip *strip);
/* The film it lays at a distance down the lane (m), m. */
double tb_strip_film (const TbStrip *strip, double y);
/* The same with the ways exchanged: what went out comes back. */
void tb_strip_turn (TbStrip *strip);

/* Lays strips on a grid that is cleared first; each cell gets the mean of the film over it, so that the
 * volume is the strips' to rounding. TB_OK, or what is wrong with the strip *wrong (may be NULL); the grid is
 * then not touched. */
TbStatus tb_strips_lay (const TbStrip *strips, guint count, TbOil *oil, guint *wrong);
double tb_strips_volume (const TbStrip *strips, guint count);
/* Oil laid going that way, m³. */
double tb_strips_volume_of_way (const TbStrip *strips, guint count, TbStripWay way);
/* The farthest end, m; 0 without strips. */
double tb_strips_length (const TbStrip *strips, guint count);

/* The numbers by which people know a pattern. */
typedef struct TbStripsPlan
{
  double length; /* m */
  double volume; /* m³ */
  double ratio;  /* middle over outside, as in TbPatternFigures; 1 or more */
  double taper;  /* m, over which the farthest strip ends */
} TbStripsPlan;
#define TB_STRIPS_PLAN_COUNT 10
/* Strips that make a pattern of these numbers, the same on both sides: a broad one and narrower ones on top,
 * each half going out and half coming back from less far. FALSE if no such pattern makes sense. */
gboolean tb_strips_plan (const TbStripsPlan *plan, TbStrip strips[TB_STRIPS_PLAN_COUNT]);

G_END_DECLS
