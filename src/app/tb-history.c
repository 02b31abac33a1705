/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "tb-history.h"

/* Changes of the same thing that are no further apart are one step, µs. About the pause after which a person
 * would call it another change. */
#define MERGE_PAUSE (G_USEC_PER_SEC)
/* More steps back than anyone takes; the oldest goes. */
#define MAX_STEPS 1000

struct TbHistory
{
  GPtrArray *undo;
  GPtrArray *redo;
  char *key;   /* of the last change; NULL: the next one starts a step */
  gint64 last; /* µs, of the last change */
  gboolean gesture;
};

TbHistory *
tb_history_new (void)
{
  TbHistory *self = g_new0 (TbHistory, 1);

  self->undo = g_ptr_array_new_with_free_func ((GDestroyNotify)tb_study_unref);
  self->redo = g_ptr_array_new_with_free_func ((GDestroyNotify)tb_study_unref);
  return self;
}

void
tb_history_free (TbHistory *self)
{
  g_ptr_array_unref (self->undo);
  g_ptr_array_unref (self->redo);
  g_free (self->key);
  g_free (self);
}

void
tb_history_clear (TbHistory *self)
{
  g_ptr_array_set_size (self->undo, 0);
  g_ptr_array_set_size (self->redo, 0);
  g_clear_pointer (&self->key, g_free);
}

static gboolean
merges (const TbHistory *self, const char *key, gint64 now)
{
  return key != NULL && g_strcmp0 (self->key, key) == 0 && (self->gesture || now - self->last <= MERGE_PAUSE);
}

void
tb_history_record (TbHistory *self, TbStudy *old, const char *key, gint64 now)
{
  if (!merges (self, key, now))
    {
      if (self->undo->len == MAX_STEPS)
        g_ptr_array_remove_index (self->undo, 0);
      g_ptr_array_add (self->undo, tb_study_ref (old));
      g_free (self->key);
      self->key = g_strdup (key);
    }
  self->last = now;
  g_ptr_array_set_size (self->redo, 0);
}

void
tb_history_begin_gesture (TbHistory *self)
{
  g_clear_pointer (&self->key, g_free);
  self->gesture = TRUE;
}

void
tb_history_end_gesture (TbHistory *self)
{
  g_clear_pointer (&self->key, g_free);
  self->gesture = FALSE;
}

gboolean
tb_history_can_undo (const TbHistory *self)
{
  return self->undo->len > 0;
}

gboolean
tb_history_can_redo (const TbHistory *self)
{
  return self->redo->len > 0;
}

static TbStudy *
step (TbHistory *self, GPtrArray *from, GPtrArray *to, TbStudy *present)
{
  g_clear_pointer (&self->key, g_free);
  if (from->len == 0)
    return NULL;
  g_ptr_array_add (to, tb_study_ref (present));
  return g_ptr_array_steal_index (from, from->len - 1);
}

TbStudy *
tb_history_undo (TbHistory *self, TbStudy *present)
{
  return step (self, self->undo, self->redo, present);
}

TbStudy *
tb_history_redo (TbHistory *self, TbStudy *present)
{
  return step (self, self->redo, self->undo, present);
}
