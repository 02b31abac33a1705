/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "tb-position-row.h"

#include <glib/gi18n-lib.h>

#include "tb-accessible.h"
#include "tb-children.h"
#include "tb-hand-positions.h"

struct _TbPositionRow
{
  GtkWidget parent_instance;

  /* Template */
  GtkWidget *label;
  GtkDropDown *drop_down;

  TbSession *session;
  gboolean showing;
};

G_DEFINE_FINAL_TYPE (TbPositionRow, tb_position_row, GTK_TYPE_WIDGET)

/* First in the list: an axis that no position gives. */
#define OWN_AXIS 0

static void
show_session (TbPositionRow *self)
{
  const TbSetup *setup = tb_session_get_setup (self->session, TB_SIDE_AFTER);

  self->showing = TRUE;
  gtk_drop_down_set_selected (self->drop_down, (guint)(tb_hand_position_of (&setup->shot.delivery) + 1));
  self->showing = FALSE;
}

static void
on_selected (TbPositionRow *self)
{
  guint selected = gtk_drop_down_get_selected (self->drop_down);
  const TbSetup *setup;
  g_autoptr (TbSetup) other = NULL;
  TbShot shot;

  if (self->showing || self->session == NULL || selected == OWN_AXIS || selected == GTK_INVALID_LIST_POSITION)
    return;
  setup = tb_session_get_setup (self->session, TB_SIDE_AFTER);
  shot = setup->shot;
  tb_hand_position_apply (&tb_hand_positions[selected - 1], &shot.delivery);
  other = tb_setup_with_shot (setup, &shot);
  tb_session_set_after (self->session, other);
}

GtkWidget *
tb_position_row_new (TbSession *session)
{
  TbPositionRow *self = g_object_new (TB_TYPE_POSITION_ROW, NULL);
  g_autoptr (GtkStringList) labels = gtk_string_list_new (NULL);

  gtk_string_list_append (labels, _ ("as set below"));
  for (const TbHandPosition *position = tb_hand_positions; position->label != NULL; position++)
    gtk_string_list_append (labels, _ (position->label));
  self->showing = TRUE;
  gtk_drop_down_set_model (self->drop_down, G_LIST_MODEL (labels));
  tb_accessible_set_drop_down_name (self->drop_down, _ ("Hand position"));
  self->session = g_object_ref (session);
  show_session (self);
  g_signal_connect_object (session, "changed", G_CALLBACK (show_session), self, G_CONNECT_SWAPPED);
  return GTK_WIDGET (self);
}

static void
tb_position_row_dispose (GObject *object)
{
  TbPositionRow *self = TB_POSITION_ROW (object);

  self->showing = TRUE;
  tb_unparent_children (GTK_WIDGET (self));
  g_clear_object (&self->session);
  G_OBJECT_CLASS (tb_position_row_parent_class)->dispose (object);
}

static void
tb_position_row_class_init (TbPositionRowClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = tb_position_row_dispose;
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/io/github/tenboard/Tenboard/ui/tb-position-row.ui");
  gtk_widget_class_bind_template_child (widget_class, TbPositionRow, label);
  gtk_widget_class_bind_template_child (widget_class, TbPositionRow, drop_down);
  gtk_widget_class_bind_template_callback (widget_class, on_selected);
}

static void
tb_position_row_init (TbPositionRow *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}
