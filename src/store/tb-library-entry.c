/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "tb-library-private.h"

struct _TbLibraryEntry
{
  GObject parent_instance;

  gboolean builtin;
  /* One of them. */
  TbBowler *bowler;
  TbBallDocument *ball;
  TbPattern *pattern;
};

G_DEFINE_FINAL_TYPE (TbLibraryEntry, tb_library_entry, G_TYPE_OBJECT)

enum
{
  PROP_ID = 1,
  PROP_NAME,
  PROP_NOTE,
  PROP_BUILTIN,
  N_PROPERTIES
};
static GParamSpec *properties[N_PROPERTIES];

const char *
tb_library_entry_get_id (TbLibraryEntry *self)
{
  return self->bowler ? self->bowler->id : self->ball ? self->ball->id : self->pattern->id;
}

const char *
tb_library_entry_get_name (TbLibraryEntry *self)
{
  const char *name = self->bowler ? self->bowler->name : self->ball ? self->ball->name : self->pattern->name;

  return self->builtin ? tb_document_display_name (name) : name;
}

const char *
tb_library_entry_get_note (TbLibraryEntry *self)
{
  const char *note = self->bowler ? self->bowler->note : self->ball ? self->ball->note : NULL;

  return note && self->builtin ? tb_document_display_name (note) : note;
}

gboolean
tb_library_entry_is_builtin (TbLibraryEntry *self)
{
  return self->builtin;
}

TbBowler *
tb_library_entry_get_bowler (TbLibraryEntry *self)
{
  return self->bowler;
}

TbBallDocument *
tb_library_entry_get_ball (TbLibraryEntry *self)
{
  return self->ball;
}

TbPattern *
tb_library_entry_get_pattern (TbLibraryEntry *self)
{
  return self->pattern;
}

static gboolean
take_document (TbLibraryEntry *self, TbDocumentKind kind, const char *text, gsize length, GError **error)
{
  switch (kind)
    {
    case TB_DOCUMENT_BOWLER:
      self->bowler = tb_bowler_from_text (text, length, error);
      return self->bowler != NULL;
    case TB_DOCUMENT_BALL:
      self->ball = tb_ball_document_from_text (text, length, error);
      return self->ball != NULL;
    case TB_DOCUMENT_PATTERN:
      self->pattern = tb_pattern_from_text (text, length, error);
      return self->pattern != NULL;
    default:
      g_return_val_if_reached (FALSE);
    }
}

TbLibraryEntry *
tb_library_entry_new (TbDocumentKind kind, gboolean builtin, const char *text, gsize length, GError **error)
{
  g_autoptr (TbLibraryEntry) self = g_object_new (TB_TYPE_LIBRARY_ENTRY, NULL);

  self->builtin = builtin;
  if (!take_document (self, kind, text, length, error))
    return NULL;
  return g_steal_pointer (&self);
}

static void
tb_library_entry_finalize (GObject *object)
{
  TbLibraryEntry *self = TB_LIBRARY_ENTRY (object);

  g_clear_pointer (&self->bowler, tb_bowler_unref);
  g_clear_pointer (&self->ball, tb_ball_document_unref);
  g_clear_pointer (&self->pattern, tb_pattern_unref);
  G_OBJECT_CLASS (tb_library_entry_parent_class)->finalize (object);
}

static void
tb_library_entry_get_property (GObject *object, guint id, GValue *value, GParamSpec *pspec)
{
  TbLibraryEntry *self = TB_LIBRARY_ENTRY (object);

  switch (id)
    {
    case PROP_ID:
      g_value_set_string (value, tb_library_entry_get_id (self));
      break;
    case PROP_NAME:
      g_value_set_string (value, tb_library_entry_get_name (self));
      break;
    case PROP_NOTE:
      g_value_set_string (value, tb_library_entry_get_note (self));
      break;
    case PROP_BUILTIN:
      g_value_set_boolean (value, self->builtin);
      break;
    default:
      G_OBJECT_WARN_INVALID_PROPERTY_ID (object, id, pspec);
    }
}

static void
tb_library_entry_class_init (TbLibraryEntryClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  const GParamFlags flags = G_PARAM_READABLE | G_PARAM_STATIC_STRINGS;

  object_class->finalize = tb_library_entry_finalize;
  object_class->get_property = tb_library_entry_get_property;
  properties[PROP_ID] = g_param_spec_string ("id", NULL, NULL, NULL, flags);
  properties[PROP_NAME] = g_param_spec_string ("name", NULL, NULL, NULL, flags);
  properties[PROP_NOTE] = g_param_spec_string ("note", NULL, NULL, NULL, flags);
  properties[PROP_BUILTIN] = g_param_spec_boolean ("builtin", NULL, NULL, FALSE, flags);
  g_object_class_install_properties (object_class, N_PROPERTIES, properties);
}

static void
tb_library_entry_init (TbLibraryEntry *self)
{
}
