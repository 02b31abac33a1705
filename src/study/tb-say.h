/* Runs in words that can be read out, for people who do not see the pictures.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "tb-setup.h"

G_BEGIN_DECLS

/* All translated; free them. */
/* What a run did, in a sentence or three. It has to have been thrown (status TB_OK). */
char *tb_say_run (const TbRun *run, gboolean metric);
/* How they differ, in one to four sentences; one that says so where either cannot be thrown or is in the
 * gutter. "More", "less", "steeper" and
 * "flatter" are said only of balls that hook, or come in, towards higher boards. */
char *tb_say_difference (const TbRun *before, const TbRun *after, gboolean metric);
/* One paragraph of what is said of each and of the difference. */
char *tb_say_together (const char *before, const char *after, const char *difference);

G_END_DECLS
