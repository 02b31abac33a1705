/* The ball's cover, and how it rubs on a lane with oil on it.
 *
 * Mixed lubrication: the load is shared between the film and the tips of the rough cover. With h the film
 * at the contact and σ the roughness, Λ = h/σ,
 *
 *   μ = μ_film + (μ_dry − μ_film) / (1 + Λ/Λ0)²
 *
 * the standard load-sharing fit for mixed films (A. V. Olver and H. A. Spikes, "Prediction of traction in
 * elastohydrodynamic lubrication", Proc. IMechE J 212, 1998, 321–332). The numbers are assumed.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <math.h>

typedef enum TbCoverKind
{
  TB_COVER_PLASTIC,
  TB_COVER_URETHANE,
  TB_COVER_REACTIVE_PEARL,
  TB_COVER_REACTIVE_HYBRID,
  TB_COVER_REACTIVE_SOLID,
  TB_N_COVER_KINDS
} TbCoverKind;

typedef struct TbCover
{
  TbCoverKind kind;
  double dry_friction; /* μ_dry, coefficient on a clean lane */
  double film_scale;   /* Λ0, film over roughness at which the dry part has fallen to a quarter */
  double absorption;   /* 1/s, rate at which oil on the surface soaks into the cover */
  double roughness;    /* σ, arithmetic mean roughness Ra, m */
} TbCover;

/* What the law needs besides the cover. */
typedef struct TbCoverLaw
{
  double film_friction; /* μ_film */
} TbCoverLaw;

/* The typical (not measured) cover of a kind: dry friction, film scale and absorption; roughness is left at
 * 2000 grit. */
TbCover tb_cover_typical (TbCoverKind kind);

/* Coefficient under a film (m) at a load relative to the ball's weight: under a landing's load the film is
 * squeezed to h/√load and the dry friction of a polymer falls as load^(−1/3) (contact area of a Hertz sphere
 * × a constant shear strength). */
static inline double
tb_cover_friction (const TbCover *cover, const TbCoverLaw *law, double film, double load)
{
  double dry = cover->dry_friction;
  if (load != 1)
    {
      film /= sqrt (load);
      dry /= cbrt (load);
    }
  /* 1 / (1 + Λ/Λ0), with one division. */
  double scale = cover->roughness * cover->film_scale, dryness = scale / (scale + film);
  return law->film_friction + (dry - law->film_friction) * (dryness * dryness);
}

/* Grit of a resurfacing pad. TB_GRIT_POLISH stands for a polished surface: a place on the scale, no grit. */
#define TB_GRIT_COARSEST 500.0
#define TB_GRIT_FINEST 4000.0
#define TB_GRIT_POLISH 5000.0
/* Typical roughness (m) of a grit between TB_GRIT_COARSEST and TB_GRIT_POLISH, smooth and falling; and the grit that
 * leaves such a roughness, held to the ends of the scale. */
double tb_roughness_from_grit (double grit);
double tb_grit_from_roughness (double roughness);
