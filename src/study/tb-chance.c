/* The mixing function is that of SplitMix64 (G. L. Steele, D. Lea, C. H. Flood, "Fast splittable pseudorandom
 * number generators", OOPSLA 2014), applied once for each of the three numbers.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "tb-chance.h"

#include <math.h>
#include "tb-core.h"

/* 2^64 over the golden ratio, odd: the generator's step. */
#define GOLDEN G_GUINT64_CONSTANT (0x9e3779b97f4a7c15)
/* Bits of a double's fraction, and what one of them is worth. */
#define FRACTION_BITS 53
#define FRACTION_UNIT (1.0 / (double)(G_GUINT64_CONSTANT (1) << FRACTION_BITS))

static guint64
mix (guint64 z)
{
  z = (z ^ (z >> 30)) * G_GUINT64_CONSTANT (0xbf58476d1ce4e5b9);
  z = (z ^ (z >> 27)) * G_GUINT64_CONSTANT (0x94d049bb133111eb);
  return z ^ (z >> 31);
}

guint64
tb_chance_bits (TbChance chance, guint64 draw)
{
  guint64 z = mix (chance.seed + GOLDEN);

  z = mix ((z ^ chance.shot) + GOLDEN);
  return mix ((z ^ draw) + GOLDEN);
}

double
tb_chance_uniform (TbChance chance, guint64 draw)
{
  return ((double)(tb_chance_bits (chance, draw) >> (64 - FRACTION_BITS)) + 0.5) * FRACTION_UNIT;
}

/* G. E. P. Box, M. E. Muller, "A note on the generation of random normal deviates", 1958. */
double
tb_chance_normal (TbChance chance, guint64 draw)
{
  double radius = sqrt (-2 * log (tb_chance_uniform (chance, 2 * draw)));

  return radius * cos (2 * TB_PI * tb_chance_uniform (chance, 2 * draw + 1));
}
