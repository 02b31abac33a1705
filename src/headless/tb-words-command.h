/* What is read rather than drawn: the trade's words, and what both throws do.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "tb-request.h"

G_BEGIN_DECLS

/* The glossary as JSON, in the reader's language and order. */
gboolean tb_words_command (TbRequest *request, const char *argument, GError **error);
/* Both throws and how they differ, in one paragraph. */
gboolean tb_say_command (TbRequest *request, const char *argument, GError **error);

G_END_DECLS
