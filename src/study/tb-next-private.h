/* Between the parts of Next.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "tb-next.h"

G_BEGIN_DECLS

/* One thing to be solved: a knob, or a ball. */
typedef struct NextTask
{
  const TbKnob *knob;
  const TbNextBall *ball; /* TB_KNOB_OTHER_BALL */
} NextTask;

/* Whether a knob has something to offer for this wish and throw. */
gboolean next_task_makes_sense (const TbNext *next, const NextTask *task);
/* Solves it. NULL if it is of no use, or if cancelled. */
TbNextOption *next_task_solve (const TbNext *next, const NextTask *task, TbThrower *thrower, GCancellable *cancellable);

G_END_DECLS
