/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "tb-counter-window.h"

#include <glib/gi18n-lib.h>

#include "tb-bag-page.h"
#include "tb-ball-editor.h"
#include "tb-flare-page.h"
#include "tb-layout-page.h"
#include "tb-reading-page.h"
#include "tb-style.h"
#include "tb-surface-page.h"

struct _TbCounterWindow
{
  GtkWindow parent_instance;

  /* Template */
  GtkStack *stack;
  TbBallEditor *ball;
  TbLayoutPage *layout;
  TbSurfacePage *surface;
  TbFlarePage *flare;
  TbBagPage *bag;
  TbReadingPage *reading;

  TbSession *session;
};

G_DEFINE_FINAL_TYPE (TbCounterWindow, tb_counter_window, GTK_TYPE_WINDOW)

static void
undo (GtkWidget *widget, const char *action, GVariant *parameter)
{
  tb_session_undo (TB_COUNTER_WINDOW (widget)->session);
}

static void
redo (GtkWidget *widget, const char *action, GVariant *parameter)
{
  tb_session_redo (TB_COUNTER_WINDOW (widget)->session);
}

static void
show_title (TbCounterWindow *self)
{
  const TbSetup *setup = tb_session_get_setup (self->session, TB_SIDE_AFTER);
  const char *name = setup->ball_name != NULL ? tb_document_display_name (setup->ball_name) : "";
  /* Translators: %s is a ball. */
  g_autofree char *title
      = name[0] != '\0' ? g_strdup_printf (_ ("Ball counter: %s"), name) : g_strdup (_ ("Ball counter"));

  gtk_window_set_title (GTK_WINDOW (self), title);
  gtk_widget_action_set_enabled (GTK_WIDGET (self), "counter.undo", tb_session_can_undo (self->session));
  gtk_widget_action_set_enabled (GTK_WIDGET (self), "counter.redo", tb_session_can_redo (self->session));
}

/* Sizes that are comfortable, px; and how much of the study's window is left to be seen around it. */
#define COMFORTABLE_WIDTH 1280
#define COMFORTABLE_HEIGHT 860
#define LEAST_WIDTH 960
#define LEAST_HEIGHT 540
#define AROUND 60

static void
set_size (TbCounterWindow *self, GtkWindow *parent)
{
  int width = gtk_widget_get_width (GTK_WIDGET (parent)) - AROUND,
      height = gtk_widget_get_height (GTK_WIDGET (parent)) - AROUND;
  int scale = tb_style_get_text_size (GTK_WIDGET (parent));

  gtk_window_set_default_size (GTK_WINDOW (self), CLAMP (width, LEAST_WIDTH, COMFORTABLE_WIDTH * scale / 100),
                               CLAMP (height, LEAST_HEIGHT, COMFORTABLE_HEIGHT * scale / 100));
}

void
tb_counter_window_show_page (TbCounterWindow *self, const char *page)
{
  gtk_stack_set_visible_child_name (self->stack, page);
}

GtkWidget *
tb_counter_window_get_page (TbCounterWindow *self, const char *page)
{
  return gtk_stack_get_child_by_name (self->stack, page);
}

TbCounterWindow *
tb_counter_window_new (GtkWindow *parent, TbSession *session)
{
  TbCounterWindow *self
      = g_object_new (TB_TYPE_COUNTER_WINDOW, "transient-for", parent, "destroy-with-parent", TRUE, NULL);

  self->session = g_object_ref (session);
  tb_ball_editor_set_session (self->ball, session);
  tb_layout_page_set_session (self->layout, session);
  tb_surface_page_set_session (self->surface, session);
  tb_flare_page_set_session (self->flare, session);
  tb_bag_page_set_session (self->bag, session);
  tb_reading_page_set_session (self->reading, session);
  g_signal_connect_object (session, "changed", G_CALLBACK (show_title), self, G_CONNECT_SWAPPED);
  show_title (self);
  if (parent != NULL)
    {
      tb_style_set_text_size (GTK_WIDGET (self), tb_style_get_text_size (GTK_WIDGET (parent)));
      set_size (self, parent);
    }
  return self;
}

static void
tb_counter_window_dispose (GObject *object)
{
  /* What is being typed is taken, while there is somebody to take it. */
  gtk_window_set_focus (GTK_WINDOW (object), NULL);
  g_clear_object (&TB_COUNTER_WINDOW (object)->session);
  G_OBJECT_CLASS (tb_counter_window_parent_class)->dispose (object);
}

static void
add_shortcuts (GtkWidgetClass *widget_class)
{
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_z, GDK_CONTROL_MASK, "counter.undo", NULL);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_z, GDK_CONTROL_MASK | GDK_SHIFT_MASK,
                                       "counter.redo", NULL);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_Escape, 0, "window.close", NULL);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_w, GDK_CONTROL_MASK, "window.close", NULL);
}

static void
tb_counter_window_class_init (TbCounterWindowClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = tb_counter_window_dispose;
  g_type_ensure (TB_TYPE_BALL_EDITOR);
  g_type_ensure (TB_TYPE_LAYOUT_PAGE);
  g_type_ensure (TB_TYPE_SURFACE_PAGE);
  g_type_ensure (TB_TYPE_FLARE_PAGE);
  g_type_ensure (TB_TYPE_BAG_PAGE);
  g_type_ensure (TB_TYPE_READING_PAGE);
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/io/github/tenboard/Tenboard/ui/tb-counter-window.ui");
  gtk_widget_class_bind_template_child (widget_class, TbCounterWindow, stack);
  gtk_widget_class_bind_template_child (widget_class, TbCounterWindow, ball);
  gtk_widget_class_bind_template_child (widget_class, TbCounterWindow, layout);
  gtk_widget_class_bind_template_child (widget_class, TbCounterWindow, surface);
  gtk_widget_class_bind_template_child (widget_class, TbCounterWindow, flare);
  gtk_widget_class_bind_template_child (widget_class, TbCounterWindow, bag);
  gtk_widget_class_bind_template_child (widget_class, TbCounterWindow, reading);
  gtk_widget_class_install_action (widget_class, "counter.undo", NULL, undo);
  gtk_widget_class_install_action (widget_class, "counter.redo", NULL, redo);
  add_shortcuts (widget_class);
}

static void
tb_counter_window_init (TbCounterWindow *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}
