/* Guesses in the order in which they were made: how far off each marker was, whether each guess was right,
 * and the runs of right ones.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "tb-guess.h"
#include "tb-theme.h"

G_BEGIN_DECLS

typedef struct TbProgressScene
{
  TbTheme theme;
  const double *off; /* boards; NAN for a choice */
  const TbVerdictOfGuess *verdict;
  guint count; /* of both; the last TB_PROGRESS_SHOWN are drawn */
} TbProgressScene;

#define TB_PROGRESS_SHOWN 60

void tb_progress_view_draw (cairo_t *cr, double width, double height, const TbProgressScene *scene);

G_END_DECLS
