/* A lesson: steps that each set up a before and an after, ask for a guess, and say afterwards what the throw showed.
 *
 * A document {"tenboard": "lesson", "version": 1, "id", "name", "note", "steps": [ … ]}. A step is an object of
 *
 *   "name", "text"     what the step is called, and what is said before the throw
 *   "before", "after"  changes to the built-in study, by key: "delivery.speed_mph": 19, "ball": "spare-plastic",
 *                      "lane.pattern": "long", … ; "after" begins where "before" ends
 *   "line"             "same" (as a rule), or "pocket": both are aimed at the pocket, the laydown held
 *   "ask"              {"question", "measure", "of", "choices"}: a measure as --numbers has it, of "before", "after" or
 *                      the "difference". Each choice is {"text", "above", "below"}; they follow each other from the
 *                      lowest number to the highest without a gap, so that exactly one is right whatever the throw shows.
 *                      Without choices the learner drags a marker to where the ball of "after" will be: the measure is
 *                      then board_at_arrows or board_at_pins.
 *   "claims"           what "explain" relies on: a list of {"measure", "of", "above", "below"}, in which at least one
 *                      bound is given. A lesson whose claim does not hold on its own throws is wrong.
 *   "explain"          said after the throw, with {before.NAME}, {after.NAME}, {difference.NAME} and, without its sign,
 *                      {size.NAME} replaced by this throw's numbers; NAME is a measure
 *   "caution"          what could hurt; may be left out
 *
 * What is right is never stored: it follows from the throw.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "tb-library.h"

G_BEGIN_DECLS

#define TB_LESSON_MAX_STEPS 20
#define TB_LESSON_MAX_CHOICES 6
#define TB_LESSON_MAX_CLAIMS 20
/* Changes of one side; there are not that many keys. */
#define TB_LESSON_MAX_CHANGES 100

/* Of which number a measure is taken. */
typedef enum TbLessonOf
{
  TB_LESSON_OF_BEFORE,
  TB_LESSON_OF_AFTER,
  TB_LESSON_OF_DIFFERENCE /* after − before */
} TbLessonOf;

/* A number that is asked for, or claimed to lie between bounds. */
typedef struct TbLessonNumber
{
  const TbMeasureInfo *measure;
  TbLessonOf of;
} TbLessonNumber;

typedef struct TbLessonClaim
{
  TbLessonNumber number;
  double above, below; /* in the measure's unit; −INFINITY and INFINITY where there is no bound */
} TbLessonClaim;

typedef struct TbLessonChoice
{
  char *text;
  double above, below; /* right if above < number ≤ below */
} TbLessonChoice;

typedef struct TbLessonStep
{
  char *name, *text, *explain;
  char *caution;      /* NULL for none */
  GPtrArray *changes[TB_N_SIDES]; /* of char *: a key and its value by turns */
  gboolean pocket;    /* both on their own pocket line */
  char *question;
  TbLessonNumber asked;
  GArray *choices;    /* of TbLessonChoice; none: a marker is dragged */
  GArray *claims;     /* of TbLessonClaim */
} TbLessonStep;

/* Immutable and counted. */
typedef struct TbLesson
{
  gatomicrefcount ref_count;
  char *id, *name;
  char *note;       /* what it is about, in a sentence; NULL for none */
  GPtrArray *steps; /* of TbLessonStep */
} TbLesson;

/* The error is a clause without the file's name. */
TbLesson *tb_lesson_from_text (const char *text, gsize length, GError **error);
/* A file anywhere. The error is a whole sentence. */
TbLesson *tb_lesson_load (const char *path, GError **error);
TbLesson *tb_lesson_ref (TbLesson *lesson);
void tb_lesson_unref (TbLesson *lesson);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (TbLesson, tb_lesson_unref)
/* The built-in lessons, in the order in which they are taught: a new array of TbLesson. */
GPtrArray *tb_lessons_builtin (void);
/* A text of a lesson for people: translated where it is one of ours. Never NULL. */
const char *tb_lesson_display (const char *text);
/* All texts of the built-in lessons, untranslated; ends with NULL. */
extern const char *const tb_lesson_texts[];
/* Adds every text of a lesson to a list, untranslated and borrowed. */
void tb_lesson_list_texts (const TbLesson *lesson, GPtrArray *texts);

/* A step set up and thrown. Immutable. */
typedef struct TbLessonThrow
{
  TbStudy *study;
  TbRun *run[TB_N_SIDES];
} TbLessonThrow;

/* NULL and a clause that names the key if the step cannot be set up or thrown. */
TbLessonThrow *tb_lesson_step_throw (const TbLessonStep *step, TbLibrary *library, GError **error);
void tb_lesson_throw_free (TbLessonThrow *thrown);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (TbLessonThrow, tb_lesson_throw_free)

/* The number in its measure's unit; NAN where the throw has none. */
double tb_lesson_number (const TbLessonThrow *thrown, const TbLessonNumber *number);
/* Where a marker for the number lies, m down the lane; NAN if the number is no board of "after" on a line of the lane. */
double tb_lesson_marker_line (const TbLessonNumber *number);
/* Place of the right choice; −1 if the step has none or the throw has no such number. */
int tb_lesson_right_choice (const TbLessonStep *step, const TbLessonThrow *thrown);
/* What the throw showed, translated, with its numbers; free it. NULL and a clause for a place that cannot be filled. */
char *tb_lesson_explain (const TbLessonStep *step, const TbLessonThrow *thrown, GError **error);
/* Whether a thrown step has its answer, its claims hold and its words can be filled. The error is a clause. */
gboolean tb_lesson_check_throw (const TbLessonStep *step, const TbLessonThrow *thrown, GError **error);
/* Throws every step: whether each can be set up, its answer exists, its claims hold and its words can be filled. The
 * error is a clause that names the step. */
gboolean tb_lesson_check (const TbLesson *lesson, TbLibrary *library, GError **error);

G_END_DECLS
