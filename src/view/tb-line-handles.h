/* Two handles on the lane for the launch line of "after": where it crosses the foul line, and where it passes
 * the arrows' distance. Pure functions, like the lane they lie on.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>
#include "tb-lane-view.h"

G_BEGIN_DECLS

typedef enum TbLineHandle
{
  TB_LINE_HANDLE_LAYDOWN,
  TB_LINE_HANDLE_AIM,
  TB_N_LINE_HANDLES,
  TB_LINE_HANDLE_NONE = TB_N_LINE_HANDLES
} TbLineHandle;

typedef struct TbLineHandles
{
  const TbLaneScene *scene;
  double width, height;          /* px of the whole picture */
  double x[TB_N_LINE_HANDLES];   /* m, lane frame */
  TbLineHandle raised;           /* pointed at, dragged or focused: larger, with the line; or none */
  bool focused;                  /* the raised one has the keyboard, and a ring says so */
} TbLineHandles;

/* How far down the lane a handle lies, m. */
double tb_line_handle_y (TbLineHandle which);
/* Where a handle lies, px. */
void tb_line_handles_place (const TbLineHandles *self, TbLineHandle which, double *px, double *py);
/* The handle within reach of a pointer, the nearer one of two; none if neither is. */
TbLineHandle tb_line_handles_at (const TbLineHandles *self, double px, double py);
/* The x (m, lane frame) of a pointer that drags a handle across the lane; past the lane's edges too. */
double tb_line_handles_x_at (const TbLineHandles *self, TbLineHandle which, double px, double py);
/* Side of the square around a handle that takes the pointer, px. */
double tb_line_handles_reach (const TbTheme *theme);

/* Draws them, and the launch line while one is raised. */
void tb_line_handles_draw (cairo_t *cr, const TbLineHandles *self);
/* The rectangle that takes, px. */
void tb_line_handles_extents (const TbLineHandles *self, cairo_rectangle_t *extents);

G_END_DECLS
