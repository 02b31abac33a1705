/* What the pages of Help are made of: labels that wrap, and rows of a word with its text.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* A label of whole sentences. style is a CSS class; text and style may be NULL. */
GtkWidget *tb_help_label_new (const char *text, const char *style);
/* A GtkListBoxRow with a heading and a text below it, read aloud as one. Both are translated. */
GtkWidget *tb_help_row_new (const char *title, const char *text);
/* Adds one more line below the text. */
void tb_help_row_append (GtkWidget *row, GtkWidget *line);

G_END_DECLS
