/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "tb-lesson-list.h"

#include <glib/gi18n-lib.h>

#include "tb-accessible.h"
#include "tb-children.h"
#include "tb-lesson-words.h"

struct _TbLessonList
{
  GtkWidget parent_instance;

  /* Template */
  GtkDropDown *bowler;
  GtkListBox *builtin;
  GtkWidget *own_title;
  GtkListBox *own;
  GtkBox *problems;

  TbLearner *learner;
  TbLibrary *library;
  TbLessonShelf *shelf;
  gboolean showing;
};

enum
{
  CHOSEN,
  N_SIGNALS
};
static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (TbLessonList, tb_lesson_list, GTK_TYPE_WIDGET)

/* What a row carries. */
#define LESSON_KEY "tb-lesson"
#define PROGRESS_KEY "tb-progress"

/* Rows. */

static GtkWidget *
new_label (const char *text, const char *style)
{
  GtkWidget *label = gtk_label_new (text);

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_widget_add_css_class (label, style);
  return label;
}

static void
show_progress (TbLessonList *self, GtkWidget *row)
{
  const TbLesson *lesson = g_object_get_data (G_OBJECT (row), LESSON_KEY);
  GtkLabel *label = g_object_get_data (G_OBJECT (row), PROGRESS_KEY);
  g_autofree char *words = tb_lesson_words_progress (tb_learner_get_progress (self->learner), lesson);
  const char *note = tb_lesson_display (lesson->note);
  g_autofree char *description = words[0] != '\0' ? g_strjoin ("\n", note, words, NULL) : g_strdup (note);

  gtk_label_set_text (label, words);
  gtk_accessible_update_property (GTK_ACCESSIBLE (row), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  tb_lesson_display (lesson->name), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION,
                                  description, -1);
}

static GtkWidget *
new_row (TbLesson *lesson)
{
  GtkWidget *row = gtk_list_box_row_new (), *box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 0);
  GtkWidget *words = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0), *progress = gtk_label_new (NULL);

  gtk_box_append (GTK_BOX (words), new_label (tb_lesson_display (lesson->name), "lesson-row-name"));
  if (lesson->note != NULL)
    gtk_box_append (GTK_BOX (words), new_label (tb_lesson_display (lesson->note), "lesson-row-note"));
  gtk_widget_set_hexpand (words, TRUE);
  gtk_label_set_xalign (GTK_LABEL (progress), 1);
  gtk_widget_add_css_class (progress, "lesson-row-progress");
  gtk_box_append (GTK_BOX (box), words);
  gtk_box_append (GTK_BOX (box), progress);
  gtk_list_box_row_set_child (GTK_LIST_BOX_ROW (row), box);
  g_object_set_data_full (G_OBJECT (row), LESSON_KEY, tb_lesson_ref (lesson),
                          (GDestroyNotify) tb_lesson_unref);
  g_object_set_data (G_OBJECT (row), PROGRESS_KEY, progress);
  return row;
}

static void
fill_list (GtkListBox *list, GPtrArray *lessons)
{
  GtkWidget *child;

  while ((child = gtk_widget_get_first_child (GTK_WIDGET (list))) != NULL)
    gtk_list_box_remove (list, child);
  for (guint i = 0; i < lessons->len; i++)
    gtk_list_box_append (list, new_row (g_ptr_array_index (lessons, i)));
}

static void
show_learner (TbLessonList *self)
{
  GtkListBox *const lists[] = { self->builtin, self->own };

  for (guint i = 0; i < G_N_ELEMENTS (lists); i++)
    for (GtkWidget *row = gtk_widget_get_first_child (GTK_WIDGET (lists[i])); row != NULL;
         row = gtk_widget_get_next_sibling (row))
      show_progress (self, row);
}

static void
show_problems (TbLessonList *self)
{
  GtkWidget *child;

  while ((child = gtk_widget_get_first_child (GTK_WIDGET (self->problems))) != NULL)
    gtk_box_remove (self->problems, child);
  for (guint i = 0; i < self->shelf->problems->len; i++)
    gtk_box_append (self->problems, new_label (g_ptr_array_index (self->shelf->problems, i), "problem"));
}

void
tb_lesson_list_reload (TbLessonList *self)
{
  g_clear_pointer (&self->shelf, tb_lesson_shelf_free);
  self->shelf = tb_lesson_shelf_new ();
  fill_list (self->builtin, self->shelf->builtin);
  fill_list (self->own, self->shelf->own);
  gtk_widget_set_visible (self->own_title, self->shelf->own->len > 0 || self->shelf->problems->len > 0);
  gtk_widget_set_visible (GTK_WIDGET (self->own), self->shelf->own->len > 0);
  show_problems (self);
  show_learner (self);
}

const TbLessonShelf *
tb_lesson_list_get_shelf (TbLessonList *self)
{
  return self->shelf;
}

static void
on_row_activated (TbLessonList *self, GtkListBoxRow *row)
{
  g_signal_emit (self, signals[CHOSEN], 0, g_object_get_data (G_OBJECT (row), LESSON_KEY));
}

/* Who is learning: a guest, or a bowler of the library. */

static void
on_bowler (TbLessonList *self)
{
  guint selected = gtk_drop_down_get_selected (self->bowler);
  g_autoptr (TbLibraryEntry) entry = NULL;

  if (self->showing || self->learner == NULL || selected == GTK_INVALID_LIST_POSITION)
    return;
  if (selected > 0)
    entry = g_list_model_get_item (tb_library_get_entries (self->library, TB_DOCUMENT_BOWLER), selected - 1);
  tb_learner_set_bowler (self->learner, entry != NULL ? tb_library_entry_get_id (entry) : TB_LEARNER_GUEST);
}

static void
show_bowlers (TbLessonList *self)
{
  GListModel *bowlers = tb_library_get_entries (self->library, TB_DOCUMENT_BOWLER);
  g_autoptr (GtkStringList) names = gtk_string_list_new (NULL);
  guint selected = 0;

  /* Translators: somebody who is no bowler of the library. */
  gtk_string_list_append (names, _ ("A guest"));
  for (guint i = 0; i < g_list_model_get_n_items (bowlers); i++)
    {
      g_autoptr (TbLibraryEntry) entry = g_list_model_get_item (bowlers, i);

      gtk_string_list_append (names, tb_library_entry_get_name (entry));
      if (g_str_equal (tb_library_entry_get_id (entry), tb_learner_get_bowler (self->learner)))
        selected = i + 1;
    }
  self->showing = TRUE;
  gtk_drop_down_set_model (self->bowler, G_LIST_MODEL (names));
  gtk_drop_down_set_selected (self->bowler, selected);
  self->showing = FALSE;
}

void
tb_lesson_list_set_learner (TbLessonList *self, TbLearner *learner, TbLibrary *library)
{
  g_return_if_fail (self->learner == NULL);

  self->learner = g_object_ref (learner);
  self->library = g_object_ref (library);
  show_bowlers (self);
  tb_accessible_set_drop_down_name (self->bowler, _ ("Who is learning?"));
  g_signal_connect_object (tb_library_get_entries (library, TB_DOCUMENT_BOWLER), "items-changed",
                           G_CALLBACK (show_bowlers), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (learner, "changed", G_CALLBACK (show_learner), self, G_CONNECT_SWAPPED);
  tb_lesson_list_reload (self);
}

static void
tb_lesson_list_dispose (GObject *object)
{
  TbLessonList *self = TB_LESSON_LIST (object);

  tb_unparent_children (GTK_WIDGET (self));
  g_clear_pointer (&self->shelf, tb_lesson_shelf_free);
  g_clear_object (&self->learner);
  g_clear_object (&self->library);
  G_OBJECT_CLASS (tb_lesson_list_parent_class)->dispose (object);
}

static void
tb_lesson_list_class_init (TbLessonListClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = tb_lesson_list_dispose;
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/io/github/tenboard/Tenboard/ui/tb-lesson-list.ui");
  gtk_widget_class_bind_template_child (widget_class, TbLessonList, bowler);
  gtk_widget_class_bind_template_child (widget_class, TbLessonList, builtin);
  gtk_widget_class_bind_template_child (widget_class, TbLessonList, own_title);
  gtk_widget_class_bind_template_child (widget_class, TbLessonList, own);
  gtk_widget_class_bind_template_child (widget_class, TbLessonList, problems);
  gtk_widget_class_bind_template_callback (widget_class, on_bowler);
  gtk_widget_class_bind_template_callback (widget_class, on_row_activated);
  signals[CHOSEN] = g_signal_new ("chosen", TB_TYPE_LESSON_LIST, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                  G_TYPE_NONE, 1, G_TYPE_POINTER);
}

static void
tb_lesson_list_init (TbLessonList *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}
