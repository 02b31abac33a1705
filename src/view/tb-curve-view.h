/* Small curves side by side: one quantity each, over the same scale, with the present place marked.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>
#include "tb-theme.h"

G_BEGIN_DECLS

/* One line; where y is NAN it is broken. */
typedef struct TbCurveLine
{
  const double *x, *y; /* as many as `count` */
  guint count;
  double present; /* y at the scene's present place; NAN for none */
  double place;   /* the line's own present place; used if the scene says so */
} TbCurveLine;

typedef struct TbCurvePanel
{
  const char *title; /* translated */
  const char *unit;  /* translated, with the space before it */
  int digits;
  double least_span; /* the vertical scale spans at least this, so that what nobody notices looks flat */
  TbCurveLine dashed, solid; /* count 0: there is none */
} TbCurvePanel;

/* A place on the horizontal scale with its name. */
typedef struct TbCurveTick
{
  double x;
  const char *label; /* translated */
} TbCurveTick;

typedef struct TbCurveScene
{
  TbTheme theme;
  const TbCurvePanel *panels;
  guint n_panels;
  const TbCurveTick *ticks;
  guint n_ticks;
  double low, high;                       /* ends of the horizontal scale */
  double present;                         /* where we are; NAN for none */
  gboolean own_places;                    /* each line has its own present place */
  const char *x_title;                    /* translated */
  const char *dashed_label, *solid_label; /* translated; NULL: no key */
} TbCurveScene;

void tb_curve_view_draw (cairo_t *cr, double width, double height, const TbCurveScene *scene);

G_END_DECLS
