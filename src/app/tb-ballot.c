/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "tb-ballot.h"

#include <string.h>

void
tb_ballot_init (TbBallot *self)
{
  *self = (TbBallot){ .given = g_array_new (FALSE, FALSE, sizeof (guint)) };
}

void
tb_ballot_clear (TbBallot *self)
{
  g_clear_pointer (&self->given, g_array_unref);
}

static void
forget_last (GArray *given, guint choice)
{
  for (guint i = given->len; i > 0; i--)
    if (g_array_index (given, guint, i - 1) == choice)
      {
        g_array_remove_index (given, i - 1);
        return;
      }
}

gboolean
tb_ballot_vote (TbBallot *self, guint choice, int more)
{
  g_return_val_if_fail (choice < TB_TALK_MAX_CHOICES, FALSE);
  if (more > 0)
    {
      self->votes[choice]++;
      g_array_append_val (self->given, choice);
      return TRUE;
    }
  if (self->votes[choice] == 0)
    return FALSE;
  self->votes[choice]--;
  forget_last (self->given, choice);
  return TRUE;
}

int
tb_ballot_last (const TbBallot *self)
{
  return self->given->len > 0 ? (int) g_array_index (self->given, guint, self->given->len - 1) : -1;
}

guint
tb_ballot_total (const TbBallot *self)
{
  return self->given->len;
}

void
tb_ballot_empty (TbBallot *self)
{
  memset (self->votes, 0, sizeof self->votes);
  g_array_set_size (self->given, 0);
}
