/* No label lies over another or leaves the picture, at any size, and those that matter are there.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include <glib.h>
#include <string.h>
#include "picture.h"
#include "scenes.h"
#include "tb-canvas.h"

static Scenes scenes;

typedef struct Recorded
{
  char *text;
  cairo_rectangle_t box;
} Recorded;

static bool
record (const char *text, const cairo_rectangle_t *box, void *data)
{
  Recorded recorded = { g_strdup (text), *box };

  g_array_append_val ((GArray *) data, recorded);
  return true;
}

static void
clear_recorded (void *data)
{
  g_free (((Recorded *) data)->text);
}

static GArray *
new_record (void)
{
  GArray *labels = g_array_new (FALSE, FALSE, sizeof (Recorded));

  g_array_set_clear_func (labels, clear_recorded);
  return labels;
}

/* Rounding of positions is not an overlap, px. */
#define SLACK 0.01

static gboolean
overlap (const cairo_rectangle_t *a, const cairo_rectangle_t *b)
{
  return a->x + SLACK < b->x + b->width && b->x + SLACK < a->x + a->width && a->y + SLACK < b->y + b->height
         && b->y + SLACK < a->y + a->height;
}

typedef struct Picture
{
  const char *what;
  int width, height;
  double text_scale;
} Picture;

static void
check_labels (GArray *labels, const Picture *picture)
{
  for (guint i = 0; i < labels->len; i++)
    {
      const Recorded *a = &g_array_index (labels, Recorded, i);

      if (a->box.x < 0 || a->box.y < 0 || a->box.x + a->box.width > picture->width
          || a->box.y + a->box.height > picture->height)
        {
          g_test_message ("%s %d×%d, text ×%g: \"%s\" leaves the picture (%.1f %.1f %.1f×%.1f)",
                          picture->what, picture->width, picture->height, picture->text_scale, a->text,
                          a->box.x, a->box.y, a->box.width, a->box.height);
          g_test_fail ();
        }
      for (guint j = 0; j < i; j++)
        {
          const Recorded *b = &g_array_index (labels, Recorded, j);

          if (overlap (&a->box, &b->box))
            {
              g_test_message ("%s %d×%d, text ×%g: \"%s\" lies over \"%s\"", picture->what, picture->width,
                              picture->height, picture->text_scale, a->text, b->text);
              g_test_fail ();
            }
        }
    }
}

static gboolean
has_label (GArray *labels, const char *beginning)
{
  for (guint i = 0; i < labels->len; i++)
    if (g_str_has_prefix (g_array_index (labels, Recorded, i).text, beginning))
      return TRUE;
  return FALSE;
}

static void
expect_labels (GArray *labels, const Picture *picture, const char *const *expected)
{
  for (guint i = 0; expected[i] != NULL; i++)
    if (!has_label (labels, expected[i]))
      {
        g_test_message ("%s %d×%d, text ×%g: \"%s\" is missing", picture->what, picture->width,
                        picture->height, picture->text_scale, expected[i]);
        g_test_fail ();
      }
}

static const int sizes[][2] = {
  { 240, 240 },  { 320, 240 },   { 240, 480 },  { 320, 480 },   { 480, 320 },  { 480, 640 },
  { 500, 690 },  { 640, 400 },   { 800, 300 },  { 800, 600 },   { 1024, 600 }, { 1280, 800 },
  { 400, 1200 }, { 1920, 1080 }, { 2560, 700 }, { 3840, 2160 },
};
static const double text_scales[] = { 1, 1.3, 1.7, 2, 2.5 };

/* Draws on nothing, but as large as the picture: only the labels matter. */
static cairo_t *
new_context (const Picture *picture, GArray *labels)
{
  cairo_rectangle_t extents = { 0, 0, picture->width, picture->height };
  cairo_surface_t *surface = cairo_recording_surface_create (CAIRO_CONTENT_COLOR, &extents);
  cairo_t *cr = cairo_create (surface);

  cairo_surface_destroy (surface);
  tb_canvas_set_label_hook (cr, record, labels);
  return cr;
}

typedef void (*DrawLabels) (cairo_t *cr, const Picture *picture);

static void
check_everywhere (const char *what, DrawLabels draw, const char *const *expected)
{
  for (guint i = 0; i < G_N_ELEMENTS (sizes); i++)
    for (guint j = 0; j < G_N_ELEMENTS (text_scales); j++)
      {
        Picture picture = { what, sizes[i][0], sizes[i][1], text_scales[j] };
        g_autoptr (GArray) labels = new_record ();
        cairo_t *cr = new_context (&picture, labels);

        draw (cr, &picture);
        g_assert_cmpint (cairo_status (cr), ==, CAIRO_STATUS_SUCCESS);
        cairo_destroy (cr);
        check_labels (labels, &picture);
        if (expected != NULL)
          expect_labels (labels, &picture, expected);
      }
}

static void
draw_lane (cairo_t *cr, const Picture *picture, TbLaneScene scene)
{
  scene.theme = tb_theme_light (picture->text_scale);
  tb_lane_view_draw (cr, picture->width, picture->height, &scene);
}

static void
draw_plan (cairo_t *cr, const Picture *picture)
{
  draw_lane (cr, picture, scenes_lane (&scenes, TB_LANE_PLAN));
}

static void
draw_sideways (cairo_t *cr, const Picture *picture)
{
  draw_lane (cr, picture, scenes_lane (&scenes, TB_LANE_PLAN_SIDEWAYS));
}

static void
draw_approach (cairo_t *cr, const Picture *picture)
{
  draw_lane (cr, picture, scenes_lane (&scenes, TB_LANE_FROM_APPROACH));
}

static const char *const lane_labels[] = { "before 1", "after 1", "60 ft", "0", "20", "boards; ", NULL };

static void
test_lane (void)
{
  check_everywhere ("plan", draw_plan, lane_labels);
  check_everywhere ("sideways", draw_sideways, lane_labels);
  check_everywhere ("from the approach", draw_approach, lane_labels);
}

/* Where every label wants to be in the same place. */
static void
draw_crowded (cairo_t *cr, const Picture *picture)
{
  for (int projection = TB_LANE_PLAN; projection <= TB_LANE_FROM_APPROACH; projection++)
    {
      TbLaneScene scene = scenes_lane (&scenes, (TbLaneProjection) projection);
      g_autoptr (GArray) labels = new_record ();
      cairo_t *own = new_context (picture, labels);

      scene.before = scene.after;
      scene.before_label = "the throw before the ball was resurfaced";
      scene.cursor_y = scene.after->measures.breakpoint_y;
      draw_lane (own, picture, scene);
      cairo_destroy (own);
      check_labels (labels, picture);
    }
}

static void
test_crowded (void)
{
  check_everywhere ("crowded", draw_crowded, NULL);
}

static void
draw_gutter (cairo_t *cr, const Picture *picture)
{
  TbLaneScene scene = scenes_lane (&scenes, TB_LANE_PLAN);

  scene.after = &scenes.gutter->path;
  draw_lane (cr, picture, scene);
}

static void
test_gutter (void)
{
  static const char *const said[] = { "after: gutter at ", NULL };

  check_everywhere ("gutter", draw_gutter, said);
}

/* Middle of the label of a run's breakpoint across the lane, px; NAN if there was no room for it. */
static double
breakpoint_label (GArray *labels, const TbPath *path, TbLaneProjection projection)
{
  double board = tb_board_from_x (path->measures.breakpoint_x),
         ft = tb_ft_from_metres (path->measures.breakpoint_y);
  g_autofree char *wide = g_strdup_printf ("%.1f at %.0f ft", board, ft);
  g_autofree char *narrow = g_strdup_printf ("%.1f\n%.0f ft", board, ft);

  for (guint i = 0; i < labels->len; i++)
    {
      const Recorded *label = &g_array_index (labels, Recorded, i);

      if (g_str_equal (label->text, wide) || g_str_equal (label->text, narrow))
        return projection == TB_LANE_PLAN_SIDEWAYS ? label->box.y + 0.5 * label->box.height
                                                   : label->box.x + 0.5 * label->box.width;
    }
  return NAN;
}

/* The label of the inner breakpoint lies inside of that of the outer one, whichever throw turns where:
 * crossed, each would seem to speak of the other. Lower boards are right in the plan and below in the one
 * sideways. */
static void
test_each_beside_its_own (void)
{
  SyntheticShape shape = synthetic_pocket;
  g_autofree Synthetic *more = NULL;
  const TbPath *inner, *outer = &scenes.pocket->path;
  guint seen = 0;

  /* So much more hook that a label has room on either side of the run, and lies over the other on one of
   * them. */
  shape.hook_boards += 6;
  more = synthetic_new (&shape);
  inner = &more->path;
  g_assert_cmpfloat (inner->measures.breakpoint_x, <, outer->measures.breakpoint_x);
  for (int projection = TB_LANE_PLAN; projection <= TB_LANE_PLAN_SIDEWAYS; projection++)
    for (guint i = 0; i < 2 * G_N_ELEMENTS (sizes); i++)
      {
        TbLaneScene scene = scenes_lane (&scenes, (TbLaneProjection) projection);
        Picture picture = { "beside", sizes[i / 2][0], sizes[i / 2][1], 1 };
        g_autoptr (GArray) labels = new_record ();
        cairo_t *cr = new_context (&picture, labels);
        double in, out;

        /* In the smallest the two runs are one line. */
        if (picture.width < 480)
          {
            cairo_destroy (cr);
            continue;
          }
        scene.before = i % 2 ? inner : outer;
        scene.after = i % 2 ? outer : inner;
        draw_lane (cr, &picture, scene);
        cairo_destroy (cr);
        in = breakpoint_label (labels, inner, scene.projection);
        out = breakpoint_label (labels, outer, scene.projection);
        if (isnan (in) || isnan (out))
          continue;
        seen++;
        if (in >= out)
          {
            g_test_message ("%s %d×%d, %s: crossed", projection == TB_LANE_PLAN ? "plan" : "sideways",
                            picture.width, picture.height, i % 2 ? "after outside" : "after inside");
            g_test_fail ();
          }
      }
  g_assert_cmpuint (seen, >, G_N_ELEMENTS (sizes));
}

/* What a picture of an ordinary size has besides. */
static void
test_ordinary (void)
{
  static const char *const said[]
      = { "before 1", "after 1", "pocket", "skid", "hook",      "roll", "oil film",
          "10",       "60",      "5",      "35",   "foul line", NULL };
  Picture picture = { "plan", 480, 640, 1 };
  g_autoptr (GArray) labels = new_record ();
  cairo_t *cr = new_context (&picture, labels);

  draw_plan (cr, &picture);
  cairo_destroy (cr);
  expect_labels (labels, &picture, said);
}

/* Before a room is shown where the balls end, it is told which throw is which, and no number. */
static void
test_names (void)
{
  Picture picture = { "strip", 1200, 400, 2 };
  TbLaneScene scene = scenes_lane (&scenes, TB_LANE_PLAN_SIDEWAYS);
  g_autoptr (GArray) labels = new_record ();
  cairo_t *cr = new_context (&picture, labels);

  scene.theme = tb_theme_light (picture.text_scale);
  tb_lane_view_draw_names (cr, picture.width, picture.height, &scene);
  cairo_destroy (cr);
  check_labels (labels, &picture);
  g_assert_cmpuint (labels->len, ==, 2);
  g_assert_cmpstr (g_array_index (labels, Recorded, 0).text, ==, "before");
  g_assert_cmpstr (g_array_index (labels, Recorded, 1).text, ==, "after");
}

static void
draw_ball (cairo_t *cr, const Picture *picture)
{
  /* Through a whole turn, so that every label has been in every corner. */
  for (int i = 0; i < 6; i++)
    {
      TbBallScene scene
          = scenes_ball (&scenes, i % 2 == 0 ? TB_BALL_FROM_BEHIND : TB_BALL_FROM_SIDE, 0.6 + 0.04 * i);
      g_autoptr (GArray) labels = new_record ();
      static const char *const said[] = { "spin axis", "PAP", "from ", "pin", "grip", "track", NULL };
      cairo_t *own = new_context (picture, labels);

      scene.theme = tb_theme_light (picture->text_scale);
      tb_ball_view_draw (own, picture->width, picture->height, &scene);
      cairo_destroy (own);
      check_labels (labels, picture);
      expect_labels (labels, picture, said);
    }
}

static void
test_ball (void)
{
  check_everywhere ("ball", draw_ball, NULL);
}

static void
draw_loft (cairo_t *cr, const Picture *picture)
{
  TbLoftScene scene = scenes_loft (&scenes);

  scene.theme = tb_theme_light (picture->text_scale);
  tb_loft_view_draw (cr, picture->width, picture->height, &scene);
}

static void
test_loft (void)
{
  static const char *const said[] = { "before: ", "after: ", "foul line", "15", "feet; ", NULL };

  check_everywhere ("loft", draw_loft, said);
}

static void
draw_page (cairo_t *cr, const Picture *picture)
{
  TbPageScene scene = scenes_page (&scenes);

  scene.theme = tb_theme_light (picture->text_scale);
  tb_page_view_draw (cr, picture->width, picture->height, &scene);
}

static void
test_page (void)
{
  static const char *const said[] = { "before 1", "after 1", "spin axis", "foul line", NULL };

  check_everywhere ("page", draw_page, said);
}

/* The check itself: two labels in one place are found, and one outside. */
static void
test_can_fail (void)
{
  cairo_rectangle_t a = { 0, 0, 10, 10 }, b = { 9, 9, 10, 10 }, c = { 10, 0, 10, 10 };

  g_assert_true (overlap (&a, &b));
  g_assert_false (overlap (&a, &c));
}

/* A hook that refuses leaves the letters out. */
static bool
refuse (const char *text, const cairo_rectangle_t *box, void *data)
{
  return false;
}

static void
test_refusing_hook (void)
{
  TbTheme theme = tb_theme_light (1);
  cairo_surface_t *with = picture_new (100, 40), *without = picture_new (100, 40),
                  *blank = picture_new (100, 40);
  cairo_surface_t *pictures[] = { with, without };

  for (int i = 0; i < 2; i++)
    {
      cairo_t *cr = cairo_create (pictures[i]);
      TbCanvas canvas;
      TbLabel label = { .text = "label", .x = 20, .y = 10, .color = { 1, 1, 1, 1 } };

      if (i == 1)
        tb_canvas_set_label_hook (cr, refuse, NULL);
      tb_canvas_init (&canvas, cr, 100, 40, &theme);
      tb_canvas_label (&canvas, &label);
      tb_canvas_clear (&canvas);
      cairo_destroy (cr);
    }
  for (int i = 0; i < 2; i++)
    {
      PictureDifference difference = picture_compare (pictures[i], blank);

      g_assert_cmpint (difference.worst > 0, ==, i == 0);
      cairo_surface_destroy (difference.picture);
      cairo_surface_destroy (pictures[i]);
    }
  cairo_surface_destroy (blank);
}

int
main (int argc, char **argv)
{
  int status;

  g_test_init (&argc, &argv, NULL);
  scenes_init (&scenes);
  g_test_add_func ("/labels/lane", test_lane);
  g_test_add_func ("/labels/crowded", test_crowded);
  g_test_add_func ("/labels/gutter", test_gutter);
  g_test_add_func ("/labels/each-beside-its-own", test_each_beside_its_own);
  g_test_add_func ("/labels/ordinary", test_ordinary);
  g_test_add_func ("/labels/names", test_names);
  g_test_add_func ("/labels/ball", test_ball);
  g_test_add_func ("/labels/loft", test_loft);
  g_test_add_func ("/labels/page", test_page);
  g_test_add_func ("/labels/can-fail", test_can_fail);
  g_test_add_func ("/labels/refusing-hook", test_refusing_hook);
  status = g_test_run ();
  scenes_clear (&scenes);
  return status;
}
