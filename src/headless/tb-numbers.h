/* The numbers of two runs as JSON.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "tb-study.h"

G_BEGIN_DECLS

/* One object: "before", "after" and "difference" (after − before; null where either is). Units and names are
 * those of tb-measures.h; numbers are the same in every language. */
char *tb_numbers_text (const TbRun *before, const TbRun *after);

G_END_DECLS
