/* The way back: snapshots of a study, and which changes belong together.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "tb-study.h"

G_BEGIN_DECLS

typedef struct TbHistory TbHistory;

TbHistory *tb_history_new (void);
void tb_history_free (TbHistory *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (TbHistory, tb_history_free)

void tb_history_clear (TbHistory *self);
/* A change from `old` is about to be made at `now` (µs, monotonic). Changes with the same key merge into one
 * step if they lie in one gesture or follow each other quickly; key NULL never merges. */
void tb_history_record (TbHistory *self, TbStudy *old, const char *key, gint64 now);
void tb_history_begin_gesture (TbHistory *self);
void tb_history_end_gesture (TbHistory *self);

gboolean tb_history_can_undo (const TbHistory *self);
gboolean tb_history_can_redo (const TbHistory *self);
/* Takes a step; `present` is kept for the way forth. The result is the caller's; NULL if there is no step. */
TbStudy *tb_history_undo (TbHistory *self, TbStudy *present);
TbStudy *tb_history_redo (TbHistory *self, TbStudy *present);

G_END_DECLS
