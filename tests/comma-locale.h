/* A locale that writes numbers with a comma, made on the spot: few machines have one.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <locale.h>
#include <string.h>

#include "scratch.h"

/* The same in headless/test-comma.py. */
#define COMMA_LOCALE "de_DE.UTF-8"

/* Compiles the locale into the scratch folder and makes it this process's. FALSE where its sources are not
 * installed. */
static inline gboolean
make_comma_locale (void)
{
  const char *folder = scratch_folder ();
  g_autofree char *compiled = g_build_filename (folder, COMMA_LOCALE, NULL);
  const char *command[] = { "localedef", "-i", "de_DE", "-f", "UTF-8", compiled, NULL };

  g_spawn_sync (NULL, (char **) command, NULL,
                G_SPAWN_SEARCH_PATH | G_SPAWN_STDOUT_TO_DEV_NULL | G_SPAWN_STDERR_TO_DEV_NULL, NULL, NULL,
                NULL, NULL, NULL, NULL);
  g_setenv ("LOCPATH", folder, TRUE);
  g_setenv ("LC_ALL", COMMA_LOCALE, TRUE);
  return setlocale (LC_ALL, "") != NULL && strcmp (localeconv ()->decimal_point, ",") == 0;
}

/* The same, and the test is told to be skipped where it cannot be done. */
static inline gboolean
use_comma_locale (void)
{
  if (make_comma_locale ())
    return TRUE;
  g_test_skip ("no sources of locales (Debian package locales)");
  return FALSE;
}
