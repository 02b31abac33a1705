/* The field tables: every input of a shot, once. Files, --set, ranges, help and controls are all driven by them.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <stdbool.h>
#include <stddef.h>
#include "tb-shot.h"

typedef enum TbGroup
{
  TB_GROUP_DELIVERY, /* fields of TbDelivery */
  TB_GROUP_BALL,     /* of TbBall */
  TB_GROUP_LANE,     /* of TbLane */
  TB_N_GROUPS
} TbGroup;
/* "delivery", "ball", "lane" */
const char *tb_group_name (TbGroup group);

typedef enum TbFieldKind
{
  TB_FIELD_REAL,
  TB_FIELD_CHOICE
} TbFieldKind;

typedef struct TbChoice
{
  const char *name;  /* in files */
  const char *label; /* for people, untranslated */
} TbChoice;

typedef struct TbField
{
  TbGroup group;
  const char *name;  /* as in files and --set */
  const char *label; /* for people, untranslated */
  const char *unit;  /* for people, untranslated; "" where there is none */
  const char *help;  /* one sentence for people, untranslated */
  TbFieldKind kind;
  size_t offset; /* in the group's struct; a double, or an int for a choice */
  double (*to_si) (double);
  double (*from_si) (double);
  double min, max; /* in the field's unit; inclusive */
  double step, page;
  double standard; /* default value */
  int digits;      /* after the point, for people */
  const TbChoice *choices; /* ends with a NULL name */
  /* Words that stand for a value of a real field ("polish"); ends with a NULL name; may be NULL. */
  const struct TbWord *words;
  /* Set: this field is another way of setting the one it names, and is not written to files. */
  const char *alias_of;
  /* Set: files may leave the field out, which stands for its default. */
  bool optional;
} TbField;

typedef struct TbWord
{
  const char *name;
  const char *label;
  double value; /* in the field's unit */
} TbWord;

/* All fields, by group; ends with a NULL name. */
extern const TbField tb_field_table[];
int tb_field_count (void);
/* NULL if the group has no such field. */
const TbField *tb_field_find (TbGroup group, const char *name);

/* `object` is the group's struct. A choice reads as its index. */
double tb_field_get (const TbField *field, const void *object);
/* Sets a value in the field's unit, and what follows from it (a cover kind brings its typical friction; a grit its
 * roughness). On an error nothing is changed. */
TbStatus tb_field_set (const TbField *field, void *object, double value);
/* The same for a choice or a word. TB_ERROR_UNKNOWN_CHOICE if the field does not know it. */
TbStatus tb_field_set_word (const TbField *field, void *object, const char *word);
/* The name of a choice's value, or of a word's; NULL if it has none. */
const char *tb_field_word (const TbField *field, const void *object);
/* Whether a value is inside the field's range: TB_OK or what is wrong with it. */
TbStatus tb_field_check (const TbField *field, double value);
/* Sets every field of a group to its default. */
void tb_field_reset_group (TbGroup group, void *object);
/* The group's struct inside a shot. */
void *tb_shot_group (TbShot *shot, TbGroup group);
const void *tb_shot_group_const (const TbShot *shot, TbGroup group);
