/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"
#include "tb-document.h"

#include <errno.h>
#include <fcntl.h>
#include <glib/gi18n-lib.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

#include "tb-atomic-file.h"
#include "tb-json-check.h"

typedef struct Kind
{
  const char *name;
  const char *folder;
  const char *expected; /* for people */
  const char *found;
  int version; /* of the schema that is written; older ones are read too */
} Kind;

static const Kind kinds[TB_N_DOCUMENT_KINDS] = {
  [TB_DOCUMENT_BOWLER] = { "bowler", "bowlers", N_ ("a bowler"), N_ ("this is a bowler"), 1 },
  [TB_DOCUMENT_BALL] = { "ball", "balls", N_ ("a ball"), N_ ("this is a ball"), 1 },
  [TB_DOCUMENT_PATTERN] = { "pattern", "patterns", N_ ("a pattern"), N_ ("this is a pattern"), 1 },
  [TB_DOCUMENT_STUDY] = { "study", "studies", N_ ("a study"), N_ ("this is a study"), 1 },
  [TB_DOCUMENT_LESSON] = { "lesson", "lessons", N_ ("a lesson"), N_ ("this is a lesson"), 1 },
  [TB_DOCUMENT_PROGRESS] = { "progress", "progress", N_ ("a bowler’s progress"), N_ ("this is a bowler’s progress"), 1 },
};

const char *
tb_document_kind_name (TbDocumentKind kind)
{
  return kinds[kind].name;
}

char *
tb_document_folder (TbDocumentKind kind)
{
  return g_build_filename (g_get_user_data_dir (), "tenboard", kinds[kind].folder, NULL);
}

static int
compare_paths (gconstpointer a, gconstpointer b)
{
  return strcmp (*(const char *const *) a, *(const char *const *) b);
}

GPtrArray *
tb_document_list_folder (const char *folder, guint most)
{
  g_autoptr (GPtrArray) paths = g_ptr_array_new_with_free_func (g_free);
  g_autoptr (GDir) dir = g_dir_open (folder, 0, NULL);
  const char *name;

  while (dir && (name = g_dir_read_name (dir)) && paths->len < most)
    if (name[0] != '.' && g_str_has_suffix (name, TB_DOCUMENT_SUFFIX))
      g_ptr_array_add (paths, g_build_filename (folder, name, NULL));
  g_ptr_array_sort (paths, compare_paths);
  return g_steal_pointer (&paths);
}

const char *
tb_document_display_name (const char *name)
{
  if (!name || !name[0])
    return "";
  return g_dpgettext2 (GETTEXT_PACKAGE, "document", name);
}

static gboolean
fail_kind (TbReader *reader, const char *name, TbDocumentKind wanted)
{
  for (int kind = 0; kind < TB_N_DOCUMENT_KINDS; kind++)
    if (g_str_equal (name, kinds[kind].name))
      return tb_reader_fail (reader, NULL, TB_STORE_ERROR_NOT_OURS, _ ("%s; %s was expected"),
                             _ (kinds[kind].found), _ (kinds[wanted].expected));
  return tb_reader_fail (reader, "tenboard", TB_STORE_ERROR_NOT_OURS, _ ("“%s” was expected"),
                         kinds[wanted].name);
}

static gboolean
check_version (TbReader *reader, JsonObject *object, TbDocumentKind kind)
{
  double version;

  if (!tb_reader_number (reader, object, "version", &version))
    return FALSE;
  if (version > kinds[kind].version)
    return tb_reader_fail (
        reader, "version", TB_STORE_ERROR_VERSION,
        _ ("this was written by a newer Tenboard (form %g; this one knows forms up to %d)"), version,
        kinds[kind].version);
  if (!(version >= 1) || version != (int) version)
    return tb_reader_fail (reader, "version", TB_STORE_ERROR_VALUE, _ ("a whole number from 1 was expected"));
  return TRUE;
}

gboolean
tb_document_check_head (TbReader *reader, JsonObject *object, TbDocumentKind kind, gboolean embedded)
{
  const char *name;

  if (embedded && !json_object_has_member (object, "tenboard"))
    return TRUE;
  if (!json_object_has_member (object, "tenboard"))
    return tb_reader_fail (reader, NULL, TB_STORE_ERROR_NOT_OURS,
                           _ ("this is not a document of Tenboard: the key “tenboard” is missing"));
  name = tb_reader_string (reader, object, "tenboard", TB_ID_MAX);
  if (!name)
    return FALSE;
  if (!g_str_equal (name, kinds[kind].name))
    return fail_kind (reader, name, kind);
  return check_version (reader, object, kind);
}

void
tb_document_write_head (TbJsonWriter *writer, TbDocumentKind kind)
{
  tb_json_string (writer, "tenboard", kinds[kind].name);
  tb_json_number (writer, "version", kinds[kind].version);
}

/* The checked text is handed to the library's parser, which then has little left to complain about. */
static JsonNode *
parse (const char *text, gsize length, GError **error)
{
  g_autoptr (JsonParser) parser = json_parser_new_immutable ();
  g_autoptr (GError) problem = NULL;

  if (!tb_json_check (text, length, error))
    return NULL;
  if (json_parser_load_from_data (parser, text, (gssize) length, &problem))
    return json_parser_steal_root (parser);
  g_set_error_literal (error, TB_STORE_ERROR, TB_STORE_ERROR_SYNTAX, problem->message);
  return NULL;
}

JsonNode *
tb_document_parse (TbDocumentKind kind, const char *text, gsize length, GError **error)
{
  g_auto (TbReader) reader = { 0 };
  g_autoptr (JsonNode) root = parse (text, length, error);

  if (!root)
    return NULL;
  tb_reader_init (&reader, error);
  if (!JSON_NODE_HOLDS_OBJECT (root))
    tb_reader_fail (&reader, NULL, TB_STORE_ERROR_NOT_OURS, _ ("this is not a document of Tenboard"));
  else if (tb_document_check_head (&reader, json_node_get_object (root), kind, FALSE))
    return g_steal_pointer (&root);
  return NULL;
}

static gboolean
fail_read (GError **error, int code)
{
  g_set_error (error, TB_STORE_ERROR, TB_STORE_ERROR_READ, _ ("the file cannot be read: %s"),
               g_strerror (code));
  return FALSE;
}

/* Up to one byte more than a document may have, so that a file that grows while it is read is noticed. */
static gboolean
read_all (int fd, char *bytes, gsize *length, GError **error)
{
  *length = 0;
  while (*length <= TB_JSON_MAX_BYTES)
    {
      ssize_t got = read (fd, bytes + *length, TB_JSON_MAX_BYTES + 1 - *length);

      if (got < 0 && errno == EINTR)
        continue;
      if (got < 0)
        return fail_read (error, errno);
      if (got == 0)
        break;
      *length += (gsize) got;
    }
  return TRUE;
}

static gboolean
check_ordinary (int fd, GError **error)
{
  struct stat info;

  if (fstat (fd, &info) < 0)
    return fail_read (error, errno);
  if (S_ISREG (info.st_mode))
    return TRUE;
  g_set_error_literal (error, TB_STORE_ERROR, TB_STORE_ERROR_READ, _ ("this is not an ordinary file"));
  return FALSE;
}

char *
tb_document_read_file (const char *path, gsize *length, GError **error)
{
  g_autofree char *bytes = NULL;
  /* Without O_NONBLOCK a pipe with nobody at its other end would hold us for ever. */
  int fd = open (path, O_RDONLY | O_CLOEXEC | O_NONBLOCK);
  gboolean done;

  if (fd < 0)
    {
      fail_read (error, errno);
      return NULL;
    }
  bytes = g_try_malloc (TB_JSON_MAX_BYTES + 1);
  done
      = bytes ? check_ordinary (fd, error) && read_all (fd, bytes, length, error) : fail_read (error, ENOMEM);
  close (fd);
  if (!done)
    return NULL;
  return g_steal_pointer (&bytes);
}

gboolean
tb_document_save_file (const char *path, const char *text, GError **error)
{
  g_autofree char *folder = g_path_get_dirname (path);

  if (g_mkdir_with_parents (folder, 0777) < 0)
    {
      g_set_error (error, TB_STORE_ERROR, TB_STORE_ERROR_WRITE, _ ("the folder %s cannot be made: %s"),
                   folder, g_strerror (errno));
      return FALSE;
    }
  return tb_atomic_write (path, text, strlen (text), NULL, error);
}

void
tb_document_finish_error (GError **error, const char *name)
{
  g_autofree char *clause = NULL, *shown = NULL;

  if (!error || !*error)
    return;
  /* A file may be called anything. */
  shown = name ? tb_text_fitted (name, G_MAXSIZE, TRUE) : NULL;
  clause = g_steal_pointer (&(*error)->message);
  (*error)->message = shown ? g_strdup_printf ("%s: %s.", shown, clause) : g_strdup_printf ("%s.", clause);
}
