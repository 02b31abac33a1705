/* The one question core asks about the lane: how much friction is there, here, for this spot of the ball?
 *
 * Two answers exist: the oil film (tb-oil.h, tb-cover.h), and a map of zones with sharp edges, for teaching and
 * for closed-form checks. A friction object is read-only while shots run and may be shared by threads.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <stdbool.h>
#include "tb-cover.h"
#include "tb-oil.h"

/* What lies under the ball. */
typedef struct TbContact
{
  double x, y;         /* m, bowler's frame */
  double film_on_ball; /* m, oil already on that spot of the ball */
  double load;         /* load over the ball's weight at rest; 1 but for a landing */
} TbContact;

typedef struct TbFriction TbFriction;

/* The two ways of answering. */
typedef enum TbFrictionKind
{
  TB_FRICTION_FILM,
  TB_FRICTION_ZONES
} TbFrictionKind;

/* Sharp zones: bands down the lane, with a coefficient that may rise evenly inside a band. */
#define TB_MAX_ZONES 16
typedef struct TbZones
{
  int count;                     /* 1 to TB_MAX_ZONES */
  double end[TB_MAX_ZONES];      /* m from the foul line where the zone ends; rising; the last is taken as endless */
  double at_start[TB_MAX_ZONES]; /* coefficient at its beginning */
  double at_end[TB_MAX_ZONES];   /* coefficient at its end */
  double split[TB_MAX_ZONES];    /* m, bowler's frame: at or beyond this x (towards the bowler's own side) … */
  double beyond[TB_MAX_ZONES];   /* … the coefficient is this instead; ignored where split is INFINITY */
} TbZones;

struct TbFriction
{
  TbFrictionKind kind;
  /* TB_FRICTION_FILM */
  const TbOil *oil; /* borrowed */
  bool mirrored;    /* the bowler is left-handed: read the film left for right */
  double oil_scale; /* film × this */
  TbCover cover;
  TbCoverLaw law;
  /* TB_FRICTION_ZONES */
  const TbZones *zones; /* borrowed */
};

/* Coefficient of friction at a contact; film_on_lane (m) is stored where it is not NULL. */
double tb_friction_at (const TbFriction *self, const TbContact *contact, double *film_on_lane);
/* Film on the lane alone, m, at a place in the bowler's frame; 0 for zones. */
double tb_friction_film (const TbFriction *self, double x, double y);
/* Spots of the ball: the films on them (m), and their weights, which sum to 1. */
typedef struct TbBallSpots
{
  int count; /* 0 is a dry ball */
  const double *films, *weights;
} TbBallSpots;
/* The weighted mean of the coefficient over a few spots of the ball: the law is curved, so that the mean of the films would
 * not do. contact->film_on_ball is not looked at. */
double tb_friction_mean (const TbFriction *self, const TbContact *contact, const TbBallSpots *spots, double *film_on_lane);
/* The zone the contact is in, counting down the lane and doubled across (2 zone + beyond); always 0 for a film. A
 * change of this number is an event. */
int tb_friction_zone (const TbFriction *self, double x, double y);
/* The coefficient of a zone where the contact has run over its edge while a step is being tried, m down the lane. */
double tb_friction_in_zone (const TbFriction *self, int zone, double y);
TbStatus tb_zones_check (const TbZones *zones);
