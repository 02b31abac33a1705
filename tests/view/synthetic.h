/* Runs made up for the tests of pictures: smooth curves with every measure known, so that a picture does not change
 * when the physics does.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "tb-core.h"

#define SYNTHETIC_SAMPLES 320

typedef struct SyntheticShape
{
  double laydown_board;  /* at the foul line */
  double slope;          /* boards towards the gutter in a foot */
  double hook_ft;        /* where the ball begins to turn */
  double hook_boards;    /* from the launch line to the ball at the pins */
  double roll_ft;        /* where it begins to roll; NAN for never */
  double speed_mph;
  double release_in;     /* height at release */
  double reach_ft;       /* of the release past the foul line */
  bool mirrored;
} SyntheticShape;

/* A run that owns its samples; ends in the gutter if the curve does. */
typedef struct Synthetic
{
  TbPath path;
  TbSample samples[SYNTHETIC_SAMPLES];
} Synthetic;

/* What the shapes of the tests have in common with the usual throw: it finds the pocket. */
extern const SyntheticShape synthetic_pocket;
/* The same a little faster: it hooks less. */
extern const SyntheticShape synthetic_faster;
extern const SyntheticShape synthetic_gutter;
extern const SyntheticShape synthetic_lofted;

/* Free with g_free(). */
Synthetic *synthetic_new (const SyntheticShape *shape);
/* A house-like film, heavier on the left if lopsided. */
void synthetic_oil (TbOil *oil, bool lopsided);
