/* Why the study's throws differ, and what to try next: worked out beside the talk, once it begins.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "tb-clinic-private.h"
#include "tb-handout-facts.h"
#include "tb-weak.h"

/* Whether an answer is to the question that was asked last. */
static gboolean
is_wanted (TbClinic *self, GAsyncResult *result)
{
  return self != NULL && self->reasons != NULL && g_task_get_cancellable (G_TASK (result)) == self->reasons;
}

static void
on_why (GObject *source, GAsyncResult *result, gpointer data)
{
  g_autoptr (TbClinic) self = tb_weak_take (data);
  g_autoptr (TbWhy) why = tb_why_new_finish (result, NULL);

  if (!is_wanted (self, result))
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

  if (!is_wanted (self, result))
    return;
  self->n_reasons--;
  self->next = g_steal_pointer (&next);
  tb_clinic_changed (self);
}

void
tb_clinic_ask_reasons (TbClinic *self)
{
  TbSetup *before = self->study->side[TB_SIDE_BEFORE], *after = self->study->side[TB_SIDE_AFTER];
  TbSetup *start = self->wished_from != NULL ? self->wished_from : after;
  TbWish wish;

  if (self->reasons != NULL)
    return;
  self->reasons = g_cancellable_new ();
  self->n_reasons = 2;
  tb_why_new_async (before, after, NULL, self->reasons, on_why, tb_weak_new (self));
  wish = self->wished_from != NULL ? self->wish
                                   : tb_handout_wish (tb_session_get_run (self->session, TB_SIDE_AFTER));
  tb_next_find_async (&(TbNextQuestion){ .start = start, .wish = &wish }, self->reasons, on_next,
                      tb_weak_new (self));
}

static void
forget_reasons (TbClinic *self)
{
  g_cancellable_cancel (self->reasons);
  g_clear_object (&self->reasons);
  self->n_reasons = 0;
  g_clear_pointer (&self->why, tb_why_unref);
  g_clear_pointer (&self->next, tb_next_unref);
}

void
tb_clinic_set_wish (TbClinic *self, const TbWish *wish, TbSetup *from)
{
  if (self->wished_from == from && tb_wish_equal (&self->wish, wish))
    return;
  self->wish = *wish;
  tb_setup_ref (from);
  g_clear_pointer (&self->wished_from, tb_setup_unref);
  self->wished_from = from;
  if (self->reasons == NULL)
    return;
  forget_reasons (self);
  tb_clinic_ask_reasons (self);
  tb_clinic_changed (self);
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
