/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "tb-disclosure.h"

#include "tb-accessible.h"
#include "tb-children.h"

struct _TbDisclosure
{
  GtkWidget parent_instance;

  /* Template */
  GtkToggleButton *button;
  GtkImage *arrow;
  GtkLabel *label;
  GtkRevealer *revealer;
};

enum
{
  PROP_0,
  PROP_LABEL,
  PROP_CHILD,
  PROP_EXPANDED,
  N_PROPS
};
static GParamSpec *properties[N_PROPS];

G_DEFINE_FINAL_TYPE (TbDisclosure, tb_disclosure, GTK_TYPE_WIDGET)

static void
on_toggled (TbDisclosure *self)
{
  gboolean expanded = gtk_toggle_button_get_active (self->button);

  gtk_revealer_set_reveal_child (self->revealer, expanded);
  gtk_image_set_from_icon_name (self->arrow, expanded ? "pan-down-symbolic" : "pan-end-symbolic");
  gtk_accessible_update_state (GTK_ACCESSIBLE (self->button), GTK_ACCESSIBLE_STATE_EXPANDED, expanded, -1);
  g_object_notify_by_pspec (G_OBJECT (self), properties[PROP_EXPANDED]);
}

/* What is closed takes neither room nor the focus. */
static void
on_child_revealed (TbDisclosure *self)
{
  gtk_widget_set_visible (GTK_WIDGET (self->revealer),
                          gtk_revealer_get_reveal_child (self->revealer)
                              || gtk_revealer_get_child_revealed (self->revealer));
}

static void
on_reveal_child (TbDisclosure *self)
{
  if (gtk_revealer_get_reveal_child (self->revealer))
    gtk_widget_set_visible (GTK_WIDGET (self->revealer), TRUE);
}

GtkWidget *
tb_disclosure_new (const char *label, const char *name, GtkWidget *child)
{
  TbDisclosure *self = g_object_new (TB_TYPE_DISCLOSURE, "label", label, "child", child, NULL);

  tb_accessible_set_name (GTK_WIDGET (self->button), name);
  return GTK_WIDGET (self);
}

static void
set_label (TbDisclosure *self, const char *label)
{
  gtk_label_set_text (self->label, label != NULL ? label : "");
  tb_accessible_set_name (GTK_WIDGET (self->button), label != NULL ? label : "");
}

static void
tb_disclosure_get_property (GObject *object, guint id, GValue *value, GParamSpec *pspec)
{
  TbDisclosure *self = TB_DISCLOSURE (object);

  if (id == PROP_LABEL)
    g_value_set_string (value, gtk_label_get_text (self->label));
  else if (id == PROP_CHILD)
    g_value_set_object (value, gtk_revealer_get_child (self->revealer));
  else
    g_value_set_boolean (value, gtk_toggle_button_get_active (self->button));
}

static void
tb_disclosure_set_property (GObject *object, guint id, const GValue *value, GParamSpec *pspec)
{
  TbDisclosure *self = TB_DISCLOSURE (object);

  if (id == PROP_LABEL)
    set_label (self, g_value_get_string (value));
  else if (id == PROP_CHILD)
    gtk_revealer_set_child (self->revealer, g_value_get_object (value));
  else
    gtk_toggle_button_set_active (self->button, g_value_get_boolean (value));
}

static void
tb_disclosure_dispose (GObject *object)
{
  TbDisclosure *self = TB_DISCLOSURE (object);

  tb_unparent_children (GTK_WIDGET (self));
  G_OBJECT_CLASS (tb_disclosure_parent_class)->dispose (object);
}

static void
tb_disclosure_class_init (TbDisclosureClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  const GParamFlags both = G_PARAM_READWRITE | G_PARAM_STATIC_STRINGS | G_PARAM_EXPLICIT_NOTIFY;

  object_class->dispose = tb_disclosure_dispose;
  object_class->get_property = tb_disclosure_get_property;
  object_class->set_property = tb_disclosure_set_property;
  properties[PROP_LABEL] = g_param_spec_string ("label", NULL, NULL, NULL, both);
  properties[PROP_CHILD] = g_param_spec_object ("child", NULL, NULL, GTK_TYPE_WIDGET, both);
  properties[PROP_EXPANDED] = g_param_spec_boolean ("expanded", NULL, NULL, FALSE, both);
  g_object_class_install_properties (object_class, N_PROPS, properties);
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/io/github/tenboard/Tenboard/ui/tb-disclosure.ui");
  gtk_widget_class_bind_template_child (widget_class, TbDisclosure, button);
  gtk_widget_class_bind_template_child (widget_class, TbDisclosure, arrow);
  gtk_widget_class_bind_template_child (widget_class, TbDisclosure, label);
  gtk_widget_class_bind_template_child (widget_class, TbDisclosure, revealer);
  gtk_widget_class_bind_template_callback (widget_class, on_toggled);
}

static void
tb_disclosure_init (TbDisclosure *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  gtk_widget_set_visible (GTK_WIDGET (self->revealer), FALSE);
  gtk_accessible_update_state (GTK_ACCESSIBLE (self->button), GTK_ACCESSIBLE_STATE_EXPANDED, FALSE, -1);
  g_signal_connect_object (self->revealer, "notify::reveal-child", G_CALLBACK (on_reveal_child), self,
                           G_CONNECT_SWAPPED);
  g_signal_connect_object (self->revealer, "notify::child-revealed", G_CALLBACK (on_child_revealed), self,
                           G_CONNECT_SWAPPED);
}
