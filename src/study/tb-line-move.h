/* Where feet and target go, in the bowler's words.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>
#include "tb-delivery.h"

G_BEGIN_DECLS

/* "Feet 3.0 boards to the left, target 1.5 to the left", from the moves in boards, towards higher ones where
 * positive; NULL where neither moves. Translated; free it. */
char *tb_line_move_text (double feet, double target, TbHand hand);

G_END_DECLS
