/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"
#include "tb-json-reader.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

void
tb_reader_init (TbReader *reader, GError **error)
{
  reader->error = error;
  reader->path = g_string_new (NULL);
}

void
tb_reader_clear (TbReader *reader)
{
  if (reader->path)
    g_string_free (g_steal_pointer (&reader->path), TRUE);
}

gsize
tb_reader_enter (TbReader *reader, const char *key)
{
  gsize mark = reader->path->len;

  if (mark > 0)
    g_string_append_c (reader->path, '.');
  g_string_append (reader->path, key);
  return mark;
}

gsize
tb_reader_enter_index (TbReader *reader, guint index)
{
  gsize mark = reader->path->len;

  g_string_append_printf (reader->path, "[%u]", index);
  return mark;
}

void
tb_reader_leave (TbReader *reader, gsize mark)
{
  g_string_truncate (reader->path, mark);
}

gboolean
tb_reader_fail (TbReader *reader, const char *key, TbStoreError code, const char *format, ...)
{
  g_autofree char *sentence = NULL;
  gsize mark = reader->path->len;
  va_list arguments;

  va_start (arguments, format);
  sentence = g_strdup_vprintf (format, arguments);
  va_end (arguments);
  if (key)
    tb_reader_enter (reader, key);
  if (reader->path->len > 0)
    g_set_error (reader->error, TB_STORE_ERROR, code, "%s: %s", reader->path->str, sentence);
  else
    g_set_error_literal (reader->error, TB_STORE_ERROR, code, sentence);
  tb_reader_leave (reader, mark);
  return FALSE;
}

gboolean
tb_reader_has (JsonObject *object, const char *key)
{
  return json_object_has_member (object, key) && !json_object_get_null_member (object, key);
}

/* The member, if it is there. */
static JsonNode *
member (TbReader *reader, JsonObject *object, const char *key, const char *expected)
{
  if (json_object_has_member (object, key))
    return json_object_get_member (object, key);
  tb_reader_fail (reader, key, TB_STORE_ERROR_MISSING_KEY, _ ("this key is missing; %s was expected"),
                  expected);
  return NULL;
}

static gboolean
fail_type (TbReader *reader, const char *key, const char *expected)
{
  return tb_reader_fail (reader, key, TB_STORE_ERROR_TYPE, _ ("%s was expected"), expected);
}

JsonObject *
tb_reader_object (TbReader *reader, JsonObject *object, const char *key)
{
  const char *expected = _ ("an object { … }");
  JsonNode *node = member (reader, object, key, expected);

  if (!node)
    return NULL;
  if (JSON_NODE_HOLDS_OBJECT (node))
    return json_node_get_object (node);
  fail_type (reader, key, expected);
  return NULL;
}

JsonArray *
tb_reader_list (TbReader *reader, JsonObject *object, const char *key)
{
  const char *expected = _ ("a list [ … ]");
  JsonNode *node = member (reader, object, key, expected);

  if (!node)
    return NULL;
  if (JSON_NODE_HOLDS_ARRAY (node))
    return json_node_get_array (node);
  fail_type (reader, key, expected);
  return NULL;
}

gboolean
tb_reader_part (TbReader *reader, JsonObject *object, const char *key, TbReadObject read, gpointer data)
{
  JsonObject *part = tb_reader_object (reader, object, key);
  gsize mark;

  if (!part)
    return FALSE;
  mark = tb_reader_enter (reader, key);
  if (!read (reader, part, data))
    return FALSE;
  tb_reader_leave (reader, mark);
  return TRUE;
}

gboolean
tb_reader_items (TbReader *reader, JsonObject *object, const char *key, TbReadItem read, gpointer data)
{
  JsonArray *list = tb_reader_list (reader, object, key);
  gsize outside, mark;

  if (!list)
    return FALSE;
  outside = tb_reader_enter (reader, key);
  for (guint i = 0; i < json_array_get_length (list); i++)
    {
      mark = tb_reader_enter_index (reader, i + 1);
      if (!read (reader, json_array_get_element (list, i), i, data))
        return FALSE;
      tb_reader_leave (reader, mark);
    }
  tb_reader_leave (reader, outside);
  return TRUE;
}

JsonObject *
tb_reader_item_object (TbReader *reader, JsonNode *item)
{
  if (JSON_NODE_HOLDS_OBJECT (item))
    return json_node_get_object (item);
  fail_type (reader, NULL, _ ("an object { … }"));
  return NULL;
}

gboolean
tb_reader_item_number (TbReader *reader, JsonNode *item, double *number)
{
  return tb_node_number (item, number) || fail_type (reader, NULL, _ ("a number"));
}

gboolean
tb_node_number (JsonNode *node, double *number)
{
  if (!JSON_NODE_HOLDS_VALUE (node))
    return FALSE;
  switch (json_node_get_value_type (node))
    {
    case G_TYPE_INT64:
      *number = (double) json_node_get_int (node);
      return TRUE;
    case G_TYPE_DOUBLE:
      *number = json_node_get_double (node);
      return TRUE;
    default:
      return FALSE;
    }
}

gboolean
tb_reader_number (TbReader *reader, JsonObject *object, const char *key, double *number)
{
  const char *expected = _ ("a number");
  JsonNode *node = member (reader, object, key, expected);

  if (!node)
    return FALSE;
  if (!tb_node_number (node, number))
    return fail_type (reader, key, expected);
  return TRUE;
}

/* Line ends of both kinds: a text may have been written anywhere. */
static gboolean
is_control (const char *character, gboolean one_line)
{
  return g_unichar_iscntrl (g_utf8_get_char (character)) && (one_line || !strchr ("\n\r\t", *character));
}

static gboolean
has_control (const char *text, gboolean one_line)
{
  for (const char *p = text; *p; p = g_utf8_next_char (p))
    if (is_control (p, one_line))
      return TRUE;
  return FALSE;
}

char *
tb_text_fitted (const char *text, gsize limit, gboolean one_line)
{
  GString *fitted = g_string_new (NULL);

  for (const char *p = text, *next; *p; p = next)
    {
      gsize size;

      next = g_utf8_next_char (p);
      size = (gsize) (next - p);
      if (fitted->len + size > limit)
        break;
      if (is_control (p, one_line))
        g_string_append_c (fitted, ' ');
      else
        g_string_append_len (fitted, p, (gssize) size);
    }
  return g_string_free (fitted, FALSE);
}

const char *
tb_reader_string (TbReader *reader, JsonObject *object, const char *key, gsize limit)
{
  const char *expected = _ ("a string in quotation marks");
  JsonNode *node = member (reader, object, key, expected);

  if (!node)
    return NULL;
  if (!JSON_NODE_HOLDS_VALUE (node) || json_node_get_value_type (node) != G_TYPE_STRING)
    {
      fail_type (reader, key, expected);
      return NULL;
    }
  if (strlen (json_node_get_string (node)) > limit)
    {
      tb_reader_fail (reader, key, TB_STORE_ERROR_TOO_LARGE, _ ("the text is longer than %zu bytes"), limit);
      return NULL;
    }
  if (has_control (json_node_get_string (node), FALSE))
    {
      tb_reader_fail (reader, key, TB_STORE_ERROR_VALUE, _ ("a text without control characters was expected"));
      return NULL;
    }
  return json_node_get_string (node);
}

const char *
tb_reader_name (TbReader *reader, JsonObject *object, const char *key)
{
  const char *name = tb_reader_string (reader, object, key, TB_NAME_MAX);

  if (name && (name[0] == '\0' || has_control (name, TRUE)))
    {
      tb_reader_fail (reader, key, TB_STORE_ERROR_VALUE, _ ("a name on one line was expected"));
      return NULL;
    }
  return name;
}

gboolean
tb_reader_optional_text (TbReader *reader,
                         JsonObject *object,
                         const char *key,
                         gsize limit,
                         const char **text)
{
  *text = NULL;
  if (!tb_reader_has (object, key))
    return TRUE;
  *text = tb_reader_string (reader, object, key, limit);
  return *text != NULL;
}

gboolean
tb_id_is_valid (const char *id)
{
  gsize length = strlen (id);

  return length > 0 && length <= TB_ID_MAX && id[0] != '-'
         && strspn (id, "abcdefghijklmnopqrstuvwxyz0123456789-") == length;
}

const char *
tb_reader_id (TbReader *reader, JsonObject *object, const char *key)
{
  const char *id = tb_reader_string (reader, object, key, G_MAXSIZE);

  if (id && !tb_id_is_valid (id))
    {
      tb_reader_fail (reader, key, TB_STORE_ERROR_VALUE,
                      _ ("an id was expected: up to %d lower-case letters, digits and hyphens"), TB_ID_MAX);
      return NULL;
    }
  return id;
}

gboolean
tb_reader_names (TbReader *reader, JsonObject *object, gboolean optional, TbDocumentNames *names)
{
  gboolean with_id = !optional || tb_reader_has (object, "id");
  gboolean with_name = !optional || tb_reader_has (object, "name");

  names->id = with_id ? tb_reader_id (reader, object, "id") : NULL;
  if (with_id && !names->id)
    return FALSE;
  names->name = with_name ? tb_reader_name (reader, object, "name") : NULL;
  return names->name || !with_name;
}

static gboolean
is_listed (const char *const *keys, const char *key)
{
  return keys && g_strv_contains (keys, key);
}

gboolean
tb_reader_only (TbReader *reader, JsonObject *object, const char *const *keys, const char *const *more)
{
  g_autoptr (GList) members = json_object_get_members (object);

  for (GList *l = members; l; l = l->next)
    if (!is_listed (keys, l->data) && !is_listed (more, l->data))
      {
        g_autofree char *shown = tb_quotable (l->data);
        return tb_reader_fail (reader, shown, TB_STORE_ERROR_UNKNOWN_KEY, _ ("this key is not known here"));
      }
  return TRUE;
}
