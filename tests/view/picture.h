/* Pictures in tests: comparing them, with stored ones and with each other.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <cairo.h>
#include <glib.h>

/* How different two pictures are. */
typedef struct PictureDifference
{
  gboolean same_size;
  int worst;     /* largest difference of a channel, 0 to 255 */
  double share;  /* of pixels that differ by more than the tolerance */
  cairo_surface_t *picture; /* red where they differ; free it */
} PictureDifference;

/* Differences of a channel up to this are nobody's fault, and so many pixels may differ by more. */
#define PICTURE_CHANNEL 8
#define PICTURE_SHARE 0.001

cairo_surface_t *picture_new (int width, int height);
PictureDifference picture_compare (cairo_surface_t *a, cairo_surface_t *b);
/* Fails the test if the picture is not the stored one; then writes NAME.out.png and NAME.diff.png into the build
 * folder. With UPDATE_GOLDEN=1 in the environment it stores the picture instead. */
void picture_assert_golden (cairo_surface_t *picture, const char *name);
/* One pixel, 0xRRGGBB. */
guint32 picture_pixel (cairo_surface_t *picture, int x, int y);
/* Largest difference of a channel of two pixels. */
int picture_pixel_difference (guint32 a, guint32 b);
