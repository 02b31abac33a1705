/* A window that has been closed is gone, on a desktop too, where what it offers is told to others over D-Bus: nothing
 * that changes later is told in its name.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "window-support.h"

/* What another window does right after. */
static void
test_setting_changes (void)
{
  static const char *const views[] = { "sideways", "approach", "plan" };
  TbWindow *kept = new_window (), *closed = new_window ();
  g_autoptr (GSettings) settings = g_settings_new (APP_ID);

  g_object_add_weak_pointer (G_OBJECT (closed), (gpointer *) &closed);
  gtk_window_destroy (GTK_WINDOW (closed));
  g_assert_null (closed);
  for (guint i = 0; i < G_N_ELEMENTS (views); i++)
    {
      g_settings_set_string (settings, "lane-view", views[i]);
      rest (10);
    }
  close_for_good (kept);
}

int
main (int argc, char **argv)
{
  start_tests (&argc, &argv);
  start_application ();
  g_test_add_func ("/closing/setting-changes", test_setting_changes);
  return run_tests ();
}
