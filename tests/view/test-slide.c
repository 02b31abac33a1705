/* Slides for a room: large enough, every item where it can be clicked, every kind drawn.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include <glib.h>
#include <math.h>
#include "picture.h"
#include "tb-slide-view.h"

#define WIDTH 1280
#define HEIGHT 720
#define ITEMS 4

static const TbSlideItem items[ITEMS] = {
  { .name = "Speed",
    .before = "17.0 mph",
    .after = "19.0 mph",
    .detail = "+2.0",
    .from = 0.4,
    .to = 0.6,
    .count = 3,
    .chosen = TRUE },
  { .name = "Rev rate",
    .before = "300 rpm",
    .after = "400 rpm",
    .detail = "+100",
    .from = 0.3,
    .to = 0.5,
    .count = 1 },
  { .name = "Loft",
    .before = "2.0 in",
    .after = "4.0 in",
    .detail = "+2.0",
    .from = 0.1,
    .to = -0.2,
    .count = 0 },
  { .name = "Ball", .before = "one", .after = "another", .detail = "–", .from = NAN, .to = NAN, .count = 12 },
};

static TbSlide
slide_of (TbSlideKind kind)
{
  return (TbSlide){ .theme = tb_theme_contrast (1),
                    .kind = kind,
                    .headline = "What was changed?",
                    .body = "One thing at a time.",
                    .caution = "Never twist by force.",
                    .items = kind == TB_SLIDE_WORDS ? NULL : items,
                    .n_items = kind == TB_SLIDE_WORDS ? 0 : ITEMS };
}

static cairo_surface_t *
draw (const TbSlide *slide, int width, int height)
{
  cairo_surface_t *picture = picture_new (width, height);
  cairo_t *cr = cairo_create (picture);

  tb_slide_view_draw (cr, width, height, slide);
  g_assert_cmpint (cairo_status (cr), ==, CAIRO_STATUS_SUCCESS);
  cairo_destroy (cr);
  return picture;
}

static double
share_that_differs (const TbSlide *a, const TbSlide *b)
{
  cairo_surface_t *first = draw (a, WIDTH, HEIGHT), *second = draw (b, WIDTH, HEIGHT);
  PictureDifference difference = picture_compare (first, second);

  cairo_surface_destroy (difference.picture);
  cairo_surface_destroy (first);
  cairo_surface_destroy (second);
  return difference.share;
}

/* Every kind shows something that no other does. */
static void
test_kinds (void)
{
  for (int a = TB_SLIDE_WORDS; a <= TB_SLIDE_PARTS; a++)
    for (int b = TB_SLIDE_WORDS; b < a; b++)
      {
        TbSlide first = slide_of ((TbSlideKind) a), second = slide_of ((TbSlideKind) b);

        g_assert_cmpfloat (share_that_differs (&first, &second), >, PICTURE_SHARE);
      }
}

static void
test_large_enough (void)
{
  for (int kind = TB_SLIDE_WORDS; kind <= TB_SLIDE_PARTS; kind++)
    {
      TbSlide slide = slide_of ((TbSlideKind) kind);

      g_assert_cmpfloat (tb_slide_view_text_size (WIDTH, HEIGHT, &slide), >=,
                         TB_SLIDE_SMALLEST * HEIGHT * 0.999);
    }
}

/* Down the middle of the slide the items come in their order, each once, and none above or below. */
static void
test_places (void)
{
  TbSlide slide = slide_of (TB_SLIDE_VOTES);
  int last = -1;

  for (int y = 0; y < HEIGHT; y++)
    {
      int item = tb_slide_view_item_at (WIDTH, HEIGHT, &slide, WIDTH / 4.0, y);

      g_assert_true (item == -1 || item == last || item == last + 1);
      last = MAX (last, item);
    }
  g_assert_cmpint (last, ==, ITEMS - 1);
  g_assert_cmpint (tb_slide_view_item_at (WIDTH, HEIGHT, &slide, -5, HEIGHT / 2.0), ==, -1);
}

/* What is chosen, voted or changed is seen. */
static void
test_states (void)
{
  static const TbSlideKind kinds[] = { TB_SLIDE_LIST, TB_SLIDE_VOTES, TB_SLIDE_CHANGES };

  for (guint i = 0; i < G_N_ELEMENTS (kinds); i++)
    {
      TbSlide slide = slide_of (kinds[i]), other = slide;
      TbSlideItem changed[ITEMS];

      for (int item = 0; item < ITEMS; item++)
        changed[item] = items[item];
      changed[0].chosen = FALSE;
      changed[1].chosen = TRUE;
      changed[0].count = 9;
      changed[0].to = 0.9;
      other.items = changed;
      g_assert_cmpfloat (share_that_differs (&slide, &other), >, 0);
    }
}

/* Bars that all point one way have the room of both: measured, 560 px of 1280, and 270 where room was kept
 * for the other. */
static void
test_parts_take_the_room (void)
{
  static const TbSlideItem parts[] = { { .name = "Speed", .detail = "+4.9 boards", .to = 4.9 },
                                       { .name = "Rev rate", .detail = "+4.5 boards", .to = 4.5 } };
  TbSlide slide = slide_of (TB_SLIDE_PARTS);
  cairo_surface_t *picture;
  TbColor bar = slide.theme.after;
  int most = 0;

  slide.items = parts;
  slide.n_items = G_N_ELEMENTS (parts);
  slide.caution = "";
  picture = draw (&slide, WIDTH, HEIGHT);
  for (int y = 0; y < HEIGHT; y++)
    {
      int width = 0;

      for (int x = 0; x < WIDTH; x++)
        width += fabs ((picture_pixel (picture, x, y) >> 16 & 255) / 255.0 - bar.red) < 0.02
                 && fabs ((picture_pixel (picture, x, y) & 255) / 255.0 - bar.blue) < 0.02;
      most = MAX (most, width);
    }
  cairo_surface_destroy (picture);
  g_test_message ("%d px", most);
  g_assert_cmpint (most, >, 330);
}

/* No room is no picture, and no crash. */
static void
test_too_small (void)
{
  TbSlide slide = slide_of (TB_SLIDE_NUMBERS);
  cairo_surface_t *picture = draw (&slide, 40, 30);
  guint32 background = picture_pixel (picture, 0, 0);

  for (int x = 0; x < 40; x++)
    g_assert_cmpuint (picture_pixel (picture, x, 15), ==, background);
  cairo_surface_destroy (picture);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/slide/kinds", test_kinds);
  g_test_add_func ("/slide/large-enough", test_large_enough);
  g_test_add_func ("/slide/places", test_places);
  g_test_add_func ("/slide/states", test_states);
  g_test_add_func ("/slide/parts-take-the-room", test_parts_take_the_room);
  g_test_add_func ("/slide/too-small", test_too_small);
  return g_test_run ();
}
