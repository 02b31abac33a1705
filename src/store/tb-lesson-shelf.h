/* The lessons there are: those built in, and the user's own, files in a folder of the user's data.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "tb-lesson.h"

G_BEGIN_DECLS

/* Files in the user's folder that are read; more is a mistake, or malice. */
#define TB_LESSON_SHELF_MAX 100

typedef struct TbLessonShelf
{
  GPtrArray *builtin;  /* of TbLesson, in the order in which they are taught */
  GPtrArray *own;      /* of TbLesson, in the order of their files' names */
  GPtrArray *problems; /* of char *: a whole sentence for each file that cannot be used */
} TbLessonShelf;

/* Reads the folder now; a folder that is not there holds nothing. Never NULL. */
TbLessonShelf *tb_lesson_shelf_new (void);
void tb_lesson_shelf_free (TbLessonShelf *shelf);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (TbLessonShelf, tb_lesson_shelf_free)
/* Borrowed; NULL if no lesson has the id. */
TbLesson *tb_lesson_shelf_find (const TbLessonShelf *shelf, const char *id);

G_END_DECLS
