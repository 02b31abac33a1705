/* What can be done with any drawn view: save it, copy it. From its menu, or by keyboard while it has the
 * focus.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "tb-picture.h"

G_BEGIN_DECLS

/* Actions and keys, for a class; the menu's mouse button, for a picture. */
void tb_picture_class_install_menu (GtkWidgetClass *widget_class);
void tb_picture_init_menu (TbPicture *self);

/* Puts the picture, as it is seen, on the clipboard. */
void tb_picture_copy (TbPicture *self);

/* Anything that can be drawn: its size, px; pixels of the copy for each of those; and how. */
typedef struct TbDrawnCopy
{
  int width, height;
  int scale;
  void (*draw) (cairo_t *cr, double width, double height, gpointer data);
  gpointer data;
} TbDrawnCopy;
void tb_picture_copy_drawn (GtkWidget *widget, const TbDrawnCopy *copy);

G_END_DECLS
