/* Where a knob's curve meets the wish, between the places that were thrown.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "tb-next-private.h"

#include <math.h>
#include "tb-solve.h"

/* A root is sought to this part of what counts as met. */
#define ROOT_SHARE 0.3
/* A curve that ends is followed to its end if its trend, times this, leads to the wish; halving the way so
 * often. */
#define TREND_SLACK 2
#define END_HALVINGS 6
/* The nearest place is sought to this share of the way between its neighbours. */
#define NEAREST_SHARE 0.01
/* A curve that sways is looked at in so many steps between its places where it is nearer to the wish than
 * this, in the wish's unit. */
#define CLOSER 5
#define SWAY 1.0
/* Between two places of the curve at most CLOSER − 1 are added, and one before each end of it; two more are its turning
 * point and the one that comes nearest. */
#define MOST_PLACES ((CLOSER + 2) * TB_NEXT_POINTS + 2)

static double
miss_at (double at, gpointer data)
{
  NextSolver *self = data;

  return next_value_at (at, data) - self->next->target;
}

/* What is known of the curve, in order: its places, and what was found between them. */
typedef struct Places
{
  TbNextPoint point[MOST_PLACES];
  guint count;
} Places;

static void
places_add (Places *places, const TbNextPoint *point)
{
  guint i = places->count++;

  for (; i > 0 && places->point[i - 1].at > point->at; i--)
    places->point[i] = places->point[i - 1];
  places->point[i] = *point;
}

/* Whether the curve, going on from one place as it came from the place behind it, may meet the wish before it
 * gets to `end`. */
static gboolean
may_meet (const NextSolver *self, const TbNextPoint *behind, const TbNextPoint *from, double end)
{
  double slope = (from->wished - behind->wished) / (from->at - behind->at);
  double gain = slope * (end - from->at), miss = self->next->target - from->wished;

  return gain * miss > 0 && fabs (miss) < TREND_SLACK * fabs (gain);
}

/* Beyond a place there is none at `end`, mostly since the ball is in the gutter there; the wish may be met in
 * between. Halves the way until a throw is past the wish, which is then the place to add. A place that only
 * comes nearer is not looked for: nobody is sent along the edge of the gutter for that. */
static void
look_before_end (NextSolver *self,
                 const TbNextPoint *behind,
                 const TbNextPoint *from,
                 double end,
                 Places *places)
{
  double low = from->at, high = end, target = self->next->target;
  const NextSolver before = *self;

  if (!may_meet (self, behind, from, end))
    return;
  next_warm_up (self, from);
  for (int i = 0; i < END_HALVINGS; i++)
    {
      double middle = 0.5 * (low + high), wished = next_value_at (middle, self);

      *(isnan (wished) ? &high : &low) = middle;
      if ((wished - target) * (from->wished - target) <= 0)
        {
          places_add (places, &(TbNextPoint){ .at = middle,
                                              .wished = wished,
                                              .aim_board = tb_board_from_x (self->shot.delivery.aim) });
          return;
        }
    }
  self->closest_at = before.closest_at;
  self->closest_by = before.closest_by;
  self->closest_aim = before.closest_aim;
}

static void
look_before_ends (NextSolver *self, const TbNextOption *option, Places *places)
{
  const TbNextPoint *point = option->point;

  for (guint i = 1; i + 1 < option->n_points; i++)
    {
      if (isnan (point[i].wished))
        continue;
      if (isnan (point[i + 1].wished))
        look_before_end (self, &point[i - 1], &point[i], point[i + 1].at, places);
      if (isnan (point[i - 1].wished))
        look_before_end (self, &point[i + 1], &point[i], point[i - 1].at, places);
    }
}

/* Where the curve comes nearest between the neighbours of the place that comes nearest; it may even cross the
 * wish there and come back. */
static gboolean
look_about_nearest (NextSolver *self, const TbNextOption *option, Places *places)
{
  const TbCurve curve = { next_value_at, self };
  const TbNextPoint *point = option->point;
  guint i = 1;
  double at, value;

  while (i + 1 < option->n_points && point[i].at != self->closest_at)
    i++;
  if (i + 1 >= option->n_points)
    return FALSE;
  TbTriple triple = { point[i - 1].at,     point[i].at,     point[i + 1].at,
                      point[i - 1].wished, point[i].wished, point[i + 1].wished };
  double tolerance = NEAREST_SHARE * (triple.high - triple.low);
  next_warm_up (self, &point[i]);
  if (!tb_solve_turning_point (&curve, &triple, tolerance, &at, &value))
    return FALSE;
  places_add (places, &(TbNextPoint){ .at = at, .wished = value, .aim_board = point[i].aim_board });
  return TRUE;
}

/* Where the curve crosses the wish between two of its places; NAN if it does not. */
static double
root_between (NextSolver *self, const TbNextPoint *a, const TbNextPoint *b)
{
  const TbCurve curve = { miss_at, self };
  double target = self->next->target, root;
  TbBracket bracket = { a->at, b->at, a->wished - target, b->wished - target };

  if (!(bracket.at_low * bracket.at_high <= 0))
    return NAN;
  next_warm_up (self, a);
  if (!tb_solve_root (&curve, &bracket, ROOT_SHARE * TB_WISH_TOLERANCE, &root))
    return NAN;
  return root;
}

static void
gather_places (NextSolver *self, const TbNextOption *option, Places *places)
{
  places->count = 0;
  for (guint i = 0; i < option->n_points; i++)
    places_add (places, &option->point[i]);
  if (option->turns)
    places_add (places, &(TbNextPoint){ .at = option->turns_at,
                                        .wished = option->turns_wished,
                                        .aim_board = option->turns_aim_board });
  look_before_ends (self, option, places);
}

static double
nearest_root (NextSolver *self, const Places *all)
{
  const TbNextPoint *places = all->point;
  double here = tb_knob_value (self->knob, &self->base), best = NAN;

  for (guint i = 1; i < all->count; i++)
    {
      /* Nothing in this stretch can beat what has been found. */
      double nearest = CLAMP (here, places[i - 1].at, places[i].at), root;

      if (isfinite (best) && fabs (nearest - here) >= fabs (best - here))
        continue;
      root = root_between (self, &places[i - 1], &places[i]);
      if (isfinite (root) && !(fabs (root - here) >= fabs (best - here)))
        best = root;
    }
  return best;
}

/* The heading of a rolling ball sways as its core comes round, and with it where it turns and where it rolls.
 */
static gboolean
sways (const TbWish *wish)
{
  return wish->kind == TB_WISH_ANGLE || wish->kind == TB_WISH_TURN || wish->kind == TB_WISH_ROLL;
}

/* Looks closer at the curve where it comes near the wish with a smaller change than `root` asks: within its
 * sway it may meet the wish there already. */
static void
look_closer (NextSolver *self, const TbNextOption *option, double root, Places *places)
{
  double here = tb_knob_value (self->knob, &self->base), target = self->next->target;

  for (guint i = 1; i < option->n_points; i++)
    {
      const TbNextPoint *a = &option->point[i - 1], *b = &option->point[i];

      if (!(fmin (fabs (a->wished - target), fabs (b->wished - target)) < SWAY))
        continue;
      next_warm_up (self, a);
      for (int k = 1; k < CLOSER; k++)
        {
          double at = a->at + (b->at - a->at) * k / CLOSER;

          if (fabs (at - here) < fabs (root - here))
            places_add (places, &(TbNextPoint){ .at = at,
                                                .wished = next_value_at (at, self),
                                                .aim_board = tb_board_from_x (self->shot.delivery.aim) });
        }
    }
}

double
next_meet (NextSolver *self, const TbNextOption *option)
{
  Places places;
  double at;

  gather_places (self, option, &places);
  at = nearest_root (self, &places);
  if (isnan (at) && look_about_nearest (self, option, &places))
    at = nearest_root (self, &places);
  if (isfinite (at) && sways (&self->next->wish))
    {
      look_closer (self, option, at, &places);
      at = nearest_root (self, &places);
    }
  return at;
}
