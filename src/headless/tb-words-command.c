/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"
#include "tb-words-command.h"

#include <glib/gi18n-lib.h>

#include "tb-glossary.h"
#include "tb-json-writer.h"
#include "tb-output.h"
#include "tb-say.h"

static void
write_names (TbJsonWriter *writer, const char *key, const char *const *names)
{
  tb_json_begin_list (writer, key);
  for (; *names; names++)
    tb_json_string (writer, NULL, *names);
  tb_json_end_list (writer);
}

static void
write_term (TbJsonWriter *writer, const TbTerm *term)
{
  tb_json_begin_object (writer, NULL);
  tb_json_string (writer, "id", term->id);
  tb_json_string (writer, "word", _ (term->word));
  tb_json_string (writer, "text", _ (term->text));
  write_names (writer, "see", term->see);
  write_names (writer, "explains", term->names);
  tb_json_end_object (writer);
}

gboolean
tb_words_command (TbRequest *request, const char *argument, GError **error)
{
  g_autoptr (GPtrArray) terms = tb_glossary_sorted ();
  g_autofree char *text = NULL;
  TbJsonWriter writer;

  tb_json_writer_init (&writer);
  tb_json_begin_object (&writer, NULL);
  tb_json_begin_list (&writer, "words");
  for (guint i = 0; i < terms->len; i++)
    write_term (&writer, terms->pdata[i]);
  tb_json_end_list (&writer);
  tb_json_end_object (&writer);
  text = tb_json_writer_finish (&writer);
  return tb_output_write (text, error);
}

gboolean
tb_say_command (TbRequest *request, const char *argument, GError **error)
{
  TbRun *runs[TB_N_SIDES] = { NULL };
  gboolean done = FALSE;

  if (tb_request_throw (request, runs, error))
    {
      g_autofree char *before = tb_say_run (runs[TB_SIDE_BEFORE], FALSE);
      g_autofree char *after = tb_say_run (runs[TB_SIDE_AFTER], FALSE);
      g_autofree char *difference = tb_say_difference (runs[TB_SIDE_BEFORE], runs[TB_SIDE_AFTER], FALSE);
      g_autofree char *paragraph = tb_say_together (before, after, difference);
      g_autofree char *text = g_strconcat (paragraph, "\n", NULL);

      done = tb_output_write (text, error);
    }
  for (int side = 0; side < TB_N_SIDES; side++)
    g_clear_pointer (&runs[side], tb_run_unref);
  return done;
}
