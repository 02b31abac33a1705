/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "tb-lane-panel.h"

#include <glib/gi18n-lib.h>

#include "tb-children.h"
#include "tb-describe.h"
#include "tb-force-graph.h"

struct _TbLanePanel
{
  GtkWidget parent_instance;

  /* Template */
  TbLanePicture *picture;
  TbForceGraph *graph;
  GtkToggleButton *graph_button;
  GtkLabel *reading;

  TbSession *session;
};

G_DEFINE_FINAL_TYPE (TbLanePanel, tb_lane_panel, GTK_TYPE_WIDGET)

static void
show_reading (TbLanePanel *self)
{
  TbUnits units = tb_session_get_units (self->session);
  TbRun *after = tb_session_get_run (self->session, TB_SIDE_AFTER);
  g_autofree char *text = NULL;
  double x, y;
  gboolean pointed = tb_lane_picture_get_pointed (self->picture, &x, &y);
  const char *line = tb_lane_picture_get_line_words (self->picture);

  /* A handle that only has the focus gives way to what the pointer reads. */
  if (line != NULL && (!pointed || tb_lane_picture_is_on_handle (self->picture)))
    text = g_strdup (line);
  else if (pointed)
    text = tb_describe_place (after, x, y, units);
  else
    text = tb_describe_moment (after, tb_session_get_time (self->session), units);
  gtk_label_set_text (self->reading, text);
}

/* The graph stands under the lane, foot for foot, where the lane lies on its side. */
static gboolean
ends_of_lane (gpointer data, double *foul_line, double *head_pin)
{
  return tb_lane_picture_get_ends (TB_LANE_PANEL (data)->picture, foul_line, head_pin);
}

void
tb_lane_panel_set_graph_shown (TbLanePanel *self, gboolean shown)
{
  gtk_toggle_button_set_active (self->graph_button, shown);
}

gboolean
tb_lane_panel_get_graph_shown (TbLanePanel *self)
{
  return gtk_toggle_button_get_active (self->graph_button);
}

void
tb_lane_panel_set_session (TbLanePanel *self, TbSession *session)
{
  g_return_if_fail (self->session == NULL);

  self->session = g_object_ref (session);
  tb_picture_set_session (TB_PICTURE (self->picture), session);
  tb_picture_set_session (TB_PICTURE (self->graph), session);
  g_signal_connect_object (session, "changed", G_CALLBACK (show_reading), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (session, "notify::units", G_CALLBACK (show_reading), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (session, "notify::time", G_CALLBACK (show_reading), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (self->picture, "pointed", G_CALLBACK (show_reading), self, G_CONNECT_SWAPPED);
  show_reading (self);
}

void
tb_lane_panel_set_projection (TbLanePanel *self, TbLaneProjection projection)
{
  tb_lane_picture_set_projection (self->picture, projection);
  tb_picture_invalidate (TB_PICTURE (self->graph));
}

TbLanePicture *
tb_lane_panel_get_picture (TbLanePanel *self)
{
  return self->picture;
}

const char *
tb_lane_panel_get_reading (TbLanePanel *self)
{
  return gtk_label_get_text (self->reading);
}

static void
tb_lane_panel_dispose (GObject *object)
{
  TbLanePanel *self = TB_LANE_PANEL (object);

  tb_unparent_children (GTK_WIDGET (self));
  g_clear_object (&self->session);
  G_OBJECT_CLASS (tb_lane_panel_parent_class)->dispose (object);
}

static void
tb_lane_panel_class_init (TbLanePanelClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = tb_lane_panel_dispose;
  g_type_ensure (TB_TYPE_LANE_PICTURE);
  g_type_ensure (TB_TYPE_FORCE_GRAPH);
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/io/github/tenboard/Tenboard/ui/tb-lane-panel.ui");
  gtk_widget_class_bind_template_child (widget_class, TbLanePanel, picture);
  gtk_widget_class_bind_template_child (widget_class, TbLanePanel, graph);
  gtk_widget_class_bind_template_child (widget_class, TbLanePanel, graph_button);
  gtk_widget_class_bind_template_child (widget_class, TbLanePanel, reading);
}

static void
tb_lane_panel_init (TbLanePanel *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  tb_force_graph_set_ends (self->graph, ends_of_lane, self);
}
