/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "tb-caution-button.h"

#include <glib/gi18n-lib.h>

#include "tb-accessible.h"

struct _TbCautionButton
{
  GtkWidget parent_instance;

  /* Template */
  GtkWidget *button, *popover;
  GtkLabel *line;
  GtkLabel *text;
};

G_DEFINE_FINAL_TYPE (TbCautionButton, tb_caution_button, GTK_TYPE_WIDGET)

void
tb_caution_button_set_caution (TbCautionButton *self, const TbCaution *caution)
{
  g_autofree char *name = NULL;

  gtk_widget_set_visible (GTK_WIDGET (self), caution != NULL);
  if (caution == NULL)
    return;
  gtk_label_set_text (self->line, _ (caution->line));
  gtk_label_set_text (self->text, _ (caution->text));
  /* Translators: %s is a caution in a few words, such as "Stay behind the foul line". */
  name = g_strdup_printf (_ ("Caution: %s"), _ (caution->line));
  tb_accessible_set_name (self->button, name);
  tb_accessible_set_name (self->popover, name);
}

static void
tb_caution_button_dispose (GObject *object)
{
  g_clear_pointer (&TB_CAUTION_BUTTON (object)->button, gtk_widget_unparent);
  G_OBJECT_CLASS (tb_caution_button_parent_class)->dispose (object);
}

static void
tb_caution_button_class_init (TbCautionButtonClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = tb_caution_button_dispose;
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/io/github/tenboard/Tenboard/ui/tb-caution-button.ui");
  gtk_widget_class_bind_template_child (widget_class, TbCautionButton, button);
  gtk_widget_class_bind_template_child (widget_class, TbCautionButton, popover);
  gtk_widget_class_bind_template_child (widget_class, TbCautionButton, line);
  gtk_widget_class_bind_template_child (widget_class, TbCautionButton, text);
}

static void
tb_caution_button_init (TbCautionButton *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}
