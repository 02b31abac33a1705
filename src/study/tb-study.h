/* A study: a before, an after and what was noted. Immutable and counted; a change makes a new one, so a list of them
 * is an undo history.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "tb-setup.h"

G_BEGIN_DECLS

typedef enum TbSide
{
  TB_SIDE_BEFORE,
  TB_SIDE_AFTER,
  TB_N_SIDES
} TbSide;

typedef struct TbStudy
{
  gatomicrefcount ref_count;
  TbSetup *side[TB_N_SIDES];
  char *title; /* for people; may be empty, never NULL */
  char *notes; /* likewise */
} TbStudy;

TbStudy *tb_study_new (TbSetup *before, TbSetup *after, const char *title, const char *notes);
TbStudy *tb_study_with_side (const TbStudy *study, TbSide side, TbSetup *setup);
TbStudy *tb_study_with_text (const TbStudy *study, const char *title, const char *notes);
/* Before and after change places. */
TbStudy *tb_study_swapped (const TbStudy *study);
gboolean tb_study_equal (const TbStudy *a, const TbStudy *b);
TbStudy *tb_study_ref (TbStudy *study);
void tb_study_unref (TbStudy *study);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (TbStudy, tb_study_unref)

G_END_DECLS
