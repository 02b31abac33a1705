/* Why and Next in the window: they follow the session, a press puts an option in "after", undo takes it back.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include <string.h>

#include "tb-force-graph.h"
#include "tb-lane-panel.h"
#include "tb-next-page.h"
#include "tb-option-row.h"
#include "tb-parts-picture.h"
#include "tb-pocket-line.h"
#include "tb-results-panel.h"
#include "tb-why-page.h"
#include "window-support.h"

static TbWindow *
new_window_at (const char *page)
{
  TbWindow *window = new_window ();

  gtk_stack_set_visible_child_name (GTK_STACK (find (find (window, TB_TYPE_RESULTS_PANEL), GTK_TYPE_STACK)),
                                    page);
  return window;
}

static double
board_of (TbSession *session)
{
  return tb_board_from_x (tb_session_get_run (session, TB_SIDE_AFTER)->path.measures.x_at_pins);
}

static void
test_why_follows (void)
{
  TbWindow *window = new_window_at ("why");
  TbSession *session = tb_window_get_session (window);
  GtkWidget *page = find (window, TB_TYPE_WHY_PAGE);

  WAIT_UNTIL (tb_why_page_is_settled (TB_WHY_PAGE (page)));
  g_assert_true (says (page, "Nothing has changed"));
  set_speed (session, 19);
  WAIT_UNTIL (tb_why_page_is_settled (TB_WHY_PAGE (page)));
  g_assert_true (says (page, "boards lower than before"));
  g_assert_true (says (page, "2.0 mph more leaves the ball"));
  tb_session_undo (session);
  WAIT_UNTIL (tb_why_page_is_settled (TB_WHY_PAGE (page)));
  g_assert_true (says (page, "Nothing has changed"));
  gtk_window_destroy (GTK_WINDOW (window));
}

/* The bars are a picture as any other: they are told in words, and can be saved and copied. */
static void
test_bars (void)
{
  TbWindow *window = new_window_at ("why");
  GtkWidget *page = find (window, TB_TYPE_WHY_PAGE), *bars = find (page, TB_TYPE_PARTS_PICTURE);

  set_speed (tb_window_get_session (window), 19);
  WAIT_UNTIL (tb_why_page_is_settled (TB_WHY_PAGE (page)));
  g_assert_true (g_str_has_prefix (tb_picture_get_description (TB_PICTURE (bars)), "Speed: −"));
  g_assert_null (find (bars, GTK_TYPE_POPOVER_MENU));
  g_assert_true (gtk_widget_activate_action (bars, "picture.menu", NULL));
  g_assert_nonnull (find (bars, GTK_TYPE_POPOVER_MENU));
  gtk_window_destroy (GTK_WINDOW (window));
}

/* The lengths to choose from are told in the units of the rows below them. */
static void
test_lengths (void)
{
  TbWindow *window = new_window ();
  GtkWidget *page = find (window, TB_TYPE_WHY_PAGE);
  GtkDropDown *lengths = GTK_DROP_DOWN (find (page, GTK_TYPE_DROP_DOWN));
  GtkStringList *texts = GTK_STRING_LIST (gtk_drop_down_get_model (lengths));

  g_assert_cmpuint (gtk_drop_down_get_selected (lengths), ==, 0);
  g_assert_cmpstr (gtk_string_list_get_string (texts, 0), ==, "every 20 ft");
  gtk_drop_down_set_selected (lengths, 1);
  gtk_widget_activate_action (GTK_WIDGET (window), "win.units", "s", "metric");
  g_assert_cmpstr (gtk_string_list_get_string (texts, 1), ==, "every 3.0 m");
  g_assert_cmpuint (gtk_drop_down_get_selected (lengths), ==, 1);
  gtk_widget_activate_action (GTK_WIDGET (window), "win.units", "s", "imperial");
  gtk_window_destroy (GTK_WINDOW (window));
}

/* A window that closes while its reasons are being worked out takes nothing with it. */
static void
test_close_at_work (void)
{
  TbWindow *window = new_window_at ("next");

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
  TbWindow *window = new_window_at ("why");
  TbSession *session = tb_window_get_session (window);
  const TbField *aim = tb_field_find (TB_GROUP_DELIVERY, "aim_board");
  GtkWidget *page = find (window, TB_TYPE_WHY_PAGE), *reaim = find (page, GTK_TYPE_SWITCH);
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
  TbWindow *window = new_window_at ("next");
  TbSession *session = tb_window_get_session (window);
  GtkWidget *page = find (window, TB_TYPE_NEXT_PAGE), *row;
  double start = board_of (session);
  TbSetup *wished_from;
  TbWish wish;

  tb_next_page_set_wish (TB_NEXT_PAGE (page), &(TbWish){ TB_WISH_BOARDS, -2, FALSE });
  WAIT_UNTIL (tb_next_page_is_settled (TB_NEXT_PAGE (page)));
  g_assert_true (says (page, "2.0 boards less"));
  /* The handout and the clinic go on from there. */
  wished_from = tb_session_get_wish (session, &wish);
  g_assert_true (wished_from == tb_session_get_setup (session, TB_SIDE_AFTER));
  g_assert_true (wish.kind == TB_WISH_BOARDS && wish.amount == -2);
  row = find (page, TB_TYPE_OPTION_ROW);
  g_assert_nonnull (row);
  gtk_test_accessible_assert_role (GTK_ACCESSIBLE (find (row, GTK_TYPE_BUTTON)), GTK_ACCESSIBLE_ROLE_BUTTON);
  g_signal_emit_by_name (find (row, GTK_TYPE_BUTTON), "clicked");
  g_assert_cmpfloat_with_epsilon (board_of (session), start - 2, TB_WISH_TOLERANCE);
  g_assert_true (tb_session_get_wish (session, &wish) == wished_from);
  /* The others stay to be tried. */
  g_assert_true (tb_next_page_is_settled (TB_NEXT_PAGE (page)));
  g_assert_true (find (page, TB_TYPE_OPTION_ROW) == row);
  tb_session_undo (session);
  g_assert_cmpfloat (board_of (session), ==, start);
  tb_session_redo (session);
  g_assert_cmpfloat_with_epsilon (board_of (session), start - 2, TB_WISH_TOLERANCE);
  gtk_window_destroy (GTK_WINDOW (window));
}

/* Feet and target are easier to move than a release: they are what is told first, above the groups. */
static void
test_smallest_on_top (void)
{
  TbWindow *window = new_window_at ("next");
  GtkWidget *page = find (window, TB_TYPE_NEXT_PAGE);
  TbNextOption *top;

  tb_next_page_set_wish (TB_NEXT_PAGE (page), &(TbWish){ TB_WISH_BOARDS, -3, FALSE });
  WAIT_UNTIL (tb_next_page_is_settled (TB_NEXT_PAGE (page)));
  top = tb_option_row_get_option (TB_OPTION_ROW (find (page, TB_TYPE_OPTION_ROW)));
  g_assert_true (says (page, "The smallest change"));
  g_assert_cmpint (top->knob->group, ==, TB_KNOB_LINE);
  tb_next_page_set_wish (TB_NEXT_PAGE (page), &(TbWish){ TB_WISH_FORGIVING, 0, TRUE });
  WAIT_UNTIL (tb_next_page_is_settled (TB_NEXT_PAGE (page)));
  g_assert_false (says (page, "The smallest change"));
  gtk_window_destroy (GTK_WINDOW (window));
}

/* Another wish before the last is answered: only the last one's options come. */
static void
test_changing_the_wish_cancels (void)
{
  TbWindow *window = new_window_at ("next");
  GtkWidget *page = find (window, TB_TYPE_NEXT_PAGE);

  tb_next_page_set_wish (TB_NEXT_PAGE (page), &(TbWish){ TB_WISH_FORGIVING, 0, TRUE });
  tb_next_page_set_wish (TB_NEXT_PAGE (page), &(TbWish){ TB_WISH_TURN, 2, TRUE });
  tb_next_page_set_wish (TB_NEXT_PAGE (page), &(TbWish){ TB_WISH_BOARDS, 3, FALSE });
  WAIT_UNTIL (tb_next_page_is_settled (TB_NEXT_PAGE (page)));
  g_assert_true (says (page, "3.0 boards more"));
  g_assert_false (says (page, "ft later"));
  gtk_window_destroy (GTK_WINDOW (window));
}

/* Half a foot for each arrow key, read at the very distance. */
static void
test_graph_reads (void)
{
  TbWindow *window = new_window_at ("why");
  TbSession *session = tb_window_get_session (window);
  TbLanePanel *lane = TB_LANE_PANEL (find (window, TB_TYPE_LANE_PANEL));
  GtkWidget *graph;
  g_autofree char *reading = NULL;
  TbSample sample;

  tb_lane_panel_set_graph_shown (lane, TRUE);
  graph = find (window, TB_TYPE_FORCE_GRAPH);
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

int
main (int argc, char **argv)
{
  start_tests (&argc, &argv);
  start_application ();
  g_test_add_func ("/reasons/why-follows", test_why_follows);
  g_test_add_func ("/reasons/bars", test_bars);
  g_test_add_func ("/reasons/lengths", test_lengths);
  g_test_add_func ("/reasons/close-at-work", test_close_at_work);
  g_test_add_func ("/reasons/reaim", test_reaim);
  g_test_add_func ("/reasons/try-an-option", test_try_an_option);
  g_test_add_func ("/reasons/smallest-on-top", test_smallest_on_top);
  g_test_add_func ("/reasons/changing-the-wish-cancels", test_changing_the_wish_cancels);
  g_test_add_func ("/reasons/graph-reads", test_graph_reads);
  return run_tests ();
}
