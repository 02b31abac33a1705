/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "tb-folding-label.h"

/* Between picture and words, px. */
#define GAP 6

struct _TbFoldingLabel
{
  GtkWidget parent_instance;

  GtkWidget *icon;
  GtkWidget *label;
  gboolean always_icon;
  gboolean folded;
};

enum
{
  PROP_0,
  PROP_ICON_NAME,
  PROP_LABEL,
  PROP_ALWAYS_ICON,
  PROP_FOLDED,
  N_PROPS
};
static GParamSpec *properties[N_PROPS];

G_DEFINE_FINAL_TYPE (TbFoldingLabel, tb_folding_label, GTK_TYPE_WIDGET)

static int
natural_size (GtkWidget *child, GtkOrientation orientation)
{
  int natural = 0;

  gtk_widget_measure (child, orientation, -1, NULL, &natural, NULL, NULL);
  return natural;
}

static int
icon_width (TbFoldingLabel *self)
{
  return natural_size (self->icon, GTK_ORIENTATION_HORIZONTAL);
}

static int
full_width (TbFoldingLabel *self)
{
  int label = natural_size (self->label, GTK_ORIENTATION_HORIZONTAL);

  return self->always_icon ? icon_width (self) + GAP + label : label;
}

int
tb_folding_label_get_extra (TbFoldingLabel *self)
{
  return MAX (0, full_width (self) - icon_width (self));
}

static void
tb_folding_label_measure (GtkWidget *widget,
                          GtkOrientation orientation,
                          int for_size,
                          int *minimum,
                          int *natural,
                          int *minimum_baseline,
                          int *natural_baseline)
{
  TbFoldingLabel *self = TB_FOLDING_LABEL (widget);

  if (orientation == GTK_ORIENTATION_VERTICAL)
    {
      *minimum = *natural
          = MAX (natural_size (self->icon, orientation), natural_size (self->label, orientation));
      return;
    }
  *minimum = *natural = icon_width (self);
  if (!self->folded)
    *natural += tb_folding_label_get_extra (self);
}

static void
place (GtkWidget *widget, GtkWidget *child, GtkAllocation allocation)
{
  gtk_widget_set_child_visible (child, allocation.width > 0);
  if (allocation.width <= 0)
    return;
  if (gtk_widget_get_direction (widget) == GTK_TEXT_DIR_RTL)
    allocation.x = gtk_widget_get_width (widget) - allocation.x - allocation.width;
  gtk_widget_size_allocate (child, &allocation, -1);
}

static void
tb_folding_label_size_allocate (GtkWidget *widget, int width, int height, int baseline)
{
  TbFoldingLabel *self = TB_FOLDING_LABEL (widget);
  gboolean words = !self->folded && width >= full_width (self);
  gboolean icon = !words || self->always_icon;
  int icon_size = icon ? icon_width (self) : 0;
  int words_width = words ? natural_size (self->label, GTK_ORIENTATION_HORIZONTAL) : 0;
  int used = icon_size + words_width + (icon && words ? GAP : 0);
  int start = MAX (0, (width - used) / 2);

  place (widget, self->icon, (GtkAllocation){ start, 0, icon_size, height });
  place (widget, self->label, (GtkAllocation){ start + used - words_width, 0, words_width, height });
}

gboolean
tb_folding_label_get_folded (TbFoldingLabel *self)
{
  return self->folded;
}

void
tb_folding_label_set_folded (TbFoldingLabel *self, gboolean folded)
{
  if (self->folded == folded)
    return;
  self->folded = folded;
  gtk_widget_queue_resize (GTK_WIDGET (self));
  g_object_notify_by_pspec (G_OBJECT (self), properties[PROP_FOLDED]);
}

static void
tb_folding_label_get_property (GObject *object, guint id, GValue *value, GParamSpec *pspec)
{
  TbFoldingLabel *self = TB_FOLDING_LABEL (object);

  if (id == PROP_ICON_NAME)
    g_value_set_string (value, gtk_image_get_icon_name (GTK_IMAGE (self->icon)));
  else if (id == PROP_LABEL)
    g_value_set_string (value, gtk_label_get_label (GTK_LABEL (self->label)));
  else
    g_value_set_boolean (value, id == PROP_FOLDED ? self->folded : self->always_icon);
}

static void
tb_folding_label_set_property (GObject *object, guint id, const GValue *value, GParamSpec *pspec)
{
  TbFoldingLabel *self = TB_FOLDING_LABEL (object);

  if (id == PROP_ICON_NAME)
    gtk_image_set_from_icon_name (GTK_IMAGE (self->icon), g_value_get_string (value));
  else if (id == PROP_LABEL)
    gtk_label_set_label (GTK_LABEL (self->label), g_value_get_string (value));
  else if (id == PROP_FOLDED)
    tb_folding_label_set_folded (self, g_value_get_boolean (value));
  else
    self->always_icon = g_value_get_boolean (value);
}

static void
tb_folding_label_dispose (GObject *object)
{
  TbFoldingLabel *self = TB_FOLDING_LABEL (object);

  g_clear_pointer (&self->icon, gtk_widget_unparent);
  g_clear_pointer (&self->label, gtk_widget_unparent);
  G_OBJECT_CLASS (tb_folding_label_parent_class)->dispose (object);
}

static void
tb_folding_label_class_init (TbFoldingLabelClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  const GParamFlags both = G_PARAM_READWRITE | G_PARAM_STATIC_STRINGS | G_PARAM_EXPLICIT_NOTIFY;

  object_class->dispose = tb_folding_label_dispose;
  object_class->get_property = tb_folding_label_get_property;
  object_class->set_property = tb_folding_label_set_property;
  widget_class->measure = tb_folding_label_measure;
  widget_class->size_allocate = tb_folding_label_size_allocate;
  properties[PROP_ICON_NAME] = g_param_spec_string ("icon-name", NULL, NULL, NULL, both);
  properties[PROP_LABEL] = g_param_spec_string ("label", NULL, NULL, NULL, both);
  properties[PROP_ALWAYS_ICON] = g_param_spec_boolean ("always-icon", NULL, NULL, FALSE, both);
  properties[PROP_FOLDED] = g_param_spec_boolean ("folded", NULL, NULL, FALSE, both);
  g_object_class_install_properties (object_class, N_PROPS, properties);
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_PRESENTATION);
}

static void
tb_folding_label_init (TbFoldingLabel *self)
{
  self->icon = g_object_new (GTK_TYPE_IMAGE, "accessible-role", GTK_ACCESSIBLE_ROLE_PRESENTATION, NULL);
  gtk_widget_set_parent (self->icon, GTK_WIDGET (self));
  self->label = g_object_new (GTK_TYPE_LABEL, "use-underline", TRUE, NULL);
  gtk_widget_set_parent (self->label, GTK_WIDGET (self));
}
