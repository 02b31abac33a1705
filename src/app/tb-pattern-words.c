/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "tb-pattern-words.h"

#include <glib/gi18n-lib.h>

#include "tb-pattern-figures.h"
#include "tb-quantity.h"

static char *
board_or_dash (double board)
{
  return isnan (board) ? g_strdup (_ ("nowhere")) : tb_number_format (board, 1);
}

static char *
ratio_text (double ratio)
{
  return isinf (ratio) ? g_strdup (_ ("dry outside")) : g_strdup_printf ("%.1f : 1", ratio);
}

char *
tb_pattern_figures_text (const TbPattern *pattern)
{
  TbPatternFigures f = tb_pattern_figures (pattern);
  g_autofree char *ratio = ratio_text (f.ratio), *right = board_or_dash (f.fall_off_right);
  g_autofree char *left = board_or_dash (f.fall_off_left);
  g_autoptr (GString) text = g_string_new (NULL);

  g_string_append_printf (text, _ ("%.1f ft, %.1f mL, middle to outside %s.\n"), tb_ft_from_metres (f.length),
                          tb_ml_from_cubic_metres (f.volume), ratio);
  if (!isnan (f.volume_out))
    g_string_append_printf (text, _ ("Laid going out %.1f mL, coming back %.1f mL.\n"),
                            tb_ml_from_cubic_metres (f.volume_out), tb_ml_from_cubic_metres (f.volume_back));
  g_string_append_printf (text, _ ("The film falls off at board %s from the right, %s from the left.\n"),
                          right, left);
  /* Common practice. */
  g_string_append_printf (text, _ ("Length − 31: leave the oil about board %.0f."),
                          MAX (f.breakpoint_board, 1));
  return g_strdup (text->str);
}

char *
tb_strip_text (guint index, const TbStrip *strip)
{
  /* Translators: a numbered strip of oil: boards from and to, feet from and to, microlitres on each board. */
  return g_strdup_printf (strip->way == TB_STRIP_OUT ? _ ("%u  out   %d–%d   %.1f to %.1f ft   %.0f µL")
                                                     : _ ("%u  back  %d–%d   %.1f to %.1f ft   %.0f µL"),
                          index + 1, strip->right_board, strip->left_board, tb_ft_from_metres (strip->start),
                          tb_ft_from_metres (strip->end),
                          TB_MICROLITRES_PER_ML * tb_ml_from_cubic_metres (strip->volume));
}
