/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "tb-session.h"

#include "tb-app-enums.h"
#include "tb-history.h"
#include "tb-pocket-line.h"

struct _TbSession
{
  GObject parent_instance;

  TbLibrary *library;
  TbStudy *study;
  TbRun *run[TB_N_SIDES];
  TbHistory *history;
  TbStudy *saved; /* what the file holds, or what a new study began as */
  GFile *file;

  double time;
  double rate;
  gboolean playing;
  TbUnits units;
  gboolean reaim;
  TbWish wish;
  TbSetup *wished_from; /* NULL while nothing was wished */

  /* What was last told by notify. */
  gboolean told_modified, told_can_undo, told_can_redo;
};

enum
{
  PROP_0,
  PROP_TITLE,
  PROP_MODIFIED,
  PROP_CAN_UNDO,
  PROP_CAN_REDO,
  PROP_FILE,
  PROP_TIME,
  PROP_PLAYING,
  PROP_RATE,
  PROP_UNITS,
  PROP_REAIM,
  N_PROPS
};

enum
{
  CHANGED,
  OPENED,
  WISHED,
  N_SIGNALS
};

static GParamSpec *properties[N_PROPS];
static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (TbSession, tb_session, G_TYPE_OBJECT)

/* Slowest and fastest time. */
#define MIN_RATE 0.01
#define MAX_RATE 1.0

static void
tell_flag (TbSession *self, gboolean *told, gboolean now, int property)
{
  if (*told == now)
    return;
  *told = now;
  g_object_notify_by_pspec (G_OBJECT (self), properties[property]);
}

static void
tell_state (TbSession *self)
{
  tell_flag (self, &self->told_modified, tb_session_get_modified (self), PROP_MODIFIED);
  tell_flag (self, &self->told_can_undo, tb_session_can_undo (self), PROP_CAN_UNDO);
  tell_flag (self, &self->told_can_redo, tb_session_can_redo (self), PROP_CAN_REDO);
}

/* Throws what is another setup than before. */
static void
refresh_runs (TbSession *self)
{
  for (int side = 0; side < TB_N_SIDES; side++)
    {
      TbSetup *setup = self->study->side[side];

      if (self->run[side] != NULL && self->run[side]->setup == setup)
        continue;
      g_clear_pointer (&self->run[side], tb_run_unref);
      self->run[side] = tb_run_new (setup);
    }
}

/* Swapped or kept setups take their runs with them. */
static void
reuse_runs (TbSession *self)
{
  TbRun *old[TB_N_SIDES] = { self->run[TB_SIDE_BEFORE], self->run[TB_SIDE_AFTER] };

  for (int side = 0; side < TB_N_SIDES; side++)
    {
      self->run[side] = NULL;
      for (int from = 0; from < TB_N_SIDES && self->run[side] == NULL; from++)
        if (old[from] != NULL && old[from]->setup == self->study->side[side])
          self->run[side] = tb_run_ref (old[from]);
    }
  for (int side = 0; side < TB_N_SIDES; side++)
    g_clear_pointer (&old[side], tb_run_unref);
}

/* Takes the study over. */
static void
show_study (TbSession *self, TbStudy *study)
{
  g_autoptr (TbStudy) old = g_steal_pointer (&self->study);
  gboolean retitled = old == NULL || g_strcmp0 (old->title, study->title) != 0;

  self->study = study;
  reuse_runs (self);
  refresh_runs (self);
  g_signal_emit (self, signals[CHANGED], 0);
  if (retitled)
    g_object_notify_by_pspec (G_OBJECT (self), properties[PROP_TITLE]);
  tb_session_set_time (self, self->time);
  tell_state (self);
}

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

/* Makes a change that can be undone; takes the study over. */
static void
change (TbSession *self, TbStudy *study, const char *key)
{
  if (self->reaim && study->side[TB_SIDE_AFTER] != self->study->side[TB_SIDE_AFTER])
    study = aimed_at_pocket (study);
  if (tb_study_equal (self->study, study))
    {
      tb_study_unref (study);
      return;
    }
  tb_history_record (self->history, self->study, key, g_get_monotonic_time ());
  show_study (self, study);
}

TbSession *
tb_session_new (TbLibrary *library)
{
  TbSession *self = g_object_new (TB_TYPE_SESSION, NULL);
  g_autoptr (TbStudy) study = tb_library_start_study ();

  self->library = g_object_ref (library);
  tb_session_open (self, study, NULL);
  return self;
}

TbLibrary *
tb_session_get_library (TbSession *self)
{
  return self->library;
}

void
tb_session_open (TbSession *self, TbStudy *study, GFile *file)
{
  g_return_if_fail (TB_IS_SESSION (self));

  tb_history_clear (self->history);
  tb_session_set_playing (self, FALSE);
  self->time = 0;
  g_clear_pointer (&self->saved, tb_study_unref);
  self->saved = tb_study_ref (study);
  g_set_object (&self->file, file);
  show_study (self, tb_study_ref (study));
  g_object_notify_by_pspec (G_OBJECT (self), properties[PROP_FILE]);
  g_signal_emit (self, signals[OPENED], 0);
}

void
tb_session_mark_saved (TbSession *self, GFile *file)
{
  g_return_if_fail (TB_IS_SESSION (self));

  g_clear_pointer (&self->saved, tb_study_unref);
  self->saved = tb_study_ref (self->study);
  if (g_set_object (&self->file, file))
    g_object_notify_by_pspec (G_OBJECT (self), properties[PROP_FILE]);
  tell_state (self);
}

TbStudy *
tb_session_get_study (TbSession *self)
{
  return self->study;
}

TbSetup *
tb_session_get_setup (TbSession *self, TbSide side)
{
  return self->study->side[side];
}

TbRun *
tb_session_get_run (TbSession *self, TbSide side)
{
  return self->run[side];
}

const TbPath *
tb_session_get_path (TbSession *self, TbSide side)
{
  TbRun *run = self->run[side];

  return run != NULL && run->status == TB_OK ? &run->path : NULL;
}

double
tb_session_get_field (TbSession *self, TbSide side, const TbField *field)
{
  return tb_field_get (field, tb_shot_group_const (&self->study->side[side]->shot, field->group));
}

gboolean
tb_session_set_field (TbSession *self, const TbField *field, double value, TbProblem *problem)
{
  g_autoptr (TbSetup) setup = NULL;

  g_return_val_if_fail (TB_IS_SESSION (self), FALSE);

  setup = tb_setup_with_field (self->study->side[TB_SIDE_AFTER], field, value, problem);
  if (setup == NULL)
    return FALSE;
  change (self, tb_study_with_side (self->study, TB_SIDE_AFTER, setup), field->name);
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
  change (self, tb_study_with_side (self->study, TB_SIDE_AFTER, setup), NULL);
}

void
tb_session_set_after_as (TbSession *self, TbSetup *setup, const char *key)
{
  change (self, tb_study_with_side (self->study, TB_SIDE_AFTER, setup), key);
}

void
tb_session_set_texts (TbSession *self, const char *title, const char *notes)
{
  g_autofree char *line = tb_text_fitted (title, TB_NAME_MAX, TRUE),
                  *lines = tb_text_fitted (notes, TB_NOTES_MAX, FALSE);

  change (self, tb_study_with_text (self->study, line, lines), "texts");
}

void
tb_session_set_study (TbSession *self, TbStudy *study)
{
  change (self, tb_study_ref (study), NULL);
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
  change (self, tb_study_with_side (self->study, TB_SIDE_BEFORE, self->study->side[TB_SIDE_AFTER]), NULL);
}

void
tb_session_swap (TbSession *self)
{
  change (self, tb_study_swapped (self->study), NULL);
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
    show_study (self, study);
}

void
tb_session_redo (TbSession *self)
{
  TbStudy *study = tb_history_redo (self->history, self->study);

  if (study != NULL)
    show_study (self, study);
}

gboolean
tb_session_get_modified (TbSession *self)
{
  return self->saved != NULL && !tb_study_equal (self->saved, self->study);
}

GFile *
tb_session_get_file (TbSession *self)
{
  return self->file;
}

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
  g_object_notify_by_pspec (G_OBJECT (self), properties[PROP_TIME]);
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
  g_object_notify_by_pspec (G_OBJECT (self), properties[PROP_PLAYING]);
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
  self->rate = CLAMP (rate, MIN_RATE, MAX_RATE);
  g_object_notify_by_pspec (G_OBJECT (self), properties[PROP_RATE]);
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

TbUnits
tb_session_get_units (TbSession *self)
{
  return self->units;
}

void
tb_session_set_units (TbSession *self, TbUnits units)
{
  if (self->units == units)
    return;
  self->units = units;
  g_object_notify_by_pspec (G_OBJECT (self), properties[PROP_UNITS]);
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
    change (self, aimed_at_pocket (tb_study_ref (self->study)), NULL);
  g_object_notify_by_pspec (G_OBJECT (self), properties[PROP_REAIM]);
}

TbSetup *
tb_session_get_wish (TbSession *self, TbWish *wish)
{
  *wish = self->wish;
  return self->wished_from;
}

void
tb_session_set_wish (TbSession *self, const TbWish *wish, TbSetup *from)
{
  if (self->wished_from == from && tb_wish_equal (&self->wish, wish))
    return;
  self->wish = *wish;
  tb_setup_ref (from);
  g_clear_pointer (&self->wished_from, tb_setup_unref);
  self->wished_from = from;
  g_signal_emit (self, signals[WISHED], 0);
}

static void
tb_session_get_property (GObject *object, guint id, GValue *value, GParamSpec *pspec)
{
  TbSession *self = TB_SESSION (object);

  switch (id)
    {
    case PROP_TITLE:
      g_value_set_string (value, self->study != NULL ? self->study->title : "");
      break;
    case PROP_MODIFIED:
      g_value_set_boolean (value, tb_session_get_modified (self));
      break;
    case PROP_CAN_UNDO:
      g_value_set_boolean (value, tb_session_can_undo (self));
      break;
    case PROP_CAN_REDO:
      g_value_set_boolean (value, tb_session_can_redo (self));
      break;
    case PROP_FILE:
      g_value_set_object (value, self->file);
      break;
    case PROP_TIME:
      g_value_set_double (value, self->time);
      break;
    case PROP_PLAYING:
      g_value_set_boolean (value, self->playing);
      break;
    case PROP_RATE:
      g_value_set_double (value, self->rate);
      break;
    case PROP_UNITS:
      g_value_set_enum (value, self->units);
      break;
    case PROP_REAIM:
      g_value_set_boolean (value, self->reaim);
      break;
    default:
      G_OBJECT_WARN_INVALID_PROPERTY_ID (object, id, pspec);
    }
}

static void
tb_session_set_property (GObject *object, guint id, const GValue *value, GParamSpec *pspec)
{
  TbSession *self = TB_SESSION (object);

  switch (id)
    {
    case PROP_TIME:
      tb_session_set_time (self, g_value_get_double (value));
      break;
    case PROP_PLAYING:
      tb_session_set_playing (self, g_value_get_boolean (value));
      break;
    case PROP_RATE:
      tb_session_set_rate (self, g_value_get_double (value));
      break;
    case PROP_UNITS:
      tb_session_set_units (self, g_value_get_enum (value));
      break;
    case PROP_REAIM:
      tb_session_set_reaim (self, g_value_get_boolean (value));
      break;
    default:
      G_OBJECT_WARN_INVALID_PROPERTY_ID (object, id, pspec);
    }
}

static void
tb_session_finalize (GObject *object)
{
  TbSession *self = TB_SESSION (object);

  for (int side = 0; side < TB_N_SIDES; side++)
    g_clear_pointer (&self->run[side], tb_run_unref);
  g_clear_pointer (&self->study, tb_study_unref);
  g_clear_pointer (&self->saved, tb_study_unref);
  g_clear_pointer (&self->history, tb_history_free);
  g_clear_pointer (&self->wished_from, tb_setup_unref);
  g_clear_object (&self->file);
  g_clear_object (&self->library);
  G_OBJECT_CLASS (tb_session_parent_class)->finalize (object);
}

static void
install_properties (GObjectClass *object_class)
{
  const GParamFlags reads = G_PARAM_READABLE | G_PARAM_STATIC_STRINGS | G_PARAM_EXPLICIT_NOTIFY;
  const GParamFlags both = reads | G_PARAM_WRITABLE;

  properties[PROP_TITLE] = g_param_spec_string ("title", NULL, NULL, NULL, reads);
  properties[PROP_MODIFIED] = g_param_spec_boolean ("modified", NULL, NULL, FALSE, reads);
  properties[PROP_CAN_UNDO] = g_param_spec_boolean ("can-undo", NULL, NULL, FALSE, reads);
  properties[PROP_CAN_REDO] = g_param_spec_boolean ("can-redo", NULL, NULL, FALSE, reads);
  properties[PROP_FILE] = g_param_spec_object ("file", NULL, NULL, G_TYPE_FILE, reads);
  properties[PROP_TIME] = g_param_spec_double ("time", NULL, NULL, 0, TB_SHOT_TIME_LIMIT, 0, both);
  properties[PROP_PLAYING] = g_param_spec_boolean ("playing", NULL, NULL, FALSE, both);
  properties[PROP_RATE] = g_param_spec_double ("rate", NULL, NULL, MIN_RATE, MAX_RATE, MAX_RATE, both);
  properties[PROP_UNITS] = g_param_spec_enum ("units", NULL, NULL, TB_TYPE_UNITS, TB_UNITS_IMPERIAL, both);
  properties[PROP_REAIM] = g_param_spec_boolean ("reaim", NULL, NULL, FALSE, both);
  g_object_class_install_properties (object_class, N_PROPS, properties);
}

static void
tb_session_class_init (TbSessionClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);

  object_class->finalize = tb_session_finalize;
  object_class->get_property = tb_session_get_property;
  object_class->set_property = tb_session_set_property;
  install_properties (object_class);

  signals[CHANGED]
      = g_signal_new ("changed", TB_TYPE_SESSION, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
  signals[OPENED]
      = g_signal_new ("opened", TB_TYPE_SESSION, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
  signals[WISHED]
      = g_signal_new ("wished", TB_TYPE_SESSION, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
}

static void
tb_session_init (TbSession *self)
{
  self->history = tb_history_new ();
  self->rate = MAX_RATE;
}
