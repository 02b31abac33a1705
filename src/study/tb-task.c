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

void
tb_task_answer (GTask *task, gpointer result, GDestroyNotify destroy)
{
  if (result)
    g_task_return_pointer (task, result, destroy);
  else
    g_task_return_new_error (task, G_IO_ERROR, G_IO_ERROR_CANCELLED, "Cancelled");
}
