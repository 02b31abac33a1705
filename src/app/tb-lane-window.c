/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "tb-lane-window.h"

#include <glib/gi18n-lib.h>

#include "tb-lines-page.h"
#include "tb-pattern-editor.h"
#include "tb-room-page.h"
#include "tb-style.h"
#include "tb-wear-page.h"

struct _TbLaneWindow
{
  GtkWindow parent_instance;

  /* Template */
  GtkStack *stack;
  TbLanePage *room;
  TbLanePage *lines;
  TbLanePage *pattern;
  TbLanePage *wear;

  TbSession *session;
};

G_DEFINE_FINAL_TYPE (TbLaneWindow, tb_lane_window, GTK_TYPE_WINDOW)

static void
undo (GtkWidget *widget, const char *action, GVariant *parameter)
{
  tb_session_undo (TB_LANE_WINDOW (widget)->session);
}

static void
redo (GtkWidget *widget, const char *action, GVariant *parameter)
{
  tb_session_redo (TB_LANE_WINDOW (widget)->session);
}

static void
show_title (TbLaneWindow *self)
{
  const TbSetup *setup = tb_session_get_setup (self->session, TB_SIDE_AFTER);
  const char *name = tb_document_display_name (setup->pattern->name);
  /* Translators: %s is a lane pattern. */
  g_autofree char *title
      = name[0] != '\0' ? g_strdup_printf (_ ("Lane play: %s"), name) : g_strdup (_ ("Lane play"));

  gtk_window_set_title (GTK_WINDOW (self), title);
  gtk_widget_action_set_enabled (GTK_WIDGET (self), "lane.undo", tb_session_can_undo (self->session));
  gtk_widget_action_set_enabled (GTK_WIDGET (self), "lane.redo", tb_session_can_redo (self->session));
}

void
tb_lane_window_show_page (TbLaneWindow *self, const char *page)
{
  gtk_stack_set_visible_child_name (self->stack, page);
}

GtkWidget *
tb_lane_window_get_page (TbLaneWindow *self, const char *page)
{
  return gtk_stack_get_child_by_name (self->stack, page);
}

TbLaneWindow *
tb_lane_window_new (GtkWindow *parent, TbSession *session)
{
  TbLaneWindow *self
      = g_object_new (TB_TYPE_LANE_WINDOW, "transient-for", parent, "destroy-with-parent", TRUE, NULL);
  TbLanePage *const pages[] = { self->room, self->lines, self->pattern, self->wear };

  self->session = g_object_ref (session);
  for (guint i = 0; i < G_N_ELEMENTS (pages); i++)
    tb_lane_page_set_session (pages[i], session);
  g_signal_connect_object (session, "changed", G_CALLBACK (show_title), self, G_CONNECT_SWAPPED);
  show_title (self);
  if (parent != NULL)
    tb_style_set_text_size (GTK_WIDGET (self), tb_style_get_text_size (GTK_WIDGET (parent)));
  return self;
}

static void
tb_lane_window_dispose (GObject *object)
{
  /* What is being typed is taken, while there is somebody to take it. */
  gtk_window_set_focus (GTK_WINDOW (object), NULL);
  g_clear_object (&TB_LANE_WINDOW (object)->session);
  G_OBJECT_CLASS (tb_lane_window_parent_class)->dispose (object);
}

static void
add_shortcuts (GtkWidgetClass *widget_class)
{
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_z, GDK_CONTROL_MASK, "lane.undo", NULL);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_z, GDK_CONTROL_MASK | GDK_SHIFT_MASK,
                                       "lane.redo", NULL);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_Escape, 0, "window.close", NULL);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_w, GDK_CONTROL_MASK, "window.close", NULL);
}

static void
tb_lane_window_class_init (TbLaneWindowClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = tb_lane_window_dispose;
  g_type_ensure (TB_TYPE_ROOM_PAGE);
  g_type_ensure (TB_TYPE_LINES_PAGE);
  g_type_ensure (TB_TYPE_PATTERN_EDITOR);
  g_type_ensure (TB_TYPE_WEAR_PAGE);
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/io/github/tenboard/Tenboard/ui/tb-lane-window.ui");
  gtk_widget_class_bind_template_child (widget_class, TbLaneWindow, stack);
  gtk_widget_class_bind_template_child (widget_class, TbLaneWindow, room);
  gtk_widget_class_bind_template_child (widget_class, TbLaneWindow, lines);
  gtk_widget_class_bind_template_child (widget_class, TbLaneWindow, pattern);
  gtk_widget_class_bind_template_child (widget_class, TbLaneWindow, wear);
  gtk_widget_class_install_action (widget_class, "lane.undo", NULL, undo);
  gtk_widget_class_install_action (widget_class, "lane.redo", NULL, redo);
  add_shortcuts (widget_class);
}

static void
tb_lane_window_init (TbLaneWindow *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}
