/* What each action does, on whichever slide.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "tb-clinic-private.h"

static gboolean
throwing (TbClinic *self)
{
  return tb_clinic_get_slide (self) == TB_CLINIC_THROW;
}

static gboolean
show_start (TbClinic *self)
{
  if (!self->started)
    return FALSE;
  tb_session_set_playing (self->session, FALSE);
  self->started = FALSE;
  self->chosen = self->talk_is;
  tb_clinic_changed (self);
  return TRUE;
}

static gboolean
overlay (TbClinic *self)
{
  if (!throwing (self))
    return FALSE;
  self->overlaid = !self->overlaid;
  tb_clinic_changed (self);
  return TRUE;
}

/* Up and down: another talk, or another rate of time. */
static gboolean
move (TbClinic *self, int down)
{
  if (!self->started)
    {
      tb_clinic_choose (self, self->chosen + (guint) down);
      return TRUE;
    }
  if (!throwing (self) || !tb_clinic_throw_slower (&self->shown, down))
    return FALSE;
  tb_clinic_changed (self);
  return TRUE;
}

static gboolean
go_first (TbClinic *self)
{
  if (self->started)
    return tb_clinic_show_place (self, 0);
  tb_clinic_choose (self, 0);
  return TRUE;
}

static gboolean
go_last (TbClinic *self)
{
  if (self->started)
    return tb_clinic_show_place (self, tb_clinic_get_n_slides (self) - 1);
  tb_clinic_choose (self, tb_clinic_get_n_talks (self) - 1);
  return TRUE;
}

static gboolean
go_back (TbClinic *self)
{
  if (!self->started)
    return FALSE;
  return self->place > 0 ? tb_clinic_show_place (self, self->place - 1) : show_start (self);
}

static gboolean
go_onward (TbClinic *self)
{
  if (!self->started)
    return tb_clinic_start (self);
  return (throwing (self) && tb_clinic_throw_onward (&self->shown))
         || tb_clinic_show_place (self, self->place + 1);
}

static gboolean
blank (TbClinic *self)
{
  self->blank = !self->blank;
  tb_session_set_playing (self->session, FALSE);
  tb_clinic_changed (self);
  return TRUE;
}

static gboolean
take_back (TbClinic *self)
{
  TbBallot *votes = tb_clinic_ballot (self);
  int last = votes != NULL ? tb_ballot_last (votes) : -1;

  return last >= 0 && tb_clinic_vote (self, (guint) last, -1);
}

static gboolean
do_vote (TbClinic *self, TbClinicAction action)
{
  if (tb_clinic_get_slide (self) != TB_CLINIC_VOTE)
    return FALSE;
  if (action == TB_CLINIC_TAKE_BACK)
    return take_back (self);
  if (action >= TB_CLINIC_UNVOTE_FIRST)
    return tb_clinic_vote (self, action - TB_CLINIC_UNVOTE_FIRST, -1);
  return tb_clinic_vote (self, action - TB_CLINIC_VOTE_FIRST, 1);
}

static gboolean
is_of_window (TbClinicAction action)
{
  return action == TB_CLINIC_NOTHING || (action >= TB_CLINIC_SHOW_BAR && action <= TB_CLINIC_LEAVE);
}

gboolean
tb_clinic_do (TbClinic *self, TbClinicAction action)
{
  if (is_of_window (action))
    return FALSE;
  if (self->blank)
    return blank (self);
  switch (action)
    {
    case TB_CLINIC_ONWARD:
      return go_onward (self);
    case TB_CLINIC_BACK:
      return go_back (self);
    case TB_CLINIC_FIRST:
      return go_first (self);
    case TB_CLINIC_LAST:
      return go_last (self);
    case TB_CLINIC_RESTART:
      return self->started ? tb_clinic_show_place (self, 0) : tb_clinic_start (self);
    case TB_CLINIC_BLANK:
      return blank (self);
    case TB_CLINIC_UP:
      return move (self, -1);
    case TB_CLINIC_DOWN:
      return move (self, 1);
    case TB_CLINIC_FREEZE:
      return throwing (self) && tb_clinic_throw_freeze (&self->shown);
    case TB_CLINIC_FRAME_ON:
      return throwing (self) && tb_clinic_throw_step (&self->shown, 1);
    case TB_CLINIC_FRAME_BACK:
      return throwing (self) && tb_clinic_throw_step (&self->shown, -1);
    case TB_CLINIC_REPLAY:
      return throwing (self) && tb_clinic_throw_again (&self->shown);
    case TB_CLINIC_OVERLAY:
      return overlay (self);
    default:
      return do_vote (self, action);
    }
}
