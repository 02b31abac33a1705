/* The moment that is looked at: time, its rate, and whether it runs.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "tb-session-private.h"

double
tb_session_get_time (TbSession *self)
{
  return self->time;
}

void
tb_session_set_time (TbSession *self, double time)
{
  double held = CLAMP (time, 0.0, tb_session_get_duration (self));

  if (held == self->time)
    return;
  self->time = held;
  tb_session_notify (self, TB_SESSION_PROP_TIME);
}

double
tb_session_get_duration (TbSession *self)
{
  double duration = 0;

  for (int side = 0; side < TB_N_SIDES; side++)
    {
      const TbPath *path = tb_session_get_path (self, side);

      if (path != NULL)
        duration = MAX (duration, tb_path_duration (path));
    }
  return duration;
}

gboolean
tb_session_get_playing (TbSession *self)
{
  return self->playing;
}

void
tb_session_set_playing (TbSession *self, gboolean playing)
{
  if (self->playing == playing)
    return;
  self->playing = playing;
  tb_session_notify (self, TB_SESSION_PROP_PLAYING);
}

double
tb_session_get_rate (TbSession *self)
{
  return self->rate;
}

void
tb_session_set_rate (TbSession *self, double rate)
{
  if (self->rate == rate)
    return;
  self->rate = CLAMP (rate, TB_SESSION_MIN_RATE, TB_SESSION_MAX_RATE);
  tb_session_notify (self, TB_SESSION_PROP_RATE);
}

void
tb_session_throw (TbSession *self)
{
  tb_session_set_time (self, 0);
  tb_session_set_playing (self, tb_session_get_duration (self) > 0);
}

void
tb_session_resume (TbSession *self)
{
  if (self->time >= tb_session_get_duration (self))
    tb_session_throw (self);
  else
    tb_session_set_playing (self, TRUE);
}

void
tb_session_advance (TbSession *self, double seconds)
{
  tb_session_set_time (self, self->time + seconds * self->rate);
  if (self->time >= tb_session_get_duration (self))
    tb_session_set_playing (self, FALSE);
}
