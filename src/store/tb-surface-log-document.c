/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"
#include "tb-surface-log-document.h"

#include <errno.h>
#include <glib/gi18n-lib.h>
#include <glib/gstdio.h>

#include "tb-json-check.h"

#define KIND "surface-log"
#define VERSION 1

static const char *const log_keys[] = { "tenboard", "version", "roughness_uin", "entries", NULL };
static const char *const entry_keys[] = { "date", "work", "note", "grit", "games", "roughness_uin", NULL };

TbBallSurface *
tb_ball_surface_new (double roughness)
{
  TbBallSurface *surface = g_new0 (TbBallSurface, 1);

  surface->roughness = roughness;
  surface->log = tb_surface_log_new ();
  return surface;
}

void
tb_ball_surface_free (TbBallSurface *surface)
{
  g_ptr_array_unref (surface->log);
  g_free (surface);
}

/* Writing. */

static void
write_entry (TbJsonWriter *writer, const TbSurfaceEntry *entry)
{
  const TbSurfaceWorkInfo *info = tb_surface_work_info (entry->work);

  tb_json_begin_object (writer, NULL);
  tb_json_string (writer, "date", entry->date);
  tb_json_string (writer, "work", info->name);
  if (info->key)
    tb_json_number_si (writer, info->key, entry->amount, info->to_si, info->from_si);
  if (entry->note)
    tb_json_string (writer, "note", entry->note);
  tb_json_end_object (writer);
}

char *
tb_ball_surface_to_text (const TbBallSurface *surface)
{
  TbJsonWriter writer;

  tb_json_writer_init (&writer);
  tb_json_begin_object (&writer, NULL);
  tb_json_string (&writer, "tenboard", KIND);
  tb_json_number (&writer, "version", VERSION);
  tb_json_number_si (&writer, "roughness_uin", surface->roughness, tb_metres_from_uin, tb_uin_from_metres);
  tb_json_begin_list (&writer, "entries");
  for (guint i = 0; i < surface->log->len; i++)
    write_entry (&writer, surface->log->pdata[i]);
  tb_json_end_list (&writer);
  tb_json_end_object (&writer);
  return tb_json_writer_finish (&writer);
}

/* Reading. */

static gboolean
read_work (TbReader *reader, JsonObject *object, TbSurfaceEntry *entry)
{
  const char *word = tb_reader_string (reader, object, "work", TB_ID_MAX);
  g_autoptr (GString) expected = g_string_new (NULL);

  if (!word)
    return FALSE;
  for (int work = 0; work < TB_N_SURFACE_WORKS; work++)
    {
      const char *name = tb_surface_work_info ((TbSurfaceWork)work)->name;

      if (g_str_equal (word, name))
        {
          entry->work = (TbSurfaceWork)work;
          return TRUE;
        }
      g_string_append_printf (expected, "%s%s", work > 0 ? ", " : "", name);
    }
  /* Translators: a list of words, one of which was expected. */
  return tb_reader_fail (reader, "work", TB_STORE_ERROR_VALUE, _ ("one of %s was expected"), expected->str);
}

static gboolean
read_amount (TbReader *reader, JsonObject *object, TbSurfaceEntry *entry)
{
  const TbSurfaceWorkInfo *info = tb_surface_work_info (entry->work);
  double amount;

  if (!info->key)
    return TRUE;
  if (!tb_reader_number (reader, object, info->key, &amount))
    return FALSE;
  if (!(amount >= info->min && amount <= info->max))
    return tb_reader_fail (reader, info->key, TB_STORE_ERROR_VALUE, _ ("a number from %g to %g was expected"),
                           info->min, info->max);
  entry->amount = info->to_si (amount);
  return TRUE;
}

static gboolean
read_entry (TbReader *reader, JsonNode *item, guint index, gpointer log)
{
  JsonObject *object = tb_reader_item_object (reader, item);
  TbSurfaceEntry entry = { 0 }; /* its texts are the parser's */
  const char *date, *note;

  if (!object || !tb_reader_only (reader, object, entry_keys, NULL))
    return FALSE;
  date = tb_reader_string (reader, object, "date", TB_ID_MAX);
  if (!date)
    return FALSE;
  if (!tb_surface_date_is_valid (date))
    return tb_reader_fail (reader, "date", TB_STORE_ERROR_VALUE, _ ("a day such as 2026-11-25 was expected"));
  if (!read_work (reader, object, &entry) || !read_amount (reader, object, &entry)
      || !tb_reader_optional_text (reader, object, "note", TB_NOTES_MAX, &note))
    return FALSE;
  tb_surface_log_add (log, tb_surface_entry_new (date, entry.work, entry.amount, note));
  return TRUE;
}

static gboolean
check_head (TbReader *reader, JsonObject *object)
{
  const char *kind;
  double version;

  if (!json_object_has_member (object, "tenboard"))
    return tb_reader_fail (reader, NULL, TB_STORE_ERROR_NOT_OURS,
                           _ ("this is not a document of Tenboard: the key “tenboard” is missing"));
  kind = tb_reader_string (reader, object, "tenboard", TB_ID_MAX);
  if (!kind)
    return FALSE;
  if (!g_str_equal (kind, KIND))
    return tb_reader_fail (reader, "tenboard", TB_STORE_ERROR_NOT_OURS, _ ("“%s” was expected"), KIND);
  if (!tb_reader_number (reader, object, "version", &version))
    return FALSE;
  if (version > VERSION)
    return tb_reader_fail (
        reader, "version", TB_STORE_ERROR_VERSION,
        _ ("this was written by a newer Tenboard (form %g; this one knows forms up to %d)"), version,
        VERSION);
  if (!(version >= 1) || version != (int)version)
    return tb_reader_fail (reader, "version", TB_STORE_ERROR_VALUE, _ ("a whole number from 1 was expected"));
  return TRUE;
}

static gboolean
read_roughness (TbReader *reader, JsonObject *object, double *roughness)
{
  const TbField *field = tb_field_find (TB_GROUP_BALL, "roughness_uin");
  double uin;

  if (!tb_reader_number (reader, object, "roughness_uin", &uin))
    return FALSE;
  if (tb_field_check (field, uin) != TB_OK)
    return tb_reader_fail (reader, "roughness_uin", TB_STORE_ERROR_VALUE,
                           _ ("a number from %g to %g was expected"), field->min, field->max);
  *roughness = field->to_si (uin);
  return TRUE;
}

static gboolean
read_log (TbReader *reader, JsonObject *object, TbBallSurface *surface)
{
  JsonArray *list;

  if (!check_head (reader, object) || !tb_reader_only (reader, object, log_keys, NULL)
      || !read_roughness (reader, object, &surface->roughness))
    return FALSE;
  list = tb_reader_list (reader, object, "entries");
  if (!list)
    return FALSE;
  if (json_array_get_length (list) > TB_SURFACE_LOG_MAX)
    return tb_reader_fail (reader, "entries", TB_STORE_ERROR_TOO_LARGE, _ ("a log has at most %d entries"),
                           TB_SURFACE_LOG_MAX);
  return tb_reader_items (reader, object, "entries", read_entry, surface->log);
}

TbBallSurface *
tb_ball_surface_from_text (const char *text, gsize length, GError **error)
{
  g_autoptr (JsonParser) parser = json_parser_new_immutable ();
  g_autoptr (TbBallSurface) surface = tb_ball_surface_new (0);
  g_auto (TbReader) reader = { 0 };
  g_autoptr (GError) problem = NULL;
  JsonNode *root;

  tb_reader_init (&reader, error);
  if (!tb_json_check (text, length, error))
    return NULL;
  if (!json_parser_load_from_data (parser, text, (gssize)length, &problem))
    {
      g_set_error_literal (error, TB_STORE_ERROR, TB_STORE_ERROR_SYNTAX, problem->message);
      return NULL;
    }
  root = json_parser_get_root (parser);
  if (!JSON_NODE_HOLDS_OBJECT (root))
    {
      tb_reader_fail (&reader, NULL, TB_STORE_ERROR_NOT_OURS, _ ("this is not a document of Tenboard"));
      return NULL;
    }
  return read_log (&reader, json_node_get_object (root), surface) ? g_steal_pointer (&surface) : NULL;
}

/* Files. */

char *
tb_ball_surface_path (const char *ball_id)
{
  g_autofree char *name = g_strconcat (ball_id, TB_DOCUMENT_SUFFIX, NULL);

  return g_build_filename (g_get_user_data_dir (), "tenboard", "surfaces", name, NULL);
}

TbBallSurface *
tb_ball_surface_load (const char *ball_id, double roughness, GError **error)
{
  g_autofree char *path = tb_ball_surface_path (ball_id), *text = NULL, *name = g_path_get_basename (path);
  TbBallSurface *surface = NULL;
  gsize length;

  if (!g_file_test (path, G_FILE_TEST_EXISTS))
    return tb_ball_surface_new (roughness);
  text = tb_document_read_file (path, &length, error);
  if (text)
    surface = tb_ball_surface_from_text (text, length, error);
  if (!surface)
    tb_document_finish_error (error, name);
  return surface;
}

/* What is saved can be opened again. */
static gboolean
check_length (const TbBallSurface *surface, GError **error)
{
  if (surface->log->len > TB_SURFACE_LOG_MAX)
    g_set_error (error, TB_STORE_ERROR, TB_STORE_ERROR_TOO_LARGE, _ ("a log has at most %d entries"), TB_SURFACE_LOG_MAX);
  return surface->log->len <= TB_SURFACE_LOG_MAX;
}

gboolean
tb_ball_surface_save (const TbBallSurface *surface, const char *ball_id, GError **error)
{
  g_autofree char *path = tb_ball_surface_path (ball_id), *name = g_path_get_basename (path);
  g_autofree char *text = tb_ball_surface_to_text (surface);

  if (check_length (surface, error) && tb_document_save_file (path, text, error))
    return TRUE;
  tb_document_finish_error (error, name);
  return FALSE;
}

gboolean
tb_ball_surface_remove (const char *ball_id, GError **error)
{
  g_autofree char *path = tb_ball_surface_path (ball_id), *name = g_path_get_basename (path);

  if (g_unlink (path) == 0 || errno == ENOENT)
    return TRUE;
  g_set_error (error, TB_STORE_ERROR, TB_STORE_ERROR_WRITE, _ ("the file cannot be removed: %s"),
               g_strerror (errno));
  tb_document_finish_error (error, name);
  return FALSE;
}
