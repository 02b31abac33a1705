/* What the tests of lane play share: patterns, a setup whose line finds the pocket, checks that say what they
 * measured.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "tb-setup.h"

G_BEGIN_DECLS

/* The house pattern of the built-in documents: 40 ft, 24 mL. */
TbPattern *lane_house (void);
/* 40 ft and as much oil, all but even across. */
TbPattern *lane_flat (void);
/* The default ball and release, laid down on a board and aimed so that it meets the pins on board 17.5
 * without gutters. */
TbSetup *lane_setup (TbPattern *pattern, double laydown_board);
/* Of an edgeless throw; NAN if there was none. */
double lane_board_at_pins (TbSetup *setup);
double lane_board_of (const TbShot *shot);

/* Fails the test, and goes on, unless |got − want| ≤ bound; prints what was measured. */
void lane_near (const char *what, double got, double want, double bound);
void lane_between (const char *what, double got, double low, double high);

G_END_DECLS
