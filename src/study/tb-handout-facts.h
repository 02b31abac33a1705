/* What a page to take home tells: the two throws, why they differ, what to practise; and what else to try.
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
  gboolean metric;
} TbHandoutFacts;

/* Both sides of the study can be thrown. Takes some hundredths of a second, more if much has changed. NULL if
 * cancelled. */
TbHandoutFacts *tb_handout_facts_new (TbStudy *study, gboolean metric, GCancellable *cancellable);
TbHandoutFacts *tb_handout_facts_ref (TbHandoutFacts *facts);
void tb_handout_facts_unref (TbHandoutFacts *facts);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (TbHandoutFacts, tb_handout_facts_unref)

/* The same in another thread; the callback comes in the caller's main context. */
void tb_handout_facts_new_async (TbStudy *study,
                                 gboolean metric,
                                 GCancellable *cancellable,
                                 GAsyncReadyCallback callback,
                                 gpointer user_data);
/* NULL if cancelled. */
TbHandoutFacts *tb_handout_facts_new_finish (GAsyncResult *result, GError **error);

/* What to ask for next when nobody says: into the pocket; or, where "after" is in it already, more angle at
 * the pins. */
TbWish tb_handout_wish (const TbRun *after);
/* The best option of each toolbox that meets the wish, or else comes nearer: of TbNextOption. */
GPtrArray *tb_handout_best_options (const TbNext *next);
/* What the changes and these options (NULL for none) call for, each once: of TbCaution, borrowed. */
GPtrArray *tb_handout_facts_cautions (const TbHandoutFacts *facts, const GPtrArray *options);

G_END_DECLS
