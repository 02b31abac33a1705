/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"
#include "tb-handout-facts.h"

static TbWish
own_wish (const TbRun *after)
{
  gboolean there = after->path.result == TB_RESULT_PINS
                   && tb_pocket_contains (&after->setup->shot.assumed, &after->path.measures);

  return tb_wish_default (there ? TB_WISH_FORGIVING : TB_WISH_POCKET);
}

TbHandoutFacts *
tb_handout_facts_new (const TbHandoutAsk *ask, GCancellable *cancellable)
{
  g_autoptr (TbHandoutFacts) facts = g_new0 (TbHandoutFacts, 1);
  TbWish wish;

  g_atomic_ref_count_init (&facts->ref_count);
  facts->study = tb_study_ref (ask->study);
  facts->metric = ask->metric;
  for (int side = 0; side < TB_N_SIDES; side++)
    facts->run[side] = tb_run_new (ask->study->side[side]);
  wish = ask->wish ? *ask->wish : own_wish (facts->run[TB_SIDE_AFTER]);
  if ((facts->why = tb_why_new (ask->study->side[0], ask->study->side[1], NULL, cancellable)) == NULL
      || (facts->practice = tb_practice_new (facts->run[0], facts->run[1], ask->metric, cancellable)) == NULL
      || (facts->next = tb_next_find (ask->study->side[1], &wish, ask->balls, ask->n_balls, 0, cancellable))
             == NULL)
    return NULL;
  return g_steal_pointer (&facts);
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
  g_clear_pointer (&facts->next, tb_next_unref);
  g_free (facts);
}

/* A question with copies of all that it borrows. */
typedef struct Question
{
  TbHandoutAsk ask;
  TbWish wish;
  GArray *balls;
} Question;

static void
clear_ball (gpointer data)
{
  TbNextBall *ball = data;

  g_free ((char *) ball->id);
  g_free ((char *) ball->name);
}

static Question *
question_new (const TbHandoutAsk *ask)
{
  Question *question = g_new0 (Question, 1);

  question->ask = *ask;
  tb_study_ref (ask->study);
  if (ask->wish)
    {
      question->wish = *ask->wish;
      question->ask.wish = &question->wish;
    }
  question->balls = g_array_new (FALSE, FALSE, sizeof (TbNextBall));
  g_array_set_clear_func (question->balls, clear_ball);
  for (guint i = 0; i < ask->n_balls; i++)
    {
      TbNextBall ball = { g_strdup (ask->balls[i].id), g_strdup (ask->balls[i].name), ask->balls[i].ball };

      g_array_append_val (question->balls, ball);
    }
  question->ask.balls = (const TbNextBall *) (gconstpointer) question->balls->data;
  return question;
}

static void
question_free (Question *question)
{
  tb_study_unref (question->ask.study);
  g_array_unref (question->balls);
  g_free (question);
}

static void
run_task (GTask *task, gpointer source, gpointer data, GCancellable *cancellable)
{
  Question *question = data;
  TbHandoutFacts *facts = tb_handout_facts_new (&question->ask, cancellable);

  if (facts)
    g_task_return_pointer (task, facts, (GDestroyNotify) tb_handout_facts_unref);
  else
    g_task_return_new_error (task, G_IO_ERROR, G_IO_ERROR_CANCELLED, "Cancelled");
}

void
tb_handout_facts_new_async (const TbHandoutAsk *ask,
                            GCancellable *cancellable,
                            GAsyncReadyCallback callback,
                            gpointer user_data)
{
  g_autoptr (GTask) task = g_task_new (NULL, cancellable, callback, user_data);

  g_task_set_task_data (task, question_new (ask), (GDestroyNotify) question_free);
  g_task_run_in_thread (task, run_task);
}

TbHandoutFacts *
tb_handout_facts_new_finish (GAsyncResult *result, GError **error)
{
  return g_task_propagate_pointer (G_TASK (result), error);
}

GPtrArray *
tb_handout_facts_best (const TbHandoutFacts *facts)
{
  GPtrArray *best = g_ptr_array_new_with_free_func ((GDestroyNotify) tb_next_option_unref);

  /* They are sorted: by group, the best first. */
  for (guint i = 0; i < facts->next->options->len; i++)
    {
      TbNextOption *option = g_ptr_array_index (facts->next->options, i);
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
