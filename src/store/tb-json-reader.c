/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"
#include "tb-json-reader.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

void
tb_reader_init (TbReader *reader)
{
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
tb_reader_fail (TbReader *reader, const char *key, TbStoreError code, GError **error, const char *format, ...)
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
    g_set_error (error, TB_STORE_ERROR, code, "%s: %s", reader->path->str, sentence);
  else
    g_set_error_literal (error, TB_STORE_ERROR, code, sentence);
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
member (TbReader *reader, JsonObject *object, const char *key, const char *expected, GError **error)
{
  if (json_object_has_member (object, key))
    return json_object_get_member (object, key);
  tb_reader_fail (reader, key, TB_STORE_ERROR_MISSING_KEY, error, _ ("this key is missing; %s was expected"),
                  expected);
  return NULL;
}

static gboolean
fail_type (TbReader *reader, const char *key, const char *expected, GError **error)
{
  return tb_reader_fail (reader, key, TB_STORE_ERROR_TYPE, error, _ ("%s was expected"), expected);
}

JsonObject *
tb_reader_object (TbReader *reader, JsonObject *object, const char *key, GError **error)
{
  const char *expected = _ ("an object { … }");
  JsonNode *node = member (reader, object, key, expected, error);

  if (!node)
    return NULL;
  if (JSON_NODE_HOLDS_OBJECT (node))
    return json_node_get_object (node);
  fail_type (reader, key, expected, error);
  return NULL;
}

JsonArray *
tb_reader_list (TbReader *reader, JsonObject *object, const char *key, GError **error)
{
  const char *expected = _ ("a list [ … ]");
  JsonNode *node = member (reader, object, key, expected, error);

  if (!node)
    return NULL;
  if (JSON_NODE_HOLDS_ARRAY (node))
    return json_node_get_array (node);
  fail_type (reader, key, expected, error);
  return NULL;
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
tb_reader_number (TbReader *reader, JsonObject *object, const char *key, double *number, GError **error)
{
  const char *expected = _ ("a number");
  JsonNode *node = member (reader, object, key, expected, error);

  if (!node)
    return FALSE;
  if (!tb_node_number (node, number))
    return fail_type (reader, key, expected, error);
  return TRUE;
}

const char *
tb_reader_string (TbReader *reader, JsonObject *object, const char *key, gsize limit, GError **error)
{
  const char *expected = _ ("a string in quotation marks");
  JsonNode *node = member (reader, object, key, expected, error);

  if (!node)
    return NULL;
  if (!JSON_NODE_HOLDS_VALUE (node) || json_node_get_value_type (node) != G_TYPE_STRING)
    {
      fail_type (reader, key, expected, error);
      return NULL;
    }
  if (strlen (json_node_get_string (node)) > limit)
    {
      tb_reader_fail (reader, key, TB_STORE_ERROR_TOO_LARGE, error, _ ("the text is longer than %zu bytes"), limit);
      return NULL;
    }
  return json_node_get_string (node);
}

static gboolean
is_one_line (const char *text)
{
  for (const char *p = text; *p; p = g_utf8_next_char (p))
    if (g_unichar_iscntrl (g_utf8_get_char (p)))
      return FALSE;
  return text[0] != '\0';
}

const char *
tb_reader_name (TbReader *reader, JsonObject *object, const char *key, GError **error)
{
  const char *name = tb_reader_string (reader, object, key, TB_NAME_MAX, error);

  if (name && !is_one_line (name))
    {
      tb_reader_fail (reader, key, TB_STORE_ERROR_VALUE, error, _ ("a name on one line was expected"));
      return NULL;
    }
  return name;
}

gboolean
tb_reader_optional_text (TbReader *reader,
                         JsonObject *object,
                         const char *key,
                         gsize limit,
                         const char **text,
                         GError **error)
{
  *text = NULL;
  if (!tb_reader_has (object, key))
    return TRUE;
  *text = tb_reader_string (reader, object, key, limit, error);
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
tb_reader_id (TbReader *reader, JsonObject *object, const char *key, GError **error)
{
  const char *id = tb_reader_string (reader, object, key, G_MAXSIZE, error);

  if (id && !tb_id_is_valid (id))
    {
      tb_reader_fail (reader, key, TB_STORE_ERROR_VALUE, error,
                      _ ("an id was expected: up to %d lower-case letters, digits and hyphens"), TB_ID_MAX);
      return NULL;
    }
  return id;
}

static gboolean
is_listed (const char *const *keys, const char *key)
{
  return keys && g_strv_contains (keys, key);
}

gboolean
tb_reader_only (TbReader *reader,
                JsonObject *object,
                const char *const *keys,
                const char *const *more,
                GError **error)
{
  g_autoptr (GList) members = json_object_get_members (object);

  for (GList *l = members; l; l = l->next)
    if (!is_listed (keys, l->data) && !is_listed (more, l->data))
      {
        g_autofree char *shown = tb_quotable (l->data);
        return tb_reader_fail (reader, shown, TB_STORE_ERROR_UNKNOWN_KEY, error, _ ("this key is not known here"));
      }
  return TRUE;
}
