/* What the page about wear says. All translated; free them.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "tb-wear-life.h"

G_BEGIN_DECLS

/* "fresh", "after 3 games" */
char *tb_wear_games_text (double games);
/* What is left on the lane of a setup, and where the rest went. */
char *tb_wear_numbers_text (const TbSetup *setup);
/* How long a line lasts, and what brings it back. */
char *tb_wear_life_text (const TbWearLife *life);

G_END_DECLS
