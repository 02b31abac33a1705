/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "tb-verdict.h"

#include "tb-children.h"
#include "tb-describe.h"

struct _TbVerdict
{
  GtkWidget parent_instance;

  /* Template */
  GtkLabel *before;
  GtkLabel *after;

  TbSession *session;
};

G_DEFINE_FINAL_TYPE (TbVerdict, tb_verdict, GTK_TYPE_WIDGET)

static void
show_session (TbVerdict *self)
{
  TbUnits units = tb_session_get_units (self->session);
  g_autofree char *before = tb_describe_end (tb_session_get_run (self->session, TB_SIDE_BEFORE), units);
  g_autofree char *after = tb_describe_end (tb_session_get_run (self->session, TB_SIDE_AFTER), units);

  gtk_label_set_text (self->before, before);
  gtk_label_set_text (self->after, after);
}

void
tb_verdict_set_session (TbVerdict *self, TbSession *session)
{
  g_return_if_fail (self->session == NULL);

  self->session = g_object_ref (session);
  g_signal_connect_object (session, "changed", G_CALLBACK (show_session), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (session, "notify::units", G_CALLBACK (show_session), self, G_CONNECT_SWAPPED);
  show_session (self);
}

const char *
tb_verdict_get_text (TbVerdict *self, TbSide side)
{
  return gtk_label_get_text (side == TB_SIDE_BEFORE ? self->before : self->after);
}

static void
tb_verdict_dispose (GObject *object)
{
  TbVerdict *self = TB_VERDICT (object);

  tb_unparent_children (GTK_WIDGET (self));
  g_clear_object (&self->session);
  G_OBJECT_CLASS (tb_verdict_parent_class)->dispose (object);
}

static void
tb_verdict_class_init (TbVerdictClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = tb_verdict_dispose;
  gtk_widget_class_set_template_from_resource (widget_class, "/io/github/tenboard/Tenboard/ui/tb-verdict.ui");
  gtk_widget_class_bind_template_child (widget_class, TbVerdict, before);
  gtk_widget_class_bind_template_child (widget_class, TbVerdict, after);
}

static void
tb_verdict_init (TbVerdict *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}
