/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "tb-clinic-throw.h"

#include <math.h>

/* A frame of ordinary video, s. */
#define FRAME (1.0 / 30.0)
/* Rates of time, the fastest first. */
static const double rates[] = { 1.0, 0.5, 0.25, 0.125 };
/* Moments nearer to each other than this count as one, s. */
#define SAME_MOMENT 0.01

static int
compare_times (gconstpointer a, gconstpointer b)
{
  double x = *(const double *) a, y = *(const double *) b;

  return (x > y) - (x < y);
}

static void
add_moment (GArray *moments, const TbPath *path, double y)
{
  TbSample sample;

  if (!isnan (y) && tb_path_at_distance (path, y, &sample))
    g_array_append_val (moments, sample.time);
}

/* Times of both throws at which something is to be seen, the earliest first. */
static GArray *
moments_of (TbClinicThrow *self)
{
  GArray *moments = g_array_new (FALSE, FALSE, sizeof (double));

  for (int side = 0; side < TB_N_SIDES; side++)
    {
      const TbPath *path = tb_session_get_path (self->session, side);
      double end;

      if (path == NULL)
        continue;
      end = tb_path_duration (path);
      add_moment (moments, path, TB_ARROWS_Y);
      add_moment (moments, path, path->measures.breakpoint_y);
      add_moment (moments, path, path->measures.roll_start_y);
      g_array_append_val (moments, end);
    }
  g_array_sort (moments, compare_times);
  return moments;
}

/* To the next of them; FALSE after the last. */
static gboolean
next_moment (TbClinicThrow *self)
{
  g_autoptr (GArray) moments = moments_of (self);
  double now = tb_session_get_time (self->session);

  for (guint i = 0; i < moments->len; i++)
    if (g_array_index (moments, double, i) > now + SAME_MOMENT)
      {
        tb_session_set_time (self->session, g_array_index (moments, double, i));
        return TRUE;
      }
  return FALSE;
}

gboolean
tb_clinic_throw_onward (TbClinicThrow *self)
{
  double end = tb_session_get_duration (self->session);

  if (end <= 0)
    return FALSE;
  if (self->still)
    return next_moment (self);
  if (tb_session_get_playing (self->session))
    {
      tb_session_set_playing (self->session, FALSE);
      tb_session_set_time (self->session, end);
      return TRUE;
    }
  if (self->thrown)
    return FALSE;
  self->thrown = TRUE;
  tb_session_throw (self->session);
  return TRUE;
}

gboolean
tb_clinic_throw_again (TbClinicThrow *self)
{
  if (tb_session_get_duration (self->session) <= 0)
    return FALSE;
  self->thrown = TRUE;
  if (self->still)
    tb_session_set_time (self->session, 0);
  else
    tb_session_throw (self->session);
  return TRUE;
}

gboolean
tb_clinic_throw_freeze (TbClinicThrow *self)
{
  if (self->still)
    return FALSE;
  if (tb_session_get_playing (self->session))
    tb_session_set_playing (self->session, FALSE);
  else if (tb_session_get_time (self->session) >= tb_session_get_duration (self->session))
    return FALSE;
  else
    tb_session_resume (self->session);
  self->thrown = TRUE;
  return TRUE;
}

gboolean
tb_clinic_throw_step (TbClinicThrow *self, int frames)
{
  self->thrown = TRUE;
  tb_session_set_playing (self->session, FALSE);
  tb_session_set_time (self->session, tb_session_get_time (self->session) + frames * FRAME);
  return TRUE;
}

static guint
rate_place (TbClinicThrow *self)
{
  double rate = tb_session_get_rate (self->session);
  guint nearest = 0;

  for (guint i = 0; i < G_N_ELEMENTS (rates); i++)
    if (fabs (rates[i] - rate) < fabs (rates[nearest] - rate))
      nearest = i;
  return nearest;
}

gboolean
tb_clinic_throw_slower (TbClinicThrow *self, int steps)
{
  guint place = rate_place (self) + (guint) steps;

  if (place >= G_N_ELEMENTS (rates))
    return FALSE;
  tb_session_set_rate (self->session, rates[place]);
  return TRUE;
}
