/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "tb-bag-page.h"

#include <glib/gi18n-lib.h>

#include "tb-bag-view.h"
#include "tb-bag.h"
#include "tb-describe.h"
#include "tb-drawn-picture.h"
#include "tb-follower.h"
#include "tb-quantity.h"

/* One row of the table. */
#define TB_TYPE_BAG_ROW (tb_bag_row_get_type ())
G_DECLARE_FINAL_TYPE (TbBagRow, tb_bag_row, TB, BAG_ROW, GObject)

struct _TbBagRow
{
  GObject parent_instance;
  guint index; /* in the bag */
};

G_DEFINE_FINAL_TYPE (TbBagRow, tb_bag_row, G_TYPE_OBJECT)

static void
tb_bag_row_class_init (TbBagRowClass *klass)
{
}

static void
tb_bag_row_init (TbBagRow *self)
{
}

struct _TbBagPage
{
  GtkWidget parent_instance;

  /* Template */
  GtkWidget *box;
  TbDrawnPicture *picture;
  GtkLabel *words;
  GtkToggleButton *same_line;
  GtkColumnView *table;

  TbSession *session;
  TbFollower *follower;
  TbBag *bag; /* NULL until it is there */
  GListStore *rows;
  GtkSingleSelection *selection;
};

G_DEFINE_FINAL_TYPE (TbBagPage, tb_bag_page, GTK_TYPE_WIDGET)

/* Measures in the table, in the order of what is asked for most. */
static const char *const columns[]
    = { "hook_board",       "board_at_pins", "angle_at_pins_deg", "board_at_arrows",
        "breakpoint_board", "breakpoint_ft", "hook_start_ft",     "roll_start_ft",
        "oil_exit_ft",      "time_in_oil_s", "speed_at_pins_mph", "rev_rate_at_pins_rpm",
        "revolutions",      "flare_in",      "ring_spacing_in",   "time_s" };
/* The measure that the sentence is about. */
#define SAME_LINE_MEASURE "board_at_pins"
#define POCKET_LINE_MEASURE "angle_at_pins_deg"

static TbBallLine
line_of (TbBagPage *self)
{
  return gtk_toggle_button_get_active (self->same_line) ? TB_BALL_SAME_LINE : TB_BALL_POCKET_LINE;
}

/* Picture. */

static guint
chosen_index (TbBagPage *self)
{
  gpointer item = gtk_single_selection_get_selected_item (self->selection);

  return item != NULL ? TB_BAG_ROW (item)->index : G_MAXUINT;
}

static void
draw_bag (cairo_t *cr, double width, double height, const TbTheme *theme, gpointer page)
{
  TbBagPage *self = page;
  TbSetup *setup = tb_session_get_setup (self->session, TB_SIDE_AFTER);
  guint count = self->bag != NULL ? self->bag->entries->len : 0;
  g_autofree TbBagPath *paths = g_new0 (TbBagPath, MAX (count, 1));
  TbBallLine line = line_of (self);
  TbBagScene scene = { .theme = *theme,
                       .oil = &setup->pattern->oil,
                       .oil_scale = setup->shot.lane.pattern_scale,
                       .mirrored = setup->shot.delivery.hand == TB_HAND_LEFT,
                       .pocket_low = setup->shot.assumed.pocket_low,
                       .pocket_high = setup->shot.assumed.pocket_high,
                       .at_arrows = line == TB_BALL_POCKET_LINE,
                       .paths = paths,
                       .n_paths = count,
                       .chosen = chosen_index (self) };

  if (setup->shot.lane.oil != NULL)
    scene.oil = setup->shot.lane.oil;
  for (guint i = 0; i < count; i++)
    {
      const TbRun *run = tb_bag_entry (self->bag, i)->run[line];

      paths[i].label = tb_bag_entry (self->bag, i)->name;
      paths[i].path = run != NULL && run->status == TB_OK ? &run->path : NULL;
    }
  tb_bag_view_draw (cr, width, height, &scene);
}

static void
show_words (TbBagPage *self)
{
  TbBallLine line = line_of (self);
  const TbMeasureInfo *measure
      = tb_measure_find (line == TB_BALL_SAME_LINE ? SAME_LINE_MEASURE : POCKET_LINE_MEASURE);
  g_autofree char *statement = NULL;

  if (self->bag == NULL)
    return;
  statement
      = tb_bag_statement (self->bag, line, measure, tb_session_get_units (self->session) == TB_UNITS_METRIC);
  gtk_label_set_text (self->words, statement);
  tb_drawn_picture_refresh (self->picture, statement);
}

/* Table. */

/* What a column shows: a measure; or, with none, the number, the name or the room. */
typedef enum ColumnKind
{
  COLUMN_NUMBER,
  COLUMN_NAME,
  COLUMN_ROOM,
  COLUMN_MEASURE
} ColumnKind;

typedef struct Column
{
  TbBagPage *page;
  ColumnKind kind;
  const TbMeasureInfo *measure;
} Column;

static char *
cell_text (const Column *column, guint index)
{
  TbBagPage *self = column->page;
  const TbBagEntry *entry = tb_bag_entry (self->bag, index);
  const TbRun *run = entry->run[line_of (self)];

  switch (column->kind)
    {
    case COLUMN_NUMBER:
      return g_strdup_printf ("%u", index + 1);
    case COLUMN_NAME:
      return g_strdup (entry->name);
    case COLUMN_ROOM:
      return isnan (entry->room) || line_of (self) == TB_BALL_SAME_LINE ? g_strdup ("–")
                                                                        : tb_number_format (entry->room, 1);
    default:
      if (run == NULL || run->status != TB_OK)
        return g_strdup ("–");
      return tb_describe_measure_number (column->measure, &run->path.measures,
                                         tb_session_get_units (self->session));
    }
}

static double
cell_value (const Column *column, guint index)
{
  TbBagPage *self = column->page;

  if (column->kind == COLUMN_NUMBER)
    return index;
  if (column->kind == COLUMN_ROOM)
    return line_of (self) == TB_BALL_SAME_LINE ? (double)NAN : tb_bag_entry (self->bag, index)->room;
  return tb_bag_value (self->bag, index, line_of (self), column->measure);
}

/* What has no number comes last. */
static int
compare_cells (gconstpointer a, gconstpointer b, gpointer data)
{
  const Column *column = data;
  guint i = TB_BAG_ROW ((gpointer)a)->index, j = TB_BAG_ROW ((gpointer)b)->index;

  if (column->page->bag == NULL)
    return GTK_ORDERING_EQUAL;
  if (column->kind == COLUMN_NAME)
    return gtk_ordering_from_cmpfunc (g_utf8_collate (tb_bag_entry (column->page->bag, i)->name,
                                                      tb_bag_entry (column->page->bag, j)->name));
  double x = cell_value (column, i), y = cell_value (column, j);

  if (isnan (x) || isnan (y))
    return isnan (x) && isnan (y) ? GTK_ORDERING_EQUAL
           : isnan (x)            ? GTK_ORDERING_LARGER
                                  : GTK_ORDERING_SMALLER;
  return x < y ? GTK_ORDERING_SMALLER : x > y ? GTK_ORDERING_LARGER : GTK_ORDERING_EQUAL;
}

static void
setup_cell (GtkSignalListItemFactory *factory, GtkListItem *item, Column *column)
{
  GtkWidget *label = gtk_label_new (NULL);

  gtk_label_set_xalign (GTK_LABEL (label), column->kind == COLUMN_NAME ? 0 : 1);
  gtk_widget_add_css_class (label, "numeric");
  gtk_list_item_set_child (item, label);
}

static void
bind_cell (GtkSignalListItemFactory *factory, GtkListItem *item, Column *column)
{
  TbBagRow *row = gtk_list_item_get_item (item);
  g_autofree char *text = column->page->bag != NULL ? cell_text (column, row->index) : g_strdup ("");

  gtk_label_set_text (GTK_LABEL (gtk_list_item_get_child (item)), text);
}

static void
free_column (gpointer data, GClosure *closure)
{
  g_free (data);
}

static GtkColumnViewColumn *
add_column (TbBagPage *self, const char *title, ColumnKind kind, const TbMeasureInfo *measure)
{
  Column *column = g_new0 (Column, 1);
  GtkListItemFactory *factory = gtk_signal_list_item_factory_new ();
  GtkColumnViewColumn *made;
  g_autoptr (GtkSorter) sorter = NULL;

  *column = (Column){ self, kind, measure };
  g_signal_connect_data (factory, "setup", G_CALLBACK (setup_cell), column, NULL, 0);
  g_signal_connect_data (factory, "bind", G_CALLBACK (bind_cell), column, free_column, 0);
  made = gtk_column_view_column_new (title, factory);
  sorter = GTK_SORTER (gtk_custom_sorter_new (compare_cells, column, NULL));
  gtk_column_view_column_set_sorter (made, sorter);
  gtk_column_view_column_set_expand (made, kind == COLUMN_NAME);
  gtk_column_view_append_column (self->table, made);
  g_object_unref (made);
  return made;
}

static void
add_measure_column (TbBagPage *self, const char *name)
{
  const TbMeasureInfo *measure = tb_measure_find (name);
  const char *unit = tb_describe_measure_unit (measure, tb_session_get_units (self->session));
  /* "Board at the pins" says it itself. */
  gboolean told = unit[0] == '\0' || g_str_equal (measure->unit, "board");
  g_autofree char *title
      = told ? g_strdup (_ (measure->label)) : g_strdup_printf ("%s, %s", _ (measure->label), unit);

  add_column (self, title, COLUMN_MEASURE, measure);
}

static void
build_table (TbBagPage *self)
{
  GtkColumnViewColumn *number;
  GtkSortListModel *sorted;

  number = add_column (self, _ ("No."), COLUMN_NUMBER, NULL);
  add_column (self, _ ("Ball"), COLUMN_NAME, NULL);
  for (gsize i = 0; i < G_N_ELEMENTS (columns); i++)
    {
      add_measure_column (self, columns[i]);
      /* The room belongs to the angle. */
      if (g_str_equal (columns[i], POCKET_LINE_MEASURE))
        add_column (self, _ ("Room at the arrows, boards"), COLUMN_ROOM, NULL);
    }
  sorted = gtk_sort_list_model_new (g_object_ref (G_LIST_MODEL (self->rows)),
                                    g_object_ref (gtk_column_view_get_sorter (self->table)));
  self->selection = gtk_single_selection_new (G_LIST_MODEL (sorted));
  gtk_single_selection_set_autoselect (self->selection, FALSE);
  gtk_single_selection_set_can_unselect (self->selection, TRUE);
  gtk_column_view_set_model (self->table, GTK_SELECTION_MODEL (self->selection));
  gtk_column_view_sort_by_column (self->table, number, GTK_SORT_ASCENDING);
  g_signal_connect_object (self->selection, "selection-changed", G_CALLBACK (show_words), self,
                           G_CONNECT_SWAPPED);
}

static void
fill_table (TbBagPage *self)
{
  guint count = self->bag != NULL ? self->bag->entries->len : 0;

  g_list_store_remove_all (self->rows);
  for (guint i = 0; i < count; i++)
    {
      g_autoptr (TbBagRow) row = g_object_new (TB_TYPE_BAG_ROW, NULL);

      row->index = i;
      g_list_store_append (self->rows, row);
    }
}

/* Throwing. */

typedef struct Order
{
  TbSetup *setup;
  GPtrArray *balls;
} Order;

/* Every ball of the library, drilled for the bowler's PAP as the present one is; the present one too, if the
 * library does not have it. */
static gpointer
prepare (GtkWidget *page)
{
  TbBagPage *self = TB_BAG_PAGE (page);
  GListModel *entries = tb_library_get_entries (tb_session_get_library (self->session), TB_DOCUMENT_BALL);
  Order *order = g_new0 (Order, 1);
  const TbBall *present;
  gboolean has_present = FALSE;

  order->setup = tb_setup_ref (tb_session_get_setup (self->session, TB_SIDE_AFTER));
  order->balls = g_ptr_array_new_with_free_func ((GDestroyNotify)tb_bag_ball_free);
  present = &order->setup->shot.ball;
  for (guint i = 0; i < g_list_model_get_n_items (entries); i++)
    {
      g_autoptr (TbLibraryEntry) entry = g_list_model_get_item (entries, i);
      const char *id = tb_library_entry_get_id (entry);
      TbBall ball = tb_library_entry_get_ball (entry)->ball;
      gboolean same = g_strcmp0 (id, order->setup->ball_id) == 0;

      ball.pap_over = present->pap_over;
      ball.pap_up = present->pap_up;
      has_present = has_present || same;
      g_ptr_array_add (order->balls,
                       tb_bag_ball_new (id, tb_library_entry_get_name (entry), same ? present : &ball));
    }
  if (!has_present)
    g_ptr_array_add (order->balls, tb_bag_ball_new (NULL, _ ("of this study"), present));
  return order;
}

static void
free_order (gpointer data)
{
  Order *order = data;

  tb_setup_unref (order->setup);
  g_ptr_array_unref (order->balls);
  g_free (order);
}

static gpointer
compute (gpointer data, GCancellable *cancellable)
{
  Order *order = data;

  return tb_bag_new (order->setup, order->balls, cancellable);
}

static void
free_bag (gpointer bag)
{
  tb_bag_free (bag);
}

static void
show_bag (GtkWidget *page, gpointer result)
{
  TbBagPage *self = TB_BAG_PAGE (page);

  g_list_store_remove_all (self->rows);
  g_clear_pointer (&self->bag, tb_bag_free);
  self->bag = result;
  fill_table (self);
  show_words (self);
}

static const TbFollowerWork work = { prepare, free_order, compute, free_bag, show_bag };

static void
on_line_changed (TbBagPage *self)
{
  if (self->session == NULL)
    return;
  fill_table (self);
  show_words (self);
}

static void
take_ball (GtkWidget *widget, const char *action, GVariant *parameter)
{
  TbBagPage *self = TB_BAG_PAGE (widget);
  guint index = chosen_index (self);
  const TbRun *run;

  if (self->bag == NULL || index >= self->bag->entries->len)
    return;
  run = tb_bag_entry (self->bag, index)->run[line_of (self)];
  if (run != NULL)
    tb_session_set_after (self->session, run->setup);
}

static void
on_activate (TbBagPage *self, guint position)
{
  gtk_single_selection_set_selected (self->selection, position);
  gtk_widget_activate_action (GTK_WIDGET (self), "bag.take", NULL);
}

gboolean
tb_bag_page_is_busy (TbBagPage *self)
{
  return tb_follower_is_busy (self->follower);
}

const char *
tb_bag_page_get_words (TbBagPage *self)
{
  return gtk_label_get_text (self->words);
}

GtkColumnView *
tb_bag_page_get_table (TbBagPage *self)
{
  return self->table;
}

static void
on_library_changed (TbBagPage *self)
{
  tb_follower_again (self->follower);
}

void
tb_bag_page_set_session (TbBagPage *self, TbSession *session)
{
  GListModel *entries = tb_library_get_entries (tb_session_get_library (session), TB_DOCUMENT_BALL);

  g_return_if_fail (self->session == NULL);
  self->session = g_object_ref (session);
  build_table (self);
  tb_picture_set_session (TB_PICTURE (self->picture), session);
  self->follower = tb_follower_new (GTK_WIDGET (self), session, &work);
  g_signal_connect_object (entries, "items-changed", G_CALLBACK (on_library_changed), self,
                           G_CONNECT_SWAPPED);
  g_signal_connect_object (session, "notify::units", G_CALLBACK (on_line_changed), self, G_CONNECT_SWAPPED);
}

static void
tb_bag_page_dispose (GObject *object)
{
  TbBagPage *self = TB_BAG_PAGE (object);

  g_clear_pointer (&self->follower, tb_follower_free);
  if (self->table != NULL)
    gtk_column_view_set_model (self->table, NULL);
  self->table = NULL;
  g_clear_pointer (&self->box, gtk_widget_unparent);
  g_clear_pointer (&self->bag, tb_bag_free);
  g_clear_object (&self->selection);
  g_clear_object (&self->rows);
  g_clear_object (&self->session);
  G_OBJECT_CLASS (tb_bag_page_parent_class)->dispose (object);
}

static void
tb_bag_page_class_init (TbBagPageClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = tb_bag_page_dispose;
  g_type_ensure (TB_TYPE_DRAWN_PICTURE);
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/io/github/tenboard/Tenboard/ui/tb-bag-page.ui");
  gtk_widget_class_bind_template_child (widget_class, TbBagPage, box);
  gtk_widget_class_bind_template_child (widget_class, TbBagPage, picture);
  gtk_widget_class_bind_template_child (widget_class, TbBagPage, words);
  gtk_widget_class_bind_template_child (widget_class, TbBagPage, same_line);
  gtk_widget_class_bind_template_child (widget_class, TbBagPage, table);
  gtk_widget_class_bind_template_callback (widget_class, on_line_changed);
  gtk_widget_class_bind_template_callback (widget_class, on_activate);
  gtk_widget_class_install_action (widget_class, "bag.take", NULL, take_ball);
}

static void
tb_bag_page_init (TbBagPage *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  self->rows = g_list_store_new (TB_TYPE_BAG_ROW);
  tb_drawn_picture_set_draw (self->picture, _ ("The bag on the lane"), draw_bag, self);
}
