/* A bowler's numbers from what can be measured at the counter: each with its formula, its source and its
 * likely error.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>
#include "tb-bowler-reading.h"
#include "tb-session.h"

G_BEGIN_DECLS

#define TB_TYPE_READING_PAGE (tb_reading_page_get_type ())
G_DECLARE_FINAL_TYPE (TbReadingPage, tb_reading_page, TB, READING_PAGE, GtkWidget)

void tb_reading_page_set_session (TbReadingPage *self, TbSession *session);
/* For tests: an input of a reading, counted from 0, and what is told of it. */
GtkSpinButton *tb_reading_page_get_input (TbReadingPage *self, TbReadingKind kind, guint input);
const char *tb_reading_page_get_answer (TbReadingPage *self, TbReadingKind kind);

G_END_DECLS
