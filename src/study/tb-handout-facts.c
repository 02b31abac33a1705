/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"
#include "tb-handout-facts.h"

#include "tb-task.h"

TbWish
tb_handout_wish (const TbRun *after)
{
  gboolean there = after->path.result == TB_RESULT_PINS
                   && tb_pocket_contains (&after->setup->shot.assumed, &after->path.measures);

  return tb_wish_default (there ? TB_WISH_ANGLE : TB_WISH_POCKET);
}

TbHandoutFacts *
tb_handout_facts_new (TbStudy *study, gboolean metric, GCancellable *cancellable)
{
  g_autoptr (TbHandoutFacts) facts = g_new0 (TbHandoutFacts, 1);

  g_atomic_ref_count_init (&facts->ref_count);
  facts->study = tb_study_ref (study);
  facts->metric = metric;
  for (int side = 0; side < TB_N_SIDES; side++)
    facts->run[side] = tb_run_new (study->side[side]);
  facts->why = tb_why_new (study->side[TB_SIDE_BEFORE], study->side[TB_SIDE_AFTER], NULL, cancellable);
  facts->practice
      = tb_practice_new (facts->run[TB_SIDE_BEFORE], facts->run[TB_SIDE_AFTER], metric, cancellable);
  return facts->why && facts->practice ? g_steal_pointer (&facts) : NULL;
}

TbHandoutFacts *
tb_handout_facts_ref (TbHandoutFacts *facts)
{
  g_atomic_ref_count_inc (&facts->ref_count);
  return facts;
}

void
tb_handout_facts_unref (TbHandoutFacts *facts)
{
  if (!g_atomic_ref_count_dec (&facts->ref_count))
    return;
  tb_study_unref (facts->study);
  for (int side = 0; side < TB_N_SIDES; side++)
    g_clear_pointer (&facts->run[side], tb_run_unref);
  g_clear_pointer (&facts->why, tb_why_unref);
  g_clear_pointer (&facts->practice, tb_practice_free);
  g_free (facts);
}

typedef struct Question
{
  TbStudy *study;
  gboolean metric;
} Question;

static void
question_free (Question *question)
{
  tb_study_unref (question->study);
  g_free (question);
}

static void
run_task (GTask *task, gpointer source, gpointer data, GCancellable *cancellable)
{
  Question *question = data;

  tb_task_answer (task, tb_handout_facts_new (question->study, question->metric, cancellable),
                  (GDestroyNotify) tb_handout_facts_unref);
}

void
tb_handout_facts_new_async (TbStudy *study,
                            gboolean metric,
                            GCancellable *cancellable,
                            GAsyncReadyCallback callback,
                            gpointer user_data)
{
  g_autoptr (GTask) task = g_task_new (NULL, cancellable, callback, user_data);
  Question *question = g_new (Question, 1);

  *question = (Question){ tb_study_ref (study), metric };
  g_task_set_task_data (task, question, (GDestroyNotify) question_free);
  tb_task_run (task, run_task);
}

TbHandoutFacts *
tb_handout_facts_new_finish (GAsyncResult *result, GError **error)
{
  return g_task_propagate_pointer (G_TASK (result), error);
}

GPtrArray *
tb_handout_best_options (const TbNext *next)
{
  GPtrArray *best = g_ptr_array_new_with_free_func ((GDestroyNotify) tb_next_option_unref);

  /* They are sorted: by group, the best first. */
  for (guint i = 0; i < next->options->len; i++)
    {
      TbNextOption *option = g_ptr_array_index (next->options, i);
      TbNextOption *last = best->len > 0 ? g_ptr_array_index (best, best->len - 1) : NULL;

      if (option->reach != TB_REACH_NOT && (!last || last->knob->group != option->knob->group))
        g_ptr_array_add (best, tb_next_option_ref (option));
    }
  return best;
}

static void
add_caution (GPtrArray *cautions, const TbCaution *caution)
{
  if (caution && !g_ptr_array_find (cautions, caution, NULL))
    g_ptr_array_add (cautions, (gpointer) caution);
}

static void
add_change (GPtrArray *cautions, const TbChange *change)
{
  if (change->field)
    add_caution (cautions, tb_caution_for_change (change->field->group, change->field->name));
  else if (change->kind == TB_CHANGE_HOLES)
    add_caution (cautions, tb_caution_for_field ("pin_to_pap_in"));
}

GPtrArray *
tb_handout_facts_cautions (const TbHandoutFacts *facts, const GPtrArray *options)
{
  GPtrArray *cautions = g_ptr_array_new ();
  TbChange changes[TB_MAX_CHANGES];
  guint count
      = tb_changes_find (facts->study->side[TB_SIDE_BEFORE], facts->study->side[TB_SIDE_AFTER], changes);

  for (guint i = 0; i < count; i++)
    add_change (cautions, &changes[i]);
  for (guint i = 0; options && i < options->len; i++)
    {
      const TbNextOption *option = g_ptr_array_index (options, i);

      for (guint change = 0; change < option->n_changes; change++)
        add_caution (cautions, tb_caution_for_change (option->change[change].field->group,
                                                      option->change[change].field->name));
    }
  return cautions;
}
