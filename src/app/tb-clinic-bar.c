/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "tb-clinic-bar.h"

#include "tb-children.h"

/* How long the controls stay after the last sign of life, ms. */
#define BAR_STAYS 4000

struct _TbClinicBar
{
  GtkWidget parent_instance;

  /* Template */
  GtkRevealer *revealer;
  GtkLabel *words;
  GtkWidget *throw_controls;

  guint timer; /* 0 while they are hidden */
};

enum
{
  ACTION,
  HIDDEN,
  N_SIGNALS
};

static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (TbClinicBar, tb_clinic_bar, GTK_TYPE_WIDGET)

static const struct
{
  const char *name;
  TbClinicAction action;
} actions[] = {
  { "clinic.back", TB_CLINIC_BACK },
  { "clinic.onward", TB_CLINIC_ONWARD },
  { "clinic.replay", TB_CLINIC_REPLAY },
  { "clinic.freeze", TB_CLINIC_FREEZE },
  { "clinic.frame-back", TB_CLINIC_FRAME_BACK },
  { "clinic.frame-on", TB_CLINIC_FRAME_ON },
  { "clinic.slower", TB_CLINIC_DOWN },
  { "clinic.faster", TB_CLINIC_UP },
  { "clinic.overlay", TB_CLINIC_OVERLAY },
  { "clinic.blank", TB_CLINIC_BLANK },
  { "clinic.presenter", TB_CLINIC_PRESENTER },
  { "clinic.fullscreen", TB_CLINIC_FULLSCREEN },
};

static void
act (GtkWidget *widget, const char *name, GVariant *parameter)
{
  for (gsize i = 0; i < G_N_ELEMENTS (actions); i++)
    if (g_str_equal (name, actions[i].name))
      g_signal_emit (widget, signals[ACTION], 0, (guint) actions[i].action);
}

void
tb_clinic_bar_hide (TbClinicBar *self)
{
  g_clear_handle_id (&self->timer, g_source_remove);
  gtk_revealer_set_reveal_child (self->revealer, FALSE);
  g_signal_emit (self, signals[HIDDEN], 0);
}

static gboolean
on_timer (gpointer data)
{
  TbClinicBar *self = data;

  self->timer = 0;
  tb_clinic_bar_hide (self);
  return G_SOURCE_REMOVE;
}

void
tb_clinic_bar_show (TbClinicBar *self, const char *words)
{
  g_clear_handle_id (&self->timer, g_source_remove);
  self->timer = g_timeout_add (BAR_STAYS, on_timer, self);
  gtk_label_set_text (self->words, words);
  gtk_widget_set_visible (GTK_WIDGET (self->words), words[0] != '\0');
  gtk_revealer_set_reveal_child (self->revealer, TRUE);
}

gboolean
tb_clinic_bar_is_shown (TbClinicBar *self)
{
  return gtk_revealer_get_reveal_child (self->revealer);
}

void
tb_clinic_bar_set_throwing (TbClinicBar *self, gboolean throwing)
{
  gtk_widget_set_visible (self->throw_controls, throwing);
}

static void
tb_clinic_bar_dispose (GObject *object)
{
  TbClinicBar *self = TB_CLINIC_BAR (object);

  g_clear_handle_id (&self->timer, g_source_remove);
  tb_unparent_children (GTK_WIDGET (self));
  G_OBJECT_CLASS (tb_clinic_bar_parent_class)->dispose (object);
}

static void
tb_clinic_bar_class_init (TbClinicBarClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = tb_clinic_bar_dispose;
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/io/github/tenboard/Tenboard/ui/tb-clinic-bar.ui");
  gtk_widget_class_bind_template_child (widget_class, TbClinicBar, revealer);
  gtk_widget_class_bind_template_child (widget_class, TbClinicBar, words);
  gtk_widget_class_bind_template_child (widget_class, TbClinicBar, throw_controls);
  for (gsize i = 0; i < G_N_ELEMENTS (actions); i++)
    gtk_widget_class_install_action (widget_class, actions[i].name, NULL, act);
  signals[ACTION] = g_signal_new ("action", TB_TYPE_CLINIC_BAR, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                  G_TYPE_NONE, 1, G_TYPE_UINT);
  signals[HIDDEN]
      = g_signal_new ("hidden", TB_TYPE_CLINIC_BAR, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
}

static void
tb_clinic_bar_init (TbClinicBar *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}
