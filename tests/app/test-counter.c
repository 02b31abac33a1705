/* The ball counter from inside: what its pages do to the study, what they say, and that the window goes away.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include <string.h>

#include "tb-bag-page.h"
#include "tb-ball-editor.h"
#include "tb-counter-window.h"
#include "tb-drilling.h"
#include "tb-flare-page.h"
#include "tb-grip-editor.h"
#include "tb-layout-picture.h"
#include "tb-reading-page.h"
#include "tb-surface-log-document.h"
#include "tb-surface-page.h"
#include "window-support.h"

typedef struct Counter
{
  TbWindow *window;
  TbCounterWindow *counter;
  TbSession *session;
} Counter;

static Counter
open_counter (const char *page)
{
  Counter self = { .window = new_window () };

  choose_action (self.window, "win.ball-counter", page);
  self.counter = find_window (TB_TYPE_COUNTER_WINDOW);
  g_assert_nonnull (self.counter);
  gtk_test_widget_wait_for_draw (GTK_WIDGET (self.counter));
  self.session = tb_window_get_session (self.window);
  return self;
}

static void
close_counter (Counter *self)
{
  gtk_window_destroy (GTK_WINDOW (self->window));
  do_pending ();
}

static const TbBall *
ball_of (const Counter *self)
{
  return &tb_session_get_setup (self->session, TB_SIDE_AFTER)->shot.ball;
}

static void
test_comes_and_goes (void)
{
  Counter self = open_counter ("ball");
  gpointer window = self.window, counter = self.counter;

  g_object_add_weak_pointer (G_OBJECT (self.window), &window);
  g_object_add_weak_pointer (G_OBJECT (self.counter), &counter);
  /* Asked for again it is the same one. */
  gtk_widget_activate_action (GTK_WIDGET (self.window), "win.ball-counter", "s", "layout");
  g_assert_true (find_window (TB_TYPE_COUNTER_WINDOW) == self.counter);
  /* Closed by itself, it comes back. */
  gtk_window_destroy (GTK_WINDOW (self.counter));
  g_assert_null (counter);
  gtk_widget_activate_action (GTK_WIDGET (self.window), "win.ball-counter", "s", "bag");
  counter = find_window (TB_TYPE_COUNTER_WINDOW);
  g_assert_nonnull (counter);
  g_object_add_weak_pointer (G_OBJECT (counter), &counter);
  /* It goes with the study's window. */
  close_counter (&self);
  g_assert_null (counter);
  g_assert_null (window);
}

/* Ball. */

static void
name_ball (GtkWidget *editor, const char *name)
{
  gtk_editable_set_text (GTK_EDITABLE (find (editor, GTK_TYPE_ENTRY)), name);
}

static void
test_library (void)
{
  Counter self = open_counter ("ball");
  GtkWidget *editor = tb_counter_window_get_page (self.counter, "ball");
  TbLibrary *library = tb_session_get_library (self.session);
  const TbField *rg = tb_field_find (TB_GROUP_BALL, "rg_in");
  guint built_in = g_list_model_get_n_items (tb_library_get_entries (library, TB_DOCUMENT_BALL));
  TbLibraryEntry *entry;

  tb_session_set_field (self.session, rg, 2.55, NULL);
  /* No name, no ball. */
  name_ball (editor, "  ");
  gtk_widget_activate_action (editor, "ball.save-copy", NULL);
  g_assert_cmpuint (g_list_model_get_n_items (tb_library_get_entries (library, TB_DOCUMENT_BALL)), ==,
                    built_in);
  name_ball (editor, "My Ball, the Blue!");
  gtk_widget_activate_action (editor, "ball.save-copy", NULL);
  g_assert_cmpstr (tb_session_get_setup (self.session, TB_SIDE_AFTER)->ball_id, ==, "my-ball-the-blue");
  entry = tb_library_find (library, TB_DOCUMENT_BALL, "my-ball-the-blue", NULL);
  g_assert_nonnull (entry);
  g_assert_cmpfloat_with_epsilon (tb_in_from_metres (tb_library_entry_get_ball (entry)->ball.rg), 2.55,
                                  1e-12);
  /* Edited and saved over. */
  tb_session_set_field (self.session, rg, 2.6, NULL);
  name_ball (editor, "My ball");
  gtk_widget_activate_action (editor, "ball.save", NULL);
  entry = tb_library_find (library, TB_DOCUMENT_BALL, "my-ball-the-blue", NULL);
  g_assert_cmpfloat_with_epsilon (tb_in_from_metres (tb_library_entry_get_ball (entry)->ball.rg), 2.6, 1e-12);
  g_assert_cmpstr (tb_library_entry_get_name (entry), ==, "My ball");
  /* Asked once more first. */
  gtk_widget_activate_action (editor, "ball.delete", NULL);
  g_assert_nonnull (tb_library_find (library, TB_DOCUMENT_BALL, "my-ball-the-blue", NULL));
  gtk_widget_activate_action (editor, "ball.delete", NULL);
  g_assert_null (tb_library_find (library, TB_DOCUMENT_BALL, "my-ball-the-blue", NULL));
  /* It is still in the study. */
  g_assert_cmpfloat_with_epsilon (tb_in_from_metres (ball_of (&self)->rg), 2.6, 1e-12);
  gtk_widget_activate_action (editor, "ball.new", NULL);
  g_assert_null (tb_session_get_setup (self.session, TB_SIDE_AFTER)->ball_id);
  g_assert_cmpfloat (ball_of (&self)->rg, ==, tb_ball_default ().rg);
  close_counter (&self);
}

static void
expect_id (TbLibrary *library, const char *name, const char *id)
{
  g_autofree char *made = tb_ball_editor_new_id (library, name);

  g_assert_cmpstr (made, ==, id);
  g_assert_true (tb_id_is_valid (made));
}

static void
test_ids (void)
{
  TbLibrary *library = tb_application_get_library (application);
  g_autofree char *lengthy = g_strnfill (400, 'x'), *made = tb_ball_editor_new_id (library, lengthy);

  expect_id (library, "Blue", "blue");
  expect_id (library, "--- ---", "ball");
  expect_id (library, "Ärger, 7", "arger-7");
  expect_id (library, "漢字", "ball");
  /* That of a built-in ball is taken. */
  expect_id (library, "Hybrid, middle", "hybrid-middle-2");
  g_assert_true (tb_id_is_valid (made));
}

/* Layout. */

static void
test_layout (void)
{
  Counter self = open_counter ("layout");
  GtkWidget *page = tb_counter_window_get_page (self.counter, "layout");
  TbLayoutPicture *picture = TB_LAYOUT_PICTURE (find (page, TB_TYPE_LAYOUT_PICTURE));
  double before = ball_of (&self)->pin_to_pap, middle = 0.5 * gtk_widget_get_width (GTK_WIDGET (picture));

  gtk_test_accessible_assert_role (GTK_ACCESSIBLE (picture), GTK_ACCESSIBLE_ROLE_IMG);
  g_assert_nonnull (strstr (tb_picture_get_description (TB_PICTURE (picture)), "50° × 4 in × 40°"));
  tb_layout_picture_move (picture, TB_LAYOUT_PIN, middle,
                          0.35 * gtk_widget_get_height (GTK_WIDGET (picture)));
  g_assert_cmpfloat (ball_of (&self)->pin_to_pap, !=, before);
  /* To the eighth of an inch. */
  g_assert_cmpfloat_with_epsilon (remainder (tb_in_from_metres (ball_of (&self)->pin_to_pap), 0.125), 0,
                                  1e-9);
  tb_session_undo (self.session);
  g_assert_cmpfloat (ball_of (&self)->pin_to_pap, ==, before);
  close_counter (&self);
}

static void
test_grip (void)
{
  Counter self = open_counter ("layout");
  GtkWidget *grip = find (tb_counter_window_get_page (self.counter, "layout"), TB_TYPE_GRIP_EDITOR);
  GtkWidget *spin = find (grip, GTK_TYPE_SPIN_BUTTON);
  TbGrip read;

  click (grip, "_Drill a typical grip");
  g_assert_cmpint (ball_of (&self)->n_holes, ==, 3);
  gtk_test_accessible_assert_property (GTK_ACCESSIBLE (spin), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                       "Span, middle finger, in");
  gtk_spin_button_set_value (GTK_SPIN_BUTTON (spin), 4.5);
  g_assert_true (tb_grip_from_ball (ball_of (&self), &read));
  g_assert_cmpfloat_with_epsilon (tb_in_from_metres (read.span[TB_GRIP_MIDDLE]), 4.5, 1e-3);
  click (grip, "_Take the holes away");
  g_assert_cmpint (ball_of (&self)->n_holes, ==, 0);
  close_counter (&self);
}

/* Surface, flare, bag. */

static void
test_surface (void)
{
  Counter self = open_counter ("surface");
  GtkWidget *page = tb_counter_window_get_page (self.counter, "surface");
  TbSurfacePage *surface = TB_SURFACE_PAGE (page);
  double before = ball_of (&self)->cover.roughness;

  WAIT_UNTIL (!tb_surface_page_is_busy (surface));
  g_assert_nonnull (strstr (tb_surface_page_get_words (surface), "own pocket line"));
  g_assert_nonnull (strstr (tb_surface_page_get_words (surface), "On the same line"));
  gtk_widget_activate_action (page, "surface.take-games", NULL);
  g_assert_cmpfloat (ball_of (&self)->cover.roughness, <, before);
  /* The curves follow. */
  g_assert_true (tb_surface_page_is_busy (surface));
  WAIT_UNTIL (!tb_surface_page_is_busy (surface));
  close_counter (&self);
}

static void
test_surface_closed_early (void)
{
  Counter self = open_counter ("surface");

  close_counter (&self);
}

static void
test_log (void)
{
  Counter self = open_counter ("surface");
  GtkWidget *page = tb_counter_window_get_page (self.counter, "surface");
  const char *id = tb_session_get_setup (self.session, TB_SIDE_AFTER)->ball_id;
  g_autoptr (TbBallSurface) saved = NULL;
  g_autoptr (GError) error = NULL;

  click (page, "_Add");
  saved = tb_ball_surface_load (id, 1e-6, &error);
  g_assert_no_error (error);
  g_assert_cmpuint (saved->log->len, ==, 1);
  g_assert_cmpint (((TbSurfaceEntry *) saved->log->pdata[0])->work, ==, TB_SURFACE_MACHINE);
  g_assert_true (tb_ball_surface_remove (id, NULL));
  close_counter (&self);
}

static void
test_flare (void)
{
  Counter self = open_counter ("flare");
  TbFlarePage *page = TB_FLARE_PAGE (tb_counter_window_get_page (self.counter, "flare"));

  g_assert_nonnull (strstr (tb_flare_page_get_words (page), "left dry"));
  tb_session_set_field (self.session, tb_field_find (TB_GROUP_BALL, "pin_to_pap_in"), 0, NULL);
  g_assert_nonnull (strstr (tb_flare_page_get_words (page), "its own oil"));
  close_counter (&self);
}

static void
test_bag (void)
{
  Counter self = open_counter ("bag");
  GtkWidget *page = tb_counter_window_get_page (self.counter, "bag");
  TbBagPage *bag = TB_BAG_PAGE (page);
  GtkSelectionModel *model = gtk_column_view_get_model (tb_bag_page_get_table (bag));
  GListModel *balls = tb_library_get_entries (tb_session_get_library (self.session), TB_DOCUMENT_BALL);
  GListModel *columns = gtk_column_view_get_columns (tb_bag_page_get_table (bag));

  WAIT_UNTIL (!tb_bag_page_is_busy (bag));
  g_assert_cmpuint (g_list_model_get_n_items (G_LIST_MODEL (model)), ==, g_list_model_get_n_items (balls));
  g_assert_nonnull (strstr (tb_bag_page_get_words (bag), "the bag spans"));
  /* Any column sorts, both ways. */
  for (guint i = 0; i < g_list_model_get_n_items (columns); i++)
    {
      g_autoptr (GtkColumnViewColumn) column = g_list_model_get_item (columns, i);

      gtk_column_view_sort_by_column (tb_bag_page_get_table (bag), column, GTK_SORT_DESCENDING);
      gtk_column_view_sort_by_column (tb_bag_page_get_table (bag), column, GTK_SORT_ASCENDING);
    }
  gtk_selection_model_select_item (model, 0, TRUE);
  gtk_widget_activate_action (page, "bag.take", NULL);
  g_assert_true (tb_session_can_undo (self.session) || g_list_model_get_n_items (balls) == 1);
  close_counter (&self);
}

/* Reading. */

static void
test_reading (void)
{
  Counter self = open_counter ("reading");
  TbReadingPage *page = TB_READING_PAGE (tb_counter_window_get_page (self.counter, "reading"));
  const TbField *revs = tb_field_find (TB_GROUP_DELIVERY, "rev_rate_rpm");

  gtk_spin_button_set_value (tb_reading_page_get_input (page, TB_READING_REV_RATE, 0), 3);
  gtk_spin_button_set_value (tb_reading_page_get_input (page, TB_READING_REV_RATE, 1), 30);
  gtk_spin_button_set_value (tb_reading_page_get_input (page, TB_READING_REV_RATE, 2), 60);
  /* 3 turns in half a second. */
  g_assert_nonnull (strstr (tb_reading_page_get_answer (page, TB_READING_REV_RATE), "360 rpm ± "));
  click (page, "Take the rev rate");
  g_assert_cmpfloat_with_epsilon (tb_session_get_field (self.session, TB_SIDE_AFTER, revs), 360, 1e-6);
  /* What no control reaches is refused. */
  gtk_spin_button_set_value (tb_reading_page_get_input (page, TB_READING_REV_RATE, 1), 1);
  click (page, "Take the rev rate");
  g_assert_cmpfloat_with_epsilon (tb_session_get_field (self.session, TB_SIDE_AFTER, revs), 360, 1e-6);
  g_assert_nonnull (strstr (tb_reading_page_get_answer (page, TB_READING_REV_RATE), "measure again"));
  for (int kind = 0; kind < TB_N_READINGS; kind++)
    g_assert_cmpstr (tb_reading_page_get_answer (page, (TbReadingKind) kind), !=, "");
  close_counter (&self);
}

static void
add_tests (void)
{
  g_test_add_func ("/counter/comes-and-goes", test_comes_and_goes);
  g_test_add_func ("/counter/library", test_library);
  g_test_add_func ("/counter/ids", test_ids);
  g_test_add_func ("/counter/layout", test_layout);
  g_test_add_func ("/counter/grip", test_grip);
  g_test_add_func ("/counter/surface", test_surface);
  g_test_add_func ("/counter/surface-closed-early", test_surface_closed_early);
  g_test_add_func ("/counter/log", test_log);
  g_test_add_func ("/counter/flare", test_flare);
  g_test_add_func ("/counter/bag", test_bag);
  g_test_add_func ("/counter/reading", test_reading);
}

int
main (int argc, char **argv)
{
  start_tests (&argc, &argv);
  start_application ();
  add_tests ();
  return run_tests ();
}
