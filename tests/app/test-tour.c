/* The tour from inside: its stops, what each waits for, and how it is offered.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include <string.h>

#include "tb-tour.h"
#include "window-support.h"

static GSettings *settings;

static gboolean
is_bar (GtkWidget *widget)
{
  return gtk_widget_has_css_class (widget, "tour-bar");
}

static gboolean
is_marked (GtkWidget *widget)
{
  return gtk_widget_has_css_class (widget, "tour-target");
}

static TbTour *
tour_of (TbWindow *window)
{
  return (TbTour *) find (window, TB_TYPE_TOUR);
}

static void
open_page (TbWindow *window, const char *name)
{
  GtkStackSwitcher *switcher = GTK_STACK_SWITCHER (find (window, GTK_TYPE_STACK_SWITCHER));

  gtk_stack_set_visible_child_name (gtk_stack_switcher_get_stack (switcher), name);
}

/* Every stop goes on when what it asks for is done; each points at something that can be seen. */
static void
test_stops (void)
{
  TbWindow *window = new_window ();
  TbSession *session = tb_window_get_session (window);
  TbTour *tour;

  gtk_widget_activate_action (GTK_WIDGET (window), "win.tour", NULL);
  tour = tour_of (window);
  g_assert_nonnull (tour);
  g_assert_cmpint (tb_tour_get_stop (tour), ==, TB_TOUR_THROW);
  g_assert_cmpstr (tb_tour_get_progress (tour), ==, "1 of 8");
  tb_session_throw (session);
  tb_session_set_time (session, 0.5);
  g_assert_cmpint (tb_tour_get_stop (tour), ==, TB_TOUR_LANE);
  tb_tour_next (tour);
  g_assert_cmpint (tb_tour_get_stop (tour), ==, TB_TOUR_SPEED);
  g_assert_false (tb_tour_is_done (tour));
  set_speed (tb_window_get_session (window), 18);
  /* It stays while the slider is dragged. */
  g_assert_cmpint (tb_tour_get_stop (tour), ==, TB_TOUR_SPEED);
  g_assert_true (tb_tour_is_done (tour));
  tb_tour_next (tour);
  g_assert_cmpint (tb_tour_get_stop (tour), ==, TB_TOUR_COMPARE);
  tb_tour_next (tour);
  g_assert_cmpint (tb_tour_get_stop (tour), ==, TB_TOUR_WHY);
  open_page (window, "why");
  g_assert_cmpint (tb_tour_get_stop (tour), ==, TB_TOUR_NEXT);
  open_page (window, "next");
  g_assert_cmpint (tb_tour_get_stop (tour), ==, TB_TOUR_KEEP);
  tb_session_keep_as_before (session);
  g_assert_cmpint (tb_tour_get_stop (tour), ==, TB_TOUR_HELP);
  g_assert_cmpstr (tb_tour_get_progress (tour), ==, "8 of 8");
  tb_tour_next (tour);
  do_pending ();
  g_assert_null (tour_of (window));
  g_assert_null (find_with (window, is_marked));
  gtk_window_destroy (GTK_WINDOW (window));
}

/* One control is marked at each stop, on screen; the focus is in the callout. */
static void
test_points (void)
{
  TbWindow *window = new_window ();
  TbTour *tour;

  gtk_widget_activate_action (GTK_WIDGET (window), "win.tour", NULL);
  tour = tour_of (window);
  for (int stop = 0; stop < TB_TOUR_N_STOPS; stop++)
    {
      GtkWidget *marked = find_with (window, is_marked);
      GtkWidget *focus = gtk_root_get_focus (GTK_ROOT (window));

      g_assert_nonnull (marked);
      g_assert_true (gtk_widget_get_mapped (marked));
      g_assert_cmpstr (tb_tour_get_text (tour), !=, "");
      g_assert_nonnull (focus);
      g_assert_true (gtk_widget_is_ancestor (focus, GTK_WIDGET (tour)));
      tb_tour_next (tour);
    }
  gtk_window_destroy (GTK_WINDOW (window));
  do_pending ();
}

static void
test_skip (void)
{
  TbWindow *window = new_window ();

  g_settings_reset (settings, "tour-seen");
  gtk_widget_activate_action (GTK_WIDGET (window), "win.tour", NULL);
  gtk_widget_activate_action (GTK_WIDGET (tour_of (window)), "tour.skip", NULL);
  do_pending ();
  g_assert_null (tour_of (window));
  g_assert_true (g_settings_get_boolean (settings, "tour-seen"));
  gtk_window_destroy (GTK_WINDOW (window));
}

/* A bar, not a callout; not asked for, nothing is there; declined or taken, it does not come again. */
static void
test_bar (void)
{
  TbWindow *window = new_window ();
  GtkWidget *bar, *start, *decline;

  g_settings_reset (settings, "tour-seen");
  g_assert_null (find_with (window, is_bar));
  tb_window_offer_tour (window);
  bar = find_with (window, is_bar);
  g_assert_nonnull (bar);
  g_assert_null (tour_of (window));
  start = find (bar, GTK_TYPE_BUTTON);
  decline = gtk_widget_get_next_sibling (start);
  g_signal_emit_by_name (decline, "clicked");
  g_assert_null (find_with (window, is_bar));
  g_assert_true (g_settings_get_boolean (settings, "tour-seen"));
  tb_window_offer_tour (window);
  g_assert_null (find_with (window, is_bar));
  g_settings_reset (settings, "tour-seen");
  tb_window_offer_tour (window);
  bar = find_with (window, is_bar);
  g_signal_emit_by_name (find (bar, GTK_TYPE_BUTTON), "clicked");
  g_assert_null (find_with (window, is_bar));
  g_assert_nonnull (tour_of (window));
  gtk_window_destroy (GTK_WINDOW (window));
  do_pending ();
}

/* Work of one's own stays: the tour gets a window of its own. */
static void
test_own_work (void)
{
  TbWindow *window = new_window ();
  GList *windows;

  set_speed (tb_window_get_session (window), 19);
  gtk_widget_activate_action (GTK_WIDGET (window), "win.tour", NULL);
  g_assert_null (tour_of (window));
  windows = g_list_copy (gtk_application_get_windows (GTK_APPLICATION (application)));
  g_assert_cmpuint (g_list_length (windows), ==, 2);
  for (GList *item = windows; item != NULL; item = item->next)
    if (item->data != (gpointer) window)
      g_assert_nonnull (tour_of (item->data));
  for (GList *item = windows; item != NULL; item = item->next)
    gtk_window_destroy (item->data);
  g_list_free (windows);
  do_pending ();
}

int
main (int argc, char **argv)
{
  int status;

  start_tests (&argc, &argv);
  settings = g_settings_new (APP_ID);
  start_application ();
  g_test_add_func ("/tour/stops", test_stops);
  g_test_add_func ("/tour/points", test_points);
  g_test_add_func ("/tour/skip", test_skip);
  g_test_add_func ("/tour/bar", test_bar);
  g_test_add_func ("/tour/own-work", test_own_work);
  status = run_tests ();
  g_object_unref (settings);
  return status;
}
