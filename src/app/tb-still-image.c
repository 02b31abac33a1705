/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "tb-still-image.h"

static cairo_surface_t *
new_surface (const TbStillImage *self)
{
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_ARGB32, self->width * self->scale,
                                                         self->height * self->scale);

  cairo_surface_set_device_scale (surface, self->scale, self->scale);
  return surface;
}

void
tb_still_image_drop_ground (TbStillImage *self)
{
  g_clear_pointer (&self->ground, cairo_surface_destroy);
  g_clear_pointer (&self->ground_key, g_bytes_unref);
}

void
tb_still_image_clear (TbStillImage *self)
{
  tb_still_image_drop_ground (self);
  for (int i = 0; i < TB_STILL_PAGES; i++)
    g_clear_pointer (&self->page[i], cairo_surface_destroy);
  *self = (TbStillImage){ 0 };
}

gboolean
tb_still_image_set_size (TbStillImage *self, int width, int height, int scale)
{
  if (self->width == width && self->height == height && self->scale == scale)
    return FALSE;
  tb_still_image_clear (self);
  self->width = width;
  self->height = height;
  self->scale = scale;
  return TRUE;
}

cairo_t *
tb_still_image_begin_ground (TbStillImage *self, GBytes *key)
{
  gboolean same = self->ground_key != NULL && g_bytes_equal (key, self->ground_key);

  if (same)
    {
      g_bytes_unref (key);
      return NULL;
    }
  tb_still_image_drop_ground (self);
  self->ground = new_surface (self);
  self->ground_key = key;
  return cairo_create (self->ground);
}

static void
start_page (const TbStillImage *self, cairo_t *cr)
{
  cairo_save (cr);
  cairo_set_operator (cr, self->ground != NULL ? CAIRO_OPERATOR_SOURCE : CAIRO_OPERATOR_CLEAR);
  if (self->ground != NULL)
    cairo_set_source_surface (cr, self->ground, 0, 0);
  cairo_paint (cr);
  cairo_restore (cr);
}

cairo_t *
tb_still_image_begin (TbStillImage *self)
{
  cairo_t *cr;

  self->shown = (self->shown + 1) % TB_STILL_PAGES;
  if (self->page[self->shown] == NULL)
    self->page[self->shown] = new_surface (self);
  cr = cairo_create (self->page[self->shown]);
  start_page (self, cr);
  return cr;
}

/* GTK's own node for images copies the whole of it for every frame when it draws with cairo, however little
 * of it is to be drawn again; this one is painted from as it is. */
GskRenderNode *
tb_still_image_to_node (const TbStillImage *self)
{
  GtkSnapshot *snapshot = gtk_snapshot_new ();
  cairo_t *cr = gtk_snapshot_append_cairo (
      snapshot, &GRAPHENE_RECT_INIT (0, 0, (float) self->width, (float) self->height));

  cairo_set_source_surface (cr, self->page[self->shown], 0, 0);
  cairo_paint (cr);
  cairo_destroy (cr);
  return gtk_snapshot_free_to_node (snapshot);
}
