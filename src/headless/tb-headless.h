/* The commands that need no display.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* What the program answers to whoever started it. */
typedef enum TbExit
{
  TB_EXIT_DONE = 0,
  TB_EXIT_USAGE = 2, /* an unknown option or key, a value out of range */
  TB_EXIT_FILE = 3   /* a file cannot be read, accepted or written */
} TbExit;

/* Whether the command line asks for something that needs no window. */
gboolean tb_headless_is_asked (int argc, char **argv);
/* Does it. Answers the exit status; what went wrong is one sentence on standard error. */
int tb_headless_run (int argc, char **argv);

G_END_DECLS
