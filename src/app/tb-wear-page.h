/* Wear: bowl games on the lane of "after" with a mix of bowlers, see the film as it was and as it is, and
 * when the line stops working.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "tb-lane-page.h"

G_BEGIN_DECLS

#define TB_TYPE_WEAR_PAGE (tb_wear_page_get_type ())
G_DECLARE_FINAL_TYPE (TbWearPage, tb_wear_page, TB, WEAR_PAGE, TbLanePage)

/* Plays so many games, as the slider does. */
void tb_wear_page_set_games (TbWearPage *self, double games);
/* For tests: whether games are being played or a line is followed. */
gboolean tb_wear_page_is_busy (TbWearPage *self);

G_END_DECLS
