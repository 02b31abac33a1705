/* Every window, on every page, fits on a small screen with large text, in the language of the environment:
 * test-fits [--tap]; LANGUAGE says which.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <locale.h>

#include "tb-clinic-window.h"
#include "tb-columns.h"
#include "tb-next-page.h"
#include "tb-style.h"
#include "window-support.h"

/* The smallest screen, px. */
#define SCREEN_WIDTH 1024
#define SCREEN_HEIGHT 600

/* How each window is opened. */
typedef struct Way
{
  const char *action;
  const char *target; /* NULL: the action has none */
} Way;

static const Way ways[] = {
  { "win.ball-counter", "ball" }, { "win.lane-play", "room" }, { "win.loft-lab", NULL },
  { "win.lessons", NULL },        { "win.handout", NULL },     { "win.save-picture", NULL },
  { "win.save-clip", NULL },      { "win.clinic", NULL },      { "app.preferences", NULL },
  { "app.contents", NULL },
};

static const char *const sizes[] = { "100", "150", "200", "250" };

static TbWindow *
new_small_window (const char *size)
{
  TbWindow *window = new_window ();

  gtk_window_set_default_size (GTK_WINDOW (window), SCREEN_WIDTH, SCREEN_HEIGHT);
  choose_action (window, "win.text-size", size);
  WAIT_UNTIL (tb_style_get_text_size (GTK_WIDGET (window)) == atoi (size));
  gtk_test_widget_wait_for_draw (GTK_WIDGET (window));
  return window;
}

/* The way down to what asks for most, for whoever has to mend it. */
static void
tell_largest (GtkWidget *widget, GtkOrientation orientation, int for_size)
{
  while (widget != NULL)
    {
      GtkWidget *largest = NULL;
      int size = 0;

      for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL;
           child = gtk_widget_get_next_sibling (child))
        {
          int least = 0;

          if (!gtk_widget_should_layout (child))
            continue;
          gtk_widget_measure (child, orientation, -1, &least, NULL, NULL, NULL);
          if (least > size)
            largest = child, size = least;
        }
      if (largest != NULL)
        g_test_message ("  %s %s: %d", G_OBJECT_TYPE_NAME (largest), gtk_widget_get_name (largest), size);
      widget = largest;
    }
}

static void
check_size (GtkWidget *window, const char *where)
{
  int width, height;

  gtk_widget_measure (window, GTK_ORIENTATION_HORIZONTAL, -1, &width, NULL, NULL, NULL);
  gtk_widget_measure (window, GTK_ORIENTATION_VERTICAL, MAX (width, SCREEN_WIDTH), &height, NULL, NULL, NULL);
  g_test_message ("%s, text %d %%: at least %d × %d", where, tb_style_get_text_size (window), width, height);
  if (width > SCREEN_WIDTH)
    tell_largest (window, GTK_ORIENTATION_HORIZONTAL, -1);
  if (height > SCREEN_HEIGHT)
    tell_largest (window, GTK_ORIENTATION_VERTICAL, width);
  if (width > SCREEN_WIDTH || height > SCREEN_HEIGHT)
    g_test_fail ();
}

static void
check_pages (GtkWidget *window)
{
  const char *title = gtk_window_get_title (GTK_WINDOW (window));
  GtkStack *stack = find_stack (window);
  g_autoptr (GListModel) pages = stack != NULL ? G_LIST_MODEL (gtk_stack_get_pages (stack)) : NULL;

  if (stack == NULL)
    check_size (window, title);
  for (guint i = 0; pages != NULL && i < g_list_model_get_n_items (pages); i++)
    {
      g_autoptr (GObject) item = g_list_model_get_item (pages, i);
      GtkStackPage *page = GTK_STACK_PAGE (item);
      g_autofree char *where = g_strdup_printf ("%s (%s)", title, gtk_stack_page_get_name (page));

      gtk_stack_set_visible_child (stack, gtk_stack_page_get_child (page));
      gtk_test_widget_wait_for_draw (window);
      check_size (window, where);
    }
}

/* A window that was not there before and is seen; NULL when there is none. */
static GtkWidget *
new_toplevel (GHashTable *old)
{
  g_autoptr (GList) all = gtk_window_list_toplevels ();

  for (GList *link = all; link != NULL; link = link->next)
    if (!g_hash_table_contains (old, link->data) && gtk_widget_get_visible (link->data))
      return link->data;
  return NULL;
}

/* The notes that go with a clinic, at the vote: the fullest of its pages. */
static void
check_presenter (TbClinicWindow *clinic)
{
  tb_clinic_window_act (clinic, TB_CLINIC_ONWARD);
  tb_clinic_window_act (clinic, TB_CLINIC_ONWARD);
  tb_clinic_window_act (clinic, TB_CLINIC_PRESENTER);
  gtk_test_widget_wait_for_draw (GTK_WIDGET (tb_clinic_window_get_presenter (clinic)));
  check_size (GTK_WIDGET (tb_clinic_window_get_presenter (clinic)), "Presenter");
}

/* Each is looked at and closed again. */
static void
check_new_windows (GHashTable *old)
{
  int looked_at = 0;

  for (GtkWidget *window = new_toplevel (old); window != NULL; window = new_toplevel (old))
    {
      gtk_test_widget_wait_for_draw (window);
      check_pages (window);
      if (TB_IS_CLINIC_WINDOW (window))
        check_presenter (TB_CLINIC_WINDOW (window));
      gtk_window_destroy (GTK_WINDOW (window));
      do_pending ();
      looked_at++;
    }
  g_assert_cmpint (looked_at, >, 0);
}

static void
test_windows (gconstpointer size)
{
  TbWindow *window = new_small_window (size);
  g_autoptr (GHashTable) old = g_hash_table_new (NULL, NULL);
  g_autoptr (GList) all = gtk_window_list_toplevels ();

  for (GList *link = all; link != NULL; link = link->next)
    g_hash_table_add (old, link->data);
  check_pages (GTK_WIDGET (window));
  for (gsize i = 0; i < G_N_ELEMENTS (ways); i++)
    {
      choose_action (window, ways[i].action, ways[i].target);
      check_new_windows (old);
    }
  choose_action (window, "win.text-size", "automatic");
  gtk_window_destroy (GTK_WINDOW (window));
}

static int
least_width (GtkWidget *widget)
{
  int least;

  gtk_widget_measure (widget, GTK_ORIENTATION_HORIZONTAL, -1, &least, NULL, NULL, NULL);
  return least;
}

/* The wish and how much of it stand beside each other only where there is room: long words do not widen the
 * column, which the lane would have to pay for. */
static void
test_wish (gconstpointer size)
{
  TbWindow *window = new_small_window (size);
  GtkWidget *page = find (window, TB_TYPE_NEXT_PAGE), *wish = find (page, GTK_TYPE_DROP_DOWN),
            *amount = find (page, GTK_TYPE_SPIN_BUTTON), *row = gtk_widget_get_first_child (page);

  g_assert_true (gtk_widget_is_ancestor (wish, row));
  g_assert_true (gtk_widget_is_ancestor (amount, row));
  g_assert_cmpint (least_width (row), <, least_width (wish) + least_width (amount));
  gtk_window_destroy (GTK_WINDOW (window));
  do_pending ();
}

int
main (int argc, char **argv)
{
  setlocale (LC_ALL, "");
  bindtextdomain (GETTEXT_PACKAGE, g_getenv ("TENBOARD_LOCALEDIR"));
  bind_textdomain_codeset (GETTEXT_PACKAGE, "UTF-8");
  /* Templates ask the default domain. */
  textdomain (GETTEXT_PACKAGE);
  start_tests (&argc, &argv);
  start_application ();
  for (gsize i = 0; i < G_N_ELEMENTS (sizes); i++)
    {
      g_autofree char *path = g_strdup_printf ("/fits/%s", sizes[i]);
      g_autofree char *wish_path = g_strdup_printf ("/fits/wish-%s", sizes[i]);

      g_test_add_data_func (path, sizes[i], test_windows);
      g_test_add_data_func (wish_path, sizes[i], test_wish);
    }
  return run_tests ();
}
