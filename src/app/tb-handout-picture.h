/* The page to take home, as it will be on paper: as wide as there is room, and as high as paper is then.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>
#include "tb-handout.h"

G_BEGIN_DECLS

#define TB_TYPE_HANDOUT_PICTURE (tb_handout_picture_get_type ())
G_DECLARE_FINAL_TYPE (TbHandoutPicture, tb_handout_picture, TB, HANDOUT_PICTURE, GtkWidget)

/* Borrowed, and read whenever the page is drawn; its `facts` may be NULL, which is an empty sheet. */
void tb_handout_picture_set_handout (TbHandoutPicture *self, const TbHandout *handout);
/* The handout has changed. */
void tb_handout_picture_refresh (TbHandoutPicture *self);

G_END_DECLS
