/* Pictures of room, patterns, worn lanes and lines: lines of equal value where they belong, labels inside the
 * picture and off each other, places and the way back, every size from nothing on.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include <math.h>
#include <string.h>
#include "picture.h"
#include "tb-canvas.h"
#include "tb-contour.h"
#include "tb-lines-view.h"
#include "tb-pattern-view.h"
#include "tb-room-tint.h"
#include "tb-room-view.h"

/* Sizes from nothing to a large screen. */
static const struct
{
  int width, height;
} sizes[] = { { 1, 1 }, { 40, 30 }, { 160, 400 }, { 500, 420 }, { 1280, 500 }, { 1920, 1080 } };

static TbPattern *
house (void)
{
  TbStripsPlan plan = { .length = tb_metres_from_ft (40),
                        .volume = tb_cubic_metres_from_ml (24),
                        .ratio = 6,
                        .taper = tb_metres_from_ft (3) };
  TbStrip strips[TB_STRIPS_PLAN_COUNT];

  g_assert_true (tb_strips_plan (&plan, strips));
  return tb_pattern_new_strips (NULL, "House", strips, TB_STRIPS_PLAN_COUNT, NULL);
}

static TbSetup *
setup_on (TbPattern *pattern)
{
  TbShot shot = tb_shot_default ();

  return tb_setup_new (&shot, pattern);
}

typedef void (*Draw) (cairo_t *cr, double width, double height, gconstpointer data);

/* Labels that were written. */
typedef struct Seen
{
  GPtrArray *text;
  GArray *box;
  double width, height;
} Seen;

static bool
see (const char *text, const cairo_rectangle_t *box, void *data)
{
  Seen *seen = data;

  g_ptr_array_add (seen->text, g_strdup (text));
  g_array_append_val (seen->box, *box);
  return true;
}

static gboolean
is_outside (const Seen *seen, const cairo_rectangle_t *box)
{
  const double slack = 1.5;

  return box->x < -slack || box->y < -slack || box->x + box->width > seen->width + slack
         || box->y + box->height > seen->height + slack;
}

static gboolean
overlap (const cairo_rectangle_t *a, const cairo_rectangle_t *b)
{
  const double slack = 1;

  return a->x + slack < b->x + b->width && b->x + slack < a->x + a->width && a->y + slack < b->y + b->height
         && b->y + slack < a->y + a->height;
}

static void
check_labels (const Seen *seen)
{
  for (guint i = 0; i < seen->box->len; i++)
    {
      const cairo_rectangle_t *box = &g_array_index (seen->box, cairo_rectangle_t, i);
      const char *text = g_ptr_array_index (seen->text, i);

      if (is_outside (seen, box))
        g_test_fail_printf ("“%s” leaves a picture of %.0f × %.0f", text, seen->width, seen->height);
      for (guint j = 0; j < i; j++)
        if (overlap (box, &g_array_index (seen->box, cairo_rectangle_t, j)))
          g_test_fail_printf ("“%s” lies over “%s” in a picture of %.0f × %.0f", text,
                              (const char *)g_ptr_array_index (seen->text, j), seen->width, seen->height);
    }
}

static gboolean
was_written (const Seen *seen, const char *text)
{
  for (guint i = 0; i < seen->text->len; i++)
    if (strstr (g_ptr_array_index (seen->text, i), text))
      return TRUE;
  return FALSE;
}

static void
draw_in (Draw draw, gconstpointer data, int width, int height, Seen *seen)
{
  cairo_surface_t *picture = picture_new (width, height);
  cairo_t *cr = cairo_create (picture);

  *seen = (Seen){ g_ptr_array_new_with_free_func (g_free),
                  g_array_new (FALSE, FALSE, sizeof (cairo_rectangle_t)), width, height };
  tb_canvas_set_label_hook (cr, see, seen);
  draw (cr, width, height, data);
  g_assert_cmpint (cairo_status (cr), ==, CAIRO_STATUS_SUCCESS);
  cairo_destroy (cr);
  cairo_surface_destroy (picture);
}

static void
seen_clear (Seen *seen)
{
  g_ptr_array_unref (seen->text);
  g_array_unref (seen->box);
}

static void
draw_in_all_sizes (Draw draw, gconstpointer data)
{
  for (gsize i = 0; i < G_N_ELEMENTS (sizes); i++)
    {
      Seen seen;

      draw_in (draw, data, sizes[i].width, sizes[i].height, &seen);
      if (MIN (sizes[i].width, sizes[i].height) >= 400)
        check_labels (&seen);
      seen_clear (&seen);
    }
}

/* Contours. */

static double
round_hill (int column, int row, gconstpointer data)
{
  return -hypot (column - 10, row - 10);
}

static double
plane (int column, int row, gconstpointer data)
{
  return column == 7 && data ? (double)NAN : column + 2 * row;
}

/* On a plane the line is straight and whole: x + 2 y = 11.5. */
static void
test_contour_plane (void)
{
  TbContourGrid grid = { 20, 20, plane, NULL };
  g_autoptr (GArray) pieces = g_array_new (FALSE, FALSE, sizeof (TbPoint));
  double length = 0;

  tb_contour_trace (&grid, 11.5, pieces);
  for (guint i = 0; i < pieces->len; i += 2)
    {
      TbPoint a = g_array_index (pieces, TbPoint, i), b = g_array_index (pieces, TbPoint, i + 1);

      g_assert_cmpfloat (fabs (a.x + 2 * a.y - 11.5), <, 1e-9);
      g_assert_cmpfloat (fabs (b.x + 2 * b.y - 11.5), <, 1e-9);
      length += hypot (b.x - a.x, b.y - a.y);
    }
  g_assert_cmpfloat (fabs (length - hypot (11.5, 5.75)), <, 1e-9);
}

/* A circle of radius 6 closes: its length is that of a circle to a hundredth, and its high side lies on the
 * left. */
static void
test_contour_circle (void)
{
  TbContourGrid grid = { 21, 21, round_hill, NULL };
  g_autoptr (GArray) pieces = g_array_new (FALSE, FALSE, sizeof (TbPoint));
  double length = 0, area = 0;

  tb_contour_trace (&grid, -6, pieces);
  for (guint i = 0; i < pieces->len; i += 2)
    {
      TbPoint a = g_array_index (pieces, TbPoint, i), b = g_array_index (pieces, TbPoint, i + 1);

      length += hypot (b.x - a.x, b.y - a.y);
      area += 0.5 * (a.x * b.y - a.y * b.x);
    }
  g_assert_cmpfloat (fabs (length / (2 * G_PI * 6) - 1), <, 0.01);
  g_assert_cmpfloat (fabs (area / (G_PI * 36) - 1), <, 0.02);
}

/* No line runs where there is no value. */
static void
test_contour_hole (void)
{
  TbContourGrid grid = { 20, 20, plane, "hole" };
  g_autoptr (GArray) pieces = g_array_new (FALSE, FALSE, sizeof (TbPoint));

  tb_contour_trace (&grid, 11.5, pieces);
  g_assert_cmpuint (pieces->len, >, 0);
  for (guint i = 0; i < pieces->len; i++)
    {
      double x = g_array_index (pieces, TbPoint, i).x;

      g_assert_true (x <= 6 + 1e-9 || x >= 8 - 1e-9);
    }
}

/* Room. */

typedef struct Room
{
  TbPattern *pattern;
  TbSetup *setup;
  TbRoomMap *map;
  TbRoomWidth width[TB_ROOM_AXES];
  TbRoomScene scene;
} Room;

static void
room_init (Room *room)
{
  TbRoomAxis axis[TB_ROOM_AXES] = { tb_room_axis (TB_MISS_AIM, 17), tb_room_axis (TB_MISS_SPEED, 17) };

  *room = (Room){ .pattern = house (), .scene = tb_room_scene_default () };
  room->setup = setup_on (room->pattern);
  room->map = tb_room_map_new (room->setup, axis, 0, NULL, NULL, NULL);
  for (int i = 0; i < TB_ROOM_AXES; i++)
    room->width[i] = (TbRoomWidth){ TRUE, -0.6, 0.7, FALSE, FALSE };
  room->scene.before = room->scene.after
      = (TbRoomPanel){ room->map, { &room->width[0], &room->width[1] }, "after" };
  room->scene.before.label = "before";
}

static void
room_clear (Room *room)
{
  tb_room_map_unref (room->map);
  tb_setup_unref (room->setup);
  tb_pattern_unref (room->pattern);
}

static void
draw_room (cairo_t *cr, double width, double height, gconstpointer data)
{
  tb_room_view_draw (cr, width, height, data);
}

static void
test_room (void)
{
  Room room;
  Seen seen;

  room_init (&room);
  draw_in_all_sizes (draw_room, &room.scene);
  draw_in (draw_room, &room.scene, 1200, 560, &seen);
  g_assert_true (was_written (&seen, "before") && was_written (&seen, "after"));
  /* The pocket's edges are told in words, not by colour alone. */
  g_assert_true (was_written (&seen, "16.5") && was_written (&seen, "18.5"));
  g_assert_true (was_written (&seen, "1.3 boards") && was_written (&seen, "1.3 mph"));
  g_assert_true (was_written (&seen, "in the gutter"));
  seen_clear (&seen);
  /* 1.3 mph. */
  room.scene.metric = TRUE;
  draw_in (draw_room, &room.scene, 1200, 560, &seen);
  g_assert_true (was_written (&seen, "1.3 boards") && was_written (&seen, "2.1 km/h"));
  g_assert_true (was_written (&seen, "Speed: off 27.4 km/h"));
  seen_clear (&seen);
  room.scene.before.map = NULL;
  draw_in_all_sizes (draw_room, &room.scene);
  room.scene.after.map = NULL;
  draw_in_all_sizes (draw_room, &room.scene);
  room_clear (&room);
}

static void
test_room_places (void)
{
  const double after[2] = { 900, 250 }, before[2] = { 300, 250 }, nowhere[2] = { 1, 1 };
  double miss[TB_ROOM_AXES], moved[TB_ROOM_AXES];
  gboolean is_before = TRUE;
  Room room;

  room_init (&room);
  g_assert_true (tb_room_view_to_miss (1200, 560, &room.scene, after, miss, &is_before));
  g_assert_false (is_before);
  g_assert_true (tb_room_view_to_miss (1200, 560, &room.scene, before, moved, &is_before));
  g_assert_true (is_before);
  /* Right is more, and up is more. */
  g_assert_true (tb_room_view_to_miss (1200, 560, &room.scene, (double[]){ 950, 200 }, moved, &is_before));
  g_assert_cmpfloat (moved[0], >, miss[0]);
  g_assert_cmpfloat (moved[1], >, miss[1]);
  g_assert_false (tb_room_view_to_miss (1200, 560, &room.scene, nowhere, miss, &is_before));
  room_clear (&room);
}

static double
luminance (TbColor color)
{
  return 0.2126 * color.red + 0.7152 * color.green + 0.0722 * color.blue;
}

/* In and out of the pocket differ in lightness, on either ground, so that no colour vision is needed; light
 * shots are bluer than high ones. */
static void
test_room_colors (void)
{
  const TbTheme themes[] = { tb_theme_light (1), tb_theme_dark (1), tb_theme_contrast (1) };
  TbPocketBoards pocket = { 16.5, 18.5 };

  for (guint i = 0; i < G_N_ELEMENTS (themes); i++)
    {
      TbColor in = tb_room_color (&themes[i], &pocket, 17.5), low = tb_room_color (&themes[i], &pocket, 16.4);
      TbColor high = tb_room_color (&themes[i], &pocket, 18.6), far = tb_room_color (&themes[i], &pocket, 5);

      g_assert_cmpfloat (luminance (in) - luminance (low), >, 0.08);
      g_assert_cmpfloat (luminance (in) - luminance (high), >, 0.05);
      g_assert_cmpfloat (luminance (low), >, luminance (far));
      g_assert_cmpfloat (low.blue, >, high.blue);
    }
}

/* Patterns. */

static void
draw_pattern (cairo_t *cr, double width, double height, gconstpointer data)
{
  tb_pattern_view_draw (cr, width, height, data);
}

static TbPatternScene
pattern_scene (const TbPattern *pattern)
{
  TbPatternScene scene = tb_pattern_scene_default ();

  scene.oil = &pattern->oil;
  scene.strips = pattern->strips;
  scene.n_strips = pattern->n_strips;
  scene.selected = 4;
  scene.cursor_x = tb_x_from_board (12);
  return scene;
}

static void
test_pattern (void)
{
  g_autoptr (TbPattern) pattern = house ();
  TbPatternScene scene = pattern_scene (pattern);
  Seen seen;

  draw_in_all_sizes (draw_pattern, &scene);
  scene.earlier = scene.oil;
  scene.earlier_label = "fresh";
  scene.label = "after 3 games";
  scene.strips = NULL;
  scene.n_strips = 0;
  draw_in_all_sizes (draw_pattern, &scene);
  draw_in (draw_pattern, &scene, 900, 600, &seen);
  g_assert_true (was_written (&seen, "fresh") && was_written (&seen, "after 3 games"));
  g_assert_true (was_written (&seen, "along board 12") && was_written (&seen, "across at 15.0 ft"));
  seen_clear (&seen);
}

/* px of a place on the lane, by halving. */
static void
place_of (const TbPatternScene *scene, double x, double y, double at[2])
{
  const double a[2] = { 100, 100 }, b[2] = { 200, 200 };
  double lane_a[2], lane_b[2];

  tb_pattern_view_to_lane (900, 600, scene, a, lane_a);
  tb_pattern_view_to_lane (900, 600, scene, b, lane_b);
  at[0] = 100 + 100 * (y - lane_a[1]) / (lane_b[1] - lane_a[1]);
  at[1] = 100 + 100 * (x - lane_a[0]) / (lane_b[0] - lane_a[0]);
}

/* The chosen strip's handles lie on its edges, and are found there; another strip's edge is found as that
 * strip. */
static void
test_pattern_handles (void)
{
  g_autoptr (TbPattern) pattern = house ();
  TbPatternScene scene = pattern_scene (pattern);
  const TbStrip *strip = &pattern->strips[4];
  double left = TB_LANE_HALF_WIDTH - strip->left_board * TB_BOARD_WIDTH;
  double right = TB_LANE_HALF_WIDTH - (strip->right_board - 1) * TB_BOARD_WIDTH, middle = 0.5 * strip->end,
         at[2];

  place_of (&scene, 0.5 * (left + right), strip->end, at);
  g_assert_cmpint (tb_pattern_view_hit (900, 600, &scene, at).part, ==, TB_PATTERN_END);
  place_of (&scene, 0.5 * (left + right), strip->start, at);
  g_assert_cmpint (tb_pattern_view_hit (900, 600, &scene, at).part, ==, TB_PATTERN_START);
  place_of (&scene, left, middle, at);
  g_assert_cmpint (tb_pattern_view_hit (900, 600, &scene, at).part, ==, TB_PATTERN_LEFT);
  place_of (&scene, right, middle, at);
  g_assert_cmpint (tb_pattern_view_hit (900, 600, &scene, at).part, ==, TB_PATTERN_RIGHT);
  place_of (&scene, left, strip->end - strip->taper, at);
  g_assert_cmpint (tb_pattern_view_hit (900, 600, &scene, at).part, ==, TB_PATTERN_TAPER);
  place_of (&scene, TB_LANE_HALF_WIDTH, tb_metres_from_ft (35), at);
  g_assert_cmpint (tb_pattern_view_hit (900, 600, &scene, at).part, ==, TB_PATTERN_STRIP);
  g_assert_cmpint (tb_pattern_view_hit (900, 600, &scene, at).strip, ==, 0);
  place_of (&scene, 0, tb_metres_from_ft (55), at);
  g_assert_cmpint (tb_pattern_view_hit (900, 600, &scene, at).part, ==, TB_PATTERN_LANE);
}

/* Lines. */

static void
draw_lines (cairo_t *cr, double width, double height, gconstpointer data)
{
  tb_lines_view_draw (cr, width, height, data);
}

static void
test_lines (void)
{
  g_autoptr (TbPattern) pattern = house ();
  g_autoptr (TbSetup) setup = setup_on (pattern);
  g_autoptr (TbRun) run = tb_run_new (setup);
  g_autoptr (TbFamily) family = tb_family_new (setup, 2, 1, TRUE);
  TbSpare spare = tb_spare_straight (setup, 9, 27);
  TbLinesScene scene = {
    .lane = tb_lane_scene_default (), .family = family, .delivery = &setup->shot.delivery, .spare = &spare
  };

  scene.lane.oil = &pattern->oil;
  scene.lane.oil_scale = 1;
  scene.lane.after = &run->path;
  scene.lane.pocket_low = setup->shot.assumed.pocket_low;
  scene.lane.pocket_high = setup->shot.assumed.pocket_high;
  for (gsize i = 0; i < G_N_ELEMENTS (sizes); i++)
    {
      Seen seen;

      draw_in (draw_lines, &scene, sizes[i].width, sizes[i].height, &seen);
      seen_clear (&seen);
    }
}

/* A handle is found where it is drawn, on the board it stands for, for either hand. */
static void
check_handle (TbLinesScene *scene, TbLineHandle handle, double x, double y)
{
  double at[2];

  tb_lane_view_to_picture (500, 700, &scene->lane, scene->lane.mirrored ? -x : x, y, &at[0], &at[1]);
  g_assert_cmpint (tb_lines_view_handle_at (500, 700, scene, at), ==, handle);
  g_assert_cmpfloat (fabs (tb_lines_view_board (500, 700, scene, at) - tb_board_from_x (x)), <, 0.02);
}

static void
test_line_handles (void)
{
  TbDelivery delivery = tb_delivery_default ();
  TbLinesScene scene = { .lane = tb_lane_scene_default (), .delivery = &delivery };
  const double nowhere[2] = { 250, 200 };

  for (int left = 0; left < 2; left++)
    {
      scene.lane.mirrored = left;
      check_handle (&scene, TB_LINE_LAYDOWN, delivery.laydown, 0);
      check_handle (&scene, TB_LINE_AIM, delivery.aim, TB_ARROWS_Y);
    }
  g_assert_cmpint (tb_lines_view_handle_at (500, 700, &scene, nowhere), ==, TB_LINE_NOWHERE);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/lane-play/contour-plane", test_contour_plane);
  g_test_add_func ("/lane-play/contour-circle", test_contour_circle);
  g_test_add_func ("/lane-play/contour-hole", test_contour_hole);
  g_test_add_func ("/lane-play/room", test_room);
  g_test_add_func ("/lane-play/room-places", test_room_places);
  g_test_add_func ("/lane-play/room-colors", test_room_colors);
  g_test_add_func ("/lane-play/pattern", test_pattern);
  g_test_add_func ("/lane-play/pattern-handles", test_pattern_handles);
  g_test_add_func ("/lane-play/lines", test_lines);
  g_test_add_func ("/lane-play/line-handles", test_line_handles);
  return g_test_run ();
}
