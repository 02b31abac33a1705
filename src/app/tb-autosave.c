/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "tb-autosave.h"

#include <errno.h>
#include <fcntl.h>
#include <glib/gstdio.h>
#include <string.h>
#include <sys/file.h>
#include <unistd.h>

#include "tb-atomic-file.h"
#include "tb-study-document.h"

/* A copy is at most this old, s. */
#define DELAY 2
/* Only the user may look into what was not meant to be kept. */
#define FOLDER_MODE 0700
/* In the folder of a copy. */
#define STUDY_NAME "study.tenboard"
#define ORIGIN_NAME "origin"
/* A place is a path; nothing longer is read. */
#define MAX_ORIGIN 4096

struct _TbAutosave
{
  GObject parent_instance;

  TbSession *session;
  char *folder; /* NULL until there is something to keep */
  int lock;     /* -1 until then */
  guint timeout;
  gboolean warned;
};

G_DEFINE_FINAL_TYPE (TbAutosave, tb_autosave, G_TYPE_OBJECT)

static int
sync_nothing (int fd)
{
  return 0;
}

static int
sync_no_folder (const char *folder)
{
  return 0;
}

/* The window does not wait for the disk while somebody drags a slider: what the kernel has taken survives the end of
 * the program, if not a power cut within seconds. The rename still keeps a copy whole. */
static gboolean
write_copy (const char *path, const char *text, GError **error)
{
  TbFileCalls calls = tb_file_calls;

  calls.sync = sync_nothing;
  calls.sync_folder = sync_no_folder;
  return tb_atomic_write (path, text, strlen (text), &calls, error);
}

static char *
unsaved_folder (void)
{
  return g_build_filename (g_get_user_data_dir (), "tenboard", "unsaved", NULL);
}

/* -1 if another program has it. */
static int
lock_folder (const char *folder)
{
  int fd = open (folder, O_RDONLY | O_DIRECTORY | O_CLOEXEC | O_NOFOLLOW);

  if (fd >= 0 && flock (fd, LOCK_EX | LOCK_NB) < 0)
    {
      close (fd);
      return -1;
    }
  return fd;
}

static void
remove_file (const char *folder, const char *name)
{
  g_autofree char *path = g_build_filename (folder, name, NULL);

  g_unlink (path);
}

static void
remove_folder (const char *folder)
{
  remove_file (folder, STUDY_NAME);
  remove_file (folder, ORIGIN_NAME);
  g_rmdir (folder);
}

static gboolean
make_folder (TbAutosave *self, GError **error)
{
  g_autofree char *parent = unsaved_folder ();
  g_autofree char *folder = g_build_filename (parent, "XXXXXX", NULL);

  if (g_mkdir_with_parents (parent, FOLDER_MODE) < 0 || g_mkdtemp_full (folder, FOLDER_MODE) == NULL)
    {
      int problem = errno;

      g_set_error (error, G_FILE_ERROR, g_file_error_from_errno (problem), "%s: %s", parent, g_strerror (problem));
      return FALSE;
    }
  /* Nobody else knows of the folder yet; without locks on this disk it is kept all the same. */
  self->lock = lock_folder (folder);
  self->folder = g_steal_pointer (&folder);
  return TRUE;
}

static void
forget_copy (TbAutosave *self)
{
  g_clear_handle_id (&self->timeout, g_source_remove);
  if (self->folder != NULL)
    remove_folder (self->folder);
  g_clear_pointer (&self->folder, g_free);
  if (self->lock >= 0)
    close (self->lock);
  self->lock = -1;
}

static gboolean
write_origin (TbAutosave *self, GError **error)
{
  GFile *file = tb_session_get_file (self->session);
  g_autofree char *path = g_build_filename (self->folder, ORIGIN_NAME, NULL);
  g_autofree char *origin = file != NULL ? g_file_get_path (file) : NULL;

  return write_copy (path, origin != NULL ? origin : "", error);
}

static gboolean
write_study (TbAutosave *self, GError **error)
{
  g_autofree char *path = g_build_filename (self->folder, STUDY_NAME, NULL);
  g_autofree char *text = tb_study_to_text (tb_session_get_study (self->session));

  return write_copy (path, text, error);
}

gboolean
tb_autosave_flush (TbAutosave *self)
{
  g_autoptr (GError) error = NULL;

  g_clear_handle_id (&self->timeout, g_source_remove);
  if (!tb_session_get_modified (self->session))
    {
      forget_copy (self);
      return FALSE;
    }
  /* Where it came from goes first: a copy without it is still whole. */
  if ((self->folder != NULL || make_folder (self, &error)) && write_origin (self, &error) && write_study (self, &error))
    return TRUE;
  if (!self->warned)
    g_message ("changes are not kept until they are saved: %s", error->message);
  self->warned = TRUE;
  return FALSE;
}

static gboolean
on_timeout (gpointer data)
{
  TbAutosave *self = data;

  self->timeout = 0;
  tb_autosave_flush (self);
  return G_SOURCE_REMOVE;
}

/* The first change starts the clock and the next ones do not stop it, or a long drag would never be kept. */
static void
on_session_changed (TbAutosave *self)
{
  if (!tb_session_get_modified (self->session))
    forget_copy (self);
  else if (self->timeout == 0)
    self->timeout = g_timeout_add_seconds (DELAY, on_timeout, self);
}

static void
tb_autosave_dispose (GObject *object)
{
  TbAutosave *self = TB_AUTOSAVE (object);

  if (self->session != NULL)
    forget_copy (self);
  g_clear_object (&self->session);
  G_OBJECT_CLASS (tb_autosave_parent_class)->dispose (object);
}

static void
tb_autosave_class_init (TbAutosaveClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = tb_autosave_dispose;
}

static void
tb_autosave_init (TbAutosave *self)
{
  self->lock = -1;
}

TbAutosave *
tb_autosave_new (TbSession *session)
{
  TbAutosave *self = g_object_new (TB_TYPE_AUTOSAVE, NULL);

  self->session = g_object_ref (session);
  g_signal_connect_object (session, "changed", G_CALLBACK (on_session_changed), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (session, "notify::modified", G_CALLBACK (on_session_changed), self, G_CONNECT_SWAPPED);
  return self;
}

/* Where a copy came from; NULL if nowhere, or if that cannot be told. */
static GFile *
read_origin (const char *folder)
{
  g_autofree char *path = g_build_filename (folder, ORIGIN_NAME, NULL);
  g_autofree char *origin = NULL;
  gsize length;

  if (!g_file_get_contents (path, &origin, &length, NULL) || length == 0 || length > MAX_ORIGIN
      || !g_path_is_absolute (origin))
    return NULL;
  return g_file_new_for_path (origin);
}

static void
read_original (TbUnsaved *unsaved, TbLibrary *library)
{
  g_autofree char *path = NULL;

  unsaved->file = read_origin (unsaved->folder);
  if (unsaved->file == NULL)
    return;
  path = g_file_get_path (unsaved->file);
  unsaved->original = tb_study_load (library, path, NULL);
  /* A file that is gone or damaged is not to be written over without being asked. */
  if (unsaved->original == NULL)
    g_clear_object (&unsaved->file);
}

/* NULL if a program still has it, or it holds nothing that can be read. */
static TbUnsaved *
take_copy (const char *folder, TbLibrary *library)
{
  g_autofree char *path = g_build_filename (folder, STUDY_NAME, NULL);
  TbUnsaved *unsaved = g_new0 (TbUnsaved, 1);

  unsaved->folder = g_strdup (folder);
  unsaved->lock = lock_folder (folder);
  if (unsaved->lock >= 0)
    unsaved->study = tb_study_load (library, path, NULL);
  if (unsaved->study == NULL)
    {
      tb_unsaved_free (unsaved);
      return NULL;
    }
  read_original (unsaved, library);
  return unsaved;
}

static gint64
changed_at (const TbUnsaved *unsaved)
{
  g_autofree char *path = g_build_filename (unsaved->folder, STUDY_NAME, NULL);
  GStatBuf info;

  return g_stat (path, &info) == 0 ? (gint64) info.st_mtime : 0;
}

static int
compare_age (gconstpointer a, gconstpointer b)
{
  const TbUnsaved *const *left = a, *const *right = b;
  gint64 x = changed_at (*left), y = changed_at (*right);

  return (x > y) - (x < y);
}

GPtrArray *
tb_autosave_find (TbLibrary *library)
{
  GPtrArray *found = g_ptr_array_new_with_free_func ((GDestroyNotify) tb_unsaved_free);
  g_autofree char *parent = unsaved_folder ();
  g_autoptr (GDir) dir = g_dir_open (parent, 0, NULL);
  const char *name;

  while (dir != NULL && (name = g_dir_read_name (dir)) != NULL)
    {
      g_autofree char *folder = g_build_filename (parent, name, NULL);
      TbUnsaved *unsaved = take_copy (folder, library);

      if (unsaved != NULL)
        g_ptr_array_add (found, unsaved);
    }
  g_ptr_array_sort (found, compare_age);
  return found;
}

void
tb_unsaved_open (TbUnsaved *unsaved, TbSession *session)
{
  g_autoptr (TbStudy) start = tb_library_start_study ();

  tb_session_open (session, unsaved->original != NULL ? unsaved->original : start, unsaved->file);
  tb_session_set_study (session, unsaved->study);
}

void
tb_unsaved_remove (TbUnsaved *unsaved)
{
  remove_folder (unsaved->folder);
}

void
tb_unsaved_free (TbUnsaved *unsaved)
{
  if (unsaved->lock >= 0)
    close (unsaved->lock);
  g_free (unsaved->folder);
  g_clear_pointer (&unsaved->study, tb_study_unref);
  g_clear_pointer (&unsaved->original, tb_study_unref);
  g_clear_object (&unsaved->file);
  g_free (unsaved);
}
