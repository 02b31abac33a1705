/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"
#include "tb-assign.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#include "tb-decimal.h"
#include "tb-model-json.h"
#include "tb-request.h"
#include "tb-setup-assign.h"

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
  const TbAssumedInfo *info = g_str_has_prefix (assignment->key, ASSUMED)
                                  ? tb_assumed_find (assignment->key + strlen (ASSUMED))
                                  : NULL;
  g_autoptr (GError) problem = NULL;
  TbSetup *changed;

  if (info)
    return assign_assumed (assignment, info, setup, error);
  changed = tb_setup_assign (setup, assignment->library, assignment->key, assignment->value, &problem);
  if (changed)
    return changed;
  if (g_error_matches (problem, TB_STORE_ERROR, TB_STORE_ERROR_UNKNOWN_KEY))
    return fail (assignment, _ ("this key is not known; --help lists them"), error);
  return fail (assignment, problem->message, error);
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
