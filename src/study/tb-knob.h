/* What a bowler can turn between one throw and the next, and what each costs.
 *
 * Efforts are assumed: 1 is a small change that a practised bowler makes on the next shot, 2 takes some
 * shots, 4 takes practice, 8 takes weeks or another ball. Limits are what is usual, not what is possible;
 * they are assumed as well.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "tb-setup.h"

G_BEGIN_DECLS

typedef enum TbKnobGroup
{
  TB_KNOB_DELIVERY,
  TB_KNOB_LINE,
  TB_KNOB_BALL,
  TB_N_KNOB_GROUPS
} TbKnobGroup;
const char *tb_knob_group_name (TbKnobGroup group);  /* "delivery", "line", "ball" */
const char *tb_knob_group_label (TbKnobGroup group); /* for people, untranslated */

typedef enum TbKnobKind
{
  TB_KNOB_SLIDE,            /* one number, which may take a second along */
  TB_KNOB_SURFACE_AND_LINE, /* each usual finish, with feet and target moved to suit */
  TB_KNOB_COVER,            /* each other kind of cover */
  TB_KNOB_OTHER_BALL        /* a ball of the library, with feet and target moved to suit */
} TbKnobKind;

/* When a change may be made. */
typedef enum TbOccasion
{
  TB_IN_PRACTICE,
  TB_BETWEEN_GAMES,
  TB_IN_COMPETITION,
  TB_N_OCCASIONS
} TbOccasion;
const char *tb_occasion_name (TbOccasion occasion); /* in JSON */
const char *tb_occasion_label (TbOccasion occasion);

typedef enum TbRule
{
  TB_RULE_ALLOWED,
  TB_RULE_ASK, /* local rules or the house decide */
  TB_RULE_NOT_ALLOWED,
  TB_N_RULES
} TbRule;
const char *tb_rule_name (TbRule rule);
const char *tb_rule_label (TbRule rule);

/* What several knobs have in common; all texts untranslated. */
typedef struct TbKnobCost
{
  const char *time; /* what it costs, and whether it can be undone */
  TbRule rule[TB_N_OCCASIONS];
  const char *rules; /* where the rules come from; NULL where there is nothing to say */
} TbKnobCost;

typedef struct TbKnob
{
  const char *name;  /* in JSON */
  const char *label; /* for people, untranslated */
  TbKnobGroup group;
  TbKnobKind kind;
  const char *field;   /* TB_KNOB_SLIDE: whose number it is; else NULL */
  const char *second;  /* goes along with it, or NULL */
  double ratio;        /* of the second's move to the first's */
  double low, high;    /* usual limits of the number, in the field's unit */
  double reach;        /* how far from where it is now it is turned at most */
  double effort;       /* of a change of one unit */
  double effort_fixed; /* of any change at all */
  const TbKnobCost *cost;
  const char *caution; /* untranslated; NULL for none */
} TbKnob;

/* Ends with a NULL name. */
extern const TbKnob tb_knob_table[];
const TbKnob *tb_knob_find (const char *name);
/* NULL if it has none. */
const TbField *tb_knob_field (const TbKnob *knob);
const TbField *tb_knob_second (const TbKnob *knob);
/* The number as a shot has it, in the field's unit. */
double tb_knob_value (const TbKnob *knob, const TbShot *shot);
/* Turns it there; the second goes along. FALSE if a field will not have it. */
gboolean tb_knob_turn (const TbKnob *knob, TbShot *shot, double value);
/* Between which values it is turned from here. */
void tb_knob_range (const TbKnob *knob, const TbShot *shot, double *low, double *high);
/* Assumed size of a change for a person, and its word ("small"), untranslated. */
double tb_knob_effort (const TbKnob *knob, double change);
const char *tb_effort_word (double effort);
/* What the scale means, for people, untranslated. */
const char *tb_effort_help (void);

G_END_DECLS
