/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "tb-guess-grip.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "tb-quantity.h"

struct _TbGuessGrip
{
  GtkWidget parent_instance;

  TbLessonRunner *runner; /* borrowed: the picture's, which outlives it */
};

G_DEFINE_FINAL_TYPE (TbGuessGrip, tb_guess_grip, GTK_TYPE_WIDGET)

double
tb_guess_grip_get_board (TbGuessGrip *self)
{
  double board = tb_lesson_runner_get_board (self->runner);

  return isnan (board) ? TB_MIDDLE_BOARD : board;
}

static void
show_guess (TbGuessGrip *self)
{
  gboolean asked = tb_lesson_runner_asks_for_marker (self->runner);
  double board = tb_guess_grip_get_board (self);
  g_autofree char *number = tb_number_with_unit (board, 1, N_ ("board"));
  const char *words = isnan (tb_lesson_runner_get_board (self->runner)) ? _ ("no guess yet") : number;

  gtk_widget_set_visible (GTK_WIDGET (self), asked);
  gtk_widget_set_sensitive (GTK_WIDGET (self),
                            asked && tb_lesson_runner_get_stage (self->runner) == TB_LESSON_ASKING);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_VALUE_TEXT, words,
                                  GTK_ACCESSIBLE_PROPERTY_VALUE_MIN, 1.0, GTK_ACCESSIBLE_PROPERTY_VALUE_MAX,
                                  (double) TB_LANE_BOARDS, GTK_ACCESSIBLE_PROPERTY_VALUE_NOW, board, -1);
}

void
tb_guess_grip_set_runner (TbGuessGrip *self, TbLessonRunner *runner)
{
  self->runner = runner;
  g_signal_connect_object (runner, "changed", G_CALLBACK (show_guess), self, G_CONNECT_SWAPPED);
  show_guess (self);
}

/* Boards that a step to the lane's left is: they count from the bowler's own side. */
static double
leftwards (TbGuessGrip *self)
{
  const TbSetup *setup = tb_session_get_setup (tb_lesson_runner_get_session (self->runner), TB_SIDE_AFTER);

  return setup->shot.delivery.hand == TB_HAND_LEFT ? -1 : 1;
}

static gboolean
on_key (TbGuessGrip *self, guint keyval, guint keycode, GdkModifierType state)
{
  double change = 0;

  if ((state & gtk_accelerator_get_default_mod_mask ()) != 0)
    return GDK_EVENT_PROPAGATE;
  switch (keyval)
    {
    case GDK_KEY_Left:
    case GDK_KEY_Up:
      change = leftwards (self) * TB_GUESS_STEP;
      break;
    case GDK_KEY_Right:
    case GDK_KEY_Down:
      change = -leftwards (self) * TB_GUESS_STEP;
      break;
    case GDK_KEY_Page_Up:
      change = TB_GUESS_PAGE;
      break;
    case GDK_KEY_Page_Down:
      change = -TB_GUESS_PAGE;
      break;
    case GDK_KEY_space:
      break;
    default:
      return GDK_EVENT_PROPAGATE;
    }
  tb_lesson_runner_set_board (self->runner, tb_guess_grip_get_board (self) + change);
  return GDK_EVENT_STOP;
}

static void
tb_guess_grip_class_init (TbGuessGripClass *klass)
{
  gtk_widget_class_set_accessible_role (GTK_WIDGET_CLASS (klass), GTK_ACCESSIBLE_ROLE_SLIDER);
}

static void
tb_guess_grip_init (TbGuessGrip *self)
{
  GtkEventController *keys = gtk_event_controller_key_new ();

  g_signal_connect_swapped (keys, "key-pressed", G_CALLBACK (on_key), self);
  gtk_widget_add_controller (GTK_WIDGET (self), keys);
  gtk_widget_set_focusable (GTK_WIDGET (self), TRUE);
  gtk_widget_set_can_target (GTK_WIDGET (self), FALSE);
  gtk_accessible_update_property (
      GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL, _ ("Marker of your guess"),
      GTK_ACCESSIBLE_PROPERTY_DESCRIPTION,
      _ ("Arrow keys move it across the lane; the space bar leaves it where it is."), -1);
}

GtkWidget *
tb_guess_grip_new (void)
{
  return g_object_new (TB_TYPE_GUESS_GRIP, NULL);
}
