/* A bowler as a document: how they deliver the ball, where their positive axis point is, which ball they
 * usually take.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "tb-document.h"
#include "tb-lines.h"

G_BEGIN_DECLS

/* Immutable and counted. */
typedef struct TbBowler
{
  gatomicrefcount ref_count;
  char *id;
  char *name;    /* for people */
  char *note;    /* for people; NULL if there is none */
  char *ball_id; /* of the usual ball; NULL if there is none */
  TbDelivery delivery;
  double
      pap_over;  /* m along the ball's surface, as in TbBall: they go onto the ball that this bowler throws */
  double pap_up; /* m */
  double drift;  /* boards that the feet drift towards higher boards on the approach, as in TbStance */
  double foot_offset; /* boards by which the ball passes outside of the slide foot, likewise */
} TbBowler;

/* Ranges of the two, boards. */
#define TB_BOWLER_MAX_DRIFT 15.0
#define TB_BOWLER_MAX_FOOT_OFFSET 15.0

/* Takes copies of all that `bowler` points to. */
TbBowler *tb_bowler_new (const TbBowler *bowler);
TbBowler *tb_bowler_ref (TbBowler *bowler);
void tb_bowler_unref (TbBowler *bowler);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (TbBowler, tb_bowler_unref)

char *tb_bowler_to_text (const TbBowler *bowler);
TbBowler *tb_bowler_from_text (const char *text, gsize length, GError **error);
/* The ball, drilled for this bowler. */
TbBall tb_bowler_fit_ball (const TbBowler *bowler, const TbBall *ball);

G_END_DECLS
