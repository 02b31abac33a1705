/* Words beside the controls and measures they explain: reached by F1 from every control, one more stop for
 * Tab in a whole table, links from word to word.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "tb-choice-row.h"
#include "tb-compare-table.h"
#include "tb-controls-panel.h"
#include "tb-core.h"
#include "tb-glossary.h"
#include "tb-word.h"
#include "window-support.h"

/* Takes the popover away, from the tree of widgets as well. */
static void
close_popover (GtkWidget *popover)
{
  g_object_ref (popover);
  gtk_popover_popdown (GTK_POPOVER (popover));
  WAIT_UNTIL (gtk_widget_get_parent (popover) == NULL);
  g_object_unref (popover);
}

/* F1 where the focus is leads to the word behind a name. */
static void
assert_explains (TbWindow *window, const char *name)
{
  GtkWidget *popover;

  GtkWidget *focus = gtk_window_get_focus (GTK_WINDOW (window));

  g_assert_true (tb_word_show_focused (GTK_WINDOW (window)));
  popover = find (window, TB_TYPE_WORD_POPOVER);
  g_assert_nonnull (popover);
  g_assert_cmpstr (tb_word_popover_get_term (TB_WORD_POPOVER (popover)), ==, tb_glossary_for_name (name)->id);
  close_popover (popover);
  /* The focus comes back. */
  g_assert_true (gtk_window_get_focus (GTK_WINDOW (window)) == focus);
}

static void
test_every_control (void)
{
  TbWindow *window = new_window ();
  TbControlsPanel *controls = TB_CONTROLS_PANEL (find (window, TB_TYPE_CONTROLS_PANEL));

  for (const TbField *field = tb_field_table; field->name != NULL; field++)
    {
      GtkWidget *row = tb_controls_panel_get_row (controls, field->name);
      GtkWidget *inside = TB_IS_CHOICE_ROW (row) ? find (row, GTK_TYPE_DROP_DOWN)
                                                 : tb_field_row_get_entry (TB_FIELD_ROW (row));

      /* What is folded away cannot have the focus. */
      if (!gtk_widget_get_mapped (inside))
        continue;
      gtk_widget_grab_focus (inside);
      assert_explains (window, field->name);
    }
  gtk_window_destroy (GTK_WINDOW (window));
}

static void
test_without_a_word (void)
{
  TbWindow *window = new_window ();

  /* The throw button. */
  g_assert_nonnull (gtk_window_get_focus (GTK_WINDOW (window)));
  g_assert_false (tb_word_show_focused (GTK_WINDOW (window)));
  gtk_window_destroy (GTK_WINDOW (window));
}

static void
test_table (void)
{
  TbWindow *window = new_window ();
  GtkWidget *table = find (window, TB_TYPE_COMPARE_TABLE), *grid = find (table, GTK_TYPE_GRID);

  g_assert_true (gtk_widget_grab_focus (grid));
  assert_explains (window, "hook_board");
  g_assert_true (press_key (grid, GDK_KEY_Down));
  assert_explains (window, "board_at_pins");
  g_assert_true (press_key (grid, GDK_KEY_End));
  assert_explains (window, "time_s");
  /* Past the end Tab and the arrows go on to the next widget. */
  g_assert_false (press_key (grid, GDK_KEY_Down));
  g_assert_true (press_key (grid, GDK_KEY_Home));
  g_assert_false (press_key (grid, GDK_KEY_Up));
  assert_explains (window, "hook_board");
  gtk_window_destroy (GTK_WINDOW (window));
}

static guint
count_stops (GtkWidget *widget)
{
  guint count = gtk_widget_get_focusable (widget) && !GTK_IS_BUTTON (widget);

  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL;
       child = gtk_widget_get_next_sibling (child))
    count += count_stops (child);
  return count;
}

/* A table of twenty measures is two stops for Tab, one for each part. */
static void
test_tab_order (void)
{
  TbWindow *window = new_window ();

  g_assert_cmpuint (count_stops (find (window, TB_TYPE_COMPARE_TABLE)), ==, 2);
  gtk_window_destroy (GTK_WINDOW (window));
}

static gboolean
has_links (GtkWidget *widget)
{
  return GTK_IS_LABEL (widget) && strstr (gtk_label_get_label (GTK_LABEL (widget)), "<a ") != NULL;
}

static void
test_links (void)
{
  TbWindow *window = new_window ();
  GtkWidget *table = find (window, TB_TYPE_COMPARE_TABLE);
  TbWordPopover *popover = tb_word_show (table, table, "flare_in");
  g_autofree char *label = NULL;
  gboolean handled = FALSE;

  g_assert_cmpstr (tb_word_popover_get_term (popover), ==, "flare");
  g_signal_emit_by_name (find_with (popover, has_links), "activate-link", "differential", &handled);
  g_assert_true (handled);
  do_pending ();
  g_assert_cmpstr (tb_word_popover_get_term (popover), ==, "differential");
  label = g_strdup_printf ("Differential: %s", tb_glossary_find ("differential")->text);
  gtk_test_accessible_assert_property (GTK_ACCESSIBLE (popover), GTK_ACCESSIBLE_PROPERTY_LABEL, label);
  close_popover (GTK_WIDGET (popover));
  gtk_window_destroy (GTK_WINDOW (window));
}

/* A window that is closed while a word is open takes it along. */
static void
test_closed_meanwhile (void)
{
  TbWindow *window = new_window ();
  GtkWidget *table = find (window, TB_TYPE_COMPARE_TABLE);

  tb_word_show (table, table, "flare_in");
  close_for_good (window);
}

int
main (int argc, char **argv)
{
  start_tests (&argc, &argv);
  start_application ();
  g_test_add_func ("/words/every-control", test_every_control);
  g_test_add_func ("/words/without-a-word", test_without_a_word);
  g_test_add_func ("/words/table", test_table);
  g_test_add_func ("/words/tab-order", test_tab_order);
  g_test_add_func ("/words/links", test_links);
  g_test_add_func ("/words/closed-meanwhile", test_closed_meanwhile);
  return run_tests ();
}
