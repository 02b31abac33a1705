/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"
#include "tb-store-error.h"

#include <glib/gi18n-lib.h>
#include <string.h>

/* Characters of a foreign text that are quoted; of a file's name all there can be, for it ends with what it is. */
#define QUOTED 60
#define QUOTED_NAME 4096

G_DEFINE_QUARK (tb - store - error - quark, tb_store_error)

static char *
list_choices (const TbField *field)
{
  GString *list = g_string_new (NULL);

  for (const TbChoice *choice = field->choices; choice->name; choice++)
    g_string_append_printf (list, "%s%s", list->len ? ", " : "", choice->name);
  return g_string_free (list, FALSE);
}

static char *
number_expected (const TbField *field)
{
  /* gettext() gives a translation's header for an empty text. */
  const char *unit = field->unit[0] ? _ (field->unit) : "";
  const char *gap = unit[0] ? " " : "";

  if (field->words && field->words[0].name)
    /* Translators: range, unit, then a word that may stand instead of a number, such as polish. */
    return g_strdup_printf (_ ("a number from %g to %g%s%s, or %s"), field->min, field->max, gap, unit,
                            field->words[0].name);
  return g_strdup_printf (_ ("a number from %g to %g%s%s"), field->min, field->max, gap, unit);
}

char *
tb_field_expected (const TbField *field)
{
  g_autofree char *choices = NULL;

  if (field->kind == TB_FIELD_REAL)
    return number_expected (field);
  choices = list_choices (field);
  return g_strdup_printf (_ ("one of %s"), choices);
}

char *
tb_field_sentence (const TbField *field, TbStatus status, double value)
{
  g_autofree char *expected = tb_field_expected (field);

  if (status == TB_ERROR_OUT_OF_RANGE || status == TB_ERROR_BALL_TOO_HEAVY)
    return g_strdup_printf (_ ("%g is out of range; %s was expected"), value, expected);
  return g_strdup_printf (_ ("%s was expected"), expected);
}

/* Core's sentences end with a full stop; here they stand at the end of a longer one. */
static char *
status_clause (TbStatus status)
{
  char *clause = g_strdup (_ (tb_status_sentence (status)));

  if (g_str_has_suffix (clause, "."))
    clause[strlen (clause) - 1] = '\0';
  return clause;
}

char *
tb_problem_sentence (const TbProblem *problem)
{
  g_autofree char *sentence = NULL;

  if (!problem->field)
    return status_clause (problem->status);
  sentence = tb_field_sentence (problem->field, problem->status, problem->value);
  return g_strdup_printf ("%s.%s: %s", tb_group_name (problem->field->group), problem->field->name, sentence);
}

static char *
quote (const char *text, guint most)
{
  GString *quotable = g_string_new (NULL);
  guint count = 0;

  for (const char *p = text; *p && count < most; p = g_utf8_next_char (p), count++)
    {
      gunichar c = g_utf8_get_char (p);
      g_string_append_unichar (quotable, g_unichar_isprint (c) ? c : 0xfffd);
    }
  if (count == most)
    g_string_append (quotable, "…");
  return g_string_free (quotable, FALSE);
}

char *
tb_quotable (const char *text)
{
  return quote (text, QUOTED);
}

char *
tb_quotable_file (const char *filename)
{
  g_autofree char *name = g_filename_display_name (filename);

  return quote (name, QUOTED_NAME);
}
