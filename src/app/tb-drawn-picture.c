/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "tb-drawn-picture.h"

struct _TbDrawnPicture
{
  TbPicture parent_instance;
  TbDrawnFunc draw;
  gpointer page;
};

G_DEFINE_FINAL_TYPE (TbDrawnPicture, tb_drawn_picture, TB_TYPE_PICTURE)

void
tb_drawn_picture_set_draw (TbDrawnPicture *self, const char *name, TbDrawnFunc draw, gpointer page)
{
  self->draw = draw;
  self->page = page;
  tb_picture_set_name (TB_PICTURE (self), name);
}

void
tb_drawn_picture_refresh (TbDrawnPicture *self, const char *description)
{
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, description,
                                  -1);
  tb_picture_invalidate (TB_PICTURE (self));
}

static void
tb_drawn_picture_draw_still (TbPicture *picture, cairo_t *cr, double width, double height)
{
  TbDrawnPicture *self = TB_DRAWN_PICTURE (picture);
  TbTheme theme = tb_picture_get_theme (picture);

  if (self->draw != NULL)
    self->draw (cr, width, height, &theme, self->page);
}

/* Nothing of it moves with the throw. */
static void
tb_drawn_picture_time_changed (TbPicture *picture)
{
}

static void
tb_drawn_picture_class_init (TbDrawnPictureClass *klass)
{
  TB_PICTURE_CLASS (klass)->draw_still = tb_drawn_picture_draw_still;
  TB_PICTURE_CLASS (klass)->time_changed = tb_drawn_picture_time_changed;
}

static void
tb_drawn_picture_init (TbDrawnPicture *self)
{
}
