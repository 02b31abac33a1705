/* What the page about lines says. All translated; free them.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "tb-lines.h"
#include "tb-session.h"

G_BEGIN_DECLS

/* Where the feet put the ball, and 3 : 1 : 2. */
char *tb_lines_feet_text (const TbStance *stance, const TbDelivery *delivery);
/* Where either ball leaves the oil, and how long it is in it. */
char *tb_lines_oil_text (TbSession *session);
/* Where the misses end. */
char *tb_lines_family_text (const TbFamily *family);
/* own_aim_board: where this very ball must be aimed; NAN if it does not get there. */
char *tb_lines_spare_text (const TbSpare *spare, double own_aim_board);

G_END_DECLS
