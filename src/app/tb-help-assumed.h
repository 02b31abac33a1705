/* What is assumed, for people to read: every constant that nobody has measured, and what is typical of covers
 * and surfaces.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* Both translated, and gone after the call. */
typedef void (*TbHelpAssumedFunc) (const char *title, const char *text, gpointer data);
/* Calls func for each: the constants in the order of their table, then covers, then surfaces. */
void tb_help_assumed_foreach (TbHelpAssumedFunc func, gpointer data);

G_END_DECLS
