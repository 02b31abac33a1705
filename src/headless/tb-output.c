/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"
#include "tb-output.h"

#include <errno.h>
#include <glib/gi18n-lib.h>
#include <string.h>
#include <unistd.h>

#include "tb-request.h"

gboolean
tb_output_write (const char *text, GError **error)
{
  gsize length = strlen (text);

  while (length > 0)
    {
      ssize_t written = write (STDOUT_FILENO, text, length);

      if (written < 0 && errno == EINTR)
        continue;
      if (written < 0)
        {
          g_set_error (error, TB_HEADLESS_ERROR, TB_EXIT_FILE, _ ("Standard output cannot be written: %s."),
                       g_strerror (errno));
          return FALSE;
        }
      text += written;
      length -= (gsize) written;
    }
  return TRUE;
}
