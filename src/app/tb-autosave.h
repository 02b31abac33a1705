/* What was not saved survives the end of the program, whatever ends it.
 *
 * While a study has changes, a copy of it lies in a folder of its own under the user's data folder ("unsaved"), never
 * older than a few seconds. The program holds a lock on the folder, so that a copy whose lock is free belongs to a
 * program that is gone. Saving, undoing all changes and closing the window take the copy away.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "tb-session.h"

G_BEGIN_DECLS

#define TB_TYPE_AUTOSAVE (tb_autosave_get_type ())
G_DECLARE_FINAL_TYPE (TbAutosave, tb_autosave, TB, AUTOSAVE, GObject)

/* Keeps a copy of what the session has unsaved until the object is gone. */
TbAutosave *tb_autosave_new (TbSession *session);
/* Writes the copy now rather than in some seconds. FALSE if there is none afterwards, because nothing is unsaved or
 * because it could not be written (a warning says so, once; work goes on). */
gboolean tb_autosave_flush (TbAutosave *self);

/* A copy that a program left behind. */
typedef struct TbUnsaved
{
  char *folder;
  int lock;         /* descriptor; keeps the copy ours while the struct lives */
  TbStudy *study;
  TbStudy *original; /* as its file has it now; NULL if there is no such file */
  GFile *file;      /* where it was opened from or last saved to; NULL if nowhere */
} TbUnsaved;

/* All that can be read, oldest first; what cannot be read is left where it is. Nothing is removed. */
GPtrArray *tb_autosave_find (TbLibrary *library);
/* Opens it in a session, with its changes as one step that can be undone. */
void tb_unsaved_open (TbUnsaved *unsaved, TbSession *session);
/* Removes the copy. Another must have been written before. */
void tb_unsaved_remove (TbUnsaved *unsaved);
void tb_unsaved_free (TbUnsaved *unsaved);

G_END_DECLS
