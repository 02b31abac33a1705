/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "tb-bag-table.h"

#include <glib/gi18n-lib.h>

#include "tb-describe.h"
#include "tb-quantity.h"

/* One row. */
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

/* Measures, in the order of what is asked for most. */
static const char *const measures[] = {
  "hook_board",       "board_at_pins", TB_BAG_TABLE_ANGLE,  "board_at_arrows",
  "breakpoint_board", "breakpoint_ft", "hook_start_ft",     "roll_start_ft",
  "oil_exit_ft",      "time_in_oil_s", "speed_at_pins_mph", "rev_rate_at_pins_rpm",
  "revolutions",      "flare_in",      "ring_spacing_in",   "time_s",
};

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
  TbBagTable *table;
  ColumnKind kind;
  const TbMeasureInfo *measure;
} Column;

#define COLUMN_KEY "tb-bag-column"

static char *
measure_text (const Column *column, guint index)
{
  const TbRun *run = tb_bag_entry (column->table->bag, index)->run[column->table->line];

  if (run == NULL || run->status != TB_OK)
    return g_strdup ("–");
  return tb_describe_measure_number (column->measure, &run->path.measures, column->table->units);
}

static double
cell_value (const Column *column, guint index)
{
  const TbBagTable *table = column->table;

  switch (column->kind)
    {
    case COLUMN_NUMBER:
      return index;
    case COLUMN_ROOM:
      return table->line == TB_BALL_SAME_LINE ? NAN : tb_bag_entry (table->bag, index)->room;
    default:
      return tb_bag_value (table->bag, index, table->line, column->measure);
    }
}

static char *
cell_text (const Column *column, guint index)
{
  double room;

  switch (column->kind)
    {
    case COLUMN_NUMBER:
      return g_strdup_printf ("%u", index + 1);
    case COLUMN_NAME:
      return g_strdup (tb_bag_entry (column->table->bag, index)->name);
    case COLUMN_ROOM:
      room = cell_value (column, index);
      return isnan (room) ? g_strdup ("–") : tb_number_format (room, 1);
    default:
      return measure_text (column, index);
    }
}

/* What has no number comes last. */
static GtkOrdering
compare_numbers (double x, double y)
{
  if (isnan (x) || isnan (y))
    return isnan (x) && isnan (y) ? GTK_ORDERING_EQUAL
           : isnan (x)            ? GTK_ORDERING_LARGER
                                  : GTK_ORDERING_SMALLER;
  return x < y ? GTK_ORDERING_SMALLER : x > y ? GTK_ORDERING_LARGER : GTK_ORDERING_EQUAL;
}

static int
compare_cells (gconstpointer a, gconstpointer b, gpointer data)
{
  const Column *column = data;
  const TbBag *bag = column->table->bag;
  guint i = TB_BAG_ROW ((gpointer)a)->index, j = TB_BAG_ROW ((gpointer)b)->index;

  if (bag == NULL)
    return GTK_ORDERING_EQUAL;
  if (column->kind == COLUMN_NAME)
    return gtk_ordering_from_cmpfunc (
        g_utf8_collate (tb_bag_entry (bag, i)->name, tb_bag_entry (bag, j)->name));
  return compare_numbers (cell_value (column, i), cell_value (column, j));
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
  g_autofree char *text = column->table->bag != NULL ? cell_text (column, row->index) : g_strdup ("");

  gtk_label_set_text (GTK_LABEL (gtk_list_item_get_child (item)), text);
}

static char *
column_title (const Column *column)
{
  const char *unit;

  switch (column->kind)
    {
    case COLUMN_NUMBER:
      return g_strdup (_ ("No."));
    case COLUMN_NAME:
      return g_strdup (_ ("Ball"));
    case COLUMN_ROOM:
      return g_strdup (_ ("Room at the arrows, boards"));
    default:
      unit = tb_describe_measure_unit (column->measure, column->table->units);
      /* "Board at the pins" says it itself. */
      if (unit[0] == '\0' || g_str_equal (column->measure->unit, "board"))
        return g_strdup (_ (column->measure->label));
      return g_strdup_printf ("%s, %s", _ (column->measure->label), unit);
    }
}

static void
free_column (gpointer data, GClosure *closure)
{
  g_free (data);
}

static GtkColumnViewColumn *
add_column (TbBagTable *self, ColumnKind kind, const TbMeasureInfo *measure)
{
  Column *column = g_new0 (Column, 1);
  GtkListItemFactory *factory = gtk_signal_list_item_factory_new ();
  g_autoptr (GtkSorter) sorter = GTK_SORTER (gtk_custom_sorter_new (compare_cells, column, NULL));
  g_autoptr (GtkColumnViewColumn) made = NULL;

  *column = (Column){ self, kind, measure };
  g_signal_connect_data (factory, "setup", G_CALLBACK (setup_cell), column, NULL, 0);
  /* The column's data go with its factory. */
  g_signal_connect_data (factory, "bind", G_CALLBACK (bind_cell), column, free_column, 0);
  made = gtk_column_view_column_new (NULL, factory);
  g_object_set_data (G_OBJECT (made), COLUMN_KEY, column);
  gtk_column_view_column_set_sorter (made, sorter);
  gtk_column_view_column_set_expand (made, kind == COLUMN_NAME);
  gtk_column_view_append_column (self->view, made);
  return made;
}

static void
name_columns (TbBagTable *self)
{
  GListModel *columns = gtk_column_view_get_columns (self->view);

  for (guint i = 0; i < g_list_model_get_n_items (columns); i++)
    {
      g_autoptr (GtkColumnViewColumn) column = g_list_model_get_item (columns, i);
      g_autofree char *title = column_title (g_object_get_data (G_OBJECT (column), COLUMN_KEY));

      gtk_column_view_column_set_title (column, title);
    }
}

void
tb_bag_table_init (TbBagTable *self, GtkColumnView *view)
{
  GtkColumnViewColumn *number;
  GtkSortListModel *sorted;

  *self = (TbBagTable){ .view = view, .rows = g_list_store_new (TB_TYPE_BAG_ROW) };
  number = add_column (self, COLUMN_NUMBER, NULL);
  add_column (self, COLUMN_NAME, NULL);
  for (gsize i = 0; i < G_N_ELEMENTS (measures); i++)
    {
      add_column (self, COLUMN_MEASURE, tb_measure_find (measures[i]));
      if (g_str_equal (measures[i], TB_BAG_TABLE_ANGLE))
        add_column (self, COLUMN_ROOM, NULL);
    }
  name_columns (self);
  sorted = gtk_sort_list_model_new (g_object_ref (G_LIST_MODEL (self->rows)),
                                    g_object_ref (gtk_column_view_get_sorter (view)));
  self->selection = gtk_single_selection_new (G_LIST_MODEL (sorted));
  gtk_single_selection_set_autoselect (self->selection, FALSE);
  gtk_single_selection_set_can_unselect (self->selection, TRUE);
  gtk_column_view_set_model (view, GTK_SELECTION_MODEL (self->selection));
  gtk_column_view_sort_by_column (view, number, GTK_SORT_ASCENDING);
}

void
tb_bag_table_clear (TbBagTable *self)
{
  if (self->view != NULL)
    gtk_column_view_set_model (self->view, NULL);
  self->view = NULL;
  self->bag = NULL;
  g_clear_object (&self->selection);
  g_clear_object (&self->rows);
}

void
tb_bag_table_show (TbBagTable *self, const TbBag *bag, TbBallLine line, TbUnits units)
{
  guint count = bag != NULL ? bag->entries->len : 0;

  g_list_store_remove_all (self->rows);
  self->bag = bag;
  self->line = line;
  self->units = units;
  name_columns (self);
  for (guint i = 0; i < count; i++)
    {
      g_autoptr (TbBagRow) row = g_object_new (TB_TYPE_BAG_ROW, NULL);

      row->index = i;
      g_list_store_append (self->rows, row);
    }
}

guint
tb_bag_table_chosen (const TbBagTable *self)
{
  gpointer item = gtk_single_selection_get_selected_item (self->selection);

  return item != NULL ? TB_BAG_ROW (item)->index : G_MAXUINT;
}
