/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "tb-option-curve.h"

#include <glib/gi18n-lib.h>

#include "tb-accessible.h"
#include "tb-curve-view.h"
#include "tb-quantity.h"
#include "tb-style.h"
#include "tb-unit-pair.h"

struct _TbOptionCurve
{
  GtkWidget parent_instance;

  TbNextOption *option;
  TbWish wish;
  gboolean metric;
};

G_DEFINE_FINAL_TYPE (TbOptionCurve, tb_option_curve, GTK_TYPE_WIDGET)

/* The wished measure, the angle, and where the ball rolls. */
#define N_PANELS 3
/* Both ends, and the turning point. */
#define N_TICKS 3

/* What a panel shows of a point. */
typedef double (*PointValue) (const TbNextPoint *point);

static double
wished_of (const TbNextPoint *point)
{
  return point->wished;
}

static double
board_of (const TbNextPoint *point)
{
  return point->board;
}

static double
angle_of (const TbNextPoint *point)
{
  return point->angle_deg;
}

static double
breakpoint_of (const TbNextPoint *point)
{
  return point->breakpoint_ft;
}

typedef struct Panel
{
  const char *title, *unit;
  PointValue value;
  int digits;
  double least_span; /* in the unit that is shown */
  double factor;     /* shown = value × factor */
} Panel;

/* The wished measure first; of the others those that are not it. */
static void
choose_panels (const TbOptionCurve *self, Panel panels[N_PANELS])
{
  const char *length = self->metric ? _ (" m") : _ (" ft");
  double metres = self->metric ? TB_METRES_PER_FOOT : 1;
  const Panel board = { _ ("Board at the pins"), "", board_of, 1, 1, 1 },
              angle = { _ ("Angle"), _ ("°"), angle_of, 1, 1, 1 };
  const Panel turn = { _ ("Turns back"), length, breakpoint_of, 1, 2 * metres, metres };
  const Panel roll = { _ ("Rolls from"), length, wished_of, 1, 2 * metres, metres };
  const Panel room = { _ ("Room, boards"), "", wished_of, 1, 0.5, 1 };

  switch (self->wish.kind)
    {
    case TB_WISH_ANGLE:
      memcpy (panels, ((Panel[]){ angle, turn, board }), N_PANELS * sizeof *panels);
      break;
    case TB_WISH_TURN:
      memcpy (panels, ((Panel[]){ turn, angle, board }), N_PANELS * sizeof *panels);
      break;
    case TB_WISH_ROLL:
      memcpy (panels, ((Panel[]){ roll, angle, turn }), N_PANELS * sizeof *panels);
      break;
    case TB_WISH_FORGIVING:
      memcpy (panels, ((Panel[]){ room, angle, turn }), N_PANELS * sizeof *panels);
      break;
    default:
      memcpy (panels, ((Panel[]){ board, angle, turn }), N_PANELS * sizeof *panels);
    }
}

/* Where the option puts the knob: one of what it changes, or the curve's own number in its setup. */
static double
present_place (const TbNextOption *option)
{
  const TbField *field = option->curve_field;

  return tb_field_get (field, tb_shot_group_const (&option->setup->shot, field->group));
}

static char *
tick_label (const TbOptionCurve *self, double value)
{
  const TbField *field = self->option->curve_field;
  TbToldUnit told = tb_told_unit (field->unit, field->digits, self->metric);

  return tb_number_format (value * told.factor, told.digits);
}

static void
draw (TbOptionCurve *self, cairo_t *cr, double width, double height)
{
  const TbNextOption *option = self->option;
  guint count = option->n_points;
  double x[TB_NEXT_POINTS], y[N_PANELS][TB_NEXT_POINTS];
  double low = option->point[0].at, high = option->point[count - 1].at, present = present_place (option);
  g_autofree char *low_label = tick_label (self, low), *high_label = tick_label (self, high);
  g_autofree char *turn_label = tick_label (self, option->turns ? option->turns_at : low);
  /* A turning point is told on the scale as well as in words. */
  TbCurveTick ticks[N_TICKS] = { { low, low_label }, { high, high_label }, { option->turns_at, turn_label } };
  TbCurvePanel drawn[N_PANELS];
  Panel panels[N_PANELS];
  TbCurveScene scene = { .theme = tb_style_theme_for (GTK_WIDGET (self)),
                         .panels = drawn,
                         .n_panels = N_PANELS,
                         .ticks = ticks,
                         .n_ticks = option->turns ? N_TICKS : N_TICKS - 1,
                         .low = low,
                         .high = high,
                         .present = present,
                         .x_title = _ (option->curve_field->label) };

  choose_panels (self, panels);
  for (guint i = 0; i < count; i++)
    x[i] = option->point[i].at;
  for (int k = 0; k < N_PANELS; k++)
    {
      for (guint i = 0; i < count; i++)
        y[k][i] = panels[k].factor * panels[k].value (&option->point[i]);
      drawn[k] = (TbCurvePanel){ .title = panels[k].title,
                                 .unit = panels[k].unit,
                                 .digits = panels[k].digits,
                                 .least_span = panels[k].least_span,
                                 .solid = { .x = x, .y = y[k], .count = count, .present = NAN } };
    }
  tb_curve_view_draw (cr, width, height, &scene);
}

void
tb_option_curve_set_option (TbOptionCurve *self, TbNext *next, TbNextOption *option, gboolean metric)
{
  g_clear_pointer (&self->option, tb_next_option_unref);
  self->option = tb_next_option_ref (option);
  self->wish = next->wish;
  self->metric = metric;
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

static void
tb_option_curve_snapshot (GtkWidget *widget, GtkSnapshot *snapshot)
{
  TbOptionCurve *self = TB_OPTION_CURVE (widget);
  int width = gtk_widget_get_width (widget), height = gtk_widget_get_height (widget);
  cairo_t *cr;

  if (self->option == NULL || width < 1 || height < 1)
    return;
  cr = gtk_snapshot_append_cairo (snapshot, &GRAPHENE_RECT_INIT (0, 0, (float) width, (float) height));
  draw (self, cr, width, height);
  cairo_destroy (cr);
}

static void
tb_option_curve_finalize (GObject *object)
{
  g_clear_pointer (&TB_OPTION_CURVE (object)->option, tb_next_option_unref);
  G_OBJECT_CLASS (tb_option_curve_parent_class)->finalize (object);
}

static void
tb_option_curve_class_init (TbOptionCurveClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->finalize = tb_option_curve_finalize;
  widget_class->snapshot = tb_option_curve_snapshot;
  gtk_widget_class_set_css_name (widget_class, "picture");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_IMG);
}

static void
tb_option_curve_init (TbOptionCurve *self)
{
  tb_accessible_set_name (GTK_WIDGET (self), _ ("Curves against the setting"));
}
