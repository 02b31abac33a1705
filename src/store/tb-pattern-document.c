/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"
#include "tb-pattern-document.h"

#include <glib/gi18n-lib.h>
#include "tb-film-table.h"
#include "tb-record.h"
#include "tb-strips-json.h"

/* Less would be no profile but a rounding error. */
#define MIN_UNITS 0.001
#define MIN_LENGTH_FT 5.0
#define EDGE_BOARD 0.5

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
  { "front_units", offsetof (TbOilProfile, front), UNITS, MIN_UNITS, TB_FILM_MAX_UNITS },
  { "back_units", offsetof (TbOilProfile, back), UNITS, MIN_UNITS, TB_FILM_MAX_UNITS },
  { "outside_share", offsetof (TbOilProfile, outside_share), tb_same, tb_same, 0, 1 },
  { "outside_board", offsetof (TbOilProfile, outside_x), BOARDS, EDGE_BOARD, TB_MIDDLE_BOARD },
  { "inside_board", offsetof (TbOilProfile, inside_x), BOARDS, EDGE_BOARD, TB_MIDDLE_BOARD },
  { NULL, 0, NULL, NULL, 0, 0 },
};
static const char *const profile_keys[] = { "length_ft",     "fade_ft",       "front_units",  "back_units",
                                            "outside_share", "outside_board", "inside_board", NULL };
static const char *const pattern_keys[]
    = { "tenboard", "version", "id", "name", "profile", "table", "strips", NULL };

/* Answers the pattern, or turns core's verdict into an error. */
static TbPattern *
finish (TbReader *reader, TbPattern *pattern, TbStatus status)
{
  g_autofree char *sentence = NULL;

  if (pattern)
    return pattern;
  sentence = tb_problem_sentence (&(TbProblem){ .status = status });
  tb_reader_fail (reader, NULL, TB_STORE_ERROR_VALUE, "%s", sentence);
  return NULL;
}

static gboolean
read_profile_numbers (TbReader *reader, JsonObject *object, gpointer data)
{
  TbOilProfile *profile = data;

  if (!tb_reader_only (reader, object, profile_keys, NULL)
      || !tb_record_read (reader, object, profile_numbers, profile))
    return FALSE;
  if (profile->fade > profile->length)
    return tb_reader_fail (reader, "fade_ft", TB_STORE_ERROR_VALUE, _ ("at most the length was expected"));
  if (profile->inside_x < profile->outside_x)
    return tb_reader_fail (reader, "inside_board", TB_STORE_ERROR_VALUE,
                           _ ("at least outside_board was expected"));
  return TRUE;
}

static TbPattern *
read_profile (TbReader *reader, JsonObject *object, const TbDocumentNames *names)
{
  TbOilProfile profile = { 0 };
  TbPattern *pattern;
  TbStatus status;

  if (!tb_reader_part (reader, object, "profile", read_profile_numbers, &profile))
    return NULL;
  pattern = tb_pattern_new_profile (names->id, names->name, &profile, &status);
  return finish (reader, pattern, status);
}

static TbPattern *
read_table (TbReader *reader, JsonObject *object, const TbDocumentNames *names)
{
  g_autofree TbOil *oil = g_new0 (TbOil, 1);
  TbPattern *pattern;
  TbStatus status;

  if (!tb_reader_part (reader, object, "table", tb_film_table_read, oil))
    return NULL;
  pattern = tb_pattern_new_table (names->id, names->name, oil, &status);
  return finish (reader, pattern, status);
}

static TbPattern *
read_strips (TbReader *reader, JsonObject *object, const TbDocumentNames *names)
{
  g_autoptr (GArray) strips = g_array_new (FALSE, FALSE, sizeof (TbStrip));
  TbPattern *pattern;
  TbStatus status;

  if (!tb_strips_read (reader, object, "strips", strips))
    return NULL;
  pattern
      = tb_pattern_new_strips (names->id, names->name, (const TbStrip *) strips->data, strips->len, &status);
  return finish (reader, pattern, status);
}

/* The ways of describing a pattern, in the order of TbPatternKind. */
static const struct
{
  const char *key;
  TbPattern *(*read) (TbReader *reader, JsonObject *object, const TbDocumentNames *names);
} descriptions[] = {
  [TB_PATTERN_PROFILE] = { "profile", read_profile },
  [TB_PATTERN_TABLE] = { "table", read_table },
  [TB_PATTERN_STRIPS] = { "strips", read_strips },
};

/* Which description the object has; −1 if it has none or several. */
static int
find_description (TbReader *reader, JsonObject *object)
{
  int found = -1, count = 0;

  for (int kind = 0; kind < (int) G_N_ELEMENTS (descriptions); kind++)
    if (json_object_has_member (object, descriptions[kind].key))
      {
        found = kind;
        count++;
      }
  if (count == 1)
    return found;
  tb_reader_fail (reader, NULL, count == 0 ? TB_STORE_ERROR_MISSING_KEY : TB_STORE_ERROR_UNKNOWN_KEY,
                  _ ("one of the keys profile, table and strips was expected"));
  return -1;
}

TbPattern *
tb_pattern_read (TbReader *reader, JsonObject *object, gboolean embedded)
{
  TbDocumentNames names;
  int kind;

  if (!tb_document_check_head (reader, object, TB_DOCUMENT_PATTERN, embedded)
      || !tb_reader_only (reader, object, pattern_keys, NULL)
      || !tb_reader_names (reader, object, embedded, &names))
    return NULL;
  kind = find_description (reader, object);
  return kind < 0 ? NULL : descriptions[kind].read (reader, object, &names);
}

static void
write_profile (TbJsonWriter *writer, const TbOilProfile *profile)
{
  tb_json_begin_object (writer, "profile");
  tb_record_write (writer, profile_numbers, profile);
  tb_json_end_object (writer);
}

static void
write_table (TbJsonWriter *writer, const TbOil *oil)
{
  tb_json_begin_object (writer, "table");
  tb_film_table_write (writer, oil);
  tb_json_end_object (writer);
}

void
tb_pattern_write (TbJsonWriter *writer, const TbPattern *pattern)
{
  tb_json_string (writer, "id", pattern->id);
  tb_json_string (writer, "name", pattern->name[0] ? pattern->name : NULL);
  switch (pattern->kind)
    {
    case TB_PATTERN_PROFILE:
      write_profile (writer, &pattern->profile);
      break;
    case TB_PATTERN_STRIPS:
      tb_strips_write (writer, "strips", pattern->strips, pattern->n_strips);
      break;
    case TB_PATTERN_TABLE:
    default:
      write_table (writer, &pattern->oil);
    }
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

  tb_reader_init (&reader, error);
  return root ? tb_pattern_read (&reader, json_node_get_object (root), FALSE) : NULL;
}
