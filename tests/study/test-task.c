/* The end of a program waits for what is at work in threads.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include <glib.h>

#include "tb-task.h"

#define TASKS 3

static GMutex gate;
static gint through;

/* Works until it is let through. */
static void
work (GTask *task, gpointer source, gpointer data, GCancellable *cancellable)
{
  g_mutex_lock (&gate);
  g_mutex_unlock (&gate);
  g_atomic_int_inc (&through);
  g_task_return_boolean (task, TRUE);
}

static void
test_waits (void)
{
  g_assert_true (tb_task_wait_for_all (0));
  g_mutex_lock (&gate);
  for (int i = 0; i < TASKS; i++)
    {
      g_autoptr (GTask) task = g_task_new (NULL, NULL, NULL, NULL);

      tb_task_run (task, work);
    }
  g_assert_false (tb_task_wait_for_all (0.05));
  g_mutex_unlock (&gate);
  g_assert_true (tb_task_wait_for_all (60));
  g_assert_cmpint (g_atomic_int_get (&through), ==, TASKS);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/task/end-waits", test_waits);
  return g_test_run ();
}
