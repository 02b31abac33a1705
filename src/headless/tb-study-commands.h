/* Why two throws differ, where the pocket line is, what to try next: as JSON or as plain text.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "tb-request.h"

G_BEGIN_DECLS

gboolean tb_why_command (TbRequest *request, const char *argument, GError **error);
/* argument: a wish (tb_wish_parse()). */
gboolean tb_next_command (TbRequest *request, const char *argument, GError **error);
gboolean tb_pocket_line_command (TbRequest *request, const char *argument, GError **error);

G_END_DECLS
