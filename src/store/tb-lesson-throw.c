/* Lessons set up, thrown and checked.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"
#include "tb-lesson.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "tb-pocket-line.h"
#include "tb-setup-assign.h"

static TbSetup *
fail (const char *key, const char *sentence, GError **error)
{
  g_autofree char *shown = tb_quotable (key);

  g_set_error (error, TB_STORE_ERROR, TB_STORE_ERROR_VALUE, "%s: %s", shown, sentence);
  return NULL;
}

static TbSetup *
change (const TbSetup *setup, TbLibrary *library, const char *const pair[2], GError **error)
{
  g_autoptr (GError) problem = NULL;
  TbSetup *changed = tb_setup_assign (setup, library, pair[0], pair[1], &problem);

  return changed ? changed : fail (pair[0], problem->message, error);
}

/* A setup with a list of changes made. */
static TbSetup *
change_all (TbSetup *setup, TbLibrary *library, GPtrArray *changes, GError **error)
{
  g_autoptr (TbSetup) changed = tb_setup_ref (setup);

  for (guint i = 0; changed && i < changes->len; i += 2)
    {
      TbSetup *next = change (changed, library, (const char *const *) &changes->pdata[i], error);

      tb_setup_unref (changed);
      changed = next;
    }
  return g_steal_pointer (&changed);
}

/* On its pocket line, its laydown held. */
static TbSetup *
aim_at_pocket (const TbSetup *setup, const char *side, GError **error)
{
  g_autoptr (TbThrower) thrower = tb_thrower_new ();
  TbShot shot = setup->shot;

  if (tb_pocket_reaim (thrower, &shot, NULL))
    return tb_setup_with_shot (setup, &shot);
  return fail (side, _ ("no target leads to the pocket from this laydown"), error);
}

static TbSetup *
set_up (const TbLessonStep *step, TbSide side, TbSetup *from, GError **error)
{
  static const char *const sides[TB_N_SIDES] = { "before", "after" };

  return step->pocket ? aim_at_pocket (from, sides[side], error) : tb_setup_ref (from);
}

static TbStudy *
make_study (const TbLessonStep *step, TbLibrary *library, GError **error)
{
  g_autoptr (TbStudy) start = tb_library_start_study ();
  g_autoptr (TbSetup) before
      = change_all (start->side[TB_SIDE_BEFORE], library, step->changes[TB_SIDE_BEFORE], error);
  g_autoptr (TbSetup) after = before ? change_all (before, library, step->changes[TB_SIDE_AFTER], error) : NULL;
  g_autoptr (TbSetup) first = after ? set_up (step, TB_SIDE_BEFORE, before, error) : NULL;
  g_autoptr (TbSetup) second = first ? set_up (step, TB_SIDE_AFTER, after, error) : NULL;

  return second ? tb_study_new (first, second, tb_lesson_display (step->name), "") : NULL;
}

TbLessonThrow *
tb_lesson_step_throw (const TbLessonStep *step, TbLibrary *library, GError **error)
{
  g_autoptr (TbStudy) study = make_study (step, library, error);
  g_autoptr (TbLessonThrow) thrown = NULL;

  if (!study)
    return NULL;
  thrown = g_new0 (TbLessonThrow, 1);
  thrown->study = g_steal_pointer (&study);
  for (int side = 0; side < TB_N_SIDES; side++)
    {
      thrown->run[side] = tb_run_new (thrown->study->side[side]);
      if (thrown->run[side]->status != TB_OK)
        {
          g_autofree char *sentence = tb_problem_sentence (&thrown->run[side]->problem);

          g_set_error_literal (error, TB_STORE_ERROR, TB_STORE_ERROR_VALUE, sentence);
          return NULL;
        }
    }
  return g_steal_pointer (&thrown);
}

void
tb_lesson_throw_free (TbLessonThrow *thrown)
{
  g_clear_pointer (&thrown->study, tb_study_unref);
  for (int side = 0; side < TB_N_SIDES; side++)
    g_clear_pointer (&thrown->run[side], tb_run_unref);
  g_free (thrown);
}

double
tb_lesson_number (const TbLessonThrow *thrown, const TbLessonNumber *number)
{
  double value[TB_N_SIDES];

  for (int side = 0; side < TB_N_SIDES; side++)
    value[side] = tb_measure_value (number->measure, &thrown->run[side]->path.measures);
  if (number->of == TB_LESSON_OF_DIFFERENCE)
    return value[TB_SIDE_AFTER] - value[TB_SIDE_BEFORE];
  return value[number->of == TB_LESSON_OF_AFTER ? TB_SIDE_AFTER : TB_SIDE_BEFORE];
}

double
tb_lesson_marker_line (const TbLessonNumber *number)
{
  if (number->of != TB_LESSON_OF_AFTER)
    return NAN;
  if (g_str_equal (number->measure->name, "board_at_arrows"))
    return TB_ARROWS_Y;
  return g_str_equal (number->measure->name, "board_at_pins") ? TB_HEAD_PIN_Y : NAN;
}

int
tb_lesson_right_choice (const TbLessonStep *step, const TbLessonThrow *thrown)
{
  double value = tb_lesson_number (thrown, &step->asked);

  for (guint i = 0; i < step->choices->len; i++)
    {
      const TbLessonChoice *choice = &g_array_index (step->choices, TbLessonChoice, i);

      if (value > choice->above && value <= choice->below)
        return (int) i;
    }
  return -1;
}

static gboolean
check_claim (const TbLessonClaim *claim, const TbLessonThrow *thrown, guint index, GError **error)
{
  double value = tb_lesson_number (thrown, &claim->number);

  if (value > claim->above && value < claim->below)
    return TRUE;
  if (isnan (value))
    g_set_error (error, TB_STORE_ERROR, TB_STORE_ERROR_VALUE, _ ("claims[%u]: the throw has no %s"), index,
                 claim->number.measure->name);
  else
    g_set_error (error, TB_STORE_ERROR, TB_STORE_ERROR_VALUE,
                 _ ("claims[%u]: %s is %.3f, which is not what is claimed"), index, claim->number.measure->name, value);
  return FALSE;
}

gboolean
tb_lesson_check_throw (const TbLessonStep *step, const TbLessonThrow *thrown, GError **error)
{
  g_autofree char *words = NULL;

  if (isnan (tb_lesson_number (thrown, &step->asked)))
    {
      g_set_error (error, TB_STORE_ERROR, TB_STORE_ERROR_VALUE, _ ("ask: the throw has no %s"), step->asked.measure->name);
      return FALSE;
    }
  for (guint i = 0; i < step->claims->len; i++)
    if (!check_claim (&g_array_index (step->claims, TbLessonClaim, i), thrown, i + 1, error))
      return FALSE;
  words = tb_lesson_explain (step, thrown, error);
  return words != NULL;
}

static gboolean
check_step (const TbLessonStep *step, TbLibrary *library, GError **error)
{
  g_autoptr (TbLessonThrow) thrown = tb_lesson_step_throw (step, library, error);

  return thrown && tb_lesson_check_throw (step, thrown, error);
}

gboolean
tb_lesson_check (const TbLesson *lesson, TbLibrary *library, GError **error)
{
  for (guint i = 0; i < lesson->steps->len; i++)
    if (!check_step (g_ptr_array_index (lesson->steps, i), library, error))
      {
        g_prefix_error (error, "steps[%u]: ", i + 1);
        return FALSE;
      }
  return TRUE;
}
