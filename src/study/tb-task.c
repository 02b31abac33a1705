/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "tb-task.h"

void
tb_work_together (const char *name, GThreadFunc work, gpointer data, guint threads)
{
  g_autoptr (GPtrArray) helpers = g_ptr_array_new ();

  for (guint i = 1; i < threads; i++)
    {
      GThread *thread = g_thread_try_new (name, work, data, NULL);

      if (thread)
        g_ptr_array_add (helpers, thread);
    }
  work (data);
  for (guint i = 0; i < helpers->len; i++)
    g_thread_join (g_ptr_array_index (helpers, i));
}

/* How many are begun and not at their end. */
static GMutex counting;
static GCond counted;
static int at_work;

static void
count (int change)
{
  g_mutex_lock (&counting);
  at_work += change;
  g_cond_broadcast (&counted);
  g_mutex_unlock (&counting);
}

typedef struct Order
{
  GTaskThreadFunc work;
} Order;

static void
work_counted (GTask *task, gpointer source, gpointer data, GCancellable *cancellable)
{
  const Order *order = g_object_get_data (G_OBJECT (task), "tb-order");

  order->work (task, source, data, cancellable);
  count (-1);
}

void
tb_task_run (GTask *task, GTaskThreadFunc work)
{
  Order *order = g_new (Order, 1);

  order->work = work;
  g_object_set_data_full (G_OBJECT (task), "tb-order", order, g_free);
  count (1);
  g_task_run_in_thread (task, work_counted);
}

gboolean
tb_task_wait_for_all (double seconds)
{
  gint64 until = g_get_monotonic_time () + (gint64) (seconds * G_USEC_PER_SEC);
  gboolean none;

  g_mutex_lock (&counting);
  while (at_work > 0 && g_cond_wait_until (&counted, &counting, until))
    ;
  none = at_work == 0;
  g_mutex_unlock (&counting);
  return none;
}

void
tb_task_answer (GTask *task, gpointer result, GDestroyNotify destroy)
{
  if (result)
    g_task_return_pointer (task, result, destroy);
  else
    g_task_return_new_error (task, G_IO_ERROR, G_IO_ERROR_CANCELLED, "Cancelled");
}
