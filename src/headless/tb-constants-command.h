/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "tb-request.h"

G_BEGIN_DECLS

/* Prints the table of assumed constants, and what else is assumed or only typical, as JSON. */
gboolean tb_constants_command (TbRequest *request, const char *argument, GError **error);

G_END_DECLS
