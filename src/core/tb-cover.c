/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "tb-cover.h"

#include <math.h>
#include "tb-units.h"

/* All assumed: nobody has published the law or the numbers of a cover on an oiled lane. */
static const struct
{
  double dry_friction;
  double film_scale;
  double absorption; /* 1/s */
} typical[TB_N_COVER_KINDS] = {
  [TB_COVER_PLASTIC] = { 0.09, 1.9, 0.0 },
  [TB_COVER_URETHANE] = { 0.14, 3.0, 0.02 },
  [TB_COVER_REACTIVE_PEARL] = { 0.17, 2.5, 0.15 },
  [TB_COVER_REACTIVE_HYBRID] = { 0.17, 2.8, 0.2 },
  [TB_COVER_REACTIVE_SOLID] = { 0.17, 3.2, 0.3 },
};

#define TYPICAL_GRIT 2000.0

TbCover
tb_cover_typical (TbCoverKind kind)
{
  return (TbCover){
    .kind = kind,
    .dry_friction = typical[kind].dry_friction,
    .film_scale = typical[kind].film_scale,
    .absorption = typical[kind].absorption,
    .roughness = tb_roughness_from_grit (TYPICAL_GRIT),
  };
}

/* Typical roughness of machine-spun pads: not measured by us, and spread widely in print. */
static const struct
{
  double grit;
  double roughness_um;
} pads[] = { { TB_GRIT_COARSEST, 1.20 }, { 1000, 0.75 },           { 2000, 0.48 },
             { 3000, 0.33 },             { TB_GRIT_FINEST, 0.23 }, { TB_GRIT_POLISH, 0.13 } };
#define N_PADS ((int) (sizeof pads / sizeof pads[0]))

/* Between two pads the logarithm of the roughness runs straight against the logarithm of the grit: continuous,
 * falling, and turned round exactly by its inverse. */
double
tb_roughness_from_grit (double grit)
{
  grit = fmin (fmax (grit, TB_GRIT_COARSEST), TB_GRIT_POLISH);
  int i = 0;
  while (i < N_PADS - 2 && grit > pads[i + 1].grit)
    i++;
  double t = log (grit / pads[i].grit) / log (pads[i + 1].grit / pads[i].grit);
  double um = t >= 1   ? pads[i + 1].roughness_um
              : t <= 0 ? pads[i].roughness_um
                       : pads[i].roughness_um * pow (pads[i + 1].roughness_um / pads[i].roughness_um, t);
  return tb_metres_from_um (um);
}

double
tb_grit_from_roughness (double roughness)
{
  double um = tb_um_from_metres (roughness);
  um = fmax (fmin (um, pads[0].roughness_um), pads[N_PADS - 1].roughness_um);
  int i = 0;
  while (i < N_PADS - 2 && um < pads[i + 1].roughness_um)
    i++;
  double t = log (um / pads[i].roughness_um) / log (pads[i + 1].roughness_um / pads[i].roughness_um);
  return t >= 1 ? pads[i + 1].grit : t <= 0 ? pads[i].grit : pads[i].grit * pow (pads[i + 1].grit / pads[i].grit, t);
}
