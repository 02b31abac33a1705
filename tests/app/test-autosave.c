/* What was not saved comes back after the program was killed.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include <errno.h>
#include <glib/gstdio.h>
#include <signal.h>
#include <string.h>
#include <sys/wait.h>
#include <unistd.h>

#include "tb-autosave.h"
#include "tb-study-document.h"
#include "window-support.h"

typedef struct Place
{
  TbLibrary *library;
  TbSession *session;
  char *unsaved; /* the folder of all copies */
} Place;

static void
set_up (Place *place, gconstpointer data)
{
  place->library = tb_library_new ();
  place->session = tb_session_new (place->library);
  place->unsaved = g_build_filename (g_get_user_data_dir (), "tenboard", "unsaved", NULL);
}

static void
tear_down (Place *place, gconstpointer data)
{
  g_clear_object (&place->session);
  g_clear_object (&place->library);
  g_free (place->unsaved);
}

static int
count_copies (Place *place)
{
  g_autoptr (GDir) dir = g_dir_open (place->unsaved, 0, NULL);
  int count = 0;

  while (dir != NULL && g_dir_read_name (dir) != NULL)
    count++;
  return count;
}

/* In a process of its own: makes a change, lets it be kept, and is killed. */
static void
work_and_die (Place *place, const char *path, double speed)
{
  pid_t child = fork ();
  int status;

  g_assert_cmpint (child, >=, 0);
  if (child == 0)
    {
      g_autoptr (TbAutosave) autosave = tb_autosave_new (place->session);

      if (path != NULL)
        {
          g_autoptr (TbStudy) study = tb_study_load (place->library, path, NULL);
          g_autoptr (GFile) file = g_file_new_for_path (path);

          tb_session_open (place->session, study, file);
        }
      tb_session_set_field (place->session, tb_field_find (TB_GROUP_DELIVERY, "speed_mph"), speed, NULL);
      if (!tb_autosave_flush (autosave))
        _exit (EXIT_FAILURE);
      kill (getpid (), SIGKILL);
    }
  while (waitpid (child, &status, 0) < 0)
    g_assert_cmpint (errno, ==, EINTR);
  g_assert_true (WIFSIGNALED (status));
}

static void
test_killed (Place *place, gconstpointer data)
{
  g_autoptr (GPtrArray) found = NULL;

  work_and_die (place, NULL, 19);
  found = tb_autosave_find (place->library);
  g_assert_cmpuint (found->len, ==, 1);
  tb_unsaved_open (g_ptr_array_index (found, 0), place->session);
  g_assert_cmpfloat (speed_after (place->session), ==, 19);
  g_assert_true (tb_session_get_modified (place->session));
  g_assert_null (tb_session_get_file (place->session));
  tb_session_undo (place->session);
  g_assert_cmpfloat (speed_after (place->session), ==, 17);
  g_assert_false (tb_session_get_modified (place->session));
  tb_unsaved_remove (g_ptr_array_index (found, 0));
  g_assert_cmpint (count_copies (place), ==, 0);
}

/* The file it came from is known again, and was not touched. */
static void
test_killed_with_a_file (Place *place, gconstpointer data)
{
  g_autoptr (TbStudy) study = tb_library_start_study ();
  g_autofree char *path = g_build_filename (g_get_user_data_dir (), "tuesday.tenboard", NULL);
  g_autoptr (GPtrArray) found = NULL;
  g_autofree char *opened = NULL;

  g_assert_true (tb_study_save (study, path, NULL));
  work_and_die (place, path, 15);
  found = tb_autosave_find (place->library);
  g_assert_cmpuint (found->len, ==, 1);
  tb_unsaved_open (g_ptr_array_index (found, 0), place->session);
  g_assert_nonnull (tb_session_get_file (place->session));
  opened = g_file_get_path (tb_session_get_file (place->session));
  g_assert_cmpstr (opened, ==, path);
  g_assert_cmpfloat (speed_after (place->session), ==, 15);
  g_assert_true (tb_session_get_modified (place->session));
  tb_unsaved_remove (g_ptr_array_index (found, 0));
}

/* A file that has gone meanwhile is not written again without being asked. */
static void
test_file_is_gone (Place *place, gconstpointer data)
{
  g_autoptr (TbStudy) study = tb_library_start_study ();
  g_autofree char *path = g_build_filename (g_get_user_data_dir (), "gone.tenboard", NULL);
  g_autoptr (GPtrArray) found = NULL;

  g_assert_true (tb_study_save (study, path, NULL));
  work_and_die (place, path, 15);
  g_assert_cmpint (g_unlink (path), ==, 0);
  found = tb_autosave_find (place->library);
  g_assert_cmpuint (found->len, ==, 1);
  tb_unsaved_open (g_ptr_array_index (found, 0), place->session);
  g_assert_null (tb_session_get_file (place->session));
  g_assert_cmpfloat (speed_after (place->session), ==, 15);
  tb_unsaved_remove (g_ptr_array_index (found, 0));
}

/* By itself, while changes go on; and away again when nothing is unsaved any more. */
static void
test_by_itself (Place *place, gconstpointer data)
{
  g_autoptr (TbAutosave) autosave = tb_autosave_new (place->session);

  set_speed (place->session, 18);
  g_assert_cmpint (count_copies (place), ==, 0);
  WAIT_UNTIL (count_copies (place) > 0);
  tb_session_undo (place->session);
  g_assert_cmpint (count_copies (place), ==, 0);
  tb_session_redo (place->session);
  g_assert_true (tb_autosave_flush (autosave));
  tb_session_mark_saved (place->session, NULL);
  g_assert_cmpint (count_copies (place), ==, 0);
}

/* What a living program has unsaved is its own affair. */
static void
test_living (Place *place, gconstpointer data)
{
  g_autoptr (TbAutosave) autosave = tb_autosave_new (place->session);
  g_autoptr (GPtrArray) found = NULL;

  set_speed (place->session, 18);
  g_assert_true (tb_autosave_flush (autosave));
  found = tb_autosave_find (place->library);
  g_assert_cmpuint (found->len, ==, 0);
  g_assert_cmpint (count_copies (place), ==, 1);
}

/* Rubbish among the copies keeps no other from being found, and is left alone. */
static void
test_rubbish (Place *place, gconstpointer data)
{
  g_autofree char *folder = g_build_filename (place->unsaved, "rubbish", NULL);
  g_autofree char *file = g_build_filename (folder, "study.tenboard", NULL);
  g_autoptr (GPtrArray) found = NULL;

  g_assert_cmpint (g_mkdir_with_parents (folder, 0700), ==, 0);
  g_assert_true (g_file_set_contents (file, "{\"tenboard\": \"stu", -1, NULL));
  work_and_die (place, NULL, 19);
  found = tb_autosave_find (place->library);
  g_assert_cmpuint (found->len, ==, 1);
  tb_unsaved_remove (g_ptr_array_index (found, 0));
  g_assert_true (g_file_test (file, G_FILE_TEST_EXISTS));
  g_unlink (file);
  g_rmdir (folder);
}

/* A data folder that cannot be made costs a message, once, and nothing else. */
static void
test_no_room (Place *place, gconstpointer data)
{
  g_autofree char *parent = g_path_get_dirname (place->unsaved);
  g_autoptr (TbAutosave) autosave = tb_autosave_new (place->session);

  g_rmdir (place->unsaved);
  g_assert_cmpint (g_mkdir_with_parents (parent, 0700), ==, 0);
  g_assert_true (g_file_set_contents (place->unsaved, "in the way", -1, NULL));
  set_speed (place->session, 18);
  g_test_expect_message ("tenboard", G_LOG_LEVEL_MESSAGE, "changes are not kept until they are saved: *");
  g_assert_false (tb_autosave_flush (autosave));
  g_assert_false (tb_autosave_flush (autosave));
  g_test_assert_expected_messages ();
  g_unlink (place->unsaved);
}

/* The window opens what was left, says so, and keeps a copy of its own until it is saved or closed. */
static void
test_window (Place *place, gconstpointer data)
{
  GList *windows;

  start_application ();
  work_and_die (place, NULL, 19);
  g_assert_cmpint (tb_window_recover_all (GTK_APPLICATION (application), place->library), ==, 1);
  windows = gtk_application_get_windows (GTK_APPLICATION (application));
  g_assert_cmpuint (g_list_length (windows), ==, 1);
  g_assert_cmpfloat (speed_after (tb_window_get_session (TB_WINDOW (windows->data))), ==, 19);
  g_assert_cmpint (count_copies (place), ==, 1);
  g_assert_cmpint (tb_window_recover_all (GTK_APPLICATION (application), place->library), ==, 0);
  gtk_window_destroy (windows->data);
  g_assert_cmpint (count_copies (place), ==, 0);
}

#define ADD(name, function) g_test_add (name, Place, NULL, set_up, function, tear_down)

int
main (int argc, char **argv)
{
  start_tests (&argc, &argv);
  ADD ("/autosave/killed", test_killed);
  ADD ("/autosave/killed-with-a-file", test_killed_with_a_file);
  ADD ("/autosave/file-is-gone", test_file_is_gone);
  ADD ("/autosave/by-itself", test_by_itself);
  ADD ("/autosave/living", test_living);
  ADD ("/autosave/rubbish", test_rubbish);
  ADD ("/autosave/no-room", test_no_room);
  ADD ("/autosave/window", test_window);
  return run_tests ();
}
