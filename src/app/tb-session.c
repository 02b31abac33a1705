/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "tb-session-private.h"

#include "tb-app-enums.h"
#include "tb-study-runs.h"

enum
{
  CHANGED,
  OPENED,
  WISHED,
  N_SIGNALS
};

static GParamSpec *properties[TB_SESSION_N_PROPS];
static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (TbSession, tb_session, G_TYPE_OBJECT)

void
tb_session_notify (TbSession *self, TbSessionProperty property)
{
  g_object_notify_by_pspec (G_OBJECT (self), properties[property]);
}

static void
tell_flag (TbSession *self, gboolean *told, gboolean now, TbSessionProperty property)
{
  if (*told == now)
    return;
  *told = now;
  tb_session_notify (self, property);
}

static void
tell_state (TbSession *self)
{
  tell_flag (self, &self->told_modified, tb_session_get_modified (self), TB_SESSION_PROP_MODIFIED);
  tell_flag (self, &self->told_can_undo, tb_session_can_undo (self), TB_SESSION_PROP_CAN_UNDO);
  tell_flag (self, &self->told_can_redo, tb_session_can_redo (self), TB_SESSION_PROP_CAN_REDO);
}

void
tb_session_show (TbSession *self, TbStudy *study)
{
  g_autoptr (TbStudy) old = g_steal_pointer (&self->study);
  gboolean retitled = old == NULL || g_strcmp0 (old->title, study->title) != 0;

  self->study = study;
  tb_study_runs_follow (self->run, study);
  g_signal_emit (self, signals[CHANGED], 0);
  if (retitled)
    tb_session_notify (self, TB_SESSION_PROP_TITLE);
  tb_session_set_time (self, self->time);
  tell_state (self);
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
  tb_session_show (self, tb_study_ref (study));
  tb_session_notify (self, TB_SESSION_PROP_FILE);
  g_signal_emit (self, signals[OPENED], 0);
}

void
tb_session_mark_saved (TbSession *self, GFile *file)
{
  g_return_if_fail (TB_IS_SESSION (self));

  g_clear_pointer (&self->saved, tb_study_unref);
  self->saved = tb_study_ref (self->study);
  if (g_set_object (&self->file, file))
    tb_session_notify (self, TB_SESSION_PROP_FILE);
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
tb_session_get_modified (TbSession *self)
{
  return self->saved != NULL && !tb_study_equal (self->saved, self->study);
}

GFile *
tb_session_get_file (TbSession *self)
{
  return self->file;
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
  tb_session_notify (self, TB_SESSION_PROP_UNITS);
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
    case TB_SESSION_PROP_TITLE:
      g_value_set_string (value, self->study != NULL ? self->study->title : "");
      break;
    case TB_SESSION_PROP_MODIFIED:
      g_value_set_boolean (value, tb_session_get_modified (self));
      break;
    case TB_SESSION_PROP_CAN_UNDO:
      g_value_set_boolean (value, tb_session_can_undo (self));
      break;
    case TB_SESSION_PROP_CAN_REDO:
      g_value_set_boolean (value, tb_session_can_redo (self));
      break;
    case TB_SESSION_PROP_FILE:
      g_value_set_object (value, self->file);
      break;
    case TB_SESSION_PROP_TIME:
      g_value_set_double (value, self->time);
      break;
    case TB_SESSION_PROP_PLAYING:
      g_value_set_boolean (value, self->playing);
      break;
    case TB_SESSION_PROP_RATE:
      g_value_set_double (value, self->rate);
      break;
    case TB_SESSION_PROP_UNITS:
      g_value_set_enum (value, self->units);
      break;
    case TB_SESSION_PROP_REAIM:
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
    case TB_SESSION_PROP_TIME:
      tb_session_set_time (self, g_value_get_double (value));
      break;
    case TB_SESSION_PROP_PLAYING:
      tb_session_set_playing (self, g_value_get_boolean (value));
      break;
    case TB_SESSION_PROP_RATE:
      tb_session_set_rate (self, g_value_get_double (value));
      break;
    case TB_SESSION_PROP_UNITS:
      tb_session_set_units (self, g_value_get_enum (value));
      break;
    case TB_SESSION_PROP_REAIM:
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

  tb_study_runs_clear (self->run);
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

  properties[TB_SESSION_PROP_TITLE] = g_param_spec_string ("title", NULL, NULL, NULL, reads);
  properties[TB_SESSION_PROP_MODIFIED] = g_param_spec_boolean ("modified", NULL, NULL, FALSE, reads);
  properties[TB_SESSION_PROP_CAN_UNDO] = g_param_spec_boolean ("can-undo", NULL, NULL, FALSE, reads);
  properties[TB_SESSION_PROP_CAN_REDO] = g_param_spec_boolean ("can-redo", NULL, NULL, FALSE, reads);
  properties[TB_SESSION_PROP_FILE] = g_param_spec_object ("file", NULL, NULL, G_TYPE_FILE, reads);
  properties[TB_SESSION_PROP_TIME] = g_param_spec_double ("time", NULL, NULL, 0, TB_SHOT_TIME_LIMIT, 0, both);
  properties[TB_SESSION_PROP_PLAYING] = g_param_spec_boolean ("playing", NULL, NULL, FALSE, both);
  properties[TB_SESSION_PROP_RATE] = g_param_spec_double ("rate", NULL, NULL, TB_SESSION_MIN_RATE,
                                                          TB_SESSION_MAX_RATE, TB_SESSION_MAX_RATE, both);
  properties[TB_SESSION_PROP_UNITS]
      = g_param_spec_enum ("units", NULL, NULL, TB_TYPE_UNITS, TB_UNITS_IMPERIAL, both);
  properties[TB_SESSION_PROP_REAIM] = g_param_spec_boolean ("reaim", NULL, NULL, FALSE, both);
  g_object_class_install_properties (object_class, TB_SESSION_N_PROPS, properties);
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
  self->rate = TB_SESSION_MAX_RATE;
}
