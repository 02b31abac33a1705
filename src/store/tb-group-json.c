/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"
#include "tb-group-json.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "tb-decimal.h"

static gboolean
fail_value (TbReader *reader, const TbField *field, TbStatus status, double value)
{
  g_autofree char *sentence = tb_field_sentence (field, status, value);

  return tb_reader_fail (reader, field->name, TB_STORE_ERROR_VALUE, "%s", sentence);
}

static gboolean
fail_type (TbReader *reader, const TbField *field)
{
  g_autofree char *expected = tb_field_expected (field);

  return tb_reader_fail (reader, field->name, TB_STORE_ERROR_TYPE, _ ("%s was expected"), expected);
}

static gboolean
read_word (TbReader *reader, const char *word, const TbField *field, gpointer target)
{
  g_autofree char *expected = tb_field_expected (field);
  g_autofree char *shown = tb_quotable (word);

  if (field->kind == TB_FIELD_REAL && !field->words)
    return fail_type (reader, field);
  if (tb_field_set_word (field, target, word) == TB_OK)
    return TRUE;
  return tb_reader_fail (reader, field->name, TB_STORE_ERROR_VALUE, _ ("“%s” is not known; %s was expected"),
                         shown, expected);
}

static gboolean
read_node (TbReader *reader, JsonNode *node, const TbField *field, gpointer target)
{
  TbStatus status;
  double number;

  if (JSON_NODE_HOLDS_VALUE (node) && json_node_get_value_type (node) == G_TYPE_STRING)
    return read_word (reader, json_node_get_string (node), field, target);
  if (field->kind == TB_FIELD_CHOICE || !tb_node_number (node, &number))
    return fail_type (reader, field);
  status = tb_field_set (field, target, number);
  return status == TB_OK || fail_value (reader, field, status, number);
}

static gboolean
fail_missing (TbReader *reader, const TbField *field)
{
  g_autofree char *expected = tb_field_expected (field);

  return tb_reader_fail (reader, field->name, TB_STORE_ERROR_MISSING_KEY,
                         _ ("this key is missing; %s was expected"), expected);
}

gboolean
tb_field_read (TbReader *reader, JsonObject *object, const TbField *field, gpointer target)
{
  if (!json_object_has_member (object, field->name))
    return fail_missing (reader, field);
  return read_node (reader, json_object_get_member (object, field->name), field, target);
}

/* The order in which fields are set. */
typedef enum Turn
{
  TURN_CHOICES,
  TURN_ALIASES,
  TURN_NUMBERS,
  N_TURNS
} Turn;

static Turn
turn_of (const TbField *field)
{
  if (field->kind == TB_FIELD_CHOICE)
    return TURN_CHOICES;
  return field->alias_of ? TURN_ALIASES : TURN_NUMBERS;
}

static double *
number_of (const TbField *field, gpointer target)
{
  return (double *) ((char *) target + field->offset);
}

/* A number that no key has set yet, itself or by what follows from it, is marked by not being one. */
static void
mark_all_missing (TbGroup group, gpointer target)
{
  tb_field_reset_group (group, target);
  for (const TbField *field = tb_field_table; field->name; field++)
    if (field->group == group && field->kind == TB_FIELD_REAL && !field->optional)
      *number_of (field, target) = (double) NAN;
}

static gboolean
is_missing (const TbField *field, JsonObject *object, gpointer target)
{
  if (field->kind == TB_FIELD_CHOICE)
    return !json_object_has_member (object, field->name);
  return !field->alias_of && isnan (*number_of (field, target));
}

static gboolean
check_complete (TbReader *reader, JsonObject *object, TbGroup group, gpointer target)
{
  for (const TbField *field = tb_field_table; field->name; field++)
    if (field->group == group && is_missing (field, object, target))
      return fail_missing (reader, field);
  return TRUE;
}

static gboolean
read_turn (TbReader *reader, JsonObject *object, TbGroup group, Turn turn, gpointer target)
{
  for (const TbField *field = tb_field_table; field->name; field++)
    {
      if (field->group != group || turn_of (field) != turn || !json_object_has_member (object, field->name))
        continue;
      if (!tb_field_read (reader, object, field, target))
        return FALSE;
    }
  return TRUE;
}

static gboolean
check_known (TbReader *reader, JsonObject *object, TbGroup group, const char *const *more)
{
  g_autoptr (GPtrArray) names = g_ptr_array_new ();

  for (const TbField *field = tb_field_table; field->name; field++)
    if (field->group == group)
      g_ptr_array_add (names, (gpointer) field->name);
  g_ptr_array_add (names, NULL);
  return tb_reader_only (reader, object, (const char *const *) names->pdata, more);
}

gboolean
tb_group_read (TbReader *reader, JsonObject *object, TbGroup group, gpointer target, const char *const *more)
{
  if (!check_known (reader, object, group, more))
    return FALSE;
  mark_all_missing (group, target);
  for (Turn turn = 0; turn < N_TURNS; turn++)
    if (!read_turn (reader, object, group, turn, target))
      return FALSE;
  return check_complete (reader, object, group, target);
}

/* A field that is another way of setting this one; NULL if there is none. */
static const TbField *
find_alias (const TbField *of)
{
  for (const TbField *field = tb_field_table; field->name; field++)
    if (field->group == of->group && g_strcmp0 (field->alias_of, of->name) == 0)
      return field;
  return NULL;
}

/* Not every number in SI is one of the field's unit. What was set by another name (a grit) may only be one of
 * that name's unit, and then that is what is written, so that what is read back is the same to the last bit.
 */
static void
write_real (TbJsonWriter *writer, const TbField *field, double si)
{
  const TbField *alias = find_alias (field);
  char number[TB_DECIMAL_SIZE];

  if (alias && !tb_decimal_format_si (si, field->to_si, field->from_si, number)
      && tb_decimal_format_si (si, alias->to_si, alias->from_si, number))
    field = alias;
  tb_json_number_si (writer, field->name, si, field->to_si, field->from_si);
}

void
tb_field_write (TbJsonWriter *writer, const TbField *field, gconstpointer source)
{
  if (field->kind == TB_FIELD_CHOICE)
    tb_json_string (writer, field->name, tb_field_word (field, source));
  else
    write_real (writer, field, *(const double *) ((const char *) source + field->offset));
}

static gboolean
is_left_out (const TbField *field, gconstpointer source)
{
  return field->optional && tb_field_get (field, source) == field->standard;
}

void
tb_group_write (TbJsonWriter *writer, TbGroup group, gconstpointer source)
{
  for (const TbField *field = tb_field_table; field->name; field++)
    if (field->group == group && !field->alias_of && !is_left_out (field, source))
      tb_field_write (writer, field, source);
}
