/* The page of words in Help: every word of the trade with what it means, and ways from one to the next.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "tb-glossary.h"

G_BEGIN_DECLS

#define TB_TYPE_HELP_WORDS (tb_help_words_get_type ())
G_DECLARE_FINAL_TYPE (TbHelpWords, tb_help_words, TB, HELP_WORDS, GtkWidget)

GtkWidget *tb_help_words_new (void);
/* Goes to a word; nothing happens for an unknown id. The row gets the focus, and is seen. */
void tb_help_words_show (TbHelpWords *self, const char *id);
/* The id of the word that was gone to last; NULL at first. */
const char *tb_help_words_get_shown (TbHelpWords *self);
/* What stands for a word on the page; NULL for an unknown id. */
GtkWidget *tb_help_words_get_row (TbHelpWords *self, const char *id);

/* "See also:" and links, as markup for a label; a link's address is the other word's id. */
char *tb_help_words_see_markup (const TbTerm *term);

G_END_DECLS
