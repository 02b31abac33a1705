/* The clinic's slide as a widget: everything but the throw.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>
#include "tb-clinic-page.h"

G_BEGIN_DECLS

#define TB_TYPE_SLIDE_PICTURE (tb_slide_picture_get_type ())
G_DECLARE_FINAL_TYPE (TbSlidePicture, tb_slide_picture, TB, SLIDE_PICTURE, GtkWidget)

/* Signal "picked" (guint): an item was clicked. */

/* Takes the page. */
void tb_slide_picture_set_page (TbSlidePicture *self, TbClinicPage *page);
/* Borrowed; NULL before the first. */
const TbClinicPage *tb_slide_picture_get_page (TbSlidePicture *self);

G_END_DECLS
