/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"
#include "tb-model-json.h"

#include <glib/gi18n-lib.h>

typedef struct Part
{
  const char *name;
  gsize offset; /* of a bool in TbOptions */
} Part;

static const Part parts[] = {
  { "edges", offsetof (TbOptions, edgeless) },
  { "landing_squeeze", offsetof (TbOptions, no_landing_squeeze) },
  { "film_on_ball", offsetof (TbOptions, no_film_on_ball) },
  { "rolling_resistance", offsetof (TbOptions, no_rolling_resistance) },
  { "air_drag", offsetof (TbOptions, no_air_drag) },
  { "pivot_friction", offsetof (TbOptions, no_pivot_friction) },
  { "cross_tilt", offsetof (TbOptions, no_cross_tilt) },
};

static bool *
part_of (const Part *part, TbOptions *options)
{
  return (bool *) ((char *) options + part->offset);
}

static double *
constant_of (const TbAssumedInfo *info, TbAssumed *assumed)
{
  return (double *) ((char *) assumed + info->offset);
}

const TbAssumedInfo *
tb_assumed_find (const char *name)
{
  for (const TbAssumedInfo *info = tb_assumed_table; info->name; info++)
    if (g_str_equal (info->name, name))
      return info;
  return NULL;
}

static gboolean
read_constant (TbReader *reader, JsonObject *object, const TbAssumedInfo *info, TbAssumed *assumed)
{
  double number;

  if (!tb_reader_number (reader, object, info->name, &number))
    return FALSE;
  if (!(number >= info->low && number <= info->high))
    return tb_reader_fail (reader, info->name, TB_STORE_ERROR_VALUE,
                           _ ("%g is out of range; a number from %g to %g was expected"), number, info->low,
                           info->high);
  *constant_of (info, assumed) = info->to_si (number);
  return TRUE;
}

gboolean
tb_assumed_read (TbReader *reader, JsonObject *object, gpointer assumed)
{
  g_autoptr (GPtrArray) names = g_ptr_array_new ();

  for (const TbAssumedInfo *info = tb_assumed_table; info->name; info++)
    {
      g_ptr_array_add (names, (gpointer) info->name);
      if (json_object_has_member (object, info->name) && !read_constant (reader, object, info, assumed))
        return FALSE;
    }
  g_ptr_array_add (names, NULL);
  return tb_reader_only (reader, object, (const char *const *) names->pdata, NULL);
}

void
tb_assumed_write (TbJsonWriter *writer, const char *key, const TbAssumed *assumed)
{
  TbAssumed standard = tb_assumed_default ();
  TbAssumed moved = *assumed;
  gboolean begun = FALSE;

  for (const TbAssumedInfo *info = tb_assumed_table; info->name; info++)
    {
      if (*constant_of (info, &moved) == *constant_of (info, &standard))
        continue;
      if (!begun)
        tb_json_begin_object (writer, key);
      begun = TRUE;
      tb_json_number_si (writer, info->name, *constant_of (info, &moved), info->to_si, info->from_si);
    }
  if (begun)
    tb_json_end_object (writer);
}

static gboolean
leave_out (TbReader *reader, JsonNode *item, guint index, gpointer options)
{
  const char *name = JSON_NODE_HOLDS_VALUE (item) ? json_node_get_string (item) : NULL;

  for (gsize i = 0; name && i < G_N_ELEMENTS (parts); i++)
    if (g_str_equal (name, parts[i].name))
      {
        *part_of (&parts[i], options) = true;
        return TRUE;
      }
  return tb_reader_fail (reader, NULL, TB_STORE_ERROR_VALUE,
                         _ ("the name of a part of the model was expected, such as %s"), parts[0].name);
}

gboolean
tb_left_out_read (TbReader *reader, JsonObject *object, const char *key, TbOptions *options)
{
  return !tb_reader_has (object, key) || tb_reader_items (reader, object, key, leave_out, options);
}

void
tb_left_out_write (TbJsonWriter *writer, const char *key, const TbOptions *options)
{
  TbOptions set = *options;
  gboolean begun = FALSE;

  for (gsize i = 0; i < G_N_ELEMENTS (parts); i++)
    {
      if (!*part_of (&parts[i], &set))
        continue;
      if (!begun)
        tb_json_begin_row (writer, key);
      begun = TRUE;
      tb_json_string (writer, NULL, parts[i].name);
    }
  if (begun)
    tb_json_end_row (writer);
}
