/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "tb-lesson-window.h"

#include <glib/gi18n-lib.h>

#include "tb-accessible.h"
#include "tb-fill.h"
#include "tb-lesson-end.h"
#include "tb-lesson-list.h"
#include "tb-progress-page.h"
#include "tb-style.h"

struct _TbLessonWindow
{
  GtkWindow parent_instance;

  /* Template */
  GtkWidget *list_button;
  GtkInfoBar *message_bar;
  GtkLabel *message;
  GtkStack *stack;
  TbLessonList *list;
  TbLessonPage *step;
  TbLessonEnd *end;
  TbProgressPage *progress;

  TbLessonRunner *runner;
  TbLearner *learner;
  GtkFileChooserNative *chooser; /* open at the moment; else NULL */
};

enum
{
  TAKE,
  N_SIGNALS
};
static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (TbLessonWindow, tb_lesson_window, GTK_TYPE_WINDOW)

/* Sizes that are comfortable, px; and how much of the study's window is left to be seen around it. */
#define COMFORTABLE_WIDTH 1400
#define COMFORTABLE_HEIGHT 900
#define LEAST_WIDTH 960
#define LEAST_HEIGHT 540
#define AROUND 40

static void
tell (TbLessonWindow *self, const char *sentence)
{
  gtk_label_set_text (self->message, sentence != NULL ? sentence : "");
  gtk_info_bar_set_revealed (self->message_bar, sentence != NULL);
}

static void
on_message_closed (TbLessonWindow *self)
{
  tell (self, NULL);
}

static void
show_title (TbLessonWindow *self, const char *page)
{
  TbLesson *lesson = tb_lesson_runner_get_lesson (self->runner);
  g_autofree char *title = NULL;

  if (lesson != NULL && (g_str_equal (page, "step") || g_str_equal (page, "end")))
    /* Translators: %s is the name of a lesson. */
    title = tb_fill_with (_ ("Lesson: %s"), tb_lesson_display (lesson->name), NULL);
  gtk_window_set_title (GTK_WINDOW (self), title != NULL ? title : _ ("Lessons"));
}

static void
show_page (TbLessonWindow *self, const char *page)
{
  gboolean on_list = g_str_equal (page, "list");

  gtk_stack_set_visible_child_name (self->stack, page);
  gtk_widget_set_visible (self->list_button, !on_list);
  show_title (self, page);
  if (g_str_equal (page, "end"))
    gtk_widget_grab_focus (GTK_WIDGET (self->end));
  else if (on_list)
    gtk_widget_child_focus (GTK_WIDGET (self->list), GTK_DIR_TAB_FORWARD);
}

static void
on_runner_changed (TbLessonWindow *self)
{
  const char *page = gtk_stack_get_visible_child_name (self->stack);

  if (!g_str_equal (page, "step") && !g_str_equal (page, "end"))
    return;
  if (tb_lesson_runner_get_stage (self->runner) == TB_LESSON_OVER && !g_str_equal (page, "end"))
    show_page (self, "end");
}

static void
on_judged (TbLessonWindow *self)
{
  tb_learner_keep (self->learner, self->runner);
}

static void
on_learner_changed (TbLessonWindow *self)
{
  tell (self, tb_learner_get_problem (self->learner));
}

void
tb_lesson_window_begin (TbLessonWindow *self, TbLesson *lesson)
{
  show_page (self, "step");
  tb_lesson_runner_begin (self->runner, lesson);
  show_title (self, "step");
}

static void
on_chosen (TbLessonWindow *self, TbLesson *lesson)
{
  tb_lesson_window_begin (self, lesson);
}

/* A lesson from anywhere. */

gboolean
tb_lesson_window_load (TbLessonWindow *self, GFile *file)
{
  g_autofree char *path = g_file_get_path (file), *name = g_file_get_parse_name (file);
  g_autofree char *sentence = NULL;
  g_autoptr (GError) error = NULL;
  g_autoptr (TbLesson) lesson = path != NULL ? tb_lesson_load (path, &error) : NULL;

  if (lesson != NULL)
    {
      tell (self, NULL);
      tb_lesson_window_begin (self, lesson);
      return TRUE;
    }
  if (error == NULL)
    sentence = g_strdup_printf (_ ("“%s” is not a file on this computer; copy it here first."), name);
  tell (self, error != NULL ? error->message : sentence);
  return FALSE;
}

static void
on_open_response (TbLessonWindow *self, int response)
{
  g_autoptr (GFile) file = NULL;

  if (response == GTK_RESPONSE_ACCEPT)
    file = gtk_file_chooser_get_file (GTK_FILE_CHOOSER (self->chooser));
  g_clear_object (&self->chooser);
  if (file != NULL)
    tb_lesson_window_load (self, file);
}

static void
open_file (GtkWidget *widget, const char *name, GVariant *parameter)
{
  TbLessonWindow *self = TB_LESSON_WINDOW (widget);
  g_autoptr (GtkFileFilter) lessons = gtk_file_filter_new ();

  g_clear_object (&self->chooser);
  self->chooser = gtk_file_chooser_native_new (_ ("Open a lesson"), GTK_WINDOW (self),
                                               GTK_FILE_CHOOSER_ACTION_OPEN, _ ("_Open"), NULL);
  gtk_file_filter_set_name (lessons, _ ("Lessons"));
  gtk_file_filter_add_pattern (lessons, "*.json");
  gtk_file_chooser_add_filter (GTK_FILE_CHOOSER (self->chooser), lessons);
  gtk_native_dialog_set_modal (GTK_NATIVE_DIALOG (self->chooser), TRUE);
  g_signal_connect_object (self->chooser, "response", G_CALLBACK (on_open_response), self, G_CONNECT_SWAPPED);
  gtk_native_dialog_show (GTK_NATIVE_DIALOG (self->chooser));
}

static void
show_list (GtkWidget *widget, const char *name, GVariant *parameter)
{
  TbLessonWindow *self = TB_LESSON_WINDOW (widget);

  tb_lesson_list_reload (self->list);
  show_page (self, "list");
}

static void
show_progress (GtkWidget *widget, const char *name, GVariant *parameter)
{
  show_page (TB_LESSON_WINDOW (widget), "progress");
}

static void
again (GtkWidget *widget, const char *name, GVariant *parameter)
{
  TbLessonWindow *self = TB_LESSON_WINDOW (widget);

  if (tb_lesson_runner_get_lesson (self->runner) != NULL)
    tb_lesson_window_begin (self, tb_lesson_runner_get_lesson (self->runner));
}

static void
take (GtkWidget *widget, const char *name, GVariant *parameter)
{
  TbLessonWindow *self = TB_LESSON_WINDOW (widget);
  TbStudy *study = tb_lesson_runner_get_study (self->runner, g_variant_get_uint32 (parameter));

  if (study != NULL)
    g_signal_emit (self, signals[TAKE], 0, study);
}

/* From a page to the list, from the list out of the window. */
static gboolean
leave (GtkWidget *widget, GVariant *parameter, gpointer user_data)
{
  TbLessonWindow *self = TB_LESSON_WINDOW (widget);

  if (g_str_equal (gtk_stack_get_visible_child_name (self->stack), "list"))
    gtk_window_close (GTK_WINDOW (self));
  else
    show_list (widget, NULL, NULL);
  return TRUE;
}

TbLessonRunner *
tb_lesson_window_get_runner (TbLessonWindow *self)
{
  return self->runner;
}

TbLearner *
tb_lesson_window_get_learner (TbLessonWindow *self)
{
  return self->learner;
}

GtkWidget *
tb_lesson_window_get_page (TbLessonWindow *self, const char *page)
{
  return gtk_stack_get_child_by_name (self->stack, page);
}

const char *
tb_lesson_window_get_page_name (TbLessonWindow *self)
{
  return gtk_stack_get_visible_child_name (self->stack);
}

static void
set_size (TbLessonWindow *self, GtkWindow *parent)
{
  int width = gtk_widget_get_width (GTK_WIDGET (parent)) - AROUND;
  int height = gtk_widget_get_height (GTK_WIDGET (parent)) - AROUND;
  int scale = tb_style_get_text_size (GTK_WIDGET (parent));

  tb_style_set_text_size (GTK_WIDGET (self), scale);
  gtk_window_set_default_size (GTK_WINDOW (self), CLAMP (width, LEAST_WIDTH, COMFORTABLE_WIDTH * scale / 100),
                               CLAMP (height, LEAST_HEIGHT, COMFORTABLE_HEIGHT * scale / 100));
}

static void
take_from_session (TbLessonWindow *self, TbSession *session)
{
  const char *bowler = tb_session_get_setup (session, TB_SIDE_AFTER)->bowler_id;

  self->runner = tb_lesson_runner_new (tb_session_get_library (session));
  g_object_bind_property (session, "units", tb_lesson_runner_get_session (self->runner), "units",
                          G_BINDING_SYNC_CREATE);
  g_object_bind_property (session, "rate", tb_lesson_runner_get_session (self->runner), "rate",
                          G_BINDING_SYNC_CREATE);
  if (bowler != NULL)
    tb_learner_set_bowler (self->learner, bowler);
}

TbLessonWindow *
tb_lesson_window_new (GtkWindow *parent, TbSession *session)
{
  TbLessonWindow *self
      = g_object_new (TB_TYPE_LESSON_WINDOW, "transient-for", parent, "destroy-with-parent", TRUE, NULL);

  take_from_session (self, session);
  tb_lesson_list_set_learner (self->list, self->learner, tb_session_get_library (session));
  tb_lesson_page_set_runner (self->step, self->runner);
  tb_lesson_end_set_runner (self->end, self->runner);
  tb_progress_page_set_learner (self->progress, self->learner, tb_session_get_library (session));
  g_signal_connect_object (self->runner, "changed", G_CALLBACK (on_runner_changed), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (self->runner, "judged", G_CALLBACK (on_judged), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (self->learner, "changed", G_CALLBACK (on_learner_changed), self,
                           G_CONNECT_SWAPPED);
  g_signal_connect_object (self->list, "chosen", G_CALLBACK (on_chosen), self, G_CONNECT_SWAPPED);
  on_learner_changed (self);
  if (parent != NULL)
    set_size (self, parent);
  show_page (self, "list");
  return self;
}

static void
tb_lesson_window_dispose (GObject *object)
{
  TbLessonWindow *self = TB_LESSON_WINDOW (object);

  /* What is being typed is taken, while there is somebody to take it. */
  gtk_window_set_focus (GTK_WINDOW (object), NULL);
  g_clear_object (&self->chooser);
  g_clear_object (&self->runner);
  g_clear_object (&self->learner);
  G_OBJECT_CLASS (tb_lesson_window_parent_class)->dispose (object);
}

static void
install_actions (GtkWidgetClass *widget_class)
{
  gtk_widget_class_install_action (widget_class, "lessons.list", NULL, show_list);
  gtk_widget_class_install_action (widget_class, "lessons.progress", NULL, show_progress);
  gtk_widget_class_install_action (widget_class, "lessons.again", NULL, again);
  gtk_widget_class_install_action (widget_class, "lessons.open", NULL, open_file);
  gtk_widget_class_install_action (widget_class, "lessons.take", "u", take);
  gtk_widget_class_add_binding (widget_class, GDK_KEY_Escape, 0, leave, NULL);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_w, GDK_CONTROL_MASK, "window.close", NULL);
}

static void
tb_lesson_window_class_init (TbLessonWindowClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = tb_lesson_window_dispose;
  g_type_ensure (TB_TYPE_LESSON_LIST);
  g_type_ensure (TB_TYPE_LESSON_PAGE);
  g_type_ensure (TB_TYPE_LESSON_END);
  g_type_ensure (TB_TYPE_PROGRESS_PAGE);
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/io/github/tenboard/Tenboard/ui/tb-lesson-window.ui");
  gtk_widget_class_bind_template_child (widget_class, TbLessonWindow, list_button);
  gtk_widget_class_bind_template_child (widget_class, TbLessonWindow, message_bar);
  gtk_widget_class_bind_template_child (widget_class, TbLessonWindow, message);
  gtk_widget_class_bind_template_child (widget_class, TbLessonWindow, stack);
  gtk_widget_class_bind_template_child (widget_class, TbLessonWindow, list);
  gtk_widget_class_bind_template_child (widget_class, TbLessonWindow, step);
  gtk_widget_class_bind_template_child (widget_class, TbLessonWindow, end);
  gtk_widget_class_bind_template_child (widget_class, TbLessonWindow, progress);
  gtk_widget_class_bind_template_callback (widget_class, on_message_closed);
  install_actions (widget_class);
  signals[TAKE] = g_signal_new ("take", TB_TYPE_LESSON_WINDOW, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                G_TYPE_NONE, 1, G_TYPE_POINTER);
}

static void
tb_lesson_window_init (TbLessonWindow *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  tb_accessible_name_message_bar (self->message_bar);
  self->learner = tb_learner_new ();
}
