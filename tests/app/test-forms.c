/* A picture drawn in another form than the one on the screen, for a file: it is of that size, all of it,
 * whatever size the one on the screen has.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include <string.h>

#include "tb-lane-picture.h"
#include "tb-strip-picture.h"
#include "window-support.h"

#define FORM_WIDTH 900
#define FORM_HEIGHT 620
/* In the middle of a throw, s. */
#define MOMENT 1.2

typedef struct Picture
{
  GtkWindow *window;
  TbPicture *picture;
} Picture;

static cairo_surface_t *
draw_form (TbPicture *picture)
{
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_RGB24, FORM_WIDTH, FORM_HEIGHT);
  cairo_t *cr = cairo_create (surface);
  TbTheme theme = tb_theme_light (1.2);

  tb_picture_draw (picture, cr, &(TbPictureForm){ FORM_WIDTH, FORM_HEIGHT, &theme });
  cairo_destroy (cr);
  cairo_surface_flush (surface);
  return surface;
}

static gboolean
same_pixels (cairo_surface_t *a, cairo_surface_t *b)
{
  gsize size = (gsize) cairo_image_surface_get_stride (a) * FORM_HEIGHT;

  return memcmp (cairo_image_surface_get_data (a), cairo_image_surface_get_data (b), size) == 0;
}

static cairo_surface_t *
draw_form_at (const Picture *self, int width, int height)
{
  gtk_widget_allocate (GTK_WIDGET (self->picture), width, height, -1, NULL);
  return draw_form (self->picture);
}

static void
check_forms (const Picture *self)
{
  cairo_surface_t *small = draw_form_at (self, 320, 240), *large = draw_form_at (self, 1200, 700);
  cairo_surface_t *again = draw_form_at (self, 320, 240);

  g_assert_true (same_pixels (small, large));
  g_assert_true (same_pixels (small, again));
  cairo_surface_destroy (small);
  cairo_surface_destroy (large);
  cairo_surface_destroy (again);
}

static Picture
put (gpointer picture)
{
  Picture self = { GTK_WINDOW (gtk_window_new ()), TB_PICTURE (picture) };

  gtk_window_set_child (self.window, GTK_WIDGET (picture));
  gtk_window_set_default_size (self.window, 640, 480);
  show_window (self.window);
  return self;
}

/* A throw that is under way, with another speed in "after". */
static TbSession *
new_throw (void)
{
  TbSession *session = tb_session_new (tb_application_get_library (application));

  set_speed (session, 19);
  tb_session_set_time (session, MOMENT);
  return session;
}

static void
test_lane (gconstpointer projection)
{
  g_autoptr (TbSession) session = new_throw ();
  Picture self;
  TbLanePicture *picture = g_object_new (TB_TYPE_LANE_PICTURE, NULL);

  tb_lane_picture_set_projection (picture, (TbLaneProjection) GPOINTER_TO_INT (projection));
  tb_picture_set_session (TB_PICTURE (picture), session);
  self = put (picture);
  check_forms (&self);
  gtk_window_destroy (self.window);
}

static void
test_strip (gconstpointer runs)
{
  g_autoptr (TbSession) session = new_throw ();
  Picture self;
  TbStripPicture *picture = g_object_new (TB_TYPE_STRIP_PICTURE, NULL);

  tb_strip_picture_set_text_size (picture, 20);
  tb_strip_picture_set_runs (picture, (TbStripRuns) GPOINTER_TO_INT (runs));
  tb_picture_set_session (TB_PICTURE (picture), session);
  self = put (picture);
  check_forms (&self);
  gtk_window_destroy (self.window);
}

int
main (int argc, char **argv)
{
  start_tests (&argc, &argv);
  start_application ();
  g_test_add_data_func ("/forms/lane/plan", GINT_TO_POINTER (TB_LANE_PLAN), test_lane);
  g_test_add_data_func ("/forms/lane/sideways", GINT_TO_POINTER (TB_LANE_PLAN_SIDEWAYS), test_lane);
  g_test_add_data_func ("/forms/lane/approach", GINT_TO_POINTER (TB_LANE_FROM_APPROACH), test_lane);
  g_test_add_data_func ("/forms/strip/after", GINT_TO_POINTER (TB_STRIP_AFTER), test_strip);
  g_test_add_data_func ("/forms/strip/both", GINT_TO_POINTER (TB_STRIP_BOTH), test_strip);
  return run_tests ();
}
