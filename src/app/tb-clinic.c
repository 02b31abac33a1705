/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "tb-clinic.h"

#include <glib/gi18n-lib.h>

/* A frame of ordinary video, s. */
#define FRAME (1.0 / 30.0)
/* Rates of time, the fastest first. */
static const double rates[] = { 1.0, 0.5, 0.25, 0.125 };
/* Moments nearer to each other than this count as one, s. */
#define SAME_MOMENT 0.01

/* The slides of a step, in their order. The last is of a study only. */
static const TbClinicSlide order[] = { TB_CLINIC_QUESTION, TB_CLINIC_VOTE, TB_CLINIC_THROW,
                                       TB_CLINIC_NUMBERS,  TB_CLINIC_WHY,  TB_CLINIC_TRY };
#define LESSON_SLIDES 5

typedef struct TbBallot
{
  guint votes[TB_TALK_MAX_CHOICES];
  GArray *given; /* of guint: the choices in the order in which they were voted for */
} TbBallot;

struct _TbClinic
{
  GObject parent_instance;

  TbSession *session;
  TbStudy *study;
  GPtrArray *lessons; /* of TbLesson */
  guint chosen;       /* of the talks; 0 is the study */
  TbTalk *talk;       /* NULL at the start */
  guint talk_is;      /* which of the talks it is */
  guint place;
  gboolean started; /* past the start slide */
  GArray *ballots;  /* of TbBallot, one a step */
  gboolean thrown;  /* since the slide of the throw was come to */
  gboolean blank, overlaid, still;
  char *problem;

  GCancellable *preparing; /* a lesson's talk; else NULL */
  GCancellable *reasons;   /* of the study's why and next; NULL before they are asked for */
  guint n_reasons;         /* still to come */
  TbWhy *why;
  TbNext *next;
};

enum
{
  CHANGED,
  N_SIGNALS
};
static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (TbClinic, tb_clinic, G_TYPE_OBJECT)

static void
changed (TbClinic *self)
{
  g_signal_emit (self, signals[CHANGED], 0);
}

/* Votes. */

static void
clear_ballot (gpointer data)
{
  g_clear_pointer (&((TbBallot *) data)->given, g_array_unref);
}

static void
new_ballots (TbClinic *self, guint n)
{
  g_array_set_size (self->ballots, 0);
  for (guint i = 0; i < n; i++)
    {
      TbBallot ballot = { .given = g_array_new (FALSE, FALSE, sizeof (guint)) };

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

static TbBallot *
ballot (TbClinic *self)
{
  return self->started ? &g_array_index (self->ballots, TbBallot, step_place (self)) : NULL;
}

guint
tb_clinic_get_votes (TbClinic *self, guint choice)
{
  return self->started && choice < TB_TALK_MAX_CHOICES ? ballot (self)->votes[choice] : 0;
}

guint
tb_clinic_get_total (TbClinic *self)
{
  return self->started ? ballot (self)->given->len : 0;
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
tb_clinic_vote (TbClinic *self, guint choice, int more)
{
  TbBallot *votes = ballot (self);

  if (votes == NULL || choice >= tb_clinic_get_step (self)->choices->len
      || (more < 0 && votes->votes[choice] == 0))
    return FALSE;
  if (more > 0)
    {
      votes->votes[choice]++;
      g_array_append_val (votes->given, choice);
    }
  else
    {
      votes->votes[choice]--;
      forget_last (votes->given, choice);
    }
  changed (self);
  return TRUE;
}

void
tb_clinic_clear_votes (TbClinic *self)
{
  TbBallot *votes = ballot (self);

  if (votes == NULL)
    return;
  memset (votes->votes, 0, sizeof votes->votes);
  g_array_set_size (votes->given, 0);
  changed (self);
}

static gboolean
take_back (TbClinic *self)
{
  TbBallot *votes = ballot (self);

  return votes != NULL && votes->given->len > 0
         && tb_clinic_vote (self, g_array_index (votes->given, guint, votes->given->len - 1), -1);
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

static gboolean
show_place (TbClinic *self, guint place)
{
  const TbTalkStep *step;

  if (place >= self->talk->steps->len * slides_of_step (self))
    return FALSE;
  self->started = TRUE;
  self->place = place;
  self->thrown = FALSE;
  step = tb_clinic_get_step (self);
  tb_session_set_playing (self->session, FALSE);
  if (tb_session_get_study (self->session) != step->study)
    tb_session_open (self->session, step->study, NULL);
  tb_session_set_time (self->session, 0);
  changed (self);
  return TRUE;
}

static gboolean
show_start (TbClinic *self)
{
  if (!self->started)
    return FALSE;
  tb_session_set_playing (self->session, FALSE);
  self->started = FALSE;
  self->chosen = self->talk_is;
  changed (self);
  return TRUE;
}

/* Reasons of the study, once its talk begins. */

static void
on_why (GObject *source, GAsyncResult *result, gpointer data)
{
  g_autoptr (TbClinic) self = data;

  self->n_reasons--;
  self->why = tb_why_new_finish (result, NULL);
  changed (self);
}

static void
on_next (GObject *source, GAsyncResult *result, gpointer data)
{
  g_autoptr (TbClinic) self = data;

  self->n_reasons--;
  self->next = tb_next_find_finish (result, NULL);
  changed (self);
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

static void
ask_reasons (TbClinic *self)
{
  TbSetup *before = self->study->side[TB_SIDE_BEFORE], *after = self->study->side[TB_SIDE_AFTER];
  TbWish wish;

  if (self->reasons != NULL)
    return;
  self->reasons = g_cancellable_new ();
  self->n_reasons = 2;
  tb_why_new_async (before, after, NULL, self->reasons, on_why, g_object_ref (self));
  wish = wish_for (after, tb_session_get_run (self->session, TB_SIDE_AFTER));
  tb_next_find_async (after, &wish, NULL, 0, self->reasons, NULL, on_next, g_object_ref (self));
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

/* Talks. */

static void
begin_talk (TbClinic *self, TbTalk *talk, guint which)
{
  g_clear_pointer (&self->talk, tb_talk_unref);
  self->talk = talk;
  self->talk_is = which;
  new_ballots (self, talk->steps->len);
  show_place (self, 0);
  if (which == 0)
    ask_reasons (self);
}

static void
on_prepared (GObject *source, GAsyncResult *result, gpointer data)
{
  g_autoptr (TbClinic) self = data;
  g_autoptr (GError) error = NULL;
  TbTalk *talk = tb_talk_from_lesson_finish (result, &error);

  if (g_error_matches (error, G_IO_ERROR, G_IO_ERROR_CANCELLED))
    return;
  g_clear_object (&self->preparing);
  if (talk != NULL)
    begin_talk (self, talk, self->chosen);
  else
    {
      self->problem = g_strdup (error->message);
      changed (self);
    }
}

/* The talk that was shown goes on from its first slide, with its votes. */
static gboolean
start (TbClinic *self)
{
  if (self->preparing != NULL)
    return FALSE;
  g_clear_pointer (&self->problem, g_free);
  if (self->talk != NULL && self->talk_is == self->chosen)
    return show_place (self, 0);
  if (self->chosen == 0)
    begin_talk (self, tb_talk_from_study (self->study), 0);
  else
    {
      self->preparing = g_cancellable_new ();
      tb_talk_from_lesson_async (self->lessons->pdata[self->chosen - 1], self->preparing, on_prepared,
                                 g_object_ref (self));
      changed (self);
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
  changed (self);
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

/* The throw. */

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
moments_of (TbClinic *self)
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
next_moment (TbClinic *self)
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

/* What onward does before it goes to the next slide; FALSE if nothing is left to be done. */
static gboolean
throw_onward (TbClinic *self)
{
  double end = tb_session_get_duration (self->session);

  if (tb_clinic_get_slide (self) != TB_CLINIC_THROW || end <= 0)
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

static gboolean
replay (TbClinic *self)
{
  if (tb_clinic_get_slide (self) != TB_CLINIC_THROW || tb_session_get_duration (self->session) <= 0)
    return FALSE;
  self->thrown = TRUE;
  if (self->still)
    tb_session_set_time (self->session, 0);
  else
    tb_session_throw (self->session);
  return TRUE;
}

static gboolean
freeze (TbClinic *self)
{
  if (tb_clinic_get_slide (self) != TB_CLINIC_THROW || self->still)
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

static gboolean
step_frames (TbClinic *self, int frames)
{
  if (tb_clinic_get_slide (self) != TB_CLINIC_THROW)
    return FALSE;
  self->thrown = TRUE;
  tb_session_set_playing (self->session, FALSE);
  tb_session_set_time (self->session, tb_session_get_time (self->session) + frames * FRAME);
  return TRUE;
}

static guint
rate_place (TbClinic *self)
{
  double rate = tb_session_get_rate (self->session);
  guint nearest = 0;

  for (guint i = 0; i < G_N_ELEMENTS (rates); i++)
    if (fabs (rates[i] - rate) < fabs (rates[nearest] - rate))
      nearest = i;
  return nearest;
}

static gboolean
overlay (TbClinic *self)
{
  if (tb_clinic_get_slide (self) != TB_CLINIC_THROW)
    return FALSE;
  self->overlaid = !self->overlaid;
  changed (self);
  return TRUE;
}

/* Up and down: another talk, or another rate of time. */
static gboolean
move (TbClinic *self, int down)
{
  guint place;

  if (!self->started)
    {
      tb_clinic_choose (self, self->chosen + (guint) down);
      return TRUE;
    }
  place = rate_place (self) + (guint) down;
  if (tb_clinic_get_slide (self) != TB_CLINIC_THROW || place >= G_N_ELEMENTS (rates))
    return FALSE;
  tb_session_set_rate (self->session, rates[place]);
  changed (self);
  return TRUE;
}

static gboolean
go_first (TbClinic *self)
{
  if (self->started)
    return show_place (self, 0);
  tb_clinic_choose (self, 0);
  return TRUE;
}

static gboolean
go_last (TbClinic *self)
{
  if (self->started)
    return show_place (self, tb_clinic_get_n_slides (self) - 1);
  tb_clinic_choose (self, tb_clinic_get_n_talks (self) - 1);
  return TRUE;
}

static gboolean
go_back (TbClinic *self)
{
  if (!self->started)
    return FALSE;
  return self->place > 0 ? show_place (self, self->place - 1) : show_start (self);
}

static gboolean
go_onward (TbClinic *self)
{
  if (!self->started)
    return start (self);
  return throw_onward (self) || show_place (self, self->place + 1);
}

static gboolean
blank (TbClinic *self)
{
  self->blank = !self->blank;
  tb_session_set_playing (self->session, FALSE);
  changed (self);
  return TRUE;
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
      return self->started ? show_place (self, 0) : start (self);
    case TB_CLINIC_BLANK:
      return blank (self);
    case TB_CLINIC_UP:
      return move (self, -1);
    case TB_CLINIC_DOWN:
      return move (self, 1);
    case TB_CLINIC_FREEZE:
      return freeze (self);
    case TB_CLINIC_FRAME_ON:
      return step_frames (self, 1);
    case TB_CLINIC_FRAME_BACK:
      return step_frames (self, -1);
    case TB_CLINIC_REPLAY:
      return replay (self);
    case TB_CLINIC_OVERLAY:
      return overlay (self);
    default:
      return do_vote (self, action);
    }
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
  self->still = still;
}

gboolean
tb_clinic_is_still (TbClinic *self)
{
  return self->still;
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

  self->session = tb_session_new (library);
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
