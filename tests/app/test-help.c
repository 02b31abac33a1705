/* Help: every assumed constant is told, with where it comes from; no page is empty; a closed window goes
 * away.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include <gtk/gtk.h>

#include "tb-core.h"
#include "tb-glossary.h"
#include "tb-help-window.h"
#include "tb-help-words.h"
#include "window-support.h"

/* Every label's text below a widget, in one string. */
static void
gather (GtkWidget *widget, GString *text)
{
  if (GTK_IS_LABEL (widget))
    g_string_append_printf (text, "%s\n", gtk_label_get_text (GTK_LABEL (widget)));
  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL;
       child = gtk_widget_get_next_sibling (child))
    gather (child, text);
}

static GtkWidget *
page_in (TbHelpWindow *window)
{
  return gtk_stack_get_visible_child (GTK_STACK (find (window, GTK_TYPE_STACK)));
}

static TbHelpWindow *
open_help (void)
{
  TbHelpWindow *window = tb_help_window_new (NULL);

  show_window (window);
  return window;
}

static void
test_constants (void)
{
  TbHelpWindow *window = open_help ();
  g_autoptr (GString) text = g_string_new (NULL);

  gather (GTK_WIDGET (window), text);
  for (const TbAssumedInfo *info = tb_assumed_table; info->name != NULL; info++)
    {
      g_assert_nonnull (strstr (text->str, info->label));
      g_assert_nonnull (strstr (text->str, info->source));
      g_assert_nonnull (strstr (text->str, info->consequence));
    }
  g_assert_nonnull (strstr (text->str, "not measured"));
  gtk_window_destroy (GTK_WINDOW (window));
}

static void
test_pages (void)
{
  static const char *const pages[] = { "ball", "words", "assumed", "figures", "sources", "cautions" };
  TbHelpWindow *window = open_help ();

  for (gsize i = 0; i < G_N_ELEMENTS (pages); i++)
    {
      g_autoptr (GString) text = g_string_new (NULL);

      tb_help_window_show_page (window, pages[i]);
      gather (page_in (window), text);
      g_assert_cmpuint (text->len, >, 200);
      g_assert_null (strstr (text->str, "\n\n"));
      g_assert_null (strstr (text->str, "#"));
      g_assert_null (strstr (text->str, "<a"));
    }
  close_for_good (window);
}

static const char *
page_of (TbHelpWindow *window)
{
  return gtk_stack_get_visible_child_name (GTK_STACK (find (window, GTK_TYPE_STACK)));
}

/* Nothing is left to be done: searches wait a little before they begin, and scrolling waits for a size. */
static void
settle (void)
{
  rest (500);
}

static void
look_for (TbHelpWindow *window, const char *text)
{
  gtk_editable_set_text (GTK_EDITABLE (find (window, GTK_TYPE_SEARCH_ENTRY)), text);
  settle ();
}

/* The part of a widget's height that the window shows. */
static gboolean
is_seen (GtkWidget *widget)
{
  GtkWidget *scroller = gtk_widget_get_ancestor (widget, GTK_TYPE_SCROLLED_WINDOW);
  double y = -1;

  g_assert_true (gtk_widget_translate_coordinates (widget, scroller, 0, 0, NULL, &y));
  return y >= 0 && y < gtk_widget_get_height (scroller);
}

static void
test_search (void)
{
  TbHelpWindow *window = open_help ();
  g_autoptr (GString) text = g_string_new (NULL);
  GtkWidget *entry = find (window, GTK_TYPE_SEARCH_ENTRY);

  g_assert_cmpstr (page_of (window), ==, "ball");
  look_for (window, "  PEARL ");
  g_assert_cmpstr (page_of (window), ==, "found");
  gather (page_in (window), text);
  /* The word itself stands first, before what only speaks of it. */
  g_assert_nonnull (strstr (text->str, "Pearl\n"));
  g_assert_true (strstr (text->str, "Pearl\n") < strstr (text->str, "Hybrid\n"));
  g_assert_null (strstr (text->str, "Zhuravlev"));
  look_for (window, "zhurav");
  g_string_truncate (text, 0);
  gather (page_in (window), text);
  g_assert_nonnull (strstr (text->str, "Zhuravlev"));
  /* The paragraph is gone to, and is seen. */
  g_signal_emit_by_name (entry, "activate");
  settle ();
  g_assert_cmpstr (page_of (window), ==, "sources");
  gtk_window_destroy (GTK_WINDOW (window));
}

static void
test_search_without_an_answer (void)
{
  TbHelpWindow *window = open_help ();
  g_autoptr (GString) text = g_string_new (NULL);

  tb_help_window_show_page (window, "cautions");
  look_for (window, "xyzzy");
  gather (page_in (window), text);
  g_assert_nonnull (strstr (text->str, "xyzzy"));
  /* What was read before comes back with an empty search. */
  look_for (window, "");
  g_assert_cmpstr (page_of (window), ==, "cautions");
  gtk_window_destroy (GTK_WINDOW (window));
}

static void
test_words (void)
{
  TbHelpWindow *window = open_help ();
  TbHelpWords *words = TB_HELP_WORDS (find (window, TB_TYPE_HELP_WORDS));

  for (const TbTerm *term = tb_glossary; term->id != NULL; term++)
    g_assert_nonnull (tb_help_words_get_row (words, term->id));
  tb_help_window_show_word (window, "urethane");
  settle ();
  g_assert_cmpstr (page_of (window), ==, "words");
  g_assert_cmpstr (tb_help_words_get_shown (words), ==, "urethane");
  g_assert_true (is_seen (tb_help_words_get_row (words, "urethane")));
  /* An unknown word leads to all of them. */
  tb_help_window_show_page (window, "ball");
  tb_help_window_show_word (window, "");
  g_assert_cmpstr (page_of (window), ==, "words");
  gtk_window_destroy (GTK_WINDOW (window));
}

int
main (int argc, char **argv)
{
  start_tests (&argc, &argv);
  g_test_add_func ("/help/constants", test_constants);
  g_test_add_func ("/help/pages", test_pages);
  g_test_add_func ("/help/search", test_search);
  g_test_add_func ("/help/search-without-an-answer", test_search_without_an_answer);
  g_test_add_func ("/help/words", test_words);
  return run_tests ();
}
