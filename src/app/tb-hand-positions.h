/* Hand positions in the trade's words, and the axis each gives.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "tb-core.h"

typedef struct TbHandPosition
{
  const char *label; /* untranslated */
  const char *note;  /* one sentence, untranslated */
  double axis_rotation_deg;
  double axis_tilt_deg;
} TbHandPosition;

/* In the order from least to most side turn, the back-up ball last; ends with a NULL label. The directions
 * are common practice; the sizes are assumed. */
extern const TbHandPosition tb_hand_positions[];

/* Index of the position that gives this delivery's axis; −1 if none does. */
int tb_hand_position_of (const TbDelivery *delivery);
void tb_hand_position_apply (const TbHandPosition *position, TbDelivery *delivery);
