/* Measures of a run as people read them: in a table, in a sentence, on paper.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "tb-core.h"
#include "tb-setup.h"

G_BEGIN_DECLS

/* The measures that are told first, in this order; names of tb_measure_table, ends with NULL. */
extern const char *const tb_main_measures[];

/* Unit of a measure, translated; "" where there is none. Borrowed. */
const char *tb_measure_unit_text (const TbMeasureInfo *info, gboolean metric);
/* All of these are translated; free them. "–" where a run has no such number. */
char *tb_measure_number_text (const TbMeasureInfo *info, const TbMeasures *measures, gboolean metric);
/* With its unit: "44.0 ft", "2.9°". */
char *tb_measure_text (const TbMeasureInfo *info, const TbMeasures *measures, gboolean metric);
/* After less before, with a sign: of the two as they are shown, so that nobody who subtracts them gets another. */
char *tb_measure_difference_text (const TbMeasureInfo *info,
                                  const TbMeasures *before,
                                  const TbMeasures *after,
                                  gboolean metric);
/* A distance down the lane (m) with its unit: "43.0 ft". */
char *tb_distance_text (double y, gboolean metric);
/* Where a run ended, in a few words: "in the pocket", "5.6 boards light", "right gutter at 43.0 ft". */
char *tb_run_end_text (const TbRun *run, gboolean metric);

G_END_DECLS
