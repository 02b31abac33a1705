/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "tb-lines-words.h"

#include <glib/gi18n-lib.h>

#include "tb-quantity.h"

char *
tb_lines_feet_text (const TbStance *stance, const TbDelivery *delivery)
{
  TbPivot pivot = tb_pivot (1);

  return g_strdup_printf (
      _ ("Feet on board %.1f lay the ball down on board %.1f, over board %.1f at the arrows: %.1f° outwards. "
         "3 : 1 : 2: about "
         "that target a board at the pins is %.2f at the foul line and %.2f at the stance, the other way."),
      stance->slide_board, tb_board_from_x (delivery->laydown), tb_board_from_x (delivery->aim),
      -tb_deg_from_radians (tb_delivery_launch_heading (delivery)), -pivot.at_line, -pivot.at_stance);
}

/* Where one side's ball leaves the oil, and how long it is in it. */
static void
append_oil (GString *text, const char *name, const TbRun *run)
{
  const TbMeasures *m = &run->path.measures;

  if (run->status != TB_OK || isnan (m->oil_exit_y))
    g_string_append_printf (text, _ ("%s: never out of the oil. "), name);
  else
    g_string_append_printf (text, _ ("%s: in the oil for %.2f s, out of it at %.1f ft on board %.1f. "), name,
                            m->time_in_oil, tb_ft_from_metres (m->oil_exit_y),
                            tb_board_from_x (m->oil_exit_x));
}

char *
tb_lines_oil_text (TbSession *session)
{
  GString *text = g_string_new (NULL);

  append_oil (text, _ ("Before"), tb_session_get_run (session, TB_SIDE_BEFORE));
  append_oil (text, _ ("After"), tb_session_get_run (session, TB_SIDE_AFTER));
  return g_string_free (text, FALSE);
}

char *
tb_lines_family_text (const TbFamily *family)
{
  GString *text = g_string_new (_ ("Misses, and where they end: "));

  for (guint i = 0; i < family->count; i++)
    {
      const TbRun *run = family->runs[i];
      g_autofree char *miss = tb_number_format_signed (family->boards[i], 0);

      if (run->status == TB_OK)
        g_string_append_printf (text, i + 1 < family->count ? _ ("%s: board %.1f, ") : _ ("%s: board %.1f."),
                                miss, tb_board_from_x (run->path.measures.x_at_pins));
    }
  return g_string_free (text, FALSE);
}

char *
tb_lines_spare_text (const TbSpare *spare, double own_aim_board)
{
  GString *text = g_string_new (NULL);

  g_string_append_printf (
      text,
      _ ("%d pin, on board %.1f: straight from board %.0f over board %.1f at the arrows, %.1f boards of room "
         "either way."),
      spare->pin + 1, spare->pin_board, spare->laydown_board, spare->aim_board, spare->room);
  g_string_append_c (text, ' ');
  if (!isnan (own_aim_board))
    g_string_append_printf (text, _ ("This ball and release hook there from board %.1f."), own_aim_board);
  else
    g_string_append (text, _ ("This ball and release do not get there from that board."));
  return g_string_free (text, FALSE);
}
