/* Lines as coaches speak of them: feet and target, moves, misses to either side, spares; laydown and aim to
 * be dragged.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "tb-lane-page.h"
#include "tb-lines.h"

G_BEGIN_DECLS

#define TB_TYPE_LINES_PAGE (tb_lines_page_get_type ())
G_DECLARE_FINAL_TYPE (TbLinesPage, tb_lines_page, TB, LINES_PAGE, TbLanePage)

/* For tests: the stance that stands there, and a spare as the pin's button shows it (0 to 9; −1 for none). */
TbStance tb_lines_page_get_stance (TbLinesPage *self);
void tb_lines_page_show_spare (TbLinesPage *self, int pin);

G_END_DECLS
