/* What a control or a measure means, beside it: a small window with the word of the trade behind it, links to
 * the words that belong to it, and a way to all of them in Help.
 *
 * A name is a field's or a measure's as in core's tables, or the id of a word of the glossary.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define TB_TYPE_WORD_POPOVER (tb_word_popover_get_type ())
G_DECLARE_FINAL_TYPE (TbWordPopover, tb_word_popover, TB, WORD_POPOVER, GtkPopover)

/* F1 inside `widget` explains `name`, beside `at`, which is the widget or stands inside it. Takes no place in
 * the tab order. name is kept, not copied. */
void tb_word_set (GtkWidget *widget, GtkWidget *at, const char *name);
/* A right click or a long press on `label` explains the name; a plain click too, if `on_click`. `host` is a
 * widget around the label that may have popovers. */
void tb_word_listen (GtkWidget *label, GtkWidget *host, const char *name, gboolean on_click);
/* Both, for a control whose label explains it; the Menu key as well. */
void tb_word_attach (GtkWidget *widget, GtkWidget *label, const char *name);

/* Explains a name beside `at`. */
TbWordPopover *tb_word_show (GtkWidget *host, GtkWidget *at, const char *name);
/* Explains what has the focus in a window, or what stands around it; FALSE if that has no word. */
gboolean tb_word_show_focused (GtkWindow *window);

/* What the popover says, for tests: the id of the word. */
const char *tb_word_popover_get_term (TbWordPopover *self);

G_END_DECLS
