/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "tb-help-window.h"

#include <glib/gi18n-lib.h>

#include "tb-accessible.h"
#include "tb-help-assumed.h"
#include "tb-help-row.h"
#include "tb-help-search.h"
#include "tb-help-texts.h"
#include "tb-help-words.h"

struct _TbHelpWindow
{
  GtkWindow parent_instance;

  /* Borrowed: children of the window. */
  GtkStack *stack;
  GtkEditable *entry;
  TbHelpSearch *search;
  TbHelpWords *words;

  const char *page; /* that was read before the search; NULL while nothing is looked for */
  GtkWidget *found; /* what was gone to last; borrowed */
  guint scroll_tick;
  int frames_to_wait;
};

/* The page of what was found, which has no place in the list of pages. */
#define FOUND "found"
#define WORDS "words"
#define ASSUMED "assumed"

G_DEFINE_FINAL_TYPE (TbHelpWindow, tb_help_window, GTK_TYPE_WINDOW)

#define PAGE_MARGIN 24
#define PAGE_SPACING 10

static GtkWidget *
new_column (void)
{
  GtkWidget *column = gtk_box_new (GTK_ORIENTATION_VERTICAL, PAGE_SPACING);

  gtk_widget_set_margin_start (column, PAGE_MARGIN);
  gtk_widget_set_margin_end (column, PAGE_MARGIN);
  gtk_widget_set_margin_top (column, PAGE_MARGIN);
  gtk_widget_set_margin_bottom (column, PAGE_MARGIN);
  return column;
}

static GtkWidget *
new_page (GtkWidget *column)
{
  GtkWidget *scroller = gtk_scrolled_window_new ();

  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (scroller), GTK_POLICY_NEVER, GTK_POLICY_AUTOMATIC);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scroller), column);
  gtk_widget_set_hexpand (scroller, TRUE);
  /* Arrow and page keys move the text. */
  gtk_widget_set_focusable (scroller, TRUE);
  return scroller;
}

static void
add_page (TbHelpWindow *self, GtkWidget *column, const char *name, const char *title)
{
  gtk_stack_add_titled (self->stack, new_page (column), name, title);
}

/* Adds a paragraph that can be found under `title`. */
static void
add_paragraph (TbHelpWindow *self, GtkBox *column, const TbHelpPiece *piece)
{
  TbHelpPiece placed = *piece;

  placed.place = tb_help_label_new (piece->text, NULL);
  gtk_box_append (column, placed.place);
  tb_help_search_add (self->search, &placed);
}

static void
add_text_page (TbHelpWindow *self, const TbHelpText *page)
{
  GtkWidget *column = new_column ();
  TbHelpPiece piece = { .page = page->name, .title = _ (page->title) };

  gtk_box_append (GTK_BOX (column), tb_help_label_new (_ (page->title), "title-2"));
  for (const char *const *paragraph = page->paragraphs; *paragraph != NULL; paragraph++)
    {
      const char *shown = _ (*paragraph);

      piece.text = shown;
      if (shown[0] == TB_HELP_HEADING)
        {
          piece.title = shown + 1;
          gtk_box_append (GTK_BOX (column), tb_help_label_new (piece.title, "heading"));
        }
      else
        add_paragraph (self, GTK_BOX (column), &piece);
    }
  add_page (self, column, page->name, _ (page->title));
}

/* Where what is assumed goes. */
typedef struct Assumed
{
  TbHelpWindow *window;
  GtkBox *column;
} Assumed;

static void
add_assumed (const char *title, const char *text, gpointer data)
{
  Assumed *page = data;

  gtk_box_append (page->column, tb_help_label_new (title, "heading"));
  add_paragraph (page->window, page->column, &(TbHelpPiece){ .page = ASSUMED, .title = title, .text = text });
}

static void
add_assumed_page (TbHelpWindow *self)
{
  GtkWidget *column = new_column ();
  Assumed page = { self, GTK_BOX (column) };

  gtk_box_append (GTK_BOX (column), tb_help_label_new (_ ("What is assumed"), "title-2"));
  gtk_box_append (
      GTK_BOX (column),
      tb_help_label_new (_ ("Nobody has published these numbers, or they are only typical. They are not "
                            "measurements, and what the model says is no measurement either."),
                         NULL));
  tb_help_assumed_foreach (add_assumed, &page);
  add_page (self, column, ASSUMED, _ ("What is assumed"));
}

static void
add_words_page (TbHelpWindow *self)
{
  GtkWidget *column = new_column ();

  self->words = TB_HELP_WORDS (tb_help_words_new ());
  gtk_box_append (GTK_BOX (column), tb_help_label_new (_ ("Words"), "title-2"));
  gtk_box_append (
      GTK_BOX (column),
      tb_help_label_new (
          _ ("What the words of the trade mean. F1 on a control or a measure leads to its word."), "note"));
  gtk_box_append (GTK_BOX (column), GTK_WIDGET (self->words));
  for (const TbTerm *term = tb_glossary; term->id != NULL; term++)
    tb_help_search_add (self->search,
                        &(TbHelpPiece){ .page = WORDS,
                                        .title = _ (term->word),
                                        .text = _ (term->text),
                                        .place = tb_help_words_get_row (self->words, term->id) });
  add_page (self, column, WORDS, _ ("Words"));
}

/* Brings what was found into sight, once its page has been laid out. */
static gboolean
scroll_to_found (GtkWidget *widget, GdkFrameClock *clock, gpointer user_data)
{
  TbHelpWindow *self = TB_HELP_WINDOW (widget);
  GtkWidget *scroller = gtk_stack_get_visible_child (self->stack);
  GtkAdjustment *down = gtk_scrolled_window_get_vadjustment (GTK_SCROLLED_WINDOW (scroller));
  double y;

  if (self->frames_to_wait-- > 0 || gtk_widget_get_height (self->found) == 0)
    return G_SOURCE_CONTINUE;
  self->scroll_tick = 0;
  if (gtk_widget_translate_coordinates (self->found, scroller, 0, -PAGE_MARGIN, NULL, &y))
    gtk_adjustment_set_value (down, gtk_adjustment_get_value (down) + y);
  return G_SOURCE_REMOVE;
}

static void
go_to (TbHelpWindow *self, GtkWidget *place)
{
  if (self->found != NULL)
    gtk_widget_remove_css_class (self->found, "found");
  self->found = place;
  gtk_widget_add_css_class (place, "found");
  gtk_widget_grab_focus (gtk_widget_get_focusable (place) ? place
                                                          : gtk_stack_get_visible_child (self->stack));
  /* A frame's callbacks come before its layout. */
  self->frames_to_wait = 1;
  if (self->scroll_tick == 0)
    self->scroll_tick = gtk_widget_add_tick_callback (GTK_WIDGET (self), scroll_to_found, NULL, NULL);
}

static void
on_chosen (TbHelpWindow *self, const char *page, GtkWidget *place)
{
  self->page = NULL;
  gtk_stack_set_visible_child_name (self->stack, page);
  go_to (self, place);
}

static void
stop_searching (TbHelpWindow *self)
{
  if (self->page != NULL)
    gtk_stack_set_visible_child_name (self->stack, self->page);
  self->page = NULL;
}

static void
on_search_changed (TbHelpWindow *self)
{
  g_autofree char *text = g_strstrip (g_strdup (gtk_editable_get_text (self->entry)));

  if (text[0] == '\0')
    {
      stop_searching (self);
      return;
    }
  if (self->page == NULL)
    self->page = g_intern_string (gtk_stack_get_visible_child_name (self->stack));
  tb_help_search_find (self->search, text);
  gtk_stack_set_visible_child_name (self->stack, FOUND);
}

static void
on_search_activate (TbHelpWindow *self)
{
  on_search_changed (self);
  tb_help_search_choose_first (self->search);
}

/* Escape: first away with the search, then with the window. */
static void
on_stop_search (TbHelpWindow *self)
{
  if (gtk_editable_get_text (self->entry)[0] == '\0')
    gtk_window_close (GTK_WINDOW (self));
  else
    gtk_editable_set_text (self->entry, "");
}

/* Another page was picked from the list: the search is over. */
static void
on_page_changed (TbHelpWindow *self)
{
  if (self->page != NULL && g_strcmp0 (gtk_stack_get_visible_child_name (self->stack), FOUND) != 0)
    self->page = NULL;
}

static GtkWidget *
new_search_entry (TbHelpWindow *self)
{
  GtkWidget *entry = gtk_search_entry_new ();

  self->entry = GTK_EDITABLE (entry);
  g_object_set (entry, "placeholder-text", _ ("Search Help"), NULL);
  gtk_widget_set_tooltip_text (entry, _ ("Search Help (Ctrl+F)"));
  tb_accessible_set_name (entry, _ ("Search Help"));
  gtk_widget_add_css_class (entry, "help-search");
  g_signal_connect_swapped (entry, "search-changed", G_CALLBACK (on_search_changed), self);
  g_signal_connect_swapped (entry, "activate", G_CALLBACK (on_search_activate), self);
  g_signal_connect_swapped (entry, "stop-search", G_CALLBACK (on_stop_search), self);
  return entry;
}

/* The search on top, the list of pages below. */
static GtkWidget *
new_side (TbHelpWindow *self)
{
  GtkWidget *side = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0), *pages = gtk_stack_sidebar_new ();

  gtk_stack_sidebar_set_stack (GTK_STACK_SIDEBAR (pages), self->stack);
  gtk_widget_set_vexpand (pages, TRUE);
  gtk_box_append (GTK_BOX (side), new_search_entry (self));
  gtk_box_append (GTK_BOX (side), pages);
  return side;
}

static void
add_found_page (TbHelpWindow *self)
{
  GtkWidget *column = new_column ();

  gtk_box_append (GTK_BOX (column), GTK_WIDGET (self->search));
  gtk_stack_add_named (self->stack, new_page (column), FOUND);
  g_signal_connect_swapped (self->search, "chosen", G_CALLBACK (on_chosen), self);
}

/* The rows of the list of pages, which GTK leaves nameless: each has one label. */
static void
name_rows (GtkWidget *widget)
{
  GtkWidget *child = gtk_widget_get_first_child (widget);

  if (GTK_IS_LIST_BOX_ROW (widget) && GTK_IS_LABEL (child))
    tb_accessible_set_name (widget, gtk_label_get_text (GTK_LABEL (child)));
  for (; child != NULL; child = gtk_widget_get_next_sibling (child))
    name_rows (child);
}

static void
tb_help_window_init (TbHelpWindow *self)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 0);

  self->stack = GTK_STACK (gtk_stack_new ());
  self->search = TB_HELP_SEARCH (tb_help_search_new ());
  gtk_stack_set_hhomogeneous (self->stack, FALSE);
  gtk_box_append (GTK_BOX (box), new_side (self));
  add_text_page (self, &tb_help_texts[0]);
  add_words_page (self);
  add_assumed_page (self);
  for (const TbHelpText *text = tb_help_texts + 1; text->name != NULL; text++)
    add_text_page (self, text);
  add_found_page (self);
  name_rows (gtk_widget_get_first_child (box));
  gtk_box_append (GTK_BOX (box), GTK_WIDGET (self->stack));
  gtk_window_set_child (GTK_WINDOW (self), box);
  gtk_window_set_title (GTK_WINDOW (self), _ ("Help"));
  gtk_window_set_default_size (GTK_WINDOW (self), 900, 620);
  g_signal_connect_swapped (self->stack, "notify::visible-child-name", G_CALLBACK (on_page_changed), self);
}

static gboolean
start_searching (GtkWidget *widget, GVariant *arguments, gpointer user_data)
{
  return gtk_widget_grab_focus (GTK_WIDGET (TB_HELP_WINDOW (widget)->entry));
}

static void
tb_help_window_class_init (TbHelpWindowClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_Escape, 0, "window.close", NULL);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_w, GDK_CONTROL_MASK, "window.close", NULL);
  gtk_widget_class_add_binding (widget_class, GDK_KEY_f, GDK_CONTROL_MASK, start_searching, NULL);
}

TbHelpWindow *
tb_help_window_new (GtkWindow *parent)
{
  TbHelpWindow *self
      = g_object_new (TB_TYPE_HELP_WINDOW, "transient-for", parent, "destroy-with-parent", TRUE, NULL);

  /* Text size and colours are the study window's, where there is one. */
  gtk_widget_add_css_class (GTK_WIDGET (self), "tenboard");
  return self;
}

void
tb_help_window_show_page (TbHelpWindow *self, const char *page)
{
  gtk_stack_set_visible_child_name (self->stack, page);
}

void
tb_help_window_show_word (TbHelpWindow *self, const char *id)
{
  GtkWidget *row = tb_help_words_get_row (self->words, id);

  gtk_stack_set_visible_child_name (self->stack, WORDS);
  if (row == NULL)
    return;
  tb_help_words_show (self->words, id);
  go_to (self, row);
}
