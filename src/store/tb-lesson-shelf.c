/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"
#include "tb-lesson-shelf.h"

#include <glib/gi18n-lib.h>

static TbLesson *
find_in (GPtrArray *lessons, const char *id)
{
  for (guint i = 0; i < lessons->len; i++)
    {
      TbLesson *lesson = g_ptr_array_index (lessons, i);

      if (g_str_equal (lesson->id, id))
        return lesson;
    }
  return NULL;
}

TbLesson *
tb_lesson_shelf_find (const TbLessonShelf *shelf, const char *id)
{
  TbLesson *lesson = find_in (shelf->builtin, id);

  return lesson ? lesson : find_in (shelf->own, id);
}

/* What is kept of a bowler goes by the lesson's id: two lessons of one id would be taken for each other. */
static TbLesson *
read_own (const TbLessonShelf *shelf, const char *path, GError **error)
{
  g_autoptr (TbLesson) lesson = tb_lesson_load (path, error);
  g_autofree char *shown = g_filename_display_name (path);

  if (!lesson || !tb_lesson_shelf_find (shelf, lesson->id))
    return g_steal_pointer (&lesson);
  g_set_error (error, TB_STORE_ERROR, TB_STORE_ERROR_VALUE, _ ("id: another lesson has the id “%s”"),
               lesson->id);
  tb_document_finish_error (error, shown);
  return NULL;
}

TbLessonShelf *
tb_lesson_shelf_new (void)
{
  TbLessonShelf *shelf = g_new0 (TbLessonShelf, 1);
  g_autofree char *folder = tb_document_folder (TB_DOCUMENT_LESSON);
  g_autoptr (GPtrArray) paths = tb_document_list_folder (folder, TB_LESSON_SHELF_MAX);

  shelf->builtin = tb_lessons_builtin ();
  shelf->own = g_ptr_array_new_with_free_func ((GDestroyNotify) tb_lesson_unref);
  shelf->problems = g_ptr_array_new_with_free_func (g_free);
  for (guint i = 0; i < paths->len; i++)
    {
      g_autoptr (GError) error = NULL;
      TbLesson *lesson = read_own (shelf, g_ptr_array_index (paths, i), &error);

      if (lesson)
        g_ptr_array_add (shelf->own, lesson);
      else
        g_ptr_array_add (shelf->problems, g_strdup (error->message));
    }
  return shelf;
}

void
tb_lesson_shelf_free (TbLessonShelf *shelf)
{
  g_ptr_array_unref (shelf->builtin);
  g_ptr_array_unref (shelf->own);
  g_ptr_array_unref (shelf->problems);
  g_free (shelf);
}
