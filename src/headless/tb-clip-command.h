/* --clip OUT.webp: the throw as it happens, in a file.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "tb-request.h"

G_BEGIN_DECLS

gboolean tb_clip_command (TbRequest *request, const char *filename, GError **error);

G_END_DECLS
