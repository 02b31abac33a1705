/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "tb-follower.h"

#include "tb-task.h"

/* Changes that follow each other within this are one, ms. */
#define SETTLE_MS 120

struct TbFollower
{
  GtkWidget *page;
  TbSession *session;
  const TbFollowerWork *work;
  GCancellable *cancellable; /* of the work that is being done; else NULL */
  guint timeout;
  gboolean stale; /* what the page shows is not of the session as it is */
};

/* What a thread is given. */
typedef struct Job
{
  TbFollower *follower; /* not to be touched once cancelled */
  const TbFollowerWork *work;
  gpointer prepared;
} Job;

static void
job_free (gpointer data)
{
  Job *job = data;

  job->work->free_prepared (job->prepared);
  g_free (job);
}

static void
run_job (GTask *task, gpointer page, gpointer data, GCancellable *cancellable)
{
  Job *job = data;
  gpointer result = job->work->work (job->prepared, cancellable);

  g_task_return_pointer (task, result, job->work->free_result);
}

static void
on_ready (GObject *page, GAsyncResult *result, gpointer user_data)
{
  GTask *task = G_TASK (result);
  Job *job = g_task_get_task_data (task);
  gboolean cancelled = g_cancellable_is_cancelled (g_task_get_cancellable (task));
  gpointer made = g_task_propagate_pointer (task, NULL);

  if (cancelled || made == NULL)
    {
      if (made != NULL)
        job->work->free_result (made);
      return;
    }
  g_clear_object (&job->follower->cancellable);
  job->work->done (GTK_WIDGET (page), made);
}

static gboolean
begin (gpointer data)
{
  TbFollower *self = data;
  Job *job = g_new0 (Job, 1);
  g_autoptr (GTask) task = NULL;

  self->timeout = 0;
  self->stale = FALSE;
  job->follower = self;
  job->work = self->work;
  job->prepared = self->work->prepare (self->page);
  self->cancellable = g_cancellable_new ();
  task = g_task_new (self->page, self->cancellable, on_ready, NULL);
  g_task_set_check_cancellable (task, FALSE);
  g_task_set_task_data (task, job, job_free);
  tb_task_run (task, run_job);
  return G_SOURCE_REMOVE;
}

static void
stop (TbFollower *self)
{
  g_clear_handle_id (&self->timeout, g_source_remove);
  g_cancellable_cancel (self->cancellable);
  g_clear_object (&self->cancellable);
}

void
tb_follower_again (TbFollower *self)
{
  stop (self);
  self->stale = TRUE;
  if (gtk_widget_get_mapped (self->page))
    self->timeout = g_timeout_add (SETTLE_MS, begin, self);
}

static void
on_map (TbFollower *self)
{
  if (self->stale && self->timeout == 0)
    self->timeout = g_idle_add (begin, self);
}

TbFollower *
tb_follower_new (GtkWidget *page, TbSession *session, const TbFollowerWork *work)
{
  TbFollower *self = g_new0 (TbFollower, 1);

  self->page = page;
  self->session = session;
  self->work = work;
  self->stale = TRUE;
  g_signal_connect_swapped (session, "changed", G_CALLBACK (tb_follower_again), self);
  g_signal_connect_swapped (page, "map", G_CALLBACK (on_map), self);
  return self;
}

void
tb_follower_free (TbFollower *self)
{
  stop (self);
  g_signal_handlers_disconnect_by_data (self->session, self);
  g_signal_handlers_disconnect_by_data (self->page, self);
  g_free (self);
}

gboolean
tb_follower_is_busy (TbFollower *self)
{
  return self->stale || self->timeout != 0 || self->cancellable != NULL;
}
