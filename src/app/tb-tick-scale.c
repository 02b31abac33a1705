/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "tb-tick-scale.h"

#include <math.h>

struct _TbTickScale
{
  GtkScale parent_instance;
  double tick; /* NAN for none */
};

enum
{
  GRABBED,
  LET_GO,
  N_SIGNALS
};
static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (TbTickScale, tb_tick_scale, GTK_TYPE_SCALE)

#define TICK_WIDTH 2.0f
/* Height of the tick over the height of a line of text. */
#define TICK_SHARE 1.0

void
tb_tick_scale_set_tick (TbTickScale *self, double tick)
{
  if (self->tick == tick)
    return;
  self->tick = tick;
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

double
tb_tick_scale_get_tick (TbTickScale *self)
{
  return self->tick;
}

/* Middle of the slider's knob if it stood at the tick, px. */
static double
tick_x (TbTickScale *self)
{
  GtkAdjustment *adjustment = gtk_range_get_adjustment (GTK_RANGE (self));
  double lower = gtk_adjustment_get_lower (adjustment);
  double span = gtk_adjustment_get_upper (adjustment) - lower;
  double share = span > 0 ? CLAMP ((self->tick - lower) / span, 0.0, 1.0) : 0.0;
  GdkRectangle trough;

  gtk_range_get_range_rect (GTK_RANGE (self), &trough);
  if (gtk_widget_get_direction (GTK_WIDGET (self)) == GTK_TEXT_DIR_RTL)
    share = 1.0 - share;
  return trough.x + share * trough.width;
}

static double
line_height (GtkWidget *widget)
{
  PangoContext *context = gtk_widget_get_pango_context (widget);
  PangoFontMetrics *metrics = pango_context_get_metrics (context, NULL, NULL);
  double height = (pango_font_metrics_get_ascent (metrics) + pango_font_metrics_get_descent (metrics))
                  / (double)PANGO_SCALE;

  pango_font_metrics_unref (metrics);
  return height;
}

static void
tb_tick_scale_snapshot (GtkWidget *widget, GtkSnapshot *snapshot)
{
  TbTickScale *self = TB_TICK_SCALE (widget);

  /* Under the knob, so that it shows only where the two differ. */
  if (!isnan (self->tick))
    {
      float tall = (float)(line_height (widget) * TICK_SHARE);
      float x = roundf ((float)tick_x (self) - TICK_WIDTH / 2);
      float y = ((float)gtk_widget_get_height (widget) - tall) / 2;
      GdkRGBA color;

      gtk_style_context_get_color (gtk_widget_get_style_context (widget), &color);
      gtk_snapshot_append_color (snapshot, &color, &GRAPHENE_RECT_INIT (x, y, TICK_WIDTH, tall));
    }
  GTK_WIDGET_CLASS (tb_tick_scale_parent_class)->snapshot (widget, snapshot);
}

static gboolean
on_event (TbTickScale *self, GdkEvent *event)
{
  switch ((int)gdk_event_get_event_type (event))
    {
    case GDK_BUTTON_PRESS:
    case GDK_TOUCH_BEGIN:
      g_signal_emit (self, signals[GRABBED], 0);
      break;
    case GDK_BUTTON_RELEASE:
    case GDK_TOUCH_END:
    case GDK_TOUCH_CANCEL:
      g_signal_emit (self, signals[LET_GO], 0);
      break;
    default:
      break;
    }
  return GDK_EVENT_PROPAGATE;
}

/* The wheel belongs to the column. */
static void
leave_wheel_alone (GtkWidget *widget)
{
  g_autoptr (GListModel) controllers = gtk_widget_observe_controllers (widget);

  for (guint i = 0; i < g_list_model_get_n_items (controllers); i++)
    {
      g_autoptr (GtkEventController) controller = g_list_model_get_item (controllers, i);

      if (GTK_IS_EVENT_CONTROLLER_SCROLL (controller))
        gtk_event_controller_set_propagation_phase (controller, GTK_PHASE_NONE);
    }
}

static void
tb_tick_scale_class_init (TbTickScaleClass *klass)
{
  GTK_WIDGET_CLASS (klass)->snapshot = tb_tick_scale_snapshot;
  signals[GRABBED]
      = g_signal_new ("grabbed", TB_TYPE_TICK_SCALE, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
  signals[LET_GO]
      = g_signal_new ("let-go", TB_TYPE_TICK_SCALE, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
}

static void
tb_tick_scale_init (TbTickScale *self)
{
  GtkEventController *events = gtk_event_controller_legacy_new ();

  self->tick = NAN;
  gtk_event_controller_set_propagation_phase (events, GTK_PHASE_CAPTURE);
  g_signal_connect_swapped (events, "event", G_CALLBACK (on_event), self);
  gtk_widget_add_controller (GTK_WIDGET (self), events);
  leave_wheel_alone (GTK_WIDGET (self));
  gtk_scale_set_draw_value (GTK_SCALE (self), FALSE);
}
