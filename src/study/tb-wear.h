/* A lane that is played on: shot by shot, balls take oil from it and leave some further down.
 *
 * A lane after a number of games is a function of its pattern, its amount of oil and tilt, the assumed
 * constants, who bowls and the seed. It is worked out once, game by game, and kept for a while.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gio/gio.h>
#include "tb-mix.h"
#include "tb-pattern.h"

G_BEGIN_DECLS

/* What each bowler throws on the lane in a game: ten frames make some eleven first balls and six at spares.
 * Assumed; on a pair every bowler bowls half of his game on each lane, so that ten on the pair are five on
 * the lane. */
#define TB_GAME_LINE_SHOTS 11
#define TB_GAME_SPARE_SHOTS 6
#define TB_GAME_SHOTS (TB_GAME_LINE_SHOTS + TB_GAME_SPARE_SHOTS)
#define TB_MAX_GAMES 30.0

/* What a worn lane follows from. */
typedef struct TbWearKey
{
  TbPattern *pattern;
  TbLane lane; /* its amount of oil and tilt */
  TbAssumed assumed;
  TbMix *mix;
} TbWearKey;

TbWearKey tb_wear_key_copy (const TbWearKey *key);
void tb_wear_key_clear (TbWearKey *key);
gboolean tb_wear_key_equal (const TbWearKey *a, const TbWearKey *b);

/* A lane after some games. Immutable and counted. */
typedef struct TbWorn
{
  gatomicrefcount ref_count;
  TbOil oil;      /* of the scale of the pattern: not yet × the amount of oil */
  guint shots;    /* bowled on it */
  guint failed;   /* that core refused: thrown into the void */
  double carried; /* m³ that the balls took away, × the amount of oil */
} TbWorn;

/* The lane after a number of games, 0 to TB_MAX_GAMES; parts of a game are so many of its shots. NULL only if
 * cancelled. */
TbWorn *tb_worn_new (const TbWearKey *key, double games, GCancellable *cancellable);
/* The same in a thread. The key is copied. */
void tb_worn_new_async (const TbWearKey *key,
                        double games,
                        GCancellable *cancellable,
                        GAsyncReadyCallback callback,
                        gpointer user_data);
TbWorn *tb_worn_new_finish (GAsyncResult *result, GError **error);
/* Whether tb_worn_new() would have only part of a game to bowl. */
gboolean tb_worn_is_at_hand (const TbWearKey *key, double games);
TbWorn *tb_worn_ref (TbWorn *worn);
void tb_worn_unref (TbWorn *worn);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (TbWorn, tb_worn_unref)

/* Shots of a game of that mix. */
guint tb_mix_game_shots (const TbMix *mix);

G_END_DECLS
