/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "tb-line-grip.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "tb-quantity.h"

struct _TbLineGrip
{
  GtkWidget parent_instance;

  const TbField *field;
  TbSession *session; /* borrowed: the picture's, which outlives it */
  char *words;
};

G_DEFINE_FINAL_TYPE (TbLineGrip, tb_line_grip, GTK_TYPE_WIDGET)

/* Boards are taken to a tenth: finer than anyone lays a ball down. */
#define TENTHS 10.0

static const char *const field_names[TB_N_LINE_HANDLES] = { "laydown_board", "aim_board" };

static double
board_of (TbLineGrip *self)
{
  return tb_session_get_field (self->session, TB_SIDE_AFTER, self->field);
}

static void
show_session (TbLineGrip *self)
{
  TbQuantity quantity = tb_quantity_for_field (self->field, tb_session_get_units (self->session));
  g_autofree char *board = tb_quantity_format (&quantity, board_of (self));

  g_free (self->words);
  /* Translators: a field and its value: "Laid down at: 24.0 board". */
  self->words = g_strdup_printf (_ ("%s: %s"), _ (self->field->label), board);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self),
                                  GTK_ACCESSIBLE_PROPERTY_LABEL, _ (self->field->label),
                                  GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, board,
                                  GTK_ACCESSIBLE_PROPERTY_VALUE_TEXT, board,
                                  GTK_ACCESSIBLE_PROPERTY_VALUE_MIN, self->field->min,
                                  GTK_ACCESSIBLE_PROPERTY_VALUE_MAX, self->field->max,
                                  GTK_ACCESSIBLE_PROPERTY_VALUE_NOW, board_of (self), -1);
}

void
tb_line_grip_set_session (TbLineGrip *self, TbSession *session)
{
  self->session = session;
  g_signal_connect_object (session, "changed", G_CALLBACK (show_session), self, G_CONNECT_SWAPPED);
  show_session (self);
}

void
tb_line_grip_put (TbLineGrip *self, double board)
{
  double held = CLAMP (round (board * TENTHS) / TENTHS, self->field->min, self->field->max);

  tb_session_set_field (self->session, self->field, held, NULL);
}

const char *
tb_line_grip_get_words (TbLineGrip *self)
{
  return self->words;
}

/* Boards that a step to the lane's left is: they count from the bowler's own side. */
static double
leftwards (TbLineGrip *self)
{
  return tb_session_get_setup (self->session, TB_SIDE_AFTER)->shot.delivery.hand == TB_HAND_LEFT ? -1 : 1;
}

/* Arrows go where they point, whichever way the lane lies; Page Up and Down count boards. */
static gboolean
on_key (TbLineGrip *self, guint keyval)
{
  double change;

  switch (keyval)
    {
    case GDK_KEY_Left:
    case GDK_KEY_Up:
      change = leftwards (self) * self->field->step;
      break;
    case GDK_KEY_Right:
    case GDK_KEY_Down:
      change = -leftwards (self) * self->field->step;
      break;
    case GDK_KEY_Page_Up:
      change = self->field->page;
      break;
    case GDK_KEY_Page_Down:
      change = -self->field->page;
      break;
    default:
      return GDK_EVENT_PROPAGATE;
    }
  tb_line_grip_put (self, board_of (self) + change);
  return GDK_EVENT_STOP;
}

static void
tb_line_grip_finalize (GObject *object)
{
  g_free (TB_LINE_GRIP (object)->words);
  G_OBJECT_CLASS (tb_line_grip_parent_class)->finalize (object);
}

static void
tb_line_grip_class_init (TbLineGripClass *klass)
{
  G_OBJECT_CLASS (klass)->finalize = tb_line_grip_finalize;
  gtk_widget_class_set_accessible_role (GTK_WIDGET_CLASS (klass), GTK_ACCESSIBLE_ROLE_SLIDER);
}

static void
tb_line_grip_init (TbLineGrip *self)
{
  GtkEventController *keys = gtk_event_controller_key_new ();

  g_signal_connect_swapped (keys, "key-pressed", G_CALLBACK (on_key), self);
  gtk_widget_add_controller (GTK_WIDGET (self), keys);
  gtk_widget_set_focusable (GTK_WIDGET (self), TRUE);
  gtk_widget_set_can_target (GTK_WIDGET (self), FALSE);
}

GtkWidget *
tb_line_grip_new (TbLineHandle which)
{
  TbLineGrip *self = g_object_new (TB_TYPE_LINE_GRIP, NULL);

  self->field = tb_field_find (TB_GROUP_DELIVERY, field_names[which]);
  return GTK_WIDGET (self);
}
