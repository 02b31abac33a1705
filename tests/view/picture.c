/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "picture.h"

#define SAME 0xffffff
#define DIFFERENT 0xc00000
#define STRANGE 0xe8e8e8 /* differs, but within the tolerance */

cairo_surface_t *
picture_new (int width, int height)
{
  cairo_surface_t *picture = cairo_image_surface_create (CAIRO_FORMAT_RGB24, width, height);

  g_assert_cmpint (cairo_surface_status (picture), ==, CAIRO_STATUS_SUCCESS);
  return picture;
}

static guint32 *
pixel_at (cairo_surface_t *picture, int x, int y)
{
  guchar *row = cairo_image_surface_get_data (picture) + y * cairo_image_surface_get_stride (picture);

  return (guint32 *) (gpointer) row + x;
}

guint32
picture_pixel (cairo_surface_t *picture, int x, int y)
{
  return *pixel_at (picture, x, y) & 0xffffff;
}

int
picture_pixel_difference (guint32 a, guint32 b)
{
  int worst = 0;

  for (int shift = 0; shift < 24; shift += 8)
    worst = MAX (worst, ABS ((int) (a >> shift & 0xff) - (int) (b >> shift & 0xff)));
  return worst;
}

PictureDifference
picture_compare (cairo_surface_t *a, cairo_surface_t *b)
{
  int width = cairo_image_surface_get_width (a), height = cairo_image_surface_get_height (a), over = 0;
  PictureDifference difference = { .same_size = width == cairo_image_surface_get_width (b)
                                                && height == cairo_image_surface_get_height (b) };

  if (!difference.same_size)
    return difference;
  difference.picture = picture_new (width, height);
  for (int y = 0; y < height; y++)
    for (int x = 0; x < width; x++)
      {
        int d = picture_pixel_difference (picture_pixel (a, x, y), picture_pixel (b, x, y));

        difference.worst = MAX (difference.worst, d);
        over += d > PICTURE_CHANNEL;
        *pixel_at (difference.picture, x, y) = d > PICTURE_CHANNEL ? DIFFERENT : d > 0 ? STRANGE : SAME;
      }
  cairo_surface_mark_dirty (difference.picture);
  difference.share = (double) over / width / height;
  return difference;
}

static void
write_beside_build (cairo_surface_t *picture, const char *name, const char *kind)
{
  g_autofree char *file = g_strdup_printf ("%s.%s.png", name, kind);
  g_autofree char *path = g_test_build_filename (G_TEST_BUILT, "view", file, NULL);

  if (cairo_surface_write_to_png (picture, path) == CAIRO_STATUS_SUCCESS)
    g_test_message ("%s", path);
}

void
picture_assert_golden (cairo_surface_t *picture, const char *name)
{
  g_autofree char *file = g_strdup_printf ("%s.png", name);
  g_autofree char *path = g_test_build_filename (G_TEST_DIST, "view", "golden", file, NULL);
  cairo_surface_t *stored;
  PictureDifference difference;

  cairo_surface_flush (picture);
  if (g_strcmp0 (g_getenv ("UPDATE_GOLDEN"), "1") == 0)
    {
      g_assert_cmpint (cairo_surface_write_to_png (picture, path), ==, CAIRO_STATUS_SUCCESS);
      return;
    }
  stored = cairo_image_surface_create_from_png (path);
  if (cairo_surface_status (stored) != CAIRO_STATUS_SUCCESS)
    {
      g_test_message ("no stored picture %s; UPDATE_GOLDEN=1 makes it", path);
      g_test_fail ();
      return;
    }
  difference = picture_compare (picture, stored);
  g_test_message ("%s: worst channel %d, %.4f %% of pixels over %d",
                  name,
                  difference.worst,
                  100 * difference.share,
                  PICTURE_CHANNEL);
  if (!difference.same_size || difference.share > PICTURE_SHARE)
    {
      write_beside_build (picture, name, "out");
      if (difference.picture != NULL)
        write_beside_build (difference.picture, name, "diff");
      g_test_fail ();
    }
  g_clear_pointer (&difference.picture, cairo_surface_destroy);
  cairo_surface_destroy (stored);
}
