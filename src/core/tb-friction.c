/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "tb-friction.h"

#include <stddef.h>
#include "tb-oil-film.h"

static int
zone_along (const TbZones *zones, double y)
{
  int i = 0;
  while (i < zones->count - 1 && y >= zones->end[i])
    i++;
  return i;
}

int
tb_friction_zone (const TbFriction *self, double x, double y)
{
  if (self->kind != TB_FRICTION_ZONES)
    return 0;
  int along = zone_along (self->zones, y);
  return 2 * along + (x >= self->zones->split[along]);
}

double
tb_friction_in_zone (const TbFriction *self, int zone, double y)
{
  const TbZones *zones = self->zones;
  int i = zone / 2;
  if (zone % 2)
    return zones->beyond[i];
  double start = i > 0 ? zones->end[i - 1] : 0, length = zones->end[i] - start;
  if (zones->at_end[i] == zones->at_start[i] || !(length > 0) || !isfinite (length))
    return zones->at_start[i];
  return zones->at_start[i] + (zones->at_end[i] - zones->at_start[i]) * (y - start) / length;
}

double
tb_friction_film (const TbFriction *self, double x, double y)
{
  if (self->kind == TB_FRICTION_ZONES)
    return 0;
  return self->oil_scale * (self->mirrored ? tb_oil_film_mirrored (self->oil, x, y) : tb_oil_film (self->oil, x, y));
}

double
tb_friction_at (const TbFriction *self, const TbContact *contact, double *film_on_lane)
{
  static const double whole = 1;
  const TbBallSpots spot = { 1, &contact->film_on_ball, &whole };
  return tb_friction_mean (self, contact, &spot, film_on_lane);
}

double
tb_friction_mean (const TbFriction *self, const TbContact *contact, const TbBallSpots *spots, double *film_on_lane)
{
  if (self->kind == TB_FRICTION_ZONES)
    {
      if (film_on_lane)
        *film_on_lane = 0;
      return tb_friction_in_zone (self, tb_friction_zone (self, contact->x, contact->y), contact->y);
    }
  double film = tb_friction_film (self, contact->x, contact->y);
  if (film_on_lane)
    *film_on_lane = film;
  if (spots->count == 0)
    return tb_cover_friction (&self->cover, &self->law, film, contact->load);
  double sum = 0;
  for (int i = 0; i < spots->count; i++)
    sum += spots->weights[i] * tb_cover_friction (&self->cover, &self->law, film + spots->films[i], contact->load);
  /* A straight line through spots of very different films may run below the least there can be. */
  return fmax (sum, self->law.film_friction);
}

TbStatus
tb_zones_check (const TbZones *zones)
{
  if (zones->count < 1 || zones->count > TB_MAX_ZONES)
    return TB_ERROR_BAD_ZONES;
  for (int i = 0; i < zones->count; i++)
    {
      double beyond = isfinite (zones->split[i]) ? zones->beyond[i] : 0;
      if (!isfinite (zones->at_start[i]) || !isfinite (zones->at_end[i]) || !isfinite (beyond)
          || isnan (zones->split[i]) || isnan (zones->end[i]))
        return TB_ERROR_NOT_FINITE;
      if (zones->at_start[i] < 0 || zones->at_end[i] < 0 || beyond < 0)
        return TB_ERROR_BAD_ZONES;
      if (i > 0 && zones->end[i] <= zones->end[i - 1])
        return TB_ERROR_BAD_ZONES;
    }
  return TB_OK;
}
