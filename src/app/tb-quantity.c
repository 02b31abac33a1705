/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "tb-quantity.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#include "tb-unit-pair.h"

TbQuantity
tb_quantity_for_field (const TbField *field, TbUnits units)
{
  TbQuantity self = { .field = field, .unit = field->unit, .factor = 1.0, .digits = field->digits };
  const TbUnitPair *pair = units == TB_UNITS_METRIC ? tb_unit_pair (field->unit) : NULL;

  if (pair != NULL)
    {
      self.unit = pair->metric;
      self.factor = pair->factor;
      self.digits = MAX (0, field->digits - pair->fewer_digits);
    }
  return self;
}

/* "-" of C to the sign that is as wide as "+". */
static char *
with_minus (const char *text)
{
  return text[0] == '-' ? g_strconcat ("−", text + 1, NULL) : g_strdup (text);
}

/* Drops the sign of a number that shows as nothing. */
static double
no_negative_zero (double number, int digits)
{
  return fabs (number) < 0.5 * pow (10.0, -digits) ? 0.0 : number;
}

char *
tb_number_format (double number, int digits)
{
  g_autofree char *text = g_strdup_printf ("%.*f", digits, no_negative_zero (number, digits));

  return with_minus (text);
}

char *
tb_number_format_signed (double number, int digits)
{
  double shown = no_negative_zero (number, digits);
  g_autofree char *text = g_strdup_printf (shown > 0 ? "+%.*f" : "%.*f", digits, shown);

  return with_minus (text);
}

static gboolean
stands_close (const char *unit)
{
  return strcmp (unit, "°") == 0 || strcmp (unit, "%") == 0;
}

/* A place across the lane is a board that has a number, not a number of boards. */
static gboolean
is_board (const char *unit)
{
  return strcmp (unit, "board") == 0;
}

char *
tb_number_with_unit (double number, int digits, const char *unit)
{
  g_autofree char *text = tb_number_format (number, digits);

  if (is_board (unit))
    /* Translators: a place across the lane, such as "board 24.0". */
    return g_strdup_printf (_ ("board %s"), text);
  if (unit[0] == '\0')
    return g_steal_pointer (&text);
  return g_strconcat (text, stands_close (unit) ? "" : " ", _ (unit), NULL);
}

/* A value that has been to SI units and back is the same but for rounding. */
#define SAME_VALUE 1e-6

static const TbWord *
word_for (const TbField *field, double value)
{
  for (const TbWord *word = field->words; word != NULL && word->name != NULL; word++)
    if (fabs (word->value - value) < SAME_VALUE)
      return word;
  return NULL;
}

char *
tb_quantity_format (const TbQuantity *self, double value)
{
  const TbWord *word = word_for (self->field, value);

  if (word != NULL)
    return g_strdup (_ (word->label));
  return tb_number_with_unit (value * self->factor, self->digits, self->unit);
}

/* A group of thousands. */
#define GROUP 3

/* Whether the last mark of a number, at `mark`, is one between thousands. */
static gboolean
parts_thousands (const char *mark, int digits)
{
  return digits == 0 && strspn (mark + 1, "0123456789") == GROUP;
}

/* The text with a decimal point, if any, and a plain minus, spaces at both ends gone. */
static char *
plain_number_text (const char *text, int digits)
{
  g_autoptr (GString) plain = g_string_new (text);
  gssize last;

  g_string_replace (plain, "−", "-", 0);
  g_strstrip (plain->str);
  plain->len = strlen (plain->str);
  /* Behind the number a mark is text. */
  last = (gssize) strspn (plain->str, "+-0123456789.,") - 1;
  while (last >= 0 && plain->str[last] != '.' && plain->str[last] != ',')
    last--;
  if (last < 0)
    return g_string_free (g_steal_pointer (&plain), FALSE);
  if (parts_thousands (plain->str + last, digits))
    g_string_erase (plain, last--, 1);
  else
    plain->str[last--] = '.';
  for (; last >= 0; last--)
    if (plain->str[last] == '.' || plain->str[last] == ',')
      g_string_erase (plain, last, 1);
  return g_string_free (g_steal_pointer (&plain), FALSE);
}

gboolean
tb_number_parse (const char *text, int digits, double *number, char **rest)
{
  g_autofree char *plain = plain_number_text (text, digits);
  char *end = NULL;
  double read = g_ascii_strtod (plain, &end);

  if (end == plain || !isfinite (read))
    return FALSE;
  *number = read;
  *rest = g_strstrip (g_strdup (end));
  return TRUE;
}

static gboolean
is_unit (const char *text, const char *unit)
{
  return g_ascii_strcasecmp (text, unit) == 0 || g_utf8_collate (text, _ (unit)) == 0;
}

/* What a number with this unit behind it is to be divided by to come to the field's unit; 0 for a unit that
 * does not belong here. */
static double
unit_factor (const TbQuantity *self, const char *unit)
{
  const TbUnitPair *pair = tb_unit_pair (self->field->unit);

  if (unit[0] == '\0' || is_unit (unit, self->unit))
    return self->factor;
  if (is_unit (unit, self->field->unit))
    return 1.0;
  if (pair != NULL && is_unit (unit, pair->metric))
    return pair->factor;
  return 0.0;
}

gboolean
tb_quantity_from_shown (const TbQuantity *self, double shown, double *value)
{
  const TbField *field = self->field;
  double number = shown / self->factor;
  double half_digit = 0.5 * pow (10.0, -self->digits) / self->factor;

  /* The end of the range, shown rounded, may lie just outside of it. */
  if (number < field->min && number >= field->min - half_digit)
    number = field->min;
  if (number > field->max && number <= field->max + half_digit)
    number = field->max;
  if (tb_field_check (field, number) != TB_OK)
    return FALSE;
  *value = number;
  return TRUE;
}

static gboolean
parse_word (const TbField *field, const char *text, double *value)
{
  for (const TbWord *word = field->words; word != NULL && word->name != NULL; word++)
    if (g_ascii_strcasecmp (text, word->name) == 0 || g_utf8_collate (text, _ (word->label)) == 0)
      {
        *value = word->value;
        return TRUE;
      }
  return FALSE;
}

static char *
range_sentence (const TbQuantity *self)
{
  g_autofree char *low = is_board (self->unit)
                             ? tb_quantity_format (self, self->field->min)
                             : tb_number_format (self->field->min * self->factor, self->digits);
  g_autofree char *high = tb_quantity_format (self, self->field->max);

  /* Translators: the name of an input, and the lowest and highest it goes to: "Speed goes from 5.0 to 30.0
   * mph." */
  return g_strdup_printf (_ ("%s goes from %s to %s."), _ (self->field->label), low, high);
}

static char *
example_sentence (const TbQuantity *self, const char *text)
{
  g_autofree char *example = tb_quantity_format (self, self->field->standard);

  /* Translators: what was typed, and an example of what is expected. */
  return g_strdup_printf (_ ("“%s” is not understood; type a number like %s."), text, example);
}

static const char *
without_prefix (const char *text, const char *prefix)
{
  g_autofree char *folded = g_utf8_casefold (text, -1), *start = g_utf8_casefold (prefix, -1);

  return g_str_has_prefix (folded, start) ? g_utf8_offset_to_pointer (text, g_utf8_strlen (prefix, -1))
                                          : text;
}

/* What follows the word for a board, as it stands before its number. */
static const char *
without_board (const char *text)
{
  g_auto (GStrv) around = g_strsplit (_ ("board %s"), "%s", 2);
  const char *rest = without_prefix (text, g_strchomp (around[0]));

  return rest != text ? rest : without_prefix (text, "board");
}

char *
tb_quantity_parse (const TbQuantity *self, const char *text, double *value)
{
  g_autofree char *word = g_strstrip (g_strdup (text)), *unit = NULL;
  double number, factor;

  if (parse_word (self->field, word, value))
    return NULL;
  if (!tb_number_parse (is_board (self->unit) ? without_board (word) : text, self->digits, &number, &unit))
    return example_sentence (self, text);
  factor = unit_factor (self, unit);
  if (factor == 0.0)
    return example_sentence (self, text);
  if (!tb_quantity_from_shown (self, number * self->factor / factor, value))
    return range_sentence (self);
  return NULL;
}
