/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "tb-request.h"

G_BEGIN_DECLS

/* Writes the page to take home; filename ends in .pdf. */
gboolean tb_handout_command (TbRequest *request, const char *filename, GError **error);

G_END_DECLS
