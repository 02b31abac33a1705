/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "tb-compare-table.h"

#include <glib/gi18n-lib.h>

#include "tb-accessible.h"
#include "tb-children.h"
#include "tb-describe.h"
#include "tb-disclosure.h"
#include "tb-measure-text.h"
#include "tb-word.h"

/* Least widths, characters: "Breakpoint, distance ft", "−12.3". */
#define NAME_CHARS 20
#define NUMBER_CHARS 5

enum
{
  COLUMN_NAME,
  COLUMN_BEFORE,
  COLUMN_AFTER,
  COLUMN_DIFFERENCE,
  N_COLUMNS
};

/* One row: the measure (NULL for where the ball ended) and its labels. */
typedef struct Row
{
  const TbMeasureInfo *info;
  GtkGrid *grid; /* it stands in */
  GtkLabel *label[N_COLUMNS];
} Row;

/* No row. */
#define NONE -1

struct _TbCompareTable
{
  GtkWidget parent_instance;

  /* Template */
  GtkLabel *problem;
  GtkLabel *alike;
  GtkGrid *main_grid;
  GtkGrid *more_grid;

  TbSession *session;
  GArray *rows; /* of Row */
};

G_DEFINE_FINAL_TYPE (TbCompareTable, tb_compare_table, GTK_TYPE_WIDGET)

static const char *const column_classes[N_COLUMNS] = { "name", "before", "after", "difference" };
static const char *const headings[N_COLUMNS] = { "", N_ ("before"), N_ ("after"), N_ ("difference") };

static void
show_row_name (TbCompareTable *self, const Row *row)
{
  const char *unit = tb_describe_measure_unit (row->info, tb_session_get_units (self->session));
  g_autofree char *text = NULL;

  /* Names of boards say so themselves. */
  if (g_str_equal (row->info->unit, "board"))
    unit = "";
  text = g_markup_printf_escaped (unit[0] == '\0' ? "%s" : "%s <span alpha='65%%'>%s</span>",
                                  _ (row->info->label), unit);
  gtk_label_set_markup (row->label[COLUMN_NAME], text);
}

static void
set_number (const Row *row, int column, const char *text)
{
  g_autofree char *spoken = NULL;

  gtk_label_set_text (row->label[column], text);
  /* Translators: a measure, one of "before", "after", "difference", and the number. */
  spoken = g_strdup_printf (_ ("%s, %s: %s"), _ (row->info->label), _ (headings[column]), text);
  tb_accessible_set_name (GTK_WIDGET (row->label[column]), spoken);
}

static void
show_measure (TbCompareTable *self, const Row *row)
{
  TbUnits units = tb_session_get_units (self->session);
  const TbMeasures *before = &tb_session_get_run (self->session, TB_SIDE_BEFORE)->path.measures;
  const TbMeasures *after = &tb_session_get_run (self->session, TB_SIDE_AFTER)->path.measures;
  gboolean has_before = tb_session_get_path (self->session, TB_SIDE_BEFORE) != NULL;
  gboolean has_after = tb_session_get_path (self->session, TB_SIDE_AFTER) != NULL;
  g_autofree char *from = has_before ? tb_describe_measure_number (row->info, before, units) : g_strdup ("–");
  g_autofree char *to = has_after ? tb_describe_measure_number (row->info, after, units) : g_strdup ("–");
  g_autofree char *difference
      = has_before && has_after ? tb_describe_difference (row->info, before, after, units) : g_strdup ("–");

  show_row_name (self, row);
  set_number (row, COLUMN_BEFORE, from);
  set_number (row, COLUMN_AFTER, to);
  set_number (row, COLUMN_DIFFERENCE, difference);
}

static void
show_problem (TbCompareTable *self)
{
  TbRun *run = tb_session_get_run (self->session, TB_SIDE_AFTER);
  gboolean wrong = run->status != TB_OK;
  g_autofree char *sentence = wrong ? tb_describe_problem (run) : g_strdup ("");

  gtk_label_set_text (self->problem, sentence);
  gtk_widget_set_visible (GTK_WIDGET (self->problem), wrong);
}

/* A column of zeros says nothing by itself. */
static void
show_alike (TbCompareTable *self)
{
  TbStudy *study = tb_session_get_study (self->session);

  gtk_widget_set_visible (GTK_WIDGET (self->alike),
                          tb_setup_equal (study->side[TB_SIDE_BEFORE], study->side[TB_SIDE_AFTER]));
}

static void
show_session (TbCompareTable *self)
{
  for (guint i = 0; i < self->rows->len; i++)
    show_measure (self, &g_array_index (self->rows, Row, i));
  show_problem (self);
  show_alike (self);
}

static GtkLabel *
add_label (GtkGrid *grid, int column, int line)
{
  GtkWidget *label = gtk_label_new (NULL);

  gtk_label_set_xalign (GTK_LABEL (label), column == COLUMN_NAME ? 0 : 1);
  gtk_widget_set_hexpand (label, column == COLUMN_NAME);
  gtk_widget_add_css_class (label, column_classes[column]);
  if (column == COLUMN_NAME)
    {
      gtk_label_set_ellipsize (GTK_LABEL (label), PANGO_ELLIPSIZE_END);
      gtk_label_set_width_chars (GTK_LABEL (label), NAME_CHARS);
    }
  else
    gtk_label_set_width_chars (GTK_LABEL (label), NUMBER_CHARS);
  gtk_grid_attach (grid, label, column, line, 1, 1);
  return GTK_LABEL (label);
}

static void
add_heading (GtkGrid *grid)
{
  for (int column = 0; column < N_COLUMNS; column++)
    {
      GtkLabel *label = add_label (grid, column, 0);

      if (headings[column][0] != '\0')
        gtk_label_set_text (label, _ (headings[column]));
      else
        /* Bold, as many letters as a name's would ask for more than any name. */
        gtk_label_set_width_chars (label, -1);
      gtk_widget_add_css_class (GTK_WIDGET (label), "heading");
    }
}

static void
add_row (TbCompareTable *self, GtkGrid *grid, int line, const TbMeasureInfo *info)
{
  Row row = { .info = info, .grid = grid };

  for (int column = 0; column < N_COLUMNS; column++)
    row.label[column] = add_label (grid, column, line);
  gtk_widget_set_tooltip_text (GTK_WIDGET (row.label[COLUMN_NAME]), _ (info->help));
  tb_word_listen (GTK_WIDGET (row.label[COLUMN_NAME]), GTK_WIDGET (self), info->name, TRUE);
  g_array_append_val (self->rows, row);
}

static gboolean
is_main (const TbMeasureInfo *info)
{
  return g_strv_contains (tb_main_measures, info->name);
}

/* The keyboard's way through a table: one stop, in which arrow keys go from measure to measure and F1
 * explains the one they are at. */

static void
mark_row (const Row *row, gboolean marked)
{
  for (int column = 0; column < N_COLUMNS; column++)
    if (marked)
      gtk_widget_add_css_class (GTK_WIDGET (row->label[column]), "current");
    else
      gtk_widget_remove_css_class (GTK_WIDGET (row->label[column]), "current");
}

static void
go_to_row (TbCompareTable *self, GtkGrid *grid, int index)
{
  const Row *row = &g_array_index (self->rows, Row, index);

  for (guint i = 0; i < self->rows->len; i++)
    if (g_array_index (self->rows, Row, i).grid == grid)
      mark_row (&g_array_index (self->rows, Row, i), (int) i == index);
  tb_word_set (GTK_WIDGET (grid), GTK_WIDGET (row->label[COLUMN_NAME]), row->info->name);
  gtk_accessible_update_relation (GTK_ACCESSIBLE (grid), GTK_ACCESSIBLE_RELATION_ACTIVE_DESCENDANT,
                                  row->label[COLUMN_AFTER], -1);
}

/* The grid's row at or after (step 1), or at or before (−1), an index; NONE past the ends. */
static int
row_from (TbCompareTable *self, GtkGrid *grid, int index, int step)
{
  for (; index >= 0 && index < (int) self->rows->len; index += step)
    if (g_array_index (self->rows, Row, index).grid == grid)
      return index;
  return NONE;
}

static int
current_row (TbCompareTable *self, GtkGrid *grid)
{
  for (guint i = 0; i < self->rows->len; i++)
    {
      const Row *row = &g_array_index (self->rows, Row, i);

      if (row->grid == grid && gtk_widget_has_css_class (GTK_WIDGET (row->label[COLUMN_NAME]), "current"))
        return (int) i;
    }
  return NONE;
}

static int
row_for_key (TbCompareTable *self, GtkGrid *grid, guint keyval)
{
  int current = current_row (self, grid);

  switch (keyval)
    {
    case GDK_KEY_Up:
      return row_from (self, grid, current - 1, -1);
    case GDK_KEY_Down:
      return row_from (self, grid, current + 1, 1);
    case GDK_KEY_Home:
      return row_from (self, grid, 0, 1);
    case GDK_KEY_End:
      return row_from (self, grid, (int) self->rows->len - 1, -1);
    default:
      return NONE;
    }
}

static gboolean
on_table_key (GtkEventControllerKey *keys,
              guint keyval,
              guint code,
              GdkModifierType state,
              TbCompareTable *self)
{
  GtkGrid *grid = GTK_GRID (gtk_event_controller_get_widget (GTK_EVENT_CONTROLLER (keys)));
  int row;

  if (keyval == GDK_KEY_Menu || (keyval == GDK_KEY_F10 && (state & GDK_SHIFT_MASK) != 0))
    {
      const Row *current = &g_array_index (self->rows, Row, current_row (self, grid));

      tb_word_show (GTK_WIDGET (self), GTK_WIDGET (current->label[COLUMN_NAME]), current->info->name);
      return GDK_EVENT_STOP;
    }
  row = row_for_key (self, grid, keyval);
  if (row == NONE)
    return GDK_EVENT_PROPAGATE;
  go_to_row (self, grid, row);
  return GDK_EVENT_STOP;
}

static void
make_walkable (TbCompareTable *self, GtkGrid *grid, const char *name)
{
  GtkEventController *keys = gtk_event_controller_key_new ();

  gtk_widget_set_focusable (GTK_WIDGET (grid), TRUE);
  tb_accessible_set_name (GTK_WIDGET (grid), name);
  gtk_accessible_update_property (GTK_ACCESSIBLE (grid), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION,
                                  _ ("Arrow keys go from measure to measure; F1 tells what one means."), -1);
  g_signal_connect (keys, "key-pressed", G_CALLBACK (on_table_key), self);
  gtk_widget_add_controller (GTK_WIDGET (grid), keys);
  go_to_row (self, grid, row_from (self, grid, 0, 1));
}

static void
build (TbCompareTable *self)
{
  int line = 0;

  add_heading (self->main_grid);
  for (int i = 0; tb_main_measures[i] != NULL; i++)
    add_row (self, self->main_grid, i + 1, tb_measure_find (tb_main_measures[i]));
  for (const TbMeasureInfo *info = tb_measure_table; info->name != NULL; info++)
    if (!is_main (info))
      add_row (self, self->more_grid, line++, info);
  make_walkable (self, self->main_grid, _ ("Measures"));
  make_walkable (self, self->more_grid, _ ("More measures"));
}

void
tb_compare_table_set_session (TbCompareTable *self, TbSession *session)
{
  g_return_if_fail (self->session == NULL);

  self->session = g_object_ref (session);
  g_signal_connect_object (session, "changed", G_CALLBACK (show_session), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (session, "notify::units", G_CALLBACK (show_session), self, G_CONNECT_SWAPPED);
  show_session (self);
}

GtkWidget *
tb_compare_table_new (TbSession *session)
{
  TbCompareTable *self = g_object_new (TB_TYPE_COMPARE_TABLE, NULL);

  tb_compare_table_set_session (self, session);
  return GTK_WIDGET (self);
}

static const char *
text_of (TbCompareTable *self, const char *measure, int column)
{
  for (guint i = 0; i < self->rows->len; i++)
    {
      const Row *row = &g_array_index (self->rows, Row, i);

      if (g_str_equal (row->info->name, measure))
        return gtk_label_get_text (row->label[column]);
    }
  return NULL;
}

const char *
tb_compare_table_get_text (TbCompareTable *self, const char *measure, TbSide side)
{
  return text_of (self, measure, side == TB_SIDE_BEFORE ? COLUMN_BEFORE : COLUMN_AFTER);
}

const char *
tb_compare_table_get_difference (TbCompareTable *self, const char *measure)
{
  return text_of (self, measure, COLUMN_DIFFERENCE);
}

static void
tb_compare_table_dispose (GObject *object)
{
  TbCompareTable *self = TB_COMPARE_TABLE (object);

  tb_unparent_children (GTK_WIDGET (self));
  g_clear_object (&self->session);
  g_clear_pointer (&self->rows, g_array_unref);
  G_OBJECT_CLASS (tb_compare_table_parent_class)->dispose (object);
}

static void
tb_compare_table_class_init (TbCompareTableClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = tb_compare_table_dispose;
  g_type_ensure (TB_TYPE_DISCLOSURE);
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/io/github/tenboard/Tenboard/ui/tb-compare-table.ui");
  gtk_widget_class_bind_template_child (widget_class, TbCompareTable, problem);
  gtk_widget_class_bind_template_child (widget_class, TbCompareTable, alike);
  gtk_widget_class_bind_template_child (widget_class, TbCompareTable, main_grid);
  gtk_widget_class_bind_template_child (widget_class, TbCompareTable, more_grid);
}

static void
tb_compare_table_init (TbCompareTable *self)
{
  self->rows = g_array_new (FALSE, FALSE, sizeof (Row));
  gtk_widget_init_template (GTK_WIDGET (self));
  build (self);
}
