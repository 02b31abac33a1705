/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"
#include "tb-assign.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#include "tb-decimal.h"
#include "tb-model-json.h"
#include "tb-request.h"

/* Keys that stand for a whole document. */
static const struct
{
  const char *key;
  TbDocumentKind kind;
} documents[] = {
  { "bowler", TB_DOCUMENT_BOWLER },
  { "ball", TB_DOCUMENT_BALL },
  { "lane.pattern", TB_DOCUMENT_PATTERN },
};
#define ASSUMED "assumed."

typedef struct Assignment
{
  TbLibrary *library;
  const char *text; /* as it was typed */
  const char *key;  /* without the side */
  const char *value;
} Assignment;

static TbSetup *
fail (const Assignment *assignment, const char *sentence, GError **error)
{
  g_autofree char *shown = tb_quotable (assignment->text);

  g_set_error (error, TB_HEADLESS_ERROR, TB_EXIT_USAGE, "--set %s: %s.", shown, sentence);
  return NULL;
}

/* "speed_mph" of "delivery.speed_mph". */
static const TbField *
find_field (const char *key)
{
  for (int group = 0; group < TB_N_GROUPS; group++)
    {
      const char *name = tb_group_name ((TbGroup) group);
      gsize length = strlen (name);

      if (strncmp (key, name, length) == 0 && key[length] == '.')
        return tb_field_find ((TbGroup) group, key + length + 1);
    }
  return NULL;
}

static TbStatus
set_value (const TbField *field, void *group, const char *value, double *number)
{
  *number = 0;
  if (field->kind == TB_FIELD_REAL && tb_decimal_parse (value, number))
    return tb_field_set (field, group, *number);
  return tb_field_set_word (field, group, value);
}

static TbSetup *
assign_field (const Assignment *assignment, const TbField *field, const TbSetup *setup, GError **error)
{
  TbShot shot = setup->shot;
  double number;
  TbStatus status = set_value (field, tb_shot_group (&shot, field->group), assignment->value, &number);
  g_autofree char *sentence = NULL;

  if (status == TB_OK)
    return tb_setup_with_shot (setup, &shot);
  sentence = tb_field_sentence (field, status, number);
  return fail (assignment, sentence, error);
}

static TbSetup *
assign_document (const Assignment *assignment, TbDocumentKind kind, const TbSetup *setup, GError **error)
{
  g_autoptr (GError) problem = NULL;
  TbSetup *chosen = tb_library_choose (assignment->library, setup, kind, assignment->value, &problem);

  return chosen ? chosen : fail (assignment, problem->message, error);
}

static TbSetup *
assign_assumed (const Assignment *assignment, const TbAssumedInfo *info, const TbSetup *setup, GError **error)
{
  TbShot shot = setup->shot;
  g_autofree char *sentence = NULL;
  double number;

  if (!tb_decimal_parse (assignment->value, &number) || number < info->low || number > info->high)
    {
      sentence = g_strdup_printf (_ ("a number from %g to %g was expected"), info->low, info->high);
      return fail (assignment, sentence, error);
    }
  *(double *) ((char *) &shot.assumed + info->offset) = info->to_si (number);
  return tb_setup_with_shot (setup, &shot);
}

static TbSetup *
assign_side (const Assignment *assignment, const TbSetup *setup, GError **error)
{
  const TbField *field = find_field (assignment->key);
  const TbAssumedInfo *info = g_str_has_prefix (assignment->key, ASSUMED)
                                  ? tb_assumed_find (assignment->key + strlen (ASSUMED))
                                  : NULL;

  if (field)
    return assign_field (assignment, field, setup, error);
  if (info)
    return assign_assumed (assignment, info, setup, error);
  for (gsize i = 0; i < G_N_ELEMENTS (documents); i++)
    if (g_str_equal (assignment->key, documents[i].key))
      return assign_document (assignment, documents[i].kind, setup, error);
  return fail (assignment, _ ("this key is not known; --help lists them"), error);
}

/* Takes a side's name off the key; without one, both sides are meant. */
static gboolean
is_meant (TbSide side, const char **key)
{
  static const char *const prefixes[TB_N_SIDES] = { "before.", "after." };

  for (int other = 0; other < TB_N_SIDES; other++)
    if (g_str_has_prefix (*key, prefixes[other]))
      {
        *key += strlen (prefixes[other]);
        return other == (int) side;
      }
  return TRUE;
}

TbStudy *
tb_assign (const TbStudy *study, TbLibrary *library, const char *text, GError **error)
{
  const char *equals = strchr (text, '=');
  g_autofree char *key = g_strndup (text, equals ? (gsize) (equals - text) : strlen (text));
  g_autoptr (TbStudy) result = tb_study_with_text (study, study->title, study->notes);
  Assignment assignment = { .library = library, .text = text, .value = equals ? equals + 1 : NULL };

  if (!equals)
    {
      fail (&assignment, _ ("KEY=VALUE was expected"), error);
      return NULL;
    }
  for (int side = 0; side < TB_N_SIDES; side++)
    {
      g_autoptr (TbSetup) setup = NULL;
      TbStudy *changed;

      assignment.key = key;
      if (!is_meant ((TbSide) side, &assignment.key))
        continue;
      setup = assign_side (&assignment, result->side[side], error);
      if (!setup)
        return NULL;
      changed = tb_study_with_side (result, (TbSide) side, setup);
      tb_study_unref (result);
      result = changed;
    }
  return g_steal_pointer (&result);
}
