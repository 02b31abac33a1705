/* What is kept of a bowler's guesses: drawn, in words, and deleted when asked to.
 *
 * Action: "progress.delete", which asks once more.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>
#include "tb-learner.h"

G_BEGIN_DECLS

#define TB_TYPE_PROGRESS_PAGE (tb_progress_page_get_type ())
G_DECLARE_FINAL_TYPE (TbProgressPage, tb_progress_page, TB, PROGRESS_PAGE, GtkWidget)

/* Once. The library knows what the bowler is called. */
void tb_progress_page_set_learner (TbProgressPage *self, TbLearner *learner, TbLibrary *library);
/* For tests; borrowed. */
const char *tb_progress_page_get_words (TbProgressPage *self);

G_END_DECLS
