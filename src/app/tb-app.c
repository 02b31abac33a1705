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

int
tb_app_run (int argc, char **argv)
{
  g_autoptr (TbApplication) application = NULL;
  int status;

  g_set_application_name (_ ("Tenboard"));
  g_set_prgname ("tenboard");
  if (!gtk_init_check ())
    return tell_no_display ();
  application = tb_application_new ();
  status = g_application_run (G_APPLICATION (application), argc, argv);
  /* A file that is being saved is finished; the rest has been told to stop. */
  tb_task_wait_for_all (LAST_WORK);
  return status;
}
