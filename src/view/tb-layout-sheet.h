/* One page for the pro shop: the layout drawn, every number of ball, layout and grip, what the drilled ball
 * becomes, and the limits.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "tb-core.h"
#include "tb-theme.h"

/* A page of A4 at 96 px to the inch: what tb_export_picture() makes one page of paper of. */
#define TB_LAYOUT_SHEET_WIDTH 794
#define TB_LAYOUT_SHEET_HEIGHT 1123

typedef struct TbLayoutSheet
{
  const TbBall *ball;
  const char *ball_name;   /* for people; NULL if it has none */
  const char *bowler_name; /* likewise */
  const char *date;        /* likewise */
  bool mirrored;           /* the bowler is left-handed */
} TbLayoutSheet;

/* Always black on white. Size in px. */
void tb_layout_sheet_draw (cairo_t *cr, double width, double height, const TbLayoutSheet *sheet);
