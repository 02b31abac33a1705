/* The rings that a run left on the ball: the ball, with every ring and its oil, and the distances between
 * them; and the same ball with the pin elsewhere, side by side.
 *
 * The ball is seen from where the rings lie furthest apart.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "tb-flare.h"
#include "tb-theme.h"

G_BEGIN_DECLS

typedef struct TbFlareScene
{
  TbTheme theme;
  const TbRun *run;     /* with its samples */
  const TbFlare *flare; /* of that run */
  gboolean metric;      /* distances in mm */
} TbFlareScene;
/* Ball on the left, a bar for each ring on the right; in a picture that is not wide, below it. */
void tb_flare_view_draw (cairo_t *cr, double width, double height, const TbFlareScene *scene);

typedef struct TbFlareCasesScene
{
  TbTheme theme;
  const GPtrArray *cases; /* of TbFlareCase */
  /* m, pin-to-PAP distance of the ball as it is; the case that has it is framed; NAN for none */
  double present;
  gboolean metric;
} TbFlareCasesScene;
void tb_flare_cases_draw (cairo_t *cr, double width, double height, const TbFlareCasesScene *scene);

G_END_DECLS
