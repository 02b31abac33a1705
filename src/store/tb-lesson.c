/* Reading of lessons.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"
#include "tb-lesson.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#include "tb-decimal.h"
#include "tb-store-resources.h"

#define RESOURCE_FOLDER "/io/github/tenboard/Tenboard/lesson/"

static const char *const lesson_keys[] = { "tenboard", "version", "id", "name", "note", "steps", NULL };
static const char *const step_keys[] = { "name", "text", "before", "after", "line", "ask", "claims", "explain", "caution", NULL };
static const char *const ask_keys[] = { "question", "measure", "of", "choices", NULL };
static const char *const claim_keys[] = { "measure", "of", "above", "below", NULL };
static const char *const choice_keys[] = { "text", "above", "below", NULL };
static const char *const of_words[] = { "before", "after", "difference", NULL };

static void
choice_clear (gpointer choice)
{
  g_free (((TbLessonChoice *) choice)->text);
}

static void
step_free (gpointer data)
{
  TbLessonStep *step = data;

  g_free (step->name);
  g_free (step->text);
  g_free (step->explain);
  g_free (step->caution);
  g_free (step->question);
  for (int side = 0; side < TB_N_SIDES; side++)
    g_ptr_array_unref (step->changes[side]);
  g_array_unref (step->choices);
  g_array_unref (step->claims);
  g_free (step);
}

static TbLessonStep *
step_new (void)
{
  TbLessonStep *step = g_new0 (TbLessonStep, 1);

  for (int side = 0; side < TB_N_SIDES; side++)
    step->changes[side] = g_ptr_array_new_with_free_func (g_free);
  step->choices = g_array_new (FALSE, TRUE, sizeof (TbLessonChoice));
  g_array_set_clear_func (step->choices, choice_clear);
  step->claims = g_array_new (FALSE, TRUE, sizeof (TbLessonClaim));
  return step;
}

static gboolean
read_text (TbReader *reader, JsonObject *object, const char *key, char **text)
{
  const char *found = tb_reader_string (reader, object, key, TB_NOTES_MAX);

  *text = g_strdup (found);
  if (found && !found[0])
    return tb_reader_fail (reader, key, TB_STORE_ERROR_VALUE, _ ("a text that is not empty was expected"));
  return found != NULL;
}

static gboolean
read_number (TbReader *reader, JsonObject *object, TbLessonNumber *number)
{
  const char *measure = tb_reader_string (reader, object, "measure", TB_ID_MAX);
  const char *of = measure ? tb_reader_string (reader, object, "of", TB_ID_MAX) : NULL;

  if (!of)
    return FALSE;
  number->measure = tb_measure_find (measure);
  if (!number->measure)
    return tb_reader_fail (reader, "measure", TB_STORE_ERROR_VALUE, _ ("a number that --numbers prints was expected"));
  for (int word = 0; of_words[word]; word++)
    if (g_str_equal (of, of_words[word]))
      {
        number->of = (TbLessonOf) word;
        return TRUE;
      }
  return tb_reader_fail (reader, "of", TB_STORE_ERROR_VALUE, _ ("before, after or difference was expected"));
}

/* A bound may be left out. */
static gboolean
read_bounds (TbReader *reader, JsonObject *object, double *above, double *below)
{
  *above = -INFINITY;
  *below = INFINITY;
  if ((tb_reader_has (object, "above") && !tb_reader_number (reader, object, "above", above))
      || (tb_reader_has (object, "below") && !tb_reader_number (reader, object, "below", below)))
    return FALSE;
  return *above < *below
         || tb_reader_fail (reader, "below", TB_STORE_ERROR_VALUE, _ ("a number greater than “above” was expected"));
}

static gboolean
read_claim (TbReader *reader, JsonNode *item, guint index, gpointer data)
{
  TbLessonStep *step = data;
  JsonObject *object = tb_reader_item_object (reader, item);
  TbLessonClaim claim = { 0 };

  if (index >= TB_LESSON_MAX_CLAIMS)
    return tb_reader_fail (reader, NULL, TB_STORE_ERROR_TOO_LARGE, _ ("there are more than %d claims"),
                           TB_LESSON_MAX_CLAIMS);
  if (!object || !tb_reader_only (reader, object, claim_keys, NULL) || !read_number (reader, object, &claim.number)
      || !read_bounds (reader, object, &claim.above, &claim.below))
    return FALSE;
  if (isinf (claim.above) && isinf (claim.below))
    return tb_reader_fail (reader, NULL, TB_STORE_ERROR_MISSING_KEY, _ ("“above” or “below” was expected, or both"));
  g_array_append_val (step->claims, claim);
  return TRUE;
}

static gboolean
read_choice (TbReader *reader, JsonNode *item, guint index, gpointer data)
{
  TbLessonStep *step = data;
  JsonObject *object = tb_reader_item_object (reader, item);
  TbLessonChoice choice = { 0 };
  double from = index > 0 ? g_array_index (step->choices, TbLessonChoice, index - 1).below : -INFINITY;

  if (index >= TB_LESSON_MAX_CHOICES)
    return tb_reader_fail (reader, NULL, TB_STORE_ERROR_TOO_LARGE, _ ("there are more than %d choices"),
                           TB_LESSON_MAX_CHOICES);
  if (!object || !tb_reader_only (reader, object, choice_keys, NULL)
      || !read_bounds (reader, object, &choice.above, &choice.below))
    return FALSE;
  if (!(choice.above <= from && choice.above >= from))
    return tb_reader_fail (reader, "above", TB_STORE_ERROR_VALUE,
                           _ ("the first choice has none, any other the “below” of the one before it"));
  if (!read_text (reader, object, "text", &choice.text))
    {
      g_free (choice.text);
      return FALSE;
    }
  g_array_append_val (step->choices, choice);
  return TRUE;
}

static gboolean
read_choices (TbReader *reader, JsonObject *object, TbLessonStep *step)
{
  if (!tb_reader_has (object, "choices"))
    return !isnan (tb_lesson_marker_line (&step->asked))
           || tb_reader_fail (reader, NULL, TB_STORE_ERROR_VALUE,
                              _ ("without choices, board_at_arrows or board_at_pins of after was expected"));
  if (!tb_reader_items (reader, object, "choices", read_choice, step))
    return FALSE;
  if (step->choices->len < 2)
    return tb_reader_fail (reader, "choices", TB_STORE_ERROR_VALUE, _ ("two choices or more were expected"));
  if (!isinf (g_array_index (step->choices, TbLessonChoice, step->choices->len - 1).below))
    return tb_reader_fail (reader, "choices", TB_STORE_ERROR_VALUE, _ ("the last choice has no “below”"));
  return TRUE;
}

static gboolean
read_ask (TbReader *reader, JsonObject *object, gpointer data)
{
  TbLessonStep *step = data;

  return tb_reader_only (reader, object, ask_keys, NULL) && read_text (reader, object, "question", &step->question)
         && read_number (reader, object, &step->asked) && read_choices (reader, object, step);
}

/* Of small letters, digits, dots and what stands between words, as every key is. */
static gboolean
is_key (const char *key)
{
  gsize length = strlen (key);

  return length <= TB_ID_MAX && strspn (key, "abcdefghijklmnopqrstuvwxyz0123456789._-") == length;
}

/* A value is kept as a text, as it would be typed. Whether the key is known is told by the throw. */
static gboolean
read_change (TbReader *reader, JsonObject *object, const char *key, GPtrArray *changes)
{
  char digits[TB_DECIMAL_SIZE];
  const char *text = NULL;
  double number;

  if (!is_key (key))
    {
      g_autofree char *shown = tb_quotable (key);
      return tb_reader_fail (reader, shown, TB_STORE_ERROR_UNKNOWN_KEY, _ ("this key is not known here"));
    }
  if (tb_node_number (json_object_get_member (object, key), &number))
    text = tb_decimal_format (number, digits);
  else if (!(text = tb_reader_string (reader, object, key, TB_NAME_MAX)))
    return FALSE;
  g_ptr_array_add (changes, g_strdup (key));
  g_ptr_array_add (changes, g_strdup (text));
  return TRUE;
}

static gboolean
read_changes (TbReader *reader, JsonObject *object, gpointer changes)
{
  g_autoptr (GList) members = json_object_get_members (object);

  if (json_object_get_size (object) > TB_LESSON_MAX_CHANGES)
    return tb_reader_fail (reader, NULL, TB_STORE_ERROR_TOO_LARGE, _ ("there are more than %d changes"),
                           TB_LESSON_MAX_CHANGES);
  for (GList *l = members; l; l = l->next)
    if (!read_change (reader, object, l->data, changes))
      return FALSE;
  return TRUE;
}

static gboolean
read_line (TbReader *reader, JsonObject *object, TbLessonStep *step)
{
  const char *word;

  if (!tb_reader_optional_text (reader, object, "line", TB_ID_MAX, &word))
    return FALSE;
  step->pocket = g_strcmp0 (word, "pocket") == 0;
  return !word || step->pocket || g_str_equal (word, "same")
         || tb_reader_fail (reader, "line", TB_STORE_ERROR_VALUE, _ ("same or pocket was expected"));
}

static gboolean
read_set_up (TbReader *reader, JsonObject *object, TbLessonStep *step)
{
  if (tb_reader_has (object, "before")
      && !tb_reader_part (reader, object, "before", read_changes, step->changes[TB_SIDE_BEFORE]))
    return FALSE;
  return tb_reader_part (reader, object, "after", read_changes, step->changes[TB_SIDE_AFTER])
         && read_line (reader, object, step);
}

static gboolean
read_caution (TbReader *reader, JsonObject *object, TbLessonStep *step)
{
  return !tb_reader_has (object, "caution") || read_text (reader, object, "caution", &step->caution);
}

static gboolean
fill_step (TbReader *reader, JsonObject *object, TbLessonStep *step)
{
  if (!tb_reader_only (reader, object, step_keys, NULL))
    return FALSE;
  step->name = g_strdup (tb_reader_name (reader, object, "name"));
  if (!step->name || !read_text (reader, object, "text", &step->text) || !read_set_up (reader, object, step)
      || !tb_reader_part (reader, object, "ask", read_ask, step)
      || !tb_reader_items (reader, object, "claims", read_claim, step)
      || !read_text (reader, object, "explain", &step->explain) || !read_caution (reader, object, step))
    return FALSE;
  return step->claims->len > 0
         || tb_reader_fail (reader, "claims", TB_STORE_ERROR_VALUE, _ ("one claim or more was expected"));
}

static gboolean
read_step (TbReader *reader, JsonNode *item, guint index, gpointer data)
{
  GPtrArray *steps = data;
  JsonObject *object = tb_reader_item_object (reader, item);
  TbLessonStep *step;

  if (!object)
    return FALSE;
  if (index >= TB_LESSON_MAX_STEPS)
    return tb_reader_fail (reader, NULL, TB_STORE_ERROR_TOO_LARGE, _ ("there are more than %d steps"),
                           TB_LESSON_MAX_STEPS);
  step = step_new ();
  g_ptr_array_add (steps, step);
  return fill_step (reader, object, step);
}

static gboolean
read_lesson (TbReader *reader, JsonObject *object, TbLesson *lesson)
{
  TbDocumentNames names;
  const char *note;

  if (!tb_reader_only (reader, object, lesson_keys, NULL) || !tb_reader_names (reader, object, FALSE, &names)
      || !tb_reader_optional_text (reader, object, "note", TB_NOTES_MAX, &note))
    return FALSE;
  lesson->id = g_strdup (names.id);
  lesson->name = g_strdup (names.name);
  lesson->note = g_strdup (note);
  if (!tb_reader_items (reader, object, "steps", read_step, lesson->steps))
    return FALSE;
  return lesson->steps->len > 0
         || tb_reader_fail (reader, "steps", TB_STORE_ERROR_VALUE, _ ("one step or more was expected"));
}

TbLesson *
tb_lesson_from_text (const char *text, gsize length, GError **error)
{
  g_auto (TbReader) reader = { 0 };
  g_autoptr (JsonNode) root = tb_document_parse (TB_DOCUMENT_LESSON, text, length, error);
  g_autoptr (TbLesson) lesson = NULL;

  tb_reader_init (&reader, error);
  if (!root)
    return NULL;
  lesson = g_new0 (TbLesson, 1);
  g_atomic_ref_count_init (&lesson->ref_count);
  lesson->steps = g_ptr_array_new_with_free_func (step_free);
  if (!read_lesson (&reader, json_node_get_object (root), lesson))
    return NULL;
  return g_steal_pointer (&lesson);
}

TbLesson *
tb_lesson_load (const char *path, GError **error)
{
  gsize length;
  g_autofree char *text = tb_document_read_file (path, &length, error);
  g_autofree char *shown = g_filename_display_name (path);
  TbLesson *lesson = text ? tb_lesson_from_text (text, length, error) : NULL;

  if (!lesson)
    tb_document_finish_error (error, shown);
  return lesson;
}

TbLesson *
tb_lesson_ref (TbLesson *lesson)
{
  g_atomic_ref_count_inc (&lesson->ref_count);
  return lesson;
}

void
tb_lesson_unref (TbLesson *lesson)
{
  if (!g_atomic_ref_count_dec (&lesson->ref_count))
    return;
  g_free (lesson->id);
  g_free (lesson->name);
  g_free (lesson->note);
  g_ptr_array_unref (lesson->steps);
  g_free (lesson);
}

static int
compare_names (gconstpointer a, gconstpointer b)
{
  return strcmp (*(const char *const *) a, *(const char *const *) b);
}

/* Built-in lessons have been tested; one that fails is our own mistake. */
static TbLesson *
read_builtin (const char *path)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GBytes) bytes = g_resource_lookup_data (tb_store_get_resource (), path, 0, &error);
  TbLesson *lesson = NULL;
  gsize length;

  if (bytes)
    {
      const char *text = g_bytes_get_data (bytes, &length);
      lesson = tb_lesson_from_text (text, length, &error);
    }
  if (!lesson)
    g_error ("%s: %s", path, error->message);
  return lesson;
}

GPtrArray *
tb_lessons_builtin (void)
{
  GPtrArray *lessons = g_ptr_array_new_with_free_func ((GDestroyNotify) tb_lesson_unref);
  g_auto (GStrv) names = g_resource_enumerate_children (tb_store_get_resource (), RESOURCE_FOLDER, 0, NULL);

  g_return_val_if_fail (names != NULL, lessons);
  qsort (names, g_strv_length (names), sizeof *names, compare_names);
  for (char **name = names; *name; name++)
    {
      g_autofree char *path = g_strconcat (RESOURCE_FOLDER, *name, NULL);

      g_ptr_array_add (lessons, read_builtin (path));
    }
  return lessons;
}
