/* A ball with the rings of a run, seen from where they lie furthest apart.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "tb-flare.h"
#include "tb-globe.h"

G_BEGIN_DECLS

/* Film on the ball, m, that is drawn with the strongest tint. */
#define TB_FLARE_FULL_TINT 0.6e-6

/* Turns the globe, whose place and size are the caller's, and draws it. The run has samples. */
void tb_flare_figure_draw (TbGlobe *globe, TbCanvas *canvas, const TbRun *run);
/* An inch under the globe, along the way the rings are apart; the ball's radius is m. */
void tb_flare_figure_draw_ruler (const TbGlobe *globe, TbCanvas *canvas, double radius_m);
/* "0.51 in" or "13 mm"; free it. */
char *tb_flare_length_text (double metres, gboolean metric);

G_END_DECLS
