/* Tables of what stands in files but is no field of a shot: the numbers of a pattern's profile, of a hole, of
 * a bowler. One row a number; reading, writing and ranges follow from it, as they do from core's field
 * tables.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "tb-json-reader.h"
#include "tb-json-writer.h"

G_BEGIN_DECLS

typedef struct TbRecordNumber
{
  const char *name;
  gsize offset; /* of a double in the record, in SI */
  double (*to_si) (double);
  double (*from_si) (double);
  double min, max; /* in the unit, which stands in the name; inclusive */
} TbRecordNumber;

/* Tables end with a NULL name. Every number must be there and in its range. */
gboolean tb_record_read (TbReader *reader, JsonObject *object, const TbRecordNumber *table, gpointer record);
void tb_record_write (TbJsonWriter *writer, const TbRecordNumber *table, gconstpointer record);

G_END_DECLS
