/* Paths as tables.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "tb-request.h"

G_BEGIN_DECLS

/* Both runs as the command writes them, CSV or JSON. They must have been thrown. The caller's. */
char *tb_path_text (TbRun *runs[TB_N_SIDES], gboolean csv);

/* --path OUT.csv|json: where both balls are, from release to the end of the throw, every hundredth of a second. */
gboolean tb_path_command (TbRequest *request, const char *filename, GError **error);

G_END_DECLS
