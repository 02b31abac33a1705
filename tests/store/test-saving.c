/* Saving: the old file or the new one, whole, whatever fails.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include <errno.h>
#include <glib/gstdio.h>
#include <signal.h>
#include <string.h>
#include <sys/resource.h>
#include <sys/stat.h>
#include <unistd.h>

#include "../scratch.h"
#include "tb-atomic-file.h"
#include "tb-study-document.h"

#define OLD "old\n"
#define NEW "new and longer\n"

typedef struct Place
{
  char *folder, *path;
} Place;

static void
set_up (Place *place, gconstpointer data)
{
  place->folder = g_build_filename (scratch_folder (), "place", NULL);
  g_assert_cmpint (g_mkdir (place->folder, 0700), ==, 0);
  place->path = g_build_filename (place->folder, "file.json", NULL);
}

static GPtrArray *
list (const char *folder)
{
  GPtrArray *names = g_ptr_array_new_with_free_func (g_free);
  g_autoptr (GDir) dir = g_dir_open (folder, 0, NULL);
  const char *name;

  while ((name = g_dir_read_name (dir)))
    g_ptr_array_add (names, g_strdup (name));
  return names;
}

static void
tear_down (Place *place, gconstpointer data)
{
  scratch_remove (place->folder);
  g_free (place->folder);
  g_free (place->path);
}

static void
check_content (const char *path, const char *expected)
{
  g_autofree char *content = NULL;

  g_assert_true (g_file_get_contents (path, &content, NULL, NULL));
  g_assert_cmpstr (content, ==, expected);
}

static void
put_old (Place *place)
{
  g_assert_true (g_file_set_contents (place->path, OLD, -1, NULL));
}

static void
test_new_and_replaced (Place *place, gconstpointer data)
{
  g_autoptr (GPtrArray) names = NULL;

  g_assert_true (tb_atomic_write (place->path, OLD, strlen (OLD), NULL, NULL));
  check_content (place->path, OLD);
  g_assert_true (tb_atomic_write (place->path, NEW, strlen (NEW), NULL, NULL));
  check_content (place->path, NEW);
  names = list (place->folder);
  g_assert_cmpuint (names->len, ==, 1);
}

static void
test_mode_is_kept (Place *place, gconstpointer data)
{
  struct stat info;

  put_old (place);
  g_assert_cmpint (g_chmod (place->path, 0640), ==, 0);
  g_assert_true (tb_atomic_write (place->path, NEW, strlen (NEW), NULL, NULL));
  g_assert_cmpint (stat (place->path, &info), ==, 0);
  g_assert_cmphex (info.st_mode & 0777, ==, 0640);
}

static void
test_link_is_kept (Place *place, gconstpointer data)
{
  g_autofree char *link = g_build_filename (place->folder, "link.json", NULL);

  put_old (place);
  g_assert_cmpint (symlink ("file.json", link), ==, 0);
  g_assert_true (tb_atomic_write (link, NEW, strlen (NEW), NULL, NULL));
  g_assert_true (g_file_test (link, G_FILE_TEST_IS_SYMLINK));
  check_content (place->path, NEW);
}

/* Each call to the system fails in turn. */
static int failing_errno;
static guint written_before_failing;

static int
no_temporary (char *pattern, int flags, int mode)
{
  errno = failing_errno;
  return -1;
}

/* Writes a little, as a disk does that is about to be full, and then no more. */
static ssize_t
short_write (int fd, const void *bytes, size_t length)
{
  if (written_before_failing++ > 0)
    {
      errno = failing_errno;
      return -1;
    }
  return write (fd, bytes, MIN (length, 3));
}

static guint interruptions;

static ssize_t
interrupted_write (int fd, const void *bytes, size_t length)
{
  if (interruptions++ % 2 == 0)
    {
      errno = EINTR;
      return -1;
    }
  return write (fd, bytes, 1);
}

static int
no_sync (int fd)
{
  errno = failing_errno;
  return -1;
}

static int
no_close (int fd)
{
  close (fd);
  errno = failing_errno;
  return -1;
}

static int
no_rename (const char *from, const char *to)
{
  errno = failing_errno;
  return -1;
}

static int
no_sync_folder (const char *folder)
{
  errno = failing_errno;
  return -1;
}

static void
check_fails (Place *place, const TbFileCalls *calls, const char *kept)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GPtrArray) names = NULL;
  g_autofree char *sentence = g_strconcat ("the file cannot be saved: ", g_strerror (failing_errno), NULL);

  put_old (place);
  g_assert_false (tb_atomic_write (place->path, NEW, strlen (NEW), calls, &error));
  g_assert_error (error, TB_STORE_ERROR, TB_STORE_ERROR_WRITE);
  g_assert_cmpstr (error->message, ==, sentence);
  check_content (place->path, kept);
  names = list (place->folder);
  g_assert_cmpuint (names->len, ==, 1);
}

static void
test_each_failure (Place *place, gconstpointer data)
{
  TbFileCalls calls;

  failing_errno = ENOSPC;
  calls = tb_file_calls;
  calls.make_temporary = no_temporary;
  check_fails (place, &calls, OLD);
  calls = tb_file_calls;
  calls.write = short_write;
  written_before_failing = 0;
  check_fails (place, &calls, OLD);
  failing_errno = EIO;
  calls = tb_file_calls;
  calls.sync = no_sync;
  check_fails (place, &calls, OLD);
  calls = tb_file_calls;
  calls.close = no_close;
  check_fails (place, &calls, OLD);
  calls = tb_file_calls;
  calls.rename = no_rename;
  check_fails (place, &calls, OLD);
  /* The new file is in its place by then, whole; only a power cut could still take it away. */
  calls = tb_file_calls;
  calls.sync_folder = no_sync_folder;
  check_fails (place, &calls, NEW);
}

static void
test_interrupted (Place *place, gconstpointer data)
{
  TbFileCalls calls = tb_file_calls;

  calls.write = interrupted_write;
  g_assert_true (tb_atomic_write (place->path, NEW, strlen (NEW), &calls, NULL));
  check_content (place->path, NEW);
}

/* A device, as a full one, is no place for a document, and is not replaced by one. */
static void
test_device (void)
{
  g_autoptr (TbStudy) study = tb_library_start_study ();
  g_autoptr (GError) error = NULL;
  struct stat info;

  g_assert_false (tb_study_save (study, "/dev/full", &error));
  g_assert_error (error, TB_STORE_ERROR, TB_STORE_ERROR_WRITE);
  g_assert_cmpstr (error->message, ==,
                   "/dev/full: the file cannot be saved: there is something that is not an ordinary file.");
  g_assert_cmpint (stat ("/dev/full", &info), ==, 0);
  g_assert_true (S_ISCHR (info.st_mode));
}

static void
test_folder_in_the_way (Place *place, gconstpointer data)
{
  g_autoptr (TbStudy) study = tb_library_start_study ();
  g_autoptr (GError) error = NULL;
  g_autofree char *below = g_build_filename (place->path, "study.json", NULL);

  put_old (place);
  g_assert_false (tb_study_save (study, below, &error));
  g_assert_error (error, TB_STORE_ERROR, TB_STORE_ERROR_WRITE);
  g_assert_true (g_str_has_suffix (error->message, "cannot be made: Not a directory."));
  check_content (place->path, OLD);
}

static void
test_folder_is_made (Place *place, gconstpointer data)
{
  g_autoptr (TbStudy) study = tb_library_start_study ();
  g_autofree char *folder = g_build_filename (place->folder, "new", NULL);
  g_autofree char *path = g_build_filename (folder, "study.json", NULL);

  g_assert_true (tb_study_save (study, path, NULL));
  g_assert_true (g_file_test (path, G_FILE_TEST_IS_REGULAR));
  g_remove (path);
  g_rmdir (folder);
}

/* Root may write anywhere; everybody else is told. */
static void
test_forbidden_folder (Place *place, gconstpointer data)
{
  g_autoptr (TbStudy) study = tb_library_start_study ();
  g_autoptr (GError) error = NULL;

  if (geteuid () == 0)
    {
      g_test_skip ("root may write anywhere");
      return;
    }
  put_old (place);
  g_assert_cmpint (g_chmod (place->folder, 0555), ==, 0);
  g_assert_false (tb_study_save (study, place->path, &error));
  g_chmod (place->folder, 0755);
  g_assert_true (g_str_has_suffix (error->message, ": the file cannot be saved: Permission denied."));
  check_content (place->path, OLD);
}

/* The system itself runs out of room: files may not grow past a few bytes, in a process of our own. */
static void
test_disk_full (Place *place, gconstpointer data)
{
  if (g_test_subprocess ())
    {
      g_autoptr (TbStudy) study = tb_library_start_study ();
      g_autoptr (GError) error = NULL;
      struct rlimit all, little;

      signal (SIGXFSZ, SIG_IGN);
      put_old (place);
      g_assert_cmpint (getrlimit (RLIMIT_FSIZE, &all), ==, 0);
      little = (struct rlimit){ 100, all.rlim_max };
      g_assert_cmpint (setrlimit (RLIMIT_FSIZE, &little), ==, 0);
      g_assert_false (tb_study_save (study, place->path, &error));
      /* What else the process writes at its end has its room again. */
      setrlimit (RLIMIT_FSIZE, &all);
      g_assert_true (g_str_has_suffix (error->message, ": the file cannot be saved: File too large."));
      check_content (place->path, OLD);
      return;
    }
  g_test_trap_subprocess (NULL, 0, G_TEST_SUBPROCESS_DEFAULT);
  g_test_trap_assert_passed ();
}

static void
check_load_fails (const char *path, const char *clause)
{
  g_autoptr (TbLibrary) library = tb_library_new ();
  g_autoptr (GError) error = NULL;
  g_autofree char *sentence = g_strconcat (path, ": ", clause, NULL);

  g_assert_null (tb_study_load (library, path, &error));
  g_assert_error (error, TB_STORE_ERROR, TB_STORE_ERROR_READ);
  g_assert_cmpstr (error->message, ==, sentence);
}

/* What is not a file to read neither hangs nor fills the memory. */
static void
test_load_no_file (Place *place, gconstpointer data)
{
  g_autofree char *pipe = g_build_filename (place->folder, "pipe", NULL);

  g_assert_cmpint (mkfifo (pipe, 0600), ==, 0);
  check_load_fails (pipe, "this is not an ordinary file.");
  check_load_fails ("/dev/zero", "this is not an ordinary file.");
  check_load_fails (place->folder, "this is not an ordinary file.");
  check_load_fails (place->path, "the file cannot be read: No such file or directory.");
}

static void
test_load_large (Place *place, gconstpointer data)
{
  g_autoptr (TbLibrary) library = tb_library_new ();
  g_autoptr (GError) error = NULL;

  /* A file of a gigabyte that takes no room. */
  put_old (place);
  g_assert_cmpint (truncate (place->path, 1 << 30), ==, 0);
  g_assert_null (tb_study_load (library, place->path, &error));
  g_assert_error (error, TB_STORE_ERROR, TB_STORE_ERROR_TOO_LARGE);
}

#define ADD(name, function) g_test_add (name, Place, NULL, set_up, function, tear_down)

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, G_TEST_OPTION_ISOLATE_DIRS, NULL);
  ADD ("/saving/new-and-replaced", test_new_and_replaced);
  ADD ("/saving/mode-is-kept", test_mode_is_kept);
  ADD ("/saving/link-is-kept", test_link_is_kept);
  ADD ("/saving/each-failure", test_each_failure);
  ADD ("/saving/interrupted", test_interrupted);
  g_test_add_func ("/saving/device", test_device);
  ADD ("/saving/folder-in-the-way", test_folder_in_the_way);
  ADD ("/saving/folder-is-made", test_folder_is_made);
  ADD ("/saving/forbidden-folder", test_forbidden_folder);
  ADD ("/saving/disk-full", test_disk_full);
  ADD ("/loading/no-file", test_load_no_file);
  ADD ("/loading/large", test_load_large);
  return g_test_run ();
}
