/* Why two throws differ: the difference split by input, and by stretch of lane. Immutable and counted.
 *
 * By input: the Shapley value (L. S. Shapley, "A value for n-person games", 1953). Every input that differs
 * is taken over from "after" in every possible order, and its part is what it moves on average; so the parts
 * add up to the difference, and swapping the two throws flips the sign of every part. Up to
 * TB_WHY_EXACT_INPUTS inputs all orders are taken; beyond that a fixed sample of them, and the error that
 * this leaves is stated.
 *
 * By stretch: with the launch line as the axis, every force across it in a stretch counts with the time that
 * the ball then has left to the pins; what is left is the launch line itself. For the angle a stretch counts
 * by how much it turns the heading.
 *
 * Both throws are run without gutters, so that the sums do not break at the edge of the lane; `gutter_ft`
 * says where a real ball would have left it.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gio/gio.h>
#include "tb-change.h"
#include "tb-study.h"

G_BEGIN_DECLS

#define TB_WHY_EXACT_INPUTS 8
/* Front, middle and back. */
#define TB_WHY_STRETCH_FT 20.0
#define TB_WHY_MAX_STRETCHES 60

/* Splits of the difference; the rest are the facts that the sentences reason with. */
typedef enum TbWhyMeasure
{
  TB_WHY_BOARD,      /* at the pins, boards */
  TB_WHY_ANGLE,      /* at the pins, degrees */
  TB_WHY_BREAKPOINT, /* ft */
  TB_WHY_N_SPLITS,
  TB_WHY_DRY_TIME = TB_WHY_N_SPLITS, /* s that the ball is not in the oil */
  TB_WHY_SIDE_SHARE, /* share of the friction that acts across the launch line as the ball first slips */
  TB_WHY_OIL_EXIT,   /* ft */
  TB_WHY_HOOK_START, /* ft */
  TB_WHY_ROLL_START, /* ft */
  TB_WHY_LAUNCH,     /* board at the pins of the launch line */
  TB_WHY_TURN,       /* from launch to pins, degrees */
  TB_WHY_FLARE,      /* in */
  TB_WHY_N_MEASURES
} TbWhyMeasure;
/* "board_at_pins", "angle_at_pins_deg", "breakpoint_ft" for the splits. */
const char *tb_why_measure_name (TbWhyMeasure measure);

typedef struct TbWhyInput
{
  TbChange change;
  double part[TB_WHY_N_MEASURES];  /* NAN for a measure that some mixture of the two throws does not have */
  double error[TB_WHY_N_MEASURES]; /* twice the standard error of a sampled part; 0 for an exact one */
} TbWhyInput;

typedef struct TbWhyStretch
{
  double from_ft, to_ft;
  double part[2]; /* TB_WHY_BOARD and TB_WHY_ANGLE */
} TbWhyStretch;

typedef struct TbWhy
{
  gatomicrefcount ref_count;
  TbSetup *setup[TB_N_SIDES];
  TbRun *run[TB_N_SIDES]; /* without gutters */
  TbStatus status; /* anything but TB_OK: one of the throws does not get to the pins; nothing is split */
  double gutter_ft[TB_N_SIDES];                /* NAN: the real ball stays on the lane */
  double value[TB_N_SIDES][TB_WHY_N_MEASURES]; /* NAN: the throw has none */
  double difference[TB_WHY_N_MEASURES];        /* after − before; NAN where either has none */
  guint n_inputs;
  TbWhyInput input[TB_MAX_CHANGES]; /* in the order of the field table */
  double launch_part[2];            /* of TB_WHY_BOARD and TB_WHY_ANGLE */
  guint n_stretches;
  TbWhyStretch stretch[TB_WHY_MAX_STRETCHES];
  guint orders; /* how many orders were sampled; 0: all */
  guint throws;
} TbWhy;

typedef struct TbWhyOptions
{
  double stretch_ft; /* length of a stretch; 0 for TB_WHY_STRETCH_FT; at least 1 */
  guint threads;     /* 0: one a processor */
} TbWhyOptions;

/* NULL if cancelled. options may be NULL. */
TbWhy *tb_why_new (TbSetup *before, TbSetup *after, const TbWhyOptions *options, GCancellable *cancellable);
TbWhy *tb_why_ref (TbWhy *why);
void tb_why_unref (TbWhy *why);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (TbWhy, tb_why_unref)

/* The same in another thread; the callback comes in the caller's main context. */
void tb_why_new_async (TbSetup *before,
                       TbSetup *after,
                       const TbWhyOptions *options,
                       GCancellable *cancellable,
                       GAsyncReadyCallback callback,
                       gpointer user_data);
/* NULL if cancelled. */
TbWhy *tb_why_new_finish (GAsyncResult *result, GError **error);

/* What a run has between two distances, ft: `part` gets boards across the launch line (force × time left) and
 * degrees of heading. The parts of stretches that cover the lane and the launch line's own (board at the
 * pins, heading) add up to board and angle at the pins. */
void tb_run_stretch (const TbRun *run, double from_ft, double to_ft, double part[2]);
void tb_run_launch (const TbRun *run, double part[2]);

/* The reasons in whole sentences, translated, most important first: a NULL-terminated list. */
GStrv tb_why_sentences (const TbWhy *why, TbWhyMeasure split, gboolean metric);
/* Those of all splits; what is said of all alike is said once. */
GStrv tb_why_all_sentences (const TbWhy *why, gboolean metric);
/* A stretch of lane by its name and its ends: "Front, 0 to 20 ft". Translated; free it. */
char *tb_why_stretch_name (const TbWhyStretch *stretch, gboolean metric);

G_END_DECLS
