/* In a language nobody speaks, every text of every window stands in brackets: one that does not was never
 * translated.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <locale.h>
#include <string.h>

#include "tb-application.h"
#include "tb-window.h"

#define OPENING "⟦"

static TbApplication *application;
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

static gboolean
on_rested (gpointer rested)
{
  *(gboolean *) rested = TRUE;
  return G_SOURCE_REMOVE;
}

/* What is worked out in a thread has had its time; nothing depends on whether it is through. */
static void
rest (guint ms)
{
  gboolean rested = FALSE;

  g_timeout_add (ms, on_rested, &rested);
  while (!rested)
    g_main_context_iteration (NULL, TRUE);
}

static void
check_windows (void)
{
  g_autoptr (GList) windows = gtk_window_list_toplevels ();

  for (GList *l = windows; l != NULL; l = l->next)
    if (gtk_widget_get_visible (l->data))
      check_all (l->data);
}

static TbWindow *
new_window (void)
{
  TbWindow *window = tb_window_new (GTK_APPLICATION (application), tb_application_get_library (application));

  gtk_window_present (GTK_WINDOW (window));
  gtk_test_widget_wait_for_draw (GTK_WIDGET (window));
  return window;
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
open_it (TbWindow *window, const Opening *opening)
{
  GVariant *parameter = opening->parameter != NULL ? g_variant_new_string (opening->parameter) : NULL;

  if (opening->action == NULL)
    return;
  if (g_str_has_prefix (opening->action, "app."))
    g_action_group_activate_action (G_ACTION_GROUP (application), opening->action + strlen ("app."),
                                    parameter);
  else
    g_assert_true (gtk_widget_activate_action_variant (GTK_WIDGET (window), opening->action, parameter));
}

static void
test_window (gconstpointer data)
{
  const Opening *opening = data;
  TbWindow *window = new_window ();
  TbSession *session = tb_window_get_session (window);

  /* So that there is something to compare, and to say why. */
  g_assert_true (tb_session_set_field (session, tb_field_find (TB_GROUP_DELIVERY, "speed_mph"), 19, NULL));
  open_it (window, opening);
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
  g_autofree char *data = g_dir_make_tmp ("tenboard-test-XXXXXX", NULL);
  int status;

  g_setenv ("XDG_DATA_HOME", data, TRUE);
  g_setenv ("GTK_A11Y", "test", TRUE);
  g_setenv ("LANGUAGE", "xx", TRUE);
  gtk_test_init (&argc, &argv, NULL);
  setlocale (LC_ALL, "");
  g_assert_true (speak (data));
  bindtextdomain (GETTEXT_PACKAGE, data);
  bind_textdomain_codeset (GETTEXT_PACKAGE, "UTF-8");
  textdomain (GETTEXT_PACKAGE);
  application = tb_application_new ();
  g_application_set_flags (G_APPLICATION (application), G_APPLICATION_NON_UNIQUE);
  g_assert_true (g_application_register (G_APPLICATION (application), NULL, NULL));
  g_test_add_func ("/pseudo/unbracketed-is-found", test_unbracketed_is_found);
  for (guint i = 0; i < G_N_ELEMENTS (openings); i++)
    g_test_add_data_func (openings[i].path, &openings[i], test_window);
  status = g_test_run ();
  g_object_unref (application);
  return status;
}
