/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "tb-app.h"

#include <glib/gi18n-lib.h>
#include <stdlib.h>

#include "tb-application.h"
#include "tb-task.h"

/* What is still at work when the last window has gone has so long to come to its end, s. */
#define LAST_WORK 10.0

/* GTK would end the process with a bare "cannot open display". */
static int
tell_no_display (void)
{
  g_printerr ("tenboard: %s\n",
              _ ("There is no display to open a window on; use --numbers or --picture, --help tells how."));
  return EXIT_FAILURE;
}

/* Nobody can listen where there is no session bus, and GTK would warn about it. There is one window after
 * another then, each a process of its own, as with any program. */
static void
do_without_bus (void)
{
  g_autoptr (GDBusConnection) bus = g_bus_get_sync (G_BUS_TYPE_SESSION, NULL, NULL);

  if (bus == NULL)
    g_setenv ("GTK_A11Y", "none", FALSE);
}

int
tb_app_run (int argc, char **argv)
{
  g_autoptr (TbApplication) application = NULL;
  int status;

  g_set_application_name (_ ("Tenboard"));
  g_set_prgname ("tenboard");
  do_without_bus ();
  if (!gtk_init_check ())
    return tell_no_display ();
  application = tb_application_new ();
  status = g_application_run (G_APPLICATION (application), argc, argv);
  /* A file that is being saved is finished; the rest has been told to stop. */
  tb_task_wait_for_all (LAST_WORK);
  return status;
}
