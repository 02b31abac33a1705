/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"
#include "tb-lesson-command.h"

#include "tb-json-writer.h"
#include "tb-lesson.h"
#include "tb-output.h"

/* The built-in lessons, or the one in a file. */
static GPtrArray *
find_lessons (const char *argument, GError **error)
{
  g_autoptr (GError) problem = NULL;
  GPtrArray *lessons;
  TbLesson *lesson;

  if (g_str_equal (argument, "all"))
    return tb_lessons_builtin ();
  lesson = tb_lesson_load (argument, &problem);
  if (!lesson)
    {
      g_set_error_literal (error, TB_HEADLESS_ERROR, TB_EXIT_FILE, problem->message);
      return NULL;
    }
  lessons = g_ptr_array_new_with_free_func ((GDestroyNotify) tb_lesson_unref);
  g_ptr_array_add (lessons, lesson);
  return lessons;
}

static void
write_step (TbJsonWriter *writer, const TbLessonStep *step, TbLibrary *library)
{
  g_autoptr (TbLessonThrow) thrown = tb_lesson_step_throw (step, library, NULL);
  g_autofree char *explained = tb_lesson_explain (step, thrown, NULL);
  int right = tb_lesson_right_choice (step, thrown);

  tb_json_begin_object (writer, NULL);
  tb_json_string (writer, "name", tb_lesson_display (step->name));
  tb_json_string (writer, "question", tb_lesson_display (step->question));
  tb_json_string (writer, "measure", step->asked.measure->name);
  tb_json_number (writer, "answer", tb_lesson_number (thrown, &step->asked));
  tb_json_string (writer, "right",
                  right < 0 ? NULL : tb_lesson_display (g_array_index (step->choices, TbLessonChoice, right).text));
  tb_json_string (writer, "explanation", explained);
  tb_json_end_object (writer);
}

static void
write_lesson (TbJsonWriter *writer, const TbLesson *lesson, TbLibrary *library)
{
  tb_json_begin_object (writer, NULL);
  tb_json_string (writer, "id", lesson->id);
  tb_json_string (writer, "name", tb_lesson_display (lesson->name));
  tb_json_begin_list (writer, "steps");
  for (guint i = 0; i < lesson->steps->len; i++)
    write_step (writer, g_ptr_array_index (lesson->steps, i), library);
  tb_json_end_list (writer);
  tb_json_end_object (writer);
}

static gboolean
check (const TbLesson *lesson, TbLibrary *library, const char *argument, GError **error)
{
  g_autoptr (GError) problem = NULL;

  if (tb_lesson_check (lesson, library, &problem))
    return TRUE;
  g_set_error (error, TB_HEADLESS_ERROR, TB_EXIT_FILE, "%s: %s.",
               g_str_equal (argument, "all") ? lesson->id : argument, problem->message);
  return FALSE;
}

gboolean
tb_lesson_check_command (TbRequest *request, const char *argument, GError **error)
{
  g_autoptr (GPtrArray) lessons = find_lessons (argument, error);
  g_autoptr (TbLibrary) library = lessons ? tb_library_new () : NULL;
  g_autofree char *text = NULL;
  TbJsonWriter writer;

  for (guint i = 0; lessons && i < lessons->len; i++)
    if (!check (g_ptr_array_index (lessons, i), library, argument, error))
      return FALSE;
  if (!lessons)
    return FALSE;
  tb_json_writer_init (&writer);
  tb_json_begin_list (&writer, NULL);
  for (guint i = 0; i < lessons->len; i++)
    write_lesson (&writer, g_ptr_array_index (lessons, i), library);
  tb_json_end_list (&writer);
  text = tb_json_writer_finish (&writer);
  return tb_output_write (text, error);
}

static void
write_text (GString *source, const char *text)
{
  g_autoptr (GString) quoted = g_string_new (text);

  g_string_replace (quoted, "\\", "\\\\", 0);
  g_string_replace (quoted, "\"", "\\\"", 0);
  g_string_replace (quoted, "\n", "\\n", 0);
  g_string_append_printf (source, "  NC_ (\"lesson\", \"%s\"),\n", quoted->str);
}

gboolean
tb_lesson_texts_command (TbRequest *request, const char *argument, GError **error)
{
  g_autoptr (GPtrArray) lessons = find_lessons (argument, error);
  g_autoptr (GPtrArray) texts = g_ptr_array_new ();
  g_autoptr (GHashTable) seen = g_hash_table_new (g_str_hash, g_str_equal);
  g_autoptr (GString) source = g_string_new (
      "/* The texts of the built-in lessons, where translators' tools find them: those do not read JSON. Written by\n"
      " * tenboard --lesson-texts all; a test compares it with the lessons.\n"
      " *\n"
      " * SPDX-License-Identifier: GPL-3.0-or-later */\n"
      "#include \"config.h\"\n#include \"tb-lesson.h\"\n\n#include <glib/gi18n-lib.h>\n\n"
      "const char *const tb_lesson_texts[] = {\n");

  if (!lessons)
    return FALSE;
  for (guint i = 0; i < lessons->len; i++)
    tb_lesson_list_texts (g_ptr_array_index (lessons, i), texts);
  for (guint i = 0; i < texts->len; i++)
    if (g_hash_table_add (seen, texts->pdata[i]))
      write_text (source, texts->pdata[i]);
  g_string_append (source, "  NULL,\n};\n");
  return tb_output_write (source->str, error);
}
