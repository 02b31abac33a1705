/* Between the parts of Why.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "tb-why.h"

G_BEGIN_DECLS

/* The measures of one throw, as the split sees them. */
void why_measure (const TbShot *shot, const TbMeasures *measures, double value[TB_WHY_N_MEASURES]);
/* Fills in the inputs and their parts. FALSE if cancelled. */
gboolean why_split_by_input (TbWhy *why, guint threads, GCancellable *cancellable);
void why_split_by_stretch (TbWhy *why, double length_ft);

G_END_DECLS
