/* What a room map costs, against the same shots thrown one by one; what a slider that is dragged waits for;
 * and what games cost.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include <math.h>
#include <stdio.h>
#include <time.h>
#include "lane-support.h"
#include "tb-room.h"

/* 2,500 shots, and the least of so many rounds. */
#define SIDE 50
#define ROUNDS 5

static double
now_ms (void)
{
  return (double) g_get_monotonic_time () / 1000;
}

/* Of all threads together: what other programs do meanwhile does not count. */
static double
cpu_ms (void)
{
  struct timespec time;

  clock_gettime (CLOCK_PROCESS_CPUTIME_ID, &time);
  return 1000.0 * (double) time.tv_sec + 1e-6 * (double) time.tv_nsec;
}

/* What a map costs by a clock, in its rounds' best. */
static double
best_of_map (double (*clock_ms) (void), TbSetup *setup, const TbRoomAxis axis[TB_ROOM_AXES], guint threads)
{
  double best = HUGE_VAL;

  for (int round = 0; round < ROUNDS; round++)
    {
      double start = clock_ms ();
      TbRoomMap *map = tb_room_map_new (setup, axis, threads, NULL, NULL, NULL);

      best = MIN (best, clock_ms () - start);
      tb_room_map_unref (map);
    }
  return best;
}

/* The same shots, one after the other. */
static double
time_single_shots (TbSetup *setup, const TbRoomAxis axis[TB_ROOM_AXES])
{
  g_autofree TbWorkspace *workspace = g_malloc (tb_workspace_size ());
  g_autoptr (TbRoomMap) map = tb_room_map_new (setup, axis, 0, NULL, NULL, NULL);
  double best = HUGE_VAL;

  for (int round = 0; round < ROUNDS; round++)
    {
      double start = now_ms ();

      for (int i = 0; i < SIDE * SIDE; i++)
        {
          TbShot shot = tb_room_map_shot (map, i % SIDE, i / SIDE);
          TbPath path = { 0 };

          tb_shot_run (&shot, workspace, &path, NULL);
        }
      best = MIN (best, now_ms () - start);
    }
  return best;
}

static void
stamp (TbRoomMap *map, gpointer user_data)
{
  double *first = user_data;

  if (*first == 0)
    *first = now_ms ();
}

/* From the question to the first picture. */
static double
time_first_picture (TbSetup *setup, const TbRoomAxis axis[TB_ROOM_AXES])
{
  double best = HUGE_VAL;

  for (int round = 0; round < ROUNDS; round++)
    {
      double start = now_ms (), first = 0;
      TbRoomMap *map = tb_room_map_new (setup, axis, 0, stamp, &first, NULL);

      best = MIN (best, first - start);
      tb_room_map_unref (map);
    }
  return best;
}

static double
time_games (TbPattern *pattern, double games)
{
  g_autoptr (TbMix) league = tb_mix_new_league ();
  g_autoptr (TbMix) mix = tb_mix_with_seed (league, (guint64) g_get_monotonic_time ());
  TbWearKey key = { pattern, tb_lane_default (), tb_assumed_default (), mix };
  double start = now_ms ();
  g_autoptr (TbWorn) worn G_GNUC_UNUSED = tb_worn_new (&key, games, NULL);

  return now_ms () - start;
}

int
main (void)
{
  g_autoptr (TbPattern) pattern = lane_house ();
  g_autoptr (TbSetup) setup = lane_setup (pattern, 24);
  TbRoomAxis axis[TB_ROOM_AXES] = { tb_room_axis (TB_MISS_AIM, SIDE), tb_room_axis (TB_MISS_SPEED, SIDE) };
  double single = time_single_shots (setup, axis), one = best_of_map (now_ms, setup, axis, 1),
         two = best_of_map (now_ms, setup, axis, 2);
  double all = best_of_map (now_ms, setup, axis, 0);

  printf ("%d shots one by one: %.1f ms (%.1f µs each)\n", SIDE * SIDE, single,
          1000 * single / (SIDE * SIDE));
  printf ("map on one thread: %.1f ms, %.2f of that\n", one, one / single);
  printf ("map on two threads: %.1f ms, %.2f of that\n", two, two / single);
  printf ("map on all %u processors: %.1f ms, %.2f of that\n", g_get_num_processors (), all, all / single);
  printf ("processor time of the map: %.1f ms on one thread, %.1f ms on two\n",
          best_of_map (cpu_ms, setup, axis, 1), best_of_map (cpu_ms, setup, axis, 2));
  printf ("first, coarse picture: %.1f ms\n", time_first_picture (setup, axis));
  printf ("15 games of a league, 1275 shots that wear: %.1f ms\n", time_games (pattern, 15));
  return 0;
}
