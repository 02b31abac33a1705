/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "tb-handout-work.h"

#include "tb-next-balls.h"
#include "tb-weak.h"

struct _TbHandoutWork
{
  GObject parent_instance;

  TbSession *session;
  GCancellable *cancellable; /* of what is under way; else NULL */
  TbHandoutFacts *facts;
  TbNext *next;
};

enum
{
  FACTS,
  NEXT,
  N_SIGNALS
};

static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (TbHandoutWork, tb_handout_work, G_TYPE_OBJECT)

/* Whether an answer is to the question that was asked last. */
static gboolean
is_wanted (TbHandoutWork *self, GAsyncResult *result)
{
  return self != NULL && self->cancellable != NULL
         && g_task_get_cancellable (G_TASK (result)) == self->cancellable;
}

static void
on_next (GObject *source, GAsyncResult *result, gpointer data)
{
  g_autoptr (TbHandoutWork) self = tb_weak_take (data);
  g_autoptr (TbNext) next = tb_next_find_finish (result, NULL);

  if (next == NULL || !is_wanted (self, result))
    return;
  g_clear_object (&self->cancellable);
  g_clear_pointer (&self->next, tb_next_unref);
  self->next = g_steal_pointer (&next);
  g_signal_emit (self, signals[NEXT], 0);
}

/* The page does not wait for what else to try: for what was wished in the window, seen from the throw that it
 * was wished for, or else for what most bowlers want. */
static void
find_next (TbHandoutWork *self)
{
  const TbRun *after = self->facts->run[TB_SIDE_AFTER];
  TbWish wish;
  TbSetup *wished_from = tb_session_get_wish (self->session, &wish);
  TbSetup *start = wished_from != NULL ? wished_from : after->setup;
  g_autoptr (GArray) balls = tb_next_balls (tb_session_get_library (self->session), start);

  if (wished_from == NULL)
    wish = tb_handout_wish (after);
  tb_next_find_async (&(TbNextQuestion){ .start = start,
                                         .wish = &wish,
                                         .balls = (const TbNextBall *) (gconstpointer) balls->data,
                                         .n_balls = balls->len },
                      self->cancellable, on_next, tb_weak_new (self));
}

static void
on_facts (GObject *source, GAsyncResult *result, gpointer data)
{
  g_autoptr (TbHandoutWork) self = tb_weak_take (data);
  g_autoptr (TbHandoutFacts) facts = tb_handout_facts_new_finish (result, NULL);
  g_autoptr (TbHandoutFacts) old_facts = NULL;
  g_autoptr (TbNext) old_next = NULL;

  if (facts == NULL || !is_wanted (self, result))
    return;
  /* Whoever is told may still point to the old ones. */
  old_facts = g_steal_pointer (&self->facts);
  old_next = g_steal_pointer (&self->next);
  self->facts = g_steal_pointer (&facts);
  g_signal_emit (self, signals[FACTS], 0);
  if (is_wanted (self, result))
    find_next (self);
}

void
tb_handout_work_start (TbHandoutWork *self)
{
  gboolean metric = tb_session_get_units (self->session) == TB_UNITS_METRIC;

  tb_handout_work_cancel (self);
  self->cancellable = g_cancellable_new ();
  tb_handout_facts_new_async (tb_session_get_study (self->session), metric, self->cancellable, on_facts,
                              tb_weak_new (self));
}

void
tb_handout_work_cancel (TbHandoutWork *self)
{
  if (self->cancellable != NULL)
    g_cancellable_cancel (self->cancellable);
  g_clear_object (&self->cancellable);
}

gboolean
tb_handout_work_is_busy (TbHandoutWork *self)
{
  return self->cancellable != NULL;
}

const TbHandoutFacts *
tb_handout_work_get_facts (TbHandoutWork *self)
{
  return self->facts;
}

const TbNext *
tb_handout_work_get_next (TbHandoutWork *self)
{
  return self->next;
}

TbHandoutWork *
tb_handout_work_new (TbSession *session)
{
  TbHandoutWork *self = g_object_new (TB_TYPE_HANDOUT_WORK, NULL);

  self->session = g_object_ref (session);
  return self;
}

static void
tb_handout_work_dispose (GObject *object)
{
  TbHandoutWork *self = TB_HANDOUT_WORK (object);

  tb_handout_work_cancel (self);
  g_clear_object (&self->session);
  G_OBJECT_CLASS (tb_handout_work_parent_class)->dispose (object);
}

static void
tb_handout_work_finalize (GObject *object)
{
  TbHandoutWork *self = TB_HANDOUT_WORK (object);

  g_clear_pointer (&self->facts, tb_handout_facts_unref);
  g_clear_pointer (&self->next, tb_next_unref);
  G_OBJECT_CLASS (tb_handout_work_parent_class)->finalize (object);
}

static void
tb_handout_work_class_init (TbHandoutWorkClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = tb_handout_work_dispose;
  G_OBJECT_CLASS (klass)->finalize = tb_handout_work_finalize;
  signals[FACTS]
      = g_signal_new ("facts", TB_TYPE_HANDOUT_WORK, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
  signals[NEXT]
      = g_signal_new ("next", TB_TYPE_HANDOUT_WORK, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
}

static void
tb_handout_work_init (TbHandoutWork *self)
{
}
