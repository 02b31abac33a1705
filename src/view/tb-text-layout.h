/* The letters of a label, laid out.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "tb-canvas.h"

G_BEGIN_DECLS

/* In a family of type, at the label's own size, which it has to have. The caller's reference; not to be
 * changed: a thread keeps those it used lately, and gives them out again. */
PangoLayout *tb_text_layout (const char *family, const TbLabel *label);

G_END_DECLS
