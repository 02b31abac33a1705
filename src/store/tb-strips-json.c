/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"
#include "tb-strips-json.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "tb-record.h"

/* More than any machine leaves on one board: a whole lane has some 25 mL. */
#define MAX_MICROLITRES 5000.0
#define MICROLITRES_PER_MILLILITRE 1000.0

static double
volume_from_microlitres (double microlitres)
{
  return tb_cubic_metres_from_ml (microlitres / MICROLITRES_PER_MILLILITRE);
}

static double
microlitres_from_volume (double volume)
{
  return tb_ml_from_cubic_metres (volume) * MICROLITRES_PER_MILLILITRE;
}

#define FEET tb_metres_from_ft, tb_ft_from_metres

static const TbRecordNumber strip_numbers[] = {
  { "start_ft", offsetof (TbStrip, start), FEET, 0, TB_HEAD_PIN_FT },
  { "end_ft", offsetof (TbStrip, end), FEET, 0, TB_HEAD_PIN_FT },
  { "microlitres_per_board", offsetof (TbStrip, volume), volume_from_microlitres, microlitres_from_volume, 0,
    MAX_MICROLITRES },
  { "taper_ft", offsetof (TbStrip, taper), FEET, 0, TB_HEAD_PIN_FT },
  { NULL, 0, NULL, NULL, 0, 0 },
};
static const char *const strip_keys[]
    = { "way", "right_board", "left_board", "start_ft", "end_ft", "microlitres_per_board", "taper_ft", NULL };
static const char *const way_names[TB_N_STRIP_WAYS] = { "out", "back" };

static gboolean
read_way (TbReader *reader, JsonObject *object, TbStrip *strip)
{
  const char *word = tb_reader_string (reader, object, "way", TB_ID_MAX);

  if (!word)
    return FALSE;
  for (int way = 0; way < TB_N_STRIP_WAYS; way++)
    if (g_str_equal (word, way_names[way]))
      {
        strip->way = (TbStripWay) way;
        return TRUE;
      }
  return tb_reader_fail (reader, "way", TB_STORE_ERROR_VALUE, _ ("%s was expected"), _ ("one of out, back"));
}

static gboolean
read_board (TbReader *reader, JsonObject *object, const char *key, int *board)
{
  double number;

  if (!tb_reader_number (reader, object, key, &number))
    return FALSE;
  if (!(number >= 1 && number <= TB_LANE_BOARDS && number == floor (number)))
    return tb_reader_fail (reader, key, TB_STORE_ERROR_VALUE, _ ("a whole number from 1 to %d was expected"),
                           TB_LANE_BOARDS);
  *board = (int) number;
  return TRUE;
}

/* Numbers that are each in their range, and are no strip together. */
static gboolean
check_strip (TbReader *reader, const TbStrip *strip)
{
  if (tb_strip_check (strip) == TB_OK)
    return TRUE;
  return tb_reader_fail (reader, NULL, TB_STORE_ERROR_VALUE,
                         _ ("a strip that goes its way, from right to left, and is longer than its taper was "
                            "expected"));
}

static gboolean
read_strip (TbReader *reader, JsonNode *item, guint index, gpointer data)
{
  GArray *strips = data;
  JsonObject *object = tb_reader_item_object (reader, item);
  TbStrip strip = { 0 };

  if (!object)
    return FALSE;
  if (index >= TB_STRIPS_MAX)
    return tb_reader_fail (reader, NULL, TB_STORE_ERROR_TOO_LARGE, _ ("a pattern has at most %d strips"),
                           TB_STRIPS_MAX);
  if (!tb_reader_only (reader, object, strip_keys, NULL) || !read_way (reader, object, &strip)
      || !read_board (reader, object, "right_board", &strip.right_board)
      || !read_board (reader, object, "left_board", &strip.left_board)
      || !tb_record_read (reader, object, strip_numbers, &strip) || !check_strip (reader, &strip))
    return FALSE;
  g_array_append_val (strips, strip);
  return TRUE;
}

gboolean
tb_strips_read (TbReader *reader, JsonObject *object, const char *key, GArray *strips)
{
  return tb_reader_items (reader, object, key, read_strip, strips);
}

static void
write_strip (TbJsonWriter *writer, const TbStrip *strip)
{
  tb_json_begin_object (writer, NULL);
  tb_json_string (writer, "way", way_names[strip->way]);
  tb_json_number (writer, "right_board", strip->right_board);
  tb_json_number (writer, "left_board", strip->left_board);
  tb_record_write (writer, strip_numbers, strip);
  tb_json_end_object (writer);
}

void
tb_strips_write (TbJsonWriter *writer, const char *key, const TbStrip *strips, guint count)
{
  tb_json_begin_list (writer, key);
  for (guint i = 0; i < count; i++)
    write_strip (writer, &strips[i]);
  tb_json_end_list (writer);
}
