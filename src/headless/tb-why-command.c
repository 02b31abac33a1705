/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"
#include "tb-study-commands.h"

#include "tb-json-writer.h"
#include "tb-output.h"
#include "tb-why.h"

static void
write_sentences (TbJsonWriter *writer, const char *key, GStrv sentences)
{
  tb_json_begin_list (writer, key);
  for (char **sentence = sentences; *sentence; sentence++)
    tb_json_string (writer, NULL, *sentence);
  tb_json_end_list (writer);
}

static void
write_inputs (TbJsonWriter *writer, const TbWhy *why, TbWhyMeasure split)
{
  gboolean there = why->difference[split] == why->difference[split];

  tb_json_begin_object (writer, "by_input");
  for (guint i = 0; there && i < why->n_inputs; i++)
    tb_json_number (writer, tb_change_name (&why->input[i].change), why->input[i].part[split]);
  tb_json_end_object (writer);
  if (why->orders == 0)
    return;
  tb_json_begin_object (writer, "by_input_error");
  for (guint i = 0; there && i < why->n_inputs; i++)
    tb_json_number (writer, tb_change_name (&why->input[i].change), why->input[i].error[split]);
  tb_json_end_object (writer);
}

/* The launch line has no beginning and no end. */
static void
write_stretches (TbJsonWriter *writer, const TbWhy *why, TbWhyMeasure split)
{
  static const char *const thirds[] = { "front", "middle", "back" };

  tb_json_begin_list (writer, "by_stretch");
  tb_json_begin_object (writer, NULL);
  tb_json_string (writer, "name", "launch-line");
  tb_json_string (writer, "from_ft", NULL);
  tb_json_string (writer, "to_ft", NULL);
  tb_json_number (writer, "part", why->launch_part[split]);
  tb_json_end_object (writer);
  for (guint i = 0; i < why->n_stretches; i++)
    {
      tb_json_begin_object (writer, NULL);
      if (why->n_stretches == G_N_ELEMENTS (thirds))
        tb_json_string (writer, "name", thirds[i]);
      tb_json_number (writer, "from_ft", why->stretch[i].from_ft);
      tb_json_number (writer, "to_ft", why->stretch[i].to_ft);
      tb_json_number (writer, "part", why->stretch[i].part[split]);
      tb_json_end_object (writer);
    }
  tb_json_end_list (writer);
}

static void
write_split (TbJsonWriter *writer, const TbWhy *why, TbWhyMeasure split)
{
  g_auto (GStrv) sentences = tb_why_sentences (why, split, FALSE);

  tb_json_begin_object (writer, tb_why_measure_name (split));
  tb_json_number (writer, "before", why->value[TB_SIDE_BEFORE][split]);
  tb_json_number (writer, "after", why->value[TB_SIDE_AFTER][split]);
  tb_json_number (writer, "difference", why->difference[split]);
  write_inputs (writer, why, split);
  if (split != TB_WHY_BREAKPOINT)
    write_stretches (writer, why, split);
  write_sentences (writer, "sentences", sentences);
  tb_json_end_object (writer);
}

static char *
why_json (const TbWhy *why)
{
  TbJsonWriter writer;
  g_auto (GStrv) sentences = tb_why_all_sentences (why, FALSE);

  tb_json_writer_init (&writer);
  tb_json_begin_object (&writer, NULL);
  for (int split = 0; split < TB_WHY_N_SPLITS; split++)
    write_split (&writer, why, split);
  tb_json_begin_object (&writer, "gutter_ft");
  tb_json_number (&writer, "before", why->gutter_ft[TB_SIDE_BEFORE]);
  tb_json_number (&writer, "after", why->gutter_ft[TB_SIDE_AFTER]);
  tb_json_end_object (&writer);
  write_sentences (&writer, "sentences", sentences);
  tb_json_end_object (&writer);
  return tb_json_writer_finish (&writer);
}

static char *
why_text (const TbWhy *why)
{
  g_auto (GStrv) sentences = tb_why_all_sentences (why, FALSE);
  g_autofree char *text = g_strjoinv ("\n", sentences);

  return g_strconcat (text, "\n", NULL);
}

gboolean
tb_why_command (TbRequest *request, const char *argument, GError **error)
{
  TbRun *runs[TB_N_SIDES] = { NULL };
  gboolean done = FALSE;

  if (tb_request_throw (request, runs, error))
    {
      const TbWhyOptions options = { .stretch_ft = request->stretch_ft };
      g_autoptr (TbWhy) why
          = tb_why_new (runs[TB_SIDE_BEFORE]->setup, runs[TB_SIDE_AFTER]->setup, &options, NULL);
      g_autofree char *text = request->plain_text ? why_text (why) : why_json (why);

      done = tb_output_write (text, error);
    }
  for (int side = 0; side < TB_N_SIDES; side++)
    g_clear_pointer (&runs[side], tb_run_unref);
  return done;
}
