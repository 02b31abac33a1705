/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"
#include "tb-pattern-document.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "tb-record.h"

/* More oil than any lane has; heads of competition patterns carry 70 to 120 units. */
#define MAX_UNITS 500.0
/* Less would be no profile but a rounding error. */
#define MIN_UNITS 0.001
#define MIN_LENGTH_FT 5.0
#define EDGE_BOARD 0.5
/* What one row of the grid covers, and all of them. */
#define ROW_FT (1.0 / TB_OIL_ROWS_PER_FOOT)
#define TABLE_FT ((double) TB_OIL_ROWS / TB_OIL_ROWS_PER_FOOT)

/* Distance from the lane's edge of the centre of a board counted from that edge. */
static double
metres_from_edge (double board)
{
  return TB_LANE_HALF_WIDTH - tb_x_from_board (board);
}

static double
board_from_edge (double metres)
{
  return tb_board_from_x (TB_LANE_HALF_WIDTH - metres);
}

#define FEET tb_metres_from_ft, tb_ft_from_metres
#define UNITS tb_film_from_units, tb_units_from_film
#define BOARDS metres_from_edge, board_from_edge

static const TbRecordNumber profile_numbers[] = {
  { "length_ft", offsetof (TbOilProfile, length), FEET, MIN_LENGTH_FT, TB_HEAD_PIN_FT },
  { "fade_ft", offsetof (TbOilProfile, fade), FEET, 0, TB_HEAD_PIN_FT },
  { "front_units", offsetof (TbOilProfile, front), UNITS, MIN_UNITS, MAX_UNITS },
  { "back_units", offsetof (TbOilProfile, back), UNITS, MIN_UNITS, MAX_UNITS },
  { "outside_share", offsetof (TbOilProfile, outside_share), tb_same, tb_same, 0, 1 },
  { "outside_board", offsetof (TbOilProfile, outside_x), BOARDS, EDGE_BOARD, TB_MIDDLE_BOARD },
  { "inside_board", offsetof (TbOilProfile, inside_x), BOARDS, EDGE_BOARD, TB_MIDDLE_BOARD },
  { NULL, 0, NULL, NULL, 0, 0 },
};
static const char *const profile_keys[] = { "length_ft",     "fade_ft",       "front_units", "back_units",
                                            "outside_share", "outside_board", "inside_board", NULL };
static const char *const table_keys[] = { "spacing_ft", "rows", NULL };
static const char *const pattern_keys[] = { "tenboard", "version", "id", "name", "profile", "table", NULL };

typedef struct Names
{
  const char *id, *name;
} Names;

static gboolean
read_names (TbReader *reader, JsonObject *object, gboolean embedded, Names *names, GError **error)
{
  gboolean with_id = !embedded || tb_reader_has (object, "id");
  gboolean with_name = !embedded || tb_reader_has (object, "name");

  names->id = with_id ? tb_reader_id (reader, object, "id", error) : NULL;
  if (with_id && !names->id)
    return FALSE;
  names->name = with_name ? tb_reader_name (reader, object, "name", error) : NULL;
  return names->name || !with_name;
}

/* Answers the pattern, or turns core's verdict into an error. */
static TbPattern *
finish (TbReader *reader, TbPattern *pattern, TbStatus status, GError **error)
{
  g_autofree char *sentence = NULL;

  if (pattern)
    return pattern;
  sentence = tb_problem_sentence (&(TbProblem){ .status = status });
  tb_reader_fail (reader, NULL, TB_STORE_ERROR_VALUE, error, "%s", sentence);
  return NULL;
}

static gboolean
check_order (TbReader *reader, const TbOilProfile *profile, GError **error)
{
  if (profile->fade > profile->length)
    return tb_reader_fail (reader, "fade_ft", TB_STORE_ERROR_VALUE, error, _ ("at most the length was expected"));
  if (profile->inside_x < profile->outside_x)
    return tb_reader_fail (reader, "inside_board", TB_STORE_ERROR_VALUE, error,
                           _ ("at least outside_board was expected"));
  return TRUE;
}

static TbPattern *
read_profile (TbReader *reader, JsonObject *object, const Names *names, GError **error)
{
  TbOilProfile profile = { 0 };
  TbPattern *pattern;
  TbStatus status;

  if (!tb_reader_only (reader, object, profile_keys, NULL, error)
      || !tb_record_read (reader, object, profile_numbers, &profile, error) || !check_order (reader, &profile, error))
    return NULL;
  pattern = tb_pattern_new_profile (names->id, names->name, &profile, &status);
  return finish (reader, pattern, status, error);
}

/* How many rows of the grid one row of the table stands for; 0 if that is no whole number. */
static int
grid_rows (double spacing_ft)
{
  double rows = spacing_ft / ROW_FT;

  return rows >= 1 && rows <= TB_OIL_ROWS && rows == floor (rows) ? (int) rows : 0;
}

static gboolean
read_film (TbReader *reader, JsonNode *node, double *film, GError **error)
{
  double units;

  if (!tb_node_number (node, &units))
    return tb_reader_fail (reader, NULL, TB_STORE_ERROR_TYPE, error, _ ("%s was expected"), _ ("a number"));
  if (!(units >= 0 && units <= MAX_UNITS))
    return tb_reader_fail (reader, NULL, TB_STORE_ERROR_VALUE, error,
                           _ ("%g is out of range; a number from %g to %g was expected"), units, 0.0, MAX_UNITS);
  *film = tb_film_from_units (units);
  return TRUE;
}

static gboolean
read_row (TbReader *reader, JsonNode *node, double films[TB_OIL_COLUMNS], GError **error)
{
  JsonArray *list = JSON_NODE_HOLDS_ARRAY (node) ? json_node_get_array (node) : NULL;

  if (!list || json_array_get_length (list) != TB_OIL_COLUMNS)
    return tb_reader_fail (reader, NULL, TB_STORE_ERROR_TYPE, error, _ ("a list of %d numbers was expected"),
                           TB_OIL_COLUMNS);
  for (guint column = 0; column < TB_OIL_COLUMNS; column++)
    {
      gsize mark = tb_reader_enter_index (reader, column + 1);

      if (!read_film (reader, json_array_get_element (list, column), &films[column], error))
        return FALSE;
      tb_reader_leave (reader, mark);
    }
  return TRUE;
}

/* Fills `each` rows of the grid with one of the table. */
static void
fill_rows (TbOil *oil, int first, int each, const double films[TB_OIL_COLUMNS])
{
  for (int row = first; row < first + each; row++)
    for (int column = 0; column < TB_OIL_COLUMNS; column++)
      tb_oil_set_cell (oil, row, column, films[column]);
}

static gboolean
read_rows (TbReader *reader, JsonArray *list, int each, TbOil *oil, GError **error)
{
  int count = (int) MIN (json_array_get_length (list), TB_OIL_ROWS + 1u);

  if (count * each > TB_OIL_ROWS)
    return tb_reader_fail (reader, NULL, TB_STORE_ERROR_TOO_LARGE, error, _ ("at most %g ft of rows were expected"),
                           TABLE_FT);
  for (int i = 0; i < count; i++)
    {
      gsize mark = tb_reader_enter_index (reader, (guint) i + 1);
      double films[TB_OIL_COLUMNS];

      if (!read_row (reader, json_array_get_element (list, (guint) i), films, error))
        return FALSE;
      fill_rows (oil, i * each, each, films);
      tb_reader_leave (reader, mark);
    }
  return TRUE;
}

static gboolean
read_table_films (TbReader *reader, JsonObject *object, TbOil *oil, GError **error)
{
  JsonArray *rows;
  double spacing;
  gsize mark;

  if (!tb_reader_only (reader, object, table_keys, NULL, error)
      || !tb_reader_number (reader, object, "spacing_ft", &spacing, error))
    return FALSE;
  if (grid_rows (spacing) == 0)
    return tb_reader_fail (reader, "spacing_ft", TB_STORE_ERROR_VALUE, error, _ ("a multiple of %g was expected"),
                           ROW_FT);
  rows = tb_reader_list (reader, object, "rows", error);
  if (!rows)
    return FALSE;
  mark = tb_reader_enter (reader, "rows");
  if (!read_rows (reader, rows, grid_rows (spacing), oil, error))
    return FALSE;
  tb_reader_leave (reader, mark);
  return TRUE;
}

static TbPattern *
read_table (TbReader *reader, JsonObject *object, const Names *names, GError **error)
{
  g_autofree TbOil *oil = g_new0 (TbOil, 1);
  TbPattern *pattern;
  TbStatus status;

  if (!read_table_films (reader, object, oil, error))
    return NULL;
  pattern = tb_pattern_new_table (names->id, names->name, oil, &status);
  return finish (reader, pattern, status, error);
}

typedef TbPattern *(*ReadBody) (TbReader *reader, JsonObject *object, const Names *names, GError **error);

static TbPattern *
read_member (TbReader *reader, JsonObject *object, const char *key, const Names *names, GError **error)
{
  ReadBody read_body = g_str_equal (key, "table") ? read_table : read_profile;
  JsonObject *body = tb_reader_object (reader, object, key, error);
  TbPattern *pattern;
  gsize mark;

  if (!body)
    return NULL;
  mark = tb_reader_enter (reader, key);
  pattern = read_body (reader, body, names, error);
  if (pattern)
    tb_reader_leave (reader, mark);
  return pattern;
}

TbPattern *
tb_pattern_read (TbReader *reader, JsonObject *object, gboolean embedded, GError **error)
{
  gboolean table = json_object_has_member (object, "table");
  Names names;

  if (!tb_document_check_head (reader, object, TB_DOCUMENT_PATTERN, embedded, error)
      || !tb_reader_only (reader, object, pattern_keys, NULL, error)
      || !read_names (reader, object, embedded, &names, error))
    return NULL;
  if (table && json_object_has_member (object, "profile"))
    {
      tb_reader_fail (reader, "table", TB_STORE_ERROR_UNKNOWN_KEY, error,
                      _ ("a pattern has a profile or a table, not both"));
      return NULL;
    }
  return read_member (reader, object, table ? "table" : "profile", &names, error);
}

static int
rows_in_use (const TbOil *oil)
{
  int rows = TB_OIL_ROWS;

  while (rows > 0)
    {
      for (int column = 0; column < TB_OIL_COLUMNS; column++)
        if (tb_oil_cell (oil, rows - 1, column) > 0)
          return rows;
      rows--;
    }
  return rows;
}

static void
write_row (TbJsonWriter *writer, const TbOil *oil, int row)
{
  tb_json_begin_row (writer, NULL);
  for (int column = 0; column < TB_OIL_COLUMNS; column++)
    tb_json_number_si (writer, NULL, tb_oil_cell (oil, row, column), UNITS);
  tb_json_end_row (writer);
}

static void
write_table (TbJsonWriter *writer, const TbOil *oil)
{
  tb_json_begin_object (writer, "table");
  tb_json_number (writer, "spacing_ft", ROW_FT);
  tb_json_begin_list (writer, "rows");
  for (int row = 0; row < rows_in_use (oil); row++)
    write_row (writer, oil, row);
  tb_json_end_list (writer);
  tb_json_end_object (writer);
}

static void
write_profile (TbJsonWriter *writer, const TbOilProfile *profile)
{
  tb_json_begin_object (writer, "profile");
  tb_record_write (writer, profile_numbers, profile);
  tb_json_end_object (writer);
}

void
tb_pattern_write (TbJsonWriter *writer, const TbPattern *pattern)
{
  tb_json_string (writer, "id", pattern->id);
  tb_json_string (writer, "name", pattern->name[0] ? pattern->name : NULL);
  if (pattern->kind == TB_PATTERN_PROFILE)
    write_profile (writer, &pattern->profile);
  else
    write_table (writer, &pattern->oil);
}

char *
tb_pattern_to_text (const TbPattern *pattern)
{
  TbJsonWriter writer;

  tb_json_writer_init (&writer);
  tb_json_begin_object (&writer, NULL);
  tb_document_write_head (&writer, TB_DOCUMENT_PATTERN);
  tb_pattern_write (&writer, pattern);
  tb_json_end_object (&writer);
  return tb_json_writer_finish (&writer);
}

TbPattern *
tb_pattern_from_text (const char *text, gsize length, GError **error)
{
  g_auto (TbReader) reader = { 0 };
  g_autoptr (JsonNode) root = tb_document_parse (TB_DOCUMENT_PATTERN, text, length, error);

  tb_reader_init (&reader);
  return root ? tb_pattern_read (&reader, json_node_get_object (root), FALSE, error) : NULL;
}
