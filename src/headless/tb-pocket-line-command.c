/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"
#include "tb-study-commands.h"

#include <glib/gi18n-lib.h>

#include "tb-fill.h"
#include "tb-json-writer.h"
#include "tb-output.h"
#include "tb-pocket-line.h"

typedef TbPocketLines AllLines[TB_N_SIDES][TB_POCKET_N_HOLDS];

static void
write_answer (TbJsonWriter *writer, const TbPocketAnswer *answer)
{
  static const char *const measures[]
      = { "board_at_arrows", "board_at_pins", "angle_at_pins_deg", "breakpoint_board",
          "breakpoint_ft",   "roll_start_ft", "speed_at_pins_mph" };

  tb_json_begin_object (writer, NULL);
  tb_json_number (writer, "laydown_board", tb_board_from_x (answer->delivery.laydown));
  tb_json_number (writer, "aim_board", tb_board_from_x (answer->delivery.aim));
  tb_json_number (writer, "launch_angle_deg",
                  tb_deg_from_radians (tb_delivery_launch_heading (&answer->delivery)));
  for (gsize i = 0; i < G_N_ELEMENTS (measures); i++)
    tb_json_number (writer, measures[i], tb_measure_value (tb_measure_find (measures[i]), &answer->measures));
  tb_json_number (writer, "room_out_boards", answer->room_out);
  tb_json_number (writer, "room_in_boards", answer->room_in);
  tb_json_end_object (writer);
}

static void
write_lines (TbJsonWriter *writer, const char *key, const TbPocketLines *lines)
{
  tb_json_begin_list (writer, key);
  for (guint i = 0; i < lines->count; i++)
    write_answer (writer, &lines->answer[i]);
  tb_json_end_list (writer);
}

static char *
lines_json (TbRun *const runs[TB_N_SIDES], AllLines all)
{
  static const char *const sides[TB_N_SIDES] = { "before", "after" };
  static const char *const holds[TB_POCKET_N_HOLDS] = { "laydown_held", "aim_held", "breakpoint_held" };
  TbJsonWriter writer;

  tb_json_writer_init (&writer);
  tb_json_begin_object (&writer, NULL);
  for (int side = 0; side < TB_N_SIDES; side++)
    {
      const TbAssumed *assumed = &runs[side]->setup->shot.assumed;

      tb_json_begin_object (&writer, sides[side]);
      tb_json_begin_row (&writer, "pocket");
      tb_json_number (&writer, NULL, tb_board_from_x (assumed->pocket_low));
      tb_json_number (&writer, NULL, tb_board_from_x (assumed->pocket_high));
      tb_json_end_row (&writer);
      for (int hold = 0; hold < TB_POCKET_N_HOLDS; hold++)
        write_lines (&writer, holds[hold], &all[side][hold]);
      tb_json_end_object (&writer);
    }
  tb_json_end_object (&writer);
  return tb_json_writer_finish (&writer);
}

static char *
answer_text (const TbPocketAnswer *answer)
{
  g_autofree char *laydown = tb_number_text (tb_board_from_x (answer->delivery.laydown), 1);
  g_autofree char *aim = tb_number_text (tb_board_from_x (answer->delivery.aim), 1);
  g_autofree char *angle = tb_number_text (tb_deg_from_radians (answer->measures.angle_at_pins), 1);
  g_autofree char *board = tb_number_text (tb_board_from_x (answer->measures.breakpoint_x), 1);
  g_autofree char *feet = tb_number_text (tb_ft_from_metres (answer->measures.breakpoint_y), 1);
  g_autofree char *out = tb_number_text (answer->room_out, 1), *in = tb_number_text (answer->room_in, 1);

  return tb_fill_with (_ ("laid down at board %1$s, aimed at %2$s: meets the pins at %3$s°, turns back on "
                          "board %4$s at %5$s ft, "
                          "room at the arrows %6$s boards outside and %7$s inside"),
                       laydown, aim, angle, board, feet, out, in, NULL);
}

static char *
lines_text (AllLines all)
{
  const char *const sides[TB_N_SIDES] = { _ ("Before"), _ ("After") };
  GString *text = g_string_new (NULL);

  for (int side = 0; side < TB_N_SIDES; side++)
    for (int hold = 0; hold < TB_POCKET_N_HOLDS; hold++)
      {
        const TbPocketLines *lines = &all[side][hold];

        g_string_append_printf (text, "%s, %s\n", sides[side], _ (tb_pocket_hold_label (hold)));
        if (lines->count == 0)
          g_string_append_printf (text, "  %s\n", _ ("No line leads to the pocket."));
        for (guint i = 0; i < lines->count; i++)
          {
            g_autofree char *answer = answer_text (&lines->answer[i]);

            g_string_append_printf (text, "  %s\n", answer);
          }
      }
  return g_string_free (text, FALSE);
}

gboolean
tb_pocket_line_command (TbRequest *request, const char *argument, GError **error)
{
  TbRun *runs[TB_N_SIDES] = { NULL };
  g_autoptr (TbThrower) thrower = tb_thrower_new ();
  gboolean done = FALSE;

  if (tb_request_throw (request, runs, error))
    {
      g_autofree AllLines *all = g_malloc (sizeof (AllLines));
      g_autofree char *text = NULL;

      for (int side = 0; side < TB_N_SIDES; side++)
        for (int hold = 0; hold < TB_POCKET_N_HOLDS; hold++)
          tb_pocket_lines_find (thrower, &runs[side]->setup->shot, hold, NULL, &(*all)[side][hold]);
      text = request->plain_text ? lines_text (*all) : lines_json (runs, *all);
      done = tb_output_write (text, error);
    }
  for (int side = 0; side < TB_N_SIDES; side++)
    g_clear_pointer (&runs[side], tb_run_unref);
  return done;
}
