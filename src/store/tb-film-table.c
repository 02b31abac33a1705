/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"
#include "tb-film-table.h"

#include <glib/gi18n-lib.h>
#include <math.h>

/* What one row of the grid covers, and all of them. */
#define ROW_FT (1.0 / TB_OIL_ROWS_PER_FOOT)
#define TABLE_FT ((double) TB_OIL_ROWS / TB_OIL_ROWS_PER_FOOT)

static const char *const table_keys[] = { "spacing_ft", "rows", NULL };

/* A table being read. */
typedef struct Table
{
  TbOil *oil;
  int each; /* rows of the grid that one row of the table stands for */
} Table;

/* How many rows of the grid a spacing covers; 0 if that is no whole number. */
static int
grid_rows (double spacing_ft)
{
  double rows = spacing_ft / ROW_FT;

  return rows >= 1 && rows <= TB_OIL_ROWS && rows == floor (rows) ? (int) rows : 0;
}

static gboolean
read_film (TbReader *reader, JsonNode *node, double *film)
{
  double units;

  if (!tb_reader_item_number (reader, node, &units))
    return FALSE;
  if (!(units >= 0 && units <= TB_FILM_MAX_UNITS))
    return tb_reader_fail (reader, NULL, TB_STORE_ERROR_VALUE,
                           _ ("%g is out of range; a number from %g to %g was expected"), units, 0.0,
                           TB_FILM_MAX_UNITS);
  *film = tb_film_from_units (units);
  return TRUE;
}

static gboolean
read_films (TbReader *reader, JsonArray *list, double films[TB_OIL_COLUMNS])
{
  for (guint column = 0; column < TB_OIL_COLUMNS; column++)
    {
      gsize mark = tb_reader_enter_index (reader, column + 1);

      if (!read_film (reader, json_array_get_element (list, column), &films[column]))
        return FALSE;
      tb_reader_leave (reader, mark);
    }
  return TRUE;
}

static void
fill_rows (Table *table, guint index, const double films[TB_OIL_COLUMNS])
{
  int first = (int) index * table->each;

  for (int row = first; row < first + table->each; row++)
    for (int column = 0; column < TB_OIL_COLUMNS; column++)
      tb_oil_set_cell (table->oil, row, column, films[column]);
}

static gboolean
read_row (TbReader *reader, JsonNode *item, guint index, gpointer data)
{
  Table *table = data;
  double films[TB_OIL_COLUMNS];

  if (((gint64) index + 1) * table->each > TB_OIL_ROWS)
    return tb_reader_fail (reader, NULL, TB_STORE_ERROR_TOO_LARGE, _ ("at most %g ft of rows were expected"),
                           TABLE_FT);
  if (!JSON_NODE_HOLDS_ARRAY (item) || json_array_get_length (json_node_get_array (item)) != TB_OIL_COLUMNS)
    return tb_reader_fail (reader, NULL, TB_STORE_ERROR_TYPE, _ ("a list of %d numbers was expected"),
                           TB_OIL_COLUMNS);
  if (!read_films (reader, json_node_get_array (item), films))
    return FALSE;
  fill_rows (table, index, films);
  return TRUE;
}

gboolean
tb_film_table_read (TbReader *reader, JsonObject *object, gpointer oil)
{
  Table table = { .oil = oil };
  double spacing;

  if (!tb_reader_only (reader, object, table_keys, NULL)
      || !tb_reader_number (reader, object, "spacing_ft", &spacing))
    return FALSE;
  table.each = grid_rows (spacing);
  if (table.each == 0)
    return tb_reader_fail (reader, "spacing_ft", TB_STORE_ERROR_VALUE, _ ("a multiple of %g was expected"),
                           ROW_FT);
  return tb_reader_items (reader, object, "rows", read_row, &table);
}

static gboolean
has_oil (const TbOil *oil, int row)
{
  for (int column = 0; column < TB_OIL_COLUMNS; column++)
    if (tb_oil_cell (oil, row, column) > 0)
      return TRUE;
  return FALSE;
}

static int
rows_in_use (const TbOil *oil)
{
  int rows = TB_OIL_ROWS;

  while (rows > 0 && !has_oil (oil, rows - 1))
    rows--;
  return rows;
}

static void
write_row (TbJsonWriter *writer, const TbOil *oil, int row)
{
  tb_json_begin_row (writer, NULL);
  for (int column = 0; column < TB_OIL_COLUMNS; column++)
    tb_json_number_si (writer, NULL, tb_oil_cell (oil, row, column), tb_film_from_units, tb_units_from_film);
  tb_json_end_row (writer);
}

void
tb_film_table_write (TbJsonWriter *writer, const TbOil *oil)
{
  int rows = rows_in_use (oil);

  tb_json_number (writer, "spacing_ft", ROW_FT);
  tb_json_begin_list (writer, "rows");
  for (int row = 0; row < rows; row++)
    write_row (writer, oil, row);
  tb_json_end_list (writer);
}
