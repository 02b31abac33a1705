/* A lane pattern: what it is called, how it was described, and the film that follows.
 *
 * Immutable once made, and counted, so that threads and snapshots can share it.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>
#include "tb-strips.h"

G_BEGIN_DECLS

/* The ways a pattern can be described. The grid is always there; the description is kept for saving and editing. */
typedef enum TbPatternKind
{
  TB_PATTERN_PROFILE, /* by the numbers of a house-style pattern: TbOilProfile */
  TB_PATTERN_TABLE,   /* the film itself, cell by cell */
  TB_PATTERN_STRIPS   /* an ordered list of strips laid going out or coming back: TbStrip */
} TbPatternKind;

typedef struct TbPattern
{
  gatomicrefcount ref_count;
  char *id;   /* of a built-in or user document; NULL for one that only stands in a study */
  char *name; /* for people */
  TbPatternKind kind;
  TbOilProfile profile; /* TB_PATTERN_PROFILE */
  guint n_strips;       /* TB_PATTERN_STRIPS */
  TbStrip *strips;      /* likewise; else NULL */
  TbOil oil;
} TbPattern;

/* NULL and *status set if the numbers make no film. id may be NULL. */
TbPattern *tb_pattern_new_profile (const char *id, const char *name, const TbOilProfile *profile, TbStatus *status);
TbPattern *tb_pattern_new_table (const char *id, const char *name, const TbOil *oil, TbStatus *status);
/* TB_ERROR_OUT_OF_RANGE for more than TB_STRIPS_MAX strips as well. */
TbPattern *tb_pattern_new_strips (const char *id, const char *name, const TbStrip *strips, guint count, TbStatus *status);
/* The same description and film under another name. */
TbPattern *tb_pattern_renamed (const TbPattern *pattern, const char *id, const char *name);
TbPattern *tb_pattern_ref (TbPattern *pattern);
void tb_pattern_unref (TbPattern *pattern);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (TbPattern, tb_pattern_unref)

G_END_DECLS
