/* The window from inside: what it is made of, what assistive technology is told, that it goes away.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include <glib/gstdio.h>
#include <string.h>

#include "tb-ball-picture.h"
#include "tb-caution-button.h"
#include "tb-choice-row.h"
#include "tb-compare-table.h"
#include "tb-controls-panel.h"
#include "tb-lane-panel.h"
#include "tb-library-row.h"
#include "tb-study-document.h"
#include "tb-style.h"
#include "tb-tick-scale.h"
#include "tb-verdict.h"
#include "window-support.h"

#define FIND(window, TYPE, CAST) CAST (find (window, TYPE))

static gboolean
moves_range (GtkRange *range, double value)
{
  gboolean handled = FALSE;

  g_signal_emit_by_name (range, "change-value", GTK_SCROLL_JUMP, value, &handled);
  return handled;
}

/* Every field of core has its control, with a name, a role, a value and the field's own range. */
static void
test_every_field_has_a_control (void)
{
  TbWindow *window = new_window ();
  TbControlsPanel *controls = FIND (window, TB_TYPE_CONTROLS_PANEL, TB_CONTROLS_PANEL);

  for (const TbField *field = tb_field_table; field->name != NULL; field++)
    {
      GtkWidget *row = tb_controls_panel_get_row (controls, field->name);

      g_assert_nonnull (row);
      if (field->kind == TB_FIELD_CHOICE)
        {
          g_assert_true (TB_IS_CHOICE_ROW (row));
          continue;
        }
      GtkWidget *scale = tb_field_row_get_scale (TB_FIELD_ROW (row));
      GtkWidget *entry = tb_field_row_get_entry (TB_FIELD_ROW (row));
      GtkAdjustment *adjustment = gtk_range_get_adjustment (GTK_RANGE (scale));
      g_autofree char *typed = g_strdup_printf ("%s, typed", field->label);

      gtk_test_accessible_assert_role (GTK_ACCESSIBLE (scale), GTK_ACCESSIBLE_ROLE_SLIDER);
      gtk_test_accessible_assert_property (GTK_ACCESSIBLE (scale), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                           field->label);
      gtk_test_accessible_assert_role (GTK_ACCESSIBLE (entry), GTK_ACCESSIBLE_ROLE_TEXT_BOX);
      gtk_test_accessible_assert_property (GTK_ACCESSIBLE (entry), GTK_ACCESSIBLE_PROPERTY_LABEL, typed);
      g_assert_cmpfloat_with_epsilon (gtk_adjustment_get_lower (adjustment), field->min, 1e-9);
      g_assert_cmpfloat_with_epsilon (gtk_adjustment_get_upper (adjustment), field->max, 1e-9);
    }
  gtk_window_destroy (GTK_WINDOW (window));
}

static void
test_slider_changes_the_table (void)
{
  TbWindow *window = new_window ();
  TbCompareTable *table = FIND (window, TB_TYPE_COMPARE_TABLE, TB_COMPARE_TABLE);
  GtkWidget *scale = tb_field_row_get_scale (row_of (window, "speed_mph"));
  g_autofree char *before = g_strdup (tb_compare_table_get_text (table, "hook_board", TB_SIDE_AFTER));

  g_assert_true (moves_range (GTK_RANGE (scale), 18.97));
  /* To the digits shown. */
  g_assert_cmpfloat_with_epsilon (speed_after (tb_window_get_session (window)), 19.0, 1e-9);
  gtk_test_accessible_assert_property (GTK_ACCESSIBLE (scale), GTK_ACCESSIBLE_PROPERTY_VALUE_NOW, 19.0);
  gtk_test_accessible_assert_property (GTK_ACCESSIBLE (scale), GTK_ACCESSIBLE_PROPERTY_VALUE_TEXT,
                                       "19.0 mph");
  g_assert_cmpfloat_with_epsilon (tb_tick_scale_get_tick (TB_TICK_SCALE (scale)), 17.0, 1e-9);
  g_assert_cmpstr (tb_compare_table_get_text (table, "hook_board", TB_SIDE_BEFORE), ==, before);
  g_assert_cmpstr (tb_compare_table_get_text (table, "hook_board", TB_SIDE_AFTER), !=, before);
  g_assert_true (g_str_has_prefix (tb_compare_table_get_difference (table, "hook_board"), "−"));
  g_assert_cmpstr (tb_compare_table_get_difference (table, "actual_speed_mph"), ==, "+2.0");
  gtk_window_destroy (GTK_WINDOW (window));
}

static void
test_typed_entry (void)
{
  TbWindow *window = new_window ();
  TbFieldRow *row = row_of (window, "speed_mph");
  GtkWidget *entry = tb_field_row_get_entry (row);

  enter_text (tb_field_row_get_entry (row), "19");
  g_assert_cmpfloat_with_epsilon (speed_after (tb_window_get_session (window)), 19, 1e-9);
  g_assert_cmpstr (gtk_editable_get_text (GTK_EDITABLE (entry)), ==, "19.0 mph");
  enter_text (tb_field_row_get_entry (row), "quick");
  /* A sentence, the text still there, and nothing changed. */
  g_assert_nonnull (strstr (tb_field_row_get_problem (row), "quick"));
  gtk_test_accessible_assert_state (GTK_ACCESSIBLE (entry), GTK_ACCESSIBLE_STATE_INVALID,
                                    GTK_ACCESSIBLE_INVALID_TRUE);
  g_assert_cmpstr (gtk_editable_get_text (GTK_EDITABLE (entry)), ==, "quick");
  g_assert_cmpfloat_with_epsilon (speed_after (tb_window_get_session (window)), 19, 1e-9);
  enter_text (tb_field_row_get_entry (row), "99");
  g_assert_nonnull (strstr (tb_field_row_get_problem (row), "Speed"));
  enter_text (tb_field_row_get_entry (row), "19 mph");
  g_assert_cmpstr (tb_field_row_get_problem (row), ==, "");
  gtk_test_accessible_assert_state (GTK_ACCESSIBLE (entry), GTK_ACCESSIBLE_STATE_INVALID,
                                    GTK_ACCESSIBLE_INVALID_FALSE);
  g_assert_cmpstr (gtk_editable_get_text (GTK_EDITABLE (entry)), ==, "19.0 mph");
  gtk_window_destroy (GTK_WINDOW (window));
}

static void
test_resets (void)
{
  TbWindow *window = new_window ();
  TbFieldRow *row = row_of (window, "speed_mph");

  enter_text (tb_field_row_get_entry (row), "19");
  g_assert_true (gtk_widget_activate_action (GTK_WIDGET (window), "win.keep-as-before", NULL));
  enter_text (tb_field_row_get_entry (row), "21");
  g_assert_true (gtk_widget_activate_action (GTK_WIDGET (row), "row.reset-to-before", NULL));
  g_assert_cmpfloat_with_epsilon (speed_after (tb_window_get_session (window)), 19, 1e-9);
  g_assert_true (gtk_widget_activate_action (GTK_WIDGET (row), "row.reset-to-default", NULL));
  g_assert_cmpfloat_with_epsilon (speed_after (tb_window_get_session (window)), 17, 1e-9);
  gtk_window_destroy (GTK_WINDOW (window));
}

static void
test_units (void)
{
  TbWindow *window = new_window ();
  TbSession *session = tb_window_get_session (window);
  TbFieldRow *row = row_of (window, "speed_mph");
  GtkWidget *entry = tb_field_row_get_entry (row);

  gtk_widget_activate_action (GTK_WIDGET (window), "win.units", "s", "metric");
  g_assert_cmpint (tb_session_get_units (session), ==, TB_UNITS_METRIC);
  g_assert_cmpstr (gtk_editable_get_text (GTK_EDITABLE (entry)), ==, "27.4 km/h");
  enter_text (tb_field_row_get_entry (row), "30");
  g_assert_cmpfloat_with_epsilon (speed_after (tb_window_get_session (window)), 30 / 1.609344, 1e-9);
  gtk_widget_activate_action (GTK_WIDGET (window), "win.units", "s", "imperial");
  g_assert_cmpstr (gtk_editable_get_text (GTK_EDITABLE (entry)), ==, "18.6 mph");
  /* Units change nothing in the study. */
  gtk_widget_activate_action (GTK_WIDGET (window), "win.undo", NULL);
  g_assert_false (tb_session_get_modified (session));
  gtk_window_destroy (GTK_WINDOW (window));
}

static void
test_pictures_speak (void)
{
  TbWindow *window = new_window ();
  TbLanePanel *lane = FIND (window, TB_TYPE_LANE_PANEL, TB_LANE_PANEL);
  TbPicture *picture = TB_PICTURE (tb_lane_panel_get_picture (lane));
  g_autofree char *first = g_strdup (tb_picture_get_description (picture));

  gtk_test_accessible_assert_role (GTK_ACCESSIBLE (picture), GTK_ACCESSIBLE_ROLE_IMG);
  gtk_test_accessible_assert_property (GTK_ACCESSIBLE (picture), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, first);
  g_assert_nonnull (strstr (first, "Before: "));
  enter_text (tb_field_row_get_entry (row_of (window, "speed_mph")), "19");
  g_assert_cmpstr (tb_picture_get_description (picture), !=, first);
  gtk_test_accessible_assert_property (GTK_ACCESSIBLE (picture), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION,
                                       tb_picture_get_description (picture));
  gtk_window_destroy (GTK_WINDOW (window));
}

static double
board_after (TbWindow *window, const char *name)
{
  return tb_session_get_field (tb_window_get_session (window), TB_SIDE_AFTER,
                               tb_field_find (TB_GROUP_DELIVERY, name));
}

/* One handle of the launch line dragged to the lane's right in one gesture of two moves, and taken back. */
static void
check_handle_dragged (TbWindow *window, TbLineHandle which, const char *name)
{
  TbSession *session = tb_window_get_session (window);
  TbLanePicture *picture = tb_lane_panel_get_picture (FIND (window, TB_TYPE_LANE_PANEL, TB_LANE_PANEL));
  gboolean sideways = tb_lane_picture_get_projection (picture) == TB_LANE_PLAN_SIDEWAYS;
  gboolean left_handed = tb_session_get_setup (session, TB_SIDE_AFTER)->shot.delivery.hand == TB_HAND_LEFT;
  double x, y, board = board_after (window, name), time = tb_session_get_time (session);

  tb_lane_picture_get_handle (picture, which, &x, &y);
  tb_lane_picture_drag_begin (picture, x, y);
  g_assert_cmpint (tb_lane_picture_get_raised (picture), ==, which);
  tb_lane_picture_drag_to (picture, x + (sideways ? 0 : 10), y + (sideways ? 10 : 0));
  tb_lane_picture_drag_to (picture, x + (sideways ? 0 : 20), y + (sideways ? 20 : 0));
  tb_lane_picture_drag_end (picture);
  /* Towards the right the boards of a right-hander fall. */
  if (left_handed)
    g_assert_cmpfloat (board_after (window, name), >, board);
  else
    g_assert_cmpfloat (board_after (window, name), <, board);
  g_assert_cmpfloat (tb_session_get_time (session), ==, time);
  tb_session_undo (session);
  g_assert_cmpfloat_with_epsilon (board_after (window, name), board, 1e-9);
}

static void
test_line_handles (void)
{
  static const char *const views[] = { "plan", "sideways" };
  TbWindow *window = new_window ();

  for (int hand = TB_HAND_RIGHT; hand <= TB_HAND_LEFT; hand++)
    for (gsize i = 0; i < G_N_ELEMENTS (views); i++)
      {
        gtk_widget_activate_action (GTK_WIDGET (window), "win.lane-view", "s", views[i]);
        tb_session_set_field (tb_window_get_session (window), tb_field_find (TB_GROUP_DELIVERY, "hand"), hand,
                              NULL);
        gtk_test_widget_wait_for_draw (GTK_WIDGET (window));
        check_handle_dragged (window, TB_LINE_HANDLE_LAYDOWN, "laydown_board");
        check_handle_dragged (window, TB_LINE_HANDLE_AIM, "aim_board");
      }
  gtk_window_destroy (GTK_WINDOW (window));
}

/* While time goes by only the small moving parts are drawn. */
/* A ball that leaves the lane has no number of turns to the pins. */
static void
test_gutter_ball_speaks (void)
{
  TbWindow *window = new_window ();
  TbPicture *ball = TB_PICTURE (FIND (window, TB_TYPE_BALL_PICTURE, TB_BALL_PICTURE));

  g_assert_nonnull (strstr (tb_picture_get_description (ball), " turns on the way"));
  enter_text (tb_field_row_get_entry (row_of (window, "aim_board")), "2");
  g_assert_nonnull (strstr (tb_picture_get_description (ball), "does not come to the pins: "));
  g_assert_null (strstr (tb_picture_get_description (ball), "–"));
  gtk_window_destroy (GTK_WINDOW (window));
}

static void
test_still_part_is_kept (void)
{
  TbWindow *window = new_window ();
  TbSession *session = tb_window_get_session (window);
  TbPicture *picture
      = TB_PICTURE (tb_lane_panel_get_picture (FIND (window, TB_TYPE_LANE_PANEL, TB_LANE_PANEL)));
  guint drawn = tb_picture_get_still_count (picture);

  for (int i = 1; i <= 10; i++)
    {
      tb_session_set_time (session, 0.2 * i);
      gtk_test_widget_wait_for_draw (GTK_WIDGET (picture));
    }
  g_assert_cmpuint (tb_picture_get_still_count (picture), ==, drawn);
  enter_text (tb_field_row_get_entry (row_of (window, "speed_mph")), "19");
  gtk_test_widget_wait_for_draw (GTK_WIDGET (picture));
  g_assert_cmpuint (tb_picture_get_still_count (picture), ==, drawn + 1);
  gtk_window_destroy (GTK_WINDOW (window));
}

/* What a slider of the delivery changes lies on the lane; the lane itself is drawn once. */
static void
test_ground_is_kept (void)
{
  TbWindow *window = new_window ();
  TbSession *session = tb_window_get_session (window);
  TbPicture *picture
      = TB_PICTURE (tb_lane_panel_get_picture (FIND (window, TB_TYPE_LANE_PANEL, TB_LANE_PANEL)));
  guint drawn = tb_picture_get_ground_count (picture);

  g_assert_cmpuint (drawn, >, 0);
  for (int i = 1; i <= 10; i++)
    {
      tb_session_set_field (session, tb_field_find (TB_GROUP_DELIVERY, "speed_mph"), 16 + 0.1 * i, NULL);
      gtk_test_widget_wait_for_draw (GTK_WIDGET (picture));
    }
  g_assert_cmpuint (tb_picture_get_ground_count (picture), ==, drawn);
  tb_session_set_field (session, tb_field_find (TB_GROUP_LANE, "pattern_scale"), 0.5, NULL);
  gtk_test_widget_wait_for_draw (GTK_WIDGET (picture));
  g_assert_cmpuint (tb_picture_get_ground_count (picture), ==, drawn + 1);
  gtk_window_destroy (GTK_WINDOW (window));
}

static void
test_lane_views (void)
{
  static const char *const views[] = { "sideways", "approach", "plan" };
  TbWindow *window = new_window ();
  TbLanePicture *picture = tb_lane_panel_get_picture (FIND (window, TB_TYPE_LANE_PANEL, TB_LANE_PANEL));
  const TbLaneProjection projections[] = { TB_LANE_PLAN_SIDEWAYS, TB_LANE_FROM_APPROACH, TB_LANE_PLAN };

  for (gsize i = 0; i < G_N_ELEMENTS (views); i++)
    {
      gtk_widget_activate_action (GTK_WIDGET (window), "win.lane-view", "s", views[i]);
      g_assert_cmpint (tb_lane_picture_get_projection (picture), ==, projections[i]);
      gtk_test_widget_wait_for_draw (GTK_WIDGET (picture));
    }
  gtk_window_destroy (GTK_WINDOW (window));
}

/* Reduced motion: a throw is over at once. */
static void
test_throw_without_animation (void)
{
  TbWindow *window = new_window ();
  TbSession *session = tb_window_get_session (window);

  gtk_widget_activate_action (GTK_WIDGET (window), "win.throw", NULL);
  g_assert_false (tb_session_get_playing (session));
  g_assert_cmpfloat (tb_session_get_time (session), ==, tb_session_get_duration (session));
  gtk_window_destroy (GTK_WINDOW (window));
}

static void
test_throw_takes_its_time (void)
{
  TbWindow *window = new_window ();
  TbSession *session = tb_window_get_session (window);
  gint64 start;

  set_animations (TRUE);
  start = g_get_monotonic_time ();
  gtk_widget_activate_action (GTK_WIDGET (window), "win.throw", NULL);
  g_assert_true (tb_session_get_playing (session));
  WAIT_UNTIL (!tb_session_get_playing (session));
  set_animations (FALSE);
  g_assert_cmpfloat (tb_session_get_time (session), ==, tb_session_get_duration (session));
  /* True time is the default, and frames cannot come early. */
  g_assert_cmpfloat ((double) (g_get_monotonic_time () - start) / G_USEC_PER_SEC, >=,
                     0.9 * tb_session_get_duration (session));
  gtk_window_destroy (GTK_WINDOW (window));
}

static void
test_unmapped_stops (void)
{
  TbWindow *window = new_window ();
  TbSession *session = tb_window_get_session (window);

  set_animations (TRUE);
  gtk_widget_activate_action (GTK_WIDGET (window), "win.throw", NULL);
  g_assert_true (tb_session_get_playing (session));
  gtk_widget_hide (GTK_WIDGET (window));
  g_assert_false (tb_session_get_playing (session));
  set_animations (FALSE);
  gtk_window_destroy (GTK_WINDOW (window));
}

static void
test_actions_follow (void)
{
  TbWindow *window = new_window ();
  GtkWidget *widget = GTK_WIDGET (window);
  TbSession *session = tb_window_get_session (window);

  /* Nothing to keep, to swap or to undo: the actions are off and do nothing. */
  gtk_widget_activate_action (widget, "win.swap", NULL);
  gtk_widget_activate_action (widget, "win.undo", NULL);
  g_assert_false (tb_session_get_modified (session));
  enter_text (tb_field_row_get_entry (row_of (window, "speed_mph")), "19");
  gtk_widget_activate_action (widget, "win.swap", NULL);
  g_assert_cmpfloat_with_epsilon (speed_after (tb_window_get_session (window)), 17, 1e-9);
  gtk_widget_activate_action (widget, "win.undo", NULL);
  g_assert_cmpfloat_with_epsilon (speed_after (tb_window_get_session (window)), 19, 1e-9);
  gtk_widget_activate_action (widget, "win.put-back", NULL);
  g_assert_cmpfloat_with_epsilon (speed_after (tb_window_get_session (window)), 17, 1e-9);
  gtk_window_destroy (GTK_WINDOW (window));
}

static void
test_save_and_reopen (void)
{
  TbWindow *window = new_window ();
  TbWindow *other = new_window ();
  TbSession *session = tb_window_get_session (window);
  g_autofree char *folder = g_dir_make_tmp ("tenboard-test-XXXXXX", NULL);
  g_autofree char *path = g_build_filename (folder, "tuesday.tenboard", NULL);
  g_autoptr (GFile) file = g_file_new_for_path (path);

  enter_text (tb_field_row_get_entry (row_of (window, "speed_mph")), "19");
  tb_session_set_texts (session, "Tuesday group", "Less hook, said twice.\n");
  tb_session_mark_saved (session, file);
  g_assert_false (g_file_test (path, G_FILE_TEST_EXISTS));
  tb_session_set_texts (session, "Tuesday group: speed", "Less hook, said twice.\n");
  gtk_widget_activate_action (GTK_WIDGET (window), "win.save", NULL);
  g_assert_true (g_file_test (path, G_FILE_TEST_EXISTS));
  g_assert_false (tb_session_get_modified (session));
  g_assert_true (tb_window_load (other, file));
  g_assert_true (
      tb_study_equal (tb_session_get_study (session), tb_session_get_study (tb_window_get_session (other))));
  g_assert_cmpstr (gtk_window_get_title (GTK_WINDOW (other)), ==, "Tuesday group: speed – Tenboard");
  gtk_window_destroy (GTK_WINDOW (window));
  gtk_window_destroy (GTK_WINDOW (other));
  g_unlink (path);
  g_rmdir (folder);
}

static void
test_bad_file_loses_nothing (void)
{
  TbWindow *window = new_window ();
  TbSession *session = tb_window_get_session (window);
  g_autoptr (GFile) file = g_file_new_for_path ("/nowhere/at-all.tenboard");
  GtkInfoBar *bar = FIND (window, GTK_TYPE_INFO_BAR, GTK_INFO_BAR);

  enter_text (tb_field_row_get_entry (row_of (window, "speed_mph")), "19");
  g_assert_false (tb_window_load (window, file));
  g_assert_true (gtk_info_bar_get_revealed (bar));
  g_assert_cmpfloat_with_epsilon (speed_after (tb_window_get_session (window)), 19, 1e-9);
  g_assert_true (tb_session_can_undo (session));
  gtk_window_destroy (GTK_WINDOW (window));
}

static void
test_cautions (void)
{
  TbWindow *window = new_window ();
  GtkWidget *loft = find (GTK_WIDGET (row_of (window, "loft_angle_deg")), TB_TYPE_CAUTION_BUTTON);
  GtkWidget *speed = find (GTK_WIDGET (row_of (window, "speed_mph")), TB_TYPE_CAUTION_BUTTON);

  g_assert_true (gtk_widget_get_visible (loft));
  g_assert_false (gtk_widget_get_visible (speed));
  gtk_window_destroy (GTK_WINDOW (window));
}

static void
test_text_sizes (void)
{
  TbWindow *window = new_window ();
  double small, large;

  gtk_widget_activate_action (GTK_WIDGET (window), "win.text-size", "s", "100");
  gtk_test_widget_wait_for_draw (GTK_WIDGET (window));
  small = tb_style_theme_for (GTK_WIDGET (window)).text_size;
  gtk_widget_activate_action (GTK_WIDGET (window), "win.text-size", "s", "150");
  WAIT_UNTIL (tb_style_get_text_size (GTK_WIDGET (window)) == 150);
  gtk_test_widget_wait_for_draw (GTK_WIDGET (window));
  large = tb_style_theme_for (GTK_WIDGET (window)).text_size;
  /* Drawings grow with the widgets. */
  g_assert_cmpfloat_with_epsilon (large / small, 1.5, 0.01);
  gtk_widget_activate_action (GTK_WIDGET (window), "win.text-size", "s", "automatic");
  gtk_window_destroy (GTK_WINDOW (window));
  g_assert_cmpint (tb_style_suitable_text_size (1024, 600), ==, 100);
  g_assert_cmpint (tb_style_suitable_text_size (1280, 800), ==, 100);
  g_assert_cmpint (tb_style_suitable_text_size (3840, 2160), ==, 250);
}

static void
test_library_lists (void)
{
  TbWindow *window = new_window ();
  TbSession *session = tb_window_get_session (window);
  GtkWidget *row = find (GTK_WIDGET (window), TB_TYPE_LIBRARY_ROW);
  GtkDropDown *list = FIND (row, GTK_TYPE_DROP_DOWN, GTK_DROP_DOWN);

  gtk_test_accessible_assert_property (GTK_ACCESSIBLE (list), GTK_ACCESSIBLE_PROPERTY_LABEL, "Bowler");
  for (guint i = 0; i < g_list_model_get_n_items (gtk_drop_down_get_model (list)); i++)
    {
      gpointer item;

      gtk_drop_down_set_selected (list, i);
      item = gtk_drop_down_get_selected_item (list);
      g_assert_true (TB_IS_LIBRARY_ENTRY (item));
      g_assert_cmpstr (tb_session_get_setup (session, TB_SIDE_AFTER)->bowler_id, ==,
                       tb_library_entry_get_id (item));
      gtk_test_widget_wait_for_draw (GTK_WIDGET (window));
    }
  gtk_window_destroy (GTK_WINDOW (window));
}

static void
test_finalized (void)
{
  TbWindow *window = new_window ();
  TbSession *session = tb_window_get_session (window);
  gpointer watched_window = window, watched_session = session;

  enter_text (tb_field_row_get_entry (row_of (window, "speed_mph")), "19");
  g_object_add_weak_pointer (G_OBJECT (window), &watched_window);
  g_object_add_weak_pointer (G_OBJECT (session), &watched_session);
  gtk_window_destroy (GTK_WINDOW (window));
  do_pending ();
  g_assert_null (watched_window);
  g_assert_null (watched_session);
}

static void
add_tests (void)
{
  g_test_add_func ("/window/line-handles", test_line_handles);
  g_test_add_func ("/window/every-field-has-a-control", test_every_field_has_a_control);
  g_test_add_func ("/window/slider-changes-the-table", test_slider_changes_the_table);
  g_test_add_func ("/window/typed-entry", test_typed_entry);
  g_test_add_func ("/window/resets", test_resets);
  g_test_add_func ("/window/units", test_units);
  g_test_add_func ("/window/pictures-speak", test_pictures_speak);
  g_test_add_func ("/window/gutter-ball-speaks", test_gutter_ball_speaks);
  g_test_add_func ("/window/still-part-is-kept", test_still_part_is_kept);
  g_test_add_func ("/window/ground-is-kept", test_ground_is_kept);
  g_test_add_func ("/window/lane-views", test_lane_views);
  g_test_add_func ("/window/throw-without-animation", test_throw_without_animation);
  g_test_add_func ("/window/throw-takes-its-time", test_throw_takes_its_time);
  g_test_add_func ("/window/unmapped-stops", test_unmapped_stops);
  g_test_add_func ("/window/actions-follow", test_actions_follow);
  g_test_add_func ("/window/save-and-reopen", test_save_and_reopen);
  g_test_add_func ("/window/bad-file-loses-nothing", test_bad_file_loses_nothing);
  g_test_add_func ("/window/cautions", test_cautions);
  g_test_add_func ("/window/text-sizes", test_text_sizes);
  g_test_add_func ("/window/library-lists", test_library_lists);
  g_test_add_func ("/window/finalized", test_finalized);
}

int
main (int argc, char **argv)
{
  start_tests (&argc, &argv);
  start_application ();
  add_tests ();
  return run_tests ();
}
