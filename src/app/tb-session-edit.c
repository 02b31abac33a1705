/* Changing the study, and the way back.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "tb-session-private.h"

#include "tb-pocket-line.h"

/* The study with the target of "after" moved to the pocket; the study itself where no target leads there.
 * Takes it. */
static TbStudy *
aimed_at_pocket (TbStudy *study)
{
  g_autoptr (TbStudy) given = study;
  g_autoptr (TbThrower) thrower = tb_thrower_new ();
  TbShot shot = given->side[TB_SIDE_AFTER]->shot;
  g_autoptr (TbSetup) setup = NULL;

  if (!tb_pocket_reaim (thrower, &shot, NULL))
    return g_steal_pointer (&given);
  setup = tb_setup_with_shot (given->side[TB_SIDE_AFTER], &shot);
  return tb_study_with_side (given, TB_SIDE_AFTER, setup);
}

void
tb_session_change (TbSession *self, TbStudy *study, const char *key)
{
  if (self->reaim && study->side[TB_SIDE_AFTER] != self->study->side[TB_SIDE_AFTER])
    study = aimed_at_pocket (study);
  if (tb_study_equal (self->study, study))
    {
      tb_study_unref (study);
      return;
    }
  tb_history_record (self->history, self->study, key, g_get_monotonic_time ());
  tb_session_show (self, study);
}

gboolean
tb_session_set_field (TbSession *self, const TbField *field, double value, TbProblem *problem)
{
  g_autoptr (TbSetup) setup = NULL;

  g_return_val_if_fail (TB_IS_SESSION (self), FALSE);

  setup = tb_setup_with_field (self->study->side[TB_SIDE_AFTER], field, value, problem);
  if (setup == NULL)
    return FALSE;
  tb_session_change (self, tb_study_with_side (self->study, TB_SIDE_AFTER, setup), field->name);
  return TRUE;
}

gboolean
tb_session_choose (TbSession *self, TbDocumentKind kind, const char *id, GError **error)
{
  g_autoptr (TbSetup) setup
      = tb_library_choose (self->library, self->study->side[TB_SIDE_AFTER], kind, id, error);

  if (setup == NULL)
    return FALSE;
  tb_session_set_after (self, setup);
  return TRUE;
}

void
tb_session_set_after (TbSession *self, TbSetup *setup)
{
  tb_session_change (self, tb_study_with_side (self->study, TB_SIDE_AFTER, setup), NULL);
}

void
tb_session_set_after_as (TbSession *self, TbSetup *setup, const char *key)
{
  tb_session_change (self, tb_study_with_side (self->study, TB_SIDE_AFTER, setup), key);
}

void
tb_session_set_texts (TbSession *self, const char *title, const char *notes)
{
  g_autofree char *line = tb_text_fitted (title, TB_NAME_MAX, TRUE),
                  *lines = tb_text_fitted (notes, TB_NOTES_MAX, FALSE);

  tb_session_change (self, tb_study_with_text (self->study, line, lines), "texts");
}

void
tb_session_set_study (TbSession *self, TbStudy *study)
{
  tb_session_change (self, tb_study_ref (study), NULL);
}

void
tb_session_begin_gesture (TbSession *self)
{
  tb_history_begin_gesture (self->history);
}

void
tb_session_end_gesture (TbSession *self)
{
  tb_history_end_gesture (self->history);
}

void
tb_session_keep_as_before (TbSession *self)
{
  tb_session_change (self, tb_study_with_side (self->study, TB_SIDE_BEFORE, self->study->side[TB_SIDE_AFTER]),
                     NULL);
}

void
tb_session_swap (TbSession *self)
{
  tb_session_change (self, tb_study_swapped (self->study), NULL);
}

void
tb_session_put_back (TbSession *self)
{
  tb_session_set_after (self, self->study->side[TB_SIDE_BEFORE]);
}

gboolean
tb_session_can_undo (TbSession *self)
{
  return tb_history_can_undo (self->history);
}

gboolean
tb_session_can_redo (TbSession *self)
{
  return tb_history_can_redo (self->history);
}

void
tb_session_undo (TbSession *self)
{
  TbStudy *study = tb_history_undo (self->history, self->study);

  if (study != NULL)
    tb_session_show (self, study);
}

void
tb_session_redo (TbSession *self)
{
  TbStudy *study = tb_history_redo (self->history, self->study);

  if (study != NULL)
    tb_session_show (self, study);
}

gboolean
tb_session_get_reaim (TbSession *self)
{
  return self->reaim;
}

void
tb_session_set_reaim (TbSession *self, gboolean reaim)
{
  if (self->reaim == reaim)
    return;
  self->reaim = reaim;
  if (reaim)
    tb_session_change (self, aimed_at_pocket (tb_study_ref (self->study)), NULL);
  tb_session_notify (self, TB_SESSION_PROP_REAIM);
}
