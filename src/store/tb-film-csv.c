/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"
#include "tb-film-csv.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#include "tb-decimal.h"
#include "tb-document.h"
#include "tb-film-table.h"

#define BYTE_ORDER_MARK "\xef\xbb\xbf"
#define SEPARATORS ",;\t"
/* The distance and the boards. */
#define VALUES (1 + TB_OIL_COLUMNS)
/* As far as the grid reaches. */
#define MAX_FT ((double)TB_OIL_ROWS / TB_OIL_ROWS_PER_FOOT)

/* One line of the table. */
typedef struct Line
{
  double feet;
  double film[TB_OIL_COLUMNS]; /* m */
} Line;

static double
centre_ft (int row)
{
  return (row + 0.5) / TB_OIL_ROWS_PER_FOOT;
}

static int
rows_in_use (const TbOil *oil)
{
  int rows = TB_OIL_ROWS;

  for (; rows > 1; rows--)
    for (int column = 0; column < TB_OIL_COLUMNS; column++)
      if (tb_oil_cell (oil, rows - 1, column) > 0)
        return rows;
  return rows;
}

static void
append_row (GString *text, const TbOil *oil, int row)
{
  char number[TB_DECIMAL_SIZE];

  g_string_append (text, tb_decimal_format (centre_ft (row), number));
  for (int column = 0; column < TB_OIL_COLUMNS; column++)
    {
      tb_decimal_format_si (tb_oil_cell (oil, row, column), tb_film_from_units, tb_units_from_film, number);
      g_string_append_printf (text, ",%s", number);
    }
  g_string_append_c (text, '\n');
}

char *
tb_film_csv_to_text (const TbOil *oil)
{
  GString *text = g_string_new ("feet");

  for (int board = 1; board <= TB_OIL_COLUMNS; board++)
    g_string_append_printf (text, ",board %d", board);
  g_string_append_c (text, '\n');
  for (int row = 0; row < rows_in_use (oil); row++)
    append_row (text, oil, row);
  return g_string_free (text, FALSE);
}

static gboolean fail (GError **error, TbStoreError code, guint line, const char *format, ...)
    G_GNUC_PRINTF (4, 5);
static gboolean
fail (GError **error, TbStoreError code, guint line, const char *format, ...)
{
  g_autofree char *clause = NULL;
  va_list arguments;

  va_start (arguments, format);
  clause = g_strdup_vprintf (format, arguments);
  va_end (arguments);
  /* Translators: a place in a table, and what is wrong there. */
  g_set_error (error, TB_STORE_ERROR, (int)code, _ ("line %u: %s"), line, clause);
  return FALSE;
}

/* A value without the blanks and quotation marks around it. */
static char *
bare (char *value)
{
  gsize length;

  g_strstrip (value);
  length = strlen (value);
  if (length >= 2 && value[0] == '"' && value[length - 1] == '"')
    {
      value[length - 1] = '\0';
      value = g_strstrip (value + 1);
    }
  return value;
}

static gboolean
read_number (char *value, guint index, guint line, double *number, GError **error)
{
  const char *text = bare (value);
  g_autofree char *shown = NULL;
  double max = index == 0 ? MAX_FT : TB_FILM_MAX_UNITS;

  if (!tb_decimal_parse (text, number))
    {
      shown = tb_quotable (text);
      return fail (error, TB_STORE_ERROR_TYPE, line, _ ("“%s” in column %u is no number"), shown, index + 1);
    }
  if (!(*number >= 0 && *number <= max))
    return fail (error, TB_STORE_ERROR_VALUE, line,
                 _ ("%g in column %u is out of range; a number from %g to %g was expected"), *number,
                 index + 1, 0.0, max);
  return TRUE;
}

static gboolean
read_line (char **values, guint number, Line *line, GError **error)
{
  guint count = g_strv_length (values);

  /* Spreadsheets leave empty values behind at the end. */
  while (count > VALUES && *bare (values[count - 1]) == '\0')
    count--;
  if (count != VALUES)
    return fail (error, TB_STORE_ERROR_TYPE, number,
                 _ ("a distance and %d films were expected, %u values were found"), TB_OIL_COLUMNS, count);
  if (!read_number (values[0], 0, number, &line->feet, error))
    return FALSE;
  for (guint column = 0; column < TB_OIL_COLUMNS; column++)
    {
      double units;

      if (!read_number (values[column + 1], column + 1, number, &units, error))
        return FALSE;
      line->film[column] = tb_film_from_units (units);
    }
  return TRUE;
}

/* Headings: a first line that does not begin with a number. */
static gboolean
is_headings (char **values)
{
  g_autofree char *first = g_strdup (values[0] ? values[0] : "");
  double number;

  return !tb_decimal_parse (bare (first), &number);
}

static gboolean
add_line (GArray *lines, const char *text, guint number, GError **error)
{
  g_auto (GStrv) values = g_strsplit_set (text, SEPARATORS, -1);
  Line line;

  if (number == 1 && is_headings (values))
    return TRUE;
  if (!read_line (values, number, &line, error))
    return FALSE;
  if (lines->len > 0 && !(line.feet > g_array_index (lines, Line, lines->len - 1).feet))
    return fail (error, TB_STORE_ERROR_VALUE, number,
                 _ ("a distance beyond that of the line before was expected"));
  if (lines->len == TB_OIL_ROWS * 2)
    return fail (error, TB_STORE_ERROR_TOO_LARGE, number, _ ("at most %d lines were expected"),
                 TB_OIL_ROWS * 2);
  g_array_append_val (lines, line);
  return TRUE;
}

static gboolean
is_blank (const char *text)
{
  return strspn (text, " \t\r" SEPARATORS) == strlen (text);
}

static GArray *
read_lines (const char *text, GError **error)
{
  g_autoptr (GArray) lines = g_array_new (FALSE, FALSE, sizeof (Line));
  g_auto (GStrv) rows = g_strsplit (text, "\n", -1);

  for (guint i = 0; rows[i]; i++)
    if (!is_blank (rows[i]) && !add_line (lines, rows[i], i + 1, error))
      return NULL;
  if (lines->len > 0)
    return g_steal_pointer (&lines);
  g_set_error (error, TB_STORE_ERROR, TB_STORE_ERROR_NOT_OURS,
               _ ("lines with a distance and %d films were expected, none was found"), TB_OIL_COLUMNS);
  return NULL;
}

/* Film at a distance; `after` is the first line that is not nearer. */
static double
film_between (const GArray *lines, guint after, double feet, int column)
{
  const Line *b = &g_array_index (lines, Line, after), *a = after > 0 ? b - 1 : b;
  double share = b->feet > a->feet ? (feet - a->feet) / (b->feet - a->feet) : 1;

  /* At a line it is the line's own film, to the bit. */
  if (feet >= b->feet)
    return b->film[column];
  return a->film[column] + share * (b->film[column] - a->film[column]);
}

static void
fill_grid (const GArray *lines, TbOil *oil)
{
  guint after = 0;

  tb_oil_clear (oil);
  for (int row = 0; row < TB_OIL_ROWS; row++)
    {
      double feet = centre_ft (row);

      while (after < lines->len && g_array_index (lines, Line, after).feet < feet)
        after++;
      for (int column = 0; after < lines->len && column < TB_OIL_COLUMNS; column++)
        tb_oil_set_cell (oil, row, column, film_between (lines, after, feet, column));
    }
  tb_oil_reflect (oil);
}

static gboolean
check_size (gsize length, GError **error)
{
  g_autofree char *size = g_format_size (TB_FILM_CSV_MAX_BYTES);

  if (length > TB_FILM_CSV_MAX_BYTES)
    g_set_error (error, TB_STORE_ERROR, TB_STORE_ERROR_TOO_LARGE, _ ("a table of films has at most %s"), size);
  return length <= TB_FILM_CSV_MAX_BYTES;
}

static gboolean
check_text (const char *text, gsize length, GError **error)
{
  if (!memchr (text, '\0', length) && g_utf8_validate_len (text, length, NULL))
    return TRUE;
  g_set_error_literal (error, TB_STORE_ERROR, TB_STORE_ERROR_NOT_TEXT, _ ("a text was expected"));
  return FALSE;
}

gboolean
tb_film_csv_from_text (const char *text, gsize length, TbOil *oil, GError **error)
{
  g_autofree char *copy = NULL;
  g_autoptr (GArray) lines = NULL;
  g_autofree TbOil *film = g_new (TbOil, 1);

  if (!check_size (length, error) || !check_text (text, length, error))
    return FALSE;
  copy = g_strndup (text, length);
  lines
      = read_lines (g_str_has_prefix (copy, BYTE_ORDER_MARK) ? copy + strlen (BYTE_ORDER_MARK) : copy, error);
  if (!lines)
    return FALSE;
  fill_grid (lines, film);
  if (tb_oil_check (film) != TB_OK)
    {
      g_set_error_literal (error, TB_STORE_ERROR, TB_STORE_ERROR_VALUE,
                           _ ("some oil was expected, there is none"));
      return FALSE;
    }
  *oil = *film;
  return TRUE;
}

static gboolean
finish (GError **error, GError *problem, const char *path)
{
  g_autofree char *shown = g_filename_display_name (path);

  if (!problem)
    return TRUE;
  tb_document_finish_error (&problem, shown);
  g_propagate_error (error, problem);
  return FALSE;
}

gboolean
tb_film_csv_save (const TbOil *oil, const char *path, GError **error)
{
  g_autofree char *text = tb_film_csv_to_text (oil);
  GError *problem = NULL;

  tb_document_save_file (path, text, &problem);
  return finish (error, problem, path);
}

gboolean
tb_film_csv_load (const char *path, TbOil *oil, GError **error)
{
  GError *problem = NULL;
  gsize length = 0;
  g_autofree char *text = tb_document_read_file (path, &length, &problem);

  if (text)
    tb_film_csv_from_text (text, length, oil, &problem);
  return finish (error, problem, path);
}

/* What a file is called, without folder and end. */
static char *
name_of (const char *path)
{
  g_autofree char *base = g_path_get_basename (path);
  g_autofree char *shown = g_filename_display_name (base);
  char *dot = strrchr (shown, '.');

  if (dot && dot != shown)
    *dot = '\0';
  return tb_quotable (shown);
}

TbPattern *
tb_pattern_import (const char *path, GError **error)
{
  g_autofree TbOil *oil = g_new (TbOil, 1);
  g_autofree char *name = NULL;

  if (!tb_film_csv_load (path, oil, error))
    return NULL;
  name = name_of (path);
  return tb_pattern_new_table (NULL, name, oil, NULL);
}
