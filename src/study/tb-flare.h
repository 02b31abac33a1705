/* The rings that a run left on the ball: how far apart they lie, how far they spread, and the oil on each.
 *
 * A ring is one turn of the ball. The distance from one to the next is how far the spin axis moved on the
 * ball in that turn; the total is the greatest distance between the axis and its place at release.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "tb-setup.h"

G_BEGIN_DECLS

typedef struct TbFlareRing
{
  double start_y, end_y; /* m down the lane */
  int first, last;       /* of the path's samples */
  double spacing;        /* m on the ball, to the ring after it; NAN where the run ends within the turn */
  double film_on_lane;   /* m, mean under the ring */
  double film_met;       /* m, mean of what lay on the ball there already */
  double film_left;      /* m, mean of what lies there when the ring has run over it */
} TbFlareRing;

typedef struct TbFlare
{
  GArray *rings;         /* of TbFlareRing; the last may be part of a turn */
  double first_spacing;  /* m; NAN for a run of less than a turn */
  double widest_spacing; /* m; likewise */
  double total;          /* m on the ball */
  double film_on_lane;   /* m, mean over the rings that ran in oil; 0 if none did */
  double film_met;       /* m, likewise */
} TbFlare;

/* From a run with its samples; of a run that failed it has no rings. */
TbFlare *tb_flare_new (const TbRun *run);
void tb_flare_free (TbFlare *flare);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (TbFlare, tb_flare_free)

/* Film on the ball at a sample's contact once the contact has passed, m: what stays of what was there, and
 * what the lane gives. */
double tb_flare_film_left (const TbSample *sample, const TbAssumed *assumed, double radius);

/* How the rings lie against the width of the strip that carries oil. */
typedef enum TbFlareKind
{
  TB_FLARE_APART,   /* every turn shows the lane cover that the turn before did not touch */
  TB_FLARE_OVERLAP, /* neighbouring rings share part of their strips */
  TB_FLARE_ONE_LINE /* all turns run in one strip */
} TbFlareKind;
TbFlareKind tb_flare_kind (const TbFlare *flare, const TbAssumed *assumed);
/* What that means, with its numbers, in mm if `metric`; translated. */
char *tb_flare_statement (const TbFlare *flare, const TbAssumed *assumed, gboolean metric);

/* The same ball, delivery and lane with the pin elsewhere. */
typedef struct TbFlareCase
{
  double pin_to_pap; /* m */
  TbRun *run;
  TbFlare *flare;
} TbFlareCase;
void tb_flare_case_free (TbFlareCase *flare_case);
/* pin_to_pap is m, 0 to a quarter of the way round. Array of TbFlareCase, in the order given. */
GPtrArray *tb_flare_cases_new (const TbSetup *setup, const double *pin_to_pap, guint count);
/* The distances that are shown unless others are asked for, m. */
#define TB_FLARE_N_DISTANCES 6
extern const double tb_flare_distances[TB_FLARE_N_DISTANCES];

/* Distance between neighbouring rings of a free symmetric ball at a pin-to-PAP distance (m), in one turn:
 * π R ε sin 2θ, with θ the angle from pin to spin axis and ε = (I_across − I_pin)/I_across; m. */
double tb_flare_free_spacing (const TbBall *ball, double pin_to_pap);

G_END_DECLS
