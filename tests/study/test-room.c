/* Room: maps that equal single shots bit for bit, come coarse first and stop when told; widths whose edges
 * are edges; hold and recovery of a house pattern against a flat one; the chance and its error.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include <math.h>
#include <string.h>

#include "lane-support.h"
#include "tb-room-worker.h"

#define ACROSS 13
#define UP 11

static void
small_axes (TbRoomAxis axis[TB_ROOM_AXES])
{
  axis[0] = tb_room_axis (TB_MISS_AIM, ACROSS);
  axis[1] = tb_room_axis (TB_MISS_SPEED, UP);
}

/* Bit for bit, but for what lies between the numbers. */
static gboolean
same_point (const TbRoomPoint *a, const TbRoomPoint *b)
{
  return a->status == b->status
         && memcmp (&a->x_at_arrows, &b->x_at_arrows, sizeof *a - offsetof (TbRoomPoint, x_at_arrows)) == 0;
}

static void
check_point (const TbRoomMap *map, int across, int up)
{
  g_autofree TbWorkspace *workspace = g_malloc (tb_workspace_size ());
  const TbRoomPoint *point = tb_room_map_point (map, across, up);
  TbShot shot = tb_room_map_shot (map, across, up);
  TbPath path = { 0 };

  g_assert_cmpint (tb_shot_run (&shot, workspace, &path, NULL), ==, point->status);
  if (point->status != TB_OK)
    return;
  g_assert_cmpmem (&path.measures.x_at_pins, sizeof (double), &point->x_at_pins, sizeof (double));
  g_assert_cmpmem (&path.measures.angle_at_pins, sizeof (double), &point->angle_at_pins, sizeof (double));
  g_assert_cmpmem (&path.measures.x_at_arrows, sizeof (double), &point->x_at_arrows, sizeof (double));
  g_assert_cmpmem (&path.measures.breakpoint_y, sizeof (double), &point->breakpoint_y, sizeof (double));
  g_assert_cmpmem (&path.measures.gutter_y, sizeof (double), &point->gutter_y, sizeof (double));
}

/* Every point, thrown by itself; and the map of two threads against the map of one. */
static void
test_single_shots (void)
{
  g_autoptr (TbPattern) pattern = lane_house ();
  g_autoptr (TbSetup) setup = lane_setup (pattern, 24);
  TbRoomAxis axis[TB_ROOM_AXES];
  g_autoptr (TbRoomMap) one = NULL;
  g_autoptr (TbRoomMap) two = NULL;

  small_axes (axis);
  one = tb_room_map_new (setup, axis, 1, NULL, NULL, NULL);
  two = tb_room_map_new (setup, axis, 2, NULL, NULL, NULL);
  for (int i = 0; i < ACROSS * UP; i++)
    g_assert_true (same_point (&one->points[i], &two->points[i]));
  for (int up = 0; up < UP; up++)
    for (int across = 0; across < ACROSS; across++)
      check_point (two, across, up);
}

/* The plan is in the middle of the map, to the bit. */
static void
test_plan (void)
{
  g_autoptr (TbPattern) pattern = lane_house ();
  g_autoptr (TbSetup) setup = lane_setup (pattern, 24);
  TbRoomAxis axis[TB_ROOM_AXES];
  g_autoptr (TbRoomMap) map = NULL;

  small_axes (axis);
  map = tb_room_map_new (setup, axis, 0, NULL, NULL, NULL);
  g_assert_cmpfloat (tb_board_from_x (tb_room_map_point (map, ACROSS / 2, UP / 2)->x_at_pins), ==,
                     lane_board_at_pins (setup));
}

/* Any two fields, of any group; a value out of its range is a point without a shot, not a stop. */
static void
test_any_fields (void)
{
  g_autoptr (TbPattern) pattern = lane_house ();
  g_autoptr (TbSetup) setup = lane_setup (pattern, 24);
  TbRoomAxis axis[TB_ROOM_AXES] = { { tb_field_find (TB_GROUP_BALL, "grit"), NULL, -1500, 3000, 4 },
                                    { tb_field_find (TB_GROUP_LANE, "pattern_scale"), NULL, -2, 0.5, 6 } };
  g_autoptr (TbRoomMap) map = tb_room_map_new (setup, axis, 0, NULL, NULL, NULL);

  for (int up = 0; up < 6; up++)
    for (int across = 0; across < 4; across++)
      check_point (map, across, up);
  g_assert_cmpint (tb_room_map_point (map, 0, 0)->status, ==, TB_ERROR_OUT_OF_RANGE);
  g_assert_cmpint (tb_room_map_point (map, 3, 5)->status, ==, TB_OK);
}

typedef struct Seen
{
  GArray *strides;
  guint unlike; /* points that a finer map has otherwise */
  TbRoomMap *last;
} Seen;

static void
see (TbRoomMap *map, gpointer user_data)
{
  Seen *seen = user_data;

  g_array_append_val (seen->strides, map->stride);
  for (int up = 0; seen->last && up < UP; up += seen->last->stride)
    for (int across = 0; across < ACROSS; across += seen->last->stride)
      seen->unlike
          += !same_point (tb_room_map_point (seen->last, across, up), tb_room_map_point (map, across, up));
  g_clear_pointer (&seen->last, tb_room_map_unref);
  seen->last = tb_room_map_ref (map);
}

/* Coarse first, each finer one with the points of the one before. */
static void
test_progress (void)
{
  g_autoptr (TbPattern) pattern = lane_house ();
  g_autoptr (TbSetup) setup = lane_setup (pattern, 24);
  g_autoptr (GArray) strides = g_array_new (FALSE, FALSE, sizeof (int));
  Seen seen = { strides, 0, NULL };
  TbRoomAxis axis[TB_ROOM_AXES];
  g_autoptr (TbRoomMap) map = NULL;
  const int want[] = { 8, 4, 2, 1 };

  small_axes (axis);
  map = tb_room_map_new (setup, axis, 0, see, &seen, NULL);
  g_assert_cmpmem (strides->data, strides->len * sizeof (int), want, sizeof want);
  g_assert_cmpuint (seen.unlike, ==, 0);
  g_clear_pointer (&seen.last, tb_room_map_unref);
}

/* Cancelled before it begins, a map still brings its coarsest picture, and then stops. */
static void
test_cancelled (void)
{
  g_autoptr (TbPattern) pattern = lane_house ();
  g_autoptr (TbSetup) setup = lane_setup (pattern, 24);
  g_autoptr (GCancellable) cancellable = g_cancellable_new ();
  g_autoptr (GArray) strides = g_array_new (FALSE, FALSE, sizeof (int));
  Seen seen = { strides, 0, NULL };
  TbRoomAxis axis[TB_ROOM_AXES];
  TbRoomWidth width;

  small_axes (axis);
  g_cancellable_cancel (cancellable);
  g_assert_null (tb_room_map_new (setup, axis, 0, see, &seen, cancellable));
  g_assert_cmpuint (strides->len, ==, 1);
  g_assert_false (tb_room_width (setup, &axis[0], 0, &width, cancellable));
  g_clear_pointer (&seen.last, tb_room_map_unref);
}

static gboolean
finds_pocket (const TbSetup *setup, const TbRoomAxis *axis, double difference)
{
  TbShot shot = setup->shot;

  tb_room_axis_move (axis, difference, &shot);
  return tb_in_pocket (&shot.assumed, tb_x_from_board (lane_board_of (&shot)));
}

/* Just inside of an edge the ball finds the pocket, just outside it does not; all the way in between it does.
 */
static void
test_width (void)
{
  g_autoptr (TbPattern) pattern = lane_house ();
  g_autoptr (TbSetup) setup = lane_setup (pattern, 24);

  for (TbMiss miss = 0; miss < TB_N_MISSES; miss++)
    {
      TbRoomAxis axis = tb_room_axis (miss, 9);
      TbRoomWidth width;

      g_assert_true (tb_room_width (setup, &axis, 0, &width, NULL));
      g_assert_true (width.in_pocket);
      g_test_message ("%s: %.3f to %.3f%s%s", tb_miss_label (miss), width.low, width.high,
                      width.low_is_end ? " (low end)" : "", width.high_is_end ? " (high end)" : "");
      g_assert_cmpfloat (width.low, <=, 0);
      g_assert_cmpfloat (width.high, >=, 0);
      g_assert_true (finds_pocket (setup, &axis, 0.99 * width.low)
                     && finds_pocket (setup, &axis, 0.99 * width.high));
      g_assert_true (width.low_is_end || !finds_pocket (setup, &axis, 1.01 * width.low));
      g_assert_true (width.high_is_end || !finds_pocket (setup, &axis, 1.01 * width.high));
    }
}

static void
test_no_room (void)
{
  g_autoptr (TbPattern) pattern = lane_house ();
  g_autoptr (TbSetup) setup = lane_setup (pattern, 24);
  g_autoptr (TbSetup) wide = NULL;
  TbRoomAxis axis = tb_room_axis (TB_MISS_AIM, 9);
  TbShot shot = setup->shot;
  TbRoomWidth width;

  shot.delivery.rev_rate *= 0.3;
  wide = tb_setup_with_shot (setup, &shot);
  g_assert_true (tb_room_width (wide, &axis, 0, &width, NULL));
  g_assert_false (width.in_pocket);
  g_assert_cmpfloat (width.low, ==, 0);
  g_assert_cmpfloat (width.high, ==, 0);
}

static double
apart (const TbHold *hold)
{
  return fabs (hold->outside_x - hold->inside_x) / TB_BOARD_WIDTH;
}

/* Common practice: a house shot takes two boards of miss to either side back; a flat pattern gives less. The
 * misses are moved in parallel, 4 boards apart at the start. */
static void
test_hold (void)
{
  g_autoptr (TbPattern) house = lane_house ();
  g_autoptr (TbPattern) flat = lane_flat ();
  g_autoptr (TbSetup) on_house = lane_setup (house, 24);
  g_autoptr (TbSetup) on_flat = lane_setup (flat, 24);
  TbHold of_house = tb_hold (on_house, TB_MISS_PARALLEL, 2), of_flat = tb_hold (on_flat, TB_MISS_PARALLEL, 2);

  lane_between ("house: boards apart at the pins", apart (&of_house), 0, 4);
  lane_between ("flat: boards apart at the pins", apart (&of_flat), apart (&of_house), 8);
  g_test_message ("house: recovered %.2f, held %.2f; flat: recovered %.2f, held %.2f", of_house.recovered,
                  of_house.held, of_flat.recovered, of_flat.held);
  lane_near ("recovered", of_house.recovered,
             2 - (tb_board_from_x (of_house.plan_x) - tb_board_from_x (of_house.outside_x)), 1e-9);
  lane_near ("held", of_house.held,
             2 - (tb_board_from_x (of_house.inside_x) - tb_board_from_x (of_house.plan_x)), 1e-9);
}

/* Common practice: the later the ball meets friction, the less it hooks: the same shot on the same film drawn
 * out from 35 to 40 ft. */
static void
test_later_friction (void)
{
  double last = HUGE_VAL;

  for (double feet = 35; feet <= 40; feet += 1)
    {
      const TbOilProfile profile = { .length = tb_metres_from_ft (feet),
                                     .fade = tb_metres_from_ft (2),
                                     .front = tb_film_from_units (45),
                                     .back = tb_film_from_units (5),
                                     .outside_share = 1,
                                     .outside_x = 5.5 * TB_BOARD_WIDTH,
                                     .inside_x = 13.5 * TB_BOARD_WIDTH };
      g_autoptr (TbPattern) pattern = tb_pattern_new_profile (NULL, NULL, &profile, NULL);
      TbShot shot = tb_shot_default ();
      double board;

      shot.lane.oil = &pattern->oil;
      board = lane_board_of (&shot);
      g_test_message ("%.0f ft of oil: board %.2f", feet, board);
      g_assert_cmpfloat (board, <, last);
      last = board;
    }
}

static void
test_chance (void)
{
  g_autoptr (TbPattern) pattern = lane_house ();
  g_autoptr (TbSetup) setup = lane_setup (pattern, 24);
  TbScatter scatter = tb_scatter_typical (TB_SKILL_PRACTISED);
  TbPocketChance one, two, other;

  g_assert_true (tb_pocket_chance (setup, &scatter, 1, 300, 1, &one, NULL));
  g_assert_true (tb_pocket_chance (setup, &scatter, 1, 300, 2, &two, NULL));
  g_assert_cmpmem (&one, sizeof one, &two, sizeof two);
  g_assert_true (tb_pocket_chance (setup, &scatter, 2, 300, 2, &other, NULL));
  g_assert_cmpfloat (one.mean_x, !=, other.mean_x);
  /* Two seeds differ by no more than their errors allow: five of them. */
  lane_near ("share of another seed", other.share, one.share,
             5 * hypot (one.standard_error, other.standard_error));
  lane_near ("error of the share", one.standard_error, sqrt (one.share * (1 - one.share) / 300), 0.005);
  g_test_message ("share %.3f ± %.3f", one.share, one.standard_error);
}

/* Nobody's shots scatter more than a beginner's, or find the pocket less. */
static void
test_skill (void)
{
  g_autoptr (TbPattern) pattern = lane_house ();
  g_autoptr (TbSetup) setup = lane_setup (pattern, 24);
  double last = 1;

  for (TbSkill skill = 0; skill < TB_N_SKILLS; skill++)
    {
      TbScatter scatter = tb_scatter_typical (skill);
      TbPocketChance chance;

      g_assert_true (tb_pocket_chance (setup, &scatter, 1, 400, 0, &chance, NULL));
      g_test_message ("%s: %.3f ± %.3f", tb_skill_name (skill), chance.share, chance.standard_error);
      g_assert_cmpfloat (chance.share, <, last);
      last = chance.share;
    }
}

/* No scatter: every shot is the plan. All hits still leave an error, since they prove nothing for certain. */
static void
test_no_scatter (void)
{
  g_autoptr (TbPattern) pattern = lane_house ();
  g_autoptr (TbSetup) setup = lane_setup (pattern, 24);
  TbScatter scatter = { 0 };
  TbPocketChance chance;

  g_assert_true (tb_pocket_chance (setup, &scatter, 1, 50, 0, &chance, NULL));
  g_assert_cmpuint (chance.hits, ==, 50);
  lane_between ("error of 50 of 50", chance.standard_error, 0.001, 0.1);
  lane_near ("spread", chance.deviation_x, 0, 1e-9);
}

/* What a worker was told. */
typedef struct Told
{
  guint news[TB_N_SIDES];
  int stride;
  gboolean widths, chance;
  double board; /* of the plan of the last map */
} Told;

static void
hear (TbSide side, const TbRoomReport *report, gpointer user_data)
{
  Told *told = user_data;

  told->news[side]++;
  told->widths |= report->has_widths;
  told->chance |= report->has_chance;
  if (report->map)
    {
      told->stride = report->map->stride;
      told->board = tb_board_from_x (tb_room_map_point (report->map, 0, 0)->x_at_pins);
    }
}

static void
run_until_idle (TbRoomWorker *worker)
{
  gint64 limit = g_get_monotonic_time () + 60 * G_USEC_PER_SEC;

  while (tb_room_worker_is_busy (worker) && g_get_monotonic_time () < limit)
    g_main_context_iteration (NULL, TRUE);
  g_assert_false (tb_room_worker_is_busy (worker));
  while (g_main_context_iteration (NULL, FALSE))
    ;
}

static TbRoomRequest
request_for (TbSetup *before, TbSetup *after)
{
  TbRoomRequest request = { .side = { before, after },
                            .hold_miss = TB_MISS_PARALLEL,
                            .hold_boards = 2,
                            .scatter = tb_scatter_typical (TB_SKILL_LEAGUE),
                            .seed = 1,
                            .shots = 64 };

  small_axes (request.axis);
  return request;
}

static void
test_worker (void)
{
  g_autoptr (TbPattern) pattern = lane_house ();
  g_autoptr (TbSetup) setup = lane_setup (pattern, 24);
  Told told = { 0 };
  g_autoptr (TbRoomWorker) worker = tb_room_worker_new (hear, &told);
  TbRoomRequest request = request_for (setup, setup);

  g_assert_false (tb_room_worker_is_busy (worker));
  tb_room_worker_ask (worker, &request);
  run_until_idle (worker);
  /* Four maps, the widths, the chance: for either side. */
  g_assert_cmpuint (told.news[TB_SIDE_BEFORE], ==, 6);
  g_assert_cmpuint (told.news[TB_SIDE_AFTER], ==, 6);
  g_assert_cmpint (told.stride, ==, 1);
  g_assert_true (told.widths && told.chance);
}

/* A slider that is dragged: only the last question is answered to its end, and nothing of an older one is
 * heard. */
static void
test_worker_dragged (void)
{
  g_autoptr (TbPattern) pattern = lane_house ();
  g_autoptr (TbSetup) setup = lane_setup (pattern, 24);
  g_autoptr (TbSetup) last = NULL;
  g_autoptr (TbRoomMap) want = NULL;
  Told told = { 0 };
  g_autoptr (TbRoomWorker) worker = tb_room_worker_new (hear, &told);
  TbRoomRequest request;

  for (int i = 0; i <= 10; i++)
    {
      TbShot shot = setup->shot;

      shot.delivery.speed *= 1 + 0.01 * i;
      g_clear_pointer (&last, tb_setup_unref);
      last = tb_setup_with_shot (setup, &shot);
      request = request_for (NULL, last);
      tb_room_worker_ask (worker, &request);
    }
  run_until_idle (worker);
  want = tb_room_map_new (last, request.axis, 0, NULL, NULL, NULL);
  g_assert_cmpuint (told.news[TB_SIDE_BEFORE], ==, 0);
  g_assert_cmpuint (told.news[TB_SIDE_AFTER], ==, 6);
  g_assert_cmpfloat (told.board, ==, tb_board_from_x (tb_room_map_point (want, 0, 0)->x_at_pins));
}

/* Stopped, and freed while it works: nothing is heard, and nothing is left. The leak checker sees the rest.
 */
static void
test_worker_stopped (void)
{
  g_autoptr (TbPattern) pattern = lane_house ();
  g_autoptr (TbSetup) setup = lane_setup (pattern, 24);
  Told told = { 0 };
  TbRoomWorker *worker = tb_room_worker_new (hear, &told);
  TbRoomRequest request = request_for (setup, setup);

  tb_room_worker_ask (worker, &request);
  tb_room_worker_stop (worker);
  run_until_idle (worker);
  g_assert_cmpuint (told.news[TB_SIDE_BEFORE] + told.news[TB_SIDE_AFTER], ==, 0);
  tb_room_worker_ask (worker, &request);
  tb_room_worker_free (worker);
  /* The thread gives its last reference back without waking the loop. */
  while (!g_atomic_ref_count_compare (&setup->ref_count, 1))
    if (!g_main_context_iteration (NULL, FALSE))
      g_thread_yield ();
  g_assert_cmpuint (told.news[TB_SIDE_BEFORE] + told.news[TB_SIDE_AFTER], ==, 0);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/room/single-shots", test_single_shots);
  g_test_add_func ("/room/plan", test_plan);
  g_test_add_func ("/room/any-fields", test_any_fields);
  g_test_add_func ("/room/progress", test_progress);
  g_test_add_func ("/room/cancelled", test_cancelled);
  g_test_add_func ("/room/width", test_width);
  g_test_add_func ("/room/no-room", test_no_room);
  g_test_add_func ("/room/hold", test_hold);
  g_test_add_func ("/room/later-friction", test_later_friction);
  g_test_add_func ("/room/chance", test_chance);
  g_test_add_func ("/room/skill", test_skill);
  g_test_add_func ("/room/no-scatter", test_no_scatter);
  g_test_add_func ("/room/worker", test_worker);
  g_test_add_func ("/room/worker-dragged", test_worker_dragged);
  g_test_add_func ("/room/worker-stopped", test_worker_stopped);
  return g_test_run ();
}
