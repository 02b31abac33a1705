/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "tb-help-window.h"

#include <glib/gi18n-lib.h>

#include "tb-accessible.h"
#include "tb-core.h"
#include "tb-help-row.h"
#include "tb-help-search.h"
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

G_DEFINE_FINAL_TYPE (TbHelpWindow, tb_help_window, GTK_TYPE_WINDOW)

/* A page of plain text: a heading and its paragraphs, again and again; ends with NULL. A heading begins with
 * '#'. */
typedef struct TextPage
{
  const char *name, *title;
  const char *const *text;
} TextPage;

static const char *const ball_text[]
    = { N_ ("#Skid, hook, roll"),
        N_ ("The ball leaves the hand sliding: where it touches the lane, its surface moves over the boards. "
            "Friction works against that slip. It slows the ball, spins it up, and pushes it aside where the "
            "slip points aside: that is the hook. When the slip has gone the ball rolls, and hooks no more."),
        N_ ("Oil keeps the cover off the lane. How much it does depends on the film and on how rough the "
            "cover is: a rough surface reaches through a film that carries a smooth one. So a ball skids on "
            "the heads and turns where the oil ends."),
        N_ ("#What decides how much, and where"),
        N_ ("For a ball that gets to rolling, its release and its core fix the whole turn and the speed it "
            "loses, whatever the oil is. Oil, line and surface decide where it turns, and so on which board "
            "it ends. A ball that turns late has little lane left; one that turns early has spent its turn "
            "and goes straight, which looks like less hook."),
        N_ ("More speed means less time for friction to work before the pins. More revs, or more axis "
            "rotation, mean more slip to the side. A rough surface on the same line hooks more; on its own "
            "line to the pocket it may arrive flatter."),
        N_ ("#The ball's core and its oil"),
        N_ ("A core makes the spin axis wander over the ball, and each turn leaves its ring of oil a little "
            "further on. A ball that flares shows the lane a dry strip each turn; one that does not runs on "
            "its own oil."),
        N_ ("#Loft"),
        N_ ("In the air nothing rubs. A landing presses the film thin for a few thousandths of a second and "
            "rubs harder than the resting ball; a high arc also spends speed upwards."),
        NULL };

static const char *const figures_text[] = {
  N_ ("#Agrees"),
  N_ ("Skid, then hook, then roll, in that order, for every hooking shot (United States Bowling Congress, "
      "Ball Motion Study, 2008). Surface leads all other properties of the ball (same)."),
  N_ ("A strike line reported for 17.9 mph, 416 rpm and 45° on a film that is the same across the lane ends "
      "in the pocket, if the press counted board 28 from the left (AIP Advances 15, 045222, 2025)."),
  N_ ("About half the oil of the heads is gone from the track after 12 to 15 games (Bowlers Journal, August "
      "2015): the shares of oil that ball and lane exchange were chosen so."),
  N_ ("Closed forms of mechanics, three textbook problems, and independent solvers agree with the computed "
      "paths to a few thousandths of a board."),
  N_ ("#Disagrees"),
  N_ ("Coaching press has a ball lose 2 to 2.5 mph on the way. Here a ball that rolls has lost 2.5 to 3.8 "
      "mph, whatever the lane: speed on a monitor is measured further down."),
  N_ ("Tour reports of 2003 have the ball at board 11 to 12 near 41 ft on a 43 ft pattern. Here the most "
      "forgiving line on a 3 : 1 film goes about six boards further out. The film of that day is not "
      "published."),
  N_ ("Static weight is said to matter little. Three ounces of top weight move the ball by 1.3 boards here; "
      "surface, by nine."),
  N_ ("A ball that does not flare loses about eight boards here, all through its own oil. The direction is "
      "the trade's; the size is not known."),
  N_ ("#Left out"),
  N_ ("The air's sideways lift on a spinning ball, which nobody has measured near a lane, and the give of "
      "lane and cover."),
  NULL
};

static const char *const sources_text[]
    = { N_ ("#The lane and the ball"),
        N_ ("United States Bowling Congress, Equipment Specifications Manual: dimensions, weights, radii of "
            "gyration, roughness, static weights, holes. The current text supersedes what is said here."),
        N_ ("United States Bowling Congress, Ball Motion Study, 2008; technical note on the 10 pin; pattern "
            "study (press text)."),
        N_ ("#Mechanics"),
        N_ ("Coriolis, 1835, and any text on mechanics: the sliding and rolling sphere. Landau and Lifshitz, "
            "Mechanics, §37: the free top. Olver and Spikes, 1998: the friction of mixed films. Johnson, "
            "Contact Mechanics, 1985: the spot under the ball. Zhuravlev, 1998: spinning on it while it "
            "slips. Moreau, and Jean, 1999: slips that come to rest."),
        N_ ("#Injuries"),
        N_ ("Kerr, Collins and Comstock, Clinical Pediatrics 50, 2011; Zabierek and others, Journal of Sport "
            "Rehabilitation, 2022."),
        NULL };

static const char *const cautions_text[]
    = { N_ ("House rules, the local rulebook and qualified people come before anything said here."),
        N_ ("#On the lane"),
        N_ ("Never step past the foul line: the lane is oiled, and falls are the most common injury of older "
            "bowlers. Lift a ball with both hands on its sides."),
        N_ ("High lofting dents lanes; many houses forbid it. Ask the staff before you try it."),
        N_ ("#Wrist, elbow, thumb"),
        N_ ("Forcing revs by twisting strains the elbow and wrist. A thumb that is numb or tingles: stop, "
            "have the fit checked, and see a clinician if it stays."),
        N_ ("#Surface and drilling"),
        N_ ("Sand wet, in fresh air, with eye protection and a respirator for particles; keep sleeves away "
            "from a spinner. Solvents burn. Never heat a ball in an oven or microwave. Plugging and drilling "
            "are a pro shop's work."),
        N_ ("In competition no abrasive and no liquid may touch the ball once scoring has begun; ask the "
            "tournament."),
        NULL };

static const TextPage text_pages[] = { { "ball", N_ ("How the ball moves"), ball_text },
                                       { "figures", N_ ("Against what is published"), figures_text },
                                       { "sources", N_ ("Sources"), sources_text },
                                       { "cautions", N_ ("Cautions"), cautions_text } };

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
add_text_page (TbHelpWindow *self, const TextPage *page)
{
  GtkWidget *column = new_column ();
  TbHelpPiece piece = { .page = page->name, .title = _ (page->title) };

  gtk_box_append (GTK_BOX (column), tb_help_label_new (_ (page->title), "title-2"));
  for (const char *const *text = page->text; *text != NULL; text++)
    {
      const char *shown = _ (*text);

      piece.text = shown;
      if (shown[0] == '#')
        {
          piece.title = shown + 1;
          gtk_box_append (GTK_BOX (column), tb_help_label_new (piece.title, "heading"));
        }
      else
        add_paragraph (self, GTK_BOX (column), &piece);
    }
  add_page (self, column, page->name, _ (page->title));
}

/* "0.008", "3 ms" */
static char *
with_unit (double value, const char *unit)
{
  return unit[0] != '\0' ? g_strdup_printf ("%g %s", value, _ (unit)) : g_strdup_printf ("%g", value);
}

static void
add_constant (TbHelpWindow *self, GtkBox *column, const TbAssumedInfo *info)
{
  g_autofree char *value = with_unit (info->value, info->unit), *low = with_unit (info->low, info->unit);
  g_autofree char *high = with_unit (info->high, info->unit);
  /* Translators: what it is, then its value. */
  g_autofree char *heading = g_strdup_printf (_ ("%s: %s"), _ (info->label), value);
  g_autofree char *range = g_strdup_printf (_ ("Plausible from %s to %s."), low, high);
  g_autofree char *source = g_strdup_printf (_ ("Where it comes from: %s."), _ (info->source));
  g_autofree char *consequence = g_strdup_printf (_ ("If it is moved: %s."), _ (info->consequence));

  g_autofree char *all = g_strjoin ("\n", range, source, consequence, NULL);

  gtk_box_append (column, tb_help_label_new (heading, "heading"));
  add_paragraph (self, column, &(TbHelpPiece){ .page = "assumed", .title = heading, .text = all });
}

/* Pads that people know. */
static const double pads[] = { 500, 1000, 2000, 3000, 4000, TB_GRIT_POLISH };

static char *
surface_text (void)
{
  g_autoptr (GString) text = g_string_new (NULL);

  for (gsize i = 0; i < G_N_ELEMENTS (pads); i++)
    {
      double um = tb_um_from_metres (tb_roughness_from_grit (pads[i]));

      g_string_append (text, i > 0 ? "\n" : "");
      if (pads[i] == TB_GRIT_POLISH)
        g_string_append_printf (text, _ ("Polish: %.2f µm"), um);
      else
        g_string_append_printf (text, _ ("%.0f grit: %.2f µm"), pads[i], um);
    }
  return g_string_free (g_steal_pointer (&text), FALSE);
}

static char *
cover_text (void)
{
  const TbField *field = tb_field_find (TB_GROUP_BALL, "cover");
  g_autoptr (GString) text = g_string_new (NULL);

  for (int kind = 0; kind < TB_N_COVER_KINDS; kind++)
    {
      TbCover cover = tb_cover_typical ((TbCoverKind) kind);

      g_string_append (text, kind > 0 ? "\n" : "");
      /* Translators: kind of cover, friction on a dry lane, film scale, absorption. */
      g_string_append_printf (
          text, _ ("%s: friction on a dry lane %g, grip through oil %g, oil absorption %g 1/s"),
          _ (field->choices[kind].label), cover.dry_friction, cover.film_scale, cover.absorption);
    }
  return g_string_free (g_steal_pointer (&text), FALSE);
}

static void
add_table (TbHelpWindow *self, GtkBox *column, const char *title, const char *text)
{
  gtk_box_append (column, tb_help_label_new (title, "heading"));
  add_paragraph (self, column, &(TbHelpPiece){ .page = "assumed", .title = title, .text = text });
}

static void
add_assumed_page (TbHelpWindow *self)
{
  GtkWidget *column = new_column ();
  g_autofree char *covers = cover_text (), *surfaces = surface_text ();

  gtk_box_append (GTK_BOX (column), tb_help_label_new (_ ("What is assumed"), "title-2"));
  gtk_box_append (
      GTK_BOX (column),
      tb_help_label_new (_ ("Nobody has published these numbers, or they are only typical. They are not "
                            "measurements, and what the model says is no measurement either."),
                         NULL));
  for (const TbAssumedInfo *info = tb_assumed_table; info->name != NULL; info++)
    add_constant (self, GTK_BOX (column), info);
  add_table (self, GTK_BOX (column), _ ("Covers (assumed)"), covers);
  add_table (self, GTK_BOX (column), _ ("Roughness of a surface (typical, not measured)"), surfaces);
  add_page (self, column, "assumed", _ ("What is assumed"));
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
  add_text_page (self, &text_pages[0]);
  add_words_page (self);
  add_assumed_page (self);
  for (gsize i = 1; i < G_N_ELEMENTS (text_pages); i++)
    add_text_page (self, &text_pages[i]);
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
