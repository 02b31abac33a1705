/* The lane, drawn: plan (foul line below, pins above), plan lying on its side, or as seen from the approach.
 *
 * Pure functions of their arguments; they draw on screen, PNG, SVG and PDF alike. Everything that stands still is
 * drawn by tb_lane_view_draw(); the moving ball by tb_lane_view_draw_ball(), on top, in a small rectangle.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>
#include "tb-core.h"
#include "tb-theme.h"

typedef enum TbLaneProjection
{
  TB_LANE_PLAN,          /* across-lane scale stretched, and the picture says so */
  TB_LANE_PLAN_SIDEWAYS, /* foul line left, pins right */
  TB_LANE_FROM_APPROACH  /* perspective, from behind the foul line */
} TbLaneProjection;

typedef struct TbLaneScene
{
  TbTheme theme;
  TbLaneProjection projection;
  const TbOil *oil;       /* film to tint the lane with; NULL for none */
  double oil_scale;       /* film × this */
  const TbPath *before;   /* with samples; NULL where there is no run */
  const TbPath *after;
  const char *before_label, *after_label; /* at the paths' ends; translated; NULL for "before", "after" */
  const char *other_label; /* of a run in another picture, whose lane is to be as long as this one's; NULL for none */
  double pocket_low, pocket_high;         /* m, bowler's frame, at the pins: as in TbAssumed */
  bool mirrored;          /* the bowler (of `after`) is left-handed: boards are counted from the left */
  bool show_phases;       /* skid, hook and roll along the side */
  bool show_legend;       /* film legend in units */
  bool show_note;         /* what is not to scale; who leaves it out says so beside the picture */
  double cursor_y;        /* m down the lane of a reading line; NAN for none */
} TbLaneScene;

TbLaneScene tb_lane_scene_default (void);
/* Size in px of the whole picture. One with hardly any room (under 72 px on a side) is only its background, as in the
 * other views. */
void tb_lane_view_draw (cairo_t *cr, double width, double height, const TbLaneScene *scene);
/* The same in two layers, for who keeps the first: all but the runs, with its background; then the runs on top of it.
 * Both need the whole scene: what room labels take depends on it. */
void tb_lane_view_draw_ground (cairo_t *cr, double width, double height, const TbLaneScene *scene);
void tb_lane_view_draw_runs (cairo_t *cr, double width, double height, const TbLaneScene *scene);
/* Everything the ground is drawn from, in bytes: the same bytes, the same ground. The caller's. */
GBytes *tb_lane_view_ground_key (double width, double height, const TbLaneScene *scene);
/* Only the lines and marks of the runs. */
void tb_lane_view_draw_lines (cairo_t *cr, double width, double height, const TbLaneScene *scene);
/* Only what the runs are called, beyond the pins: for a picture that does not tell yet where they end. */
void tb_lane_view_draw_names (cairo_t *cr, double width, double height, const TbLaneScene *scene);
/* The ball of one run at a time (s since its release). */
void tb_lane_view_draw_ball (cairo_t *cr, double width, double height, const TbLaneScene *scene, const TbPath *path, double time);
/* The rectangle it needs, px. */
void tb_lane_view_ball_extents (double width, double height, const TbLaneScene *scene, const TbPath *path, double time,
                                cairo_rectangle_t *extents);
/* From the lane frame (m; x to the right whoever bowls) to the picture (px), and back. The way back answers false
 * outside the lane. */
void tb_lane_view_to_picture (double width, double height, const TbLaneScene *scene, double x, double y, double *px, double *py);
bool tb_lane_view_to_lane (double width, double height, const TbLaneScene *scene, double px, double py, double *x, double *y);
