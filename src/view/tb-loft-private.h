/* Between the parts of the loft view: the plot, and a run as it is told in it.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "tb-canvas.h"
#include "tb-draw.h"
#include "tb-loft-view.h"

/* How far down the lane the picture goes at the least, ft. */
#define LOFT_LEAST_SHOWN_TO_FT 15.0
/* From one line of words or measures to the next, em. */
#define LOFT_ROW 1.45
#define LOFT_RUNS 2

typedef struct TbLoft
{
  TbCanvas *canvas;
  const TbLoftScene *scene;
  cairo_rectangle_t plot; /* above the lane */
  double along;           /* px a metre */
  double stretch;
  double spare; /* px that are left free above and below all of it */
} TbLoft;

/* A run as it is told here. */
typedef struct TbLoftRun
{
  const TbPath *path;
  TbRunStyle style;
  const char *name;
  double height;  /* m, of the lowest point at release */
  double landing; /* m down the lane; NAN if it never lands in what is shown */
} TbLoftRun;

/* How far down the lane the picture goes, m. */
double loft_shown_to (const TbLoft *self);
gboolean loft_is_shown (const TbLoft *self, const TbSample *sample);
/* Fits what is `top` high, m, into the plot, whose rectangle is there: with the largest stretch of heights
 * that leaves room, and lengths drawn shorter if not even true heights do. What height is left over goes
 * above and below. */
void loft_fit (TbLoft *self, double top);
/* The stretch whose number takes most room in the note. */
double loft_longest_stretch (void);

/* A place over the lane: y down the lane and z up, m; in px. */
TbPoint loft_point (const TbLoft *self, double y, double z);
/* Drawn as high as heights are, and as wide as high, so that it stays round. */
double loft_ball_radius (const TbLoft *self, const TbPath *path);
/* A length that a hand could span: "2.0 in" or "5.1 cm". digits are those of inches. The caller's. */
char *loft_length_text (const TbLoft *self, double metres, int digits);

/* How high the last of the runs is released. */
void loft_draw_height (const TbLoft *self, const TbLoftRun *runs, int count);
/* Reaches in rows above the balls, heights in columns to the left of both, and angles. */
void loft_measure_runs (const TbLoft *self, const TbLoftRun *runs, int count);
