/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"
#include "tb-record.h"

#include <glib/gi18n-lib.h>

static gboolean
read_number (TbReader *reader, JsonObject *object, const TbRecordNumber *row, gpointer record)
{
  double number;

  if (!tb_reader_number (reader, object, row->name, &number))
    return FALSE;
  /* Written so that a number that is none fails too. */
  if (!(number >= row->min && number <= row->max))
    return tb_reader_fail (reader, row->name, TB_STORE_ERROR_VALUE,
                           _ ("%g is out of range; a number from %g to %g was expected"), number, row->min,
                           row->max);
  *(double *) ((char *) record + row->offset) = row->to_si (number);
  return TRUE;
}

gboolean
tb_record_read (TbReader *reader, JsonObject *object, const TbRecordNumber *table, gpointer record)
{
  for (const TbRecordNumber *row = table; row->name; row++)
    if (!read_number (reader, object, row, record))
      return FALSE;
  return TRUE;
}

void
tb_record_write (TbJsonWriter *writer, const TbRecordNumber *table, gconstpointer record)
{
  for (const TbRecordNumber *row = table; row->name; row++)
    tb_json_number_si (writer, row->name, *(const double *) ((const char *) record + row->offset), row->to_si,
                       row->from_si);
}
