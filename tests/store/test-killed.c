/* Saving while the program is killed: whatever the moment, the old file or the new one is there, whole.
 *
 * A child process saves; it is killed before or after each single call to the system in turn, and then,
 * blindly, at moments of the clock. The parent looks at what is left, reads it as a program started again
 * would, and saves over it.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include <errno.h>
#include <glib/gstdio.h>
#include <signal.h>
#include <string.h>
#include <sys/wait.h>
#include <unistd.h>

#include "../scratch.h"
#include "tb-atomic-file.h"
#include "tb-study-document.h"

/* A call writes at most this much, so that there are many moments inside the writing. */
#define BYTES_PER_WRITE 512
/* More moments than any save has; the loop ends at the first save that outlives its moment. */
#define MAX_MOMENTS 1000
/* Kills at moments of the clock, and the longest time a child is left to save in, us. */
#define BLIND_KILLS 60
#define MAX_MICROSECONDS 12000

typedef struct Place
{
  char *folder, *path;
  char *old_text, *new_text;
} Place;

/* In the child: calls to the system still to be made before it is killed. */
static int calls_left;

static void
count_down (void)
{
  if (calls_left-- == 0)
    kill (getpid (), SIGKILL);
}

static int
counted_temporary (char *pattern, int flags, int mode)
{
  int fd;

  count_down ();
  fd = tb_file_calls.make_temporary (pattern, flags, mode);
  count_down ();
  return fd;
}

static ssize_t
counted_write (int fd, const void *bytes, size_t length)
{
  count_down ();
  return tb_file_calls.write (fd, bytes, MIN (length, BYTES_PER_WRITE));
}

static int
counted_sync (int fd)
{
  count_down ();
  return tb_file_calls.sync (fd);
}

static int
counted_close (int fd)
{
  count_down ();
  return tb_file_calls.close (fd);
}

static int
counted_rename (const char *from, const char *to)
{
  int result;

  count_down ();
  result = tb_file_calls.rename (from, to);
  count_down ();
  return result;
}

static int
counted_sync_folder (const char *folder)
{
  int result;

  count_down ();
  result = tb_file_calls.sync_folder (folder);
  count_down ();
  return result;
}

static const TbFileCalls counted_calls = {
  .make_temporary = counted_temporary,
  .write = counted_write,
  .sync = counted_sync,
  .close = counted_close,
  .rename = counted_rename,
  .sync_folder = counted_sync_folder,
};

static char *
study_text (const char *title)
{
  g_autoptr (TbStudy) start = tb_library_start_study ();
  g_autoptr (TbStudy) study = tb_study_with_text (start, title, "");

  return tb_study_to_text (study);
}

static void
set_up (Place *place, gconstpointer data)
{
  place->folder = g_build_filename (scratch_folder (), "place", NULL);
  g_assert_cmpint (g_mkdir (place->folder, 0700), ==, 0);
  place->path = g_build_filename (place->folder, "study.tenboard", NULL);
  place->old_text = study_text ("The old one");
  place->new_text = study_text ("The new one, with a longer name");
}

/* Takes everything out of the folder. Answers how many temporary files there were. */
static int
clear_folder (Place *place)
{
  g_autoptr (GDir) dir = g_dir_open (place->folder, 0, NULL);
  const char *name;
  int temporary = 0;

  while ((name = g_dir_read_name (dir)))
    {
      g_autofree char *path = g_build_filename (place->folder, name, NULL);

      temporary += g_str_has_prefix (name, ".tenboard-");
      g_assert_cmpint (g_remove (path), ==, 0);
    }
  return temporary;
}

static void
tear_down (Place *place, gconstpointer data)
{
  scratch_remove (place->folder);
  g_free (place->folder);
  g_free (place->path);
  g_free (place->old_text);
  g_free (place->new_text);
}

/* The old or the new text, and nothing in between; it opens. TRUE if it is the new one. */
static gboolean
check_old_or_new (Place *place)
{
  g_autoptr (TbLibrary) library = tb_library_new ();
  g_autoptr (TbStudy) study = NULL;
  g_autoptr (GError) error = NULL;
  g_autofree char *content = NULL;
  gboolean new;

  g_assert_true (g_file_get_contents (place->path, &content, NULL, NULL));
  new = g_str_equal (content, place->new_text);
  if (!new)
    g_assert_cmpstr (content, ==, place->old_text);
  study = tb_study_load (library, place->path, &error);
  g_assert_no_error (error);
  g_assert_cmpstr (study->title, ==, new ? "The new one, with a longer name" : "The old one");
  /* What the killed one left behind is in nobody's way. */
  g_assert_true (tb_atomic_write (place->path, place->old_text, strlen (place->old_text), NULL, NULL));
  return new;
}

static void
put_old (Place *place)
{
  g_assert_true (g_file_set_contents (place->path, place->old_text, -1, NULL));
}

/* Saves in a child that is killed once it has made that many steps. TRUE if it got to the end. */
static gboolean
save_and_die (Place *place, int moment)
{
  pid_t child = fork ();
  int status;

  g_assert_cmpint (child, >=, 0);
  if (child == 0)
    {
      calls_left = moment;
      _exit (!tb_atomic_write (place->path, place->new_text, strlen (place->new_text), &counted_calls, NULL));
    }
  while (waitpid (child, &status, 0) < 0)
    g_assert_cmpint (errno, ==, EINTR);
  if (WIFEXITED (status))
    g_assert_cmpint (WEXITSTATUS (status), ==, 0);
  else
    g_assert_cmpint (WTERMSIG (status), ==, SIGKILL);
  return WIFEXITED (status);
}

/* Every moment between two calls to the system. Once the new file is there, it stays. */
static void
test_every_moment (Place *place, gconstpointer data)
{
  gboolean ended = FALSE, was_new = FALSE;
  int moment, littered = 0;

  for (moment = 0; !ended && moment < MAX_MOMENTS; moment++)
    {
      gboolean new;

      put_old (place);
      ended = save_and_die (place, moment);
      new = check_old_or_new (place);
      g_assert_true (new || !was_new);
      was_new = new;
      littered += clear_folder (place) > 0;
    }
  g_assert_true (ended && was_new);
  g_test_message ("%d moments, %d of them with a temporary file left", moment, littered);
  /* The study is some 3 kB, so that there are writes to be killed between; measured 15 moments, 10 with a
   * file left. */
  g_assert_cmpint (moment, >, 10);
  g_assert_cmpint (littered, >, 3);
}

static void
save_for_ever (Place *place)
{
  for (;;)
    {
      tb_atomic_write (place->path, place->new_text, strlen (place->new_text), NULL, NULL);
      tb_atomic_write (place->path, place->old_text, strlen (place->old_text), NULL, NULL);
    }
}

/* Moments inside the calls too: a child saves one after the other and is killed by the clock. */
static void
test_moments_of_the_clock (Place *place, gconstpointer data)
{
  put_old (place);
  for (int i = 0; i < BLIND_KILLS; i++)
    {
      pid_t child = fork ();

      g_assert_cmpint (child, >=, 0);
      if (child == 0)
        save_for_ever (place);
      g_usleep ((gulong) g_test_rand_int_range (0, MAX_MICROSECONDS));
      g_assert_cmpint (kill (child, SIGKILL), ==, 0);
      g_assert_cmpint (waitpid (child, NULL, 0), ==, child);
      check_old_or_new (place);
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, G_TEST_OPTION_ISOLATE_DIRS, NULL);
  g_test_add ("/killed/every-moment", Place, NULL, set_up, test_every_moment, tear_down);
  g_test_add ("/killed/moments-of-the-clock", Place, NULL, set_up, test_moments_of_the_clock, tear_down);
  return g_test_run ();
}
