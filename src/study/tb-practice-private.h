/* Between the parts of the practice plan.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "tb-change.h"
#include "tb-practice.h"

G_BEGIN_DECLS

/* What a plan is made from. */
typedef struct PracticeInput
{
  const TbRun *before, *after;
  gboolean metric;
  GCancellable *cancellable;
} PracticeInput;

/* The steps for all changes, in the order in which they are told. FALSE if cancelled. */
gboolean practice_add_steps (const PracticeInput *input, GPtrArray *steps);

G_END_DECLS
