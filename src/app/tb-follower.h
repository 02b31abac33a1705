/* Work that follows the session: begun a moment after the last change, in a thread, only while its page is
 * seen, and dropped when the next change comes.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>
#include "tb-session.h"

G_BEGIN_DECLS

typedef struct TbFollower TbFollower;

typedef struct TbFollowerWork
{
  /* In the main thread: all that the work needs, as it is now. */
  gpointer (*prepare) (GtkWidget *page);
  void (*free_prepared) (gpointer prepared);
  /* In a thread; NULL if cancelled. */
  gpointer (*work) (gpointer prepared, GCancellable *cancellable);
  void (*free_result) (gpointer result);
  /* In the main thread; takes the result. */
  void (*done) (GtkWidget *page, gpointer result);
} TbFollowerWork;

/* page and session must outlive it. work is borrowed for good. */
TbFollower *tb_follower_new (GtkWidget *page, TbSession *session, const TbFollowerWork *work);
/* Nothing is told any more. Call it when the page is disposed of. */
void tb_follower_free (TbFollower *self);
/* Something else than the session has changed. */
void tb_follower_again (TbFollower *self);
/* Whether a result is still to come; for tests. */
gboolean tb_follower_is_busy (TbFollower *self);

G_END_DECLS
