/* Every set of colours for the two runs stands out from the background of every theme, and the two from each
 * other.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include <math.h>

#include <glib.h>

#include "tb-theme.h"

/* WCAG 2, 1.4.3: contrast of ordinary text. Worst measured: 4.77, the orange of the light theme.
 */
#define TEXT_CONTRAST 4.5
/* WCAG 2, 1.4.11: contrast of what tells of the focus. Worst measured: 5.75, on the dark theme's wood. */
#define FOCUS_CONTRAST 3.0
/* The two runs, in lightness alone. Worst measured: 1.51, blue and orange on dark. */
#define RUN_CONTRAST 1.4

static double
contrast (TbColor a, TbColor b)
{
  double one = tb_color_luminance (a), other = tb_color_luminance (b);

  return (fmax (one, other) + 0.05) / (fmin (one, other) + 0.05);
}

static void
test_luminance (void)
{
  g_assert_cmpfloat (tb_color_luminance ((TbColor){ 0, 0, 0, 1 }), ==, 0);
  g_assert_cmpfloat_with_epsilon (tb_color_luminance ((TbColor){ 1, 1, 1, 1 }), 1, 1e-9);
  /* WCAG 2: the coefficient of green. */
  g_assert_cmpfloat_with_epsilon (tb_color_luminance ((TbColor){ 0, 1, 0, 1 }), 0.7152, 1e-9);
}

static void
test_words_and_focus (void)
{
  const TbTheme themes[]
      = { tb_theme_light (1), tb_theme_dark (1), tb_theme_contrast (1), tb_theme_contrast_dark (1) };

  for (gsize i = 0; i < G_N_ELEMENTS (themes); i++)
    {
      const TbTheme *theme = &themes[i];
      double focus = fmin (contrast (theme->focus, theme->background), contrast (theme->focus, theme->wood));

      g_test_message ("theme %zu: focus %.2f, quiet %.2f, warning %.2f", i, focus,
                      contrast (theme->quiet, theme->background),
                      contrast (theme->warning, theme->background));
      g_assert_cmpfloat (focus, >=, FOCUS_CONTRAST);
      g_assert_cmpfloat (contrast (theme->text, theme->background), >=, TEXT_CONTRAST);
      g_assert_cmpfloat (contrast (theme->quiet, theme->background), >=, TEXT_CONTRAST);
      g_assert_cmpfloat (contrast (theme->warning, theme->background), >=, TEXT_CONTRAST);
    }
}

static void
test_run_colors (void)
{
  const TbTheme themes[]
      = { tb_theme_light (1), tb_theme_dark (1), tb_theme_contrast (1), tb_theme_contrast_dark (1) };

  for (gsize i = 0; i < G_N_ELEMENTS (themes); i++)
    for (int colors = 0; colors < TB_N_RUN_COLORS; colors++)
      {
        TbTheme theme = themes[i];
        double before, after, apart;

        tb_theme_set_run_colors (&theme, (TbRunColors) colors);
        before = contrast (theme.before, theme.background);
        after = contrast (theme.after, theme.background);
        apart = contrast (theme.before, theme.after);
        g_test_message ("theme %zu, colours %d: before %.2f, after %.2f, apart %.2f", i, colors, before,
                        after, apart);
        g_assert_cmpfloat (before, >=, TEXT_CONTRAST);
        g_assert_cmpfloat (after, >=, TEXT_CONTRAST);
        g_assert_cmpfloat (apart, >=, RUN_CONTRAST);
      }
}

static void
test_own_colors_are_kept (void)
{
  TbTheme theme = tb_theme_light (1);

  tb_theme_set_run_colors (&theme, TB_RUN_COLORS_ORANGE);
  g_assert_cmpfloat (theme.after.red, ==, tb_theme_light (1).after.red);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/theme/luminance", test_luminance);
  g_test_add_func ("/theme/words-and-focus", test_words_and_focus);
  g_test_add_func ("/theme/run-colors", test_run_colors);
  g_test_add_func ("/theme/own-colors-are-kept", test_own_colors_are_kept);
  return g_test_run ();
}
