/* Lane play from inside: maps that follow the session, strips with a way back, games that are played, feet
 * and boards, and windows that go away.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include <string.h>

#include "tb-lane-window.h"
#include "tb-lines-page.h"
#include "tb-pattern-editor.h"
#include "tb-room-page.h"
#include "tb-style.h"
#include "tb-wear-page.h"
#include "window-support.h"

typedef struct Fixture
{
  TbLibrary *library;
  TbSession *session;
  TbLaneWindow *window;
} Fixture;

static void
set_up (Fixture *self, gconstpointer page)
{
  self->library = tb_library_new ();
  self->session = tb_session_new (self->library);
  self->window = tb_lane_window_new (NULL, self->session);
  tb_lane_window_show_page (self->window, page);
  show_window (self->window);
}

static void
tear_down (Fixture *self, gconstpointer page)
{
  if (self->window != NULL)
    close_for_good (self->window);
  g_object_unref (self->session);
  g_object_unref (self->library);
}

static gpointer
page_of (Fixture *self, const char *name)
{
  return tb_lane_window_get_page (self->window, name);
}

static TbSetup *
after (Fixture *self)
{
  return tb_session_get_setup (self->session, TB_SIDE_AFTER);
}

static const TbField *
delivery_field (const char *name)
{
  return tb_field_find (TB_GROUP_DELIVERY, name);
}

/* Room. */

static void
check_map_of (TbRoomPage *page, TbSide side, TbSetup *setup)
{
  const TbRoomMap *map = tb_room_page_get_map (page, side);
  g_autofree TbWorkspace *workspace = g_malloc (tb_workspace_size ());
  TbShot shot = setup->shot;
  TbPath path = { 0 };

  g_assert_nonnull (map);
  g_assert_cmpint (map->stride, ==, 1);
  shot.options.edgeless = true;
  g_assert_cmpint (tb_shot_run (&shot, workspace, &path, NULL), ==, TB_OK);
  g_assert_cmpfloat (tb_room_map_point (map, map->axis[0].count / 2, map->axis[1].count / 2)->x_at_pins, ==,
                     path.measures.x_at_pins);
}

/* What the picture shows is told in words as well. */
static void
check_described (TbLanePage *page, const char *word)
{
  GtkAccessible *picture = GTK_ACCESSIBLE (tb_lane_page_get_picture (page));
  g_autofree char *description
      = gtk_test_accessible_check_property (picture, GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, "nothing");

  g_assert_nonnull (description);
  g_assert_nonnull (strstr (description, word));
}

/* A slider is dragged: when it rests, the maps are those of the session, and before's is still before's. */
static void
test_room_follows (Fixture *self, gconstpointer data)
{
  TbRoomPage *page = page_of (self, "room");

  for (double speed = 17; speed <= 18; speed += 0.2)
    {
      set_speed (self->session, speed);
      g_main_context_iteration (NULL, FALSE);
    }
  WAIT_UNTIL (!tb_room_page_is_busy (page));
  check_map_of (page, TB_SIDE_AFTER, after (self));
  check_map_of (page, TB_SIDE_BEFORE, tb_session_get_setup (self->session, TB_SIDE_BEFORE));
  check_described (TB_LANE_PAGE (page), "±");
}

/* Hidden, it rests; seen again, it has what was missed. */
static void
test_room_hidden (Fixture *self, gconstpointer data)
{
  TbRoomPage *page = page_of (self, "room");

  tb_lane_window_show_page (self->window, "lines");
  gtk_test_widget_wait_for_draw (GTK_WIDGET (self->window));
  WAIT_UNTIL (!tb_room_page_is_busy (page));
  set_speed (self->session, 18);
  g_assert_false (tb_room_page_is_busy (page));
  tb_lane_window_show_page (self->window, "room");
  gtk_test_widget_wait_for_draw (GTK_WIDGET (self->window));
  WAIT_UNTIL (!tb_room_page_is_busy (page));
  check_map_of (page, TB_SIDE_AFTER, after (self));
}

static void
test_room_misses (Fixture *self, gconstpointer data)
{
  TbRoomPage *page = page_of (self, "room");

  tb_room_page_set_misses (page, TB_MISS_PARALLEL, TB_MISS_REV_RATE);
  WAIT_UNTIL (!tb_room_page_is_busy (page));
  g_assert_cmpstr (tb_room_page_get_map (page, TB_SIDE_AFTER)->axis[0].field->name, ==, "laydown_board");
  g_assert_cmpstr (tb_room_page_get_map (page, TB_SIDE_AFTER)->axis[1].field->name, ==, "rev_rate_rpm");
  check_map_of (page, TB_SIDE_AFTER, after (self));
}

/* Pattern. */

static void
make_strips (Fixture *self)
{
  TbStripsPlan plan
      = { .length = tb_metres_from_ft (40), .volume = tb_cubic_metres_from_ml (24), .ratio = 5, .taper = 1 };
  TbStrip strips[TB_STRIPS_PLAN_COUNT];
  g_autoptr (TbPattern) pattern = NULL;
  g_autoptr (TbSetup) setup = NULL;

  g_assert_true (tb_strips_plan (&plan, strips));
  pattern = tb_pattern_new_strips (NULL, "Mine", strips, TB_STRIPS_PLAN_COUNT, NULL);
  setup = tb_setup_with_pattern (after (self), pattern);
  tb_session_set_after (self->session, setup);
}

/* A drag of many steps is one to undo; the run is thrown on the changed film at every step. */
static void
test_pattern_drag (Fixture *self, gconstpointer data)
{
  TbPatternEditor *page = page_of (self, "pattern");
  TbStrip strip;
  double board;

  make_strips (self);
  tb_pattern_editor_select (page, 0);
  strip = after (self)->pattern->strips[0];
  board = tb_session_get_run (self->session, TB_SIDE_AFTER)->path.measures.x_at_pins;
  tb_session_begin_gesture (self->session);
  for (int i = 1; i <= 10; i++)
    {
      strip.end = tb_metres_from_ft (40 + i);
      g_assert_true (tb_pattern_editor_change (page, &strip));
    }
  tb_session_end_gesture (self->session);
  g_assert_cmpfloat (after (self)->pattern->strips[0].end, ==, tb_metres_from_ft (50));
  g_assert_cmpfloat (tb_session_get_run (self->session, TB_SIDE_AFTER)->path.measures.x_at_pins, !=, board);
  g_assert_null (after (self)->pattern->id);
  tb_session_undo (self->session);
  g_assert_cmpfloat (after (self)->pattern->strips[0].end, ==, tb_metres_from_ft (40));
  g_assert_cmpfloat (tb_session_get_run (self->session, TB_SIDE_AFTER)->path.measures.x_at_pins, ==, board);
}

/* What is no strip is refused, and nothing changes. */
static void
test_pattern_refused (Fixture *self, gconstpointer data)
{
  TbPatternEditor *page = page_of (self, "pattern");
  TbPattern *pattern;
  TbStrip strip;

  make_strips (self);
  tb_pattern_editor_select (page, 2);
  pattern = after (self)->pattern;
  strip = pattern->strips[2];
  strip.left_board = 99;
  g_assert_false (tb_pattern_editor_change (page, &strip));
  g_assert_true (after (self)->pattern == pattern);
  tb_session_undo (self->session);
  g_assert_cmpint (tb_pattern_editor_get_selected (page), ==, -1);
  g_assert_false (tb_pattern_editor_change (page, &strip));
}

/* Wear. */

static void
test_wear (Fixture *self, gconstpointer data)
{
  TbWearPage *page = page_of (self, "wear");

  tb_wear_page_set_games (page, 0.5);
  tb_wear_page_set_games (page, 1);
  WAIT_UNTIL (!tb_wear_page_is_busy (page));
  g_assert_cmpfloat (after (self)->shot.lane.games_played, ==, 1);
  g_assert_nonnull (after (self)->worn);
  g_assert_true (tb_session_get_path (self->session, TB_SIDE_AFTER) != NULL);
  g_assert_null (tb_session_get_setup (self->session, TB_SIDE_BEFORE)->worn);
  tb_wear_page_set_games (page, 0);
  WAIT_UNTIL (!tb_wear_page_is_busy (page));
  g_assert_null (after (self)->worn);
}

/* Lines. */

/* Feet follow the line, wherever it is changed. */
static void
test_lines (Fixture *self, gconstpointer data)
{
  TbLinesPage *page = page_of (self, "lines");
  TbStance stance;

  g_assert_true (tb_session_set_field (self->session, delivery_field ("laydown_board"), 20, NULL));
  stance = tb_lines_page_get_stance (page);
  g_assert_cmpfloat (fabs (tb_stance_laydown_board (&stance) - 20), <, 1e-9);
  tb_lines_page_show_spare (page, 9);
  tb_lines_page_show_spare (page, -1);
  g_assert_nonnull (strstr (tb_lane_page_get_words (TB_LANE_PAGE (page)), "Misses"));
}

/* A number is typed, and the window closed without Enter: the number is taken, and nothing is asked of what
 * is gone. */
static void
test_typed_then_closed (Fixture *self, gconstpointer data)
{
  GtkWidget *spin = find (page_of (self, "lines"), GTK_TYPE_SPIN_BUTTON);
  GtkEditable *text = gtk_editable_get_delegate (GTK_EDITABLE (spin));
  g_autoptr (TbSetup) untouched = tb_setup_ref (after (self));

  gtk_widget_grab_focus (GTK_WIDGET (text));
  g_assert_true (gtk_widget_has_focus (GTK_WIDGET (text)));
  gtk_editable_set_text (text, "21");
  gtk_window_destroy (GTK_WINDOW (g_steal_pointer (&self->window)));
  g_assert_false (tb_setup_equal (untouched, after (self)));
}

int
main (int argc, char **argv)
{
  start_tests (&argc, &argv);
  tb_style_init (gdk_display_get_default ());
  g_test_add ("/lane-play/room-follows", Fixture, "room", set_up, test_room_follows, tear_down);
  g_test_add ("/lane-play/room-hidden", Fixture, "room", set_up, test_room_hidden, tear_down);
  g_test_add ("/lane-play/room-misses", Fixture, "room", set_up, test_room_misses, tear_down);
  g_test_add ("/lane-play/pattern-drag", Fixture, "pattern", set_up, test_pattern_drag, tear_down);
  g_test_add ("/lane-play/pattern-refused", Fixture, "pattern", set_up, test_pattern_refused, tear_down);
  g_test_add ("/lane-play/wear", Fixture, "wear", set_up, test_wear, tear_down);
  g_test_add ("/lane-play/lines", Fixture, "lines", set_up, test_lines, tear_down);
  g_test_add ("/lane-play/typed-then-closed", Fixture, "lines", set_up, test_typed_then_closed, tear_down);
  return run_tests ();
}
