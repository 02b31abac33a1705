/* What a picture of the throw says in words: the moment, and where each ball is in it.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "tb-throw-view.h"

G_BEGIN_DECLS

/* Height, px, that it takes of a picture; 0 where there is no moment to tell of, or no room. */
double tb_throw_caption_height (double width, double height, const TbThrowScene *scene);
/* Draws it over a width and the height above. */
void tb_throw_caption_draw (cairo_t *cr, double width, double height, const TbThrowScene *scene);
/* The words: of the moment, and of a run in it. The caller's. */
char *tb_throw_caption_time (const TbThrowScene *scene);
char *tb_throw_caption_run (const TbThrowScene *scene, const TbRun *run);

G_END_DECLS
