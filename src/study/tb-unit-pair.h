/* The units that core's tables use, and what stands in their place for people who measure in metric.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

typedef struct TbUnitPair
{
  const char *imperial; /* untranslated, as in the tables */
  const char *metric;   /* likewise */
  double factor;        /* metric number = imperial number × factor */
  int fewer_digits;     /* after the point, in metric */
} TbUnitPair;

/* NULL for a unit that both use. */
const TbUnitPair *tb_unit_pair (const char *imperial);

/* How a number of a unit is told. */
typedef struct TbToldUnit
{
  const char *unit; /* translated */
  double factor;
  int digits;
} TbToldUnit;
/* digits: after the point, in the table's unit. */
TbToldUnit tb_told_unit (const char *imperial, int digits, gboolean metric);

G_END_DECLS
