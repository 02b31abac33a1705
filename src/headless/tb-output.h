/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* Writes a text to standard output, all of it. FALSE and TB_EXIT_FILE if it cannot: a full disk, nobody at
 * the other end of a pipe. */
gboolean tb_output_write (const char *text, GError **error);

G_END_DECLS
