/* The same bits whatever the number of threads.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "support.h"
#include "tb-batch.h"

#define SHOTS 900

static void
make_shot (TbShot *shot, guint index, gpointer user_data)
{
  const TbShot *base = user_data;

  *shot = *base;
  shot->delivery.aim = tb_x_from_board (10.0 + 0.4 * (index % 30));
  shot->delivery.speed = tb_metres_per_second_from_mph (14.0 + 0.2 * (index / 30));
  /* Some that fail: their places must not move. */
  if (index % 97 == 0)
    shot->delivery.speed = NAN;
}

static guint64
hash_of (const TbBatchItem *items, guint count)
{
  const guint8 *bytes = (const guint8 *)items;
  guint64 hash = G_GUINT64_CONSTANT (0xcbf29ce484222325);

  /* FNV-1a: Fowler, Noll and Vo. */
  for (gsize i = 0; i < count * sizeof *items; i++)
    hash = (hash ^ bytes[i]) * G_GUINT64_CONSTANT (0x100000001b3);
  return hash;
}

static guint64
run_with (guint threads, const TbShot *base)
{
  g_autofree TbBatchItem *items = g_new0 (TbBatchItem, SHOTS);

  g_assert_true (tb_batch_run (SHOTS, make_shot, (gpointer)base, items, threads, NULL));
  g_assert_cmpint (items[97].status, ==, TB_ERROR_NOT_FINITE);
  g_assert_cmpint (items[98].status, ==, TB_OK);
  return hash_of (items, SHOTS);
}

static void
test_same_bits (void)
{
  TbShot shot = check_house_shot ();
  guint64 one = run_with (1, &shot);

  g_test_message ("hash %016" G_GINT64_MODIFIER "x", one);
  for (guint threads = 0; threads <= 4; threads++)
    g_assert_cmphex (run_with (threads, &shot), ==, one);
}

/* A batch gives what a single run gives. */
static void
test_same_as_alone (void)
{
  g_autofree TbBatchItem *items = g_new0 (TbBatchItem, SHOTS);
  g_autoptr (CheckRun) run = check_run_new ();
  TbShot base = check_house_shot ();

  g_assert_true (tb_batch_run (SHOTS, make_shot, &base, items, 2, NULL));
  for (guint i = 1; i < 90; i += 13)
    {
      TbShot shot;

      make_shot (&shot, i, &base);
      check_run_shot (run, &shot);
      g_assert_cmpmem (&items[i].measures, sizeof (TbMeasures), &run->path.measures, sizeof (TbMeasures));
    }
}

static void
test_cancelled (void)
{
  g_autofree TbBatchItem *items = g_new0 (TbBatchItem, SHOTS);
  g_autoptr (GCancellable) cancellable = g_cancellable_new ();
  TbShot shot = check_house_shot ();

  g_cancellable_cancel (cancellable);
  g_assert_false (tb_batch_run (SHOTS, make_shot, &shot, items, 2, cancellable));
  g_assert_cmpint (items[SHOTS - 1].status, ==, TB_N_STATUS);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/threads/same-bits", test_same_bits);
  g_test_add_func ("/threads/same-as-alone", test_same_as_alone);
  g_test_add_func ("/threads/cancelled", test_cancelled);
  return g_test_run ();
}
