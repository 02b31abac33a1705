/* The words of lessons: translated, and filled with a throw's numbers.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"
#include "tb-lesson.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>
#include "tb-measure-text.h"

const char *
tb_lesson_display (const char *text)
{
  if (!text || !text[0])
    return "";
  return g_dpgettext2 (GETTEXT_PACKAGE, "lesson", text);
}

static void
add (GPtrArray *texts, const char *text)
{
  if (text)
    g_ptr_array_add (texts, (gpointer) text);
}

void
tb_lesson_list_texts (const TbLesson *lesson, GPtrArray *texts)
{
  add (texts, lesson->name);
  add (texts, lesson->note);
  for (guint i = 0; i < lesson->steps->len; i++)
    {
      const TbLessonStep *step = g_ptr_array_index (lesson->steps, i);

      add (texts, step->name);
      add (texts, step->text);
      add (texts, step->question);
      for (guint c = 0; c < step->choices->len; c++)
        add (texts, g_array_index (step->choices, TbLessonChoice, c).text);
      add (texts, step->explain);
      add (texts, step->caution);
    }
}

static gboolean
fail_place (const char *place, GError **error)
{
  g_autofree char *shown = tb_quotable (place);

  g_set_error (error, TB_STORE_ERROR, TB_STORE_ERROR_VALUE, _ ("explain: “{%s}” is no number of this throw"),
               shown);
  return FALSE;
}

static char *
side_text (const TbLessonThrow *thrown, const TbLessonNumber *number)
{
  TbSide side = number->of == TB_LESSON_OF_AFTER ? TB_SIDE_AFTER : TB_SIDE_BEFORE;

  return tb_measure_number_text (number->measure, &thrown->run[side]->path.measures, FALSE);
}

/* Of the numbers as they are told, as everywhere: nobody who subtracts gets another. A size has no sign. */
static char *
difference_text (const TbLessonThrow *thrown, const TbLessonNumber *number, gboolean size)
{
  static const char *const signs[] = { "+", "−" };
  g_autofree char *text
      = tb_measure_difference_text (number->measure, &thrown->run[TB_SIDE_BEFORE]->path.measures,
                                    &thrown->run[TB_SIDE_AFTER]->path.measures, FALSE);

  for (gsize i = 0; size && i < G_N_ELEMENTS (signs); i++)
    if (g_str_has_prefix (text, signs[i]))
      return g_strdup (text + strlen (signs[i]));
  return g_steal_pointer (&text);
}

/* "before.board_at_pins": the number, with the digits its measure is told with. */
static gboolean
fill_place (GString *filled, const char *place, const TbLessonThrow *thrown, GError **error)
{
  static const struct
  {
    const char *word;
    TbLessonOf of;
    gboolean size;
  } words[] = { { "before.", TB_LESSON_OF_BEFORE, FALSE },
                { "after.", TB_LESSON_OF_AFTER, FALSE },
                { "difference.", TB_LESSON_OF_DIFFERENCE, FALSE },
                { "size.", TB_LESSON_OF_DIFFERENCE, TRUE } };

  for (gsize i = 0; i < G_N_ELEMENTS (words); i++)
    if (g_str_has_prefix (place, words[i].word))
      {
        TbLessonNumber number = { tb_measure_find (place + strlen (words[i].word)), words[i].of };
        g_autofree char *text = NULL;

        if (!number.measure || isnan (tb_lesson_number (thrown, &number)))
          break;
        text = number.of == TB_LESSON_OF_DIFFERENCE ? difference_text (thrown, &number, words[i].size)
                                                    : side_text (thrown, &number);
        g_string_append (filled, text);
        return TRUE;
      }
  return fail_place (place, error);
}

char *
tb_lesson_explain (const TbLessonStep *step, const TbLessonThrow *thrown, GError **error)
{
  g_autoptr (GString) filled = g_string_new (NULL);
  const char *rest = tb_lesson_display (step->explain), *open, *close;

  while ((open = strchr (rest, '{')) && (close = strchr (open, '}')))
    {
      g_autofree char *place = g_strndup (open + 1, (gsize) (close - open - 1));

      g_string_append_len (filled, rest, open - rest);
      if (!fill_place (filled, place, thrown, error))
        return NULL;
      rest = close + 1;
    }
  g_string_append (filled, rest);
  return g_string_free (g_steal_pointer (&filled), FALSE);
}
