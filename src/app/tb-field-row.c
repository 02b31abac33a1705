/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "tb-field-row.h"

#include <glib/gi18n-lib.h>

#include "tb-accessible.h"
#include "tb-caution-button.h"
#include "tb-children.h"
#include "tb-quantity.h"
#include "tb-store-error.h"
#include "tb-tick-scale.h"
#include "tb-word.h"

struct _TbFieldRow
{
  GtkWidget parent_instance;

  /* Template */
  GtkWidget *top;
  GtkLabel *label;
  GtkWidget *reset;
  GtkEntry *entry;
  TbTickScale *scale;
  GtkLabel *problem;
  TbCautionButton *caution;
  GMenuModel *menu;

  /* Owned */
  TbSession *session;
  GtkWidget *popover;

  const TbField *field;
  TbQuantity quantity;
  double value;      /* last shown, in the field's unit */
  gboolean showing;  /* the widgets are being told, not telling */
  gboolean typed_in; /* the entry holds something that was not taken yet */
};

/* A value that has been to SI units and back is the same but for rounding. */
#define SAME_VALUE 1e-6

G_DEFINE_FINAL_TYPE (TbFieldRow, tb_field_row, GTK_TYPE_WIDGET)

static void
set_problem (TbFieldRow *self, const char *sentence)
{
  gboolean wrong = sentence != NULL && sentence[0] != '\0';

  gtk_label_set_text (self->problem, wrong ? sentence : "");
  gtk_widget_set_visible (GTK_WIDGET (self->problem), wrong);
  if (wrong)
    gtk_widget_add_css_class (GTK_WIDGET (self->entry), "error");
  else
    gtk_widget_remove_css_class (GTK_WIDGET (self->entry), "error");
  gtk_accessible_update_state (GTK_ACCESSIBLE (self->entry), GTK_ACCESSIBLE_STATE_INVALID,
                               wrong ? GTK_ACCESSIBLE_INVALID_TRUE : GTK_ACCESSIBLE_INVALID_FALSE, -1);
}

static void
show_number (TbFieldRow *self)
{
  g_autofree char *text = tb_quantity_format (&self->quantity, self->value);

  self->showing = TRUE;
  gtk_editable_set_text (GTK_EDITABLE (self->entry), text);
  self->showing = FALSE;
  self->typed_in = FALSE;
  set_problem (self, NULL);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->scale), GTK_ACCESSIBLE_PROPERTY_VALUE_TEXT, text, -1);
}

static void
show_tick (TbFieldRow *self)
{
  double before = tb_session_get_field (self->session, TB_SIDE_BEFORE, self->field);

  tb_tick_scale_set_tick (self->scale, before * self->quantity.factor);
  gtk_widget_action_set_enabled (GTK_WIDGET (self), "row.reset-to-before", before != self->value);
  gtk_widget_action_set_enabled (GTK_WIDGET (self), "row.reset-to-default",
                                 fabs (self->field->standard - self->value) > SAME_VALUE);
}

static void
show_session (TbFieldRow *self)
{
  double value = tb_session_get_field (self->session, TB_SIDE_AFTER, self->field);

  if (value != self->value)
    {
      self->value = value;
      self->showing = TRUE;
      gtk_range_set_value (GTK_RANGE (self->scale), value * self->quantity.factor);
      self->showing = FALSE;
      show_number (self);
    }
  show_tick (self);
}

/* Steps in the unit shown, to the digits shown. */
static double
shown_step (TbFieldRow *self, double step)
{
  double digit = pow (10.0, -self->quantity.digits);

  return MAX (digit, round (step * self->quantity.factor / digit) * digit);
}

static void
show_units (TbFieldRow *self)
{
  const TbField *field = self->field;
  GtkAdjustment *adjustment = gtk_range_get_adjustment (GTK_RANGE (self->scale));
  double factor;

  self->quantity = tb_quantity_for_field (field, tb_session_get_units (self->session));
  factor = self->quantity.factor;
  self->value = tb_session_get_field (self->session, TB_SIDE_AFTER, field);
  self->showing = TRUE;
  gtk_range_set_round_digits (GTK_RANGE (self->scale), self->quantity.digits);
  gtk_adjustment_configure (adjustment, self->value * factor, field->min * factor, field->max * factor,
                            shown_step (self, field->step), shown_step (self, field->page), 0);
  self->showing = FALSE;
  show_number (self);
  show_tick (self);
}

static void
set_value (TbFieldRow *self, double value)
{
  TbProblem problem = { 0 };

  if (!tb_session_set_field (self->session, self->field, value, &problem))
    {
      g_autofree char *sentence = tb_problem_sentence (&problem);

      set_problem (self, sentence);
    }
}

static gboolean
on_change_value (TbFieldRow *self, GtkScrollType scroll, double shown)
{
  GtkAdjustment *adjustment = gtk_range_get_adjustment (GTK_RANGE (self->scale));
  double digit = pow (10.0, self->quantity.digits);
  double held = CLAMP (shown, gtk_adjustment_get_lower (adjustment), gtk_adjustment_get_upper (adjustment));
  double value;

  if (tb_quantity_from_shown (&self->quantity, round (held * digit) / digit, &value))
    set_value (self, value);
  return GDK_EVENT_STOP;
}

/* Assistive technology moves the adjustment itself. */
static void
on_adjusted (TbFieldRow *self, GtkAdjustment *adjustment)
{
  double value;

  if (!self->showing
      && tb_quantity_from_shown (&self->quantity, gtk_adjustment_get_value (adjustment), &value))
    set_value (self, value);
}

static void
on_grabbed (TbFieldRow *self)
{
  tb_session_begin_gesture (self->session);
}

static void
on_let_go (TbFieldRow *self)
{
  tb_session_end_gesture (self->session);
}

static void
take_text (TbFieldRow *self)
{
  g_autofree char *sentence = NULL;
  double value;

  if (!self->typed_in)
    return;
  sentence = tb_quantity_parse (&self->quantity, gtk_editable_get_text (GTK_EDITABLE (self->entry)), &value);
  if (sentence != NULL)
    {
      set_problem (self, sentence);
      return;
    }
  set_value (self, value);
  /* The same number in other words ("17" for "17.0 mph") changes nothing but the text. */
  if (self->typed_in && tb_field_row_get_problem (self)[0] == '\0')
    show_number (self);
}

static void
on_entry_left (TbFieldRow *self)
{
  take_text (self);
  gtk_editable_select_region (GTK_EDITABLE (self->entry), 0, 0);
}

static void
on_entry_activate (TbFieldRow *self)
{
  take_text (self);
  gtk_editable_select_region (GTK_EDITABLE (self->entry), 0, -1);
}

static void
on_entry_changed (TbFieldRow *self)
{
  if (self->showing)
    return;
  self->typed_in = TRUE;
  set_problem (self, NULL);
}

static void
step_by (TbFieldRow *self, double amount)
{
  const TbField *field = self->field;
  double value, shown;

  take_text (self);
  shown = self->value * self->quantity.factor + amount;
  shown = CLAMP (shown, field->min * self->quantity.factor, field->max * self->quantity.factor);
  if (tb_quantity_from_shown (&self->quantity, shown, &value))
    set_value (self, value);
}

static gboolean
on_entry_key (TbFieldRow *self, guint keyval)
{
  GtkAdjustment *adjustment = gtk_range_get_adjustment (GTK_RANGE (self->scale));

  switch (keyval)
    {
    case GDK_KEY_Up:
      step_by (self, gtk_adjustment_get_step_increment (adjustment));
      return GDK_EVENT_STOP;
    case GDK_KEY_Down:
      step_by (self, -gtk_adjustment_get_step_increment (adjustment));
      return GDK_EVENT_STOP;
    case GDK_KEY_Page_Up:
      step_by (self, gtk_adjustment_get_page_increment (adjustment));
      return GDK_EVENT_STOP;
    case GDK_KEY_Page_Down:
      step_by (self, -gtk_adjustment_get_page_increment (adjustment));
      return GDK_EVENT_STOP;
    case GDK_KEY_Escape:
      if (!self->typed_in)
        return GDK_EVENT_PROPAGATE;
      show_number (self);
      return GDK_EVENT_STOP;
    default:
      return GDK_EVENT_PROPAGATE;
    }
}

static void
reset_to_before (GtkWidget *widget, const char *action, GVariant *parameter)
{
  TbFieldRow *self = TB_FIELD_ROW (widget);

  set_value (self, tb_session_get_field (self->session, TB_SIDE_BEFORE, self->field));
}

static void
reset_to_default (GtkWidget *widget, const char *action, GVariant *parameter)
{
  TbFieldRow *self = TB_FIELD_ROW (widget);

  set_value (self, self->field->standard);
}

static void
explain (GtkWidget *widget, const char *action, GVariant *parameter)
{
  TbFieldRow *self = TB_FIELD_ROW (widget);

  tb_word_show (widget, GTK_WIDGET (self->label), self->field->name);
}

static void
open_menu (GtkWidget *widget, const char *action, GVariant *parameter)
{
  TbFieldRow *self = TB_FIELD_ROW (widget);

  if (self->popover == NULL)
    {
      self->popover = gtk_popover_menu_new_from_model (self->menu);
      gtk_widget_set_parent (self->popover, widget);
      tb_accessible_set_name (self->popover, _ (self->field->label));
    }
  gtk_popover_popup (GTK_POPOVER (self->popover));
}

static void
on_label_pressed (TbFieldRow *self, int presses)
{
  if (presses == 2)
    reset_to_default (GTK_WIDGET (self), NULL, NULL);
}

static void
on_secondary_pressed (TbFieldRow *self)
{
  open_menu (GTK_WIDGET (self), NULL, NULL);
}

static void
on_label_held (TbFieldRow *self)
{
  explain (GTK_WIDGET (self), NULL, NULL);
}

static void
add_entry_controllers (TbFieldRow *self)
{
  GtkEventController *keys = gtk_event_controller_key_new ();
  GtkEventController *focus = gtk_event_controller_focus_new ();

  gtk_event_controller_set_propagation_phase (keys, GTK_PHASE_CAPTURE);
  g_signal_connect_swapped (keys, "key-pressed", G_CALLBACK (on_entry_key), self);
  gtk_widget_add_controller (GTK_WIDGET (self->entry), keys);
  g_signal_connect_swapped (focus, "leave", G_CALLBACK (on_entry_left), self);
  gtk_widget_add_controller (GTK_WIDGET (self->entry), focus);
}

static void
add_pointer_controllers (TbFieldRow *self)
{
  GtkGesture *press = gtk_gesture_click_new ();
  GtkGesture *secondary = gtk_gesture_click_new ();
  GtkGesture *held = gtk_gesture_long_press_new ();

  g_signal_connect_swapped (press, "pressed", G_CALLBACK (on_label_pressed), self);
  gtk_widget_add_controller (GTK_WIDGET (self->label), GTK_EVENT_CONTROLLER (press));
  gtk_gesture_single_set_button (GTK_GESTURE_SINGLE (secondary), GDK_BUTTON_SECONDARY);
  g_signal_connect_swapped (secondary, "pressed", G_CALLBACK (on_secondary_pressed), self);
  gtk_widget_add_controller (self->top, GTK_EVENT_CONTROLLER (secondary));
  g_signal_connect_swapped (held, "pressed", G_CALLBACK (on_label_held), self);
  gtk_widget_add_controller (GTK_WIDGET (self->label), GTK_EVENT_CONTROLLER (held));
}

static void
name_parts (TbFieldRow *self)
{
  const char *name = _ (self->field->label);
  g_autofree char *typed = NULL, *tip = NULL, *back = NULL;

  gtk_label_set_text (self->label, name);
  tip = g_strdup_printf ("%s\n%s", _ (self->field->help),
                         _ ("Right-click for what it means, double-click for the default."));
  gtk_widget_set_tooltip_text (GTK_WIDGET (self->label), tip);
  gtk_widget_set_tooltip_text (GTK_WIDGET (self->scale), _ (self->field->help));
  tb_accessible_set_name (GTK_WIDGET (self->scale), name);
  /* Translators: %s is the name of an input such as "Speed": the box where its number is typed. */
  typed = g_strdup_printf (_ ("%s, typed"), name);
  tb_accessible_set_name (GTK_WIDGET (self->entry), typed);
  /* Translators: %s is the name of an input such as "Speed". */
  back = g_strdup_printf (_ ("%s, back to what “before” has"), name);
  tb_accessible_set_name (self->reset, back);
}

GtkWidget *
tb_field_row_new (TbSession *session, const TbField *field)
{
  TbFieldRow *self = g_object_new (TB_TYPE_FIELD_ROW, NULL);

  self->session = g_object_ref (session);
  self->field = field;
  name_parts (self);
  tb_word_set (GTK_WIDGET (self), GTK_WIDGET (self->label), field->name);
  tb_caution_button_set_caution (self->caution, tb_caution_for_field (field->name));
  show_units (self);
  g_signal_connect_object (session, "changed", G_CALLBACK (show_session), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (session, "notify::units", G_CALLBACK (show_units), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (gtk_range_get_adjustment (GTK_RANGE (self->scale)), "value-changed",
                           G_CALLBACK (on_adjusted), self, G_CONNECT_SWAPPED);
  return GTK_WIDGET (self);
}

GtkWidget *
tb_field_row_get_scale (TbFieldRow *self)
{
  return GTK_WIDGET (self->scale);
}

GtkWidget *
tb_field_row_get_entry (TbFieldRow *self)
{
  return GTK_WIDGET (self->entry);
}

const char *
tb_field_row_get_problem (TbFieldRow *self)
{
  return gtk_label_get_text (self->problem);
}

static void
tb_field_row_dispose (GObject *object)
{
  TbFieldRow *self = TB_FIELD_ROW (object);

  g_clear_pointer (&self->popover, gtk_widget_unparent);
  tb_unparent_children (GTK_WIDGET (self));
  g_clear_object (&self->session);
  G_OBJECT_CLASS (tb_field_row_parent_class)->dispose (object);
}

static void
bind_template (GtkWidgetClass *widget_class)
{
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/io/github/tenboard/Tenboard/ui/tb-field-row.ui");
  gtk_widget_class_bind_template_child (widget_class, TbFieldRow, top);
  gtk_widget_class_bind_template_child (widget_class, TbFieldRow, label);
  gtk_widget_class_bind_template_child (widget_class, TbFieldRow, reset);
  gtk_widget_class_bind_template_child (widget_class, TbFieldRow, entry);
  gtk_widget_class_bind_template_child (widget_class, TbFieldRow, scale);
  gtk_widget_class_bind_template_child (widget_class, TbFieldRow, problem);
  gtk_widget_class_bind_template_child (widget_class, TbFieldRow, caution);
  gtk_widget_class_bind_template_child (widget_class, TbFieldRow, menu);
  gtk_widget_class_bind_template_callback (widget_class, on_entry_activate);
  gtk_widget_class_bind_template_callback (widget_class, on_entry_changed);
  gtk_widget_class_bind_template_callback (widget_class, on_change_value);
  gtk_widget_class_bind_template_callback (widget_class, on_grabbed);
  gtk_widget_class_bind_template_callback (widget_class, on_let_go);
}

static void
tb_field_row_class_init (TbFieldRowClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = tb_field_row_dispose;
  g_type_ensure (TB_TYPE_TICK_SCALE);
  g_type_ensure (TB_TYPE_CAUTION_BUTTON);
  bind_template (widget_class);
  gtk_widget_class_install_action (widget_class, "row.reset-to-before", NULL, reset_to_before);
  gtk_widget_class_install_action (widget_class, "row.reset-to-default", NULL, reset_to_default);
  gtk_widget_class_install_action (widget_class, "row.explain", NULL, explain);
  gtk_widget_class_install_action (widget_class, "row.menu", NULL, open_menu);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_Menu, 0, "row.menu", NULL);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_F10, GDK_SHIFT_MASK, "row.menu", NULL);
}

static void
tb_field_row_init (TbFieldRow *self)
{
  self->value = NAN;
  gtk_widget_init_template (GTK_WIDGET (self));
  add_entry_controllers (self);
  add_pointer_controllers (self);
}
