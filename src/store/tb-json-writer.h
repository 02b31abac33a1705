/* JSON as text: two spaces a level, lists of numbers on one line, numbers exact and short.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

typedef struct TbJsonWriter
{
  GString *text;
  guint depth;
  guint inline_depth; /* > 0: inside a list that stays on one line */
  gboolean first;     /* nothing stands yet in the innermost object or list */
} TbJsonWriter;

void tb_json_writer_init (TbJsonWriter *writer);
/* Ends the text with a line feed and hands it over. */
char *tb_json_writer_finish (TbJsonWriter *writer);

/* `key` is NULL inside a list and for the outermost value. */
void tb_json_begin_object (TbJsonWriter *writer, const char *key);
void tb_json_end_object (TbJsonWriter *writer);
void tb_json_begin_list (TbJsonWriter *writer, const char *key);
void tb_json_end_list (TbJsonWriter *writer);
/* A list on one line. */
void tb_json_begin_row (TbJsonWriter *writer, const char *key);
void tb_json_end_row (TbJsonWriter *writer);
/* NULL becomes null. */
void tb_json_string (TbJsonWriter *writer, const char *key, const char *string);
/* Anything that is not finite becomes null. */
void tb_json_number (TbJsonWriter *writer, const char *key, double number);
/* A number given in SI, written in a unit (see tb_decimal_format_si()). */
void tb_json_number_si (TbJsonWriter *writer,
                        const char *key,
                        double si,
                        double (*to_si) (double),
                        double (*from_si) (double));
void tb_json_true (TbJsonWriter *writer, const char *key);

G_END_DECLS
