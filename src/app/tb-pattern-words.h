/* What the pattern editor says. All translated; free them.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "tb-pattern.h"

G_BEGIN_DECLS

/* The unit in which the oil on one board is told. */
#define TB_MICROLITRES_PER_ML 1000.0

/* Length, oil, ratio, where the film falls off, and the customary breakpoint. */
char *tb_pattern_figures_text (const TbPattern *pattern);
/* A strip in one line, numbered from 1. */
char *tb_strip_text (guint index, const TbStrip *strip);

G_END_DECLS
