/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"
#include "tb-path-command.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "tb-decimal.h"
#include "tb-json-writer.h"

/* Time from row to row, s. */
#define ROW_TIME 0.01

/* One column; in the units of --numbers. */
typedef struct Column
{
  const char *name;
  double (*value) (const TbSample *sample);
} Column;

static double
time_of (const TbSample *sample)
{
  return sample->time;
}

static double
distance_of (const TbSample *sample)
{
  return tb_ft_from_metres (sample->position.y);
}

static double
board_of (const TbSample *sample)
{
  return tb_board_from_x (sample->position.x);
}

static double
height_of (const TbSample *sample)
{
  return tb_in_from_metres (sample->position.z);
}

static double
speed_of (const TbSample *sample)
{
  return tb_mph_from_metres_per_second (hypot (sample->velocity.x, sample->velocity.y));
}

static double
heading_of (const TbSample *sample)
{
  return tb_deg_from_radians (tb_sample_heading (sample));
}

static double
revolutions_of (const TbSample *sample)
{
  return tb_revolutions_from_radians (sample->turned);
}

static double
film_of (const TbSample *sample)
{
  return tb_units_from_film (sample->film_on_lane);
}

static const Column columns[] = {
  { "time_s", time_of },          { "distance_ft", distance_of },       { "board", board_of },
  { "centre_height_in", height_of }, { "speed_mph", speed_of },         { "heading_deg", heading_of },
  { "revolutions", revolutions_of }, { "film_units", film_of },
};
static const char *const phase_names[TB_N_PHASES] = { "flight", "slide", "roll" };

/* Rows of a path: one every ROW_TIME, and its end. */
static guint
count_rows (const TbPath *path)
{
  return (guint) ceil (tb_path_duration (path) / ROW_TIME) + 1;
}

static TbSample
find_row (const TbPath *path, guint row)
{
  TbSample sample = { 0 };

  tb_path_at_time (path, MIN (row * ROW_TIME, tb_path_duration (path)), &sample);
  return sample;
}

static void
write_csv_run (GString *text, const char *side, const TbPath *path)
{
  char digits[TB_DECIMAL_SIZE];

  for (guint row = 0; row < count_rows (path); row++)
    {
      TbSample sample = find_row (path, row);

      g_string_append (text, side);
      for (gsize i = 0; i < G_N_ELEMENTS (columns); i++)
        g_string_append_printf (text, ",%s", tb_decimal_format (columns[i].value (&sample), digits));
      g_string_append_printf (text, ",%s\n", phase_names[sample.phase]);
    }
}

static char *
make_csv (TbRun *runs[TB_N_SIDES])
{
  GString *text = g_string_new ("run");

  for (gsize i = 0; i < G_N_ELEMENTS (columns); i++)
    g_string_append_printf (text, ",%s", columns[i].name);
  g_string_append (text, ",phase\n");
  write_csv_run (text, "before", &runs[TB_SIDE_BEFORE]->path);
  write_csv_run (text, "after", &runs[TB_SIDE_AFTER]->path);
  return g_string_free (text, FALSE);
}

static void
write_json_run (TbJsonWriter *writer, const char *side, const TbPath *path)
{
  tb_json_begin_list (writer, side);
  for (guint row = 0; row < count_rows (path); row++)
    {
      TbSample sample = find_row (path, row);

      tb_json_begin_object (writer, NULL);
      for (gsize i = 0; i < G_N_ELEMENTS (columns); i++)
        tb_json_number (writer, columns[i].name, columns[i].value (&sample));
      tb_json_string (writer, "phase", phase_names[sample.phase]);
      tb_json_end_object (writer);
    }
  tb_json_end_list (writer);
}

static char *
make_json (TbRun *runs[TB_N_SIDES])
{
  TbJsonWriter writer;

  tb_json_writer_init (&writer);
  tb_json_begin_object (&writer, NULL);
  write_json_run (&writer, "before", &runs[TB_SIDE_BEFORE]->path);
  write_json_run (&writer, "after", &runs[TB_SIDE_AFTER]->path);
  tb_json_end_object (&writer);
  return tb_json_writer_finish (&writer);
}

char *
tb_path_text (TbRun *runs[TB_N_SIDES], gboolean csv)
{
  return csv ? make_csv (runs) : make_json (runs);
}

static gboolean
save (const char *filename, const char *text, GError **error)
{
  g_autoptr (GError) problem = NULL;
  g_autofree char *shown = g_filename_display_name (filename);

  if (tb_document_save_file (filename, text, &problem))
    return TRUE;
  tb_document_finish_error (&problem, shown);
  g_set_error_literal (error, TB_HEADLESS_ERROR, TB_EXIT_FILE, problem->message);
  return FALSE;
}

gboolean
tb_path_command (TbRequest *request, const char *filename, GError **error)
{
  TbRun *runs[TB_N_SIDES] = { NULL };
  g_autofree char *lower = g_ascii_strdown (filename, -1);
  gboolean csv = g_str_has_suffix (lower, ".csv"), done = FALSE;

  if (!csv && !g_str_has_suffix (lower, ".json"))
    {
      g_autofree char *shown = tb_quotable_file (filename);

      g_set_error (error, TB_HEADLESS_ERROR, TB_EXIT_USAGE, _ ("--path %s: a name that ends in .csv or .json was expected."),
                   shown);
      return FALSE;
    }
  if (tb_request_throw (request, runs, error))
    {
      g_autofree char *text = tb_path_text (runs, csv);

      done = save (filename, text, error);
    }
  for (int side = 0; side < TB_N_SIDES; side++)
    g_clear_pointer (&runs[side], tb_run_unref);
  return done;
}
