/* What a bowler practises to go from one throw to another: a step for everything that changed, with the
 * number to reach, how far it may be missed, and what is seen on the lane when it is right and when it is
 * not.
 *
 * All numbers are the model's. Drills are common practice.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gio/gio.h>
#include "tb-setup.h"

G_BEGIN_DECLS

typedef enum TbPracticeKind
{
  TB_PRACTICE_LINE,     /* feet and target */
  TB_PRACTICE_DELIVERY, /* one field of the delivery */
  TB_PRACTICE_SURFACE,
  TB_PRACTICE_DRILLING, /* layout, holes */
  TB_PRACTICE_BALL,     /* another ball */
  TB_PRACTICE_LANE,     /* oil, wear, tilt: not the bowler's doing */
  TB_PRACTICE_MODEL     /* assumed constants: nothing to practise */
} TbPracticeKind;

/* All texts are whole sentences, translated; NULL where there is nothing to say. */
typedef struct TbPracticeStep
{
  TbPracticeKind kind;
  const char *field; /* whose change it is; NULL where it is no single field's */
  char *title;       /* "Speed: from 17.0 to 19.0 mph" */
  char *how;
  char *target; /* the number that tells, and the tolerance */
} TbPracticeStep;

/* Immutable once made. */
typedef struct TbPractice
{
  GPtrArray *steps; /* of TbPracticeStep: line, delivery, ball, lane */
  char *nothing;    /* the one sentence when nothing differs; else NULL */
  char *right;      /* what is seen when it is right */
  char *wrong;      /* what is seen while nothing has changed yet; NULL where it looks the same */
  char *score;      /* how many of ten to expect in the pocket; NULL where that is none */
} TbPractice;

/* Both runs have to have been thrown (status TB_OK). Takes some tens of milliseconds. NULL if cancelled. */
TbPractice *
tb_practice_new (const TbRun *before, const TbRun *after, gboolean metric, GCancellable *cancellable);
void tb_practice_free (TbPractice *practice);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (TbPractice, tb_practice_free)

/* What always stands below the steps; translated, borrowed. */
const char *tb_practice_stop_text (void);

G_END_DECLS
