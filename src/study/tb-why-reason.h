/* Which fact of a throw explains what a change came to, and its sentence.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "tb-why-told.h"

G_BEGIN_DECLS

typedef struct WhyReason WhyReason;

/* The fact that explains the boards of an input, the trade's own first; NULL if none bears them out.
 * Borrowed. */
const WhyReason *why_reason_for (const WhyTeller *teller, const TbWhyInput *input);
/* Of which measure it is. */
TbWhyMeasure why_reason_fact (const WhyReason *reason);

/* What the sentence says besides: both translated. */
typedef struct WhySaid
{
  const char *change;   /* "2.0 mph more" */
  const char *comes_to; /* "3.1 of the 3.6 boards" */
} WhySaid;
/* The caller's. */
char *why_reason_sentence (const WhyTeller *teller,
                           const TbWhyInput *input,
                           const WhyReason *reason,
                           const WhySaid *said);

G_END_DECLS
