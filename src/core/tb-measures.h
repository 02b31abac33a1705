/* Names, labels and units of the measures: one table for the headless output, the window and the files.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "tb-path.h"

typedef struct TbMeasureInfo
{
  const char *name;           /* "board_at_pins", as in headless output */
  const char *label;          /* for people, untranslated */
  const char *unit;           /* "board", "ft", "°" … ; for people, untranslated */
  size_t offset;              /* in TbMeasures */
  double (*from_si) (double);
  int digits;                 /* after the point, for people */
  const char *metric_unit;    /* where metric differs; else NULL */
  double (*metric_from_si) (double);
  int metric_digits;
  const char *help;           /* one sentence for people, untranslated */
} TbMeasureInfo;

/* In the order in which they are told; ends with a NULL name. */
extern const TbMeasureInfo tb_measure_table[];
int tb_measure_count (void);
/* NULL for an unknown name. */
const TbMeasureInfo *tb_measure_find (const char *name);
/* Core's value, and the value in the measure's unit; NAN where the run has none. */
double tb_measure_si (const TbMeasureInfo *info, const TbMeasures *measures);
double tb_measure_value (const TbMeasureInfo *info, const TbMeasures *measures);
