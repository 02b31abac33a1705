/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* How the program is used: commands, options, and every key of --set. */
char *tb_help_text (void);

G_END_DECLS
