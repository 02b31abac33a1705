/* The study's title in the header bar; pressed, title and notes can be written.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>
#include "tb-session.h"

G_BEGIN_DECLS

#define TB_TYPE_TITLE_BUTTON (tb_title_button_get_type ())
G_DECLARE_FINAL_TYPE (TbTitleButton, tb_title_button, TB, TITLE_BUTTON, GtkWidget)

void tb_title_button_set_session (TbTitleButton *self, TbSession *session);
void tb_title_button_popup (TbTitleButton *self);
/* What it should have beyond the least it takes before anything else in the bar says more than it must, px.
 */
int tb_title_button_get_wish (TbTitleButton *self);
/* What there is for the title beyond the least it takes, px; a longer one ends in dots. */
void tb_title_button_set_room (TbTitleButton *self, int room);

G_END_DECLS
