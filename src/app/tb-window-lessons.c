/* The lessons' window, opened from the study's; and a lesson's throws, taken from there as a study.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "tb-window-private.h"

#include "tb-lesson-window.h"

static void
on_lessons_gone (gpointer window, GObject *lessons)
{
  TB_WINDOW (window)->lessons = NULL;
}

static void
open_next_study (TbWindow *self)
{
  g_autoptr (TbStudy) study = g_steal_pointer (&self->next_study);

  if (study == NULL)
    return;
  tb_session_open (self->session, study, NULL);
  gtk_window_present (GTK_WINDOW (self));
}

static void
on_take (TbWindow *self, TbStudy *study)
{
  g_clear_pointer (&self->next_study, tb_study_unref);
  self->next_study = tb_study_ref (study);
  tb_window_ask_then (self, open_next_study);
}

static void
present_lessons (TbWindow *self)
{
  if (self->lessons == NULL)
    {
      self->lessons = GTK_WINDOW (tb_lesson_window_new (GTK_WINDOW (self), self->session));
      g_object_weak_ref (G_OBJECT (self->lessons), on_lessons_gone, self);
      g_signal_connect_object (self->lessons, "take", G_CALLBACK (on_take), self, G_CONNECT_SWAPPED);
    }
  gtk_window_present (self->lessons);
}

static void
open_lessons (GtkWidget *widget, const char *name, GVariant *parameter)
{
  present_lessons (TB_WINDOW (widget));
}

gboolean
tb_window_load_lesson (TbWindow *self, GFile *file)
{
  tb_window_tell (self, NULL);
  present_lessons (self);
  return tb_lesson_window_load (TB_LESSON_WINDOW (self->lessons), file);
}

void
tb_window_class_install_lesson_actions (GtkWidgetClass *widget_class)
{
  gtk_widget_class_install_action (widget_class, "win.lessons", NULL, open_lessons);
}

void
tb_window_close_lessons (TbWindow *self)
{
  GtkWindow *lessons = self->lessons;

  g_clear_pointer (&self->next_study, tb_study_unref);
  if (lessons == NULL)
    return;
  g_object_weak_unref (G_OBJECT (lessons), on_lessons_gone, self);
  self->lessons = NULL;
  gtk_window_destroy (lessons);
}
