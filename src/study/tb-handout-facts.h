/* What a page to take home tells: the two throws, why they differ, what to practise, what else to try.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "tb-cautions.h"
#include "tb-next.h"
#include "tb-practice.h"
#include "tb-study.h"
#include "tb-why.h"

G_BEGIN_DECLS

/* Immutable and counted. */
typedef struct TbHandoutFacts
{
  gatomicrefcount ref_count;
  TbStudy *study;
  TbRun *run[TB_N_SIDES];
  TbWhy *why;
  TbPractice *practice;
  TbNext *next; /* from "after" on */
  gboolean metric;
} TbHandoutFacts;

typedef struct TbHandoutAsk
{
  TbStudy *study;          /* both sides of which can be thrown */
  const TbWish *wish;      /* NULL: into the pocket, or, where "after" is in it already, more forgiving */
  const TbNextBall *balls; /* that could be thrown instead; NULL for none */
  guint n_balls;
  gboolean metric;
} TbHandoutAsk;

/* Takes some tenths of a second. NULL if cancelled. */
TbHandoutFacts *tb_handout_facts_new (const TbHandoutAsk *ask, GCancellable *cancellable);
TbHandoutFacts *tb_handout_facts_ref (TbHandoutFacts *facts);
void tb_handout_facts_unref (TbHandoutFacts *facts);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (TbHandoutFacts, tb_handout_facts_unref)

/* The same in another thread; the callback comes in the caller's main context. */
void tb_handout_facts_new_async (const TbHandoutAsk *ask,
                                 GCancellable *cancellable,
                                 GAsyncReadyCallback callback,
                                 gpointer user_data);
/* NULL if cancelled. */
TbHandoutFacts *tb_handout_facts_new_finish (GAsyncResult *result, GError **error);

/* The best option of each toolbox that meets the wish, or else comes nearer: of TbNextOption. */
GPtrArray *tb_handout_facts_best (const TbHandoutFacts *facts);
/* What the changes and these options call for, each once: of TbCaution, borrowed. */
GPtrArray *tb_handout_facts_cautions (const TbHandoutFacts *facts, const GPtrArray *options);

G_END_DECLS
