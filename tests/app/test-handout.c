/* The handout's window from inside: it follows the study, saves, prints, and goes away.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include <glib/gstdio.h>
#include <string.h>

#include "tb-handout.h"
#include "tb-handout-options.h"
#include "tb-handout-window.h"
#include "tb-style.h"
#include "window-support.h"

typedef struct Fixture
{
  TbLibrary *library;
  TbSession *session;
  TbHandoutWindow *window;
  char *file;
} Fixture;

static void
wait_for_page (Fixture *self)
{
  WAIT_UNTIL (tb_handout_window_is_settled (self->window));
}

static void
set_up (Fixture *self, gconstpointer data)
{
  self->library = tb_library_new ();
  self->session = tb_session_new (self->library);
  self->window = tb_handout_window_new (NULL, self->session);
  self->file = g_build_filename (scratch_folder (), "page.pdf", NULL);
  show_window (self->window);
}

static void
tear_down (Fixture *self, gconstpointer data)
{
  close_for_good (self->window);
  g_object_unref (self->session);
  g_object_unref (self->library);
  g_unlink (self->file);
  g_free (self->file);
}

static char *
contents (Fixture *self, gsize *length)
{
  char *bytes = NULL;

  g_assert_true (g_file_get_contents (self->file, &bytes, length, NULL));
  g_assert_cmpmem (bytes, 5, "%PDF-", 5);
  return bytes;
}

/* What else to try is what was wished in the window, seen from where it was wished. */
static void
test_wish (Fixture *self, gconstpointer data)
{
  TbSetup *from = tb_session_get_setup (self->session, TB_SIDE_AFTER);

  wait_for_page (self);
  tb_session_set_wish (self->session, &(TbWish){ TB_WISH_BOARDS, -2, FALSE }, from);
  wait_for_page (self);
  g_assert_true (says (self->window, "2.0 boards less: from board 17.8"));
  set_speed (self->session, 18);
  wait_for_page (self);
  g_assert_true (says (self->window, "2.0 boards less: from board 17.8"));
}

static void
test_saves (Fixture *self, gconstpointer data)
{
  g_autofree char *before = NULL, *after = NULL;
  gsize length, other;

  wait_for_page (self);
  g_assert_true (tb_handout_window_save (self->window, self->file));
  before = contents (self, &length);
  set_speed (self->session, 19);
  g_assert_false (tb_handout_window_is_settled (self->window));
  wait_for_page (self);
  g_assert_true (tb_handout_window_save (self->window, self->file));
  after = contents (self, &other);
  /* Another study is another page. */
  g_assert_true (length != other || memcmp (before, after, length) != 0);
}

static gboolean
is_checked (GtkWidget *widget)
{
  return GTK_IS_CHECK_BUTTON (widget) && gtk_check_button_get_active (GTK_CHECK_BUTTON (widget));
}

/* What is not checked is not on the page. */
static void
test_options (Fixture *self, gconstpointer data)
{
  TbHandoutOptions *options = TB_HANDOUT_OPTIONS (find (self->window, TB_TYPE_HANDOUT_OPTIONS));
  g_autoptr (GPtrArray) all = NULL, left = NULL;
  g_autofree char *before = NULL, *after = NULL;
  gsize length, other;

  wait_for_page (self);
  all = tb_handout_options_get_checked (options);
  g_assert_cmpuint (all->len, >, 0);
  g_assert_true (tb_handout_window_save (self->window, self->file));
  before = contents (self, &length);
  gtk_check_button_set_active (GTK_CHECK_BUTTON (find_with (options, is_checked)), FALSE);
  left = tb_handout_options_get_checked (options);
  g_assert_cmpuint (left->len, ==, all->len - 1);
  g_assert_true (tb_handout_window_save (self->window, self->file));
  after = contents (self, &other);
  g_assert_true (length != other || memcmp (before, after, length) != 0);
}

static void
test_cannot_save (Fixture *self, gconstpointer data)
{
  g_autofree char *nowhere = g_build_filename (scratch_folder (), "none", "page.pdf", NULL);
  /* No folder's name has to be text. */
  g_autofree char *unreadable = g_build_filename (scratch_folder (), "none\xff", "page.pdf", NULL);
  g_autofree char *sentence
      = g_strdup_printf ("%s: the file cannot be saved: No such file or directory.", nowhere);

  wait_for_page (self);
  g_assert_false (tb_handout_window_save (self->window, nowhere));
  g_assert_true (says (self->window, sentence));
  g_assert_false (tb_handout_window_save (self->window, unreadable));
  gtk_test_widget_wait_for_draw (GTK_WIDGET (self->window));
}

/* One page, of the paper that poppler calls so. */
static void
assert_is_on (Fixture *self, const char *paper)
{
  const char *command[] = { "pdfinfo", self->file, NULL };
  g_autoptr (GError) error = NULL;
  g_autofree char *told = NULL;
  int status;

  g_spawn_sync (NULL, (char **) command, NULL, G_SPAWN_SEARCH_PATH, NULL, NULL, &told, NULL, &status, &error);
  g_assert_no_error (error);
  g_assert_cmpint (status, ==, 0);
  g_assert_nonnull (strstr (told, "Pages:           1\n"));
  g_assert_nonnull (strstr (told, paper));
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
  assert_is_on (self, "(A4)");
}

static void
test_prints_on_letter (Fixture *self, gconstpointer data)
{
  gtk_drop_down_set_selected (GTK_DROP_DOWN (find (self->window, GTK_TYPE_DROP_DOWN)), TB_PAPER_LETTER);
  wait_for_page (self);
  tb_handout_window_print (self->window, GTK_PRINT_OPERATION_ACTION_EXPORT, self->file);
  assert_is_on (self, "(letter)");
}

/* Closing while it is worked out is no harm. */
static void
test_closes_early (Fixture *self, gconstpointer data)
{
  set_speed (self->session, 19);
  g_assert_false (tb_handout_window_is_settled (self->window));
}

/* Quick changes are asked again, and the last one counts. */
static void
test_last_counts (Fixture *self, gconstpointer data)
{
  for (int speed = 15; speed <= 20; speed++)
    {
      set_speed (self->session, speed);
      g_main_context_iteration (NULL, FALSE);
    }
  wait_for_page (self);
  g_assert_true (tb_handout_window_save (self->window, self->file));
}

int
main (int argc, char **argv)
{
  start_tests (&argc, &argv);
  tb_style_init (gdk_display_get_default ());
#define ADD(name, test) g_test_add ("/handout/" name, Fixture, NULL, set_up, test, tear_down)
  ADD ("wish", test_wish);
  ADD ("saves", test_saves);
  ADD ("options", test_options);
  ADD ("cannot-save", test_cannot_save);
  ADD ("prints", test_prints);
  ADD ("prints-on-letter", test_prints_on_letter);
  ADD ("closes-early", test_closes_early);
  ADD ("last-counts", test_last_counts);
#undef ADD
  return run_tests ();
}
