/* The votes of a room on one question.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>
#include "tb-talk.h"

G_BEGIN_DECLS

typedef struct TbBallot
{
  guint votes[TB_TALK_MAX_CHOICES];
  GArray *given; /* of guint: the choices in the order in which they were voted for */
} TbBallot;

void tb_ballot_init (TbBallot *self);
/* Frees what it holds. */
void tb_ballot_clear (TbBallot *self);

/* One more vote for a choice, or, with `more` below 0, one less. FALSE where there is none to be taken.
 * `choice` is below TB_TALK_MAX_CHOICES. */
gboolean tb_ballot_vote (TbBallot *self, guint choice, int more);
/* The choice that was voted for last, of those still counted; -1 for none. */
int tb_ballot_last (const TbBallot *self);
guint tb_ballot_total (const TbBallot *self);
void tb_ballot_empty (TbBallot *self);

G_END_DECLS
