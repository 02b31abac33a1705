/* Tenboard: shows ten-pin bowlers why their ball hooks as much as it does.
 *
 * What needs no display is done first, so that it works where there is none.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <locale.h>

#include "tb-headless.h"
#ifdef TB_WITH_APP
#  include "tb-app.h"
#endif

static void
set_up_language (void)
{
  /* Set for a program that runs from its build folder. */
  const char *folder = g_getenv ("TENBOARD_LOCALEDIR");

  setlocale (LC_ALL, "");
  bindtextdomain (GETTEXT_PACKAGE, folder ? folder : LOCALEDIR);
  bind_textdomain_codeset (GETTEXT_PACKAGE, "UTF-8");
  textdomain (GETTEXT_PACKAGE);
}

#ifndef TB_WITH_APP
static int
tell_without_window (void)
{
  g_printerr (
      "tenboard: %s\n",
      _ ("This tenboard was built without its window; use --numbers or --picture, --help tells how."));
  return TB_EXIT_USAGE;
}
#endif

int
main (int argc, char **argv)
{
  set_up_language ();
  if (tb_headless_is_asked (argc, argv))
    return tb_headless_run (argc, argv);
#ifdef TB_WITH_APP
  return tb_app_run (argc, argv);
#else
  return tell_without_window ();
#endif
}
