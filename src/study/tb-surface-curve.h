/* What each surface does to a ball on a lane: every quantity against grit, on the same line and each on its
 * own pocket line, and what the numbers say of the middle and of both ends.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gio/gio.h>
#include "tb-setup.h"

G_BEGIN_DECLS

/* How balls and surfaces are compared. */
typedef enum TbBallLine
{
  TB_BALL_SAME_LINE,   /* launched alike */
  TB_BALL_POCKET_LINE, /* laid down alike, each aimed so that it reaches the pocket, with the most room */
  TB_N_BALL_LINES
} TbBallLine;
const char *tb_ball_line_label (TbBallLine line); /* for people, untranslated */

typedef struct TbSurfacePoint
{
  double grit;      /* TB_GRIT_POLISH is polish */
  double roughness; /* m */
  gboolean there;   /* FALSE: the shot cannot be, or no line leads to the pocket; nothing below counts */
  TbDelivery delivery;
  TbMeasures measures; /* without gutters */
  double room;         /* boards at the arrows, both ways; NAN on the same line */
} TbSurfacePoint;

/* What is drawn and told. */
typedef enum TbSurfaceQuantity
{
  TB_SURFACE_HOOK,       /* boards */
  TB_SURFACE_PINS,       /* board at the pins */
  TB_SURFACE_AIM,        /* board at the arrows */
  TB_SURFACE_BREAKPOINT, /* board */
  TB_SURFACE_TURNS,      /* ft, where the ball turns back */
  TB_SURFACE_ROLLS,      /* ft, where the roll begins */
  TB_SURFACE_ANGLE,      /* ° at the pins */
  TB_SURFACE_TURN,       /* ft, from where the hook starts to the roll, or to the pins */
  TB_SURFACE_ROOM,       /* boards */
  TB_N_SURFACE_QUANTITIES
} TbSurfaceQuantity;

typedef struct TbSurfaceQuantityInfo
{
  const char *label; /* for people, untranslated */
  const char *unit;  /* likewise, with the space before it; "" for none */
  int digits;
  gboolean distance; /* in feet, and so in metres where those are asked for */
  double noticeable; /* differences below this are not told, in the unit (assumed). The angle's is large,
                      * since the heading of a rolling ball with a core sways by some tenths of a degree with
                      * every turn. */
} TbSurfaceQuantityInfo;
const TbSurfaceQuantityInfo *tb_surface_quantity_info (TbSurfaceQuantity quantity);
/* In the quantity's unit; NAN where the point has none. */
double tb_surface_point_value (const TbSurfacePoint *point, TbSurfaceQuantity quantity);

typedef struct TbSurfaceCurve
{
  TbBallLine line;
  GArray *points;         /* of TbSurfacePoint, from the coarsest to polish */
  TbSurfacePoint present; /* the ball as it is */
} TbSurfaceCurve;

/* NULL if cancelled. */
TbSurfaceCurve *tb_surface_curve_new (const TbSetup *setup, TbBallLine line, GCancellable *cancellable);
void tb_surface_curve_free (TbSurfaceCurve *curve);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (TbSurfaceCurve, tb_surface_curve_free)

/* The way a quantity goes from the coarsest surface to polish. */
typedef enum TbSurfaceTrend
{
  TB_TREND_LEVEL, /* by nothing that is noticed */
  TB_TREND_RISES,
  TB_TREND_FALLS,
  TB_TREND_PEAK,   /* greatest between the ends, by something that is noticed on both sides */
  TB_TREND_VALLEY, /* least, likewise */
  TB_TREND_MIXED   /* none of these */
} TbSurfaceTrend;
/* *turning is the index of the greatest or least point for a peak or valley. May be NULL. */
TbSurfaceTrend
tb_surface_curve_trend (const TbSurfaceCurve *curve, TbSurfaceQuantity quantity, guint *turning);
/* Indices of the first and last points that are there, and of one to hold them against: the one with the most
 * room on pocket lines (which may be an end), 2000 grit on the same line. FALSE if fewer than three are
 * there. */
gboolean tb_surface_curve_landmarks (const TbSurfaceCurve *curve, guint *coarse, guint *middle, guint *fine);
/* Sentences, translated: the middle, both ends against it, and the course of the angle; nothing that the
 * points do not show. Distances in metres if `metric`. Array of char *. */
GPtrArray *tb_surface_curve_explain (const TbSurfaceCurve *curve, gboolean metric);

G_END_DECLS
