/* Every constant that nobody has measured publicly, or that is only typical, in one table.
 *
 * A shot carries its own copy, so that calibration can move them and a study can ask what would break.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <stddef.h>
#include "tb-units.h"

typedef struct TbAssumed
{
  double film_friction;       /* coefficient with the ball fully carried by the film */
  double restitution;         /* normal speed after a landing over before it */
  double landing_time;        /* s, from the touch until the fall is stopped: what presses is the mean load then */
  double contact_radius;      /* m, radius of the spot under the resting ball */
  double rolling_resistance;  /* force over weight */
  double drag_coefficient;    /* of a sphere */
  double air_density;         /* kg/m³ */
  double grip_speed;          /* share of the speed lost for each step of grip above neutral */
  double grip_rev_rate;       /* share of the rev rate gained for each step of grip above neutral */
  double pick_up;             /* share of the lane's film that the ball takes in one passing */
  double lay_down;            /* share of the ball's film that the lane takes in one passing */
  double patch_width;         /* m, width of the strip of lane and of ball that exchange oil */
  double oil_exit_film;       /* m, film under which the ball counts as out of the oil */
  double pocket_low;          /* m, bowler's frame, at the pins: the low-board edge of the pocket */
  double pocket_high;         /* m, bowler's frame, at the pins: the high-board edge */
} TbAssumed;

typedef struct TbAssumedInfo
{
  const char *name;        /* as in TbAssumed */
  const char *label;       /* for people, untranslated */
  const char *unit;        /* of the numbers below */
  size_t offset;           /* in TbAssumed */
  double (*to_si) (double);
  double (*from_si) (double);
  double value, low, high; /* default and plausible range, in `unit` */
  const char *source;      /* where it comes from; begins with "assumed" where nobody has measured it */
  const char *consequence; /* what changes if it is moved */
} TbAssumedInfo;

/* The table; ends with a NULL name. */
extern const TbAssumedInfo tb_assumed_table[];
int tb_assumed_count (void);
TbAssumed tb_assumed_default (void);
