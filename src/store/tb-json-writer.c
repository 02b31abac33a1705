/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "tb-json-writer.h"

#include <math.h>

#include "tb-decimal.h"

void
tb_json_writer_init (TbJsonWriter *writer)
{
  *writer = (TbJsonWriter){ .text = g_string_new (NULL), .first = TRUE };
}

char *
tb_json_writer_finish (TbJsonWriter *writer)
{
  g_string_append_c (writer->text, '\n');
  return g_string_free (g_steal_pointer (&writer->text), FALSE);
}

static void
append_quoted (GString *text, const char *string)
{
  g_string_append_c (text, '"');
  for (const char *p = string; *p; p++)
    if (*p == '"' || *p == '\\')
      g_string_append_printf (text, "\\%c", *p);
    else if (*p == '\n')
      g_string_append (text, "\\n");
    else if ((guchar) *p < ' ')
      g_string_append_printf (text, "\\u%04x", (guint) *p);
    else
      g_string_append_c (text, *p);
  g_string_append_c (text, '"');
}

static void
new_line (TbJsonWriter *writer)
{
  if (writer->inline_depth > 0)
    return;
  g_string_append_c (writer->text, '\n');
  for (guint i = 0; i < writer->depth; i++)
    g_string_append (writer->text, "  ");
}

/* What stands before a value: comma, new line, key. */
static void
begin_value (TbJsonWriter *writer, const char *key)
{
  if (!writer->first)
    g_string_append (writer->text, writer->inline_depth > 0 ? ", " : ",");
  if (writer->depth > 0)
    new_line (writer);
  writer->first = FALSE;
  if (!key)
    return;
  append_quoted (writer->text, key);
  g_string_append (writer->text, ": ");
}

static void
open_bracket (TbJsonWriter *writer, const char *key, char bracket)
{
  begin_value (writer, key);
  g_string_append_c (writer->text, bracket);
  writer->depth++;
  writer->first = TRUE;
}

static void
close_bracket (TbJsonWriter *writer, char bracket)
{
  writer->depth--;
  if (!writer->first)
    new_line (writer);
  g_string_append_c (writer->text, bracket);
  writer->first = FALSE;
}

void
tb_json_begin_object (TbJsonWriter *writer, const char *key)
{
  open_bracket (writer, key, '{');
}

void
tb_json_end_object (TbJsonWriter *writer)
{
  close_bracket (writer, '}');
}

void
tb_json_begin_list (TbJsonWriter *writer, const char *key)
{
  open_bracket (writer, key, '[');
}

void
tb_json_end_list (TbJsonWriter *writer)
{
  close_bracket (writer, ']');
}

void
tb_json_begin_row (TbJsonWriter *writer, const char *key)
{
  open_bracket (writer, key, '[');
  writer->inline_depth++;
}

void
tb_json_end_row (TbJsonWriter *writer)
{
  close_bracket (writer, ']');
  writer->inline_depth--;
}

void
tb_json_string (TbJsonWriter *writer, const char *key, const char *string)
{
  begin_value (writer, key);
  if (string)
    append_quoted (writer->text, string);
  else
    g_string_append (writer->text, "null");
}

void
tb_json_number (TbJsonWriter *writer, const char *key, double number)
{
  char buffer[TB_DECIMAL_SIZE];

  begin_value (writer, key);
  g_string_append (writer->text, isfinite (number) ? tb_decimal_format (number, buffer) : "null");
}

void
tb_json_number_si (TbJsonWriter *writer,
                   const char *key,
                   double si,
                   double (*to_si) (double),
                   double (*from_si) (double))
{
  char buffer[TB_DECIMAL_SIZE];

  tb_decimal_format_si (si, to_si, from_si, buffer);
  begin_value (writer, key);
  g_string_append (writer->text, buffer);
}

void
tb_json_true (TbJsonWriter *writer, const char *key)
{
  begin_value (writer, key);
  g_string_append (writer->text, "true");
}
