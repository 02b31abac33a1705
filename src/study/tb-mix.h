/* Who bowls on a lane: how many of which bowlers, with which balls, on which lines.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "tb-scatter.h"

G_BEGIN_DECLS

/* One kind of bowler. */
typedef struct TbMixBowler
{
  char *id;    /* of a typical bowler of ours; NULL for one described by the numbers below */
  char *name;  /* for people */
  guint count; /* how many of them bowl on this lane */
  TbDelivery delivery;
  TbBall ball;
  TbSkill skill; /* how they scatter */
} TbMixBowler;

/* More kinds, or more of a kind, than this is no league. */
#define TB_MIX_MAX_KINDS 16
#define TB_MIX_MAX_COUNT 12

/* Immutable once it is shared, and counted. */
typedef struct TbMix
{
  gatomicrefcount ref_count;
  guint64 seed;   /* of their scatter */
  gboolean moves; /* whether they move their line from game to game as the lane changes */
  guint n_bowlers;
  TbMixBowler *bowlers;
} TbMix;

/* The typical bowlers: an id for files, and a label for people, untranslated. Ends with a NULL id. */
typedef struct TbTypicalBowler
{
  const char *id;
  const char *label;
  const char *help;
} TbTypicalBowler;
extern const TbTypicalBowler tb_typical_bowlers[];
/* Fills in a bowler of that kind; FALSE for an unknown id. All of their numbers are typical, none is
 * measured. */
gboolean tb_mix_bowler_typical (TbMixBowler *bowler, const char *id, guint count);

TbMix *tb_mix_new (guint64 seed, gboolean moves);
/* Half of a pair's ten: what bowls on a lane unless something else is said. */
TbMix *tb_mix_new_league (void);
#define TB_MIX_LEAGUE_SEED 1
/* Takes a copy. FALSE if there are TB_MIX_MAX_KINDS already. Only before the mix is shared. */
gboolean tb_mix_add (TbMix *mix, const TbMixBowler *bowler);
/* Another mix with one number changed; 0 takes the kind away, and an id that is not there yet is added. */
TbMix *tb_mix_with_count (const TbMix *mix, const char *id, guint count);
/* Another mix with this delivery and ball in it: count of them, under this name. */
TbMix *tb_mix_with_bowler (const TbMix *mix,
                           const char *name,
                           const TbDelivery *delivery,
                           const TbBall *ball,
                           guint count);
TbMix *tb_mix_with_seed (const TbMix *mix, guint64 seed);
TbMix *tb_mix_with_moves (const TbMix *mix, gboolean moves);
/* All of the bowlers. */
guint tb_mix_count (const TbMix *mix);
/* Of one typical kind. */
guint tb_mix_count_of (const TbMix *mix, const char *id);
gboolean tb_mix_equal (const TbMix *a, const TbMix *b);
TbMix *tb_mix_ref (TbMix *mix);
void tb_mix_unref (TbMix *mix);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (TbMix, tb_mix_unref)

G_END_DECLS
