/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "tb-option-row.h"

#include <glib/gi18n-lib.h>

#include "tb-accessible.h"
#include "tb-children.h"
#include "tb-disclosure.h"
#include "tb-option-curve.h"

struct _TbOptionRow
{
  GtkWidget parent_instance;

  /* Template */
  GtkLabel *title;
  GtkLabel *effort;
  GtkButton *button;
  GtkLabel *change;
  GtkLabel *reach;
  GtkLabel *effects;
  GtkWidget *more;
  TbOptionCurve *curve;
  GtkLabel *curve_text;
  GtkLabel *time;
  GtkLabel *rules;
  GtkLabel *rules_note;
  GtkLabel *caution;

  TbNextOption *option;
};

enum
{
  CHOSEN,
  N_SIGNALS
};
static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (TbOptionRow, tb_option_row, GTK_TYPE_WIDGET)

/* A label without a text takes no room. Takes the text. */
static void
set_text (GtkLabel *label, char *text)
{
  gtk_label_set_text (label, text != NULL ? text : "");
  gtk_widget_set_visible (GTK_WIDGET (label), text != NULL && text[0] != '\0');
  g_free (text);
}

static char *
translated (const char *text)
{
  return text != NULL ? g_strdup (_ (text)) : NULL;
}

static char *
rules_text (const TbKnobCost *cost)
{
  g_autoptr (GString) text = g_string_new (NULL);

  for (int occasion = 0; occasion < TB_N_OCCASIONS; occasion++)
    {
      if (text->len > 0)
        g_string_append (text, _ ("; "));
      /* Translators: an occasion and what the rules say: "In competition: not allowed" */
      g_string_append_printf (text, _ ("%s: %s"), _ (tb_occasion_label (occasion)),
                              _ (tb_rule_label (cost->rule[occasion])));
    }
  return g_strdup (text->str);
}

static void
show_cost (TbOptionRow *self)
{
  const TbKnob *knob = self->option->knob;
  const char *word = _ (tb_effort_word (self->option->effort));

  gtk_label_set_text (self->effort, word);
  gtk_widget_set_tooltip_text (GTK_WIDGET (self->effort), _ (tb_effort_help ()));
  set_text (self->time, translated (knob->cost->time));
  set_text (self->rules, rules_text (knob->cost));
  set_text (self->rules_note, translated (knob->cost->rules));
  set_text (self->caution, translated (knob->caution));
}

static void
show_option (TbOptionRow *self, TbNext *next, gboolean metric)
{
  TbNextOption *option = self->option;
  g_autofree char *name = NULL;
  gboolean curve = option->n_points > 0;

  gtk_label_set_text (self->title, option->title);
  set_text (self->change, tb_next_change_text (option, metric));
  set_text (self->reach, tb_next_reach_text (next, option, metric));
  set_text (self->effects, tb_next_effect_text (next, option, metric));
  set_text (self->curve_text, tb_next_curve_text (next, option, metric));
  gtk_widget_set_visible (GTK_WIDGET (self->curve), curve);
  if (curve)
    tb_option_curve_set_option (self->curve, next, option, metric);
  show_cost (self);
  /* Translators: %s is what is tried, such as "Speed". */
  name = g_strdup_printf (_ ("Put in “after”: %s"), option->title);
  tb_accessible_set_name (GTK_WIDGET (self->button), name);
}

static void
on_clicked (TbOptionRow *self)
{
  g_signal_emit (self, signals[CHOSEN], 0);
}

TbNextOption *
tb_option_row_get_option (TbOptionRow *self)
{
  return self->option;
}

GtkWidget *
tb_option_row_new (TbNext *next, TbNextOption *option, gboolean metric)
{
  TbOptionRow *self = g_object_new (TB_TYPE_OPTION_ROW, NULL);

  self->option = tb_next_option_ref (option);
  show_option (self, next, metric);
  return GTK_WIDGET (self);
}

static void
tb_option_row_dispose (GObject *object)
{
  TbOptionRow *self = TB_OPTION_ROW (object);

  tb_unparent_children (GTK_WIDGET (self));
  g_clear_pointer (&self->option, tb_next_option_unref);
  G_OBJECT_CLASS (tb_option_row_parent_class)->dispose (object);
}

static void
bind_template (GtkWidgetClass *widget_class)
{
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/io/github/tenboard/Tenboard/ui/tb-option-row.ui");
  gtk_widget_class_bind_template_child (widget_class, TbOptionRow, title);
  gtk_widget_class_bind_template_child (widget_class, TbOptionRow, effort);
  gtk_widget_class_bind_template_child (widget_class, TbOptionRow, button);
  gtk_widget_class_bind_template_child (widget_class, TbOptionRow, change);
  gtk_widget_class_bind_template_child (widget_class, TbOptionRow, reach);
  gtk_widget_class_bind_template_child (widget_class, TbOptionRow, effects);
  gtk_widget_class_bind_template_child (widget_class, TbOptionRow, more);
  gtk_widget_class_bind_template_child (widget_class, TbOptionRow, curve);
  gtk_widget_class_bind_template_child (widget_class, TbOptionRow, curve_text);
  gtk_widget_class_bind_template_child (widget_class, TbOptionRow, time);
  gtk_widget_class_bind_template_child (widget_class, TbOptionRow, rules);
  gtk_widget_class_bind_template_child (widget_class, TbOptionRow, rules_note);
  gtk_widget_class_bind_template_child (widget_class, TbOptionRow, caution);
  gtk_widget_class_bind_template_callback (widget_class, on_clicked);
}

static void
tb_option_row_class_init (TbOptionRowClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = tb_option_row_dispose;
  g_type_ensure (TB_TYPE_DISCLOSURE);
  g_type_ensure (TB_TYPE_OPTION_CURVE);
  bind_template (GTK_WIDGET_CLASS (klass));
  signals[CHOSEN]
      = g_signal_new ("chosen", TB_TYPE_OPTION_ROW, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
}

static void
tb_option_row_init (TbOptionRow *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}
