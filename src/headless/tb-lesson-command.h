/* What is done with lessons without a window.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "tb-request.h"

G_BEGIN_DECLS

/* --lesson-check FILE|all: throws every step of a lesson, or of the built-in ones, and prints what each shows as JSON. */
gboolean tb_lesson_check_command (TbRequest *request, const char *argument, GError **error);
/* --lesson-texts FILE|all: prints the texts as C for translators' tools. */
gboolean tb_lesson_texts_command (TbRequest *request, const char *argument, GError **error);

G_END_DECLS
