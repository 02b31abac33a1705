/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"
#include "tb-study-commands.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "tb-fill.h"
#include "tb-json-writer.h"
#include "tb-next-balls.h"
#include "tb-output.h"

static const char *
translated (const char *text)
{
  return text ? _ (text) : NULL;
}

static void
write_owned (TbJsonWriter *writer, const char *key, char *text)
{
  tb_json_string (writer, key, text);
  g_free (text);
}

static void
write_changes (TbJsonWriter *writer, const TbNextOption *option)
{
  tb_json_begin_object (writer, "change");
  for (guint i = 0; i < option->n_changes; i++)
    {
      const TbNextChange *change = &option->change[i];
      g_autofree char *key
          = g_strdup_printf ("%s.%s", tb_group_name (change->field->group), change->field->name);

      tb_json_begin_row (writer, key);
      tb_json_number (writer, NULL, change->from);
      tb_json_number (writer, NULL, change->to);
      tb_json_end_row (writer);
    }
  tb_json_end_object (writer);
}

/* "board_at_pins": [before, after], and so on. */
static void
write_effects (TbJsonWriter *writer, const TbNext *next, const TbNextOption *option)
{
  static const char *const measures[] = { "board_at_pins", "angle_at_pins_deg", "breakpoint_board",
                                          "breakpoint_ft", "roll_start_ft",     "speed_at_pins_mph" };

  tb_json_begin_object (writer, "effects");
  for (gsize i = 0; i < G_N_ELEMENTS (measures); i++)
    {
      const TbMeasureInfo *info = tb_measure_find (measures[i]);

      tb_json_begin_row (writer, info->name);
      tb_json_number (writer, NULL, tb_measure_value (info, &next->start_measures));
      tb_json_number (writer, NULL, tb_measure_value (info, &option->run->path.measures));
      tb_json_end_row (writer);
    }
  tb_json_number (writer, "room_out_boards", option->room_out);
  tb_json_number (writer, "room_in_boards", option->room_in);
  tb_json_end_object (writer);
}

static void
write_cost (TbJsonWriter *writer, const TbNextOption *option)
{
  const TbKnob *knob = option->knob;

  tb_json_number (writer, "effort", option->effort);
  tb_json_string (writer, "effort_word", translated (tb_effort_word (option->effort)));
  tb_json_string (writer, "time", translated (knob->cost->time));
  tb_json_begin_object (writer, "rules");
  for (int occasion = 0; occasion < TB_N_OCCASIONS; occasion++)
    tb_json_string (writer, tb_occasion_name (occasion), tb_rule_name (knob->cost->rule[occasion]));
  tb_json_string (writer, "note", translated (knob->cost->rules));
  tb_json_end_object (writer);
  tb_json_string (writer, "caution", translated (knob->caution));
}

static void
write_curve (TbJsonWriter *writer, const TbNextOption *option)
{
  tb_json_string (writer, "curve_over", option->curve_field ? option->curve_field->name : NULL);
  tb_json_begin_list (writer, "curve");
  for (guint i = 0; i < option->n_points; i++)
    {
      const TbNextPoint *point = &option->point[i];

      tb_json_begin_object (writer, NULL);
      tb_json_number (writer, "at", point->at);
      tb_json_number (writer, "wished", point->wished);
      tb_json_number (writer, "board_at_pins", point->board);
      tb_json_number (writer, "angle_at_pins_deg", point->angle_deg);
      tb_json_number (writer, "breakpoint_ft", point->breakpoint_ft);
      tb_json_number (writer, "roll_start_ft", point->roll_ft);
      tb_json_end_object (writer);
    }
  tb_json_end_list (writer);
  tb_json_begin_row (writer, "turning_point");
  if (option->turns)
    {
      tb_json_number (writer, NULL, option->turns_at);
      tb_json_number (writer, NULL, option->turns_wished);
    }
  tb_json_end_row (writer);
}

static void
write_option (TbJsonWriter *writer, const TbNext *next, const TbNextOption *option)
{
  tb_json_begin_object (writer, NULL);
  tb_json_string (writer, "knob", option->knob->name);
  tb_json_string (writer, "title", option->title);
  tb_json_string (writer, "group", tb_knob_group_name (option->knob->group));
  tb_json_string (writer, "reach", tb_reach_name (option->reach));
  tb_json_number (writer, "wished", option->wished);
  write_changes (writer, option);
  write_owned (writer, "text", tb_next_change_text (option, FALSE));
  write_effects (writer, next, option);
  write_owned (writer, "effects_text", tb_next_effect_text (next, option, FALSE));
  write_owned (writer, "reach_text", tb_next_reach_text (next, option, FALSE));
  write_owned (writer, "curve_text", tb_next_curve_text (next, option, FALSE));
  write_cost (writer, option);
  write_curve (writer, option);
  tb_json_end_object (writer);
}

static char *
next_json (const TbNext *next)
{
  g_autofree char *turn = tb_next_turn_text (next, FALSE);
  TbJsonWriter writer;

  tb_json_writer_init (&writer);
  tb_json_begin_object (&writer, NULL);
  tb_json_string (&writer, "wish", tb_wish_info (next->wish.kind)->name);
  tb_json_string (&writer, "line", tb_wish_reaims (&next->wish) ? "pocket" : "same");
  tb_json_number (&writer, "now", next->now);
  tb_json_number (&writer, "target", next->target);
  tb_json_begin_list (&writer, "options");
  for (guint i = 0; i < next->options->len; i++)
    write_option (&writer, next, g_ptr_array_index (next->options, i));
  tb_json_end_list (&writer);
  tb_json_begin_list (&writer, "sentences");
  write_owned (&writer, NULL, tb_next_wish_text (next, FALSE));
  if (next->met)
    tb_json_string (&writer, NULL, _ ("That is so already."));
  if (turn)
    tb_json_string (&writer, NULL, turn);
  tb_json_string (&writer, NULL, translated (tb_effort_help ()));
  tb_json_end_list (&writer);
  tb_json_end_object (&writer);
  return tb_json_writer_finish (&writer);
}

static void
add_line (GString *text, const char *indent, char *line)
{
  if (line && *line)
    g_string_append_printf (text, "%s%s\n", indent, line);
  g_free (line);
}

/* "Practice: allowed; between games: …" */
static char *
rules_text (const TbKnobCost *cost)
{
  g_autoptr (GStrvBuilder) builder = g_strv_builder_new ();
  g_auto (GStrv) rules = NULL;

  for (int occasion = 0; occasion < TB_N_OCCASIONS; occasion++)
    {
      g_autofree char *rule = tb_fill_with (_ ("%1$s: %2$s"), translated (tb_occasion_label (occasion)),
                                            translated (tb_rule_label (cost->rule[occasion])), NULL);

      g_strv_builder_add (builder, rule);
    }
  rules = g_strv_builder_end (builder);
  return g_strjoinv (_ ("; "), rules);
}

static void
add_option (GString *text, const TbNext *next, const TbNextOption *option)
{
  g_string_append_printf (text, "  %s (%s, %.1f)\n", option->title,
                          translated (tb_effort_word (option->effort)), option->effort);
  add_line (text, "    ", tb_next_change_text (option, FALSE));
  add_line (text, "    ", tb_next_reach_text (next, option, FALSE));
  add_line (text, "    ", tb_next_effect_text (next, option, FALSE));
  add_line (text, "    ", tb_next_curve_text (next, option, FALSE));
  add_line (text, "    ", g_strdup (translated (option->knob->cost->time)));
  add_line (text, "    ", rules_text (option->knob->cost));
  add_line (text, "    ", g_strdup (translated (option->knob->cost->rules)));
  add_line (text, "    ", g_strdup (translated (option->knob->caution)));
}

static char *
smallest_text (const TbNext *next)
{
  const TbNextOption *smallest = tb_next_smallest (next);
  g_autofree char *change = smallest ? tb_next_change_text (smallest, FALSE) : NULL;

  return change ? tb_fill_with (_ ("The smallest change: %1$s"), change, NULL) : NULL;
}

static char *
next_text (const TbNext *next)
{
  GString *text = g_string_new (NULL);
  int group = -1;

  add_line (text, "", tb_next_wish_text (next, FALSE));
  if (next->met)
    add_line (text, "", g_strdup (_ ("That is so already.")));
  add_line (text, "", tb_next_turn_text (next, FALSE));
  add_line (text, "", smallest_text (next));
  for (guint i = 0; i < next->options->len; i++)
    {
      const TbNextOption *option = g_ptr_array_index (next->options, i);

      if (group != (int) option->knob->group)
        g_string_append_printf (text, "%s\n", translated (tb_knob_group_label (option->knob->group)));
      group = (int) option->knob->group;
      add_option (text, next, option);
    }
  add_line (text, "", g_strdup (translated (tb_effort_help ())));
  return g_string_free (text, FALSE);
}

gboolean
tb_next_command (TbRequest *request, const char *argument, GError **error)
{
  TbRun *runs[TB_N_SIDES] = { NULL };
  g_autofree char *problem = NULL;
  TbWish wish;
  gboolean done = FALSE;

  if (!tb_wish_parse (argument, &wish, &problem))
    {
      g_set_error_literal (error, TB_HEADLESS_ERROR, TB_EXIT_USAGE, problem);
      return FALSE;
    }
  if (request->line != TB_LINE_AS_USUAL)
    wish.reaim = request->line == TB_LINE_POCKET;
  if (tb_request_throw (request, runs, error))
    {
      TbSetup *setup = runs[TB_SIDE_AFTER]->setup;
      g_autoptr (GArray) balls = tb_next_balls (request->library, setup);
      TbNextQuestion question = { .start = setup,
                                  .wish = &wish,
                                  .balls = (const TbNextBall *) (gconstpointer) balls->data,
                                  .n_balls = balls->len };
      g_autoptr (TbNext) next = tb_next_find (&question, NULL);
      g_autofree char *text = request->plain_text ? next_text (next) : next_json (next);

      done = tb_output_write (text, error);
    }
  for (int side = 0; side < TB_N_SIDES; side++)
    g_clear_pointer (&runs[side], tb_run_unref);
  return done;
}
