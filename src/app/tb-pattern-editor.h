/* The pattern of "after": its strips as handles on the lane and as one ordered list beside it, its figures,
 * the film in graphs; tables in and out.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "tb-lane-page.h"

G_BEGIN_DECLS

#define TB_TYPE_PATTERN_EDITOR (tb_pattern_editor_get_type ())
G_DECLARE_FINAL_TYPE (TbPatternEditor, tb_pattern_editor, TB, PATTERN_EDITOR, TbLanePage)

/* For tests: the strip that is chosen, −1 for none; choosing one; and putting one in the chosen one's place,
 * as a handle or a number does. */
int tb_pattern_editor_get_selected (TbPatternEditor *self);
void tb_pattern_editor_select (TbPatternEditor *self, int strip);
gboolean tb_pattern_editor_change (TbPatternEditor *self, const TbStrip *strip);

G_END_DECLS
