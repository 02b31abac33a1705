/* Pictures are for people: where numbers are written with a comma, no label has a point.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "../comma-locale.h"
#include "scenes.h"
#include "tb-canvas.h"
#include "tb-parts-view.h"

static Scenes scenes;
static gboolean comma;

/* What the labels have between digits. */
typedef struct Marks
{
  guint commas, points;
} Marks;

static bool
count_marks (const char *text, const cairo_rectangle_t *box, void *data)
{
  Marks *marks = data;

  for (const char *c = text; c[0] != '\0' && c[1] != '\0' && c[2] != '\0'; c++)
    if (g_ascii_isdigit (c[0]) && g_ascii_isdigit (c[2]))
      {
        marks->commas += c[1] == ',';
        marks->points += c[1] == '.';
        if (c[1] == '.' && comma)
          g_test_message ("\"%s\" has a point", text);
      }
  return true;
}

#define WIDTH 1280
#define HEIGHT 800

static cairo_t *
new_context (Marks *marks)
{
  cairo_rectangle_t extents = { 0, 0, WIDTH, HEIGHT };
  cairo_surface_t *surface = cairo_recording_surface_create (CAIRO_CONTENT_COLOR, &extents);
  cairo_t *cr = cairo_create (surface);

  cairo_surface_destroy (surface);
  tb_canvas_set_label_hook (cr, count_marks, marks);
  return cr;
}

static void
test_page (void)
{
  Marks marks = { 0 };
  cairo_t *cr = new_context (&marks);
  TbPageScene page = scenes_page (&scenes);

  tb_page_view_draw (cr, WIDTH, HEIGHT, &page);
  cairo_destroy (cr);
  /* "before 17,8", "8,0 at 41 ft", "2,0 in": there is something to see. */
  g_assert_cmpuint (comma ? marks.commas : marks.points, >, 4);
  g_assert_cmpuint (comma ? marks.points : marks.commas, ==, 0);
}

typedef struct Signs
{
  gboolean plus, minus;
} Signs;

static bool
note_signs (const char *text, const cairo_rectangle_t *box, void *data)
{
  Signs *signs = data;

  signs->plus |= g_str_has_prefix (text, comma ? "+0,4" : "+0.4");
  signs->minus |= g_str_has_prefix (text, comma ? "−0,3" : "−0.3");
  return true;
}

/* A number that begins with a nought keeps its sign. */
static void
test_small_parts (void)
{
  const TbPart parts[] = { { .name = "more", .value = 0.4 }, { .name = "less", .value = -0.3 } };
  TbPartsScene scene = { .theme = tb_theme_light (1), .parts = parts, .n_parts = 2, .digits = 1, .unit = "" };
  Signs signs = { FALSE, FALSE };
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_RGB24, WIDTH, HEIGHT);
  cairo_t *cr = cairo_create (surface);

  tb_canvas_set_label_hook (cr, note_signs, &signs);
  tb_parts_view_draw (cr, WIDTH, HEIGHT, &scene);
  cairo_destroy (cr);
  cairo_surface_destroy (surface);
  g_assert_true (signs.plus);
  g_assert_true (signs.minus);
}

typedef void (*Check) (void);

static void
in_comma_locale (Check check)
{
  if (!use_comma_locale ())
    return;
  comma = TRUE;
  check ();
  comma = FALSE;
  g_setenv ("LC_ALL", "C.UTF-8", TRUE);
  setlocale (LC_ALL, "");
}

static void
test_page_with_commas (void)
{
  in_comma_locale (test_page);
}

static void
test_small_parts_with_commas (void)
{
  in_comma_locale (test_small_parts);
}

int
main (int argc, char **argv)
{
  int status;

  g_test_init (&argc, &argv, NULL);
  scenes_init (&scenes);
  g_test_add_func ("/comma/page-with-points", test_page);
  g_test_add_func ("/comma/small-parts-with-points", test_small_parts);
  g_test_add_func ("/comma/page", test_page_with_commas);
  g_test_add_func ("/comma/small-parts", test_small_parts_with_commas);
  status = g_test_run ();
  scenes_clear (&scenes);
  return status;
}
