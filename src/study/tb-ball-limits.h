/* A ball's values against the published limits, in words.
 *
 * The limits are those of the USBC Equipment Specifications Manual; the rulebook in force where the ball is
 * used comes first.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>
#include "tb-core.h"

G_BEGIN_DECLS

typedef enum TbLimitVerdict
{
  TB_LIMIT_WITHIN,
  TB_LIMIT_OUTSIDE,
  TB_LIMIT_NOT_KNOWN /* the model has no such value, or no limit is known for it */
} TbLimitVerdict;

typedef struct TbLimitLine
{
  const char *name; /* of what is limited: "weight", "rg" … */
  char *label;      /* translated */
  char *value;      /* with its unit, translated; "" where there is none */
  char *limit;      /* likewise */
  TbLimitVerdict verdict;
  char *sentence; /* the whole of it, translated */
} TbLimitLine;

void tb_limit_line_free (TbLimitLine *line);
/* One line for each limit, in a fixed order. RG, differential and static weights are those of the drilled
 * ball, or the blank's where that is what the limit is about. A ball that cannot be (see tb_ball_body()) has
 * the lines that do not depend on its body. Array of TbLimitLine. */
GPtrArray *tb_ball_limits (const TbBall *ball);
/* The worst of them, TB_LIMIT_NOT_KNOWN counting as fine. */
TbLimitVerdict tb_ball_limits_verdict (const GPtrArray *lines);
/* Where the limits come from, translated. */
const char *tb_ball_limits_source (void);

G_END_DECLS
