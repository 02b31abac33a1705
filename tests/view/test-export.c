/* Pictures into files: every format, the same bytes twice, and what happens when it cannot be done.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include <errno.h>
#include <glib.h>
#include <glib/gstdio.h>
#include <string.h>
#include <unistd.h>
#include "../scratch.h"
#include "scenes.h"
#include "tb-export.h"

static Scenes scenes;

static void
draw_page (cairo_t *cr, double width, double height, gpointer data)
{
  tb_page_view_draw (cr, width, height, data);
}

static char *
in_folder (const char *name)
{
  return g_build_filename (scratch_folder (), name, NULL);
}

/* cairo numbers the ids of an SVG through the whole process. */
static void
strip_numbers (char **content, gsize *length)
{
  g_autoptr (GRegex) numbered = g_regex_new ("(surface|image|pattern|mask|clip|glyph)[0-9-]+", 0, 0, NULL);
  char *stripped = g_regex_replace_literal (numbered, *content, (gssize) *length, 0, "id", 0, NULL);

  g_free (*content);
  *content = stripped;
  *length = strlen (stripped);
}

static void
check_format (const char *name, const char *beginning)
{
  TbPageScene scene = scenes_page (&scenes);
  g_autofree char *path = in_folder (name), *first = NULL, *second = NULL;
  g_autoptr (GError) error = NULL;
  gsize first_length, second_length;

  g_assert_true (tb_export_picture (path, 640, 480, draw_page, &scene, &error));
  g_assert_no_error (error);
  g_assert_true (g_file_get_contents (path, &first, &first_length, NULL));
  g_assert_cmpint (memcmp (first, beginning, strlen (beginning)), ==, 0);
  g_assert_cmpint (first_length, >, 5000);

  g_assert_true (tb_export_picture (path, 640, 480, draw_page, &scene, &error));
  g_assert_true (g_file_get_contents (path, &second, &second_length, NULL));
  if (g_str_has_suffix (name, ".svg"))
    {
      strip_numbers (&first, &first_length);
      strip_numbers (&second, &second_length);
    }
  g_assert_cmpmem (first, first_length, second, second_length);
  g_assert_cmpint (g_unlink (path), ==, 0);
}

static void
test_formats (void)
{
  check_format ("a.png", "\211PNG\r\n\032\n");
  check_format ("a.svg", "<?xml");
  check_format ("a.pdf", "%PDF-");
  check_format ("A.PNG", "\211PNG\r\n\032\n");
}

/* The file has as many pixels as were asked for. */
static void
test_size (void)
{
  TbPageScene scene = scenes_page (&scenes);
  g_autofree char *path = in_folder ("size.png");
  cairo_surface_t *read;

  g_assert_true (tb_export_picture (path, 321, 243, draw_page, &scene, NULL));
  read = cairo_image_surface_create_from_png (path);
  g_assert_cmpint (cairo_image_surface_get_width (read), ==, 321);
  g_assert_cmpint (cairo_image_surface_get_height (read), ==, 243);
  cairo_surface_destroy (read);
  g_unlink (path);
}

static void
expect_error (const char *path, int width, GQuark domain, int code)
{
  TbPageScene scene = scenes_page (&scenes);
  g_autoptr (GError) error = NULL;
  g_autofree char *name = g_path_get_basename (path);

  g_assert_false (tb_export_picture (path, width, 480, draw_page, &scene, &error));
  g_assert_error (error, domain, code);
  g_assert_nonnull (strstr (error->message, name));
}

static void
test_refused (void)
{
  g_autofree char *bitmap = in_folder ("a.bmp"), *bare = in_folder ("png"), *fine = in_folder ("b.png");
  g_autofree char *nowhere = g_build_filename (scratch_folder (), "no-such-folder", "a.png", NULL);

  expect_error (bitmap, 640, TB_EXPORT_ERROR, TB_EXPORT_ERROR_FORMAT);
  expect_error (bare, 640, TB_EXPORT_ERROR, TB_EXPORT_ERROR_FORMAT);
  expect_error (fine, 0, TB_EXPORT_ERROR, TB_EXPORT_ERROR_SIZE);
  expect_error (fine, -5, TB_EXPORT_ERROR, TB_EXPORT_ERROR_SIZE);
  expect_error (fine, TB_EXPORT_MAX_SIZE + 1, TB_EXPORT_ERROR, TB_EXPORT_ERROR_SIZE);
  g_assert_false (g_file_test (fine, G_FILE_TEST_EXISTS));
  expect_error (nowhere, 640, G_FILE_ERROR, G_FILE_ERROR_NOENT);
}

/* Drawing that fails halfway. */
static void
draw_badly (cairo_t *cr, double width, double height, gpointer data)
{
  cairo_restore (cr);
}

static void
test_keeps_the_old (void)
{
  static const char *const names[] = { "old.png", "old.svg", "old.pdf" };

  for (guint i = 0; i < G_N_ELEMENTS (names); i++)
    {
      g_autofree char *path = in_folder (names[i]), *content = NULL;
      g_autoptr (GError) error = NULL;

      g_assert_true (g_file_set_contents (path, "what was there", -1, NULL));
      g_assert_false (tb_export_picture (path, 200, 200, draw_badly, NULL, &error));
      g_assert_error (error, TB_EXPORT_ERROR, TB_EXPORT_ERROR_DRAWING);
      g_assert_true (g_file_get_contents (path, &content, NULL, NULL));
      g_assert_cmpstr (content, ==, "what was there");
      g_unlink (path);
    }
}

/* A link to a picture is still one, and leads to the new picture. */
static void
test_keeps_a_link (void)
{
  TbPageScene scene = scenes_page (&scenes);
  g_autofree char *path = in_folder ("linked.png"), *link = in_folder ("link.png"), *content = NULL;

  g_assert_true (g_file_set_contents (path, "what was there", -1, NULL));
  g_assert_cmpint (symlink ("linked.png", link), ==, 0);
  g_assert_true (tb_export_picture (link, 200, 200, draw_page, &scene, NULL));
  g_assert_true (g_file_test (link, G_FILE_TEST_IS_SYMLINK));
  g_assert_true (g_file_get_contents (path, &content, NULL, NULL));
  g_assert_true (g_str_has_prefix (content, "\211PNG"));
  g_unlink (link);
  g_unlink (path);
}

/* Nothing but the picture is left in the folder. */
static void
test_leaves_nothing (void)
{
  TbPageScene scene = scenes_page (&scenes);
  g_autofree char *path = in_folder ("only.png");
  g_autoptr (GDir) dir = NULL;
  const char *name;
  int count = 0;

  g_assert_true (tb_export_picture (path, 200, 200, draw_page, &scene, NULL));
  dir = g_dir_open (scratch_folder (), 0, NULL);
  while ((name = g_dir_read_name (dir)) != NULL)
    {
      g_assert_cmpstr (name, ==, "only.png");
      count++;
    }
  g_assert_cmpint (count, ==, 1);
  g_unlink (path);
}

int
main (int argc, char **argv)
{
  int status;

  g_test_init (&argc, &argv, NULL);
  scenes_init (&scenes);
  g_test_add_func ("/export/formats", test_formats);
  g_test_add_func ("/export/size", test_size);
  g_test_add_func ("/export/refused", test_refused);
  g_test_add_func ("/export/keeps-the-old", test_keeps_the_old);
  g_test_add_func ("/export/keeps-a-link", test_keeps_a_link);
  g_test_add_func ("/export/leaves-nothing", test_leaves_nothing);
  status = g_test_run ();
  scenes_clear (&scenes);
  return status;
}
