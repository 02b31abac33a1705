/* In a language nobody speaks, every text of every window stands in brackets: one that does not was never
 * translated.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"
#include "window-support.h"

#include <glib/gi18n-lib.h>
#include <locale.h>
#include <string.h>

#define OPENING "⟦"

static guint texts;

/* A name of a thing, a number, a sign; "" and NULL too. Letters that follow each other make a word. */
static gboolean
has_words (const char *text)
{
  guint letters = 0;

  for (const char *c = text; c != NULL && *c != '\0' && letters < 2; c = g_utf8_next_char (c))
    letters = g_unichar_isalpha (g_utf8_get_char (c)) ? letters + 1 : 0;
  return letters >= 2;
}

/* What is the same in every language: the program's name, and names of the trade's standards and of keys. */
static gboolean
is_name (const char *text)
{
  static const char *const names[] = { "Tenboard", "A4", "CSV", "JSON", "PNG", "SVG", "PDF",
                                       /* GTK's own, of drop-down lists and sidebars */
                                       "Clear entry", "Search…", "(None)", "Sidebar",
                                       /* a property that is not set */
                                       "undefined" };

  for (guint i = 0; i < G_N_ELEMENTS (names); i++)
    if (g_str_equal (text, names[i]))
      return TRUE;
  return FALSE;
}

static void
check (GtkWidget *widget, const char *what, const char *text)
{
  if (!has_words (text) || is_name (text))
    return;
  texts++;
  if (strstr (text, OPENING) == NULL)
    {
      g_test_message ("%s of a %s in %s: \"%s\"", what, G_OBJECT_TYPE_NAME (widget),
                      G_OBJECT_TYPE_NAME (gtk_widget_get_root (widget)), text);
      g_test_fail ();
    }
}

/* What a screen reader is told. */
static void
check_told (GtkWidget *widget)
{
  g_autofree char *label
      = gtk_test_accessible_check_property (GTK_ACCESSIBLE (widget), GTK_ACCESSIBLE_PROPERTY_LABEL, "\1");
  g_autofree char *description = gtk_test_accessible_check_property (
      GTK_ACCESSIBLE (widget), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, "\1");
  g_autofree char *value = gtk_test_accessible_check_property (GTK_ACCESSIBLE (widget),
                                                               GTK_ACCESSIBLE_PROPERTY_VALUE_TEXT, "\1");

  check (widget, "name", label);
  check (widget, "description", description);
  check (widget, "value", value);
}

/* GTK's own parts speak its own language: the buttons of the title bar, the menu of an entry. */
static gboolean
is_gtks_own (GtkWidget *widget)
{
  return GTK_IS_WINDOW_CONTROLS (widget) || GTK_IS_POPOVER_MENU (widget);
}

static void
check_all (GtkWidget *widget)
{
  if (is_gtks_own (widget))
    return;
  if (GTK_IS_LABEL (widget))
    check (widget, "text", gtk_label_get_text (GTK_LABEL (widget)));
  if (GTK_IS_WINDOW (widget))
    check (widget, "title", gtk_window_get_title (GTK_WINDOW (widget)));
  check (widget, "tooltip", gtk_widget_get_tooltip_text (widget));
  check_told (widget);
  if (GTK_IS_ENTRY (widget))
    check (widget, "placeholder", gtk_entry_get_placeholder_text (GTK_ENTRY (widget)));
  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL;
       child = gtk_widget_get_next_sibling (child))
    check_all (child);
}

static void
check_windows (void)
{
  g_autoptr (GList) windows = gtk_window_list_toplevels ();

  for (GList *l = windows; l != NULL; l = l->next)
    if (gtk_widget_get_visible (l->data))
      check_all (l->data);
}

typedef struct Opening
{
  const char *path, *action, *parameter;
} Opening;

static const Opening openings[] = {
  { "/pseudo/main", NULL, NULL },
  { "/pseudo/ball", "win.ball-counter", "ball" },
  { "/pseudo/layout", "win.ball-counter", "layout" },
  { "/pseudo/surface", "win.ball-counter", "surface" },
  { "/pseudo/flare", "win.ball-counter", "flare" },
  { "/pseudo/bag", "win.ball-counter", "bag" },
  { "/pseudo/reading", "win.ball-counter", "reading" },
  { "/pseudo/room", "win.lane-play", "room" },
  { "/pseudo/lines", "win.lane-play", "lines" },
  { "/pseudo/pattern", "win.lane-play", "pattern" },
  { "/pseudo/wear", "win.lane-play", "wear" },
  { "/pseudo/lessons", "win.lessons", NULL },
  { "/pseudo/loft-lab", "win.loft-lab", NULL },
  { "/pseudo/handout", "win.handout", NULL },
  { "/pseudo/save-picture", "win.save-picture", NULL },
  { "/pseudo/clinic", "win.clinic", NULL },
  { "/pseudo/tour", "win.tour", NULL },
  { "/pseudo/help", "app.help", NULL },
  { "/pseudo/preferences", "app.preferences", NULL },
};

static void
test_window (gconstpointer data)
{
  const Opening *opening = data;
  TbWindow *window = new_window ();

  /* So that there is something to compare, and to say why. */
  set_speed (tb_window_get_session (window), 19);
  if (opening->action != NULL)
    choose_action (window, opening->action, opening->parameter);
  rest (1500);
  texts = 0;
  check_windows ();
  g_assert_cmpuint (texts, >, 20);
  for (GList *l = gtk_application_get_windows (GTK_APPLICATION (application)); l != NULL;
       l = gtk_application_get_windows (GTK_APPLICATION (application)))
    gtk_window_destroy (l->data);
}

/* The check itself must be able to fail. */
static void
test_unbracketed_is_found (void)
{
  g_assert_true (has_words ("Speed"));
  g_assert_true (has_words ("17 mph"));
  g_assert_false (has_words ("17.5 − 3°"));
  g_assert_false (has_words ("B"));
  g_assert_nonnull (strstr (_ ("Speed"), OPENING));
}

static gboolean
speak (const char *folder)
{
  const char *source = g_test_get_dir (G_TEST_DIST);
  g_autofree char *root = g_build_filename (source, "..", NULL);
  g_autofree char *script = g_build_filename (root, "po", "pseudo.py", NULL);
  const char *command[] = { "python3", script, root, folder, NULL };
  int status = 1;

  return g_spawn_sync (NULL, (char **) command, NULL, G_SPAWN_SEARCH_PATH, NULL, NULL, NULL, NULL, &status,
                       NULL)
         && status == 0;
}

int
main (int argc, char **argv)
{
  g_setenv ("LANGUAGE", "xx", TRUE);
  start_tests (&argc, &argv);
  setlocale (LC_ALL, "");
  g_assert_true (speak (scratch_folder ()));
  bindtextdomain (GETTEXT_PACKAGE, scratch_folder ());
  bind_textdomain_codeset (GETTEXT_PACKAGE, "UTF-8");
  textdomain (GETTEXT_PACKAGE);
  start_application ();
  g_test_add_func ("/pseudo/unbracketed-is-found", test_unbracketed_is_found);
  for (guint i = 0; i < G_N_ELEMENTS (openings); i++)
    g_test_add_data_func (openings[i].path, &openings[i], test_window);
  return run_tests ();
}
