/* Preferences: every choice that is offered is one the settings take, and what is chosen holds at once.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "tb-preferences-window.h"
#include "tb-style.h"
#include "window-support.h"

static GSettings *settings;

static const char *const keys[] = { "units",         "hand",       "time-rate", "color-scheme",
                                    "high-contrast", "run-colors", "text-size", "reduced-motion" };

static void
reset_all (void)
{
  for (gsize i = 0; i < G_N_ELEMENTS (keys); i++)
    g_settings_reset (settings, keys[i]);
}

static void
test_choices_are_taken (void)
{
  TbPreferencesWindow *window = tb_preferences_window_new (NULL);

  gtk_window_present (GTK_WINDOW (window));
  for (gsize i = 0; i < G_N_ELEMENTS (keys); i++)
    {
      GtkDropDown *choice = tb_preferences_window_get_choice (window, keys[i]);
      guint count = g_list_model_get_n_items (gtk_drop_down_get_model (choice));
      g_autoptr (GHashTable) values = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);

      g_assert_cmpuint (count, >=, 2);
      for (guint j = 0; j < count; j++)
        {
          g_autoptr (GVariant) value = NULL;

          gtk_drop_down_set_selected (choice, j);
          value = g_settings_get_value (settings, keys[i]);
          g_assert_true (g_hash_table_add (values, g_variant_print (value, FALSE)));
          g_assert_cmpuint (gtk_drop_down_get_selected (choice), ==, j);
        }
    }
  gtk_window_destroy (GTK_WINDOW (window));
  reset_all ();
}

/* What is set elsewhere is shown here. */
static void
test_settings_are_shown (void)
{
  TbPreferencesWindow *window = tb_preferences_window_new (NULL);

  g_settings_set_string (settings, "run-colors", "blue");
  g_settings_set_double (settings, "time-rate", 0.25);
  g_assert_cmpuint (gtk_drop_down_get_selected (tb_preferences_window_get_choice (window, "run-colors")), ==,
                    2);
  g_assert_cmpuint (gtk_drop_down_get_selected (tb_preferences_window_get_choice (window, "time-rate")), ==,
                    2);
  gtk_window_destroy (GTK_WINDOW (window));
  reset_all ();
}

static TbDelivery
delivery_of (TbWindow *window, TbSide side)
{
  return tb_session_get_setup (tb_window_get_session (window), side)->shot.delivery;
}

static void
test_hand (void)
{
  TbWindow *window = new_window ();
  TbDelivery right = delivery_of (window, TB_SIDE_AFTER);

  g_assert_cmpint (right.hand, ==, TB_HAND_RIGHT);
  g_settings_set_string (settings, "hand", "left");
  /* A study that is open keeps its hand. */
  g_assert_cmpint (delivery_of (window, TB_SIDE_AFTER).hand, ==, TB_HAND_RIGHT);
  g_assert_true (gtk_widget_activate_action (GTK_WIDGET (window), "win.new", NULL));
  for (int side = 0; side < TB_N_SIDES; side++)
    {
      TbDelivery left = delivery_of (window, (TbSide) side);

      g_assert_cmpint (left.hand, ==, TB_HAND_LEFT);
      g_assert_cmpfloat (left.speed, ==, right.speed);
    }
  g_assert_false (tb_session_get_modified (tb_window_get_session (window)));
  gtk_window_destroy (GTK_WINDOW (window));
  window = new_window ();
  g_assert_cmpint (delivery_of (window, TB_SIDE_BEFORE).hand, ==, TB_HAND_LEFT);
  gtk_window_destroy (GTK_WINDOW (window));
  reset_all ();
}

static gboolean
same_color (TbColor a, TbColor b)
{
  return a.red == b.red && a.green == b.green && a.blue == b.blue;
}

/* Whether the toolkit's own colours are what they are without strong contrast. */
static gboolean
toolkit_is_plain (TbWindow *window)
{
  GtkStyleContext *style = gtk_widget_get_style_context (GTK_WIDGET (window));
  GdkRGBA color, plain;

  g_assert_true (gtk_style_context_lookup_color (style, "theme_selected_bg_color", &color));
  g_settings_set_boolean (settings, "high-contrast", FALSE);
  g_assert_true (gtk_style_context_lookup_color (style, "theme_selected_bg_color", &plain));
  g_settings_set_boolean (settings, "high-contrast", TRUE);
  return gdk_rgba_equal (&color, &plain);
}

static void
test_look (void)
{
  TbWindow *window = new_window ();
  TbTheme plain = tb_style_theme_for (GTK_WIDGET (window)), theme;

  g_settings_set_string (settings, "run-colors", "blue");
  theme = tb_style_theme_for (GTK_WIDGET (window));
  g_assert_true (same_color (theme.before, plain.before));
  g_assert_false (same_color (theme.after, plain.after));
  g_settings_set_boolean (settings, "high-contrast", TRUE);
  theme = tb_style_theme_for (GTK_WIDGET (window));
  g_assert_cmpfloat (tb_color_luminance (theme.text), ==, 0);
  g_settings_set_string (settings, "color-scheme", "dark");
  theme = tb_style_theme_for (GTK_WIDGET (window));
  g_assert_cmpfloat (tb_color_luminance (theme.background), ==, 0);
  g_assert_false (toolkit_is_plain (window));
  /* And back, all the way. */
  g_settings_set_string (settings, "color-scheme", "light");
  theme = tb_style_theme_for (GTK_WIDGET (window));
  g_assert_cmpfloat_with_epsilon (tb_color_luminance (theme.background), 1, 1e-9);
  reset_all ();
  theme = tb_style_theme_for (GTK_WIDGET (window));
  g_assert_true (same_color (theme.after, plain.after));
  g_assert_true (same_color (theme.text, plain.text));
  gtk_window_destroy (GTK_WINDOW (window));
}

/* The desktop's own strong contrast counts as the program's does, on the projector too. */
static void
test_desktop_contrast (void)
{
  TbWindow *window = new_window ();
  GtkSettings *desktop = gtk_settings_get_default ();
  TbTheme theme;

  g_object_set (desktop, "gtk-theme-name", "HighContrastInverse", NULL);
  theme = tb_style_theme_for (GTK_WIDGET (window));
  g_assert_cmpfloat (tb_color_luminance (theme.background), ==, 0);
  theme = tb_style_projector_theme (GTK_WIDGET (window), 1);
  g_assert_cmpfloat (tb_color_luminance (theme.background), ==, 0);
  g_object_set (desktop, "gtk-theme-name", "HighContrast", NULL);
  theme = tb_style_theme_for (GTK_WIDGET (window));
  g_assert_cmpfloat (tb_color_luminance (theme.text), ==, 0);
  gtk_settings_reset_property (desktop, "gtk-theme-name");
  theme = tb_style_theme_for (GTK_WIDGET (window));
  g_assert_cmpfloat (tb_color_luminance (theme.text), >, 0);
  gtk_window_destroy (GTK_WINDOW (window));
}

/* The end at once, and time can still be moved. */
static void
test_reduced_motion (void)
{
  TbWindow *window = new_window ();
  TbSession *session = tb_window_get_session (window);
  double duration = tb_session_get_duration (session);

  g_settings_set_boolean (settings, "reduced-motion", TRUE);
  gtk_widget_activate_action (GTK_WIDGET (window), "win.throw", NULL);
  g_assert_false (tb_session_get_playing (session));
  g_assert_cmpfloat (tb_session_get_time (session), ==, duration);
  tb_session_set_time (session, 0.5 * duration);
  g_assert_cmpfloat (tb_session_get_time (session), ==, 0.5 * duration);
  g_settings_set_boolean (settings, "reduced-motion", FALSE);
  gtk_widget_activate_action (GTK_WIDGET (window), "win.throw", NULL);
  g_assert_true (tb_session_get_playing (session));
  gtk_window_destroy (GTK_WINDOW (window));
}

int
main (int argc, char **argv)
{
  int status;

  start_tests (&argc, &argv);
  /* The toolkit's setting, so that the program's own is what counts. */
  set_animations (TRUE);
  start_application ();
  settings = g_settings_new (APP_ID);
  g_test_add_func ("/preferences/choices-are-taken", test_choices_are_taken);
  g_test_add_func ("/preferences/settings-are-shown", test_settings_are_shown);
  g_test_add_func ("/preferences/hand", test_hand);
  g_test_add_func ("/preferences/look", test_look);
  g_test_add_func ("/preferences/desktop-contrast", test_desktop_contrast);
  g_test_add_func ("/preferences/reduced-motion", test_reduced_motion);
  status = run_tests ();
  g_object_unref (settings);
  return status;
}
