/* A walk over the text by the grammar of RFC 8259, one function for each of its rules.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"
#include "tb-json-check.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#include "tb-store-error.h"

/* Digits of a whole number that surely fits 64 bits; the library's parser wraps round beyond. */
#define MAX_WHOLE_DIGITS 18

typedef struct Walk
{
  const char *start, *at, *end;
  guint depth;
  guint values;
  GError *error;
} Walk;

static gboolean check_value (Walk *walk);

static guint
line_number (const Walk *walk)
{
  guint line = 1;

  for (const char *p = walk->start; p < walk->at; p++)
    line += *p == '\n';
  return line;
}

static gboolean
fail (Walk *walk, TbStoreError code, const char *sentence)
{
  if (!walk->error)
    /* Translators: the second part says what is wrong there. */
    g_set_error (&walk->error, TB_STORE_ERROR, code, _ ("line %u: %s"), line_number (walk), sentence);
  return FALSE;
}

static gboolean
fail_expected (Walk *walk, const char *expected)
{
  g_autofree char *sentence = NULL;

  if (walk->at >= walk->end)
    sentence = g_strdup_printf (_ ("%s was expected, but the file ends"), expected);
  else
    {
      g_autofree char *found = g_strndup (walk->at, (gsize) (g_utf8_next_char (walk->at) - walk->at));
      g_autofree char *shown = tb_quotable (found);

      sentence = g_strdup_printf (_ ("%s was expected, not “%s”"), expected, shown);
    }
  return fail (walk, TB_STORE_ERROR_SYNTAX, sentence);
}

static void
skip_space (Walk *walk)
{
  while (walk->at < walk->end && strchr (" \t\r\n", *walk->at))
    walk->at++;
}

static gboolean
take (Walk *walk, char c)
{
  if (walk->at >= walk->end || *walk->at != c)
    return FALSE;
  walk->at++;
  return TRUE;
}

static gsize
skip_digits (Walk *walk)
{
  const char *from = walk->at;

  while (walk->at < walk->end && g_ascii_isdigit (*walk->at))
    walk->at++;
  return (gsize) (walk->at - from);
}

static gboolean
check_digits (Walk *walk)
{
  return skip_digits (walk) > 0 || fail_expected (walk, _ ("a digit"));
}

static gboolean
check_fraction_and_exponent (Walk *walk)
{
  if (take (walk, '.') && !check_digits (walk))
    return FALSE;
  if (take (walk, 'e') || take (walk, 'E'))
    {
      if (!take (walk, '-'))
        take (walk, '+');
      return check_digits (walk);
    }
  return TRUE;
}

static gboolean
check_number (Walk *walk)
{
  gboolean zero;

  take (walk, '-');
  zero = walk->at < walk->end && *walk->at == '0';
  if (zero)
    walk->at++;
  else
    {
      gsize digits = skip_digits (walk);

      if (digits == 0)
        return fail_expected (walk, _ ("a digit"));
      if (digits > MAX_WHOLE_DIGITS)
        return fail (walk, TB_STORE_ERROR_SYNTAX, _ ("a number has too many digits"));
    }
  return check_fraction_and_exponent (walk);
}

/* Four hexadecimal digits; −1 if they are not there. */
static int
read_code_unit (Walk *walk)
{
  int unit = 0;

  for (int i = 0; i < 4; i++, walk->at++)
    {
      if (walk->at >= walk->end || !g_ascii_isxdigit (*walk->at))
        return -1;
      unit = unit * 16 + g_ascii_xdigit_value (*walk->at);
    }
  return unit;
}

static gboolean
is_high_surrogate (int unit)
{
  return unit >= 0xd800 && unit < 0xdc00;
}

static gboolean
is_low_surrogate (int unit)
{
  return unit >= 0xdc00 && unit < 0xe000;
}

/* After the backslash and the u. */
static gboolean
check_unicode_escape (Walk *walk)
{
  int unit = read_code_unit (walk);

  if (unit < 0)
    return fail_expected (walk, _ ("a hexadecimal digit"));
  if (is_high_surrogate (unit))
    {
      if (take (walk, '\\') && take (walk, 'u') && is_low_surrogate (read_code_unit (walk)))
        return TRUE;
      return fail (walk, TB_STORE_ERROR_SYNTAX, _ ("a character is written as half of a pair"));
    }
  if (unit == 0 || is_low_surrogate (unit))
    return fail (walk, TB_STORE_ERROR_SYNTAX, _ ("a character that does not exist is written"));
  return TRUE;
}

static gboolean
check_escape (Walk *walk)
{
  if (take (walk, 'u'))
    return check_unicode_escape (walk);
  if (walk->at >= walk->end || !strchr ("\"\\/bfnrt", *walk->at))
    return fail_expected (walk, _ ("one of \" \\ / b f n r t u"));
  walk->at++;
  return TRUE;
}

/* After the opening quotation mark. */
static gboolean
check_string (Walk *walk)
{
  while (walk->at < walk->end && *walk->at != '"')
    {
      if ((guchar) *walk->at < ' ')
        return fail (walk, TB_STORE_ERROR_SYNTAX, _ ("a string is not closed on its line"));
      if (*walk->at++ == '\\' && !check_escape (walk))
        return FALSE;
    }
  return take (walk, '"') || fail_expected (walk, _ ("the end of a string (\")"));
}

static gboolean
check_key (Walk *walk, GHashTable *keys)
{
  const char *from = walk->at + 1;
  g_autofree char *key = NULL;

  if (!take (walk, '"'))
    return fail_expected (walk, _ ("a key in quotation marks"));
  if (!check_string (walk))
    return FALSE;
  key = g_strndup (from, (gsize) (walk->at - from - 1));
  if (g_hash_table_contains (keys, key))
    {
      g_autofree char *shown = tb_quotable (key);
      g_autofree char *sentence = g_strdup_printf (_ ("the key “%s” is given twice"), shown);

      return fail (walk, TB_STORE_ERROR_SYNTAX, sentence);
    }
  g_hash_table_add (keys, g_steal_pointer (&key));
  return TRUE;
}

static gboolean
check_member (Walk *walk, GHashTable *keys)
{
  skip_space (walk);
  if (!check_key (walk, keys))
    return FALSE;
  skip_space (walk);
  if (!take (walk, ':'))
    return fail_expected (walk, _ ("a colon after the key"));
  return check_value (walk);
}

/* After the opening brace. */
static gboolean
check_object (Walk *walk)
{
  g_autoptr (GHashTable) keys = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);

  skip_space (walk);
  if (take (walk, '}'))
    return TRUE;
  do
    if (!check_member (walk, keys))
      return FALSE;
  while (take (walk, ','));
  return take (walk, '}') || fail_expected (walk, _ ("a comma or }"));
}

/* After the opening bracket. */
static gboolean
check_array (Walk *walk)
{
  skip_space (walk);
  if (take (walk, ']'))
    return TRUE;
  do
    if (!check_value (walk))
      return FALSE;
  while (take (walk, ','));
  return take (walk, ']') || fail_expected (walk, _ ("a comma or ]"));
}

static gboolean
check_word (Walk *walk)
{
  static const char *const words[] = { "true", "false", "null" };

  for (gsize i = 0; i < G_N_ELEMENTS (words); i++)
    {
      gsize length = strlen (words[i]);

      if ((gsize) (walk->end - walk->at) >= length && memcmp (walk->at, words[i], length) == 0)
        {
          walk->at += length;
          return TRUE;
        }
    }
  return fail_expected (walk, _ ("a value"));
}

static gboolean
check_bare_value (Walk *walk)
{
  if (take (walk, '{'))
    return check_object (walk);
  if (take (walk, '['))
    return check_array (walk);
  if (take (walk, '"'))
    return check_string (walk);
  if (walk->at < walk->end && (*walk->at == '-' || g_ascii_isdigit (*walk->at)))
    return check_number (walk);
  return check_word (walk);
}

/* A value with the space on both sides of it. */
static gboolean
check_value (Walk *walk)
{
  if (++walk->values > TB_JSON_MAX_VALUES)
    return fail (walk, TB_STORE_ERROR_TOO_LARGE, _ ("there are more values than a document can have"));
  if (walk->depth >= TB_JSON_MAX_DEPTH)
    return fail (walk, TB_STORE_ERROR_TOO_LARGE, _ ("the brackets are nested too deeply"));
  skip_space (walk);
  walk->depth++;
  if (!check_bare_value (walk))
    return FALSE;
  walk->depth--;
  skip_space (walk);
  return TRUE;
}

static gboolean
check_text (const char *text, gsize length, GError **error)
{
  g_autofree char *size = g_format_size (TB_JSON_MAX_BYTES);

  if (length > TB_JSON_MAX_BYTES)
    g_set_error (error, TB_STORE_ERROR, TB_STORE_ERROR_TOO_LARGE, _ ("a document has at most %s"), size);
  else if (memchr (text, '\0', length) || !g_utf8_validate_len (text, length, NULL))
    g_set_error_literal (error, TB_STORE_ERROR, TB_STORE_ERROR_NOT_TEXT,
                         _ ("this is not a text file in UTF-8"));
  else
    return TRUE;
  return FALSE;
}

gboolean
tb_json_check (const char *text, gsize length, GError **error)
{
  Walk walk = { .start = text, .at = text, .end = text + length };

  if (!check_text (text, length, error))
    return FALSE;
  if (check_value (&walk) && walk.at < walk.end)
    fail_expected (&walk, _ ("the end of the file"));
  if (walk.error)
    g_propagate_error (error, walk.error);
  return walk.error == NULL;
}
