/* What a clinic's talk is about, a step at a time: from a study, or from a lesson. Immutable and counted.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "tb-lesson.h"

G_BEGIN_DECLS

#define TB_TALK_MAX_CHOICES 6

typedef struct TbTalkStep
{
  TbStudy *study;
  char *name; /* translated; "" for none */
  char *text; /* said before the throw; NULL for none */
  char *question;
  GPtrArray *choices;         /* of char *: what the room votes on, translated */
  int right;                  /* place of the right choice; −1 where the throws do not tell */
  char *explain;              /* said after the throw; NULL: the difference is split (tb-why.h) */
  char *caution;              /* NULL for none */
  char *notes;                /* for the presenter alone; NULL for none */
  const TbMeasureInfo *asked; /* which measure the question is about */
} TbTalkStep;

typedef struct TbTalk
{
  gatomicrefcount ref_count;
  char *name;
  GPtrArray *steps; /* of TbTalkStep, at least one */
} TbTalk;

/* More, the same, or fewer boards hooked. */
TbTalk *tb_talk_from_study (TbStudy *study);
/* Throws every step, on worn lanes too: for a thread. NULL and a sentence that names the step. */
TbTalk *tb_talk_from_lesson (const TbLesson *lesson, TbLibrary *library, GError **error);
/* The same in a thread, with the library's documents as they are on disk. */
void tb_talk_from_lesson_async (TbLesson *lesson,
                                GCancellable *cancellable,
                                GAsyncReadyCallback callback,
                                gpointer user_data);
TbTalk *tb_talk_from_lesson_finish (GAsyncResult *result, GError **error);
TbTalk *tb_talk_ref (TbTalk *talk);
void tb_talk_unref (TbTalk *talk);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (TbTalk, tb_talk_unref)
/* Borrowed. */
const TbTalkStep *tb_talk_step (const TbTalk *talk, guint step);

/* What somebody said to be careful of about the changed inputs of a study: "" where there is nothing; free
 * it. */
char *tb_talk_cautions (const TbStudy *study);

G_END_DECLS
