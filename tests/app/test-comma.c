/* Where numbers are written with a comma: entries take both marks and show the comma, and a saved study has
 * points.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include <glib/gstdio.h>

#include "../comma-locale.h"
#include "tb-compare-table.h"
#include "tb-quantity.h"
#include "tb-spin.h"
#include "tb-study-document.h"
#include "window-support.h"

static void
test_entry (void)
{
  TbWindow *window = new_window ();
  TbFieldRow *row = row_of (window, "speed_mph");
  GtkWidget *entry = tb_field_row_get_entry (row);

  g_assert_cmpstr (gtk_editable_get_text (GTK_EDITABLE (entry)), ==, "17,0 mph");
  enter_text (entry, "17.5");
  g_assert_cmpfloat_with_epsilon (speed_after (tb_window_get_session (window)), 17.5, 1e-9);
  g_assert_cmpstr (gtk_editable_get_text (GTK_EDITABLE (entry)), ==, "17,5 mph");
  enter_text (entry, "18,25 mph");
  g_assert_cmpfloat_with_epsilon (speed_after (tb_window_get_session (window)), 18.25, 1e-9);
  enter_text (entry, "fast");
  g_assert_cmpfloat_with_epsilon (speed_after (tb_window_get_session (window)), 18.25, 1e-9);
  g_assert_nonnull (strstr (tb_field_row_get_problem (row), "17,0 mph"));
  gtk_window_destroy (GTK_WINDOW (window));
}

static void
test_table (void)
{
  TbWindow *window = new_window ();
  TbCompareTable *table = TB_COMPARE_TABLE (find (window, TB_TYPE_COMPARE_TABLE));

  for (const TbMeasureInfo *info = tb_measure_table; info->name != NULL; info++)
    {
      const char *text = tb_compare_table_get_text (table, info->name, TB_SIDE_AFTER);

      g_assert_null (strchr (text, '.'));
      g_assert_true (info->digits == 0 || strchr (text, ',') != NULL || g_str_equal (text, "–"));
    }
  gtk_window_destroy (GTK_WINDOW (window));
}

static void
test_spin (void)
{
  GtkWidget *window = gtk_window_new (), *spin = gtk_spin_button_new_with_range (0, 40, 0.5);

  tb_spin_take_either_mark (GTK_SPIN_BUTTON (spin));
  gtk_spin_button_set_digits (GTK_SPIN_BUTTON (spin), 1);
  gtk_window_set_child (GTK_WINDOW (window), spin);
  enter_text (spin, "17.5");
  g_assert_cmpfloat (gtk_spin_button_get_value (GTK_SPIN_BUTTON (spin)), ==, 17.5);
  g_assert_cmpstr (gtk_editable_get_text (GTK_EDITABLE (spin)), ==, "17,5");
  enter_text (spin, "18,5");
  g_assert_cmpfloat (gtk_spin_button_get_value (GTK_SPIN_BUTTON (spin)), ==, 18.5);
  /* What is no number changes nothing. */
  enter_text (spin, "many");
  g_assert_cmpfloat (gtk_spin_button_get_value (GTK_SPIN_BUTTON (spin)), ==, 18.5);
  gtk_window_destroy (GTK_WINDOW (window));
}

/* Every spin button of the windows: none may be told to drop the mark that is not the locale's. */
static void
assert_no_spin_drops (GtkWidget *widget)
{
  if (GTK_IS_SPIN_BUTTON (widget))
    g_assert_false (gtk_spin_button_get_numeric (GTK_SPIN_BUTTON (widget)));
  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL;
       child = gtk_widget_get_next_sibling (child))
    assert_no_spin_drops (child);
}

static void
test_every_spin (void)
{
  TbWindow *window = new_window ();

  gtk_widget_activate_action (GTK_WIDGET (window), "win.lane-play", "s", "pattern");
  gtk_widget_activate_action (GTK_WIDGET (window), "win.ball-counter", "s", "ball");
  for (GList *item = gtk_application_get_windows (GTK_APPLICATION (application)); item != NULL;
       item = item->next)
    assert_no_spin_drops (item->data);
  gtk_window_destroy (GTK_WINDOW (window));
}

static void
test_saved_study (void)
{
  TbWindow *window = new_window ();
  TbSession *session = tb_window_get_session (window);
  g_autofree char *path = g_build_filename (g_get_user_data_dir (), "study.json", NULL);
  g_autofree char *text = NULL;
  g_autoptr (TbStudy) read = NULL;
  g_autoptr (GError) error = NULL;

  set_speed (session, 17.25);
  g_assert_cmpint (g_mkdir_with_parents (g_get_user_data_dir (), 0700), ==, 0);
  g_assert_true (tb_study_save (tb_session_get_study (session), path, &error));
  g_assert_true (g_file_get_contents (path, &text, NULL, &error));
  g_assert_nonnull (strstr (text, "17.25"));
  g_assert_null (strstr (text, "17,25"));
  read = tb_study_load (tb_application_get_library (application), path, &error);
  g_assert_no_error (error);
  g_assert_true (tb_study_equal (read, tb_session_get_study (session)));
  g_assert_cmpint (g_remove (path), ==, 0);
  gtk_window_destroy (GTK_WINDOW (window));
}

static void
add_tests (void)
{
  g_test_add_func ("/comma/entry", test_entry);
  g_test_add_func ("/comma/table", test_table);
  g_test_add_func ("/comma/spin", test_spin);
  g_test_add_func ("/comma/every-spin", test_every_spin);
  g_test_add_func ("/comma/saved-study", test_saved_study);
}

static void
skip (void)
{
  use_comma_locale ();
}

int
main (int argc, char **argv)
{
  /* Before GTK reads the locale. */
  if (!make_comma_locale ())
    {
      g_test_init (&argc, &argv, NULL);
      g_test_add_func ("/comma/skipped", skip);
      return g_test_run ();
    }
  start_tests (&argc, &argv);
  /* GTK's test mode goes back to the plain one. */
  setlocale (LC_ALL, "");
  start_application ();
  add_tests ();
  return run_tests ();
}
