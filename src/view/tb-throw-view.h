/* The throw at one moment, in any of the views it is drawn in: what is saved as a picture, and each picture
 * of a clip.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "tb-page-view.h"
#include "tb-setup.h"

G_BEGIN_DECLS

typedef enum TbThrowView
{
  TB_THROW_LANE,     /* lane plan, upright or on its side, as the picture's shape suits */
  TB_THROW_PLAN,     /* foul line below */
  TB_THROW_SIDEWAYS, /* foul line left */
  TB_THROW_APPROACH,
  TB_THROW_BALL, /* from behind */
  TB_THROW_BALL_SIDE,
  TB_THROW_LOFT,
  TB_THROW_BOTH, /* lane and ball */
  TB_N_THROW_VIEWS
} TbThrowView;

typedef struct TbThrowScene
{
  TbTheme theme;
  TbThrowView view;
  const TbRun *before; /* NULL where it is the same as after, or there is none */
  const TbRun *after;  /* that was thrown */
  double time;         /* s since release, of the balls drawn; NAN for the end, without balls on the lane */
  gboolean caption;    /* time and measures of that moment, below */
  gboolean metric;     /* of the caption */
  double rate;         /* of time, told in the caption unless it is 1 */
} TbThrowScene;

/* The views' names for the command line, and a list of them ending with NULL; and for people, translated. */
extern const char *const tb_throw_view_names[TB_N_THROW_VIEWS + 1];
const char *tb_throw_view_label (TbThrowView view);

/* Both runs, before only where it differs. */
TbThrowScene tb_throw_scene_new (const TbRun *before, const TbRun *after);
/* Of the longer run, s. */
double tb_throw_scene_duration (const TbThrowScene *scene);
/* Size in px of the whole picture. */
void tb_throw_view_draw (cairo_t *cr, double width, double height, const TbThrowScene *scene);
/* The scale of letters that suits a picture of that size, in which the throw is seen as a whole. */
double tb_throw_view_text_scale (int width, int height);

G_END_DECLS
