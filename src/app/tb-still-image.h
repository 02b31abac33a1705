/* The image of what stands still in a picture, and of the ground under it.
 *
 * A still part is drawn into an image once and painted from it in every frame: replaying its lines costs many
 * times as much. The ground is an image of its own, drawn only when what it is drawn from has changed.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* GTK holds on to the frame before, to find what has changed. Two pages in turn leave that one's image alone:
 * drawing over it would have cairo copy it first. */
#define TB_STILL_PAGES 2

/* All zero is an empty one, of no size. */
typedef struct TbStillImage
{
  int width, height; /* px */
  int scale;         /* pixels of the screen a px */
  cairo_surface_t *page[TB_STILL_PAGES];
  int shown; /* the page drawn last */
  cairo_surface_t *ground;
  GBytes *ground_key;
} TbStillImage;

/* Drops all its images if they have another size; says whether. */
gboolean tb_still_image_set_size (TbStillImage *self, int width, int height, int scale);
/* What to draw the ground with: NULL if the one that is there was drawn from the same key. Takes the key;
 * destroy the context when done. */
cairo_t *tb_still_image_begin_ground (TbStillImage *self, GBytes *key);
/* What to draw the rest with, on the ground if there is one, or else on nothing. Destroy it when done. */
cairo_t *tb_still_image_begin (TbStillImage *self);
/* Shows what was drawn last. Not to be shown once it has been drawn twice more. */
GskRenderNode *tb_still_image_to_node (const TbStillImage *self);
void tb_still_image_drop_ground (TbStillImage *self);
void tb_still_image_clear (TbStillImage *self);

G_END_DECLS
