/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "tb-loft-table.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "tb-describe.h"
#include "tb-loft-words.h"
#include "tb-quantity.h"

/* What is told, in this order. */
static const char *const measures[]
    = { "landing_ft",    "landing_speed_mph", "landing_load",  "landing_loss_j", "landing_slowed_mph",
        "hook_start_ft", "roll_start_ft",     "board_at_pins", "hook_board",     "speed_at_pins_mph" };
#define N_MEASURES G_N_ELEMENTS (measures)
/* Two rows of headings before; after it the share of the motion lost, and how it ended. */
#define FIRST_ROW 2
#define SHARE_AFTER 4 /* measures */
#define SHARE_ROW N_MEASURES
#define END_ROW (N_MEASURES + 1)
#define N_ROWS (N_MEASURES + 2)
#define SHARE_DIGITS 1
#define N_COLUMNS (TB_N_LOFTS * TB_N_LOFT_LANES)

struct _TbLoftTable
{
  GtkWidget parent_instance;

  GtkWidget *grid;
  GtkLabel *lane_name[N_COLUMNS];
  GtkLabel *name[N_MEASURES];
  GtkLabel *cell[N_ROWS][N_COLUMNS];
};

G_DEFINE_FINAL_TYPE (TbLoftTable, tb_loft_table, GTK_TYPE_WIDGET)

static GtkLabel *
add_label (TbLoftTable *self, int column, int row, int span)
{
  GtkWidget *label = gtk_label_new ("");

  gtk_label_set_xalign (GTK_LABEL (label), column == 0 ? 0 : 1);
  gtk_widget_set_hexpand (label, column > 0);
  if (column == 0)
    gtk_widget_add_css_class (label, "name");
  gtk_grid_attach (GTK_GRID (self->grid), label, column, row, span, 1);
  return GTK_LABEL (label);
}

/* The unit stands with the name, so that the numbers stay short. */
static void
show_name (GtkLabel *label, const TbMeasureInfo *info, TbUnits units)
{
  const char *unit = tb_describe_measure_unit (info, units);
  g_autofree char *text = NULL;

  /* Boards say so in their names. */
  if (unit[0] == '\0' || g_str_equal (info->unit, "board"))
    text = g_strdup (_ (info->label));
  else
    /* Translators: a measure and its unit, such as "Lands at (ft)". */
    text = g_strdup_printf (_ ("%s (%s)"), _ (info->label), unit);
  gtk_label_set_text (label, text);
  gtk_widget_set_tooltip_text (GTK_WIDGET (label), _ (info->help));
}

static char *
cell_text (const TbMeasureInfo *info, TbRun *run, TbUnits units)
{
  if (run == NULL)
    return g_strdup (_ ("…"));
  if (run->status != TB_OK)
    return g_strdup (_ ("–"));
  return tb_describe_measure_number (info, &run->path.measures, units);
}

/* What the landing takes of all the motion there was. */
static char *
share_text (TbRun *run)
{
  double share = run != NULL ? tb_run_landing_share (run) : (double) NAN;

  if (run == NULL)
    return g_strdup (_ ("…"));
  return isnan (share) ? g_strdup (_ ("–")) : tb_number_format (100 * share, SHARE_DIGITS);
}

static char *
end_text (TbRun *run, TbUnits units)
{
  if (run == NULL)
    return g_strdup (_ ("…"));
  if (run->status != TB_OK)
    return g_strdup (_ ("no run"));
  return tb_describe_end (run, units);
}

void
tb_loft_table_show (TbLoftTable *self, TbLoftRuns *runs, TbUnits units)
{
  for (guint i = 0; i < N_MEASURES; i++)
    show_name (self->name[i], tb_measure_find (measures[i]), units);
  for (int column = 0; column < N_COLUMNS; column++)
    {
      TbLoftLane lane = (TbLoftLane) (column % TB_N_LOFT_LANES);
      TbRun *run = tb_loft_runs_get_run (runs, (TbLoftStyle) (column / TB_N_LOFT_LANES), lane);
      g_autofree char *end = end_text (run, units);
      g_autofree char *share = share_text (run);
      g_autofree char *lane_name = tb_loft_lane_name (lane, tb_loft_runs_get_games (runs));

      gtk_label_set_text (self->lane_name[column], lane_name);
      gtk_label_set_text (self->cell[SHARE_ROW][column], share);
      gtk_label_set_text (self->cell[END_ROW][column], end);
      for (guint i = 0; i < N_MEASURES; i++)
        {
          g_autofree char *text = cell_text (tb_measure_find (measures[i]), run, units);

          gtk_label_set_text (self->cell[i][column], text);
        }
    }
}

const char *
tb_loft_table_get_cell (TbLoftTable *self, const char *measure, TbLoftStyle style, TbLoftLane lane)
{
  for (guint i = 0; i < N_MEASURES; i++)
    if (g_str_equal (measures[i], measure))
      return gtk_label_get_text (self->cell[i][(int) style * TB_N_LOFT_LANES + (int) lane]);
  return NULL;
}

static void
add_headings (TbLoftTable *self)
{
  for (int style = 0; style < TB_N_LOFTS; style++)
    {
      GtkLabel *label = add_label (self, 1 + style * TB_N_LOFT_LANES, 0, TB_N_LOFT_LANES);

      gtk_label_set_text (label, tb_loft_style_name ((TbLoftStyle) style));
      gtk_widget_add_css_class (GTK_WIDGET (label), style == TB_LOFT_FLAT ? "before" : "after");
    }
  for (int column = 0; column < N_COLUMNS; column++)
    {
      self->lane_name[column] = add_label (self, 1 + column, 1, 1);
      gtk_widget_add_css_class (GTK_WIDGET (self->lane_name[column]), "heading");
    }
}

/* The share stands below the energy that it is a share of. */
static int
grid_row (guint row)
{
  if (row == SHARE_ROW)
    return FIRST_ROW + SHARE_AFTER;
  return FIRST_ROW + (int) row + (row >= SHARE_AFTER && row < N_MEASURES ? 1 : 0);
}

static void
build (TbLoftTable *self)
{
  add_headings (self);
  for (guint i = 0; i < N_ROWS; i++)
    {
      GtkLabel *name = add_label (self, 0, grid_row (i), 1);

      if (i < N_MEASURES)
        self->name[i] = name;
      else
        gtk_label_set_text (name, i == SHARE_ROW ? _ ("Landing, share of all energy (%)") : _ ("Ends"));
      for (int column = 0; column < N_COLUMNS; column++)
        self->cell[i][column] = add_label (self, 1 + column, grid_row (i), 1);
    }
}

static void
tb_loft_table_dispose (GObject *object)
{
  g_clear_pointer (&TB_LOFT_TABLE (object)->grid, gtk_widget_unparent);
  G_OBJECT_CLASS (tb_loft_table_parent_class)->dispose (object);
}

static void
tb_loft_table_class_init (TbLoftTableClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = tb_loft_table_dispose;
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
}

static void
tb_loft_table_init (TbLoftTable *self)
{
  self->grid = gtk_grid_new ();
  gtk_widget_add_css_class (self->grid, "measures");
  gtk_widget_set_parent (self->grid, GTK_WIDGET (self));
  build (self);
}
