/* Why and Next in the window: they follow the session, a press puts an option in "after", undo takes it back.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include <string.h>

#include "tb-application.h"
#include "tb-force-graph.h"
#include "tb-lane-panel.h"
#include "tb-next-page.h"
#include "tb-option-row.h"
#include "tb-pocket-line.h"
#include "tb-results-panel.h"
#include "tb-why-page.h"
#include "tb-window.h"

static TbApplication *application;

/* A search takes a second or two on a machine that is busy with other tests. */
#define MOST_SECONDS 60

static GtkWidget *
find (GtkWidget *widget, GType type)
{
  if (G_TYPE_CHECK_INSTANCE_TYPE (widget, type))
    return widget;
  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL;
       child = gtk_widget_get_next_sibling (child))
    {
      GtkWidget *found = find (child, type);

      if (found != NULL)
        return found;
    }
  return NULL;
}

/* Whether a label somewhere below says such a thing. */
static gboolean
says (GtkWidget *widget, const char *words)
{
  if (GTK_IS_LABEL (widget) && gtk_widget_get_mapped (widget)
      && strstr (gtk_label_get_text (GTK_LABEL (widget)), words) != NULL)
    return TRUE;
  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL;
       child = gtk_widget_get_next_sibling (child))
    if (says (child, words))
      return TRUE;
  return FALSE;
}

static TbWindow *
new_window (const char *page)
{
  TbWindow *window = tb_window_new (GTK_APPLICATION (application), tb_application_get_library (application));
  GtkWidget *results = find (GTK_WIDGET (window), TB_TYPE_RESULTS_PANEL);

  gtk_window_present (GTK_WINDOW (window));
  gtk_test_widget_wait_for_draw (GTK_WIDGET (window));
  gtk_stack_set_visible_child_name (GTK_STACK (find (results, GTK_TYPE_STACK)), page);
  return window;
}

/* Waits until a page has caught up with the session. */
static void
settle (gboolean (*is_settled) (gpointer page), gpointer page)
{
  gint64 end = g_get_monotonic_time () + MOST_SECONDS * G_USEC_PER_SEC;

  while (!is_settled (page))
    {
      g_assert_cmpint (g_get_monotonic_time (), <, end);
      g_main_context_iteration (NULL, FALSE);
    }
}

static gboolean
why_settled (gpointer page)
{
  return tb_why_page_is_settled (page);
}

static gboolean
next_settled (gpointer page)
{
  return tb_next_page_is_settled (page);
}

static void
set_speed (TbSession *session, double mph)
{
  g_assert_true (tb_session_set_field (session, tb_field_find (TB_GROUP_DELIVERY, "speed_mph"), mph, NULL));
}

static double
board_of (TbSession *session)
{
  return tb_board_from_x (tb_session_get_run (session, TB_SIDE_AFTER)->path.measures.x_at_pins);
}

static void
test_why_follows (void)
{
  TbWindow *window = new_window ("why");
  TbSession *session = tb_window_get_session (window);
  GtkWidget *page = find (GTK_WIDGET (window), TB_TYPE_WHY_PAGE);

  settle (why_settled, page);
  g_assert_true (says (page, "Nothing has changed"));
  set_speed (session, 19);
  settle (why_settled, page);
  g_assert_true (says (page, "boards lower than before"));
  g_assert_true (says (page, "2.0 mph more leaves the ball"));
  tb_session_undo (session);
  settle (why_settled, page);
  g_assert_true (says (page, "Nothing has changed"));
  gtk_window_destroy (GTK_WINDOW (window));
}

/* A window that closes while its reasons are being worked out takes nothing with it. */
static void
test_close_at_work (void)
{
  TbWindow *window = new_window ("next");

  set_speed (tb_window_get_session (window), 18);
  gtk_window_destroy (GTK_WINDOW (window));
  for (int i = 0; i < 200; i++)
    {
      g_main_context_iteration (NULL, FALSE);
      g_usleep (1000);
    }
}

static void
test_reaim (void)
{
  TbWindow *window = new_window ("why");
  TbSession *session = tb_window_get_session (window);
  const TbField *aim = tb_field_find (TB_GROUP_DELIVERY, "aim_board");
  GtkWidget *page = find (GTK_WIDGET (window), TB_TYPE_WHY_PAGE), *reaim = find (page, GTK_TYPE_SWITCH);
  double middle = tb_pocket_middle (&tb_session_get_setup (session, TB_SIDE_AFTER)->shot.assumed);
  double before = tb_session_get_field (session, TB_SIDE_AFTER, aim);

  gtk_switch_set_active (GTK_SWITCH (reaim), TRUE);
  set_speed (session, 18.5);
  g_assert_true (tb_session_get_reaim (session));
  g_assert_cmpfloat_with_epsilon (board_of (session), middle, 0.05);
  g_assert_cmpfloat (tb_session_get_field (session, TB_SIDE_AFTER, aim), !=, before);
  /* The change and its re-aim are one step. */
  while (tb_session_can_undo (session))
    tb_session_undo (session);
  g_assert_cmpfloat (tb_session_get_field (session, TB_SIDE_AFTER, aim), ==, before);
  tb_session_set_reaim (session, FALSE);
  g_assert_false (gtk_switch_get_active (GTK_SWITCH (reaim)));
  set_speed (session, 18.5);
  g_assert_cmpfloat (tb_session_get_field (session, TB_SIDE_AFTER, aim), ==, before);
  gtk_window_destroy (GTK_WINDOW (window));
}

static void
test_try_an_option (void)
{
  TbWindow *window = new_window ("next");
  TbSession *session = tb_window_get_session (window);
  GtkWidget *page = find (GTK_WIDGET (window), TB_TYPE_NEXT_PAGE), *row;
  double start = board_of (session);

  tb_next_page_set_wish (TB_NEXT_PAGE (page), &(TbWish){ TB_WISH_BOARDS, -2, FALSE });
  settle (next_settled, page);
  g_assert_true (says (page, "2.0 boards less"));
  row = find (page, TB_TYPE_OPTION_ROW);
  g_assert_nonnull (row);
  gtk_test_accessible_assert_role (GTK_ACCESSIBLE (find (row, GTK_TYPE_BUTTON)), GTK_ACCESSIBLE_ROLE_BUTTON);
  g_signal_emit_by_name (find (row, GTK_TYPE_BUTTON), "clicked");
  g_assert_cmpfloat_with_epsilon (board_of (session), start - 2, TB_WISH_TOLERANCE);
  /* The others stay to be tried. */
  g_assert_true (tb_next_page_is_settled (TB_NEXT_PAGE (page)));
  g_assert_true (find (page, TB_TYPE_OPTION_ROW) == row);
  tb_session_undo (session);
  g_assert_cmpfloat (board_of (session), ==, start);
  tb_session_redo (session);
  g_assert_cmpfloat_with_epsilon (board_of (session), start - 2, TB_WISH_TOLERANCE);
  gtk_window_destroy (GTK_WINDOW (window));
}

/* Another wish before the last is answered: only the last one's options come. */
static void
test_changing_the_wish_cancels (void)
{
  TbWindow *window = new_window ("next");
  GtkWidget *page = find (GTK_WIDGET (window), TB_TYPE_NEXT_PAGE);

  tb_next_page_set_wish (TB_NEXT_PAGE (page), &(TbWish){ TB_WISH_FORGIVING, 0, TRUE });
  tb_next_page_set_wish (TB_NEXT_PAGE (page), &(TbWish){ TB_WISH_TURN, 2, TRUE });
  tb_next_page_set_wish (TB_NEXT_PAGE (page), &(TbWish){ TB_WISH_BOARDS, 3, FALSE });
  settle (next_settled, page);
  g_assert_true (says (page, "3.0 boards more"));
  g_assert_false (says (page, "ft later"));
  gtk_window_destroy (GTK_WINDOW (window));
}

static void
press_key (GtkWidget *widget, guint keyval)
{
  g_autoptr (GListModel) controllers = gtk_widget_observe_controllers (widget);

  for (guint i = 0; i < g_list_model_get_n_items (controllers); i++)
    {
      g_autoptr (GtkEventController) controller = g_list_model_get_item (controllers, i);
      gboolean handled = FALSE;

      if (GTK_IS_EVENT_CONTROLLER_KEY (controller))
        g_signal_emit_by_name (controller, "key-pressed", keyval, 0, 0, &handled);
    }
}

/* Half a foot for each arrow key, read at the very distance. */
static void
test_graph_reads (void)
{
  TbWindow *window = new_window ("why");
  TbSession *session = tb_window_get_session (window);
  TbLanePanel *lane = TB_LANE_PANEL (find (GTK_WIDGET (window), TB_TYPE_LANE_PANEL));
  GtkWidget *graph;
  g_autofree char *reading = NULL;
  TbSample sample;

  tb_lane_panel_set_graph_shown (lane, TRUE);
  graph = find (GTK_WIDGET (window), TB_TYPE_FORCE_GRAPH);
  gtk_test_widget_wait_for_draw (graph);
  gtk_test_accessible_assert_role (GTK_ACCESSIBLE (graph), GTK_ACCESSIBLE_ROLE_IMG);
  press_key (graph, GDK_KEY_Home);
  for (int i = 0; i < 60; i++)
    press_key (graph, GDK_KEY_Right);
  g_assert_true (
      tb_path_at_time (tb_session_get_path (session, TB_SIDE_AFTER), tb_session_get_time (session), &sample));
  /* From where the ball leaves the hand. Measured: 30.6 ft. */
  g_assert_cmpfloat_with_epsilon (tb_ft_from_metres (sample.position.y), 30.5, 0.6);
  reading = tb_force_graph_get_reading (TB_FORCE_GRAPH (graph));
  g_assert_true (g_str_has_prefix (reading, "At 30"));
  g_assert_nonnull (strstr (reading, "friction"));
  g_assert_nonnull (strstr (reading, "After: "));
  gtk_window_destroy (GTK_WINDOW (window));
}

static void
quiet_settings (void)
{
  g_object_set (gtk_settings_get_default (), "gtk-enable-animations", FALSE, "gtk-font-name",
                "DejaVu Sans 10", "gtk-cursor-blink", FALSE, NULL);
}

int
main (int argc, char **argv)
{
  g_autofree char *data = g_dir_make_tmp ("tenboard-test-XXXXXX", NULL);
  int status;

  g_setenv ("XDG_DATA_HOME", data, TRUE);
  g_setenv ("GTK_A11Y", "test", TRUE);
  gtk_test_init (&argc, &argv, NULL);
  quiet_settings ();
  application = tb_application_new ();
  g_application_set_flags (G_APPLICATION (application), G_APPLICATION_NON_UNIQUE);
  g_assert_true (g_application_register (G_APPLICATION (application), NULL, NULL));
  g_test_add_func ("/reasons/why-follows", test_why_follows);
  g_test_add_func ("/reasons/close-at-work", test_close_at_work);
  g_test_add_func ("/reasons/reaim", test_reaim);
  g_test_add_func ("/reasons/try-an-option", test_try_an_option);
  g_test_add_func ("/reasons/changing-the-wish-cancels", test_changing_the_wish_cancels);
  g_test_add_func ("/reasons/graph-reads", test_graph_reads);
  status = g_test_run ();
  g_object_unref (application);
  return status;
}
