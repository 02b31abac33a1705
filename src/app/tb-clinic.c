/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "tb-clinic-private.h"

#include <glib/gi18n-lib.h>

#include "tb-weak.h"

/* The slides of a step, in their order. The last is of a study only. */
static const TbClinicSlide order[] = { TB_CLINIC_QUESTION, TB_CLINIC_VOTE, TB_CLINIC_THROW,
                                       TB_CLINIC_NUMBERS,  TB_CLINIC_WHY,  TB_CLINIC_TRY };
#define LESSON_SLIDES 5

enum
{
  CHANGED,
  N_SIGNALS
};
static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (TbClinic, tb_clinic, G_TYPE_OBJECT)

void
tb_clinic_changed (TbClinic *self)
{
  g_signal_emit (self, signals[CHANGED], 0);
}

/* Votes. */

static void
clear_ballot (gpointer ballot)
{
  tb_ballot_clear (ballot);
}

static void
new_ballots (TbClinic *self, guint n)
{
  g_array_set_size (self->ballots, 0);
  for (guint i = 0; i < n; i++)
    {
      TbBallot ballot;

      tb_ballot_init (&ballot);
      g_array_append_val (self->ballots, ballot);
    }
}

static guint
slides_of_step (TbClinic *self)
{
  return self->talk_is == 0 ? G_N_ELEMENTS (order) : LESSON_SLIDES;
}

static guint
step_place (TbClinic *self)
{
  return self->place / slides_of_step (self);
}

TbBallot *
tb_clinic_ballot (TbClinic *self)
{
  return self->started ? &g_array_index (self->ballots, TbBallot, step_place (self)) : NULL;
}

guint
tb_clinic_get_votes (TbClinic *self, guint choice)
{
  return self->started && choice < TB_TALK_MAX_CHOICES ? tb_clinic_ballot (self)->votes[choice] : 0;
}

guint
tb_clinic_get_total (TbClinic *self)
{
  return self->started ? tb_ballot_total (tb_clinic_ballot (self)) : 0;
}

gboolean
tb_clinic_vote (TbClinic *self, guint choice, int more)
{
  TbBallot *votes = tb_clinic_ballot (self);

  if (votes == NULL || choice >= tb_clinic_get_step (self)->choices->len
      || !tb_ballot_vote (votes, choice, more))
    return FALSE;
  tb_clinic_changed (self);
  return TRUE;
}

void
tb_clinic_clear_votes (TbClinic *self)
{
  TbBallot *votes = tb_clinic_ballot (self);

  if (votes == NULL)
    return;
  tb_ballot_empty (votes);
  tb_clinic_changed (self);
}

/* Slides. */

guint
tb_clinic_get_n_slides (TbClinic *self)
{
  return self->started ? self->talk->steps->len * slides_of_step (self) : 0;
}

guint
tb_clinic_get_place (TbClinic *self)
{
  return self->started ? self->place : 0;
}

TbClinicSlide
tb_clinic_get_slide (TbClinic *self)
{
  return self->started ? order[self->place % slides_of_step (self)] : TB_CLINIC_START;
}

TbClinicSlide
tb_clinic_get_next_slide (TbClinic *self)
{
  if (!self->started)
    return TB_CLINIC_QUESTION;
  return self->place + 1 < tb_clinic_get_n_slides (self) ? order[(self->place + 1) % slides_of_step (self)]
                                                         : TB_CLINIC_START;
}

const TbTalkStep *
tb_clinic_get_step (TbClinic *self)
{
  return self->started ? tb_talk_step (self->talk, step_place (self)) : NULL;
}

const TbTalkStep *
tb_clinic_get_next_step (TbClinic *self)
{
  guint next = self->place + 1;

  if (!self->started || next >= tb_clinic_get_n_slides (self))
    return NULL;
  return tb_talk_step (self->talk, next / slides_of_step (self));
}

TbTalk *
tb_clinic_get_talk (TbClinic *self)
{
  return self->started ? self->talk : NULL;
}

gboolean
tb_clinic_show_place (TbClinic *self, guint place)
{
  const TbTalkStep *step;

  if (place >= self->talk->steps->len * slides_of_step (self))
    return FALSE;
  self->started = TRUE;
  self->place = place;
  self->shown.thrown = FALSE;
  step = tb_clinic_get_step (self);
  tb_session_set_playing (self->session, FALSE);
  if (tb_session_get_study (self->session) != step->study)
    tb_session_open (self->session, step->study, NULL);
  tb_session_set_time (self->session, 0);
  tb_clinic_changed (self);
  return TRUE;
}

/* Talks. What is under way does not keep a clinic that nobody has any more. */

static void
begin_talk (TbClinic *self, TbTalk *talk, guint which)
{
  g_clear_pointer (&self->talk, tb_talk_unref);
  self->talk = talk;
  self->talk_is = which;
  new_ballots (self, talk->steps->len);
  tb_clinic_show_place (self, 0);
  if (which == 0)
    tb_clinic_ask_reasons (self);
}

static void
on_prepared (GObject *source, GAsyncResult *result, gpointer data)
{
  g_autoptr (TbClinic) self = tb_weak_take (data);
  g_autoptr (GError) error = NULL;
  g_autoptr (TbTalk) talk = tb_talk_from_lesson_finish (result, &error);

  if (self == NULL || g_error_matches (error, G_IO_ERROR, G_IO_ERROR_CANCELLED))
    return;
  g_clear_object (&self->preparing);
  if (talk != NULL)
    begin_talk (self, g_steal_pointer (&talk), self->chosen);
  else
    {
      self->problem = g_strdup (error->message);
      tb_clinic_changed (self);
    }
}

gboolean
tb_clinic_start (TbClinic *self)
{
  if (self->preparing != NULL)
    return FALSE;
  g_clear_pointer (&self->problem, g_free);
  if (self->talk != NULL && self->talk_is == self->chosen)
    return tb_clinic_show_place (self, 0);
  if (self->chosen == 0)
    begin_talk (self, tb_talk_from_study (self->study), 0);
  else
    {
      self->preparing = g_cancellable_new ();
      tb_talk_from_lesson_async (self->lessons->pdata[self->chosen - 1], self->preparing, on_prepared,
                                 tb_weak_new (self));
      tb_clinic_changed (self);
    }
  return TRUE;
}

guint
tb_clinic_get_n_talks (TbClinic *self)
{
  return self->lessons->len + 1;
}

const char *
tb_clinic_get_talk_name (TbClinic *self, guint talk)
{
  if (talk > 0)
    return tb_lesson_display (((TbLesson *) self->lessons->pdata[talk - 1])->name);
  return self->study->title[0] != '\0' ? self->study->title : _ ("This study");
}

const char *
tb_clinic_get_talk_note (TbClinic *self, guint talk)
{
  const char *note = talk > 0 ? ((TbLesson *) self->lessons->pdata[talk - 1])->note : NULL;

  if (talk == 0)
    return _ ("The study in the window: its before and its after.");
  return note != NULL ? tb_lesson_display (note) : NULL;
}

guint
tb_clinic_get_chosen (TbClinic *self)
{
  return self->chosen;
}

void
tb_clinic_choose (TbClinic *self, guint talk)
{
  if (talk >= tb_clinic_get_n_talks (self) || self->preparing != NULL || self->started)
    return;
  self->chosen = talk;
  tb_clinic_changed (self);
}

const char *
tb_clinic_get_problem (TbClinic *self)
{
  return self->problem;
}

gboolean
tb_clinic_is_preparing (TbClinic *self)
{
  return self->preparing != NULL;
}

gboolean
tb_clinic_is_blank (TbClinic *self)
{
  return self->blank;
}

gboolean
tb_clinic_is_overlaid (TbClinic *self)
{
  return self->overlaid;
}

void
tb_clinic_set_still (TbClinic *self, gboolean still)
{
  if (self->shown.still == still)
    return;
  self->shown.still = still;
  if (still)
    tb_session_set_playing (self->session, FALSE);
  tb_clinic_changed (self);
}

gboolean
tb_clinic_is_still (TbClinic *self)
{
  return self->shown.still;
}

TbSession *
tb_clinic_get_session (TbClinic *self)
{
  return self->session;
}

TbClinic *
tb_clinic_new (TbLibrary *library, TbStudy *study, TbUnits units)
{
  TbClinic *self = g_object_new (TB_TYPE_CLINIC, NULL);

  self->session = self->shown.session = tb_session_new (library);
  self->study = tb_study_ref (study);
  tb_session_set_units (self->session, units);
  tb_session_open (self->session, study, NULL);
  return self;
}

static void
tb_clinic_dispose (GObject *object)
{
  TbClinic *self = TB_CLINIC (object);

  if (self->preparing != NULL)
    g_cancellable_cancel (self->preparing);
  if (self->reasons != NULL)
    g_cancellable_cancel (self->reasons);
  g_clear_object (&self->preparing);
  g_clear_object (&self->reasons);
  g_clear_object (&self->session);
  G_OBJECT_CLASS (tb_clinic_parent_class)->dispose (object);
}

static void
tb_clinic_finalize (GObject *object)
{
  TbClinic *self = TB_CLINIC (object);

  g_clear_pointer (&self->talk, tb_talk_unref);
  g_clear_pointer (&self->study, tb_study_unref);
  g_clear_pointer (&self->lessons, g_ptr_array_unref);
  g_clear_pointer (&self->ballots, g_array_unref);
  g_clear_pointer (&self->wished_from, tb_setup_unref);
  g_clear_pointer (&self->why, tb_why_unref);
  g_clear_pointer (&self->next, tb_next_unref);
  g_free (self->problem);
  G_OBJECT_CLASS (tb_clinic_parent_class)->finalize (object);
}

static void
tb_clinic_class_init (TbClinicClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = tb_clinic_dispose;
  G_OBJECT_CLASS (klass)->finalize = tb_clinic_finalize;
  signals[CHANGED]
      = g_signal_new ("changed", TB_TYPE_CLINIC, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
}

static void
tb_clinic_init (TbClinic *self)
{
  self->lessons = tb_lessons_builtin ();
  self->ballots = g_array_new (FALSE, FALSE, sizeof (TbBallot));
  g_array_set_clear_func (self->ballots, clear_ballot);
}
