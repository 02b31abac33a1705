/* The layout of a ball: grip, PAP, pin, mass bias, the lines and angles between them, and the holes. Facing
 * the grip, or turned.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "tb-core.h"
#include "tb-globe.h"

G_BEGIN_DECLS

/* What can be dragged. */
typedef enum TbLayoutMark
{
  TB_LAYOUT_NONE,
  TB_LAYOUT_PIN,
  TB_LAYOUT_PAP,
  TB_LAYOUT_MASS_BIAS
} TbLayoutMark;

typedef struct TbLayoutScene
{
  TbTheme theme;
  const TbBall *ball;
  gboolean mirrored;       /* the bowler is left-handed */
  double eye_over, eye_up; /* m along the surface from the grip centre: the point straight before the eye */
  TbLayoutMark held;       /* drawn larger */
  gboolean plain;          /* without the line of numbers under the ball */
} TbLayoutScene;

/* Between grip and PAP of this ball, so that both are seen. */
TbLayoutScene tb_layout_scene_for (const TbBall *ball);
void tb_layout_view_draw (cairo_t *cr, double width, double height, const TbLayoutScene *scene);
/* The mark at a point of the picture, if it can be seen. */
TbLayoutMark tb_layout_view_mark_at (double width, double height, const TbLayoutScene *scene, TbPoint point);
/* The place on the ball under a point, a unit vector in the grip's frame as in tb-drilling.h. FALSE if the
 * ball cannot be drawn. */
gboolean
tb_layout_view_place (double width, double height, const TbLayoutScene *scene, TbPoint point, TbVec3 *place);
/* The layout in one line, translated: "50° × 4 in × 40°". Free it. */
char *tb_layout_text (const TbBall *ball);

G_END_DECLS
