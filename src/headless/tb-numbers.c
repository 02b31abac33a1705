/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "tb-numbers.h"

#include <math.h>

#include "tb-json-writer.h"

/* A number of one run, or of the difference between two. */
typedef double (*Number) (const TbRun *run, gconstpointer which);

static double
measure_of (const TbRun *run, gconstpointer which)
{
  return tb_measure_value (which, &run->path.measures);
}

static double
gutter_of (const TbRun *run, gconstpointer which)
{
  return tb_ft_from_metres (run->path.measures.gutter_y);
}

static double
mark_of (const TbRun *run, gconstpointer which)
{
  return tb_board_from_x (run->path.measures.x_at_mark[GPOINTER_TO_INT (which)]);
}

/* What a run is compared with: its number less the other's, or the number itself. */
static double
number_of (const TbRun *run, const TbRun *less, Number number, gconstpointer which)
{
  return less ? number (run, which) - number (less, which) : number (run, which);
}

static void
write_marks (TbJsonWriter *writer, const TbRun *run, const TbRun *less)
{
  tb_json_begin_object (writer, "board_at_ft");
  for (int mark = 0; mark < TB_N_BOARD_MARKS; mark++)
    {
      g_autofree char *key = g_strdup_printf ("%d", (int) (mark * TB_BOARD_MARK_FT));

      tb_json_number (writer, key, number_of (run, less, mark_of, GINT_TO_POINTER (mark)));
    }
  tb_json_end_object (writer);
}

static void
write_run (TbJsonWriter *writer, const char *key, const TbRun *run, const TbRun *less)
{
  tb_json_begin_object (writer, key);
  for (const TbMeasureInfo *info = tb_measure_table; info->name; info++)
    tb_json_number (writer, info->name, number_of (run, less, measure_of, info));
  tb_json_string (writer, "result", less ? NULL : tb_result_name (run->path.result));
  tb_json_number (writer, "gutter_ft", number_of (run, less, gutter_of, NULL));
  write_marks (writer, run, less);
  tb_json_end_object (writer);
}

char *
tb_numbers_text (const TbRun *before, const TbRun *after)
{
  TbJsonWriter writer;

  tb_json_writer_init (&writer);
  tb_json_begin_object (&writer, NULL);
  write_run (&writer, "before", before, NULL);
  write_run (&writer, "after", after, NULL);
  write_run (&writer, "difference", after, before);
  tb_json_end_object (&writer);
  return tb_json_writer_finish (&writer);
}
