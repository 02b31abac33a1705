/* The ball on the lane, written a second time: the equations of motion that general-purpose solvers are
 * given.
 *
 * Nothing here is taken from src/core but the inputs (a body, a film's cells, a cover's numbers). Where core
 * carries the angular momentum in the lane's frame, this carries the spin in the body's (Euler's equations);
 * where core carries the velocity of the centre of mass, this carries the sphere's.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <stdbool.h>
#include "tb-core.h"

typedef enum RefMode
{
  REF_FLIGHT,
  REF_SLIDE,
  REF_ROLL
} RefMode;

/* Where each part of the state stands in the solver's vector. */
enum
{
  REF_POSITION = 0, /* of the centre */
  REF_VELOCITY = 3, /* of the centre */
  REF_ATTITUDE = 6, /* w, x, y, z */
  REF_SPIN = 10,    /* body axes */
  REF_SIZE = 13
};

#define REF_PAD 2

typedef struct RefModel
{
  double mass, radius, gravity;
  double moment[3], offset[3];
  double drag;               /* force over speed², kg/m */
  double slope;              /* of the lane, rise per metre towards +x */
  double rolling_resistance; /* force over weight */
  double spot;               /* radius of the contact spot, m; 0 for no friction against pivoting on it */
  double restitution, landing_time;
  bool squeeze;
  double least_bounce; /* m/s: a ball that would rise slower stays down */
  double first_slip;   /* m/s, with which a slide starts from rolling: little more than a direction. With much
                        * less the   direction turns so fast at first that an explicit solver hardly gets away
                        * from there. */
  /* The film, with its reflected border; or the same coefficient everywhere, if film_scale is 0. */
  double film[TB_OIL_ROWS + 2 * REF_PAD][TB_OIL_COLUMNS + 2 * REF_PAD];
  double oil_scale;
  bool mirrored;
  double film_friction, dry_friction, film_scale, roughness;
  double uniform;
  const struct RefBallOil *ball; /* what the ball carries; NULL for a dry ball */
  /* How it moves now; while sliding, the direction of the slip when the mode or the last step began: past the
   * end of the slide the equations go on smoothly with the friction along it. */
  RefMode mode;
  double along[2];
  long evaluations;
} RefModel;

/* The model of a motion on a film or on one zone, and the state it starts in. */
void ref_model_init (RefModel *model, const TbMotion *motion, double state[REF_SIZE]);
void ref_model_derivative (RefModel *model, const double state[REF_SIZE], double derivative[REF_SIZE]);
/* Slip velocity, and its direction made the one that the friction is against. */
void ref_model_slip (const RefModel *model, const double state[REF_SIZE], double slip[2]);
void ref_model_note_slip (RefModel *model, const double state[REF_SIZE]);
/* What ends the mode: falls to 0 when the ball lands (flight), stops slipping (slide) or lets go (roll). */
double ref_model_event (RefModel *model, const double state[REF_SIZE]);
/* What happens then. */
void ref_model_switch (RefModel *model, double state[REF_SIZE]);
double ref_model_coefficient (const RefModel *model, const double state[REF_SIZE], double load);
/* Film on the lane, m. */
double ref_model_film (const RefModel *model, double x, double y);
