/* The handout's window from inside: it follows the study, saves, prints, and goes away.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include <glib/gstdio.h>
#include <string.h>

#include "tb-handout-window.h"
#include "tb-style.h"

/* Longest wait for anything, s. */
#define LIMIT 120

typedef struct Fixture
{
  TbLibrary *library;
  TbSession *session;
  TbHandoutWindow *window;
  char *folder, *file;
} Fixture;

static void
wait_for_page (Fixture *self)
{
  gint64 limit = g_get_monotonic_time () + LIMIT * G_USEC_PER_SEC;

  while (!tb_handout_window_is_settled (self->window) && g_get_monotonic_time () < limit)
    g_main_context_iteration (NULL, FALSE);
  g_assert_true (tb_handout_window_is_settled (self->window));
}

static void
set_up (Fixture *self, gconstpointer data)
{
  self->library = tb_library_new ();
  self->session = tb_session_new (self->library);
  self->window = tb_handout_window_new (NULL, self->session);
  self->folder = g_dir_make_tmp ("tenboard-handout-XXXXXX", NULL);
  self->file = g_build_filename (self->folder, "page.pdf", NULL);
  gtk_window_present (GTK_WINDOW (self->window));
  gtk_test_widget_wait_for_draw (GTK_WIDGET (self->window));
}

static void
tear_down (Fixture *self, gconstpointer data)
{
  gpointer window = self->window;
  gint64 limit = g_get_monotonic_time () + LIMIT * G_USEC_PER_SEC;

  g_object_add_weak_pointer (G_OBJECT (self->window), &window);
  gtk_window_destroy (GTK_WINDOW (self->window));
  while (window && g_get_monotonic_time () < limit)
    g_main_context_iteration (NULL, FALSE);
  g_assert_null (window);
  g_object_unref (self->session);
  g_object_unref (self->library);
  g_unlink (self->file);
  g_rmdir (self->folder);
  g_free (self->file);
  g_free (self->folder);
}

static char *
contents (Fixture *self, gsize *length)
{
  char *bytes = NULL;

  g_assert_true (g_file_get_contents (self->file, &bytes, length, NULL));
  g_assert_cmpmem (bytes, 5, "%PDF-", 5);
  return bytes;
}

static void
go_faster (Fixture *self)
{
  g_assert_true (
      tb_session_set_field (self->session, tb_field_find (TB_GROUP_DELIVERY, "speed_mph"), 19, NULL));
}

static void
test_saves (Fixture *self, gconstpointer data)
{
  g_autofree char *before = NULL, *after = NULL;
  gsize length, other;

  wait_for_page (self);
  g_assert_true (tb_handout_window_save (self->window, self->file));
  before = contents (self, &length);
  go_faster (self);
  g_assert_false (tb_handout_window_is_settled (self->window));
  wait_for_page (self);
  g_assert_true (tb_handout_window_save (self->window, self->file));
  after = contents (self, &other);
  /* Another study is another page. */
  g_assert_true (length != other || memcmp (before, after, length) != 0);
}

static void
test_cannot_save (Fixture *self, gconstpointer data)
{
  g_autofree char *nowhere = g_build_filename (self->folder, "none", "page.pdf", NULL);

  wait_for_page (self);
  g_assert_false (tb_handout_window_save (self->window, nowhere));
}

static void
test_prints (Fixture *self, gconstpointer data)
{
  g_autofree char *bytes = NULL;
  gsize length;

  wait_for_page (self);
  tb_handout_window_print (self->window, GTK_PRINT_OPERATION_ACTION_EXPORT, self->file);
  bytes = contents (self, &length);
  /* A page with type on it: an empty one has about a thousand bytes. */
  g_assert_cmpuint (length, >, 20000);
}

/* Closing while it is worked out is no harm. */
static void
test_closes_early (Fixture *self, gconstpointer data)
{
  go_faster (self);
  g_assert_false (tb_handout_window_is_settled (self->window));
}

/* Quick changes are asked again, and the last one counts. */
static void
test_last_counts (Fixture *self, gconstpointer data)
{
  for (int speed = 15; speed <= 20; speed++)
    {
      tb_session_set_field (self->session, tb_field_find (TB_GROUP_DELIVERY, "speed_mph"), speed, NULL);
      g_main_context_iteration (NULL, FALSE);
    }
  wait_for_page (self);
  g_assert_true (tb_handout_window_save (self->window, self->file));
}

int
main (int argc, char **argv)
{
  g_autofree char *data_folder = g_dir_make_tmp ("tenboard-test-XXXXXX", NULL);
  int result;

  /* Not the user's own documents. */
  g_setenv ("XDG_DATA_HOME", data_folder, TRUE);
  g_setenv ("GTK_A11Y", "test", TRUE);
  gtk_test_init (&argc, &argv, NULL);
  g_object_set (gtk_settings_get_default (), "gtk-enable-animations", FALSE, "gtk-cursor-blink", FALSE, NULL);
  tb_style_init (gdk_display_get_default ());
#define ADD(name, test) g_test_add ("/handout/" name, Fixture, NULL, set_up, test, tear_down)
  ADD ("saves", test_saves);
  ADD ("cannot-save", test_cannot_save);
  ADD ("prints", test_prints);
  ADD ("closes-early", test_closes_early);
  ADD ("last-counts", test_last_counts);
#undef ADD
  result = g_test_run ();
  g_rmdir (data_folder);
  return result;
}
