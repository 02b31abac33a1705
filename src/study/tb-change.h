/* What differs between two setups, input by input; and a shot that takes over some of it.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "tb-setup.h"

G_BEGIN_DECLS

typedef enum TbChangeKind
{
  TB_CHANGE_FIELD, /* one field, but for those that follow from another kind of cover */
  TB_CHANGE_COVER, /* another kind of cover, with the friction that comes with it */
  TB_CHANGE_HOLES,
  TB_CHANGE_PATTERN,   /* another pattern, as worn as it is */
  TB_CHANGE_WEAR,      /* the same pattern, after other games on it */
  TB_CHANGE_ASSUMED,   /* assumed constants */
  TB_CHANGE_OPTIONS,   /* parts of the model on or off */
  TB_CHANGE_BALL,      /* all of the ball: its parts cannot be mixed with the other ball's */
  TB_CHANGE_EVERYTHING /* nothing can be mixed */
} TbChangeKind;

typedef struct TbChange
{
  TbChangeKind kind;
  const TbField *field; /* TB_CHANGE_FIELD and TB_CHANGE_COVER; else NULL */
} TbChange;

#define TB_MAX_CHANGES 60

/* The changes from one setup to another, in the order of the field table; the count is returned. Names (of a
 * ball, a bowler) are no change. */
guint tb_changes_find (const TbSetup *before, const TbSetup *after, TbChange changes[TB_MAX_CHANGES]);
/* Puts all changes to the ball together as one; or all there are. Returns the new count. */
guint tb_changes_merge_ball (TbChange changes[TB_MAX_CHANGES], guint count);
guint tb_changes_merge_all (TbChange changes[TB_MAX_CHANGES], guint count);
/* Takes one change over from another setup. */
void tb_change_apply (const TbChange *change, const TbSetup *from, TbShot *shot);
/* In JSON: the field's name, or "holes", "pattern", "games_played", "assumed", "options", "ball",
 * "everything". */
const char *tb_change_name (const TbChange *change);
TbGroup tb_change_group (const TbChange *change);
/* A short name of what was changed: a field's label, or what there is no field for. Translated, borrowed. */
const char *tb_change_label (const TbChange *change);
/* What has changed, as the beginning of a sentence: "2 mph more". Translated; free it. */
char *tb_change_phrase (const TbChange *change, const TbSetup *before, const TbSetup *after, gboolean metric);

G_END_DECLS
