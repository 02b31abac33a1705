/* The same delivery on the same lane with every ball of a bag, on the same line and each on its own pocket
 * line.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "tb-surface-curve.h"

G_BEGIN_DECLS

/* A ball that is to be thrown. */
typedef struct TbBagBall
{
  char *id;   /* NULL if it has none */
  char *name; /* for people */
  TbBall ball;
} TbBagBall;
TbBagBall *tb_bag_ball_new (const char *id, const char *name, const TbBall *ball);
void tb_bag_ball_free (TbBagBall *ball);

typedef struct TbBagEntry
{
  char *id;
  char *name;
  TbRun *run[TB_N_BALL_LINES]; /* with samples and gutters; NULL where no line leads to the pocket */
  double room;                 /* boards at the arrows on the pocket line; NAN without one */
} TbBagEntry;

typedef struct TbBag
{
  GPtrArray *entries; /* of TbBagEntry, as given */
} TbBag;

/* Throws every ball in place of the setup's own. balls: of TbBagBall. NULL if cancelled. */
TbBag *tb_bag_new (const TbSetup *setup, const GPtrArray *balls, GCancellable *cancellable);
void tb_bag_free (TbBag *bag);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (TbBag, tb_bag_free)

const TbBagEntry *tb_bag_entry (const TbBag *bag, guint index);
/* A measure of one entry, in the measure's unit; NAN where it has none. */
double tb_bag_value (const TbBag *bag, guint index, TbBallLine line, const TbMeasureInfo *measure);
/* Indices of all entries by a measure, the least first, those without it last; equals keep their order. order
 * has room for all of them. */
void tb_bag_order (const TbBag *bag, TbBallLine line, const TbMeasureInfo *measure, guint *order);

/* Two neighbours by a measure, and how far they are apart. */
typedef struct TbBagGap
{
  guint low, high; /* indices of entries */
  double width;    /* in the measure's unit */
} TbBagGap;
/* FALSE if fewer than two entries have the measure. */
gboolean tb_bag_widest_gap (const TbBag *bag, TbBallLine line, const TbMeasureInfo *measure, TbBagGap *gap);
/* The entry that lies between two others by a measure and nearest to their middle. FALSE if none does. */
gboolean tb_bag_between (const TbBag *bag,
                         TbBallLine line,
                         const TbMeasureInfo *measure,
                         const guint ends[2],
                         guint *between);
/* In words, translated, with numbers: how far the bag spans, what lies in the middle of it, the widest gap.
 * Free it. */
char *tb_bag_statement (const TbBag *bag, TbBallLine line, const TbMeasureInfo *measure, gboolean metric);

G_END_DECLS
