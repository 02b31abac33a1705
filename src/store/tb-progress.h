/* What a bowler guessed in lessons. Kept in one file per bowler in the user's data folder, on this computer only.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "tb-guess.h"
#include "tb-json-reader.h"

G_BEGIN_DECLS

/* Guesses that are kept; the oldest go first. */
#define TB_PROGRESS_MAX 2000

typedef struct TbProgressGuess
{
  char *lesson; /* id */
  guint step;   /* counted from 1 */
  double off;   /* boards from guess to answer, of a dragged marker; NAN for a choice */
  TbVerdictOfGuess verdict;
} TbProgressGuess;

typedef struct TbProgress
{
  char *bowler;    /* id */
  GArray *guesses; /* of TbProgressGuess, in the order in which they were made */
} TbProgress;

/* Empty, for a bowler's id. */
TbProgress *tb_progress_new (const char *bowler);
void tb_progress_free (TbProgress *progress);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (TbProgress, tb_progress_free)
/* Takes copies. */
void tb_progress_add (TbProgress *progress, const TbProgressGuess *guess);
guint tb_progress_best_streak (const TbProgress *progress);
/* Mean of what markers were off by, boards; NAN if none was dragged. */
double tb_progress_mean_off (const TbProgress *progress);

/* The error is a clause without the file's name. */
TbProgress *tb_progress_from_text (const char *bowler, const char *text, gsize length, GError **error);
char *tb_progress_to_text (const TbProgress *progress);
/* Empty where nothing was kept yet. NULL and a whole sentence if the file cannot be read: it is left as it is. */
TbProgress *tb_progress_load (const char *bowler, GError **error);
/* The error is a whole sentence. */
gboolean tb_progress_save (const TbProgress *progress, GError **error);
/* Deletes what is kept of a bowler; nothing kept is no error. */
gboolean tb_progress_delete (const char *bowler, GError **error);

G_END_DECLS
