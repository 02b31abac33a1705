/* The options of a wish, on all cores, told one by one.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "tb-next.h"

#include <math.h>
#include "tb-next-private.h"
#include "tb-task.h"

const char *
tb_reach_name (TbReach reach)
{
  static const char *const names[] = { "met", "nearer", "not" };

  return names[reach];
}

TbNextOption *
tb_next_option_ref (TbNextOption *option)
{
  g_atomic_ref_count_inc (&option->ref_count);
  return option;
}

void
tb_next_option_unref (TbNextOption *option)
{
  if (!g_atomic_ref_count_dec (&option->ref_count))
    return;
  g_free (option->title);
  g_clear_pointer (&option->setup, tb_setup_unref);
  g_clear_pointer (&option->run, tb_run_unref);
  g_free (option);
}

TbNext *
tb_next_ref (TbNext *next)
{
  g_atomic_ref_count_inc (&next->ref_count);
  return next;
}

void
tb_next_unref (TbNext *next)
{
  if (!g_atomic_ref_count_dec (&next->ref_count))
    return;
  tb_setup_unref (next->start);
  g_ptr_array_unref (next->options);
  g_free (next);
}

int
tb_next_option_compare (const TbNextOption *a, const TbNextOption *b)
{
  double key_a = a->reach == TB_REACH_MET ? a->effort : fabs (a->missing);
  double key_b = b->reach == TB_REACH_MET ? b->effort : fabs (b->missing);

  if (a->knob->group != b->knob->group)
    return a->knob->group < b->knob->group ? -1 : 1;
  if (a->reach != b->reach)
    return a->reach < b->reach ? -1 : 1;
  if (key_a != key_b)
    return key_a < key_b ? -1 : 1;
  if (a->knob != b->knob)
    return a->knob < b->knob ? -1 : 1;
  return g_strcmp0 (a->title, b->title);
}

const TbNextOption *
tb_next_smallest (const TbNext *next)
{
  const TbNextOption *smallest = NULL;

  if (next->wish.kind == TB_WISH_FORGIVING)
    return NULL;
  for (guint i = 0; i < next->options->len; i++)
    {
      const TbNextOption *option = g_ptr_array_index (next->options, i);

      if (option->reach == TB_REACH_MET && (!smallest || option->effort < smallest->effort))
        smallest = option;
    }
  return smallest;
}

static int
compare_places (gconstpointer a, gconstpointer b)
{
  return tb_next_option_compare (*(TbNextOption *const *) a, *(TbNextOption *const *) b);
}

static gboolean
is_met (const TbNext *next)
{
  return fabs (next->now - next->target) <= TB_WISH_TOLERANCE
         || (next->wish.kind == TB_WISH_ROLL && next->now <= next->target);
}

static double
value_reaimed (const TbNext *next, TbThrower *thrower)
{
  TbShot shot = next->start->shot;
  TbMeasures measures;

  if (next->status != TB_OK || !tb_wish_reaims (&next->wish) || !tb_pocket_reaim (thrower, &shot, &measures))
    return NAN;
  return tb_wish_value (&next->wish, thrower, &shot, &measures);
}

static TbNext *
next_new (TbSetup *start, const TbWish *wish)
{
  TbNext *next = g_new0 (TbNext, 1);
  g_autoptr (TbThrower) thrower = tb_thrower_new ();

  g_atomic_ref_count_init (&next->ref_count);
  next->wish = *wish;
  next->start = tb_setup_ref (start);
  next->options = g_ptr_array_new_with_free_func ((GDestroyNotify) tb_next_option_unref);
  next->status = tb_thrower_throw (thrower, &start->shot, &next->start_measures);
  next->now = tb_wish_value (wish, thrower, &start->shot, &next->start_measures);
  next->target = tb_wish_target (wish, &start->shot.assumed, next->now);
  next->reaimed = value_reaimed (next, thrower);
  next->met = next->status == TB_OK && is_met (next);
  next->throws = thrower->throws;
  return next;
}

/* The work, and who is told. */
typedef struct Search
{
  TbNext *next;
  GArray *tasks;     /* of NextTask */
  TbNextBall *balls; /* owned copies */
  guint n_balls;
  guint threads;
  gint taken;           /* next task, atomic */
  gint throws;          /* atomic */
  TbNextOption **found; /* one a task, or NULL */
  GCancellable *cancellable;
  GMainContext *context; /* of those who are told; NULL if nobody is */
  TbNextProgress progress;
  gpointer progress_data;
} Search;

static void
search_add (Search *search, const TbKnob *knob, const TbNextBall *ball)
{
  NextTask task = { knob, ball };

  if (next_task_makes_sense (search->next, &task))
    g_array_append_val (search->tasks, task);
}

static void
search_add_all (Search *search)
{
  for (const TbKnob *knob = tb_knob_table; knob->name; knob++)
    if (knob->kind != TB_KNOB_OTHER_BALL)
      search_add (search, knob, NULL);
    else
      for (guint i = 0; i < search->n_balls; i++)
        search_add (search, knob, &search->balls[i]);
}

static void
search_take_balls (Search *search, const TbNextQuestion *question)
{
  search->balls = g_memdup2 (question->balls, question->n_balls * sizeof *question->balls);
  search->n_balls = question->n_balls;
  for (guint i = 0; i < search->n_balls; i++)
    {
      search->balls[i].id = g_strdup (search->balls[i].id);
      search->balls[i].name = g_strdup (search->balls[i].name);
    }
}

static Search *
search_new (const TbNextQuestion *question, GCancellable *cancellable)
{
  Search *search = g_new0 (Search, 1);

  search->next = next_new (question->start, question->wish);
  search->threads = question->threads;
  search->cancellable = cancellable ? g_object_ref (cancellable) : NULL;
  search->tasks = g_array_new (FALSE, FALSE, sizeof (NextTask));
  search_take_balls (search, question);
  if (search->next->status == TB_OK && !search->next->met)
    search_add_all (search);
  search->found = g_new0 (TbNextOption *, search->tasks->len);
  return search;
}

static void
search_free (Search *search)
{
  for (guint i = 0; i < search->tasks->len; i++)
    g_clear_pointer (&search->found[i], tb_next_option_unref);
  for (guint i = 0; i < search->n_balls; i++)
    {
      g_free ((char *) search->balls[i].id);
      g_free ((char *) search->balls[i].name);
    }
  g_clear_pointer (&search->next, tb_next_unref);
  g_array_unref (search->tasks);
  g_free (search->balls);
  g_free (search->found);
  g_clear_object (&search->cancellable);
  g_clear_pointer (&search->context, g_main_context_unref);
  g_free (search);
}

G_DEFINE_AUTOPTR_CLEANUP_FUNC (Search, search_free)

/* News of one option on its way to the main context. */
typedef struct News
{
  TbNext *next;
  TbNextOption *option;
  GCancellable *cancellable;
  TbNextProgress progress;
  gpointer data;
} News;

static gboolean
tell (gpointer data)
{
  News *news = data;

  if (!g_cancellable_is_cancelled (news->cancellable))
    news->progress (news->next, news->option, news->data);
  return G_SOURCE_REMOVE;
}

static void
news_free (gpointer data)
{
  News *news = data;

  tb_next_option_unref (news->option);
  tb_next_unref (news->next);
  g_clear_object (&news->cancellable);
  g_free (news);
}

/* From the working thread. A source of its own: g_main_context_invoke() would tell it here while the caller's
 * context is between two turns. */
static void
send_news (Search *search, TbNextOption *option)
{
  g_autoptr (GSource) source = NULL;
  News *news;

  if (!search->progress)
    return;
  news = g_new (News, 1);
  news->next = tb_next_ref (search->next);
  news->option = tb_next_option_ref (option);
  news->cancellable = search->cancellable ? g_object_ref (search->cancellable) : NULL;
  news->progress = search->progress;
  news->data = search->progress_data;
  source = g_idle_source_new ();
  g_source_set_priority (source, G_PRIORITY_DEFAULT);
  g_source_set_callback (source, tell, news, news_free);
  g_source_attach (source, search->context);
}

static gpointer
work (gpointer data)
{
  Search *search = data;
  g_autoptr (TbThrower) thrower = tb_thrower_new ();

  while (!g_cancellable_is_cancelled (search->cancellable))
    {
      guint index = (guint) g_atomic_int_add (&search->taken, 1);

      if (index >= search->tasks->len)
        break;
      search->found[index] = next_task_solve (search->next, &g_array_index (search->tasks, NextTask, index),
                                              thrower, search->cancellable);
      if (search->found[index])
        send_news (search, search->found[index]);
    }
  g_atomic_int_add (&search->throws, (gint) thrower->throws);
  return NULL;
}

/* Runs the search and takes its outcome; NULL if cancelled. */
static TbNext *
search_run (Search *search)
{
  TbNext *next = search->next;

  tb_work_together ("tenboard-next", work, search,
                    search->threads ? search->threads : g_get_num_processors ());
  if (g_cancellable_is_cancelled (search->cancellable))
    return NULL;
  for (guint i = 0; i < search->tasks->len; i++)
    if (search->found[i])
      g_ptr_array_add (next->options, g_steal_pointer (&search->found[i]));
  g_ptr_array_sort (next->options, compare_places);
  next->throws += (guint) search->throws;
  return tb_next_ref (next);
}

TbNext *
tb_next_find (const TbNextQuestion *question, GCancellable *cancellable)
{
  g_autoptr (Search) search = search_new (question, cancellable);

  return search_run (search);
}

static void
run_task (GTask *task, gpointer source, gpointer data, GCancellable *cancellable)
{
  tb_task_answer (task, search_run (data), (GDestroyNotify) tb_next_unref);
}

void
tb_next_find_async (const TbNextQuestion *question,
                    GCancellable *cancellable,
                    GAsyncReadyCallback callback,
                    gpointer user_data)
{
  g_autoptr (GTask) task = g_task_new (NULL, cancellable, callback, user_data);
  Search *search = search_new (question, cancellable);

  search->context = g_main_context_ref_thread_default ();
  search->progress = question->progress;
  search->progress_data = user_data;
  g_task_set_task_data (task, search, (GDestroyNotify) search_free);
  tb_task_run (task, run_task);
}

TbNext *
tb_next_find_finish (GAsyncResult *result, GError **error)
{
  return g_task_propagate_pointer (G_TASK (result), error);
}
