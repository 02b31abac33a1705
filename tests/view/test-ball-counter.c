/* Pictures of layouts, rings, curves and bags: places and the way back, labels inside the picture, and that
 * nothing is too small or too empty to be drawn.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include <string.h>

#include "../study/house-setup.h"
#include "picture.h"
#include "tb-bag-view.h"
#include "tb-bag.h"
#include "tb-canvas.h"
#include "tb-curve-view.h"
#include "tb-drilling.h"
#include "tb-flare-view.h"
#include "tb-layout-sheet.h"
#include "tb-layout-view.h"

#define M(inches) tb_metres_from_in (inches)

/* Sizes from nothing to a large screen. */
static const struct
{
  int width, height;
} sizes[] = { { 1, 1 }, { 40, 30 }, { 160, 400 }, { 420, 420 }, { 1280, 500 }, { 1920, 1080 } };

typedef void (*Draw) (cairo_t *cr, double width, double height, gconstpointer data);

/* Labels that were written, and whether any of them left the picture. */
typedef struct Seen
{
  GString *text;
  double width, height;
  gboolean outside;
} Seen;

static bool
see (const char *text, const cairo_rectangle_t *box, void *data)
{
  Seen *seen = data;
  const double slack = 1.5;

  g_string_append (seen->text, text);
  g_string_append_c (seen->text, '\n');
  if (box->x < -slack || box->y < -slack || box->x + box->width > seen->width + slack
      || box->y + box->height > seen->height + slack)
    {
      g_test_message ("outside: %s", text);
      seen->outside = TRUE;
    }
  return true;
}

/* Draws in a size and returns what was written; free it. */
static char *
draw_once (Draw draw, gconstpointer data, int width, int height, gboolean *outside)
{
  cairo_surface_t *picture = picture_new (width, height);
  cairo_t *cr = cairo_create (picture);
  Seen seen = { g_string_new (NULL), width, height, FALSE };

  tb_canvas_set_label_hook (cr, see, &seen);
  draw (cr, width, height, data);
  g_assert_cmpint (cairo_status (cr), ==, CAIRO_STATUS_SUCCESS);
  cairo_destroy (cr);
  cairo_surface_destroy (picture);
  *outside = seen.outside;
  return g_string_free (seen.text, FALSE);
}

static void
draw_in_all_sizes (Draw draw, gconstpointer data)
{
  for (gsize i = 0; i < G_N_ELEMENTS (sizes); i++)
    {
      gboolean outside;
      g_autofree char *text G_GNUC_UNUSED = draw_once (draw, data, sizes[i].width, sizes[i].height, &outside);

      g_assert_false (outside && sizes[i].width >= 400);
    }
}

static void
draw_layout (cairo_t *cr, double width, double height, gconstpointer data)
{
  tb_layout_view_draw (cr, width, height, data);
}

static void
draw_flare (cairo_t *cr, double width, double height, gconstpointer data)
{
  tb_flare_view_draw (cr, width, height, data);
}

static void
draw_cases (cairo_t *cr, double width, double height, gconstpointer data)
{
  tb_flare_cases_draw (cr, width, height, data);
}

static void
draw_curves (cairo_t *cr, double width, double height, gconstpointer data)
{
  tb_curve_view_draw (cr, width, height, data);
}

static void
draw_bag (cairo_t *cr, double width, double height, gconstpointer data)
{
  tb_bag_view_draw (cr, width, height, data);
}

/* Globe. */

static void
test_globe (void)
{
  for (int mirrored = 0; mirrored < 2; mirrored++)
    {
      TbGlobe globe = { .centre = { 200, 150 }, .radius = 100, .mirrored = mirrored };
      TbVec3 places[] = { { 0, 0, 1 }, { 0.6, 0, 0.8 }, { 0, -0.6, 0.8 }, { 0.36, 0.48, 0.8 } };

      tb_globe_look (&globe, tb_vec3 (0.2, 0.1, 1), tb_vec3 (0, 1, 0));
      for (gsize i = 0; i < G_N_ELEMENTS (places); i++)
        {
          TbVec3 back;

          g_assert_true (tb_globe_sees (&globe, places[i]));
          g_assert_true (tb_globe_place (&globe, tb_globe_point (&globe, places[i]), &back));
          g_assert_cmpfloat (tb_vec3_angle (back, places[i]), <, 1e-7);
        }
      /* Outside of it: the nearest place on its edge. */
      TbVec3 edge;

      g_assert_true (tb_globe_place (&globe, (TbPoint){ 500, 150 }, &edge));
      g_assert_cmpfloat_with_epsilon (tb_vec3_dot (edge, globe.near), 0, 1e-12);
      g_assert_cmpfloat_with_epsilon (fabs (tb_globe_point (&globe, edge).x - 200), 100, 1e-9);
    }
}

/* A left-hander's places are the mirror image. */
static void
test_globe_mirror (void)
{
  TbGlobe right = { .centre = { 200, 150 }, .radius = 100 },
          left = { .centre = { 200, 150 }, .radius = 100, .mirrored = TRUE };
  TbVec3 place = { 0.36, 0.48, 0.8 };

  tb_globe_look (&right, tb_vec3 (0.3, 0, 1), tb_vec3 (0, 1, 0));
  tb_globe_look (&left, tb_vec3 (0.3, 0, 1), tb_vec3 (0, 1, 0));
  g_assert_cmpfloat_with_epsilon (tb_globe_point (&right, place).x - 200,
                                  200 - tb_globe_point (&left, place).x, 1e-12);
  g_assert_cmpfloat (tb_globe_point (&right, place).y, ==, tb_globe_point (&left, place).y);
}

/* Layout. */

static TbBall
drilled_ball (void)
{
  TbBall ball = tb_ball_default ();
  TbGrip grip = tb_grip_default ();

  g_assert_cmpint (tb_grip_drill (&grip, &ball), ==, TB_OK);
  return ball;
}

/* What is drawn can be taken hold of where it is drawn, and put back there unchanged. */
static void
test_layout_marks (void)
{
  TbBall ball = drilled_ball ();

  for (int mirrored = 0; mirrored < 2; mirrored++)
    {
      TbLayoutScene scene = tb_layout_scene_for (&ball);
      int found[TB_LAYOUT_MASS_BIAS + 1] = { 0 };

      scene.mirrored = mirrored;
      for (int x = 0; x < 400; x += 3)
        for (int y = 0; y < 400; y += 3)
          found[tb_layout_view_mark_at (400, 400, &scene, (TbPoint){ x, y })]++;
      g_assert_cmpint (found[TB_LAYOUT_PIN], >, 0);
      g_assert_cmpint (found[TB_LAYOUT_PAP], >, 0);
      g_assert_cmpint (found[TB_LAYOUT_MASS_BIAS], >, 0);
      /* The PAP is on the right of a right-hander's ball. */
      for (int x = 0; x < 400; x += 3)
        if (tb_layout_view_mark_at (400, 400, &scene, (TbPoint){ x, 180 }) == TB_LAYOUT_PAP)
          g_assert_true ((x > 200) == !mirrored);
    }
}

static void
test_layout_drag (void)
{
  TbBall ball = drilled_ball ();
  TbLayoutScene scene = tb_layout_scene_for (&ball);
  TbVec3 place;

  for (int x = 120; x <= 300; x += 60)
    {
      TbLayoutPlaces places;
      TbBall moved = ball;

      g_assert_true (tb_layout_view_place (400, 400, &scene, (TbPoint){ x, 90 }, &place));
      tb_layout_move_pin (&moved, place);
      g_assert_cmpint (tb_layout_places (&moved, &places), ==, TB_OK);
      /* Where the layout reaches, the pin is where it was put. */
      if (moved.val_angle > 0)
        g_assert_cmpfloat (tb_vec3_angle (places.pin, place), <, 1e-6);
    }
}

static void
test_layout_text (void)
{
  TbBall ball = tb_ball_default ();
  g_autofree char *whole = tb_layout_text (&ball), *eighth = NULL, *between = NULL;

  g_assert_cmpstr (whole, ==, "50° × 4 in × 40°");
  ball.pin_to_pap = M (4.625);
  eighth = tb_layout_text (&ball);
  g_assert_cmpstr (eighth, ==, "50° × 4⅝ in × 40°");
  ball.pin_to_pap = M (4.57);
  between = tb_layout_text (&ball);
  g_assert_cmpstr (between, ==, "50° × 4.57 in × 40°");
}

static void
test_layout_draws (void)
{
  TbBall ball = drilled_ball ();
  TbLayoutScene scene = tb_layout_scene_for (&ball);
  gboolean outside;
  g_autofree char *text = NULL, *impossible = NULL;

  draw_in_all_sizes (draw_layout, &scene);
  text = draw_once (draw_layout, &scene, 500, 500, &outside);
  g_assert_nonnull (strstr (text, "PAP\n"));
  g_assert_nonnull (strstr (text, "pin\n"));
  g_assert_nonnull (strstr (text, "50°\n"));
  g_assert_nonnull (strstr (text, "40°\n"));
  g_assert_nonnull (strstr (text, "4 in\n"));
  g_assert_nonnull (strstr (text, "would be"));
  ball.intermediate_differential = M (0.1);
  impossible = draw_once (draw_layout, &scene, 500, 500, &outside);
  g_assert_nonnull (strstr (impossible, "cannot be"));
}

static void
test_layout_golden (void)
{
  TbBall ball = drilled_ball ();
  TbLayoutScene scene = tb_layout_scene_for (&ball);
  cairo_surface_t *picture = picture_new (420, 440);
  cairo_t *cr = cairo_create (picture);

  tb_layout_view_draw (cr, 420, 440, &scene);
  cairo_destroy (cr);
  picture_assert_golden (picture, "layout");
  cairo_surface_destroy (picture);
}

/* The sheet has every number of the ball, and stays on its page. */
static void
draw_sheet (cairo_t *cr, double width, double height, gconstpointer data)
{
  tb_layout_sheet_draw (cr, width, height, data);
}

static void
test_sheet (void)
{
  TbBall ball = drilled_ball ();
  TbLayoutSheet sheet = {
    .ball = &ball, .ball_name = "A ball", .bowler_name = "Somebody", .date = "2026-11-25", .mirrored = true
  };
  static const char *const expected[]
      = { "A ball",   "Somebody",    "left-handed", "50° × 4 in × 40°", "4.250 in",
          "0.969 in", "Side weight", "Hardness",    "Never heat a ball" };
  gboolean outside;
  g_autofree char *text
      = draw_once (draw_sheet, &sheet, TB_LAYOUT_SHEET_WIDTH, TB_LAYOUT_SHEET_HEIGHT, &outside);

  g_assert_false (outside);
  for (gsize i = 0; i < G_N_ELEMENTS (expected); i++)
    if (strstr (text, expected[i]) == NULL)
      g_error ("the sheet does not say \"%s\"", expected[i]);
  /* Names may be unknown, and holes too many for an ordinary grip. */
  sheet.ball_name = sheet.bowler_name = sheet.date = NULL;
  ball.n_holes = TB_MAX_HOLES;
  for (int i = 3; i < TB_MAX_HOLES; i++)
    ball.hole[i] = ball.hole[0];
  g_autofree char *unknown
      = draw_once (draw_sheet, &sheet, TB_LAYOUT_SHEET_WIDTH, TB_LAYOUT_SHEET_HEIGHT, &outside);

  g_assert_false (outside);
  g_assert_nonnull (strstr (unknown, "not those of an ordinary grip"));
}

/* Rings. */

static void
test_flare_draws (void)
{
  g_autoptr (TbSetup) setup = house_setup ();
  g_autoptr (TbRun) run = tb_run_new (setup);
  g_autoptr (TbFlare) flare = tb_flare_new (run);
  TbFlareScene scene = { .theme = tb_theme_light (1), .run = run, .flare = flare };
  gboolean outside;
  g_autofree char *text = NULL, *metric = NULL;

  draw_in_all_sizes (draw_flare, &scene);
  text = draw_once (draw_flare, &scene, 900, 450, &outside);
  g_assert_nonnull (strstr (text, "total flare"));
  g_assert_nonnull (strstr (text, "To the next ring"));
  scene.metric = TRUE;
  metric = draw_once (draw_flare, &scene, 900, 450, &outside);
  g_assert_nonnull (strstr (metric, " mm"));
}

static void
test_flare_of_nothing (void)
{
  g_autoptr (TbSetup) setup = house_setup ();
  TbShot shot = setup->shot;
  g_autoptr (TbSetup) broken = NULL;

  shot.ball.mass = NAN;
  broken = tb_setup_with_shot (setup, &shot);

  g_autoptr (TbRun) run = tb_run_new (broken);
  g_autoptr (TbFlare) flare = tb_flare_new (run);
  TbFlareScene scene = { .theme = tb_theme_light (1), .run = run, .flare = flare };

  draw_in_all_sizes (draw_flare, &scene);
}

static void
test_cases_draw (void)
{
  g_autoptr (TbSetup) setup = house_setup ();
  g_autoptr (GPtrArray) cases = tb_flare_cases_new (setup, tb_flare_distances, TB_FLARE_N_DISTANCES);
  TbFlareCasesScene scene = { .theme = tb_theme_dark (1), .cases = cases, .present = M (3.375) };
  gboolean outside;
  g_autofree char *text = NULL;

  draw_in_all_sizes (draw_cases, &scene);
  text = draw_once (draw_cases, &scene, 900, 600, &outside);
  g_assert_nonnull (strstr (text, "pin to PAP 0.00 in"));
  g_assert_nonnull (strstr (text, "pin to PAP 6.75 in"));
  g_ptr_array_set_size (cases, 0);
  draw_in_all_sizes (draw_cases, &scene);
}

/* Curves. */

static void
test_curves_draw (void)
{
  const double x[] = { 1, 2, 3, 4 }, y[] = { 5, 7, NAN, 6 }, level[] = { 3, 3, 3, 3 };
  const TbCurveTick ticks[] = { { 1, "one" }, { 4, "four" } };
  TbCurvePanel panels[] = {
    { .title = "Length",
      .unit = " ft",
      .digits = 1,
      .least_span = 1,
      .dashed = { x, y, 4, 6.5 },
      .solid = { x, level, 4, NAN } },
    { .title = "Nothing", .unit = "", .dashed = { x, y, 0, NAN } },
    { .title = "Level", .unit = "°", .least_span = 1, .solid = { x, level, 4, 3 } },
  };
  TbCurveScene scene = { .theme = tb_theme_light (1),
                         .panels = panels,
                         .n_panels = G_N_ELEMENTS (panels),
                         .ticks = ticks,
                         .n_ticks = G_N_ELEMENTS (ticks),
                         .low = 0.5,
                         .high = 4.5,
                         .present = 2.5,
                         .x_title = "number",
                         .dashed_label = "dashed ones",
                         .solid_label = "solid ones" };
  gboolean outside;
  g_autofree char *text = NULL;

  draw_in_all_sizes (draw_curves, &scene);
  text = draw_once (draw_curves, &scene, 900, 300, &outside);
  g_assert_nonnull (strstr (text, "Length, ft\n"));
  g_assert_nonnull (strstr (text, "6.5 ft\n"));
  g_assert_nonnull (strstr (text, "one\n"));
  g_assert_nonnull (strstr (text, "dashed ones\n"));
  scene.n_panels = 0;
  draw_in_all_sizes (draw_curves, &scene);
}

static void
test_curves_golden (void)
{
  const double x[] = { 1, 2, 3, 4, 5 }, y[] = { 5, 7, 8, 6, 5 }, z[] = { 8, 6, 5, 5, 7 };
  const TbCurveTick ticks[] = { { 1, "one" }, { 3, "three" }, { 5, "five" } };
  const TbCurvePanel panels[] = {
    { .title = "Length",
      .unit = " ft",
      .digits = 1,
      .least_span = 1,
      .dashed = { x, y, 5, 7 },
      .solid = { x, z, 5, 6 } },
    { .title = "Angle", .unit = "°", .digits = 1, .least_span = 1, .solid = { x, y, 5, 7 } },
  };
  TbCurveScene scene = { .theme = tb_theme_light (1),
                         .panels = panels,
                         .n_panels = 2,
                         .ticks = ticks,
                         .n_ticks = 3,
                         .low = 0.8,
                         .high = 5.2,
                         .present = 2,
                         .x_title = "number",
                         .dashed_label = "same line",
                         .solid_label = "own line" };
  cairo_surface_t *picture = picture_new (640, 240);
  cairo_t *cr = cairo_create (picture);

  tb_curve_view_draw (cr, 640, 240, &scene);
  cairo_destroy (cr);
  picture_assert_golden (picture, "curves");
  cairo_surface_destroy (picture);
}

/* Bag. */

static void
test_bag_draws (void)
{
  g_autoptr (TbSetup) setup = house_setup ();
  g_autoptr (TbRun) run = tb_run_new (setup);
  const TbBagPath paths[]
      = { { &run->path, "First ball" },
          { NULL, "No line" },
          { &run->path, "A ball with a name so long that no ladder has room for all of it, ever" } };
  TbBagScene scene = { .theme = tb_theme_light (1),
                       .oil = setup->shot.lane.oil,
                       .oil_scale = 1,
                       .pocket_low = setup->shot.assumed.pocket_low,
                       .pocket_high = setup->shot.assumed.pocket_high,
                       .paths = paths,
                       .n_paths = G_N_ELEMENTS (paths),
                       .chosen = 0 };
  g_autofree char *board
      = g_strdup_printf ("%.1f  First ball\n", tb_board_from_x (run->path.measures.x_at_pins));
  g_autofree char *arrow
      = g_strdup_printf ("%.1f  First ball\n", tb_board_from_x (run->path.measures.x_at_arrows));
  g_autofree char *text = NULL, *at_arrows = NULL;
  gboolean outside;

  draw_in_all_sizes (draw_bag, &scene);
  text = draw_once (draw_bag, &scene, 1000, 400, &outside);
  g_assert_nonnull (strstr (text, board));
  g_assert_null (strstr (text, "No line"));
  g_assert_nonnull (strstr (text, "…"));
  scene.at_arrows = TRUE;
  scene.mirrored = TRUE;
  scene.chosen = G_MAXUINT;
  at_arrows = draw_once (draw_bag, &scene, 1000, 400, &outside);
  g_assert_nonnull (strstr (at_arrows, "board at the arrows"));
  scene.mirrored = FALSE;
  g_free (at_arrows);
  at_arrows = draw_once (draw_bag, &scene, 1000, 400, &outside);
  g_assert_nonnull (strstr (at_arrows, arrow));
  scene.n_paths = 0;
  draw_in_all_sizes (draw_bag, &scene);
}

static void
test_numbers (void)
{
  TbTheme themes[] = { tb_theme_light (1), tb_theme_dark (1), tb_theme_contrast (1) };

  for (gsize i = 0; i < G_N_ELEMENTS (themes); i++)
    for (guint index = 0; index < 24; index++)
      {
        cairo_surface_t *picture = picture_new (24, 24);
        cairo_t *cr = cairo_create (picture);

        tb_bag_view_draw_number (cr, 24, &themes[i], index);
        g_assert_cmpint (cairo_status (cr), ==, CAIRO_STATUS_SUCCESS);
        cairo_destroy (cr);
        cairo_surface_destroy (picture);
      }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/globe/places", test_globe);
  g_test_add_func ("/globe/mirror", test_globe_mirror);
  g_test_add_func ("/layout/marks", test_layout_marks);
  g_test_add_func ("/layout/drag", test_layout_drag);
  g_test_add_func ("/layout/text", test_layout_text);
  g_test_add_func ("/layout/draws", test_layout_draws);
  g_test_add_func ("/layout/golden", test_layout_golden);
  g_test_add_func ("/layout/sheet", test_sheet);
  g_test_add_func ("/flare/draws", test_flare_draws);
  g_test_add_func ("/flare/of-nothing", test_flare_of_nothing);
  g_test_add_func ("/flare/cases", test_cases_draw);
  g_test_add_func ("/curves/draw", test_curves_draw);
  g_test_add_func ("/curves/golden", test_curves_golden);
  g_test_add_func ("/bag/draws", test_bag_draws);
  g_test_add_func ("/bag/numbers", test_numbers);
  return g_test_run ();
}
