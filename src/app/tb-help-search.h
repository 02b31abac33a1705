/* What somebody looks for in Help, and where it stands.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define TB_TYPE_HELP_SEARCH (tb_help_search_get_type ())
G_DECLARE_FINAL_TYPE (TbHelpSearch, tb_help_search, TB, HELP_SEARCH, GtkWidget)

/* A piece of Help that can be found: a word with its meaning, or a paragraph under its heading. The texts are
 * copied and shown; page and place are handed back when the piece is chosen. */
typedef struct TbHelpPiece
{
  const char *page;  /* name of the page; a literal */
  const char *title; /* what stands over the piece */
  const char *text;
  GtkWidget *place; /* borrowed; outlives the search */
} TbHelpPiece;

/* Signal "chosen": (char *page, GtkWidget *place). */
GtkWidget *tb_help_search_new (void);
void tb_help_search_add (TbHelpSearch *self, const TbHelpPiece *piece);
/* Lists the pieces in which every word of `text` begins a word, those first that have it in their title. How
 * many. */
guint tb_help_search_find (TbHelpSearch *self, const char *text);
/* Chooses the first of what was found, if anything was. */
void tb_help_search_choose_first (TbHelpSearch *self);

G_END_DECLS
