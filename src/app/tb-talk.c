/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "tb-talk.h"

#include <glib/gi18n-lib.h>

#include "tb-cautions.h"
#include "tb-change.h"
#include "tb-task.h"

/* Boards that nobody in a room tells apart, assumed: up to this the hook counts as the same. */
#define SAME_BOARDS 0.5
/* The marker of a lesson becomes stretches of lane: their upper ends, boards at the pins. The third is the
 * pocket. */
static const double zone_ends[] = { 9.5, 16.5, 18.5, 25.5, INFINITY };

static TbTalkStep *
step_new (TbStudy *study)
{
  TbTalkStep *step = g_new0 (TbTalkStep, 1);

  step->study = tb_study_ref (study);
  step->choices = g_ptr_array_new_with_free_func (g_free);
  step->right = -1;
  return step;
}

static void
step_free (gpointer data)
{
  TbTalkStep *step = data;

  tb_study_unref (step->study);
  g_ptr_array_unref (step->choices);
  g_free (step->name);
  g_free (step->text);
  g_free (step->question);
  g_free (step->explain);
  g_free (step->caution);
  g_free (step->notes);
  g_free (step);
}

static TbTalk *
talk_new (const char *name)
{
  TbTalk *talk = g_new0 (TbTalk, 1);

  g_atomic_ref_count_init (&talk->ref_count);
  talk->name = g_strdup (name);
  talk->steps = g_ptr_array_new_with_free_func (step_free);
  return talk;
}

static void
add_choice (TbTalkStep *step, const char *text)
{
  g_ptr_array_add (step->choices, g_strdup (text));
}

/* Boards between the launch line and the place at the pins, gutters left out; NAN where the ball does not get
 * there. */
static double
boards_hooked (TbSetup *setup)
{
  g_autoptr (TbRun) run = tb_run_new_edgeless (setup);

  return run->status == TB_OK ? tb_measure_value (tb_measure_find ("hook_board"), &run->path.measures) : NAN;
}

static int
right_of_hook (const TbStudy *study)
{
  double more = boards_hooked (study->side[TB_SIDE_AFTER]) - boards_hooked (study->side[TB_SIDE_BEFORE]);

  if (isnan (more))
    return -1;
  if (fabs (more) <= SAME_BOARDS)
    return 1;
  return more > 0 ? 0 : 2;
}

/* Where a caution stands beside a control for a field that follows from the one that changed. */
static const struct
{
  const char *field, *caution;
} follows[] = { { "roughness_uin", "grit" },
                { "loft_reach_in", "loft_angle_deg" },
                { "release_height_in", "loft_angle_deg" },
                { "aim_board", "laydown_board" },
                { "val_angle_deg", "pin_to_pap_in" },
                { "drilling_angle_deg", "pin_to_pap_in" },
                { "grip_pressure", "rev_rate_rpm" } };

static const TbCaution *
caution_of (const TbChange *change)
{
  const char *name = change->field != NULL ? change->field->name : "";

  if (change->kind == TB_CHANGE_HOLES)
    name = "pin_to_pap_in";
  for (gsize i = 0; i < G_N_ELEMENTS (follows); i++)
    if (g_str_equal (name, follows[i].field))
      name = follows[i].caution;
  return tb_caution_for_field (name);
}

char *
tb_talk_cautions (const TbStudy *study)
{
  g_autoptr (GString) text = g_string_new (NULL);
  TbChange changes[TB_MAX_CHANGES];
  guint n = tb_changes_find (study->side[TB_SIDE_BEFORE], study->side[TB_SIDE_AFTER], changes);
  const TbCaution *last = NULL;

  for (guint i = 0; i < n; i++)
    {
      const TbCaution *caution = caution_of (&changes[i]);

      if (caution == NULL || caution == last || strstr (text->str, _ (caution->line)) != NULL)
        continue;
      /* Translators: between two short cautions. */
      g_string_append_printf (text, "%s%s", text->len > 0 ? _ (" · ") : "", _ (caution->line));
      last = caution;
    }
  if (text->len > 0)
    /* Translators: after one or more short cautions, such as "Lofting can damage a lane". */
    g_string_append (text, _ (". House rules come first."));
  return g_string_free (g_steal_pointer (&text), FALSE);
}

TbTalk *
tb_talk_from_study (TbStudy *study)
{
  TbTalk *talk = talk_new (study->title);
  TbTalkStep *step = step_new (study);
  g_autofree char *caution = tb_talk_cautions (study);

  step->name = g_strdup (study->title);
  step->question = g_strdup (_ ("Will the ball hook more or less?"));
  add_choice (step, _ ("It hooks more"));
  add_choice (step, _ ("About the same"));
  add_choice (step, _ ("It hooks less"));
  step->right = right_of_hook (study);
  step->asked = tb_measure_find ("hook_board");
  step->caution = caution[0] != '\0' ? g_steal_pointer (&caution) : NULL;
  step->notes = study->notes[0] != '\0' ? g_strdup (study->notes) : NULL;
  g_ptr_array_add (talk->steps, step);
  return talk;
}

/* Where a marker would be dragged, the room votes for a stretch of lane. */
static void
add_zones (TbTalkStep *step, double board)
{
  const char *const names[]
      = { _ ("Board 1 to 9"), _ ("Board 10 to 16"), _ ("In the pocket, about board 17½"),
          _ ("Board 19 to 25"), _ ("Board 26 or more") };

  for (guint i = 0; i < G_N_ELEMENTS (names); i++)
    {
      add_choice (step, names[i]);
      if (step->right < 0 && board <= zone_ends[i])
        step->right = (int) i;
    }
}

/* Any other number is guessed against that of the throw before. */
static void
add_comparison (TbTalkStep *step, double more, double same)
{
  add_choice (step, _ ("More than before"));
  add_choice (step, _ ("About the same"));
  add_choice (step, _ ("Less than before"));
  if (!isnan (more))
    step->right = fabs (more) <= same ? 1 : more > 0 ? 0 : 2;
}

/* Share of a number up to which it counts as about the same, assumed. */
#define SAME_SHARE 0.02

static void
add_choices (TbTalkStep *step, const TbLessonStep *from, const TbLessonThrow *thrown)
{
  double asked = tb_lesson_number (thrown, &from->asked);
  TbLessonNumber before = { from->asked.measure, TB_LESSON_OF_BEFORE };
  TbLessonNumber more = { from->asked.measure, TB_LESSON_OF_DIFFERENCE };

  for (guint i = 0; i < from->choices->len; i++)
    add_choice (step, tb_lesson_display (g_array_index (from->choices, TbLessonChoice, i).text));
  if (from->choices->len > 0)
    step->right = tb_lesson_right_choice (from, thrown);
  else if (g_str_equal (from->asked.measure->name, "board_at_pins")
           && from->asked.of != TB_LESSON_OF_DIFFERENCE)
    add_zones (step, asked);
  else
    add_comparison (step, tb_lesson_number (thrown, &more),
                    SAME_SHARE * fabs (tb_lesson_number (thrown, &before)));
}

static TbTalkStep *
step_from_lesson (const TbLessonStep *from, TbLibrary *library, GError **error)
{
  g_autoptr (TbLessonThrow) thrown = tb_lesson_step_throw (from, library, error);
  g_autofree char *explain = thrown != NULL ? tb_lesson_explain (from, thrown, error) : NULL;
  TbTalkStep *step;

  if (explain == NULL)
    return NULL;
  step = step_new (thrown->study);
  step->name = g_strdup (tb_lesson_display (from->name));
  step->text = g_strdup (tb_lesson_display (from->text));
  step->question = g_strdup (tb_lesson_display (from->question));
  step->explain = g_steal_pointer (&explain);
  step->caution = from->caution != NULL ? g_strdup (tb_lesson_display (from->caution)) : NULL;
  step->notes = g_strdup (step->explain);
  step->asked = from->asked.measure;
  add_choices (step, from, thrown);
  return step;
}

TbTalk *
tb_talk_from_lesson (const TbLesson *lesson, TbLibrary *library, GError **error)
{
  g_autoptr (TbTalk) talk = talk_new (tb_lesson_display (lesson->name));

  for (guint i = 0; i < lesson->steps->len; i++)
    {
      const TbLessonStep *from = lesson->steps->pdata[i];
      TbTalkStep *step = step_from_lesson (from, library, error);

      if (step == NULL)
        {
          g_prefix_error (error, _ ("The lesson “%s” cannot be shown. Its step “%s”: "), talk->name,
                          tb_lesson_display (from->name));
          return NULL;
        }
      g_ptr_array_add (talk->steps, step);
    }
  return g_steal_pointer (&talk);
}

/* A library of its own: the window's is not for threads. */
static void
throw_lesson (GTask *task, gpointer source, gpointer lesson, GCancellable *cancellable)
{
  g_autoptr (TbLibrary) library = tb_library_new ();
  GError *error = NULL;
  TbTalk *talk = tb_talk_from_lesson (lesson, library, &error);

  if (talk != NULL)
    g_task_return_pointer (task, talk, (GDestroyNotify) tb_talk_unref);
  else
    g_task_return_error (task, error);
}

void
tb_talk_from_lesson_async (TbLesson *lesson,
                           GCancellable *cancellable,
                           GAsyncReadyCallback callback,
                           gpointer user_data)
{
  g_autoptr (GTask) task = g_task_new (NULL, cancellable, callback, user_data);

  g_task_set_task_data (task, tb_lesson_ref (lesson), (GDestroyNotify) tb_lesson_unref);
  tb_task_run (task, throw_lesson);
}

TbTalk *
tb_talk_from_lesson_finish (GAsyncResult *result, GError **error)
{
  return g_task_propagate_pointer (G_TASK (result), error);
}

TbTalk *
tb_talk_ref (TbTalk *talk)
{
  g_atomic_ref_count_inc (&talk->ref_count);
  return talk;
}

void
tb_talk_unref (TbTalk *talk)
{
  if (!g_atomic_ref_count_dec (&talk->ref_count))
    return;
  g_ptr_array_unref (talk->steps);
  g_free (talk->name);
  g_free (talk);
}

const TbTalkStep *
tb_talk_step (const TbTalk *talk, guint step)
{
  return talk->steps->pdata[step];
}
