/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"
#include "tb-library-private.h"

#include <errno.h>
#include <glib/gi18n-lib.h>
#include <glib/gstdio.h>

#include "tb-store-resources.h"
#include "tb-study-document.h"

/* Kinds that are chosen from. */
#define N_LISTS TB_DOCUMENT_STUDY
/* The user's documents of one kind that are read; more is a mistake, or malice. */
#define MAX_USER_DOCUMENTS 1000
#define RESOURCE_PREFIX "/io/github/tenboard/Tenboard/"
#define START_STUDY RESOURCE_PREFIX "study/start" TB_DOCUMENT_SUFFIX

struct _TbLibrary
{
  GObject parent_instance;

  GListStore *lists[N_LISTS];
  GPtrArray *problems; /* of char *, ends with NULL */
};

G_DEFINE_FINAL_TYPE (TbLibrary, tb_library, G_TYPE_OBJECT)

/* Built-in documents have been tested; one that fails is our own mistake. */
static TbLibraryEntry *
read_builtin (TbDocumentKind kind, const char *path)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GBytes) bytes = g_resource_lookup_data (tb_store_get_resource (), path, 0, &error);
  TbLibraryEntry *entry = NULL;
  gsize length;

  if (bytes)
    {
      const char *text = g_bytes_get_data (bytes, &length);
      entry = tb_library_entry_new (kind, TRUE, text, length, &error);
    }
  if (!entry)
    g_error ("%s: %s", path, error->message);
  return entry;
}

static int
compare_names (gconstpointer a, gconstpointer b)
{
  return strcmp (*(const char *const *) a, *(const char *const *) b);
}

/* The resource file numbers its files, so that they come in the order in which they are to be shown. */
static void
add_builtins (GPtrArray *entries, TbDocumentKind kind)
{
  g_autofree char *folder = g_strconcat (RESOURCE_PREFIX, tb_document_kind_name (kind), "/", NULL);
  g_auto (GStrv) names = g_resource_enumerate_children (tb_store_get_resource (), folder, 0, NULL);

  g_return_if_fail (names != NULL);
  qsort (names, g_strv_length (names), sizeof *names, compare_names);
  for (char **name = names; *name; name++)
    {
      g_autofree char *path = g_strconcat (folder, *name, NULL);
      g_ptr_array_add (entries, read_builtin (kind, path));
    }
}

/* A document of the user's lives in a file of its own id, so that it can be found and replaced. */
static TbLibraryEntry *
read_user_file (TbDocumentKind kind, const char *path, GError **error)
{
  gsize length;
  g_autofree char *text = tb_document_read_file (path, &length, error);
  g_autoptr (TbLibraryEntry) entry = text ? tb_library_entry_new (kind, FALSE, text, length, error) : NULL;
  g_autofree char *base = g_path_get_basename (path);
  g_autofree char *expected = NULL;

  if (!entry)
    return NULL;
  expected = g_strconcat (tb_library_entry_get_id (entry), TB_DOCUMENT_SUFFIX, NULL);
  if (g_str_equal (base, expected))
    return g_steal_pointer (&entry);
  g_set_error (error, TB_STORE_ERROR, TB_STORE_ERROR_VALUE,
               _ ("id: a file of this name holds the id of its name, not “%s”"),
               tb_library_entry_get_id (entry));
  return NULL;
}

static gboolean
find_id (GPtrArray *entries, const char *id, guint *index)
{
  for (guint i = 0; i < entries->len; i++)
    if (g_str_equal (tb_library_entry_get_id (g_ptr_array_index (entries, i)), id))
      {
        *index = i;
        return TRUE;
      }
  return FALSE;
}

static void
add_user_file (TbLibrary *self, GPtrArray *entries, TbDocumentKind kind, const char *path)
{
  g_autoptr (GError) error = NULL;
  TbLibraryEntry *entry = read_user_file (kind, path, &error);
  guint index;

  if (!entry)
    {
      g_autofree char *shown = g_filename_display_name (path);

      tb_document_finish_error (&error, shown);
      g_ptr_array_add (self->problems, g_strdup (error->message));
    }
  else if (find_id (entries, tb_library_entry_get_id (entry), &index))
    {
      g_object_unref (g_ptr_array_index (entries, index));
      g_ptr_array_index (entries, index) = entry;
    }
  else
    g_ptr_array_add (entries, entry);
}

static void
add_users (TbLibrary *self, GPtrArray *entries, TbDocumentKind kind)
{
  g_autofree char *folder = tb_document_folder (kind);
  g_autoptr (GPtrArray) paths = tb_document_list_folder (folder, MAX_USER_DOCUMENTS);

  for (guint i = 0; i < paths->len; i++)
    add_user_file (self, entries, kind, g_ptr_array_index (paths, i));
}

static void
fill (TbLibrary *self, gboolean with_users)
{
  g_ptr_array_set_size (self->problems, 0);
  for (int kind = 0; kind < N_LISTS; kind++)
    {
      g_autoptr (GPtrArray) entries = g_ptr_array_new_with_free_func (g_object_unref);

      add_builtins (entries, (TbDocumentKind) kind);
      if (with_users)
        add_users (self, entries, (TbDocumentKind) kind);
      g_list_store_splice (self->lists[kind], 0, g_list_model_get_n_items (G_LIST_MODEL (self->lists[kind])),
                           entries->pdata, entries->len);
    }
  g_ptr_array_add (self->problems, NULL);
}

void
tb_library_reload (TbLibrary *self)
{
  fill (self, TRUE);
}

GListModel *
tb_library_get_entries (TbLibrary *self, TbDocumentKind kind)
{
  g_return_val_if_fail (kind < N_LISTS, NULL);
  return G_LIST_MODEL (self->lists[kind]);
}

TbLibraryEntry *
tb_library_find (TbLibrary *self, TbDocumentKind kind, const char *id, GError **error)
{
  GListModel *list = tb_library_get_entries (self, kind);
  g_autofree char *shown = NULL;

  for (guint i = 0; i < g_list_model_get_n_items (list); i++)
    {
      g_autoptr (TbLibraryEntry) entry = g_list_model_get_item (list, i);

      if (g_str_equal (tb_library_entry_get_id (entry), id))
        return entry; /* the list holds it */
    }
  shown = tb_quotable (id);
  g_set_error (error, TB_STORE_ERROR, TB_STORE_ERROR_UNKNOWN_ID, _ ("there is no %s with the id “%s”"),
               tb_document_kind_name (kind), shown);
  return NULL;
}

const char *const *
tb_library_get_problems (TbLibrary *self)
{
  return (const char *const *) self->problems->pdata;
}

static char *
user_path (TbDocumentKind kind, const char *id)
{
  g_autofree char *folder = tb_document_folder (kind);
  g_autofree char *name = g_strconcat (id, TB_DOCUMENT_SUFFIX, NULL);

  return g_build_filename (folder, name, NULL);
}

static gboolean
save (TbLibrary *self, TbDocumentKind kind, const char *id, const char *text, GError **error)
{
  g_autofree char *path = NULL;
  gboolean saved;

  g_return_val_if_fail (id && tb_id_is_valid (id), FALSE);
  path = user_path (kind, id);
  saved = tb_document_save_file (path, text, error);
  if (!saved)
    tb_document_finish_error (error, path);
  else
    tb_library_reload (self);
  return saved;
}

gboolean
tb_library_save_bowler (TbLibrary *self, const TbBowler *bowler, GError **error)
{
  g_autofree char *text = tb_bowler_to_text (bowler);

  return save (self, TB_DOCUMENT_BOWLER, bowler->id, text, error);
}

gboolean
tb_library_save_ball (TbLibrary *self, const TbBallDocument *ball, GError **error)
{
  g_autofree char *text = tb_ball_document_to_text (ball);

  return save (self, TB_DOCUMENT_BALL, ball->id, text, error);
}

gboolean
tb_library_save_pattern (TbLibrary *self, const TbPattern *pattern, GError **error)
{
  g_autofree char *text = tb_pattern_to_text (pattern);

  return save (self, TB_DOCUMENT_PATTERN, pattern->id, text, error);
}

gboolean
tb_library_remove (TbLibrary *self, TbDocumentKind kind, const char *id, GError **error)
{
  g_autofree char *path = NULL;

  g_return_val_if_fail (id && tb_id_is_valid (id), FALSE);
  path = user_path (kind, id);
  if (g_unlink (path) < 0)
    {
      g_set_error (error, TB_STORE_ERROR, TB_STORE_ERROR_WRITE, _ ("%s: the file cannot be removed: %s."),
                   path, g_strerror (errno));
      return FALSE;
    }
  tb_library_reload (self);
  return TRUE;
}

TbStudy *
tb_library_start_study (void)
{
  g_autoptr (GError) error = NULL;
  /* Whatever the user has put in the place of what is built in, this study stays as it was tested. */
  g_autoptr (TbLibrary) builtins = g_object_new (TB_TYPE_LIBRARY, NULL);
  g_autoptr (GBytes) bytes = g_resource_lookup_data (tb_store_get_resource (), START_STUDY, 0, &error);
  TbStudy *study = NULL;
  gsize length;

  fill (builtins, FALSE);
  if (bytes)
    {
      const char *text = g_bytes_get_data (bytes, &length);
      study = tb_study_from_text (builtins, text, length, &error);
    }
  if (!study)
    g_error ("%s: %s", START_STUDY, error->message);
  return study;
}

static void
tb_library_finalize (GObject *object)
{
  TbLibrary *self = TB_LIBRARY (object);

  for (int kind = 0; kind < N_LISTS; kind++)
    g_clear_object (&self->lists[kind]);
  g_clear_pointer (&self->problems, g_ptr_array_unref);
  G_OBJECT_CLASS (tb_library_parent_class)->finalize (object);
}

static void
tb_library_class_init (TbLibraryClass *klass)
{
  G_OBJECT_CLASS (klass)->finalize = tb_library_finalize;
}

static void
tb_library_init (TbLibrary *self)
{
  self->problems = g_ptr_array_new_with_free_func (g_free);
  for (int kind = 0; kind < N_LISTS; kind++)
    self->lists[kind] = g_list_store_new (TB_TYPE_LIBRARY_ENTRY);
}

TbLibrary *
tb_library_new (void)
{
  TbLibrary *self = g_object_new (TB_TYPE_LIBRARY, NULL);

  tb_library_reload (self);
  return self;
}
