/* Batches: each shot as if thrown alone, the same bits on 1, 2 and 4 threads, cancelled cleanly.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include <string.h>

#include "house-setup.h"
#include "tb-batch.h"
#include "tb-pattern.h"

#define COUNT 100

typedef struct Lane
{
  TbPattern *pattern;
  GCancellable *cancellable; /* cancelled from inside the batch at a certain shot; NULL for never */
  guint cancel_at;
} Lane;

/* Shots of rising speed; the one in the middle will not do. */
static void
make_shot (TbShot *shot, guint index, gpointer user_data)
{
  Lane *lane = user_data;

  *shot = tb_shot_default ();
  shot->lane.oil = &lane->pattern->oil;
  shot->delivery.speed = index == COUNT / 2 ? -1 : tb_metres_per_second_from_mph (12 + 0.1 * index);
  if (lane->cancellable && index == lane->cancel_at)
    g_cancellable_cancel (lane->cancellable);
}

static void
check_same (const TbBatchItem *a, const TbBatchItem *b)
{
  g_assert_cmpint (a->status, ==, b->status);
  g_assert_cmpint (a->result, ==, b->result);
  g_assert_cmpmem (&a->measures, sizeof a->measures, &b->measures, sizeof b->measures);
}

static void
test_threads (void)
{
  g_autoptr (TbPattern) pattern = house_pattern ();
  Lane lane = { .pattern = pattern };
  const guint threads[] = { 1, 2, 4, 0 };
  g_autofree TbBatchItem *items = g_new0 (TbBatchItem, G_N_ELEMENTS (threads) * COUNT);

  for (guint t = 0; t < G_N_ELEMENTS (threads); t++)
    g_assert_true (tb_batch_run (COUNT, make_shot, &lane, items + t * COUNT, threads[t], NULL));
  for (guint t = 1; t < G_N_ELEMENTS (threads); t++)
    for (guint i = 0; i < COUNT; i++)
      check_same (&items[i], &items[t * COUNT + i]);
}

static void
test_alone (void)
{
  g_autoptr (TbPattern) pattern = house_pattern ();
  Lane lane = { .pattern = pattern };
  g_autofree TbBatchItem *items = g_new0 (TbBatchItem, COUNT);
  g_autofree TbWorkspace *workspace = g_malloc (tb_workspace_size ());

  g_assert_true (tb_batch_run (COUNT, make_shot, &lane, items, 2, NULL));
  for (guint i = 0; i < COUNT; i++)
    {
      TbShot shot;
      TbPath path = { 0 };
      TbBatchItem alone;

      make_shot (&shot, i, &lane);
      alone.status = tb_shot_run (&shot, workspace, &path, NULL);
      alone.result = path.result;
      alone.measures = path.measures;
      check_same (&items[i], &alone);
      g_assert_cmpint (alone.status, ==, i == COUNT / 2 ? TB_ERROR_OUT_OF_RANGE : TB_OK);
    }
}

static void
test_none (void)
{
  g_assert_true (tb_batch_run (0, make_shot, NULL, NULL, 0, NULL));
}

static void
test_cancel (void)
{
  g_autoptr (TbPattern) pattern = house_pattern ();
  g_autoptr (GCancellable) cancellable = g_cancellable_new ();
  Lane lane = { .pattern = pattern, .cancellable = cancellable, .cancel_at = 3 };
  g_autofree TbBatchItem *items = g_new0 (TbBatchItem, COUNT);

  g_assert_false (tb_batch_run (COUNT, make_shot, &lane, items, 2, cancellable));
  g_assert_cmpint (items[0].status, ==, TB_OK);
  g_assert_cmpint (items[COUNT - 1].status, ==, TB_N_STATUS);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/batch/threads", test_threads);
  g_test_add_func ("/batch/alone", test_alone);
  g_test_add_func ("/batch/none", test_none);
  g_test_add_func ("/batch/cancel", test_cancel);
  return g_test_run ();
}
