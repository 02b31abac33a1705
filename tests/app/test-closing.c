/* A window that has been closed is gone, with every widget in it; on a desktop too, where what it offers is
 * told to others over D-Bus: nothing that changes later is told in its name.
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

/* What was in a window that was closed and is still there. */
static GHashTable *left;

static void
on_gone (gpointer data, GObject *widget)
{
  g_hash_table_remove (left, widget);
}

static void
watch (GtkWidget *widget)
{
  GtkWidget *parent = gtk_widget_get_parent (widget);

  /* GTK takes its tooltip from window to window. */
  if (g_hash_table_contains (left, widget) || g_str_equal (G_OBJECT_TYPE_NAME (widget), "GtkTooltipWindow"))
    return;
  g_hash_table_insert (left, widget,
                       g_strdup_printf ("%s in %s", G_OBJECT_TYPE_NAME (widget),
                                        parent != NULL ? G_OBJECT_TYPE_NAME (parent) : "nothing"));
  g_object_weak_ref (G_OBJECT (widget), on_gone, NULL);
  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL;
       child = gtk_widget_get_next_sibling (child))
    watch (child);
}

/* Opens lists and closes them again, as a hand does that chooses something in them. */
static void
use_lists (GtkWidget *widget)
{
  if (!gtk_widget_get_mapped (widget))
    return;
  if (GTK_IS_DROP_DOWN (widget))
    {
      GtkWidget *popover = find (widget, GTK_TYPE_POPOVER);

      gtk_popover_popup (GTK_POPOVER (popover));
      rest (40);
      gtk_drop_down_set_selected (GTK_DROP_DOWN (widget), 1);
      gtk_popover_popdown (GTK_POPOVER (popover));
      rest (20);
      return;
    }
  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL;
       child = gtk_widget_get_next_sibling (child))
    use_lists (child);
}

static void
turn_every_page (GtkWidget *window)
{
  GtkStack *stack = find_stack (window);
  g_autoptr (GtkSelectionModel) pages = stack != NULL ? gtk_stack_get_pages (stack) : NULL;

  for (guint i = 0; pages != NULL && i < g_list_model_get_n_items (G_LIST_MODEL (pages)); i++)
    {
      gtk_selection_model_select_item (pages, i, TRUE);
      rest (60);
      use_lists (window);
    }
}

/* What is being worked out in a thread holds its page until it is through. */
#define PATIENCE_MS 100
#define PATIENCES 300

static void
wait_for_the_last (void)
{
  GHashTableIter all;
  gpointer place;

  for (int i = 0; i < PATIENCES && g_hash_table_size (left) > 0; i++)
    rest (PATIENCE_MS);
  g_hash_table_iter_init (&all, left);
  while (g_hash_table_iter_next (&all, NULL, &place))
    g_test_message ("still there: %s", (const char *) place);
  g_assert_cmpuint (g_hash_table_size (left), ==, 0);
}

static void
close_others (TbWindow *window)
{
  g_autoptr (GList) windows = gtk_window_list_toplevels ();

  for (GList *l = windows; l != NULL; l = l->next)
    if (l->data != (gpointer) window && gtk_widget_get_visible (l->data))
      {
        use_lists (l->data);
        turn_every_page (l->data);
        watch (l->data);
        gtk_window_close (l->data);
      }
}

/* Every widget of a window goes with it. */
static void
test_nothing_stays (void)
{
  static const struct
  {
    const char *action, *parameter;
  } openers[] = { { "win.lane-play", "room" }, { "win.ball-counter", "ball" }, { "win.lessons", NULL },
                  { "win.loft-lab", NULL },    { "win.handout", NULL },        { "win.save-picture", NULL },
                  { "win.save-clip", NULL },   { "win.clinic", NULL },         { "app.preferences", NULL },
                  { "app.help", NULL },        { "app.contents", NULL } };
  TbWindow *window = new_window ();

  left = g_hash_table_new_full (NULL, NULL, NULL, g_free);
  for (gsize i = 0; i < G_N_ELEMENTS (openers); i++)
    {
      g_test_message ("%s", openers[i].action);
      choose_action (window, openers[i].action, openers[i].parameter);
      rest (300);
      close_others (window);
      wait_for_the_last ();
    }
  close_for_good (window);
  g_clear_pointer (&left, g_hash_table_unref);
}

/* Nor does a study's window leave anything, with a tour in it. */
static void
test_tour_goes_too (void)
{
  TbWindow *kept = new_window (), *window = new_window ();

  left = g_hash_table_new_full (NULL, NULL, NULL, g_free);
  choose_action (window, "win.tour", NULL);
  rest (300);
  watch (GTK_WIDGET (window));
  gtk_window_close (GTK_WINDOW (window));
  wait_for_the_last ();
  g_clear_pointer (&left, g_hash_table_unref);
  close_for_good (kept);
}

int
main (int argc, char **argv)
{
  start_tests (&argc, &argv);
  start_application ();
  g_test_add_func ("/closing/setting-changes", test_setting_changes);
  g_test_add_func ("/closing/nothing-stays", test_nothing_stays);
  g_test_add_func ("/closing/tour-goes-too", test_tour_goes_too);
  return run_tests ();
}
