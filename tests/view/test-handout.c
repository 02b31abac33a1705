/* The page to take home as a picture: what is where, and that a change on it is seen.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include <glib.h>
#include "../study/house-setup.h"
#include "picture.h"
#include "tb-handout.h"

/* Two miles an hour, and the pattern the shots of the ball tests are thrown on. */
static TbHandoutFacts *
facts_at (double speed_mph)
{
  g_autoptr (TbSetup) before = house_setup (), after = NULL;
  g_autoptr (TbStudy) study = NULL;
  TbShot shot = before->shot;

  shot.delivery.speed = tb_metres_per_second_from_mph (speed_mph);
  after = tb_setup_with_shot (before, &shot);
  study = tb_study_new (before, after, "More speed, less hook", NULL);
  return tb_handout_facts_new (study, FALSE, NULL);
}

static cairo_surface_t *
draw (double speed_mph, TbPaper paper)
{
  g_autoptr (TbHandoutFacts) facts = facts_at (speed_mph);
  const TbHandout handout = { .facts = facts,
                              .paper = paper,
                              .bowler = "A league bowler",
                              .date = "2 May",
                              .note = "Look where the ball turns, not at the pins." };
  cairo_surface_t *picture = picture_new ((int) tb_paper_width (paper), (int) tb_paper_height (paper));
  cairo_t *cr = cairo_create (picture);

  cairo_set_source_rgb (cr, 1, 1, 1);
  cairo_paint (cr);
  tb_handout_draw (cr, &handout);
  g_assert_cmpint (cairo_status (cr), ==, CAIRO_STATUS_SUCCESS);
  cairo_destroy (cr);
  return picture;
}

static void
test_a4 (void)
{
  cairo_surface_t *page = draw (19, TB_PAPER_A4);

  picture_assert_golden (page, "handout-a4");
  cairo_surface_destroy (page);
}

static void
test_letter (void)
{
  cairo_surface_t *page = draw (15, TB_PAPER_LETTER);

  picture_assert_golden (page, "handout-letter");
  cairo_surface_destroy (page);
}

/* On a sheet it was not made for, the page is whole: all of its ink is on the sheet, and as much of it as
 * fits. */
static void
test_other_sheets (void)
{
  static const double sheets[][2] = { { 612, 792 }, { 420, 595 }, { 842, 595 }, { 1191, 1684 } };
  g_autoptr (TbHandoutFacts) facts = facts_at (19);
  const TbHandout handout = { .facts = facts, .paper = TB_PAPER_A4 };

  for (gsize i = 0; i < G_N_ELEMENTS (sheets); i++)
    {
      cairo_surface_t *recording = cairo_recording_surface_create (CAIRO_CONTENT_COLOR_ALPHA, NULL);
      cairo_t *cr = cairo_create (recording);
      double x, y, width, height;

      tb_handout_draw_on (cr, &handout, sheets[i][0], sheets[i][1]);
      cairo_recording_surface_ink_extents (recording, &x, &y, &width, &height);
      /* A pixel for soft edges. */
      g_assert_cmpfloat (x, >, -1);
      g_assert_cmpfloat (y, >, -1);
      g_assert_cmpfloat (x + width, <, sheets[i][0] + 1);
      g_assert_cmpfloat (y + height, <, sheets[i][1] + 1);
      g_assert_true (width > sheets[i][0] - 2 || height > sheets[i][1] - 2);
      cairo_destroy (cr);
      cairo_surface_destroy (recording);
    }
}

/* Half a mile an hour is another line and other numbers. */
static void
test_another_throw_is_another_page (void)
{
  cairo_surface_t *a = draw (19, TB_PAPER_A4), *b = draw (19.5, TB_PAPER_A4);
  PictureDifference difference = picture_compare (a, b);

  g_assert_true (difference.same_size);
  g_assert_cmpfloat (difference.share, >, PICTURE_SHARE);
  cairo_surface_destroy (difference.picture);
  cairo_surface_destroy (a);
  cairo_surface_destroy (b);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/handout-picture/a4", test_a4);
  g_test_add_func ("/handout-picture/letter", test_letter);
  g_test_add_func ("/handout-picture/other-sheets", test_other_sheets);
  g_test_add_func ("/handout-picture/another-throw", test_another_throw_is_another_page);
  return g_test_run ();
}
