/* Work in threads: what every long search does the same way.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gio/gio.h>

G_BEGIN_DECLS

/* Runs work (data) in this thread and in as many more as can be had, `threads` in all at the most. Returns
 * when all have; what they give is not looked at. `name` is the threads' own, for a debugger. */
void tb_work_together (const char *name, GThreadFunc work, gpointer data, guint threads);

/* g_task_run_in_thread(), so that the end of the program can wait for it: a thread that is still at work while what it
 * reads is taken away would crash. */
void tb_task_run (GTask *task, GTaskThreadFunc work);
/* Waits until nothing that tb_task_run() began is at work, but not for longer than so many seconds. Whether nothing
 * is. */
gboolean tb_task_wait_for_all (double seconds);

/* Answers a task with what its work gave, or, where that is NULL, with G_IO_ERROR_CANCELLED. Takes the
 * result. */
void tb_task_answer (GTask *task, gpointer result, GDestroyNotify destroy);

G_END_DECLS
