/* A pattern, drawn: the lane with its film, the strips it is laid in with handles on the chosen one, and two
 * graphs, across the boards and along the lane. With an earlier film beside it: the lane as it was, and as it
 * is.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>
#include "tb-core.h"
#include "tb-strips.h"
#include "tb-theme.h"

G_BEGIN_DECLS

typedef struct TbPatternScene
{
  TbTheme theme;
  const TbOil *oil;
  const TbOil *earlier;              /* the film as it was; NULL for none */
  const char *label, *earlier_label; /* over the lanes if there are two; translated */
  double oil_scale;                  /* films × this */
  const TbStrip *strips;             /* outlined; NULL for none */
  guint n_strips;
  int selected;              /* −1 for none */
  double cursor_x, cursor_y; /* m, lane frame: what the graphs are of */
  gboolean mirrored;         /* boards are counted from the left */
} TbPatternScene;

TbPatternScene tb_pattern_scene_default (void);
void tb_pattern_view_draw (cairo_t *cr, double width, double height, const TbPatternScene *scene);

/* What lies at a place of the picture. */
typedef enum TbPatternPart
{
  TB_PATTERN_NOTHING,
  TB_PATTERN_LANE,  /* no strip's edge is near */
  TB_PATTERN_STRIP, /* an edge of a strip that is not the chosen one */
  TB_PATTERN_START, /* handles of the chosen one */
  TB_PATTERN_END,
  TB_PATTERN_TAPER,
  TB_PATTERN_RIGHT,
  TB_PATTERN_LEFT,
  TB_PATTERN_ACROSS, /* the graph across: x is set */
  TB_PATTERN_ALONG   /* the graph along: y is set */
} TbPatternPart;

typedef struct TbPatternHit
{
  TbPatternPart part;
  int strip;
  double x, y; /* m, lane frame */
} TbPatternHit;

TbPatternHit
tb_pattern_view_hit (double width, double height, const TbPatternScene *scene, const double at[2]);
/* Where on the lane a place of the picture is, even outside of it: for what is being dragged. */
void tb_pattern_view_to_lane (double width,
                              double height,
                              const TbPatternScene *scene,
                              const double at[2],
                              double lane[2]);

G_END_DECLS
