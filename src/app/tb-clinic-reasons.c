/* Why the study's throws differ, and what to try next: worked out beside the talk, once it begins.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "tb-clinic-private.h"
#include "tb-weak.h"

static void
on_why (GObject *source, GAsyncResult *result, gpointer data)
{
  g_autoptr (TbClinic) self = tb_weak_take (data);
  g_autoptr (TbWhy) why = tb_why_new_finish (result, NULL);

  if (self == NULL)
    return;
  self->n_reasons--;
  self->why = g_steal_pointer (&why);
  tb_clinic_changed (self);
}

static void
on_next (GObject *source, GAsyncResult *result, gpointer data)
{
  g_autoptr (TbClinic) self = tb_weak_take (data);
  g_autoptr (TbNext) next = tb_next_find_finish (result, NULL);

  if (self == NULL)
    return;
  self->n_reasons--;
  self->next = g_steal_pointer (&next);
  tb_clinic_changed (self);
}

/* To the pocket; for a ball that is there already, more room around the line. */
static TbWish
wish_for (const TbSetup *setup, const TbRun *run)
{
  const TbAssumed *assumed = &setup->shot.assumed;
  double x = run->status == TB_OK ? run->path.measures.x_at_pins : NAN;
  gboolean inside = x >= MIN (assumed->pocket_low, assumed->pocket_high)
                    && x <= MAX (assumed->pocket_low, assumed->pocket_high);

  return tb_wish_default (inside ? TB_WISH_FORGIVING : TB_WISH_POCKET);
}

void
tb_clinic_ask_reasons (TbClinic *self)
{
  TbSetup *before = self->study->side[TB_SIDE_BEFORE], *after = self->study->side[TB_SIDE_AFTER];
  TbWish wish;

  if (self->reasons != NULL)
    return;
  self->reasons = g_cancellable_new ();
  self->n_reasons = 2;
  tb_why_new_async (before, after, NULL, self->reasons, on_why, tb_weak_new (self));
  wish = wish_for (after, tb_session_get_run (self->session, TB_SIDE_AFTER));
  tb_next_find_async (after, &wish, NULL, 0, self->reasons, NULL, on_next, tb_weak_new (self));
}

TbWhy *
tb_clinic_get_why (TbClinic *self)
{
  return self->talk_is == 0 ? self->why : NULL;
}

TbNext *
tb_clinic_get_next (TbClinic *self)
{
  return self->talk_is == 0 ? self->next : NULL;
}

gboolean
tb_clinic_is_busy (TbClinic *self)
{
  return self->n_reasons > 0 || self->preparing != NULL;
}
