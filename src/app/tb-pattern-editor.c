/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "tb-pattern-editor-private.h"

#include <glib/gi18n-lib.h>

#include "tb-accessible.h"
#include "tb-pattern-figures.h"
#include "tb-pattern-words.h"

G_DEFINE_FINAL_TYPE (TbPatternEditor, tb_pattern_editor, TB_TYPE_LANE_PAGE)

/* Taper of a pattern that is made from its numbers, ft. */
#define PLAN_TAPER_FT 3.0
/* Where the graphs are of at first: the second arrow. */
#define FIRST_BOARD 10.0
/* The list is so high at most, px at an ordinary size of text. */
#define LIST_HEIGHT 230
#define LIST_LEAST 130

static const TbSpinRange number_ranges[N_STRIP_NUMBERS] = {
  { 1, TB_LANE_BOARDS, 1, 5, 0 },   { 1, TB_LANE_BOARDS, 1, 5, 0 }, { 0, TB_HEAD_PIN_FT, 0.5, 5, 1 },
  { 0, TB_HEAD_PIN_FT, 0.5, 5, 1 }, { 1, 5000, 10, 50, 0 },         { 0, TB_HEAD_PIN_FT, 0.5, 2, 1 },
};

static TbPatternEditor *
editor (gpointer self)
{
  return TB_PATTERN_EDITOR (self);
}

TbPattern *
tb_pattern_editor_get_pattern (TbPatternEditor *self)
{
  return tb_lane_page_get_setup (TB_LANE_PAGE (self))->pattern;
}

TbPatternScene
tb_pattern_editor_scene (TbPatternEditor *self, const TbTheme *theme)
{
  const TbSetup *setup = tb_lane_page_get_setup (TB_LANE_PAGE (self));
  TbPatternScene scene = tb_pattern_scene_default ();

  scene.theme = *theme;
  scene.oil = &setup->pattern->oil;
  scene.oil_scale = setup->shot.lane.pattern_scale;
  scene.strips = setup->pattern->strips;
  scene.n_strips = setup->pattern->n_strips;
  scene.selected = self->selected;
  scene.cursor_x = self->cursor_x;
  scene.cursor_y = self->cursor_y;
  scene.mirrored = setup->shot.delivery.hand == TB_HAND_LEFT;
  return scene;
}

static void
draw (cairo_t *cr, double width, double height, const TbTheme *theme, gpointer self)
{
  TbPatternScene scene = tb_pattern_editor_scene (self, theme);

  tb_pattern_view_draw (cr, width, height, &scene);
}

void
tb_pattern_editor_redraw (TbPatternEditor *self)
{
  const TbSetup *setup = tb_lane_page_get_setup (TB_LANE_PAGE (self));
  double film
      = setup->shot.lane.pattern_scale * tb_oil_film (&setup->pattern->oil, self->cursor_x, self->cursor_y);
  double x = setup->shot.delivery.hand == TB_HAND_LEFT ? -self->cursor_x : self->cursor_x;
  g_autofree char *figures = tb_pattern_figures_text (setup->pattern);
  g_autofree char *words
      = g_strdup_printf (_ ("Board %.1f, %.1f ft: %.1f units. Drag in the graphs to read elsewhere; drag a "
                            "strip's handles to change it."),
                         tb_board_from_x (x), tb_ft_from_metres (self->cursor_y), tb_units_from_film (film));

  tb_lane_page_set_words (TB_LANE_PAGE (self), words);
  tb_drawn_picture_refresh (tb_lane_page_get_picture (TB_LANE_PAGE (self)), figures);
}

/* Showing the session. */

static void
fill_list (TbPatternEditor *self, const TbPattern *pattern)
{
  GtkListBoxRow *row;

  while ((row = gtk_list_box_get_row_at_index (self->list, 0)) != NULL)
    gtk_list_box_remove (self->list, GTK_WIDGET (row));
  for (guint i = 0; i < pattern->n_strips; i++)
    {
      g_autofree char *text = tb_strip_text (i, &pattern->strips[i]);
      GtkWidget *label = gtk_label_new (text);

      gtk_label_set_xalign (GTK_LABEL (label), 0);
      gtk_label_set_ellipsize (GTK_LABEL (label), PANGO_ELLIPSIZE_END);
      gtk_widget_add_css_class (label, "numeric");
      gtk_list_box_append (self->list, label);
    }
}

/* Rows are changed in place while they are as many as before: the focus stays where it is. */
static void
show_list (TbPatternEditor *self, const TbPattern *pattern)
{
  GtkListBoxRow *row;

  if (gtk_list_box_get_row_at_index (self->list, (int) pattern->n_strips) != NULL
      || (pattern->n_strips > 0
          && gtk_list_box_get_row_at_index (self->list, (int) pattern->n_strips - 1) == NULL))
    fill_list (self, pattern);
  for (guint i = 0; i < pattern->n_strips; i++)
    {
      g_autofree char *text = tb_strip_text (i, &pattern->strips[i]);

      row = gtk_list_box_get_row_at_index (self->list, (int) i);
      gtk_label_set_text (GTK_LABEL (gtk_list_box_row_get_child (row)), text);
    }
  row = self->selected >= 0 ? gtk_list_box_get_row_at_index (self->list, self->selected) : NULL;
  gtk_list_box_select_row (self->list, row);
}

static double
number_of (const TbStrip *strip, StripNumber number)
{
  switch (number)
    {
    case STRIP_RIGHT:
      return strip->right_board;
    case STRIP_LEFT:
      return strip->left_board;
    case STRIP_START:
      return tb_ft_from_metres (strip->start);
    case STRIP_END:
      return tb_ft_from_metres (strip->end);
    case STRIP_VOLUME:
      return TB_MICROLITRES_PER_ML * tb_ml_from_cubic_metres (strip->volume);
    default:
      return tb_ft_from_metres (strip->taper);
    }
}

static void
show_form (TbPatternEditor *self, const TbPattern *pattern)
{
  gboolean chosen = self->selected >= 0;

  gtk_widget_set_sensitive (self->form, chosen);
  gtk_widget_set_sensitive (self->add, pattern->n_strips > 0 && pattern->n_strips < TB_STRIPS_MAX);
  gtk_widget_set_sensitive (self->remove, chosen && pattern->n_strips > 1);
  gtk_widget_set_sensitive (self->up, self->selected > 0);
  gtk_widget_set_sensitive (self->down, chosen && self->selected + 1 < (int) pattern->n_strips);
  if (!chosen)
    return;
  gtk_drop_down_set_selected (self->way, pattern->strips[self->selected].way);
  for (int i = 0; i < N_STRIP_NUMBERS; i++)
    gtk_spin_button_set_value (self->number[i],
                               number_of (&pattern->strips[self->selected], (StripNumber) i));
}

static void
show_plan (TbPatternEditor *self, const TbPattern *pattern)
{
  TbPatternFigures f = tb_pattern_figures (pattern);

  gtk_spin_button_set_value (self->plan_length, tb_ft_from_metres (f.length));
  gtk_spin_button_set_value (self->plan_volume, tb_ml_from_cubic_metres (f.volume));
  gtk_spin_button_set_value (self->plan_ratio, isfinite (f.ratio) ? f.ratio : 10);
}

static void
tb_pattern_editor_session_changed (TbLanePage *page)
{
  TbPatternEditor *self = editor (page);
  const TbPattern *pattern = tb_pattern_editor_get_pattern (self);
  g_autofree char *figures = tb_pattern_figures_text (pattern);

  self->selected = CLAMP (self->selected, -1, (int) pattern->n_strips - 1);
  self->showing = TRUE;
  gtk_label_set_text (self->figures, figures);
  show_list (self, pattern);
  show_form (self, pattern);
  show_plan (self, pattern);
  if (!gtk_widget_has_focus (GTK_WIDGET (self->name)))
    gtk_editable_set_text (GTK_EDITABLE (self->name), tb_document_display_name (pattern->name));
  self->showing = FALSE;
  tb_pattern_editor_redraw (self);
}

/* Changing it. */

gboolean
tb_pattern_editor_take (TbPatternEditor *self, TbPattern *pattern, const char *key)
{
  TbLanePage *page = TB_LANE_PAGE (self);
  g_autoptr (TbPattern) taken = pattern;
  g_autoptr (TbSetup) setup = NULL;

  if (taken == NULL)
    return FALSE;
  setup = tb_setup_with_pattern (tb_lane_page_get_setup (page), taken);
  tb_session_set_after_as (tb_lane_page_get_session (page), setup, key);
  return TRUE;
}

/* The study's own pattern from now on: it has the old one's name, and no id. */
static gboolean
take_strips (TbPatternEditor *self, const TbStrip *strips, guint count, const char *key)
{
  const TbPattern *old = tb_pattern_editor_get_pattern (self);

  return tb_pattern_editor_take (self, tb_pattern_new_strips (NULL, old->name, strips, count, NULL), key);
}

int
tb_pattern_editor_get_selected (TbPatternEditor *self)
{
  return self->selected;
}

void
tb_pattern_editor_select (TbPatternEditor *self, int strip)
{
  self->selected = strip;
  tb_pattern_editor_session_changed (TB_LANE_PAGE (self));
}

gboolean
tb_pattern_editor_change (TbPatternEditor *self, const TbStrip *strip)
{
  const TbPattern *pattern = tb_pattern_editor_get_pattern (self);
  g_autofree TbStrip *strips = g_memdup2 (pattern->strips, pattern->n_strips * sizeof *strips);

  if (self->selected < 0)
    return FALSE;
  strips[self->selected] = *strip;
  return take_strips (self, strips, pattern->n_strips, "pattern-strip");
}

static void
set_number (TbStrip *strip, StripNumber number, double value)
{
  switch (number)
    {
    case STRIP_RIGHT:
      strip->right_board = (int) lround (value);
      break;
    case STRIP_LEFT:
      strip->left_board = (int) lround (value);
      break;
    case STRIP_START:
      strip->start = tb_metres_from_ft (value);
      break;
    case STRIP_END:
      strip->end = tb_metres_from_ft (value);
      break;
    case STRIP_VOLUME:
      strip->volume = tb_cubic_metres_from_ml (value / TB_MICROLITRES_PER_ML);
      break;
    default:
      strip->taper = tb_metres_from_ft (value);
    }
}

static void
on_number (TbPatternEditor *self, GtkSpinButton *spin)
{
  const TbPattern *pattern = tb_pattern_editor_get_pattern (self);
  TbStrip strip;

  if (self->showing || self->selected < 0)
    return;
  strip = pattern->strips[self->selected];
  for (int i = 0; i < N_STRIP_NUMBERS; i++)
    if (self->number[i] == spin)
      set_number (&strip, (StripNumber) i, gtk_spin_button_get_value (spin));
  tb_strip_tidy (&strip);
  tb_pattern_editor_change (self, &strip);
}

static void
on_way (TbPatternEditor *self)
{
  const TbPattern *pattern = tb_pattern_editor_get_pattern (self);
  TbStrip strip;

  if (self->showing || self->selected < 0)
    return;
  strip = pattern->strips[self->selected];
  if (strip.way == (TbStripWay) gtk_drop_down_get_selected (self->way))
    return;
  tb_strip_turn (&strip);
  tb_pattern_editor_change (self, &strip);
}

static void
on_row_selected (TbPatternEditor *self, GtkListBoxRow *row)
{
  int index = row ? gtk_list_box_row_get_index (row) : -1;

  if (self->showing || index < 0 || index == self->selected)
    return;
  tb_pattern_editor_select (self, index);
}

/* Behind the chosen one, and like it. */
static void
on_add (TbPatternEditor *self)
{
  const TbPattern *pattern = tb_pattern_editor_get_pattern (self);
  g_autoptr (GArray) strips = g_array_new (FALSE, FALSE, sizeof (TbStrip));
  TbStrip strip = self->selected >= 0 ? pattern->strips[self->selected] : tb_strip_default ();
  guint at = self->selected >= 0 ? (guint) self->selected + 1 : pattern->n_strips;

  if (pattern->n_strips == TB_STRIPS_MAX)
    return;
  if (pattern->n_strips > 0)
    g_array_append_vals (strips, pattern->strips, pattern->n_strips);
  g_array_insert_val (strips, at, strip);
  self->selected = (int) at;
  take_strips (self, (const TbStrip *) (gpointer) strips->data, strips->len, NULL);
}

static void
on_remove (TbPatternEditor *self)
{
  const TbPattern *pattern = tb_pattern_editor_get_pattern (self);
  g_autoptr (GArray) strips = g_array_new (FALSE, FALSE, sizeof (TbStrip));

  g_array_append_vals (strips, pattern->strips, pattern->n_strips);
  g_array_remove_index (strips, (guint) self->selected);
  take_strips (self, (const TbStrip *) (gpointer) strips->data, strips->len, NULL);
}

static void
move_selected (TbPatternEditor *self, int by)
{
  const TbPattern *pattern = tb_pattern_editor_get_pattern (self);
  g_autofree TbStrip *strips = g_memdup2 (pattern->strips, pattern->n_strips * sizeof *strips);
  TbStrip moved = strips[self->selected];

  strips[self->selected] = strips[self->selected + by];
  strips[self->selected + by] = moved;
  self->selected += by;
  take_strips (self, strips, pattern->n_strips, NULL);
}

static void
on_up (TbPatternEditor *self)
{
  move_selected (self, -1);
}

static void
on_down (TbPatternEditor *self)
{
  move_selected (self, 1);
}

static void
on_plan (TbPatternEditor *self)
{
  TbStripsPlan plan = { .length = tb_metres_from_ft (gtk_spin_button_get_value (self->plan_length)),
                        .volume = tb_cubic_metres_from_ml (gtk_spin_button_get_value (self->plan_volume)),
                        .ratio = gtk_spin_button_get_value (self->plan_ratio),
                        .taper = tb_metres_from_ft (PLAN_TAPER_FT) };
  TbStrip strips[TB_STRIPS_PLAN_COUNT];

  if (!tb_strips_plan (&plan, strips))
    return;
  self->selected = 0;
  take_strips (self, strips, TB_STRIPS_PLAN_COUNT, NULL);
}

/* Building. */

static void
add_list (TbPatternEditor *self, GtkBox *box)
{
  GtkWidget *scroller = gtk_scrolled_window_new (), *row = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 4);
  GtkWidget *empty
      = gtk_label_new (_ ("Described by its film, not by strips. Make strips from its numbers below."));

  gtk_label_set_wrap (GTK_LABEL (empty), TRUE);
  gtk_widget_add_css_class (empty, "note");
  tb_lane_page_add_title (box, _ ("Strips, in the order they are laid"));
  self->list = GTK_LIST_BOX (gtk_list_box_new ());
  tb_accessible_set_name (GTK_WIDGET (self->list), _ ("Strips"));
  gtk_list_box_set_placeholder (self->list, empty);
  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (scroller), GTK_POLICY_NEVER, GTK_POLICY_AUTOMATIC);
  gtk_scrolled_window_set_propagate_natural_height (GTK_SCROLLED_WINDOW (scroller), TRUE);
  gtk_scrolled_window_set_min_content_height (GTK_SCROLLED_WINDOW (scroller), LIST_LEAST);
  gtk_scrolled_window_set_max_content_height (GTK_SCROLLED_WINDOW (scroller), LIST_HEIGHT);
  gtk_scrolled_window_set_has_frame (GTK_SCROLLED_WINDOW (scroller), TRUE);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scroller), GTK_WIDGET (self->list));
  gtk_box_append (box, scroller);
  gtk_widget_add_css_class (row, "list-row");
  gtk_box_append (box, row);
  self->add = GTK_WIDGET (
      tb_lane_page_add_button (GTK_BOX (row), _ ("_Add"), _ ("A strip like the chosen one, behind it")));
  self->remove
      = GTK_WIDGET (tb_lane_page_add_button (GTK_BOX (row), _ ("_Remove"), _ ("Takes the chosen strip out")));
  self->up = GTK_WIDGET (tb_lane_page_add_button (GTK_BOX (row), _ ("_Up"), _ ("Laid one earlier")));
  self->down = GTK_WIDGET (tb_lane_page_add_button (GTK_BOX (row), _ ("_Down"), _ ("Laid one later")));
  g_signal_connect_swapped (self->list, "row-selected", G_CALLBACK (on_row_selected), self);
  g_signal_connect_swapped (self->add, "clicked", G_CALLBACK (on_add), self);
  g_signal_connect_swapped (self->remove, "clicked", G_CALLBACK (on_remove), self);
  g_signal_connect_swapped (self->up, "clicked", G_CALLBACK (on_up), self);
  g_signal_connect_swapped (self->down, "clicked", G_CALLBACK (on_down), self);
}

static void
add_form (TbPatternEditor *self, GtkBox *box)
{
  static const char *const labels[N_STRIP_NUMBERS]
      = { N_ ("Rightmost board"), N_ ("Leftmost board"),    N_ ("Starts at, ft"),
          N_ ("Ends at, ft"),     N_ ("On each board, µL"), N_ ("Taper at its end, ft") };
  static const char *const ways[] = { N_ ("Going out"), N_ ("Coming back"), NULL };

  self->form = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  tb_lane_page_add_title (GTK_BOX (self->form), _ ("The chosen strip"));
  self->way = tb_lane_page_add_choice (GTK_BOX (self->form), _ ("Laid"), ways);
  for (int i = 0; i < N_STRIP_NUMBERS; i++)
    {
      self->number[i] = tb_lane_page_add_spin (GTK_BOX (self->form), _ (labels[i]), &number_ranges[i]);
      g_signal_connect_swapped (self->number[i], "value-changed", G_CALLBACK (on_number), self);
    }
  gtk_box_append (box, self->form);
  g_signal_connect_swapped (self->way, "notify::selected", G_CALLBACK (on_way), self);
}

static void
add_plan (TbPatternEditor *self, GtkBox *box)
{
  static const TbSpinRange lengths = { 20, 58, 0.5, 2, 1 }, volumes = { 1, 60, 0.5, 2, 1 },
                           ratios = { 1, 20, 0.1, 1, 1 };

  tb_lane_page_add_title (box, _ ("Strips from numbers"));
  self->plan_length = tb_lane_page_add_spin (box, _ ("Length, ft"), &lengths);
  self->plan_volume = tb_lane_page_add_spin (box, _ ("Oil, mL"), &volumes);
  self->plan_ratio = tb_lane_page_add_spin (box, _ ("Middle to outside, : 1"), &ratios);
  tb_lane_page_explain (self->plan_length, "length");
  tb_lane_page_explain (self->plan_volume, "volume");
  tb_lane_page_explain (self->plan_ratio, "pattern-ratio");
  g_signal_connect_swapped (
      tb_lane_page_add_button (box, _ ("_Make strips"),
                               _ ("Ten strips with this length, oil and ratio, in place of the pattern")),
      "clicked", G_CALLBACK (on_plan), self);
}

static void
tb_pattern_editor_session_set (TbLanePage *page)
{
  TbPatternEditor *self = editor (page);
  GtkBox *box = tb_lane_page_get_controls (page);

  tb_lane_page_add_title (box, _ ("Pattern of “after”"));
  self->figures = tb_lane_page_add_note (box, "");
  add_list (self, box);
  add_form (self, box);
  add_plan (self, box);
  tb_pattern_editor_add_files (self, box);
  tb_drawn_picture_set_draw (tb_lane_page_get_picture (page), _ ("Pattern"), draw, self);
}

static void
tb_pattern_editor_dispose (GObject *object)
{
  g_clear_object (&editor (object)->chooser);
  G_OBJECT_CLASS (tb_pattern_editor_parent_class)->dispose (object);
}

static void
tb_pattern_editor_class_init (TbPatternEditorClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = tb_pattern_editor_dispose;
  TB_LANE_PAGE_CLASS (klass)->session_set = tb_pattern_editor_session_set;
  TB_LANE_PAGE_CLASS (klass)->session_changed = tb_pattern_editor_session_changed;
}

static void
tb_pattern_editor_init (TbPatternEditor *self)
{
  self->selected = -1;
  self->cursor_x = tb_x_from_board (FIRST_BOARD);
  self->cursor_y = TB_ARROWS_Y;
  tb_pattern_editor_init_drag (self);
}
