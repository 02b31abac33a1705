/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "tb-choice-row.h"

#include <glib/gi18n-lib.h>

#include "tb-accessible.h"
#include "tb-children.h"
#include "tb-word.h"

struct _TbChoiceRow
{
  GtkWidget parent_instance;

  /* Template */
  GtkWidget *label;
  GtkDropDown *drop_down;

  TbSession *session;
  const TbField *field;
  gboolean showing;
};

G_DEFINE_FINAL_TYPE (TbChoiceRow, tb_choice_row, GTK_TYPE_WIDGET)

static void
show_session (TbChoiceRow *self)
{
  self->showing = TRUE;
  gtk_drop_down_set_selected (self->drop_down,
                              (guint) tb_session_get_field (self->session, TB_SIDE_AFTER, self->field));
  self->showing = FALSE;
}

static void
on_selected (TbChoiceRow *self)
{
  guint selected = gtk_drop_down_get_selected (self->drop_down);

  if (self->showing || self->session == NULL || selected == GTK_INVALID_LIST_POSITION)
    return;
  if (!tb_session_set_field (self->session, self->field, selected, NULL))
    show_session (self);
}

GtkWidget *
tb_choice_row_new (TbSession *session, const TbField *field)
{
  TbChoiceRow *self = g_object_new (TB_TYPE_CHOICE_ROW, NULL);
  g_autoptr (GtkStringList) labels = gtk_string_list_new (NULL);

  for (const TbChoice *choice = field->choices; choice->name != NULL; choice++)
    gtk_string_list_append (labels, _ (choice->label));
  self->field = field;
  self->showing = TRUE;
  gtk_drop_down_set_model (self->drop_down, G_LIST_MODEL (labels));
  self->session = g_object_ref (session);
  gtk_label_set_text (GTK_LABEL (self->label), _ (field->label));
  gtk_widget_set_tooltip_text (GTK_WIDGET (self), _ (field->help));
  tb_accessible_set_drop_down_name (self->drop_down, _ (field->label));
  tb_word_attach (GTK_WIDGET (self), self->label, field->name);
  show_session (self);
  g_signal_connect_object (session, "changed", G_CALLBACK (show_session), self, G_CONNECT_SWAPPED);
  return GTK_WIDGET (self);
}

static void
tb_choice_row_dispose (GObject *object)
{
  TbChoiceRow *self = TB_CHOICE_ROW (object);

  g_clear_object (&self->session);
  tb_unparent_children (GTK_WIDGET (self));
  G_OBJECT_CLASS (tb_choice_row_parent_class)->dispose (object);
}

static void
tb_choice_row_class_init (TbChoiceRowClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = tb_choice_row_dispose;
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/io/github/tenboard/Tenboard/ui/tb-choice-row.ui");
  gtk_widget_class_bind_template_child (widget_class, TbChoiceRow, label);
  gtk_widget_class_bind_template_child (widget_class, TbChoiceRow, drop_down);
  gtk_widget_class_bind_template_callback (widget_class, on_selected);
}

static void
tb_choice_row_init (TbChoiceRow *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}
