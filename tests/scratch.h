/* A folder of the test's own, that is gone when the test is.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>
#include <glib/gstdio.h>
#include <stdlib.h>

/* Removes a file, or a folder with all that is in it. A link is removed, not followed. */
static inline void
scratch_remove (const char *path)
{
  g_autoptr (GDir) dir = g_file_test (path, G_FILE_TEST_IS_SYMLINK) ? NULL : g_dir_open (path, 0, NULL);
  const char *name;

  while (dir != NULL && (name = g_dir_read_name (dir)) != NULL)
    {
      g_autofree char *inside = g_build_filename (path, name, NULL);

      scratch_remove (inside);
    }
  g_remove (path);
}

static char *scratch_path;

static inline void
scratch_clean (void)
{
  scratch_remove (scratch_path);
  g_clear_pointer (&scratch_path, g_free);
}

/* The folder, made when it is first asked for, and removed with all that is in it when the program ends. A
 * program that is killed leaves it behind. */
static inline const char *
scratch_folder (void)
{
  g_autoptr (GError) error = NULL;

  if (scratch_path != NULL)
    return scratch_path;
  scratch_path = g_dir_make_tmp ("tenboard-test-XXXXXX", &error);
  g_assert_no_error (error);
  atexit (scratch_clean);
  return scratch_path;
}
