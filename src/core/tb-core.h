/* Everything of core.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "tb-assumed.h"
#include "tb-ball.h"
#include "tb-cover.h"
#include "tb-delivery.h"
#include "tb-fields.h"
#include "tb-friction.h"
#include "tb-lane-geometry.h"
#include "tb-math.h"
#include "tb-measures.h"
#include "tb-oil.h"
#include "tb-path.h"
#include "tb-shot.h"
#include "tb-status.h"
#include "tb-units.h"
